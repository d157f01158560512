"""Between the tables and the dating: adverts with their words and prices as cases, estimates and runs as rows."""

from __future__ import annotations

import json
from collections.abc import Iterable, Sequence
from datetime import date
from decimal import Decimal
from math import log
from typing import Any, Final

import duckdb

from adminer.dating.estimate import DateEstimate
from adminer.dating.evidence.base import Case, Context, DatedPrice, KnownRun, ReadDate, ReadPrice, YearSpan
from adminer.dating.evidence.file_prices import key_of
from adminer.dating.months import MONTHS, first_day, index_of
from adminer.dating.price_tables import consumer_prices
from adminer.dating.printed_runs import SCHEDULE
from adminer.dating.run_bounds import SEARCHED
from adminer.dating.run_limits import KnownYears
from adminer.dating.run_records import Run, RunSighting
from adminer.names.authority import Authorities
from adminer.names.objects import SeenObject
from adminer.records import Box
from adminer.store.rows import Row

_DATED_DAYS: Final = 62  # an advert dated closer than two months can date others
_LEAST_SHOWN: Final = 0.0005

_WORDS: Final = """
    SELECT advert_id, text, line_no, x, y, w, h FROM words WHERE advert_id IS NOT NULL ORDER BY advert_id, word_no
"""
_ADVERTS: Final = """
    SELECT a.advert_id, a.clipping_id, coalesce(a.city, c.city), c.state, c.published, a.valid_from, a.valid_to,
        a.dated_by, a.retailer_id, c.published_from, c.published_to
    FROM adverts a JOIN clippings c USING (clipping_id) ORDER BY a.advert_id
"""
_PRICES: Final = """
    SELECT o.advert_id, o.item, coalesce(p.exact_amount, p.amount)::DOUBLE, p.per_quantity::DOUBLE,
        coalesce(p.per_unit, o.unit), p.condition, p.role, p.x, p.y, p.w, p.h, o.line_id,
        o.piece_or_set, o.pieces, o.maker_id
    FROM offers o LEFT JOIN prices p ON p.offer_id = o.offer_id AND p.currency = 'USD'
    WHERE o.status <> 'rejected' ORDER BY o.advert_id, o.offer_id, p.price_id
"""
_DATES: Final = """
    SELECT advert_id, kind, text, earliest, latest, x, y, w, h, confidence FROM dates_read
    ORDER BY advert_id, y, x, text
"""
_SEEN: Final = """
    SELECT s.line_id, s.line, s.retailer_id, s.retailer, s.city, s.advert_id, s.seen_from, s.seen_to, s.dated_by,
        any_value(c.publication), min(o.maker), least(coalesce(max(o.line_score), 1.0), 1.0)
    FROM sightings s JOIN clippings c USING (clipping_id)
    LEFT JOIN offers o ON o.advert_id = s.advert_id AND o.line_id IS NOT DISTINCT FROM s.line_id
    WHERE $line IS NULL OR lower(s.line_id) = lower($line) OR lower(s.line) = lower($line)
    GROUP BY ALL ORDER BY ALL
"""


def read_cases(connection: duckdb.DuckDBPyConnection) -> list[Case]:
    """Return every advert of the database as the dating sees it, by advert id."""
    words = _words_by_advert(connection)
    prices: dict[str, list[ReadPrice]] = {}
    names: dict[str, tuple[dict[str, None], dict[str, None]]] = {}
    for row in connection.execute(_PRICES).fetchall():
        lines, makers = names.setdefault(row[0], ({}, {}))
        if row[11]:
            lines[row[11]] = None
        if row[14]:
            makers[row[14]] = None
        if row[2] is not None:
            prices.setdefault(row[0], []).append(
                ReadPrice(
                    row[1] or "",
                    row[2],
                    row[3] or 1.0,
                    row[4],
                    row[5],
                    row[6],
                    _box(row[7:11]),
                    row[11],
                    row[12],
                    row[13],
                )
            )
    dates: dict[str, list[ReadDate]] = {}
    for row in connection.execute(_DATES).fetchall():
        dates.setdefault(row[0], []).append(ReadDate(row[1], row[2] or "", row[3], row[4], _box(row[5:9]), row[9]))
    cases = []
    for row in connection.execute(_ADVERTS).fetchall():
        text, starts, boxes = words.get(row[0], ("", [], []))
        lines, makers = names.get(row[0], ({}, {}))
        cases.append(
            Case(
                row[0], row[1], text, starts, boxes, row[2], row[3], row[4], row[5], row[6], row[7], row[8],
                tuple(makers), tuple(lines), tuple(dates.get(row[0], ())), tuple(prices.get(row[0], ())),
            )
        )  # fmt: skip
    return cases


def read_context(
    connection: duckdb.DuckDBPyConnection,
    cases: Iterable[Case],
    authorities: Authorities,
    objects: Iterable[SeenObject] = (),
    *,
    region: str | None = None,
    runs: Iterable[Run] = (),
) -> Context:
    """Return what the whole file knows that can date one advert of it."""
    published = {row[0]: (row[9], row[10]) for row in connection.execute(_ADVERTS).fetchall()}
    dated: dict[str, list[DatedPrice]] = {}
    levels: dict[str, list[DatedPrice]] = {}
    seen: dict[str, list[tuple[int, str]]] = {}
    for case in cases:
        month = _month(case.valid_from, case.valid_to) or _month(*published.get(case.advert_id, (None, None)))
        if month is None:
            continue
        for line_id in case.line_ids:
            seen.setdefault(line_id, []).append((month, case.advert_id))
        for price in case.prices:
            if price.piece is None or price.role != "price" or price.amount <= 0:
                continue
            known = DatedPrice(
                month, log(price.amount), case.advert_id, case.clipping_id, case.retailer_id, price.condition
            )
            levels.setdefault(price.piece, []).append(known)
            if price.line_id is not None:
                dated.setdefault(key_of(price.line_id, price.piece, price.condition), []).append(known)
    years = known_years(authorities)
    return Context(
        region,
        years.lines,
        {e.id: YearSpan(e.from_year, e.to_year, e.name) for e in authorities.makers if e.from_year or e.to_year},
        years.retailers,
        _object_years(objects, authorities),
        {key: tuple(found) for key, found in dated.items()},
        {line: tuple(sorted(found)) for line, found in seen.items()},
        {piece: tuple(found) for piece, found in levels.items()},
        _known_runs(runs),
    )


def known_years(authorities: Authorities) -> KnownYears:
    """Return the years of lines and retailers that the authority files give."""
    return KnownYears(
        {e.id: YearSpan(e.first_year, e.last_year, e.name) for e in authorities.lines if e.first_year or e.last_year},
        {e.id: YearSpan(e.from_year, e.to_year, e.name) for e in authorities.retailers if e.from_year or e.to_year},
    )


def read_sightings(connection: duckdb.DuckDBPyConnection, line: str | None = None) -> list[RunSighting]:
    """Return the sightings of all lines, or of one by id or name; reliability is the score of the name's match."""
    return [RunSighting(*row) for row in connection.execute(_SEEN, {"line": line}).fetchall()]


def estimate_rows(estimates: Iterable[DateEstimate]) -> tuple[list[Row], list[Row]]:
    """Turn estimates into rows of date_estimates and evidence."""
    answers: list[Row] = []
    evidence: list[Row] = []
    for found in estimates:
        earliest, latest = found.ninety.bounds
        shown = {
            f"{first_day(month):%Y-%m}": round(float(found.posterior[month]), 5)
            for month in range(MONTHS)
            if found.posterior[month] >= _LEAST_SHOWN
        }
        answers.append(
            {
                "advert_id": found.advert_id,
                "edtf_50": found.half.edtf,
                "edtf_90": found.ninety.edtf,
                "median": found.median,
                "earliest_90": earliest,
                "latest_90": latest,
                "probability_peak": round(found.peak, 6),
                "posterior": json.dumps(shown, separators=(",", ":")),
                "note": found.note,
            }
        )
        for weighed in found.evidence:
            box = weighed.clue.box
            evidence.append(
                {
                    "advert_id": found.advert_id,
                    "kind": weighed.clue.kind,
                    "text": weighed.clue.text,
                    "source": weighed.clue.source,
                    "moved_bits": round(weighed.moved_bits, 4),
                    "earliest": weighed.clue.earliest,
                    "latest": weighed.clue.latest,
                    "struck": weighed.struck,
                    **({"x": box.x, "y": box.y, "w": box.w, "h": box.h} if box else {}),
                }
            )
    return answers, evidence


def run_rows(runs: Iterable[Run]) -> list[Row]:
    """Turn runs into rows of the table runs."""
    return [
        {
            "run_id": run.run_id,
            "line_id": run.line_id,
            "line": run.line,
            "retailer_id": run.retailer_id,
            "retailer": run.retailer,
            "city": run.city,
            "sightings": run.sightings,
            "first_seen": run.first_seen,
            "last_seen": run.last_seen,
            "start_earliest": run.start_earliest,
            "end_latest": run.end_latest,
            "start_edtf": run.start_edtf,
            "end_edtf": run.end_edtf,
            "method": run.method,
            "confidence": run.confidence,
            "note": run.note,
        }
        for run in runs
    ]


def consumer_price_rows() -> list[Row]:
    """Return the all-items index by month as rows of consumer_prices."""
    return [
        {"year": year, "month": month, "all_items": Decimal(str(value))}
        for (year, month), value in sorted(consumer_prices()["all_items"].items())
    ]


def _words_by_advert(connection: duckdb.DuckDBPyConnection) -> dict[str, tuple[str, list[int], list[Box]]]:
    found: dict[str, tuple[str, list[int], list[Box]]] = {}
    advert, line = None, None
    parts: list[str] = []
    starts: list[int] = []
    boxes: list[Box] = []
    at = 0
    for advert_id, text, line_no, x, y, w, h in connection.execute(_WORDS).fetchall():
        if advert_id != advert:
            if advert is not None:
                found[advert] = "".join(parts), starts, boxes
            advert, parts, starts, boxes, at = advert_id, [], [], [], 0
        elif parts:
            parts.append(" " if line_no == line else "\n")
            at += 1
        line = line_no
        starts.append(at)
        boxes.append(Box(x, y, w, h))
        parts.append(text or "")
        at += len(text or "")
    if advert is not None:
        found[advert] = "".join(parts), starts, boxes
    return found


def _box(cells: Sequence[Any]) -> Box | None:
    return None if cells[0] is None else Box(*cells)


def _month(first: date | None, last: date | None) -> int | None:
    first, last = first or last, last or first
    if first is None or last is None or (last - first).days > _DATED_DAYS:
        return None
    return index_of(first)


def _known_runs(runs: Iterable[Run]) -> dict[tuple[str, str], KnownRun]:
    found: dict[tuple[str, str], KnownRun] = {}
    for run in runs:
        bounded = run.start_earliest is not None and run.end_latest is not None
        if run.line_id and run.retailer_id and run.city is None and bounded and run.method in (SCHEDULE, SEARCHED):
            found[run.line_id, run.retailer_id] = KnownRun(
                run.start_earliest or date.min, run.end_latest or date.max, run.line, run.method, run.scheduled_start
            )
    return found


def _object_years(objects: Iterable[SeenObject], authorities: Authorities) -> dict[str, tuple[YearSpan, ...]]:
    ids = {name.casefold(): line.id for line in authorities.lines for name in (line.id, line.name)}
    found: dict[str, list[YearSpan]] = {}
    for item in objects:
        line = ids.get((item.line or "").casefold())
        if line and item.earliest_year:
            span = YearSpan(item.earliest_year, None, f"{item.what}, date code {item.date_code}", "objects.csv")
            found.setdefault(line, []).append(span)
    return {line: tuple(spans) for line, spans in found.items()}

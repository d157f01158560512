"""What the section Looking shows, as rows: prices over time, chains by week, coverage of papers, adverts to date."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Any, Final

from adminer.desk.desk import Desk
from adminer.desk.shelf import Row

WEEKS_SHOWN: Final = 53
PAGE: Final = 100
PRICES_PAGE: Final = 400  # rows of a long table that a page shows at once
MOST_PRICES: Final = 3000  # that a picture shows
_PRICES: Final = """
    SELECT coalesce(valid_from, published_from) AS day, line, piece_or_set, item, pieces, retailer, city, file,
        price, cardholder_price, price_without_card, former_price, status, offer_id, clipping_id
    FROM priced_offers
    WHERE coalesce(valid_from, published_from) IS NOT NULL
        AND ($line IS NULL OR line = $line) AND ($piece IS NULL OR piece_or_set = $piece)
        AND ($retailer IS NULL OR retailer = $retailer)
        AND coalesce(price, cardholder_price, price_without_card) IS NOT NULL
    ORDER BY day, file, offer_id
    LIMIT $most
"""
_CHOICES: Final = """
    SELECT
        list_sort(list(DISTINCT line) FILTER (line IS NOT NULL)) AS lines,
        list_sort(list(DISTINCT piece_or_set) FILTER (piece_or_set IS NOT NULL)) AS pieces,
        list_sort(list(DISTINCT retailer) FILTER (retailer IS NOT NULL)) AS retailers
    FROM priced_offers
"""
_WEEKS: Final = """
    -- a year or a month alone names no week
    WITH dated AS (
        SELECT a.advert_id, c.clipping_id, coalesce(a.retailer, 'shop not read') AS retailer,
            date_trunc('week', coalesce(a.valid_from, c.published_from))::DATE AS week
        FROM adverts a JOIN clippings c USING (clipping_id)
        WHERE coalesce(a.valid_from, c.published_from) IS NOT NULL
            AND (a.valid_from IS NOT NULL OR c.published_to - c.published_from <= 6)
            AND ($line IS NULL
                OR a.advert_id IN (SELECT advert_id FROM offers WHERE line = $line AND status <> 'rejected'))
    )
"""
_WEEK_YEARS: Final = f"{_WEEKS} SELECT isoyear(week) AS year, count(*) AS n FROM dated GROUP BY ALL ORDER BY year"  # noqa: S608 - constants
_WEEK_CELLS: Final = f"""
    {_WEEKS}, shown AS (SELECT * FROM dated WHERE isoyear(week) = $year),
    lines AS (
        SELECT DISTINCT advert_id, line FROM offers SEMI JOIN shown USING (advert_id)
        WHERE line IS NOT NULL AND status <> 'rejected'
    )
    SELECT retailer, week, count(DISTINCT advert_id) AS adverts,
        list_sort(list(DISTINCT line) FILTER (line IS NOT NULL)) AS lines,
        min(advert_id) AS advert_id, min(clipping_id) AS clipping_id
    FROM shown LEFT JOIN lines USING (advert_id)
    GROUP BY ALL ORDER BY week
"""  # noqa: S608 - the spliced piece is a constant of our own
_COVERAGE: Final = """
    SELECT coalesce(publication, 'paper not known') AS publication, year(published_from) AS year,
        count(*) AS clippings, count(DISTINCT date_trunc('week', published_from)) AS weeks,
        min(published_from) AS first, max(published_from) AS last
    FROM clippings WHERE published_from IS NOT NULL
    GROUP BY ALL ORDER BY publication, year
"""
# neither the advert has days of its own nor its paper a week
UNDATED: Final = "a.valid_from IS NULL AND (c.published_from IS NULL OR c.published_to - c.published_from > 6)"
_TO_DATE: Final = f"""
    SELECT a.advert_id, a.clipping_id, c.file, a.retailer, e.edtf_50, e.edtf_90, e.median, e.note,
        (SELECT string_agg(DISTINCT o.line, ', ' ORDER BY o.line) FROM offers o
            WHERE o.advert_id = a.advert_id) AS lines
    FROM adverts a JOIN clippings c USING (clipping_id) LEFT JOIN date_estimates e USING (advert_id)
    WHERE {UNDATED}
    ORDER BY c.file, a.advert_id LIMIT ? OFFSET ?
"""  # noqa: S608 - the spliced piece is a constant of our own


@dataclass(frozen=True, slots=True)
class WeekGrid:
    """Hold the chains by week: the weeks of the columns, and for each chain its cells by week."""

    weeks: tuple[date, ...]
    rows: tuple[tuple[str, dict[date, Row]], ...]
    years: tuple[int, ...]
    year: int | None


def make_ahead(desk: Desk) -> None:
    """Ask what the pages of Looking ask when they are first opened."""
    choices(desk)
    week_grid(desk, None, None)
    coverage(desk)


def choices(desk: Desk) -> Row:
    """Return the lines, pieces and retailers that have prices."""
    return desk.shelf.kept_rows(_CHOICES)[0]


def prices(desk: Desk, line: str | None, piece: str | None, retailer: str | None) -> list[Row]:
    """Return the dated prices of one line, piece or retailer, or of all."""
    return desk.shelf.kept_rows(_PRICES, {"line": line, "piece": piece, "retailer": retailer, "most": MOST_PRICES})


def week_grid(desk: Desk, line: str | None, year: int | None) -> WeekGrid:
    """Return the weeks of one year in which each chain advertised; the year with most adverts where none is named."""
    counts = {row["year"]: row["n"] for row in desk.shelf.kept_rows(_WEEK_YEARS, {"line": line})}
    if not counts:
        return WeekGrid((), (), (), None)
    years = tuple(counts)
    shown: int = year if year is not None and year in counts else max(years, key=lambda each: counts[each])
    first = date.fromisocalendar(shown, 1, 1)
    inside = desk.shelf.kept_rows(_WEEK_CELLS, {"line": line, "year": shown})
    # only the weeks between the first and the last that have anything, so that the table stays narrow
    start, end = min(row["week"] for row in inside), max(row["week"] for row in inside)
    weeks = tuple(w for w in (first + timedelta(weeks=n) for n in range(WEEKS_SHOWN)) if start <= w <= end)
    chains: dict[str, dict[date, Row]] = {}
    for row in inside:
        chains.setdefault(row["retailer"], {})[row["week"]] = row
    return WeekGrid(weeks, tuple(sorted(chains.items())), years, shown)


def coverage(desk: Desk) -> tuple[tuple[int, ...], list[tuple[str, dict[int, Row]]]]:
    """Return the years, and for each paper what lies in the file of each year."""
    found = desk.shelf.kept_rows(_COVERAGE)
    papers: dict[str, dict[int, Row]] = {}
    for row in found:
        papers.setdefault(row["publication"], {})[row["year"]] = row
    return tuple(sorted({row["year"] for row in found})), sorted(papers.items())


def undated(desk: Desk, page: int) -> list[Row]:
    """Return one page of the adverts whose days are not known, with the estimate of each; pages count from 1."""
    return desk.shelf.rows(_TO_DATE, [PAGE, (page - 1) * PAGE])


def advert_to_date(desk: Desk, advert_id: str) -> Row | None:
    """Return an advert with its estimate, None where the database has no such advert."""
    rows = desk.shelf.rows(
        "SELECT a.*, c.file, c.publication, c.published, e.* EXCLUDE (advert_id) FROM adverts a "
        "JOIN clippings c USING (clipping_id) LEFT JOIN date_estimates e USING (advert_id) WHERE a.advert_id = ?",
        [advert_id],
    )
    return rows[0] if rows else None


def evidence_of(desk: Desk, advert_id: str) -> list[Row]:
    """Return the evidence for an advert's date, what moved the answer most first."""
    return desk.shelf.rows(
        "SELECT * FROM evidence WHERE advert_id = ? ORDER BY struck, abs(coalesce(moved_bits, 0)) DESC, kind, text",
        [advert_id],
    )


def runs(desk: Desk) -> list[Row]:
    """Return all runs, with the sightings each rests on counted; a line over all shops comes before its shops."""
    return desk.shelf.rows("SELECT * FROM runs ORDER BY line, retailer NULLS FIRST, city NULLS FIRST")


def sightings(desk: Desk) -> list[dict[str, Any]]:
    """Return the dated sightings of all lines for the timeline."""
    return desk.shelf.rows(
        "SELECT line, retailer, seen_from, seen_to "
        "FROM sightings WHERE seen_from IS NOT NULL AND line IS NOT NULL ORDER BY line, retailer, seen_from LIMIT 5000"
    )


def places_of(desk: Desk, advert_ids: Sequence[str]) -> list[Row]:
    """Return the day, scan, paper, shop and town of some adverts, in order of days; at most 500."""
    return desk.shelf.rows(
        "SELECT a.advert_id, a.clipping_id, c.file, c.publication, a.retailer, coalesce(a.city, c.city) AS city, "
        "coalesce(a.valid_from, c.published_from) AS day FROM adverts a JOIN clippings c USING (clipping_id) "
        "SEMI JOIN (SELECT unnest(?) AS advert_id) USING (advert_id) "
        "ORDER BY day NULLS LAST, c.file, a.advert_id LIMIT 500",
        [list(advert_ids)],
    )

"""Compare what was found with the truth, page by page, into one score."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from adminer.records import ParsedPage
from adminer.score.calibration import Bin, calibration_error, reliability_curve
from adminer.score.causes import Miss, find_causes
from adminer.score.facts import (
    kinds_not_of,
    score_conditions,
    score_dates,
    score_lines,
    score_regions,
    score_sets,
    score_who_and_where,
)
from adminer.score.found import FoundPage, found_in_parsed
from adminer.score.prices import MONIES, match_prices
from adminer.score.tally import Tally
from adminer.score.text import LineScore, best_stretch, error_rate, score_transcript
from adminer.score.truth import TruePage

PRICE_FIELD = {"dollars": "prices, dollars", "sterling": "prices, shillings and pence", "piastres": "prices, piastres"}


@dataclass(frozen=True, slots=True)
class Score:
    """Hold the score of one reading of a corpus: counts by field, error rate, calibration, and every miss."""

    pages: int
    missing: tuple[str, ...]  # files of the truth with no page found
    fields: dict[str, Tally]
    error_rate: float | None  # best window of the line's length: the rule of the published figures
    least_error_rate: float | None  # best stretch of any length
    calibration: float | None
    curve: tuple[Bin, ...]
    misses: tuple[Miss, ...]


def score_found(found: Iterable[FoundPage], truth: Iterable[TruePage]) -> Score:
    """Score found pages against the truth; a page of the truth that was not found counts as found empty."""
    by_page = {(page.file, page.leaf): page for page in found}
    truth = tuple(truth)
    unused = kinds_not_of(truth)
    fields: dict[str, Tally] = {}
    judged: list[tuple[float, bool]] = []
    texts: list[LineScore] = []
    least: list[LineScore] = []
    misses: list[Miss] = []
    missing, count = [], 0
    for true in truth:
        if not true.readable:
            continue
        count += 1
        page = by_page.get((true.file, true.leaf))
        if page is None:
            missing.append(true.file)
            page = FoundPage(true.file, true.leaf, "")
        for name, tally in _page_tallies(true, page, unused).items():
            fields[name] = fields.get(name, Tally()) + tally
        for money in MONIES:
            matched = match_prices(true, page.prices, money)
            judged += [(pair.found.confidence, True) for pair in matched.pairs]
            judged += [(extra.confidence, False) for extra in matched.extra if matched.complete]
            misses += find_causes(true, page, matched)
        texts += score_transcript(true.transcript_lines, page.text)
        least += score_transcript(true.transcript_lines, page.text, best_stretch)
    curve = reliability_curve(judged)
    return Score(
        count,
        tuple(missing),
        {name: tally for name, tally in fields.items() if tally.true},
        error_rate(texts),
        error_rate(least),
        calibration_error(curve),
        curve,
        tuple(misses),
    )


def score_pages(parsed: Iterable[ParsedPage], truth: Iterable[TruePage]) -> Score:
    """Score parsed pages straight from the stages, without a database."""
    return score_found((found_in_parsed(page) for page in parsed), truth)


def _page_tallies(true: TruePage, page: FoundPage, unused: frozenset[str]) -> dict[str, Tally]:
    tallies: dict[str, Tally] = {}
    terms = items = strict = Tally()
    for money in MONIES:
        matched = match_prices(true, page.prices, money)
        tallies[PRICE_FIELD[money]] = matched.prices()
        items += matched.items()
        strict += matched.items(strict=True)
        terms += matched.terms()
    who, where = score_who_and_where(true, page)
    stated, listed = score_sets(true, page) if true.sets is not None else (Tally(), Tally())
    tallies |= {
        "priced items": items,
        "priced items, word for word": strict,
        "terms of prices": terms,
        "conditions": score_conditions(true, page, unused),
        "sets, stated number": stated,
        "sets, listed pieces": listed,
        "lines": score_lines(true, page) if true.lines is not None else Tally(),
        "retailer": who,
        "town": where,
        "dates": score_dates(true, page),
    }
    if true.adverts is not None:
        tallies["advert regions"] = score_regions(true, page)
        if len(true.adverts) > 1 or true.ad_type.startswith("whole"):
            tallies["advert regions, several on a page"] = tallies["advert regions"]
    return tallies

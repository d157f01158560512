"""Years printed in the text, and anniversaries counted from a founding year."""

from __future__ import annotations

import re
from collections.abc import Iterator
from datetime import date
from functools import lru_cache
from typing import Final

from adminer.dating.evidence.base import Case, Clue, Context, Floats
from adminer.dating.evidence.shapes import around, spell, stray
from adminer.dating.months import FIRST_YEAR, LAST_YEAR, MONTHS, index_of_year

KIND: Final = "printed years"
_YEAR: Final = re.compile(r"(?<![\w$#/.,-])(1[89]\d\d)(?![\w%¢]|[.,]\d|-\w)")
_BEGUN: Final = re.compile(
    r"(?:pat(?:ented|ents?|d)?\W{1,3}\w{3,9}\W{1,3}\d{1,2}|since|established|estab\.?|est\.?|founded|founded\s+in|from|\bno|number|model|style|lot|phone|call|pattern)\W*$",
    re.I,
)
_COPYRIGHT: Final = re.compile(r"(?:©|\(c\)|\bcop(?:yright|y'?r)(?:ed)?)[\W]{0,3}(?:by\b[^|\n]{0,40})?$", re.IGNORECASE)
_FOUNDED: Final = re.compile(r"(?:since|established|estab\.?|est\.?|founded(?:\s+in)?)\W{0,3}(1[89]\d\d)", re.I)
_ANNIVERSARY: Final = re.compile(r"\b(\d{1,3})(?:st|nd|rd|th)\s+(?:\w+\s+)?(?:anniversary|birthday|year)\b", re.I)
_NO_YEAR: Final = 0.10  # a number that is no year, or a year long past that is told about; judgement, no source


@lru_cache(maxsize=256)
def _printed_in(year: int) -> Floats:
    chances = dict.fromkeys(range(index_of_year(year), index_of_year(year) + 12), 1.0)
    # the year after still prints the old one now and then, the autumn before the coming one
    chances |= {index_of_year(year) + 12 + m: 0.5 * 0.85**m for m in range(24)}
    chances |= {index_of_year(year) - m: 0.3 * 0.7**m for m in range(1, 7)}
    inside = {m: c for m, c in chances.items() if 0 <= m < MONTHS}
    # what is told about lies in the past, so later months stay likelier than earlier ones
    later = {m: 4 * stray(_NO_YEAR, len(inside)) for m in range(max(inside, default=0), MONTHS)}
    return around(later | inside, stray(_NO_YEAR, len(inside)))


def find(case: Case, context: Context) -> Iterator[Clue]:
    """Yield the clue of the latest year printed, of a founding year, and of an anniversary."""
    latest: re.Match[str] | None = None
    for found in _YEAR.finditer(case.text):
        if _BEGUN.search(case.text[max(0, found.start() - 24) : found.start()]):
            continue
        if FIRST_YEAR <= int(found[1]) <= LAST_YEAR and (latest is None or int(found[1]) > int(latest[1])):
            latest = found
    if latest is not None:
        right = _COPYRIGHT.search(case.text[: latest.start()])
        yield Clue(
            KIND,
            f"'{' '.join(right[0].split())} {latest[1]}': printed in that year or reprinted after it"
            if right
            else f"the latest year printed is {latest[1]}",
            "printed on the advert",
            _printed_in(int(latest[1])),
            case.box_of(latest.start(), latest.end()),
            date(int(latest[1]), 1, 1),
        )
    founded = _FOUNDED.search(case.text)
    if founded and FIRST_YEAR < int(founded[1]) <= LAST_YEAR:
        yield Clue(
            KIND,
            f"'{founded[0]}': not before that year",
            "printed on the advert",
            spell(date(int(founded[1]), 1, 1)),
            case.box_of(founded.start(), founded.end()),
            date(int(founded[1]), 1, 1),
        )
    yield from _anniversary(case, context, int(founded[1]) if founded else None)


def _anniversary(case: Case, context: Context, founded: int | None) -> Iterator[Clue]:
    found = _ANNIVERSARY.search(case.text)
    if not found:
        return
    source = "printed on the advert"
    if founded is None:
        span = context.retailers.get(case.retailer_id or "")
        founded, source = (span.first, span.source) if span else (None, source)
    if founded is None:
        return
    year = founded + int(found[1])
    if not FIRST_YEAR <= year <= LAST_YEAR:
        return
    months = {index_of_year(year) + m: 1.0 for m in range(12)}
    months |= {index_of_year(year) + m: 0.3 for m in (*range(-12, 0), *range(12, 24)) if index_of_year(year) + m >= 0}
    yield Clue(
        KIND,
        f"'{found[0]}' of what began in {founded}",
        source,
        around({m: c for m, c in months.items() if m < MONTHS}, stray(0.25, len(months))),
        case.box_of(found.start(), found.end()),
        date(year - 1, 1, 1),
        date(min(year + 1, 9998), 12, 31),
    )

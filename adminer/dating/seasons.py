"""Seasons and issues printed with a year, as on catalogue covers: "Fall and Winter 1949", "Holiday 1950".

Seasons are written 21 (spring) to 24 (winter) after the year (EDTF level 1, ISO 8601-2:2019). A winter that follows its
autumn runs into the next year; one alone may be either end of its year, and keeps both. Selling seasons that are no
season of the year (holiday, Christmas, Easter, midwinter) are spans of months: common practice of the trade, no source.
"""

from __future__ import annotations

import calendar
import re
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from typing import Final

from adminer.dating.edtf import bounds_of
from adminer.dating.holidays_us import easter

_NUMBERS: Final = {"spring": 21, "summer": 22, "midsummer": 22, "autumn": 23, "fall": 23, "winter": 24}
_PARTS: Final = {
    # as printed and as readers slip in it ("Fali", "Sprlng"); only words that begin large, as on covers
    "spring": r"S[pn]r[il1]n[gq]",
    "midsummer": r"M[il1]d[\s-]?[Ss]u[mn][mn]er",
    "summer": r"S[ua][mn][mn]e[rt]",
    "autumn": r"Aut[ua][mn][mn]",
    "fall": r"Fa[li1!I]{2}",
    "midwinter": r"M[il1]d[\s-]?[Ww][il1]nt[eo]r",
    "winter": r"W[il1]nt[eo]r",
    "holiday": r"(?:Ho[li1]{1,2}iday|Christmas|Xmas)s?",
    "easter": r"[EF]aster",
}
_SPANS: Final = {"midwinter": (1, 2), "holiday": (11, 12)}  # first and last month
_WORDS: Final = (
    "sale sales clearance catalog catalogue catalogs book books gift number issue edition season bargain style of"
)
_MEDIAL: Final = rf"(?:\W{{0,3}}\b(?:{_WORDS.replace(' ', '|')})\b){{0,3}}"
_YEAR: Final = r"(?P<year>[1lI][89]\d\d)(?:\s?[-–—/]\s?(?P<next>(?:1[89])?\d\d)(?!\d))?(?![\d-])"
_ANY: Final = "|".join(_PARTS.values())
_PRINTED: Final = re.compile(
    rf"\b(?P<first>{_ANY})(?:(?:\s*(?:and|&|-|–|—|/)\s*|\s?a[nm]d\s?|\s)(?P<last>{_ANY}))?{_MEDIAL}\W{{0,3}}{_YEAR}",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True)
class Season:
    """Hold one season printed with its year: its characters, its EDTF, and the first and last day it may mean."""

    span: tuple[int, int]
    edtf: str
    earliest: date
    latest: date


def seasons_in(text: str) -> Iterator[Season]:
    """Yield every season or selling season printed with its year.

    Two that follow each other in the year are a span; in any other order, or with years that do not, the text is left
    alone.
    """
    for found in _PRINTED.finditer(text):
        if not found["first"][0].isupper():
            continue
        first, last = _name(found["first"]), _name(found["last"]) if found["last"] else None
        year = int(found["year"].translate(str.maketrans("lI", "11")))
        following = int(found["next"]) % 100 == (year + 1) % 100 if found["next"] else None
        read = _read(first, last, year, following)
        if read is not None:
            edtf, earliest, latest = read
            yield Season(found.span(), edtf, earliest, latest)


def _read(first: str, last: str | None, year: int, following: bool | None) -> tuple[str, date, date] | None:
    if first not in _NUMBERS:
        return None if last or following is not None else _months(first, year)
    one, two = _NUMBERS[first], _NUMBERS.get(last or first, 0)
    if following is not None and not (following and two == 24):
        return None  # "1949-50" is of what holds the turn of the year
    if one == two == 24 and following:
        return f"{year}-12/{year + 1}-02", date(year, 12, 1), _last_day(year + 1, 2)
    if two < one:
        return None
    edtf = f"{year}-{one}" if one == two else f"{year}-{one}/{year}-{two}"
    bounds = bounds_of(edtf)
    if bounds.earliest is None or bounds.latest is None:
        return None
    return edtf, bounds.earliest, bounds.latest


def _months(name: str, year: int) -> tuple[str, date, date]:
    day = easter(year)
    first, last = _SPANS.get(name, (day.month - 1, day.month))
    return f"{year}-{first:02d}/{year}-{last:02d}", date(year, first, 1), _last_day(year, last)


def _name(printed: str) -> str:
    return next(name for name, pattern in _PARTS.items() if re.fullmatch(pattern, printed, re.IGNORECASE))


def _last_day(year: int, month: int) -> date:
    return date(year, month, calendar.monthrange(year, month)[1])

"""Holidays of the United States and their moved dates, as far as adverts name them."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date, timedelta
from functools import lru_cache
from types import MappingProxyType
from typing import Final

_PROCLAIMED: Final[Mapping[int, int]] = MappingProxyType({1939: 23, 1940: 21, 1941: 20})
MONDAY, THURSDAY = 0, 3


def nth_weekday(year: int, month: int, weekday: int, nth: int) -> date:
    """Return the nth weekday of a month, the last for nth = -1."""
    if nth < 0:
        end = date(year + month // 12, month % 12 + 1, 1) - timedelta(days=1)
        return end - timedelta(days=(end.weekday() - weekday) % 7)
    first = date(year, month, 1)
    return first + timedelta(days=(weekday - first.weekday()) % 7 + 7 * (nth - 1))


def thanksgivings(year: int) -> tuple[date, ...]:
    """Return the days kept as Thanksgiving, the nation's first; two where states differed.

    Last Thursday to 1938; proclaimed a week early 1939-1941 while about half the states kept the last Thursday; fourth
    Thursday by the resolution of 26 December 1941, one state keeping the last until 1956.
    """
    last = nth_weekday(year, 11, THURSDAY, -1)
    if year <= 1938:
        return (last,)
    if year in _PROCLAIMED:
        return date(year, 11, _PROCLAIMED[year]), last
    fourth = nth_weekday(year, 11, THURSDAY, 4)
    return (fourth, last) if year <= 1956 and last != fourth else (fourth,)


@lru_cache(maxsize=256)
def easter(year: int) -> date:
    """Return Easter Sunday by the anonymous Gregorian rule (Nature, 20 April 1876; Meeus, Astronomical Algorithms)."""
    a, (b, c) = year % 19, divmod(year, 100)
    d, e = divmod(b, 4)
    g = (b - (b + 8) // 25 + 1) // 3
    h = (19 * a + b - d - g + 15) % 30
    i, k = divmod(c, 4)
    weekday = (32 + 2 * e + 2 * i - h - k) % 7
    m = (a + 11 * h + 22 * weekday) // 451
    month, day = divmod(h + weekday - 7 * m + 114, 31)
    return date(year, month, day + 1)


def memorial_day(year: int) -> date:
    """Return 30 May, from 1971 the last Monday of May (Public Law 90-363)."""
    return nth_weekday(year, 5, MONDAY, -1) if year >= 1971 else date(year, 5, 30)


def washingtons_birthday(year: int) -> date:
    """Return 22 February, from 1971 the third Monday of February (Public Law 90-363)."""
    return nth_weekday(year, 2, MONDAY, 3) if year >= 1971 else date(year, 2, 22)


def columbus_day(year: int) -> date:
    """Return 12 October, from 1971 the second Monday of October (Public Law 90-363)."""
    return nth_weekday(year, 10, MONDAY, 2) if year >= 1971 else date(year, 10, 12)


def veterans_day(year: int) -> date:
    """Return 11 November, 1971 to 1977 the fourth Monday of October (Public Law 90-363)."""
    return nth_weekday(year, 10, MONDAY, 4) if 1971 <= year <= 1977 else date(year, 11, 11)


def labor_day(year: int) -> date:
    """Return the first Monday of September (since 1894)."""
    return nth_weekday(year, 9, MONDAY, 1)

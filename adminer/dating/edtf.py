"""Read and write uncertain dates as EDTF (ISO 8601-2:2019 levels 0 to 2, Library of Congress profile of 4 Feb 2019).

Only the strict bounds of the `edtf` package are used: its fuzzy bounds pad year, month and day together, and
it turns an unknown end ("1985-04-12/") into ten years. Open and unknown ends are None here.
"""

from __future__ import annotations

import calendar
import re
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, timedelta
from functools import lru_cache
from typing import Any

from adminer.errors import FolderError

_SIGNIFICANT = re.compile(r"^(\d{4})S(\d)$")
_PLAIN = re.compile(r"^(\d{4})(?:-(0[1-9]|1[0-2])(?:-(\d\d))?)?[?~%]?$")
_WINTER = re.compile(r"^(\d{4})-24[?~%]?$")
_QUALIFIERS = re.compile(r"[?~%]")
_OPEN = ("", "..")


@dataclass(frozen=True, slots=True)
class DateBounds:
    """Hold the first and last day a date expression may mean; None where that side is open or unknown."""

    earliest: date | None
    latest: date | None
    qualified: bool = False  # marked uncertain or approximate by ?, ~ or %


@lru_cache(maxsize=8192)
def bounds_of(text: str) -> DateBounds:
    """Return the strict bounds of an EDTF string; FolderError where it is none.

    Raises FolderError, because such strings come from notes.csv and the other files of a clippings folder.
    """
    text = text.strip()
    if text in ("", "/", "../.."):
        raise _not_a_date(text)
    qualified = bool(_QUALIFIERS.search(text))
    if "/" in text and not text.startswith(("[", "{")):
        start, _, end = text.partition("/")
        first = None if start in _OPEN else _strict(start)[0]
        last = None if end in _OPEN else _strict(end)[1]
        if first is not None and last is not None and last < first:
            raise FolderError(
                f"'{text}' ends before it begins", remedy="write the earlier date first, for instance 1953/1955"
            )
        return DateBounds(first, last, qualified)
    return DateBounds(*_strict(text), qualified)


def _strict(text: str) -> tuple[date | None, date | None]:
    found = _SIGNIFICANT.match(text)
    if found:
        # the package ignores the number of significant digits: 1950S2 is some year 1900-1999
        span = 10 ** (4 - int(found[2]))
        first_year = int(found[1]) // span * span
        return date(max(first_year, 1), 1, 1), date(first_year + span - 1, 12, 31)
    plain = _PLAIN.match(text)
    if plain and int(plain[1]) > 0:
        return _plain_bounds(text, int(plain[1]), plain[2], plain[3])
    winter = _WINTER.match(text)
    if winter:
        # the package knows its December only; a winter is named after either of its years
        year = int(winter[1])
        return date(max(year - 1, 1), 12, 1), date(year + 1, 2, calendar.monthrange(year + 1, 2)[1])
    # the package takes 14 ms for a date of any kind, and a quarter of a second to load
    from edtf import parse_edtf  # noqa: PLC0415
    from edtf.parser.edtf_exceptions import EDTFParseException  # noqa: PLC0415

    try:
        parsed: Any = parse_edtf(text)
        return _as_date(parsed.lower_strict()), _as_date(parsed.upper_strict())
    except (EDTFParseException, ValueError, TypeError, AttributeError, IndexError) as error:
        raise _not_a_date(text) from error


def _plain_bounds(text: str, year: int, month: str | None, day: str | None) -> tuple[date, date]:
    """Return the bounds of a year, month or day without loading the package; most dates of a file are such."""
    if month is None:
        return date(year, 1, 1), date(year, 12, 31)
    number = int(month)
    if day is None:
        return date(year, number, 1), date(year, number, calendar.monthrange(year, number)[1])
    try:
        only = date(year, number, int(day))
    except ValueError:
        raise _not_a_date(text) from None
    return only, only


def _as_date(moment: Any) -> date | None:
    if isinstance(moment, float):
        return None
    return date(moment.tm_year, moment.tm_mon, moment.tm_mday)


def _not_a_date(text: str) -> FolderError:
    return FolderError(
        f"'{text}' is not a date in EDTF",
        remedy="write 1954-03-12, 1954-03, 1954?, 195X, 1953/1955 or 1953-11-05/.. (ISO 8601-2)",
    )


def day_or_interval(first: date | None, last: date | None) -> str:
    """Return the EDTF of a span of days, both ends included; an open side becomes '..'."""
    if first is not None and first == last:
        return first.isoformat()
    return f"{first.isoformat() if first else '..'}/{last.isoformat() if last else '..'}"


def yearless(first: tuple[int, int], last: tuple[int, int]) -> str:
    """Return the EDTF of days (month, day) whose year is unknown: 'XXXX-11-15/XXXX-11-17'; month 0 is unknown too."""
    parts = [f"XXXX-{month:02d}-{day:02d}" if month else f"XXXX-XX-{day:02d}" for month, day in (first, last)]
    return parts[0] if first == last else "/".join(parts)


def one_of_days(first: date, last: date) -> str:
    """Return the EDTF of one unknown day between two days: '[1953-11-01..1954-01-07]'."""
    return first.isoformat() if first == last else f"[{first.isoformat()}..{last.isoformat()}]"


def one_of_months(parts: Iterable[tuple[date, date]]) -> str:
    """Return the EDTF of one unknown month out of several spans of whole months, given by days inside them.

    Whole calendar years are written as years, as the same precision must stand on both sides of '..'.
    """
    pieces = []
    for first, last in parts:
        if first.month == 1 and last.month == 12:
            low, high = str(first.year), str(last.year)
        else:
            low, high = f"{first:%Y-%m}", f"{last:%Y-%m}"
        pieces.append(low if low == high else f"{low}..{high}")
    if len(pieces) == 1 and ".." not in pieces[0]:
        return pieces[0]
    return f"[{','.join(pieces)}]"


def middle_of(bounds: DateBounds) -> date | None:
    """Return the middle day of closed bounds, else None."""
    if bounds.earliest is None or bounds.latest is None:
        return None
    return bounds.earliest + timedelta(days=(bounds.latest - bounds.earliest).days // 2)

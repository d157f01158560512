"""A date printed in full, with day, month and year, read by the dateparser package.

Where a date stands in a text, and which of its letters are misread, calendar_words says; what a month's name and the
order of the figures mean, and whether that day exists, the package says. It would put '53 into our own century, so
two figures of a year are settled before by the years thought possible.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from datetime import date, datetime
from functools import lru_cache
from typing import Any, Final

from adminer.dating.calendar_words import DateWord

_SETTINGS: Final = {
    "DATE_ORDER": "MDY",
    "PARSERS": ["absolute-time"],  # no "yesterday", no stamps of a computer's clock
    "REQUIRE_PARTS": ["day", "month", "year"],
    "RELATIVE_BASE": datetime(1950, 1, 1),  # never today, so that a reading repeats to the day
}
_PARTS: Final = re.compile(r"\d+")


def full_date(group: Sequence[DateWord], years: range) -> date | None:
    """Return the day of a group of words that names one day, one month and a year; else, or if there is none, None.

    Weekdays are left to the calendar, as they are a check and no part of the day's name.
    """
    text = _in_full(group, years)
    return _day_named(text) if text else None


def _in_full(group: Sequence[DateWord], years: range) -> str | None:
    words = [word for word in group if word.kind in ("month", "number", "year", "numeric")]
    kinds = [word.kind for word in words]
    if kinds in (["month", "number", "year"], ["number", "month", "year"]):
        # the day by its value and the month without what is misread in it: "0ct l2"
        return " ".join(str(w.value) if w.kind != "month" else w.text.replace("0", "o") for w in words)
    if kinds in (["numeric"], ["numeric", "year"]):
        parts = [int(part) for part in _PARTS.findall(words[0].text)]
        year = year_meant(parts[2], years) if len(parts) == 3 else words[-1].value if len(words) == 2 else None
        return f"{parts[0]}/{parts[1]}/{year}" if year else None
    return None


def year_meant(printed: int, years: range) -> int | None:
    """Return a year printed with four figures as it is, with two as the first of the years thought possible."""
    return printed if printed >= 100 else next((year for year in years if year % 100 == printed), None)


@lru_cache(maxsize=4096)
def _day_named(text: str) -> date | None:
    # the package takes a quarter of a second to load, which texts without a full date must not pay
    found = _parser().get_date_data(text).date_obj
    return found.date() if found is not None else None


@lru_cache(maxsize=1)
def _parser() -> Any:
    from dateparser.date import DateDataParser  # noqa: PLC0415 - see above

    return DateDataParser(languages=["en"], settings=_SETTINGS)

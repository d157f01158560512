"""The date line of a page, "OSTERBY SENTINEL, Thursday, March 12, 1953": the paper's own day, printed in full.

Small type at a worn edge: where a letter of the month is misread the weekday says which month it was. Where the
weekday contradicts the day it says which figure of the day was lost, if only one can be ("11" set close is read as
"1"); else only the month is kept.
"""

from __future__ import annotations

import calendar
import re
from collections.abc import Iterator
from dataclasses import replace
from datetime import date
from typing import Final

from adminer.dating.calendar import YEARS, parse_printed_dates
from adminer.dating.calendar_words import MONTHS, WEEKDAYS
from adminer.dating.day_groups import with_a_figure_more
from adminer.dating.printed import PrintedDate

_LETTERS: Final = r"[A-Za-z]"
_WORN: Final = re.compile(
    rf"\b(?P<weekday>{'|'.join(sorted(WEEKDAYS, key=len, reverse=True))})\b[\s.,]{{1,3}}"
    rf"(?P<month>{_LETTERS}{{3,9}})[\s.,]{{1,3}}(?P<day>[0-3]?\d)(?:st|nd|rd|th)?[\s.,]{{1,3}}(?P<year>1[89]\d\d)(?!\d)",
    re.IGNORECASE,
)


def datelines_in(text: str, years: range = YEARS) -> tuple[PrintedDate, ...]:
    """Return the days a page's head prints in full, with their year, in order; what runs over days is no date line.

    A day that contradicts its weekday is the one that fits it with one figure more; where that leaves a choice it
    stands for its month, as a figure of it or the weekday is misread.
    """
    whole = [
        replace(found, kind="dateline")
        for found in parse_printed_dates(text, years=years)
        if found.kind in ("dateline", "printed") and found.earliest is not None and found.earliest == found.latest
    ]
    taken = [found.span for found in whole]
    worn = [found for found in _worn(text, years) if not any(a < found.span[1] and found.span[0] < b for a, b in taken)]
    return tuple(sorted((_mended(found) if found.problem else found for found in whole + worn), key=lambda f: f.span))


def _worn(text: str, years: range) -> Iterator[PrintedDate]:
    for found in _WORN.finditer(text):
        printed, day, year = found["month"].lower(), int(found["day"]), int(found["year"])
        if year not in years or printed in MONTHS:
            continue
        near = {
            number
            for name, number in MONTHS.items()
            if len(name) == len(printed) and sum(a != b for a, b in zip(name, printed, strict=True)) == 1
        }
        weekday = WEEKDAYS[found["weekday"].lower()]
        fitting = [
            m for m in near if day <= calendar.monthrange(year, m)[1] and date(year, m, day).weekday() == weekday
        ]
        if len(fitting) == 1:
            only = date(year, fitting[0], day)
            yield PrintedDate(
                found.span(), found[0], "dateline", only.isoformat(), only, only, (weekday,), ((only.month, day),)
            )


def _mended(found: PrintedDate) -> PrintedDate:
    """Return a day that contradicts its weekday as the one meant, or as its month."""
    first = found.earliest
    if first is None or len(found.weekdays) != 1:
        return _of_month(found)
    only = with_a_figure_more(first, found.weekdays[0])
    if only is None:
        return _of_month(found)
    return replace(found, edtf=only.isoformat(), earliest=only, latest=only, month_days=((only.month, only.day),))


def _of_month(found: PrintedDate) -> PrintedDate:
    if found.earliest is None:
        return found
    year, month = found.earliest.year, found.earliest.month
    last = date(year, month, calendar.monthrange(year, month)[1])
    return replace(found, edtf=f"{year:04d}-{month:02d}", earliest=date(year, month, 1), latest=last)

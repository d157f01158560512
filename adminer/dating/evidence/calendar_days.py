"""Dates read on the advert, the owner's note, and days printed without their year, whose weekday names the years."""

from __future__ import annotations

import re
from collections.abc import Iterator
from datetime import date
from typing import Final

from adminer.dating.calendar import parse_printed_dates
from adminer.dating.edtf import bounds_of
from adminer.dating.evidence.base import Case, Clue, Context, Floats
from adminer.dating.evidence.shapes import around, stray, within
from adminer.dating.months import FIRST_YEAR, LAST_YEAR, MONTHS, index_of
from adminer.dating.printed import PrintedDate
from adminer.dating.seasons import seasons_in
from adminer.errors import FolderError

KIND: Final = "calendar"
NOTE: Final = "owner's note"
PAGE: Final = "the page's date line"
_GREGORIAN = "Gregorian calendar"
_YEARS = range(FIRST_YEAR, LAST_YEAR + 1)
# chances that a note, a date or a weekday is not what it seems; judgement, no source
_WRONG_NOTE: Final = 0.01
_WRONG_DATE: Final = 0.007
_WRONG_DAY: Final = 0.015
_SEASON: Final = 2  # months beyond the first that a season or a year of issue has
_LOOKS_DATED = re.compile(
    r"(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*\.?\s*\d|\d{1,2}[/-]\d{1,2}[/-]\d\d", re.IGNORECASE
)


def find(case: Case, _context: Context) -> Iterator[Clue]:
    """Yield the clues of notes and printed dates."""
    note = _note(case)
    if note is not None:
        yield note
    dated = False
    for read in case.dates:
        if read.earliest is not None or read.latest is not None:
            dated = True
            of_page = read.kind == "dateline"
            yield Clue(
                PAGE if of_page else KIND,
                f"'{' '.join(read.text.split())}'",
                "the paper's day, as its page prints it" if of_page else "printed on the advert",
                _known(read.kind, read.earliest, read.latest, 1 - read.confidence)
                if not _is_winter(read.text)
                else _winter(read.earliest, read.latest, 1 - read.confidence),
                read.box,
                read.earliest,
                read.latest,
            )
    if not dated and _LOOKS_DATED.search(case.text):
        seen: set[tuple[object, ...]] = set()
        for printed in parse_printed_dates(case.text, years=_YEARS):
            clue = _from_text(case, printed)
            if clue is not None and (printed.month_days, printed.weekdays) not in seen:
                seen.add((printed.month_days, printed.weekdays))
                yield clue


def _note(case: Case) -> Clue | None:
    if not case.published:
        return None
    try:
        bounds = bounds_of(case.published)
    except FolderError:
        return None
    first = index_of(bounds.earliest) if bounds.earliest else 0
    last = index_of(bounds.latest) if bounds.latest else MONTHS - 1
    # an approximate date may be off by a year or two; EDTF leaves it open by how much
    soft = 18 if bounds.qualified else 0
    months = max(1, last - first + 1 + 2 * soft)
    likelihood = within(first, last, stray(_WRONG_NOTE, months), edge=0.35 if soft else 0.0, edge_months=soft)
    return Clue(
        NOTE, f"noted as published {case.published}", "notes.csv", likelihood, None, bounds.earliest, bounds.latest
    )


def _known(kind: str, earliest: date | None, latest: date | None, doubt: float) -> Floats:
    first = index_of(earliest or latest or date(FIRST_YEAR, 1, 1))
    last = index_of(latest or earliest or date(LAST_YEAR, 12, 31))
    floor = stray(max(_WRONG_DATE, min(0.3, doubt)), max(1, last - first + 1))
    if kind == "expiry":
        # an offer runs out some weeks, seldom many months after the advert; common practice, no source
        return around({last - back: 0.7**back for back in range(12)}, 3 * floor)
    if kind == "dateline":
        return within(first, last, floor)  # the paper's own day, not one of an offer ahead
    if last - first >= _SEASON:
        # a catalogue goes out one to three months before its season; common practice, no source
        ahead = {first - back: chance for back, chance in ((1, 1.0), (2, 0.7), (3, 0.3))}
        return around(dict.fromkeys(range(first, last + 1), 1.0) | ahead | {last + 1: 0.2}, floor)
    return within(first, last, floor, edge=0.05, edge_months=1)


def _is_winter(text: str) -> bool:
    return any(season.edtf.endswith("-24") and "/" not in season.edtf for season in seasons_in(text))


def _winter(earliest: date | None, latest: date | None, doubt: float) -> Floats:
    # "Winter Sale 1952" is mostly of the new year, or of the end of that year; the seasons of winters are judgement
    if earliest is None or latest is None:
        return _known("printed", earliest, latest, doubt)
    first, last = index_of(earliest), index_of(latest)  # December before to February after
    chances = {first: 0.5, first + 1: 1.0, first + 2: 1.0, first + 3: 0.2, first + 11: 0.4, first + 12: 0.7}
    chances |= {last - 1: 0.4, last: 0.4}
    return around(chances, stray(max(_WRONG_DATE, min(0.3, doubt)), len(chances)))


def _from_text(case: Case, printed: PrintedDate) -> Clue | None:
    box = case.box_of(*printed.span)
    if printed.earliest is not None or printed.latest is not None:
        likelihood = _known(printed.kind, printed.earliest, printed.latest, 0.05 if printed.problem else _WRONG_DATE)
        return Clue(
            KIND, f"'{printed.text}'", "printed on the advert", likelihood, box, printed.earliest, printed.latest
        )
    if not printed.month_days:
        return None
    month, day = printed.month_days[0]
    # a sale of the first days of a month was advertised in the month before; an expiry lies up to months ahead
    back = {0: 1.0, 1: 0.7, 2: 0.5, 3: 0.3} if printed.kind == "expiry" else {0: 1.0, 1: 0.4 if day <= 4 else 0.01}
    if printed.years:
        months = {index_of(date(y, month, 1)) - b: chance for y in printed.years for b, chance in back.items()}
        names = ", ".join(str(y) for y in printed.years if y >= 1930) or "no year of the study"
        # days that are all wrong in the same way are rarer than one wrong day
        wrong = _WRONG_DAY / min(3, max(1, len(printed.weekdays)))
        beside = {index_of(date(y, month, 1)) - b: stray(wrong, len(printed.years)) * 12 for y in _YEARS for b in back}
        return Clue(
            KIND,
            f"'{' '.join(printed.text.split())}' falls on that weekday in {names}",
            _GREGORIAN,
            around(beside | months, stray(_WRONG_DATE, len(printed.years))),
            box,
        )
    months = {index_of(date(y, month, 1)) - b: chance for y in _YEARS for b, chance in back.items()}
    return Clue(
        KIND,
        f"'{' '.join(printed.text.split())}' names the month",
        _GREGORIAN,
        around(months, stray(2 * _WRONG_DATE, len(_YEARS))),
        box,
    )

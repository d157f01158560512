"""The printed schedule of weeks of a programme: which piece is the feature of which week.

Printed as a table ("1st, 6th, 11th week / Dinner plate"), as a list ("Week 1: Dinner plate") or by days a week apart
("Jan. 8 Dinner plate"). One such list is one condition of the advert; its rows are no offers.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from functools import lru_cache
from itertools import pairwise
from typing import Final

from rapidfuzz import fuzz, process

from adminer.dating.schedules import LONGEST_WEEKS, NUMBERS
from adminer.parsing.prices.column_heads import shares_row
from adminer.parsing.prices.prices import Found
from adminer.parsing.sets.listings import NamedPiece
from adminer.parsing.text.stretches import is_taken
from adminer.parsing.text.text import AdvertText, TextLine
from adminer.records import Box, ConditionText

_ORDINAL: Final = r"(?:[\dIlOo]{1,2} ?(?:st|nd|rd|th)\b\.?)"
_NUMBER: Final = rf"(?:{_ORDINAL}|\d{{1,2}}\b|(?:{'|'.join(sorted(NUMBERS, key=len, reverse=True))})\b)"
_LIST: Final = rf"{_NUMBER}(?:(?:\s*[,.;&]\s*|\s+and\s+|\s+)(?:and\s+)?{_NUMBER})*"
_WEEKS: Final = re.compile(
    rf"(?P<before>{_LIST})\s*weeks?\b(?!\s+(?:of|in|only)\b)|\bweeks?\s*(?:nos?\.?\s*)?(?P<after>{_LIST})(?!\s*(?:of|in)\b)",
    re.IGNORECASE,
)
_EACH: Final = re.compile(_NUMBER, re.IGNORECASE)
_DAY: Final = re.compile(
    r"^(?:week of )?(?P<month>jan|feb|mar|apr|may|june?|july?|aug|sept?|oct|nov|dec)[a-z]*\.? ?(?P<day>\d{1,2})\b",
    re.IGNORECASE,
)
_MONTHS: Final = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
_FIGURES: Final = str.maketrans({"I": "1", "l": "1", "O": "0", "o": "0"})
_LEAST_ROWS: Final = 2
_LEAST_WEEKS: Final = 3
_LEAST_DAYS: Final = 3  # rows of days a week apart
_ALIKE: Final = 84  # rapidfuzz ratio, as for misread pieces


@dataclass(frozen=True, slots=True)
class Schedule:
    """Hold a printed schedule: (week, piece id) in order, its condition, and its characters in the advert."""

    weeks: tuple[tuple[int, str], ...]
    condition: ConditionText
    spans: tuple[tuple[int, int], ...]


def spans_without_prices(
    schedule: Schedule, advert: AdvertText, prices: Sequence[Found], pieces: Sequence[NamedPiece]
) -> list[tuple[int, int]]:
    """Return the characters of a schedule that name no item: all but the pieces with a price on their row."""
    rows = [p.place for p in prices]
    return [
        (start, end)
        for start, end in schedule.spans
        if not is_taken(start, end, pieces)
        or not any(shares_row(advert.flat(advert.box_of(start, end)), place) for place in rows)
    ]


@dataclass(frozen=True, slots=True)
class _Row:
    weeks: tuple[int, ...]
    piece: str
    spans: tuple[tuple[int, int], ...]


def find_schedule(advert: AdvertText, piece_names: dict[str, str]) -> Schedule | None:
    """Return the schedule an advert prints, or None; `piece_names` are the names of pieces with their ids."""
    names = tuple(sorted(piece_names))
    rows = _numbered_rows(advert, piece_names, names)
    if len(rows) < _LEAST_ROWS or sum(len(row.weeks) for row in rows) < _LEAST_WEEKS:
        rows = _dated_rows(advert, piece_names, names)
    if not rows:
        return None
    spans = tuple(sorted({span for row in rows for span in row.spans}))
    weeks = tuple(sorted({(week, row.piece) for row in rows for week in row.weeks}))
    box: Box = advert.box_of(*spans[0])
    for span in spans[1:]:
        box = box.joined(advert.box_of(*span))
    said = "; ".join(" ".join(" ".join(advert.text[a:b].split()) for a, b in row.spans) for row in rows)
    sure = min(advert.confidence_of(a, b) for a, b in spans)
    condition = ConditionText("schedule", said, box, round(0.9 * sure, 3), str(max(week for week, _ in weeks)))
    return Schedule(weeks, condition, spans)


def _numbered_rows(advert: AdvertText, piece_names: dict[str, str], names: tuple[str, ...]) -> list[_Row]:
    rows: list[_Row] = []
    taken: set[int] = set()
    for line in advert.lines:
        found = _WEEKS.search(advert.text, line.start, line.end)
        if found is None:
            continue
        weeks = tuple(n for m in _EACH.finditer(found["before"] or found["after"]) if (n := _number(m[0])))
        if not weeks or any(week in taken for week in weeks):
            continue
        row = _with_piece(advert, line, found.span(), weeks, piece_names, names)
        if row is not None:
            rows.append(row)
            taken.update(weeks)
    return rows


def _dated_rows(advert: AdvertText, piece_names: dict[str, str], names: tuple[str, ...]) -> list[_Row]:
    """Return rows that begin with days a week apart, numbered from 1; none where the days do not follow so."""
    rows: list[tuple[int, _Row]] = []
    for line in advert.lines:
        found = _DAY.match(advert.printed(line))
        if found is None or not 1 <= int(found["day"]) <= 28 + 3 * (found["month"][:3].lower() != "feb"):
            continue
        day = _day_of_year(_MONTHS.index(found["month"][:3].lower()) + 1, int(found["day"]))
        span = (line.start, line.start + found.end())
        row = _with_piece(advert, line, span, (len(rows) + 1,), piece_names, names)
        if day is not None and row is not None:
            rows.append((day, row))
    steps = [(later - earlier) % 365 for (earlier, _), (later, _) in pairwise(rows)]
    return [row for _, row in rows] if len(rows) >= _LEAST_DAYS and all(step in (7, 8) for step in steps) else []


def _day_of_year(month: int, day: int) -> int | None:
    try:
        return date(1951, month, day).timetuple().tm_yday  # any year without a leap day: a step over it counts 8
    except ValueError:
        return None


def _with_piece(
    advert: AdvertText,
    line: TextLine,
    span: tuple[int, int],
    weeks: tuple[int, ...],
    piece_names: dict[str, str],
    names: tuple[str, ...],
) -> _Row | None:
    """Find the piece of a row: behind or before its weeks in the line, else in the next text of the same row."""
    for start, end in ((span[1], line.end), (line.start, span[0])):
        if (name := _piece_in(advert.text[start:end], names)) is not None:
            return _Row(weeks, piece_names[name], ((min(start, span[0]), max(end, span[1])),))
    beside = sorted(
        (abs(other.flat.centre[0] - line.flat.centre[0]), other.start, other.end)
        for other in advert.lines
        if other is not line and shares_row(line.flat, other.flat)
    )
    for _, start, end in beside:
        if (name := _piece_in(advert.text[start:end], names)) is not None:
            return _Row(weeks, piece_names[name], (span, (start, end)))
    return None


@lru_cache(maxsize=4096)
def _piece_in(text: str, names: Sequence[str]) -> str | None:
    """Return the name of a piece that a short text is, whatever a letter of it, or that it holds."""
    words = re.sub(r"[^a-z &]", " ", text.lower()).split()
    if not words:
        return None
    whole = " ".join(words)
    near = process.extractOne(whole, names, scorer=fuzz.ratio, score_cutoff=_ALIKE)
    if near is not None:
        return str(near[0])
    inside = (name for name in names if name in whole)  # few: a pattern is made for each
    held = [name for name in inside if re.search(rf"(?<![a-z]){re.escape(name)}(?:e?s)?(?![a-z])", whole)]
    return max(held, key=len) if held else None


def _number(text: str) -> int | None:
    """Return the number of a week printed as a figure, an ordinal or a word, or None beyond any programme's length."""
    if (known := NUMBERS.get(text.lower())) is not None:
        return known
    figure = re.sub(r"(?:st|nd|rd|th)\b\.?", "", text).strip().translate(_FIGURES)
    return int(figure) if figure.isdigit() and 1 <= int(figure) <= LONGEST_WEEKS else None

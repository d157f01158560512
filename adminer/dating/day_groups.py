"""Days of a month with their weekdays, before the year is known, and the years in which they agree."""

from __future__ import annotations

import calendar
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from itertools import pairwise
from typing import Final

from adminer.dating.calendar_words import DateWord
from adminer.dating.printed import WEEK_FROM, WEEK_TO

_TWO_FIGURES: Final = 10  # the first day of the month with two figures


@dataclass(frozen=True, slots=True)
class Days:
    """Hold the days of a group before the year is known."""

    month_days: tuple[tuple[int, int], ...]
    weekdays: tuple[int, ...]
    is_range: bool
    pairs: tuple[tuple[tuple[int, int], ...], ...]  # ways in which days (by index) and weekdays may belong together
    end_weekday: int | None  # the span runs on to this weekday


def days_of(group: Sequence[DateWord]) -> Days:
    """Return the days a group of words names, each with its month, and the weekdays beside them."""
    months = [w for w in group if w.kind == "month"]
    day_first = next(w for w in group if w.kind in ("month", "number")).kind == "number"
    month_days: list[tuple[int, int]] = []
    links: list[str] = []
    link = "list"
    month = months[0].value if day_first else 0
    for i, word in enumerate(group):
        link = "to" if "to" in (link, word.link) else "dash" if "dash" in (link, word.link) else "list"
        if word.kind == "month":
            month = word.value
        elif word.kind == "number" and month:
            if day_first:
                month = next((w.value for w in group[i:] if w.kind == "month"), month)
            month_days.append((month, word.value))
            links.append(link)
            link = "list"
    weekdays = [w for w in group if w.kind == "weekday"]
    is_range = len(month_days) == 2 and links[1] in ("to", "dash")
    return paired(tuple(month_days), weekdays, is_range, group)


def day_in_full(full: date, group: Sequence[DateWord]) -> Days:
    """Return the one day of a group that was read in full, with the weekdays beside it."""
    return paired(((full.month, full.day),), [w for w in group if w.kind == "weekday"], False, group)


def paired(
    month_days: tuple[tuple[int, int], ...], weekdays: Sequence[DateWord], is_range: bool, group: Sequence[DateWord]
) -> Days:
    """Return days with the ways in which the weekdays printed may belong to them."""
    names = tuple(w.value for w in weekdays)
    if not names:
        return Days(month_days, names, is_range, (), None)
    if len(names) == len(month_days):
        days_begin = next(w.start for w in group if w.kind in ("month", "number", "numeric"))
        if len(names) == 1 and weekdays[0].start > days_begin and weekdays[0].link == "to":
            return Days(month_days, names, True, (), names[0])  # "Nov. 9 thru Saturday"
        return Days(month_days, names, is_range, (tuple(enumerate(names)),), None)
    if len(month_days) == 1:
        return Days(month_days, names, True, (((0, names[0]),),), names[-1])
    in_order = all(w.link == "list" for w in weekdays[1:]) and all((b - a) % 7 == 1 for a, b in pairwise(names))
    if not is_range and in_order and 1 < len(names) < len(month_days):
        # a weekday was not read: the others still stand in order, beginning at one of the days
        ways = range(len(month_days) - len(names) + 1)
        return Days(month_days, names, False, tuple(tuple((i + k, n) for i, n in enumerate(names)) for k in ways), None)
    ends = ((0, names[0]), (len(month_days) - 1, names[-1]))
    return Days(month_days, names, is_range, (ends[: len(names)],), None)


def with_a_figure_more(read: date, weekday: int) -> date | None:
    """Return the day of two figures on that weekday of which one figure was read, None where that leaves a choice."""
    if read.day >= _TWO_FIGURES:
        return None
    last = calendar.monthrange(read.year, read.month)[1]
    longer = [read.replace(day=day) for day in range(_TWO_FIGURES, last + 1) if str(read.day) in str(day)]
    fitting = [day for day in longer if day.weekday() == weekday]
    twice = [day for day in fitting if str(day.day) == 2 * str(read.day)]  # like figures set close are read as one
    meant = twice or fitting
    return meant[0] if len(meant) == 1 else None


def exists(year: int, month: int, day: int) -> bool:
    """Say whether the calendar has a day."""
    try:
        date(year, month, day)
    except ValueError:
        return False
    return True


def span_in(days: Days, year: int, before: str) -> tuple[date, date] | None:
    """Return the first and last day in a year, None where that year lacks one; `before` are the words before."""
    (m1, d1), (m2, d2) = days.month_days[0], days.month_days[-1]
    last_year = year + 1 if m2 < m1 else year
    if not (exists(year, m1, d1) and exists(last_year, m2, d2)):
        return None
    first, last = date(year, m1, d1), date(last_year, m2, d2)
    if days.end_weekday is not None:
        last += timedelta(days=(days.end_weekday - last.weekday()) % 7)
    elif len(days.month_days) == 1 and WEEK_FROM.search(before):
        last = first + timedelta(days=6)
    elif len(days.month_days) == 1 and WEEK_TO.search(before):
        first = last - timedelta(days=6)
    return (first, last) if first <= last else None


def agrees(days: Days, year: int) -> bool:
    """Say whether the weekdays printed are those of the days in a year."""
    return not days.pairs or any(all(_falls_on(days, i, weekday, year) for i, weekday in way) for way in days.pairs)


def _falls_on(days: Days, index: int, weekday: int, year: int) -> bool:
    month, day = days.month_days[index]
    at = year + 1 if month < days.month_days[0][0] else year
    return exists(at, month, day) and date(at, month, day).weekday() == weekday

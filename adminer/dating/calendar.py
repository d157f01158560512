"""Printed dates of adverts to days, with the weekday as a checksum that can recover the year.

"Thurs., Fri., Sat., Mar. 12-13-14", "now thru Sat.", "week of Nov. 9", "10/10/49", "this coming Monday".
Gregorian arithmetic is that of `datetime`; a weekday printed with month and day repeats after 5, 6 or 11 years.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import replace
from datetime import date, timedelta
from typing import Final

from adminer.dating.calendar_words import DateWord, words_of_dates
from adminer.dating.day_groups import Days, agrees, day_in_full, days_of, exists, paired, span_in, with_a_figure_more
from adminer.dating.edtf import day_or_interval, yearless
from adminer.dating.full_dates import full_date, year_meant
from adminer.dating.printed import EXPIRES, FOR_PRICES, NO_DATE, OPENS, UNTIL, WEEK_FROM, PrintedDate, PrintedKind
from adminer.dating.seasons import seasons_in
from adminer.dating.weekdays_alone import day_of_this_month, weekdays_only

YEARS: Final = range(1890, 1981)

# how far from the paper's date a printed day may lie and still mean that year: sales run about the issue,
# coupons may be good for long after it; common practice, no source
_BEFORE, _AFTER, _AFTER_EXPIRY = timedelta(days=21), timedelta(days=75), timedelta(days=400)
_NARROW = timedelta(days=31)

_GOOD: Final = re.compile(r"\b(?:good|sale|dates?|specials?)\W*(?:from\W*)?$", re.IGNORECASE)
_PAST: Final = re.compile(
    r"\b(?:pat(?:ented|ents?)?|patd|founded|established|incorporated|born|since)\W*$", re.IGNORECASE
)
_LOOK_BACK, _LOOK_AHEAD = 45, 20


def candidate_years(weekday: int, month: int, day: int, years: Iterable[int] = YEARS) -> tuple[int, ...]:
    """Return the years in which a month and day fall on a weekday (Monday is 0)."""
    return tuple(y for y in years if exists(y, month, day) and date(y, month, day).weekday() == weekday)


def parse_printed_dates(
    text: str, *, reference: tuple[date, date] | None = None, years: range = YEARS
) -> tuple[PrintedDate, ...]:
    """Return the dates printed in a text, in order.

    `reference` is the first and last day the paper may have appeared; it settles years left out and words like
    "this coming Monday". `years` are those thought possible. What is no date (sizes, prices, opening hours) is left.
    """
    found = []
    for group in words_of_dates(text):
        start, end = group[0].start, group[-1].end
        before, after = text[max(0, start - _LOOK_BACK) : start], text[end : end + _LOOK_AHEAD]
        if _PAST.search(before):
            continue  # the day of a patent or a founding is none of the advert's
        read = _read_group(group, before, after, reference, years)
        if read is not None:
            found.append(replace(read, span=(start, end), text=text[start:end]))
    for season in seasons_in(text):
        words = text[slice(*season.span)]
        found.append(PrintedDate(season.span, words, "printed", season.edtf, season.earliest, season.latest))
    return tuple(sorted(found, key=lambda one: one.span))


def _read_group(
    group: Sequence[DateWord], before: str, after: str, reference: tuple[date, date] | None, years: range
) -> PrintedDate | None:
    kinds = {w.kind for w in group}
    if "numeric" in kinds:
        return _numeric(group, before, reference, years)
    if "month" in kinds and "number" in kinds:
        full = full_date(group, years)
        days = days_of(group) if full is None else day_in_full(full, group)
        year = _year_of(group) if full is None else full.year
        return _with_days(days, year, before, group, reference=reference, years=years)
    if "month" in kinds and "year" in kinds:
        return _month_and_year(group)
    if "weekday" in kinds and (ordinals := [w for w in group if w.kind == "number" and w.text[-1].isalpha()]):
        return day_of_this_month(group, [w.value for w in ordinals], before, reference)
    if kinds & {"weekday", "today", "tomorrow"}:
        return weekdays_only(group, before, after, reference)
    return None


def _year_of(group: Sequence[DateWord]) -> int | None:
    return next((w.value for w in reversed(group) if w.kind == "year"), None)


def _with_days(
    days: Days,
    year: int | None,
    before: str,
    group: Sequence[DateWord],
    *,
    reference: tuple[date, date] | None,
    years: range,
) -> PrintedDate | None:
    if not days.month_days or not all(exists(2000, m, d) for m, d in days.month_days):
        return None
    kind = _kind(days, year, before, bool(group) and group[0].kind == "now")
    spans = {y: span for y in years if (span := span_in(days, y, before)) is not None}
    fitting = {y: span for y, span in spans.items() if agrees(days, y)}
    problem = None
    if year is not None:
        first_year = year - 1 if days.month_days[0][0] > days.month_days[-1][0] else year
        chosen = span_in(days, first_year, before)
        if chosen is not None and not agrees(days, first_year):
            problem = f"the printed weekday does not fall on that day in {year}"
    elif not fitting:
        chosen, problem = None, "no year has those days on those weekdays: one of them is misread"
    else:
        chosen, problem = _near(fitting, spans, kind, reference)
    result = PrintedDate((0, 0), "", kind, None, None, None, days.weekdays, days.month_days, (), problem)
    if chosen is None:
        if problem and reference and (whole := _with_lost_figure(days, reference)) is not None:
            only = day_or_interval(whole, whole)
            points = ((whole.month, whole.day),)
            return replace(result, edtf=only, earliest=whole, latest=whole, month_days=points, problem=None)
        printed = {((a.month, a.day), (b.month, b.day)) for a, b in fitting.values()}
        edtf = yearless(*printed.pop()) if len(printed) == 1 and year is None and not problem else None
        return replace(result, edtf=edtf, years=tuple(fitting) if days.pairs else ())
    first, last = chosen
    if _is_until(group, before, days):
        first_known = reference[0] if reference and reference[1] - reference[0] <= _NARROW else None
        first_known = first_known if first_known and first_known <= last else None
        if kind != "expiry":
            return replace(result, edtf=day_or_interval(first_known, last), earliest=first_known, latest=last)
    opens = kind == "validity" and first == last and bool(OPENS.search(before)) and not WEEK_FROM.search(before)
    return replace(result, edtf=day_or_interval(first, last), earliest=first, latest=last, opens=opens)


def _kind(days: Days, year: int | None, before: str, now: bool) -> PrintedKind:
    if EXPIRES.search(before):
        return "expiry"
    if now or days.is_range or len(days.month_days) > 1 or FOR_PRICES.search(before):
        return "validity"
    return "dateline" if days.weekdays and year is not None else "printed" if year is not None else "validity"


def _is_until(group: Sequence[DateWord], before: str, days: Days) -> bool:
    single = len(days.month_days) == 1 and not days.is_range
    return single and (group[0].kind == "now" or bool(UNTIL.search(before)))


def _with_lost_figure(days: Days, reference: tuple[date, date]) -> date | None:
    """Return the one day near the paper's that a single day was before a figure of it was lost in reading."""
    if len(days.month_days) != 1 or len(days.weekdays) != 1 or reference[1] - reference[0] > _NARROW:
        return None
    month, day = days.month_days[0]
    read = [date(y, month, day) for y in {reference[0].year, reference[1].year} if exists(y, month, day)]
    whole = [with_a_figure_more(first, days.weekdays[0]) for first in read]
    near = [d for d in whole if d and reference[0] - _BEFORE <= d <= reference[1] + _AFTER]
    return near[0] if len(near) == 1 else None


def _near(
    fitting: dict[int, tuple[date, date]],
    spans: dict[int, tuple[date, date]],
    kind: PrintedKind,
    reference: tuple[date, date] | None,
) -> tuple[tuple[date, date] | None, str | None]:
    if reference is None:
        return (next(iter(fitting.values())), None) if len(fitting) == 1 else (None, None)
    low, high = reference[0] - _BEFORE, reference[1] + (_AFTER_EXPIRY if kind == "expiry" else _AFTER)
    inside = [span for span in fitting.values() if span[1] >= low and span[0] <= high]
    if not inside:
        if any(span[1] >= low and span[0] <= high for span in spans.values()):
            return None, "the printed weekday contradicts the date of the paper: one of them is wrong"
        return None, None
    if len(inside) > 1 and reference[1] - reference[0] > _NARROW:
        return None, None
    return min(inside, key=lambda span: (abs((span[0] - reference[0]).days), span)), None


def _numeric(
    group: Sequence[DateWord], before: str, reference: tuple[date, date] | None, years: range
) -> PrintedDate | None:
    if NO_DATE.search(before) or any(_is_run_of_days(word.text) for word in group):
        return None
    full = full_date(group, years)
    points = [(full.month, full.day)] if full else []
    year = full.year if full else _year_of(group)
    for word in group:
        if full or word.kind != "numeric":
            continue
        parts = [int(p) for p in re.split(r"[/-]", word.text)]
        month, day = (parts[0], parts[1]) if parts[0] <= 12 else (parts[1], parts[0])
        if not exists(2000, month, day):
            return None
        points.append((month, day))
        if len(parts) == 3:
            year = year_meant(parts[2], years)
            if year is None:
                return None
    weekdays = [w for w in group if w.kind == "weekday"]
    # "3/14" without a year is a fraction or a size unless something says that it is a date
    if (
        year is None
        and not weekdays
        and not EXPIRES.search(before)
        and not re.search(r"effective|thru\W*$", before, re.I)
        and not (len(group) == 2 and group[1].link == "to" and _GOOD.search(before))
    ):
        return None
    days = paired(tuple(points), weekdays, len(points) == 2, group)
    return _with_days(days, year, before, group, reference=reference, years=years)


def _is_run_of_days(text: str) -> bool:
    # "9-10-11" after a month that was not read: three days of a sale, as few dates count on like this
    parts = [int(part) for part in text.split("-")] if "-" in text else []
    return len(parts) == 3 and parts[1] == parts[0] + 1 and parts[2] == parts[1] + 1


def _month_and_year(group: Sequence[DateWord]) -> PrintedDate:
    months = [w.value for w in group if w.kind == "month"]
    year = _year_of(group) or 0
    first, last = date(year, months[0], 1), _end_of(year, months[-1])
    if last < first:  # "December and January 1915"
        first = date(year - 1, months[0], 1)
    one, two = f"{first:%Y-%m}", f"{last:%Y-%m}"
    return PrintedDate((0, 0), "", "printed", one if one == two else f"{one}/{two}", first, last)


def _end_of(year: int, month: int) -> date:
    return (date(year, month, 1) + timedelta(days=31)).replace(day=1) - timedelta(days=1)

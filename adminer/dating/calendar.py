"""Printed dates of adverts to days, with the weekday as a checksum that can recover the year.

"Thurs., Fri., Sat., Mar. 12-13-14", "now thru Sat.", "week of Nov. 9", "10/10/49", "this coming Monday".
Gregorian arithmetic is that of `datetime`; a weekday printed with month and day repeats after 5, 6 or 11 years.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta
from itertools import pairwise
from typing import Final, Literal

from adminer.dating.calendar_words import THRU, DateWord, words_of_dates
from adminer.dating.edtf import bounds_of, day_or_interval
from adminer.dating.full_dates import full_date, year_meant
from adminer.dating.seasons import seasons_in

PrintedKind = Literal["validity", "expiry", "dateline", "printed"]
YEARS: Final = range(1890, 1981)

# how far from the paper's date a printed day may lie and still mean that year: sales run about the issue,
# coupons may be good for long after it; common practice, no source
_BEFORE, _AFTER, _AFTER_EXPIRY = timedelta(days=21), timedelta(days=75), timedelta(days=400)
_NARROW = timedelta(days=31)

_EXPIRY = re.compile(
    r"(?:expir\w*|void\s+after|not\s+good\s+after|(?:good|valid|redeemable|offer\s+good)\s+(?:only\s+)?(?:until|"
    + THRU
    + r"|till?|to)"
    r"|(?:offer|sale|coupon)\s+(?:ends|closes|expires)|ends|closes|redeem\s+(?:by|before)|last\s+day)\W*(?:on\s+|midnight\s+)?$",
    re.IGNORECASE,
)
_VALIDITY = re.compile(
    rf"(?:effective|prices?\s+good|good|sale|special\w*|on\s+sale|starts?|starting|beginning|begins|from|week|days?|only|"
    rf"{THRU}|until|now|this|for)\W*(?:on\s+|of\s+|the\s+)?$",
    re.IGNORECASE,
)
_UNTIL = re.compile(rf"\b(?:{THRU}|until|till?)\W*(?:the\s+|midnight\s+)?$", re.IGNORECASE)
_OPENS = re.compile(
    r"\b(?:begin\w*|start\w*|commenc\w*|opens|opening|effective|in\s+effect|on\s+and\s+after)\W*(?:on\s+|from\s+)?$",
    re.IGNORECASE,
)
_WEEK_FROM = re.compile(r"week\s+(?:of|beginning|starting|commencing)\W*$", re.IGNORECASE)
_WEEK_TO = re.compile(r"week\s+ending\W*$", re.IGNORECASE)
_HOURS = re.compile(r"(?:open|hours?|closed?|daily|every|each|evenings?|nights?|nites?)\W*(?:\w+\W+)?$", re.IGNORECASE)
_HOURS_AFTER = re.compile(
    r"^\W*(?:eve|evening|night|nite|morning|(?:till?|until|to)\s+\d|\d+\s*(?:a|p)\.?\s?m|hours|closed|\d)",
    re.IGNORECASE,
)
_NO_DATE = re.compile(r"(?:tel\w*|phone|dial|call|no|model|size|lot|form)\W*$", re.IGNORECASE)
_ONLY_AFTER = re.compile(r"^\W*(?:only|specials?|sale)\b", re.IGNORECASE)
_LOOK_BACK, _LOOK_AHEAD = 45, 20


@dataclass(frozen=True, slots=True)
class PrintedDate:
    """Hold one date or span of days as printed; edtf and bounds are None where the year stays unknown."""

    span: tuple[int, int]  # characters of the text
    text: str
    kind: PrintedKind
    edtf: str | None
    earliest: date | None
    latest: date | None
    weekdays: tuple[int, ...] = ()  # Monday is 0, as printed
    month_days: tuple[tuple[int, int], ...] = ()  # (month, day) as printed
    years: tuple[int, ...] = ()  # years of the first day that fit weekday and day, when they leave a choice
    problem: str | None = None  # why the parts of this date contradict each other
    opens: bool = False  # a first day, with no last one printed ("beginning Monday, October 3")


@dataclass(frozen=True, slots=True)
class _Days:
    """Hold the days of a group before the year is known."""

    month_days: tuple[tuple[int, int], ...]
    weekdays: tuple[int, ...]
    is_range: bool
    pairs: tuple[tuple[tuple[int, int], ...], ...]  # ways in which days (by index) and weekdays may belong together
    end_weekday: int | None  # the span runs on to this weekday


def candidate_years(weekday: int, month: int, day: int, years: Iterable[int] = YEARS) -> tuple[int, ...]:
    """Return the years in which a month and day fall on a weekday (Monday is 0)."""
    return tuple(y for y in years if _exists(y, month, day) and date(y, month, day).weekday() == weekday)


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
        read = _read_group(group, before, after, reference, years)
        if read is not None:
            found.append(replace(read, span=(start, end), text=text[start:end]))
    for span, edtf in seasons_in(text):
        bounds = bounds_of(edtf)
        found.append(PrintedDate(span, text[slice(*span)], "printed", edtf, bounds.earliest, bounds.latest))
    return tuple(sorted(found, key=lambda one: one.span))


def _read_group(
    group: Sequence[DateWord], before: str, after: str, reference: tuple[date, date] | None, years: range
) -> PrintedDate | None:
    kinds = {w.kind for w in group}
    if "numeric" in kinds:
        return _numeric(group, before, reference, years)
    if "month" in kinds and "number" in kinds:
        full = full_date(group, years)
        days = _days_of(group) if full is None else _day_in_full(full, group)
        year = _year_of(group) if full is None else full.year
        return _with_days(days, year, before, group, reference=reference, years=years)
    if "month" in kinds and "year" in kinds:
        return _month_and_year(group)
    if kinds & {"weekday", "tomorrow"}:
        return _weekdays_only(group, before, after, reference)
    return None


def _days_of(group: Sequence[DateWord]) -> _Days:
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
    return _paired(tuple(month_days), weekdays, is_range, group)


def _day_in_full(full: date, group: Sequence[DateWord]) -> _Days:
    return _paired(((full.month, full.day),), [w for w in group if w.kind == "weekday"], False, group)


def _paired(
    month_days: tuple[tuple[int, int], ...], weekdays: Sequence[DateWord], is_range: bool, group: Sequence[DateWord]
) -> _Days:
    names = tuple(w.value for w in weekdays)
    if not names:
        return _Days(month_days, names, is_range, (), None)
    if len(names) == len(month_days):
        if len(names) == 1 and weekdays[0].start > group[0].start and weekdays[0].link == "to":
            return _Days(month_days, names, True, (), names[0])  # "Nov. 9 thru Saturday"
        return _Days(month_days, names, is_range, (tuple(enumerate(names)),), None)
    if len(month_days) == 1:
        return _Days(month_days, names, True, (((0, names[0]),),), names[-1])
    in_order = all(w.link == "list" for w in weekdays[1:]) and all((b - a) % 7 == 1 for a, b in pairwise(names))
    if not is_range and in_order and 1 < len(names) < len(month_days):
        # a weekday was not read: the others still stand in order, beginning at one of the days
        ways = range(len(month_days) - len(names) + 1)
        return _Days(
            month_days, names, False, tuple(tuple((i + k, n) for i, n in enumerate(names)) for k in ways), None
        )
    ends = ((0, names[0]), (len(month_days) - 1, names[-1]))
    return _Days(month_days, names, is_range, (ends[: len(names)],), None)


def _year_of(group: Sequence[DateWord]) -> int | None:
    return next((w.value for w in reversed(group) if w.kind == "year"), None)


def _with_days(
    days: _Days,
    year: int | None,
    before: str,
    group: Sequence[DateWord],
    *,
    reference: tuple[date, date] | None,
    years: range,
) -> PrintedDate | None:
    if not days.month_days or not all(_exists(2000, m, d) for m, d in days.month_days):
        return None
    kind = _kind(days, year, before, bool(group) and group[0].kind == "now")
    spans = {y: span for y in years if (span := _span_in(days, y, before)) is not None}
    fitting = {y: span for y, span in spans.items() if _agrees(days, y)}
    problem = None
    if year is not None:
        first_year = year - 1 if days.month_days[0][0] > days.month_days[-1][0] else year
        chosen = _span_in(days, first_year, before)
        if chosen is not None and not _agrees(days, first_year):
            problem = f"the printed weekday does not fall on that day in {year}"
    elif not fitting:
        chosen, problem = None, "no year has those days on those weekdays: one of them is misread"
    else:
        chosen, problem = _near(fitting, spans, kind, reference)
    result = PrintedDate((0, 0), "", kind, None, None, None, days.weekdays, days.month_days, (), problem)
    if chosen is None:
        return replace(result, years=tuple(fitting) if days.pairs else ())
    first, last = chosen
    if _is_until(group, before, days):
        first_known = reference[0] if reference and reference[1] - reference[0] <= _NARROW else None
        first_known = first_known if first_known and first_known <= last else None
        if kind != "expiry":
            return replace(result, edtf=day_or_interval(first_known, last), earliest=first_known, latest=last)
    opens = kind == "validity" and first == last and bool(_OPENS.search(before)) and not _WEEK_FROM.search(before)
    return replace(result, edtf=day_or_interval(first, last), earliest=first, latest=last, opens=opens)


def _kind(days: _Days, year: int | None, before: str, now: bool) -> PrintedKind:
    if _EXPIRY.search(before):
        return "expiry"
    if now or days.is_range or len(days.month_days) > 1 or _VALIDITY.search(before):
        return "validity"
    return "dateline" if days.weekdays and year is not None else "printed" if year is not None else "validity"


def _is_until(group: Sequence[DateWord], before: str, days: _Days) -> bool:
    single = len(days.month_days) == 1 and not days.is_range
    return single and (group[0].kind == "now" or bool(_UNTIL.search(before)))


def _exists(year: int, month: int, day: int) -> bool:
    try:
        date(year, month, day)
    except ValueError:
        return False
    return True


def _span_in(days: _Days, year: int, before: str) -> tuple[date, date] | None:
    (m1, d1), (m2, d2) = days.month_days[0], days.month_days[-1]
    last_year = year + 1 if m2 < m1 else year
    if not (_exists(year, m1, d1) and _exists(last_year, m2, d2)):
        return None
    first, last = date(year, m1, d1), date(last_year, m2, d2)
    if days.end_weekday is not None:
        last += timedelta(days=(days.end_weekday - last.weekday()) % 7)
    elif len(days.month_days) == 1 and _WEEK_FROM.search(before):
        last = first + timedelta(days=6)
    elif len(days.month_days) == 1 and _WEEK_TO.search(before):
        first = last - timedelta(days=6)
    return (first, last) if first <= last else None


def _agrees(days: _Days, year: int) -> bool:
    return not days.pairs or any(all(_falls_on(days, i, weekday, year) for i, weekday in way) for way in days.pairs)


def _falls_on(days: _Days, index: int, weekday: int, year: int) -> bool:
    month, day = days.month_days[index]
    at = year + 1 if month < days.month_days[0][0] else year
    return _exists(at, month, day) and date(at, month, day).weekday() == weekday


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
    if _NO_DATE.search(before) or any(_is_run_of_days(word.text) for word in group):
        return None
    full = full_date(group, years)
    points = [(full.month, full.day)] if full else []
    year = full.year if full else _year_of(group)
    for word in group:
        if full or word.kind != "numeric":
            continue
        parts = [int(p) for p in re.split(r"[/-]", word.text)]
        month, day = (parts[0], parts[1]) if parts[0] <= 12 else (parts[1], parts[0])
        if not _exists(2000, month, day):
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
        and not _EXPIRY.search(before)
        and not re.search(r"effective|thru\W*$", before, re.I)
    ):
        return None
    days = _paired(tuple(points), weekdays, len(points) == 2, group)
    return _with_days(days, year, before, group, reference=reference, years=years)


def _is_run_of_days(text: str) -> bool:
    # "9-10-11" after a month that was not read: three days of a sale, as few dates count on like this
    parts = [int(part) for part in text.split("-")] if "-" in text else []
    return len(parts) == 3 and parts[1] == parts[0] + 1 and parts[2] == parts[1] + 1


def _month_and_year(group: Sequence[DateWord]) -> PrintedDate:
    month = next(w.value for w in group if w.kind == "month")
    year = _year_of(group) or 0
    first = date(year, month, 1)
    last = (first + timedelta(days=31)).replace(day=1) - timedelta(days=1)
    return PrintedDate((0, 0), "", "printed", f"{year:04d}-{month:02d}", first, last)


def _weekdays_only(
    group: Sequence[DateWord], before: str, after: str, reference: tuple[date, date] | None
) -> PrintedDate | None:
    names = [w for w in group if w.kind == "weekday"]
    until = bool(_UNTIL.search(before)) or group[0].kind == "now"
    said = until or len(names) > 1 or group[0].kind in ("coming", "tomorrow") or bool(_ONLY_AFTER.search(after))
    expiry = bool(_EXPIRY.search(before))
    said = said or expiry or bool(re.search(r"(?:effective|good|sale)\W*$", before, re.I))
    if not said or _HOURS.search(before) or _HOURS_AFTER.search(after):
        return None
    kind: PrintedKind = "expiry" if expiry else "validity"
    weekdays = tuple(w.value for w in names)
    unknown = PrintedDate((0, 0), "", kind, None, None, None, weekdays)
    if reference is None or reference[0] != reference[1]:
        return unknown
    paper = reference[0]
    if not names:
        first = last = paper + timedelta(days=1)
    elif group[0].kind == "coming":
        first = last = paper + timedelta(days=(weekdays[0] - paper.weekday() - 1) % 7 + 1)
    elif len(names) == 1:
        last = paper + timedelta(days=(weekdays[0] - paper.weekday()) % 7)
        first = paper if until and not expiry else last
    else:
        # papers come out up to four days ahead of the sale, or early in it; common practice, no source
        ahead = (weekdays[0] - paper.weekday()) % 7
        first = paper + timedelta(days=ahead - 7 if ahead > 4 else ahead)
        last = first + timedelta(days=(weekdays[-1] - weekdays[0]) % 7)
    return replace(unknown, edtf=day_or_interval(first, last), earliest=first, latest=last)

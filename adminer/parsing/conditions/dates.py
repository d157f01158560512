"""The dates of an advert: printed days by the calendar of the dating room, with their place on the scan."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta
from itertools import pairwise
from typing import Final

from adminer.dating.calendar import parse_printed_dates
from adminer.dating.calendar_words import MONTHS, THRU, WEEKDAYS
from adminer.dating.datelines import datelines_in
from adminer.dating.edtf import bounds_of
from adminer.dating.printed import PrintedDate
from adminer.errors import AdminerError
from adminer.parsing.text.text import AdvertText
from adminer.records import DateFact, Note, Region

Span = tuple[date, date]
_MONTH: Final = re.compile(r"\d{4}-(?:0\d|1[0-2])")
_YEAR: Final = re.compile(r"\b(?:18|19)\d\d\b")
_FEW_DAYS: Final = 3  # more days than these are a schedule of weeks
_COUPON: Final = timedelta(days=92)  # an expiry further off is not that of a coupon of the sale
_LEADING: Final = 3.0  # capital heights from line to line of one date
_NAMES: Final = "|".join(sorted({*MONTHS, *WEEKDAYS}, key=len, reverse=True))
_DATE_OPEN: Final = re.compile(rf"(?:\b(?:{_NAMES})|\bweek of|\b{THRU}|\bto|\beffective|\d)\W*$", re.IGNORECASE)
_DATE_ON: Final = re.compile(
    rf"(?:(?:{_NAMES})\b|1[89]\d\d\b|[0-3]?\d\b(?:\s*[,-]\s*\d|\s*[.]\s?1[89]\d\d\b|\s*$))", re.IGNORECASE
)
_DAY_ALONE: Final = re.compile(rf"\W*(?:{_NAMES})\b\W*[0-3]?\d(?:st|nd|rd|th)?\W*", re.IGNORECASE)
_FEWEST_WEEKS: Final = 3  # days one under another that are a table
_ABOUT: Final = timedelta(days=16)  # about a day printed in full; more than a month in all says a year and no paper
_PRICE_LIST: Final = re.compile(r"\b(?:price|trade)[ -]?(?:list|sheet)s?\b[^|.$]{0,40}$", re.IGNORECASE)
_COUPON_SAYS: Final = re.compile(r"\bcoupons?\b\W+(?:\w+\W+){0,4}$", re.IGNORECASE)
_COUPON_REACH: Final = 48  # characters before a day in which a coupon may be said to end
RATION: Final = re.compile(
    r"\b(?:red|blue|brown|ration|sugar|coffee|shoe) (?:stamps?|coupons?|points?)[^|]{0,40}$", re.IGNORECASE
)
_HEAD, _EDGE = 0.2, 0.06  # of a page's height: where its date line stands, and where it cannot be an advert's own
_ISSUE: Final = timedelta(days=31)  # a note vaguer than a month does not date an advert by itself


@dataclass(frozen=True, slots=True)
class PageDating:
    """Hold what dates every advert of a page: its date lines, and the days its paper may have appeared."""

    date_lines: tuple[DateFact, ...]
    reference: Span | None
    by_page: bool  # whether the reference is a date line's, not the owner's note


def date_page(notes: Sequence[Note], parts: Sequence[tuple[Region, AdvertText]], height: int) -> PageDating:
    """Return what dates the adverts of a page of `height` pixels, as they are one issue's.

    The owner's note comes first, unless it is vaguer than a month and the page's own date line lies within it.
    """
    noted, page = _noted(notes), _date_lines(parts, height)
    if noted is None or noted[1] - noted[0] > _ISSUE:
        low, high = noted or (date.min, date.max)
        for fact in page:
            if fact.earliest and fact.latest and low <= fact.earliest <= fact.latest <= high:
                return PageDating(page, (fact.earliest, fact.latest), by_page=True)
    return PageDating(page, noted, by_page=False)


def _date_lines(parts: Sequence[tuple[Region, AdvertText]], height: int) -> tuple[DateFact, ...]:
    # in the strip of title and date, else with its weekday in running text near the head, or at the very edge of a page
    # whose parts were cut otherwise; the surest first
    found: list[tuple[bool, DateFact]] = []
    for region, text in parts:
        head = height * (_EDGE if region.kind == "advert" else _HEAD)
        printed, masthead = text.text.replace("\n", " "), region.kind == "masthead"
        days = datelines_in(printed)
        for one in days or (_months(printed) if masthead else ()):
            fact = _fact(text, one)
            if masthead or (one.weekdays and fact.box.bottom <= head and len(parts) > 1):
                found.append((masthead, fact))
    return tuple(fact for _, fact in sorted(found, key=lambda one: (not one[0], one[1].box.y, one[1].box.x)))


def _months(text: str) -> tuple[PrintedDate, ...]:
    """Return the month and year in the head of a magazine, which has no day."""
    return tuple(replace(one, kind="dateline") for one in parse_printed_dates(text) if _MONTH.fullmatch(one.edtf or ""))


def _noted(notes: Sequence[Note]) -> Span | None:
    for note in notes:
        if not note.published:
            continue
        try:
            bounds = bounds_of(note.published)
        except AdminerError:
            continue  # intake has reported the note; here the advert stays undated
        if bounds.earliest and bounds.latest:
            return bounds.earliest, bounds.latest
    return None


def find_dates(advert: AdvertText, reference: Span | None) -> list[tuple[DateFact, tuple[int, int]]]:
    """Return the dates printed in an advert with their boxes, each with its characters start to end.

    A year printed in full once is that of the other days too; days in a column of a table are its weeks and no days of
    a sale; the date of a price list opens it and says no end.
    """
    text = _in_one_line(advert)
    found = [_listed(text, one) for one in parse_printed_dates(text, reference=reference)]
    if reference is None:
        found = _in_one_year(text, found)
    tabled = _tabled(advert)
    kept = [one for one in found if not RATION.search(text[: one.span[0]])]
    dated = [replace(one, kind="printed") if one.span[0] in tabled else one for one in kept]
    return [(_fact(advert, one), one.span) for one in dated]


def ends_of_coupons(advert: AdvertText, dates: Sequence[tuple[DateFact, tuple[int, int]]]) -> tuple[DateFact, ...]:
    """Return the last days that are said of a coupon: they end the coupon, not the sale it stands in."""
    found = []
    for fact, (start, _) in dates:
        if fact.kind == "expiry" and _COUPON_SAYS.search(advert.joined, max(0, start - _COUPON_REACH), start):
            found.append(fact)
    return tuple(found)


def _listed(text: str, found: PrintedDate) -> PrintedDate:
    single = found.earliest is not None and found.earliest == found.latest
    if found.kind != "expiry" and single and _PRICE_LIST.search(text, 0, found.span[0]):
        return replace(found, kind="validity", opens=True)
    return found


def _in_one_year(text: str, found: list[PrintedDate]) -> list[PrintedDate]:
    """Give days without a year the year of the first day of the advert that is printed in full."""
    full = next((f.earliest for f in found if f.earliest is not None and _YEAR.search(f.text) and not f.problem), None)
    if full is None or all(f.earliest is not None or f.problem for f in found):
        return found
    again = {f.span: f for f in parse_printed_dates(text, reference=(full - _ABOUT, full + _ABOUT))}
    return [again.get(f.span, f) if f.earliest is None and f.month_days else f for f in found]


def _tabled(advert: AdvertText) -> frozenset[int]:
    """Return the first characters of days that stand one under another in a column, each alone in its line."""
    alone = [line for line in advert.lines if _DAY_ALONE.fullmatch(advert.printed(line))]
    return frozenset(
        line.start
        for line in alone
        if sum(abs(line.flat.x - other.flat.x) < line.type_px for other in alone) >= _FEWEST_WEEKS
    )


def _in_one_line(advert: AdvertText) -> str:
    """Return the text with bars for newlines, but a space where a date goes on ("Monday, October / 3, 1938")."""
    characters = list(advert.joined.replace("\n", "|"))
    for above, below in pairwise(advert.lines):
        near = 0 < below.flat.centre[1] - above.flat.centre[1] < _LEADING * max(above.type_px, below.type_px)
        ends, begins = advert.printed(above), advert.printed(below)
        whole = _DAY_ALONE.fullmatch(ends) and _DAY_ALONE.fullmatch(begins)
        if near and not whole and _DATE_OPEN.search(ends) and _DATE_ON.match(begins):
            characters[above.end] = " "
    return "".join(characters)


def _fact(advert: AdvertText, found: PrintedDate) -> DateFact:
    start, end = found.span
    trust = 0.5 if found.problem else 0.95 if found.weekdays and found.month_days else 0.85
    return DateFact(
        kind=found.kind,
        text=found.text,
        edtf=found.edtf,
        earliest=found.earliest,
        latest=None if found.opens else found.latest,
        box=advert.box_of(start, end),
        confidence=round(trust * advert.confidence_of(start, end), 3),
        weekdays=found.weekdays,
        month_days=found.month_days,
    )


def _sureness(fact: DateFact) -> tuple[bool, bool, bool, float, int]:
    """Rank printed days: both ends known, a year printed, no long list of weeks, then how well they were read."""
    days = len(fact.month_days)
    run = bool(fact.earliest and fact.latest and (fact.latest - fact.earliest).days + 1 == days)
    few = 0 < days <= _FEW_DAYS or run
    return fact.earliest is not None, few, bool(_YEAR.search(fact.text)), fact.confidence, len(fact.month_days)


def validity_of(
    dates: Sequence[DateFact],
    reference: Span | None,
    *,
    is_coupon: bool = False,
    of_coupons: Sequence[DateFact] = (),
) -> tuple[date | None, date | None, str | None]:
    """Return from when to when the prices hold, and by what that is known: printed, note, or not at all.

    An advert that is a coupon and nothing else holds to the coupon's own last day; a first day alone leaves the end
    open, as do the last days of coupons (`of_coupons`) where a first day of the whole is printed.
    """
    printed = [d for d in dates if d.kind == "validity" and d.latest is not None]
    runs_out = max((d.latest for d in dates if d.kind == "expiry" and d.latest is not None), default=None)
    if printed:
        surest = max(printed, key=_sureness)
        longer = runs_out - surest.latest if is_coupon and runs_out and surest.latest else timedelta()
        later = runs_out if timedelta() < longer <= _COUPON else None
        return surest.earliest, later or surest.latest, "printed"
    opening = [d.earliest for d in dates if d.kind == "validity" and d.earliest is not None]
    if opening:
        ends = [d.latest for d in dates if d.kind == "expiry" and d.latest is not None and d not in of_coupons]
        return opening[0], max(ends, default=None), "printed"
    if runs_out:
        return None, runs_out, "printed"
    single = [d for d in dates if d.kind in ("dateline", "printed") and d.earliest is not None and d.latest is not None]
    for fact in single:
        if fact.earliest and fact.latest and fact.latest - fact.earliest <= _ISSUE:
            return fact.earliest, fact.latest, "printed"
    if reference is not None and reference[1] - reference[0] <= _ISSUE:
        return None, None, "note"
    return None, None, None

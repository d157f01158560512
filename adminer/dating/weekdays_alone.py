"""Weekdays without a day of the month, "now thru Sat.", "this coming Monday", seen from the paper's date."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from datetime import date, timedelta
from itertools import pairwise
from typing import Final

from adminer.dating.calendar_words import DateWord
from adminer.dating.edtf import day_or_interval, yearless
from adminer.dating.printed import EXPIRES, OPENS, UNTIL, PrintedDate, PrintedKind

_SUNDAY: Final = 6
_AHEAD: Final = 31  # days within which "Saturday the 25th" lies
_HOURS: Final = re.compile(
    r"(?:open|hours?|closed?|daily|every|each|evenings?|nights?|nites?)\b\W*(?:\w+\W+)?$", re.IGNORECASE
)
_HOURS_AFTER: Final = re.compile(
    r"^\W*(?:eve|evening|night|nite|morning|(?:till?|until|to)\s+\d|\d+\s*(?:a|p)\.?\s?m|hours|closed|\d)",
    re.IGNORECASE,
)
_NIGHT: Final = re.compile(r"^\W*(?:eve|evening|night|nite)\b(?!\W*\d)", re.IGNORECASE)
_IN_FORCE: Final = re.compile(r"(?:effective|good|sale)\W*$", re.IGNORECASE)
_ONLY_AFTER: Final = re.compile(r"^\W*(?:only|specials?|sale)\b", re.IGNORECASE)


def weekdays_only(
    group: Sequence[DateWord], before: str, after: str, reference: tuple[date, date] | None
) -> PrintedDate | None:
    """Return the days that weekdays without a date mean, seen from the one day of the paper; None for opening hours."""
    names = [w for w in group if w.kind == "weekday"]
    said = group[0].kind
    until = bool(UNTIL.search(before)) or said == "now"
    expiry = bool(EXPIRES.search(before))
    opens = bool(OPENS.search(before)) and len(names) < 2 and not expiry
    meant = until or expiry or opens or len(names) > 1 or said in ("coming", "today", "tomorrow")
    meant = meant or bool(_ONLY_AFTER.search(after)) or bool(_IN_FORCE.search(before))
    night = until and _NIGHT.match(after)
    fixed = said in ("today", "tomorrow")  # no opening hours, whatever hour is said after it
    if not meant or _HOURS.search(before) or (_HOURS_AFTER.search(after) and not night and not fixed):
        return None
    if not _in_a_row(names):
        return None
    kind: PrintedKind = "expiry" if expiry else "validity"
    weekdays = tuple(w.value for w in names)
    unknown = PrintedDate((0, 0), "", kind, None, None, None, weekdays)
    if reference is None or reference[0] != reference[1]:
        return unknown
    first, last = _days_from(reference[0], group, weekdays, from_paper=until and not expiry)
    return replace(unknown, edtf=day_or_interval(first, last), earliest=first, latest=last, opens=opens)


def day_of_this_month(
    group: Sequence[DateWord], days: Sequence[int], before: str, reference: tuple[date, date] | None
) -> PrintedDate:
    """Return the days of a month that is not named ("Saturday the 25th"), by the paper's day where it is known."""
    weekdays = tuple(w.value for w in group if w.kind == "weekday")
    kind: PrintedKind = "expiry" if EXPIRES.search(before) else "validity"
    unknown = PrintedDate((0, 0), "", kind, yearless((0, days[0]), (0, days[-1])), None, None, weekdays)
    if reference is None or reference[0] != reference[1]:
        return unknown
    near = [reference[0] + timedelta(days=n) for n in range(-7, _AHEAD)]
    first = next((d for d in near if d.day == days[0] and d.weekday() == weekdays[0]), None)
    last = next((d for d in near if d.day == days[-1] and d.weekday() == weekdays[-1]), None)
    if first is None or last is None or last < first:
        return unknown
    return replace(unknown, edtf=day_or_interval(first, last), earliest=first, latest=last)


def _in_a_row(names: Sequence[DateWord]) -> bool:
    """Say whether listed weekdays follow each other, Sundays left out: "Tues., Fri." are rounds of every week."""
    for one, other in pairwise(names):
        step = (other.value - one.value) % 7
        if other.link == "list" and step != 1 and not (step == 2 and (one.value + 1) % 7 == _SUNDAY):
            return False
    return True


def _days_from(
    paper: date, group: Sequence[DateWord], weekdays: tuple[int, ...], *, from_paper: bool
) -> tuple[date, date]:
    said = group[0].kind
    tomorrow = paper + timedelta(days=1)
    if said == "today":
        ends = paper + timedelta(days=(weekdays[-1] - paper.weekday()) % 7) if weekdays else paper
        return paper, tomorrow if group[-1].kind == "tomorrow" else ends
    if not weekdays:
        return tomorrow, tomorrow
    if said == "coming":
        day = paper + timedelta(days=(weekdays[0] - paper.weekday() - 1) % 7 + 1)
        return day, day
    ahead = (weekdays[0] - paper.weekday()) % 7
    if len(weekdays) == 1:
        day = paper + timedelta(days=ahead)
        return (paper if from_paper else day), day
    # papers come out up to four days ahead of the sale, or early in it; common practice, no source
    first = paper + timedelta(days=ahead - 7 if ahead > 4 else ahead)
    return first, first + timedelta(days=(weekdays[-1] - weekdays[0]) % 7)

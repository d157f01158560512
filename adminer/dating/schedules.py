"""Printed schedules of a promotion: "week 7 of 15", "final week", "extended". They come before any statistic."""

from __future__ import annotations

import re
from collections.abc import Collection, Sequence
from dataclasses import dataclass
from typing import Final, Literal

_WORDS: Final = (
    ("first", "one"), ("second", "two"), ("third", "three"), ("fourth", "four"), ("fifth", "five"), ("sixth", "six"),
    ("seventh", "seven"), ("eighth", "eight"), ("ninth", "nine"), ("tenth", "ten"), ("eleventh", "eleven"),
    ("twelfth", "twelve"), ("thirteenth", "thirteen"), ("fourteenth", "fourteen"), ("fifteenth", "fifteen"),
    ("sixteenth", "sixteen"), ("seventeenth", "seventeen"), ("eighteenth", "eighteen"), ("nineteenth", "nineteen"),
    ("twentieth", "twenty"),
)  # fmt: skip
NUMBERS: Final = {word: number for number, words in enumerate(_WORDS, start=1) for word in words}
_N = rf"(?:\d{{1,2}}|{'|'.join(sorted(NUMBERS, key=len, reverse=True))})"
_OF: Final = re.compile(
    rf"\b(?:week\s*(?:no\.?\s*)?(?P<a>{_N})|(?P<b>{_N})(?:st|nd|rd|th)?\s+week)\s*(?:of|in)\s+(?:a\s+|our\s+|the\s+)?"
    rf"(?P<n>{_N})(?:[\s-]+weeks?)?\b",
    re.IGNORECASE,
)
_FINAL: Final = re.compile(
    r"\b(?:final|last|closing)\s+week\b|\blast\s+chance\b|\bends\s+(?:this\s+)?(?:saturday|week)\b|\bfinal\s+days?\b",
    re.I,
)
_FIRST: Final = re.compile(r"\b(?:first|1st|opening)\s+week\b|\bbegins\s+this\s+week\b|\bstarts\s+this\s+week\b", re.I)
_EXTENDED: Final = re.compile(r"\bextended\b|\bheld\s+over\b|\bby\s+popular\s+(?:demand|request)\b", re.IGNORECASE)
# one word of every text that read_schedule finds something in, as a regular expression without case
MAY_TELL: Final = "week|final|chance|saturday|extended|held|popular"
LONGEST_WEEKS: Final = 60

LEAST_WEEKS: Final = 3  # a list of two weeks is no programme

What = Literal["week_of", "final", "first", "extended", "weeks"]


@dataclass(frozen=True, slots=True)
class ScheduleFact:
    """Hold what an advert prints of its promotion's schedule.

    week and of are set for "week 7 of 15"; of alone for a printed list of that many weeks.
    """

    advert_id: str
    what: What
    text: str
    week: int | None = None
    of: int | None = None


def read_schedule(text: str, advert_id: str = "") -> tuple[ScheduleFact, ...]:
    """Return what a text says of the schedule of weeks; a week beyond its total is a misreading and left out."""
    facts = []
    for found in _OF.finditer(text):
        week, of = _number(found["a"] or found["b"]), _number(found["n"])
        if 1 <= week <= of <= LONGEST_WEEKS:
            facts.append(ScheduleFact(advert_id, "week_of", " ".join(found[0].split()), week, of))
    for what, pattern in (("final", _FINAL), ("first", _FIRST), ("extended", _EXTENDED)):
        hit = pattern.search(text)
        if hit and not any(f.what == "week_of" and hit[0].lower() in f.text.lower() for f in facts):
            kind: What = "final" if what == "final" else "first" if what == "first" else "extended"
            facts.append(ScheduleFact(advert_id, kind, " ".join(hit[0].split())))
    return tuple(facts)


def facts_of_table(advert_id: str, rows: Sequence[tuple[int, str]], featured: Collection[str]) -> list[ScheduleFact]:
    """Return what a printed list of weeks (week, piece id) says: its length, and which week of it this is.

    The week is known where the advert features one piece of the list alone and that piece has one week only.
    """
    weeks = max((week for week, _ in rows), default=0)
    if not LEAST_WEEKS <= weeks <= LONGEST_WEEKS:
        return []
    facts = [ScheduleFact(advert_id, "weeks", f"a printed list of {weeks} weeks", None, weeks)]
    pieces = {piece for _, piece in rows} & set(featured)
    its = [week for week, piece in rows if piece in pieces]
    if len(pieces) == 1 and len(its) == 1:
        facts.append(ScheduleFact(advert_id, "week_of", f"week {its[0]} of the printed list", its[0], weeks))
    return facts


def _number(text: str) -> int:
    return int(text) if text.isdigit() else NUMBERS[text.lower()]

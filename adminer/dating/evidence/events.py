"""Holidays and selling seasons named in an advert, with the years in which a named day fell on a printed date."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from datetime import date, timedelta
from functools import lru_cache
from typing import Final

from adminer.dating.calendar_words import MONTHS as MONTH_NAMES
from adminer.dating.evidence.base import Case, Clue, Context, Floats, Sign, find_signs
from adminer.dating.evidence.shapes import around, season, spell
from adminer.dating.holidays_us import (
    columbus_day,
    easter,
    labor_day,
    memorial_day,
    thanksgivings,
    veterans_day,
    washingtons_birthday,
)
from adminer.dating.months import FIRST_YEAR, LAST_YEAR, index_of

KIND: Final = "holidays and seasons"
_PRACTICE = "common practice of the trade, no source"
_VETERANS = "act of 1 June 1954 (day from memory; first Veterans Day 11 November 1954, `holidays` package)"
_ELSEWHEN: Final = 0.06  # a holiday named at another time of the year


def _season(name: str, pattern: str, *weights: tuple[int, float], floor: float = _ELSEWHEN, hint: str = "") -> Sign:
    return Sign(name, re.compile(pattern, re.IGNORECASE), season(weights, floor), _PRACTICE, hint=hint)


@lru_cache(maxsize=1)
def _before_easter(days: int = 42) -> Floats:
    weights: dict[int, float] = {}
    for year in range(FIRST_YEAR, LAST_YEAR + 1):
        for back in range(days):
            month = index_of(easter(year) - timedelta(days=back))
            weights[month] = weights.get(month, 0.0) + 1 / 30
    return around({month: min(1.0, weight) for month, weight in weights.items()}, _ELSEWHEN)


SIGNS: Final = (
    _season(
        "Christmas selling is November and December",
        r"\bchristmas\b|\bx-?mas\b|\byuletide\b|\bsanta\b",
        (12, 1.0),
        (11, 0.7),
        (10, 0.12),
    ),
    _season("Thanksgiving selling is November", r"\bthanksgiving\b", (11, 1.0), (10, 0.1), (12, 0.1), hint="thanksg"),
    _season("New Year selling is about the turn of the year", r"\bnew\s+year'?s?\b", (12, 1.0), (1, 0.6), hint="year"),
    _season("Halloween selling is October", r"\bhallowe'?en\b", (10, 1.0), (9, 0.1), hint="hallow"),
    _season("Labor Day is the first Monday of September", r"\blabor\s+day\b", (8, 0.8), (9, 1.0), hint="labor"),
    _season(
        "Independence Day is 4 July",
        r"\b(?:fourth|4th)\s+of\s+july\b|\bjuly\s+(?:4th|fourth)\b|\bindependence\s+day\b",
        (6, 0.6),
        (7, 1.0),
    ),
    _season("Memorial (Decoration) Day is at the end of May", r"\b(?:memorial|decoration)\s+day\b", (5, 1.0), (6, 0.1)),
    _season("St. Valentine's day is 14 February", r"\bvalentine'?s?\b", (2, 1.0), (1, 0.4), hint="valentine"),
    _season("St. Patrick's day is 17 March", r"\bst\.?\s+patrick", (3, 1.0), (2, 0.1), hint="patrick"),
    _season(
        "Washington's and Lincoln's birthdays are in February",
        r"\b(?:washington|lincoln)'?s\s+birthday\b",
        (2, 1.0),
        (1, 0.1),
        hint="birthday",
    ),
    _season("Columbus Day is in October", r"\bcolumbus\s+day\b", (10, 1.0), (9, 0.1), hint="columbus"),
    _season(
        "white sales are held in January",
        r"\bwhite\s+(?:sale|goods\s+sale)\b",
        (1, 1.0),
        (2, 0.3),
        (8, 0.3),
        hint="white",
    ),
    _season("school begins in September", r"\bback[\s-]to[\s-]school\b", (8, 1.0), (9, 0.8), hint="school"),
    _season(
        "canning supplies sell from June to September",
        r"\b(?:mason|fruit)\s+jars?\b|\bfor\s+canning\b|\bjar\s+(?:lids|rubbers)\b",
        (6, 0.6),
        (7, 1.0),
        (8, 1.0),
        (9, 0.8),
        floor=0.15,
    ),
    Sign(
        "Easter and Lenten goods sell in the six weeks before Easter",
        re.compile(r"(?i:\beaster\b|\blenten\b)|(?<![\w-])(?<!-\s)(?:Lent|LENT)\b"),  # no "excel-lent", no "lent"
        _before_easter(),
        _PRACTICE,
    ),
    Sign(
        "Mother's Day is the second Sunday of May, kept from 1914",
        re.compile(r"\bmother'?s\s+day\b", re.I),
        spell(date(1910, 1, 1)) + season(((5, 1.0), (4, 0.4)), _ELSEWHEN),
        "proclamation of 9 May 1914, from memory",
        date(1910, 1, 1),
        hint="mother",
    ),
    Sign(
        "Father's Day is the third Sunday of June, in adverts from about 1930",
        re.compile(r"\bfather'?s\s+day\b", re.I),
        spell(date(1925, 1, 1), misread=0.05) + season(((6, 1.0), (5, 0.2)), _ELSEWHEN),
        "from memory",
        hint="father",
    ),
    Sign(
        "Armistice Day became Veterans Day on 1 June 1954",
        re.compile(r"\barmistice\s+day\b", re.I),
        spell(date(1919, 10, 1), date(1954, 6, 1), half_life=6) + season(((11, 1.0), (10, 0.15)), _ELSEWHEN),
        _VETERANS,
        date(1919, 10, 1),
        date(1954, 11, 30),
        hint="armistice",
    ),
    Sign(
        "Veterans Day was first kept on 11 November 1954",
        re.compile(r"\bveterans'?\s+day\b", re.I),
        spell(date(1954, 6, 1)) + season(((11, 1.0), (10, 0.4)), _ELSEWHEN),
        _VETERANS,
        date(1954, 6, 1),
        hint="veterans",
    ),
    Sign(
        "Washington's birthday is called Presidents' Day since the Monday holidays of 1971",
        re.compile(r"\bpresidents?'?\s+day\b", re.I),
        spell(date(1968, 6, 1), misread=0.03) + season(((2, 1.0),), _ELSEWHEN),
        "Public Law 90-363, from 1 January 1971",
        date(1968, 6, 1),
        hint="president",
    ),
)

_MONTH = "|".join(sorted(MONTH_NAMES, key=len, reverse=True))
_NAMED_DAY: Final = re.compile(
    rf"\b(?P<name>thanksgiving(?:\s+day)?|easter(?:\s+sunday)?|memorial\s+day|decoration\s+day|labor\s+day|veterans'?\s+day|"
    rf"columbus\s+day|washington's\s+birthday)\W{{0,4}}(?:(?:mon|tues?|wednes|thurs?|fri|satur|sun)(?:day)?\W{{1,3}})?"
    rf"(?P<month>{_MONTH})\.?\s+(?P<day>\d{{1,2}})(?!\d)",
    re.IGNORECASE,
)
_MOVED: Final[dict[str, Callable[[int], tuple[date, ...]]]] = {
    "thanksgiving": thanksgivings,
    "easter": lambda year: (easter(year),),
    "memorial": lambda year: (memorial_day(year),),
    "decoration": lambda year: (memorial_day(year),),
    "labor": lambda year: (labor_day(year),),
    "veterans": lambda year: (veterans_day(year),),
    "columbus": lambda year: (columbus_day(year),),
    "washington": lambda year: (washingtons_birthday(year),),
}


def find(case: Case, _context: Context) -> Iterator[Clue]:
    """Yield the clues of named holidays and seasons, and of a holiday printed with its date."""
    yield from find_signs(case, KIND, SIGNS)
    for found in _NAMED_DAY.finditer(case.text):
        name = re.match(r"[a-z]+", found["name"].lower())
        month, day = MONTH_NAMES[found["month"].lower()], int(found["day"])
        days_of = _MOVED[name[0] if name else ""]
        years = [
            y for y in range(FIRST_YEAR, LAST_YEAR + 1) if any((d.month, d.day) == (month, day) for d in days_of(y))
        ]
        if years:
            chances = {index_of(date(y, month, 1)): 1.0 for y in years} | {
                index_of(date(y, month, 1)) - 1: 0.3 for y in years
            }
            yield Clue(
                KIND,
                f"'{' '.join(found[0].split())}': fell on that day in {_listed(years)}",
                "rules of the holidays and their moved dates (Public Law 90-363; proclamations of 1939-41)",
                around(chances, 0.02),
                case.box_of(found.start(), found.end()),
            )
            return


def _listed(years: list[int]) -> str:
    shown = ", ".join(str(y) for y in years[:8])
    return shown + (f" and {len(years) - 8} more years" if len(years) > 8 else "")

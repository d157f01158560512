"""What the figures of a worn price in cents may have been: "1212C" is 12½c, "Sc" 5c, "79;" 79c, "2/27q" 2 for 27c.

Each shape has its odds: some stand for nothing but a price ("222ac"), some are as well a count, a date or a number
("254", "79;"). Which of them are prices is weighed in `likely_cents` by the place and the prices around. Which signs
and figures are confused is common practice, no source.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from typing import Final

from adminer.parsing.money.amounts import AS_FIGURES, named_fraction
from adminer.records import PriceForm


@dataclass(frozen=True, slots=True)
class Reading:
    """Hold what a worn figure may be: its characters, cents, pieces for them, form, and the points of its shape."""

    start: int
    end: int
    cents: Decimal
    quantity: int
    form: PriceForm
    points: int


ODDEST: Final = 3  # a fraction before its sign
ODD: Final = 2  # nothing else looks so
ODDISH: Final = 1  # little else does
ALIKE: Final = 0
PLAIN: Final = -1
WORSE: Final = -2
_START: Final = r"(?<![\w$£/,&\-–])(?<!\d\.)"
_ENDS: Final = r"(?![½¼¾%×/\"”'’-]| ?[½¼¾x×%]|[.,:]\d|\w)"
_SIGN: Final = r"(?P<sign>[ceC¢°])(?![a-z\d])"
# the small figures of a fraction run together and are read as letters or as whole figures
_FRACTION: Final = re.compile(
    rf"{_START}(?P<cents>\d{{1,2}}?)"
    r"(?:(?P<half>1/?[hzs]|1/\.?|[kzh](?=[ce])|%½?|½2|v[éez]?|[12]a|(?<=\d\d)/)|"
    rf"(?P<half_worn>(?<=\d\d)[1-9](?=[cC])))(?:{_SIGN}|(?<=/)c(?=lb))"
)
_WHOLE_FRACTION: Final = re.compile(
    rf"{_START}(?P<cents>\d{{1,2}}?)(?:(?P<half>1[25])|(?P<quarter>14)|(?P<three>34))(?:{_SIGN}|(?<=1[25])4(?!\w))"
)
_LETTERS: Final = re.compile(
    rf"{_START}(?P<cents>(?!S\d)(?=\d?[A-Zgloqsz|])[\dSsOoIlBgZz|]{{1,2}})(?P<sign>[cC¢e])(?![\w'’])"
)
_LARGE: Final = frozenset({"lge", "ige"})
_WORDS: Final = frozenset({"Be", "be", "le", "oe", "se", "oc", "sc", "lc", "ge"})  # a whole word, or half of one
_CENTS: Final = re.compile(
    rf"{_START}(?:(?P<lot>[2-9])/)?(?P<cents>[1-9]\d)"
    r"(?:(?P<weighed>(?=[l1I]b\.?(?:\n|$)))|"  # "59lb.": the sign is part of the unit
    rf"(?:(?P<odd>[q<e](?=[*.,;]?(?:\s|$)))|(?P<tail>(?:[kxh]|[cC][hbD])(?=[.,;]?(?:\n|$)))|(?P<sign>[p:;])|s|(?P<figure>[145036])(?<!100))?{_ENDS})"
)
_SMALL: Final = 20  # cents below which fractions were common; above, the eighths of a dollar


def readings(text: str) -> Iterator[Reading]:
    """Yield what the worn figures of a text may be, the surest shapes first."""
    for m in _WHOLE_FRACTION.finditer(text):
        yield Reading(*m.span(), Decimal(m["cents"]) + named_fraction(m), 1, "fraction", ODDEST)
    for m in _FRACTION.finditer(text):
        whole = int(m["cents"])
        if 0 < whole < _SMALL or whole % 5 == 2 or m["half_worn"]:
            yield Reading(*m.span(), whole + Decimal("0.5"), 1, "fraction", ODDEST)
    for m in _LETTERS.finditer(text):
        if m[0].lower() in _LARGE:
            continue
        # the type that turns a c into an e turns an 8 into an S
        figures = m["cents"].replace("S", "8") if m["sign"] == "e" else m["cents"]
        points = ALIKE if m[0] in _WORDS else ODD
        yield Reading(*m.span(), Decimal(figures.translate(AS_FIGURES)), 1, "cents_sign", points)
    for m in _CENTS.finditer(text):
        lot = int(m["lot"] or 1)
        yield Reading(*m.span(), Decimal(m["cents"]), lot, "multiple" if lot > 1 else "cents_sign", _points(m))


def _points(m: re.Match[str]) -> int:
    """Return the points of a figure by what stands in the place of its sign."""
    if m["odd"]:
        return ODD
    if m["tail"]:
        return ODDISH
    if m["sign"] or m["lot"] or m["weighed"] is not None:
        return ALIKE
    return WORSE if m["figure"] else PLAIN

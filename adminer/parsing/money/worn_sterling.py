"""Shillings and pence in worn type: the stroke read as a bracket or a 1, the small half of "8½d." as letters.

What a reader makes of them is no other sum an advert in shillings could name: no pence go beyond eleven, and no
former price is a whole number in the hundreds. Trusted less than what is clear. Common practice, no source.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from decimal import Decimal
from typing import Final

from adminer.parsing.money.amounts import Amount, fraction_of, in_pounds, named_fraction

_TRUST: Final = 0.5
_PENCE: Final = r"(?P<d>1[01]|\d)"
_STROKE: Final = re.compile(rf"(?<![\w/.,])(?P<s>\d{{1,2}})[\[\]|Il!]{_PENCE}(?P<frac>[½¼¾])?(?![\w/])")
_AS_ONE: Final = re.compile(
    r"\b(?:us[un]ally|was|were|worth|formerly|originally|reg(?:ular(?:ly)?|\.)?|values?) "
    rf"(?P<all>(?P<s>[1-9]\d?)1{_PENCE})(?![\d/]|[½¼¾])",
    re.IGNORECASE,
)
_HALVES: Final = re.compile(
    r"(?<![\d/.])(?P<d>1[01]|\d)(?:(?P<half>[1Iil|]/?[25zsghé]|1½|½[2iIl|]|[vV][é2ez]?|[zkh])|(?P<quarter>14)|(?P<three>34))"
    r" ?d(?![a-z'’])\.?"
)
_POUND_STROKE: Final = re.compile(r"£ ?(?P<l>\d{1,3})/(?P<s>[2-9]|1\d)1(?:[-–—]|(?=[.,](?!\d)))")
_PENNY: Final = re.compile(r"(?<![\w.'’])(?P<d>[Il|]) ?d\.(?!\w)")
_THIN_STROKE: Final = re.compile(rf"(?<!\S)(?P<s>[lI|])[f/]{_PENCE}(?![\w/])")
_ELEVEN: Final = re.compile(r"(?<![\d/])(?:(?<!\.)|(?<=\.\.))(?P<s>\d{1,2})/111(?![\d/])")  # the half of 11½ as a 1

# the same of eleven in old-style figures, and of the 1 of "1s. 3d."
_ELEVEN_AS_LETTER: Final = re.compile(r"(?<![\w/.])(?P<s>[1-9]\d?)/(?:[un]|[Il|]{2}|1[Il|]|[Il|]1)(?![\w/])")
_SHILLING: Final = re.compile(rf"(?<![\w.'’])[Ili|]s[.,] ?{_PENCE}(?P<frac> ?[½¼¾])? ?d\.?(?!\w)")


def worn_pounds(text: str, currency: str) -> Iterator[Amount]:
    """Yield the sums in pounds whose last stroke was read as a 1: no pound has so many shillings ("£4/41-")."""
    for m in _POUND_STROKE.finditer(text):
        pounds = Decimal(m["l"]) + Decimal(m["s"]) / 20
        yield Amount(m.start(), m.end(), in_pounds(pounds), currency, "sterling", _TRUST)


def worn_shillings(text: str, currency: str) -> Iterator[Amount]:
    """Yield the sums of one shilling and some pence whose 1 was read as a letter ("Is. 3d.")."""
    for m in _SHILLING.finditer(text):
        yield _amount(m.start(), m.end(), "1", m["d"], fraction_of(m["frac"]), currency)


def worn_amounts(text: str, currency: str) -> Iterator[Amount]:
    """Yield the sums of worn type in a text that counts in shillings and pence, in pounds."""
    for m in _STROKE.finditer(text):
        yield _amount(m.start(), m.end(), m["s"], m["d"], fraction_of(m["frac"]), currency)
    for m in _AS_ONE.finditer(text):
        yield _amount(m.start("all"), m.end(), m["s"], m["d"], Decimal(0), currency)
    for m in _ELEVEN.finditer(text):
        yield _amount(m.start(), m.end(), m["s"], "11", fraction_of("½"), currency)
    for m in _ELEVEN_AS_LETTER.finditer(text):
        yield _amount(m.start(), m.end(), m["s"], "11", Decimal(0), currency)
    for m in _PENNY.finditer(text):
        yield _amount(m.start(), m.end(), None, "1", Decimal(0), currency)
    for m in _THIN_STROKE.finditer(text):
        yield _amount(m.start(), m.end(), "1", m["d"], Decimal(0), currency)
    for m in _HALVES.finditer(text):
        part = named_fraction(m)
        yield _amount(m.start(), m.end(), None, m["d"], part, currency)


def _amount(start: int, end: int, shillings: str | None, pence: str, part: Decimal, currency: str) -> Amount:
    total = Decimal(shillings or 0) / 20 + (Decimal(pence) + part) / 240
    return Amount(start, end, in_pounds(total), currency, "sterling", _TRUST)

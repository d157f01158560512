"""Shillings and pence in words: "fourpence", "one and ninepence", "six-and-six", "half-a-crown", "a guinea and a half".

Prose of the trade spells small sums out. Money before 1971: a shilling of twelve pence, a crown of five shillings, a
guinea of twenty-one; common knowledge, no source.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from decimal import Decimal
from typing import Final

from adminer.parsing.money.amounts import NUMBER_WORDS, Amount, fraction_of, in_pounds, number_of

_SHORT: Final = {"thrup": 3, "tup": 2}
_PENCE: Final = tuple(word for word, number in NUMBER_WORDS.items() if 1 < number < 12)
_COUNT: Final = r"(?:" + "|".join(sorted(NUMBER_WORDS, key=len, reverse=True)) + r")"
_SPELLED_PENCE: Final = r"(?:" + "|".join((*_PENCE, *_SHORT)) + r")[ -]?pence"
WORDS: Final = re.compile(
    rf"\b(?:"
    rf"(?:(?P<shillings>{_COUNT})[ \n]and[ \n])?(?P<pence>{_SPELLED_PENCE})(?P<halfpenny>[ \n-]half-?penny)?|"
    rf"(?P<whole>{_COUNT}|a|\d{{1,3}})[ \n]shillings?(?:[ \n]and[ \n](?P<and>{_SPELLED_PENCE}))?|"
    rf"(?P<spoken>{_COUNT})-and-(?P<six>{'|'.join(_PENCE)})(?!-)|"
    r"(?P<crown>half[ -]?(?:a[ -]?)?crown)|"
    r"(?P<penny>(?:one|a) penny|penny(?= (?:upwards?|each|a|per)\b))(?P<half>[ -]half-?penny)?|"
    rf"(?P<guineas>{_COUNT}|an?|\d{{1,3}}(?P<part>[½¼¾])?) ?(?:g[un]ineas?\b|gns?\b\.?)(?P<more> and a half)?"
    r")(?!\w)(?! in the (?:£|pound\b))",
    re.IGNORECASE,
)
_TRUST: Final = 0.8


def spelled_amounts(text: str, currency: str) -> Iterator[Amount]:
    """Yield the sums of a text that are told in words, in pounds."""
    for m in WORDS.finditer(text):
        pence = _pence_of(m)
        yield Amount(m.start(), m.end(), in_pounds(pence / 240), currency, "words", _TRUST)


def _pence_of(m: re.Match[str]) -> Decimal:
    half = Decimal("0.5")
    if m["crown"]:
        return Decimal(30)
    if m["penny"]:
        return Decimal(1) + (half if m["half"] else 0)
    if m["guineas"]:
        count = _number(m["guineas"].rstrip("½¼¾")) + fraction_of(m["part"]) + (half if m["more"] else 0)
        return count * 252
    if m["whole"]:
        return _number(m["whole"]) * 12 + (_spelled(m["and"]) if m["and"] else 0)
    if m["spoken"]:
        return _number(m["spoken"]) * 12 + _number(m["six"])
    return _number(m["shillings"] or "nought") * 12 + _spelled(m["pence"]) + (half if m["halfpenny"] else 0)


def _spelled(word: str) -> Decimal:
    stem = re.sub(r"[ -]?pence$", "", word.lower())
    return Decimal(_SHORT.get(stem) or NUMBER_WORDS[stem])


def _number(word: str) -> Decimal:
    return Decimal(1) if word.lower() in {"a", "an"} else Decimal(number_of(word))

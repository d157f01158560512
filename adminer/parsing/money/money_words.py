"""Words of money that a reader got wrong by a letter: "six crnts" is "six cents", "65 plastres" "65 piastres".

A word is put right only behind a number, and only to a word as long, so that every character keeps its place.
"""

from __future__ import annotations

import re
from functools import lru_cache, partial
from typing import Final

from adminer.parsing.money.amounts import NUMBER_WORDS

_MONEY: Final = ("cents", "dollar", "dollars", "piastre", "piastres", "shilling", "shillings", "guinea", "guineas")
# words of their own, one letter from a word of money
_OTHERS: Final = frozenset(["tents", "vents", "rents", "dents", "gents", "cants", "collar", "collars"])
_TENS: Final = tuple(word for word, number in NUMBER_WORDS.items() if 20 <= number < 100 and number % 10 == 0)
_UNITS: Final = tuple(word for word, number in NUMBER_WORDS.items() if 0 < number < 10)
_NUMBER: Final = rf"(?:\d[½¼¾]?|\b(?:{'|'.join([*NUMBER_WORDS, 'half', 'quarter'])}))"
_BEHIND_NUMBER: Final = re.compile(rf"(?<![$£]){_NUMBER}[ \n](?P<word>[a-z]{{5,9}})(?![a-z])", re.IGNORECASE)
_COMPOUND: Final = re.compile(rf"\b(?P<word>[a-z]{{5,7}})-(?:{'|'.join(_UNITS)})\b", re.IGNORECASE)


def with_money_words(text: str) -> str:
    """Return a text of the same length whose misread words of money, and tens of a number in words, are put right."""
    for pattern, known in ((_COMPOUND, _TENS), (_BEHIND_NUMBER, _MONEY)):
        text = pattern.sub(partial(_mended, known), text)
    return text


def _mended(known: tuple[str, ...], m: re.Match[str]) -> str:
    start, end = m.start("word") - m.start(), m.end("word") - m.start()
    right = _nearest(m["word"].lower(), known)
    return m[0] if right == m["word"].lower() else m[0][:start] + right + m[0][end:]


@lru_cache(maxsize=4096)
def _nearest(word: str, known: tuple[str, ...]) -> str:
    """Return the known word as long that differs in one letter; the word itself where there is none, or it is one."""
    if word in known or word in _OTHERS:
        return word
    near = [k for k in known if len(k) == len(word) and sum(a != b for a, b in zip(k, word, strict=True)) == 1]
    return near[0] if len(near) == 1 else word

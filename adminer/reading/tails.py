"""Fractions that the network took for figures or letters, by the learned reader: "2/111" is 2/11½, "17V" 17½.

The word gives the place, the ink the sign: every way to end the figures of a numeral early is looked at.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from typing import Final

import numpy as np
from numpy.typing import NDArray

from adminer.layout.clean import Gray
from adminer.reading.fraction_model.answer import answer
from adminer.reading.fraction_model.window import CLASSES, window_of
from adminer.reading.placed import PlacedWord

HEAD: Final = re.compile(r"^[^\w£$]*(?:£?\d{1,2}/)?\$?\d{1,3}$")
TAIL: Final = re.compile(r"^(?P<part>[\d½¼¾%/⁄zZ'’VvhHkKeEXxIl\[]{1,3}?)(?P<sign>[dc¢eé]?)(?P<rest>[.,;:!)'\"”’]*)$")
UNREAD: Final = re.compile(r"(?P<part>)(?P<sign>)(?P<rest>)$")
PAST: Final = 0.85  # type sizes of ink past the middle of the last figure: room for a fraction that was not read
FIGURE: Final = 0.28  # half the width of a figure by its height; common practice, no source
SMALLEST: Final = 7.0  # pixels: the height of the lowest figures the reader was trained on
SURE: Final = 0.95  # probability of any fraction where figures were read
SURE_OF_LETTERS: Final = 0.7  # and where letters were, which no number ends in
NO_DOUBT: Final = 0.97  # mean probability of the letters of a number whose figures are taken as they are
CENTS: Final = frozenset("c¢eé")
FAVOUR: Final = 3.0  # how much likelier a fraction is that ends in the figure the network read last, or begins so
NO_PART: Final = re.compile(r".*[0689]|[35]$")  # figures that a half or a quarter is never taken for
PENCE: Final = re.compile(r"^/(?:1[01]|[0-9])$")
TRUST: Final = 0.85  # confidence of such a word at most


def settle_tail(gray: Gray, word: PlacedWord, *, sterling: bool = False) -> PlacedWord:
    """Return a number with the fraction that its last letters are, else the word as it is.

    On a page in `sterling` what stands after a stroke are pence first of all: "5/4" is five and fourpence, not 5¼.
    """
    ends = [end for end in _ends(word) if not (sterling and PENCE.match(end[1]["part"]))]
    if not ends:
        return word
    top = word.bottom - word.type_px if word.bottom - word.top > 1.2 * word.type_px else word.top
    lefts = [word.centres[k - 1] + FIGURE * word.type_px for k, _ in ends]
    chances = answer(np.stack([window_of(gray, left, top, word.bottom) for left in lefts]))
    best = int(chances[:, 1:].sum(axis=1).argmax())
    k, tail = ends[best]
    weighed = [chance * FAVOUR ** _hints(sign, tail["part"]) for sign, chance in _signs(chances[best])]
    sign = CLASSES[1 + int(np.argmax(weighed))]
    if chances[best, 1:].sum() < (SURE_OF_LETTERS if tail["part"] and not tail["part"].isdigit() else SURE):
        return word
    cents = tail["sign"] in CENTS and bool(tail["sign"])
    text = f"{word.text[:k]}{sign}{'¢' if cents else tail['sign']}{tail['rest']}"
    if text == word.text:
        return word
    end = k + len(tail["part"])
    middle = float(np.mean(word.centres[k:end])) if end > k else (lefts[best] + word.right) / 2
    centres = (*word.centres[:k], middle, *word.centres[end:])
    return replace(word, text=text, centres=centres, form="fraction" if cents else None,
                   reader="numeral", confidence=min(word.confidence, TRUST))  # fmt: skip


def _signs(chances: NDArray[np.float32]) -> Sequence[tuple[str, float]]:
    return [(sign, float(chance)) for sign, chance in zip(CLASSES[1:], chances[1:], strict=True)]


def _hints(sign: str, part: str) -> int:
    """Count what speaks for a fraction in the letters that were read: they end as it does, they begin as it does."""
    return part.endswith(tuple("2zZ½" if sign == "½" else "4" + sign)) + (part.startswith("3") and sign == "¾")


def _ends(word: PlacedWord) -> Sequence[tuple[int, re.Match[str]]]:
    """Return after how many letters the figures of a number may end with a fraction following, and what follows.

    Nothing follows where no letter was read in the ink behind the figures.
    """
    if word.form or word.type_px < SMALLEST or len(word.centres) != len(word.text):
        return []
    ends = []
    for k in range(1, len(word.text)):
        tail = TAIL.match(word.text[k:])
        if not tail or not HEAD.match(word.text[:k]):
            continue
        percent = len(tail["part"]) > 1 and tail["part"].endswith("%")  # "33½3%" is a third more than 33 per cent
        dollars = "$" in word.text[:k] and tail["part"].isdigit()  # nobody asks a quarter of a dollar over
        if (
            percent
            or dollars
            or NO_PART.match(tail["part"])
            or (tail["part"].isdigit() and word.confidence >= NO_DOUBT)
        ):
            continue
        ends.append((k, tail))
    unread = UNREAD.match(word.text, len(word.text))
    if unread and HEAD.match(word.text) and word.right - word.centres[-1] > PAST * word.type_px:
        ends.append((len(word.text), unread))
    return ends

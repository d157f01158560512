"""Fractions of a cent by the geometry of their type: a small raised figure, a slash, a small figure on the foot.

The display reader knows few fractions as such and takes them apart: "17½¢" comes as "171/2c", "17/2c", "17½2C" or
"17125". The small figure on the foot gives them away: nothing else in a numeral of full-size figures stands there.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from adminer.layout.clean import Gray
from adminer.reading.glyphs import Glyph, alone, around, glyphs_of, letters_of
from adminer.reading.placed import PlacedWord
from adminer.reading.recognise import read_strips

FRACTIONS: Final = {
    ("1", "2"): "½", ("1", "4"): "¼", ("3", "4"): "¾", ("1", "3"): "⅓", ("2", "3"): "⅔",
    ("1", "8"): "⅛", ("3", "8"): "⅜", ("5", "8"): "⅝", ("7", "8"): "⅞",
}  # fmt: skip
MAY_HOLD_ONE: Final = re.compile(r"^\d{1,3}['’1lI7Y½¼¾%/]{1,3}[\dzZ]?.?$")
BELOW: Final = {"z": "2", "Z": "2"}  # what a denominator is read as, besides itself
BAR: Final = frozenset("/½¼¾%")  # letters that hold a slash
MOST_FIGURES: Final = 2  # before a fraction: cents, inches
SLIM_ONE: Final = 0.45  # width of a "1" by its height: a wider one is a numerator with its slash
LOW: Final = 0.35  # of the height of the figures: the denominator begins at least as far below their head
ON_FOOT: Final = 0.15  # of that height: and ends at most so far above their foot
HIGH: Final = 0.7  # of that height: a numerator ends above this
FULL: Final = 0.85  # of that height: a lower glyph is no figure of full size
SMALLEST: Final = 9.0  # height of the figures in pixels
READ_AT: Final = 27  # pixels: the height a numerator is brought to
LIKE_A_SIGN: Final = frozenset("cC¢eEéèG£€$<([456")  # what a cent sign after a fraction is taken for


def settle_fraction(gray: Gray, word: PlacedWord, threads: int = 1) -> PlacedWord:
    """Return a number with its fraction put right where the glyphs show one, else the word as it is."""
    if word.form or not MAY_HOLD_ONE.match(word.text):
        return word
    letters, glyphs = letters_of(word), glyphs_of(gray, word)
    if len(glyphs) != len(letters) or len(letters) != len(word.text) or glyphs[0].height < SMALLEST:
        return word
    k = _denominator(letters, glyphs)
    if k is None:
        return word
    below = BELOW.get(letters[k], letters[k])
    figures = _figures(letters[:k], glyphs)
    if len(figures) == MOST_FIGURES + 1 and figures[-1] == "1":  # its numerator was cut as high as a figure
        figures = figures[:-1]
    above = _numerator(gray, letters[len(figures) : k], glyphs[len(figures) : k + 1], below, threads)
    sign = FRACTIONS.get((above, below))
    if not sign or not 0 < len(figures) <= MOST_FIGURES:
        return word
    rest = letters[k + 1 :]
    cents = rest in LIKE_A_SIGN and glyphs[-1].bottom > glyphs[0].bottom - ON_FOOT * glyphs[0].height
    text = f"{figures}{sign}{'¢' if cents else rest}"
    return replace(word, text=text, centres=(), form="fraction" if cents else None,
                   reader="numeral", confidence=min(word.confidence, 0.9))  # fmt: skip


def _denominator(letters: str, glyphs: Sequence[Glyph]) -> int | None:
    """Return which letter is a small figure on the foot with the sign of a fraction before it."""
    tall, top, foot = glyphs[0].height, glyphs[0].top, glyphs[0].bottom
    for k in range(2, len(letters)):
        glyph = glyphs[k]
        low = glyph.top > top + LOW * tall and glyph.bottom > foot - ON_FOOT * tall
        before, letter = glyphs[k - 1], letters[k - 1]
        raised = any(g.bottom < top + HIGH * tall for g in glyphs[1:k])
        joined = letter in "17lI" and before.width > SLIM_ONE * tall
        if low and letters[k] in "2348zZ" and (letter in BAR or raised or joined):
            return k
    return None


def _figures(letters: str, glyphs: Sequence[Glyph]) -> str:
    """Return the full-size figures at the start: a "1" wide enough for a slash as well is none."""
    tall, foot = glyphs[0].height, glyphs[0].bottom
    end = 0
    for letter, glyph in zip(letters, glyphs, strict=False):
        full = glyph.height > FULL * tall and glyph.bottom > foot - ON_FOOT * tall
        slashed = end == len(letters) - 1 and (letter not in "17" or glyph.width > SLIM_ONE * tall)
        if not letter.isdigit() or not full or (end and slashed and not set(letters) & BAR):
            break
        end += 1
    misplaced = any(c in BAR and g.bottom < glyphs[0].top + HIGH * tall for c, g in zip(letters, glyphs, strict=False))
    if misplaced and end > 1 and letters[end - 1] == "1":  # numerator and slash have changed places: "1" is the slash
        end -= 1
    return letters[:end]


def _numerator(gray: Gray, letters: str, glyphs: Sequence[Glyph], below: str, threads: int) -> str:
    """Return the figure above the slash: only 1 over 2, else as read among the letters or by itself."""
    if below == "2":
        return "1"
    for letter, glyph in zip(letters, glyphs, strict=False):
        if (letter, below) in FRACTIONS and glyph.height < HIGH * around(glyphs).height:
            return letter
    if len(glyphs) < 2:
        return ""
    whole = around(glyphs)
    high = Glyph(glyphs[0].left, whole.top, glyphs[-1].left, whole.top + 0.6 * whole.height)
    crop = alone(gray, high, READ_AT)
    return read_strips([crop], threads, only="1357" if below == "8" else "123")[0].text[:1] if crop.size else ""

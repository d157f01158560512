"""Strokes between figures that were read as a "1" or a bracket: "216" is 2/6 where the stroke leans and is straight."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Final

import cv2
import numpy as np

from adminer.layout.clean import Gray
from adminer.reading.glyphs import Glyph, cut_out, glyphs_of, letters_of
from adminer.reading.placed import PlacedWord
from adminer.reading.words import ink_of

BETWEEN: Final = re.compile(r"^[^\w£$]*\d{1,2}(?P<stroke>\|)\d{1,2}[½¼¾]?\D*$")
STROKES: Final = frozenset("1lI|[]")
LEAN: Final = 0.25  # of its height, from foot to head: a "1" of sloping type leans less, or has a flag
STRAIGHT: Final = 0.062  # of its height: how far its ink lies from a line; a flag or a foot makes it more
MEASURED_AT: Final = 40  # pixels: the height a stroke is brought to
LEAST: Final = 20  # pixels of ink at that height


def with_slash(gray: Gray, word: PlacedWord) -> PlacedWord:
    """Return a number with a slash in place of the stroke that was taken for a figure or a bracket, else the word."""
    if word.form or len(word.centres) != len(word.text):
        return word
    for at in range(1, len(word.text) - 1):
        stroke = word.text[at]
        split = BETWEEN.match(f"{word.text[:at]}|{word.text[at + 1 :]}")
        between = stroke in STROKES and split is not None and split.start("stroke") == at
        if between and (stroke in "|[]" or _is_stroke(gray, word, at)):
            text = f"{word.text[:at]}/{word.text[at + 1 :]}"
            return replace(word, text=text)
    return word


def _is_stroke(gray: Gray, word: PlacedWord, at: int) -> bool:
    """Say whether the ink of a letter is one straight leaning stroke."""
    glyphs, letters = glyphs_of(gray, word), letters_of(word)
    if len(glyphs) != len(letters):
        return False
    lean, off = lean_of(gray, glyphs[len(letters_of(replace(word, text=word.text[:at])))])
    return lean > LEAN and off < STRAIGHT


def lean_of(gray: Gray, glyph: Glyph) -> tuple[float, float]:
    """Return how far a glyph's ink leans from foot to head and how far it lies from a line, in parts of its height."""
    side = 0.1 * glyph.height
    scale = MEASURED_AT / max(1.0, glyph.height)
    crop, _, _ = cut_out(gray, glyph.left - side, glyph.top, glyph.right + side, glyph.bottom, scale)
    if not crop.size:
        return 0.0, 1.0
    _, labels, stats, _ = cv2.connectedComponentsWithStats(ink_of(crop).astype(np.uint8), connectivity=8)
    if len(stats) < 2:
        return 0.0, 1.0
    ys, xs = np.nonzero(labels == 1 + int(stats[1:, cv2.CC_STAT_AREA].argmax()))
    if len(ys) < LEAST:
        return 0.0, 1.0
    down, across = ys - ys.mean(), xs - xs.mean()
    lean = -float((across * down).sum() / max(1.0, (down * down).sum()))
    return lean, float(np.sqrt(np.mean((across + lean * down) ** 2))) / MEASURED_AT

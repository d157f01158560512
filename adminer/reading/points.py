"""Points before cents that were not read: a dot in a wider gap, or the room that a worn point leaves behind."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

import cv2
import numpy as np

from adminer.layout.clean import Gray
from adminer.reading.glyphs import EVEN, WORK_HEIGHT, Glyph, cut_out
from adminer.reading.placed import PlacedWord
from adminer.reading.raised import is_raised
from adminer.reading.words import ink_of

POINTLESS = re.compile(r"^\$?\d{3,4}$|^\d\d$")
LEADER = re.compile(r"^[.…·]+(?=\d{3,4}$)")  # no cents have three figures: it is the last of a row of points
HALF_FIGURE = 0.4  # of the type size: from the middle of a figure to the white before it; common practice, no source
LEAST_GAP = 0.1  # of the figure height: no point has room in less
CLOSE = 0.03  # of the figure height: figures of one number stand at least so far apart
WIDE_GAP = 1.6  # times the usual gap: one with a point in it
WIDER_GAP = 1.8  # and one whose point is worn away
DOT = (0.05, 0.35)  # of the figure height: the smallest point, and the largest
OVER = 0.05  # of the figure height: how far the middle of a point may stand under a figure beside it
ON_FOOT = 0.2  # of the figure height: a point ends so far above the foot at most
WORN_POINT = 0.22  # of the figure height: figures of one number stand closer; common practice, no source
WIDER = 1.2  # by how much a lost point sets figures further apart; a "1" on the width of other figures does not
AMOUNT = re.compile(r"^\d{0,3}\.\d\d[½¼¾]?$")
COLUMN_OF = 3  # amounts one under the other make a column
COLUMN_REACH = 16  # of the type size: eight rows of a table up and down
POINT_CHANCE = 0.05  # probability of a point before the last two figures; whole dollars of the press give under 0.03


def without_leader(word: PlacedWord) -> PlacedWord:
    """Return a number without the points that lead up to it along its row."""
    leader = LEADER.match(word.text)
    if not leader or word.form or len(word.centres) != len(word.text):
        return word
    centres = word.centres[leader.end() :]
    left = max(word.left, centres[0] - HALF_FIGURE * word.type_px)
    return replace(word, text=word.text[leader.end() :], centres=centres, left=left)


def with_point(gray: Gray, word: PlacedWord, glyphs: Sequence[Glyph], words: Sequence[PlacedWord]) -> PlacedWord | None:
    """Give a numeral its point back where a dot stands on the foot in a wider gap before its last two figures.

    After a dollar sign, and in a column of amounts, it is enough that the network half saw a point, or a gap as wide
    as one: a worn point leaves its room behind. Two figures alone in such a column are cents, as two raised ones are.
    """
    if not POINTLESS.match(word.text):
        return None
    text = f"{word.text[:-2]}.{word.text[-2:]}"
    pointed = replace(word, text=text, centres=(), confidence=min(word.confidence, 0.85))
    if len(word.text) > 2 and word.point > POINT_CHANCE and (word.text[0] == "$" or _in_column(word, words)):
        return pointed
    if len(glyphs) != len(word.text):
        return None
    figures = glyphs[word.text.startswith("$") :]
    if not _are_even(figures):
        raised = replace(pointed, form="raised_cents_bare")
        return raised if _end_raised(figures) and _in_column(word, words) else None
    if len(word.text) == 2:
        return pointed if _in_column(word, words) and not _follows_figures(word, words) else None
    before, after, last = glyphs[-3], glyphs[-2], glyphs[-1]
    tall = max(before.height, after.height)
    gap, usual = after.left - before.right, last.left - after.right
    if gap < LEAST_GAP * tall or gap < WIDE_GAP * max(usual, CLOSE * tall):
        return None
    pitch, next_pitch = (b.left + b.right - a.left - a.right for a, b in ((before, after), (after, last)))
    worn = gap > WORN_POINT * tall and gap > WIDER_GAP * usual and pitch > WIDER * next_pitch
    if worn and (word.text[0] == "$" or _in_column(word, words)):
        return pointed
    return pointed if _has_dot(gray, before, after, tall) else None


def _are_even(figures: Sequence[Glyph]) -> bool:
    heights = [glyph.height for glyph in figures]
    return min(heights) >= EVEN * max(heights)


def _end_raised(figures: Sequence[Glyph]) -> bool:
    """Say whether the last two figures, and no others, stand small and high beside the first."""
    tall, foot = figures[0].height, figures[0].bottom
    return len(figures) > 2 and all(is_raised(glyph, tall, foot) == (glyph in figures[-2:]) for glyph in figures)


def _has_dot(gray: Gray, before: Glyph, after: Glyph, tall: float) -> bool:
    """Say whether a dot stands on the foot between two figures `tall` pixels high."""
    scale = WORK_HEIGHT / tall
    crop, x0, y0 = cut_out(gray, before.left, before.top, after.right, before.bottom + 0.1 * tall, scale)
    if crop.size == 0:
        return False
    _, _, stats, _ = cv2.connectedComponentsWithStats(ink_of(crop).astype(np.uint8), connectivity=8)
    for x, y, w, h, _area in stats[1:]:
        middle, foot = x0 + (x + w / 2) / scale, y0 + (y + h) / scale
        dot = DOT[0] * WORK_HEIGHT <= max(w, h) <= DOT[1] * WORK_HEIGHT
        between = before.right - OVER * tall < middle < after.left + OVER * tall
        if dot and between and foot > before.bottom - ON_FOOT * tall:
            return True
    return False


def _in_column(word: PlacedWord, words: Sequence[PlacedWord]) -> bool:
    """Say whether a number stands in a column of amounts with two decimals, flush right, of one size."""
    size = word.type_px
    column = [
        other
        for other in words
        if AMOUNT.match(other.text)
        and abs(other.right - word.right) < size
        and 0.75 * size < other.type_px < 1.33 * size
        and abs(other.bottom - word.bottom) < COLUMN_REACH * size
    ]
    return len(column) >= COLUMN_OF


def _follows_figures(word: PlacedWord, words: Sequence[PlacedWord]) -> bool:
    middle = (word.top + word.bottom) / 2
    return any(
        other.text[-1:].isdigit() and word.left - other.right < 2 * word.type_px
        for other in words
        if other is not word and other.top < middle < other.bottom and other.left < word.left
    )

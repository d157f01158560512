"""Which strokes of a page are printed rules: what runs through words is of their letters, or a scratch of the film."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from typing import Final

import numpy as np
from numpy.typing import NDArray

from adminer.records import Box, PageReading, Word

_MIDDLE: Final = 0.25  # of the height of a word: a stroke so far within it is no rule under or over it
_SHORTEST: Final = 3.0  # heights of the usual word: a shorter stroke is a dash or of a picture
_EDGE: Final = 0.1  # heights of words by which a stroke of their letters may reach out of their box
_COVERED: Final = 0.6  # of a stroke that stands in words
_INSIDE: Final = 0.4  # heights of a word from either end: a stroke so far within it parts no columns
_MOST: Final = 0.8  # of words that a level stroke runs through from end to end
_HALF: Final = 0.5  # of the height of a word that an upright stroke runs through
_SPACE: Final = 0.7  # heights of words: the widest white between two words of a text
_ACROSS: Final = 2  # stretches of words that a stroke along the lines runs through
_DOWN: Final = 3  # words that one across the lines runs through

Boxes = NDArray[np.float64]


def printed_rules(reading: PageReading) -> tuple[Box, ...]:
    """Return the rules of a page without strokes of its letters and scratches through them, in pixels of the scan."""
    words = [word for word in reading.words if len(word.text) > 1]  # a lone stroke may be a rule that was read
    if not words:
        return reading.rules
    runs, single = _sides(_runs(words)), _sides([word.box for word in words])
    least = _SHORTEST * float(np.median(single[:, 3] - single[:, 1]))
    rules = [rule for rule in reading.rules if max(rule.w, rule.h) >= least]
    return tuple(rule for rule in rules if not _is_type(rule, runs if rule.w >= rule.h else single))


def _sides(boxes: Sequence[Box]) -> Boxes:
    return np.array([(box.x, box.y, box.right, box.bottom) for box in boxes], float)


def _runs(words: Sequence[Word]) -> list[Box]:
    """Return the boxes of stretches of words set one after the other."""
    runs = [words[0].box]
    for before, word in pairwise(words):
        if before.line == word.line and _follows(before.box, word.box):
            runs[-1] = runs[-1].joined(word.box)
        else:
            runs.append(word.box)
    return runs


def _follows(one: Box, other: Box) -> bool:
    low, high = sorted((one.h, other.h))
    return high < 2 * low and -low < other.x - one.right < _SPACE * low


def _is_type(rule: Box, boxes: Boxes) -> bool:
    """Say whether a stroke runs within type along most of its way, or, however it leans, through too much of it."""
    x, y, right, bottom = boxes.T
    (mid_x, mid_y), high = rule.centre, bottom - y
    out = np.maximum.reduce([x - rule.x, y - rule.y, rule.right - right, rule.bottom - bottom])
    if bool((out <= _EDGE * high).any()):
        return True
    if rule.w >= rule.h:
        along = (np.minimum(right, rule.right) - np.maximum(x, rule.x)).clip(0)
        inside = (y + _MIDDLE * high < mid_y) & (mid_y < bottom - _MIDDLE * high)
        whole = (y < rule.y) & (rule.bottom < bottom) & (along > _MOST * (right - x))
        return float(along[inside].sum()) > _COVERED * rule.w or int((inside & whole).sum()) >= _ACROSS
    along = (np.minimum(bottom, rule.bottom) - np.maximum(y, rule.y)).clip(0)
    if float(along[(x < mid_x) & (mid_x < right) & (high < _HALF * rule.h)].sum()) > _COVERED * rule.h:
        return True
    met = along > _HALF * high
    through = met & (x + _INSIDE * high < rule.x) & (rule.right < right - _INSIDE * high)
    beside = met & ~through & (x - _INSIDE * high < rule.right) & (rule.x < right + _INSIDE * high)
    return int(through.sum()) >= max(_DOWN, int(beside.sum()) + 1)

"""Join the pieces of lines set out to the width of a narrow column, whose word spaces are wider than a gutter.

Such a gap is no white between columns where the line over or under it runs across: a gutter goes on from line to line.
Common practice of newspaper setting, no source.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

import numpy as np
from numpy.typing import NDArray

from adminer.layout.rules import Rect, centre
from adminer.reading.join import rect_of

_WIDEST: Final = 9.0  # heights of the covering line across a gap between two words
_STEP: Final = 1.9  # heights of it from row to row
_OUT: Final = 0.8  # heights of it by which a line may reach further than the one that covers its gap
_ACROSS: Final = 0.5  # heights of it by which that one runs on at both sides of the gap
_LEVEL: Final = 0.6  # of the lower of two pieces: so much of it stands beside the other
_LIKE: Final = 0.35  # of the higher of two pieces: words without long letters stand lower
_COVER_LIKE: Final = 0.6  # of the higher of a line and the one that covers it

Ends = NDArray[np.float64]


def join_justified(rects: dict[int, Rect], worded: frozenset[int], rules: Sequence[Rect] = ()) -> dict[int, int]:
    """Return for every line the line it belongs to, by the rectangles of lines in pixels of the cleaned picture.

    Only lines that are `worded` are joined: figures alone may stand in a column of them. `rules` are the printed
    rules; across one nothing is joined.
    """
    owner = {n: n for n in rects}
    numbers = list(rects)
    ends = np.array(list(rects.values()), np.float64).reshape(-1, 4)
    first = np.ones(len(numbers), bool)  # of a line, as far as it was joined
    upright = [rule for rule in rules if rule[3] - rule[1] > rule[2] - rule[0]]
    for k in sorted((k for k, n in enumerate(numbers) if n in worded), key=lambda k: ends[k, 0]):
        others = np.flatnonzero(first)
        others = others[others != k]
        before = _before(ends[k], ends[others])
        if before is None or numbers[others[before]] not in worded:
            continue
        at = others[before]
        left, right = rect_of(ends[at]), rect_of(ends[k])
        if _is_word_space(left, right, ends[others]) and not any(_parts(rule, left, right) for rule in upright):
            owner[numbers[k]], first[k] = numbers[at], False
            ends[at] = (left[0], min(left[1], right[1]), right[2], max(left[3], right[3]))
    return owner


def _before(rect: Rect, ends: Ends) -> int | None:
    """Return the nearest of other lines left of one on its row, by its place among them."""
    _, top, right, bottom = ends.T
    low, high = np.minimum(bottom - top, rect[3] - rect[1]), np.maximum(bottom - top, rect[3] - rect[1])
    shared = np.minimum(bottom, rect[3]) - np.maximum(top, rect[1])
    beside = np.flatnonzero((right <= rect[0]) & (shared > _LEVEL * low))
    if not beside.size:
        return None
    nearest = int(beside[np.argmax(right[beside])])
    return nearest if low[nearest] > _LIKE * high[nearest] else None


def _is_word_space(left: Rect, right: Rect, ends: Ends) -> bool:
    """Say whether the line over or under a gap runs across it and the other one shows no gutter there."""
    covered = [_covers(left, right, ends, side) for side in (-1, 1)]
    return True in covered and False not in covered


def _covers(left: Rect, right: Rect, ends: Ends, side: int) -> bool | None:
    """Say whether the next line over (-1) or under (1) a gap runs across it: False for a gutter, None for no word."""
    x0, y0, x1, y1 = ends.T
    height = max(left[3] - left[1], right[3] - right[1])
    middle = (centre(left)[1] + centre(right)[1]) / 2
    step = side * ((y0 + y1) / 2 - middle)
    near = (step > 0.5 * height) & (step < _STEP * np.maximum(y1 - y0, 1.0)) & (x1 > left[0]) & (x0 < right[2])
    if not near.any():
        return None
    high = y1 - y0
    near &= np.abs(step) < float(np.abs(step[near]).min()) + 0.5 * height  # the next row, not one behind it
    spans = near & (x0 < left[2] - _ACROSS * high) & (x1 > right[0] + _ACROSS * high)
    spans &= (left[0] > x0 - _OUT * high) & (right[2] < x1 + _OUT * high) & (right[0] - left[2] < _WIDEST * high)
    spans &= np.minimum(high, height) > _COVER_LIKE * np.maximum(high, height)
    if spans.any():
        return True
    begins = near & (x0 > left[2] - _ACROSS * high)
    ends_at = near & (x1 < right[0] + _ACROSS * high)
    return None if not (begins.any() and ends_at.any()) and not (near & ~begins & ~ends_at).any() else False


def _parts(rule: Rect, left: Rect, right: Rect) -> bool:
    """Say whether an upright rule stands between two pieces."""
    return left[2] - 2 <= centre(rule)[0] <= right[0] + 2 and rule[1] <= centre(right)[1] <= rule[3]

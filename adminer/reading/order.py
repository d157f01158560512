"""In which order a person reads the lines of a page: columns one after the other, rows within them."""

from __future__ import annotations

from collections.abc import Sequence

from adminer.layout.rules import Rect

MIN_GUTTER = 0.6  # of the median line height: narrower gaps are word spaces, not the white between columns


def reading_order(boxes: Sequence[Rect]) -> list[int]:
    """Return the indices of the boxes in reading order.

    Cuts the page along its widest white stretch, again and again (the recursive XY cut of Nagy and Seth, 1984): a
    horizontal one reads top before bottom, a vertical one left before right.
    """
    if not boxes:
        return []
    heights = sorted(b[3] - b[1] for b in boxes)
    return _cut(list(range(len(boxes))), boxes, heights[len(heights) // 2] * MIN_GUTTER)


def _cut(items: list[int], boxes: Sequence[Rect], gutter: float) -> list[int]:
    if len(items) < 2:
        return items
    gap_x, at_x = _widest(items, boxes, 0)
    gap_y, at_y = _widest(items, boxes, 1)
    if gap_x > gutter and gap_x >= gap_y * 0.5:
        axis, at = 0, at_x
    elif gap_y > 0:
        axis, at = 1, at_y
    elif gap_x > 0:
        axis, at = 0, at_x
    else:
        return sorted(items, key=lambda i: (boxes[i][1] + boxes[i][3], boxes[i][0]))
    first = [i for i in items if (boxes[i][axis] + boxes[i][axis + 2]) / 2 < at]
    second = [i for i in items if (boxes[i][axis] + boxes[i][axis + 2]) / 2 >= at]
    if not first or not second:
        return sorted(items, key=lambda i: (boxes[i][1] + boxes[i][3], boxes[i][0]))
    return _cut(first, boxes, gutter) + _cut(second, boxes, gutter)


def _widest(items: list[int], boxes: Sequence[Rect], axis: int) -> tuple[float, float]:
    """Return the width and middle of the widest white stretch across an axis; lines may overlap by a fifth."""
    spans = []
    for i in items:
        low, high = boxes[i][axis], boxes[i][axis + 2]
        shave = 0.2 * (boxes[i][3] - boxes[i][1])
        spans.append((low + shave, high - shave))
    spans.sort()
    best, at, end = 0.0, 0.0, spans[0][1]
    for low, high in spans[1:]:
        if low - end > best:
            best, at = low - end, (low + end) / 2
        end = max(end, high)
    return best, at

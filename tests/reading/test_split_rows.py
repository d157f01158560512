"""A column of figures that was taken for one line: cut into rows, even where the strokes of two rows touch."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from adminer.reading.detect import Line
from adminer.reading.letters import ReadLine
from adminer.reading.seen import Seen
from adminer.reading.sight import split_rows


def block(strip: NDArray[np.uint8]) -> Seen:
    height, width = strip.shape
    corners = np.array([[0, 0], [width, 0], [width, height], [0, height]], np.float32)
    return Seen(Line(corners, 0.9), strip, ReadLine(()))


def column(rows: int, pitch: int, touching: int) -> NDArray[np.uint8]:
    """Draw rows of figures whose first stroke reaches down into the next row."""
    strip = np.full((rows * pitch + 4, 60), 245, np.uint8)
    for k in range(rows):
        top = 2 + k * pitch
        strip[top : top + pitch - 4, 6:40] = 10
        strip[top : top + pitch, 6 : 6 + touching] = 10
    return strip


def test_rows_that_touch_are_cut_at_their_valleys() -> None:
    assert len(split_rows(block(column(4, 16, 10)), usual=18.0)) == 4
    assert len(split_rows(block(column(4, 16, 0)), usual=18.0)) == 4


def test_a_large_figure_is_not_cut_in_two() -> None:
    strip = np.full((90, 60), 245, np.uint8)
    strip[4:40, 6:50] = strip[50:86, 6:50] = 10
    strip[40:50, 20:34] = 10
    assert split_rows(block(strip), usual=18.0) == []

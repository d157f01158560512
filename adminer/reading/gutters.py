"""The white between the columns of a paper, so narrow that lines of two columns seem to be one.

A column shows where lines begin one under the other and those before them end. Learned from pages, no source.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Final, Self

import numpy as np
from numpy.typing import NDArray

from adminer.layout.rules import Rect, centre

_LONG: Final = 5.0  # heights of a line from which its ends tell where a column stands
_AROUND: Final = 12.0  # heights over and under a place, within which lines are its witnesses
_EDGE: Final = 0.5  # heights by which the beginnings of lines in one column differ, and their ends
_FEW: Final = 3  # lines that must begin at a gutter, and end at it
_BOTH: Final = 10  # that must do either
_LIKE: Final = 0.6  # of the height of a piece, that lines are high which bear witness to its column
_ACROSS: Final = 0.3  # of the side where more do: so many may run across, read as one line


@dataclass(frozen=True, slots=True)
class Gutters:
    """Hold the long lines of a page: ends, middle and height, all in pixels of the cleaned picture."""

    lefts: NDArray[np.float64]
    rights: NDArray[np.float64]
    middles: NDArray[np.float64]
    heights: NDArray[np.float64]

    @classmethod
    def of(cls, rects: Iterable[Rect]) -> Self:
        """Take the long ones among lines as witnesses."""
        long = [r for r in rects if r[2] - r[0] > _LONG * (r[3] - r[1])]
        ends = [(r[0], r[2], centre(r)[1], r[3] - r[1]) for r in long]
        return cls(*np.array(ends, np.float64).reshape(-1, 4).T)

    def between(self, before: Rect, after: Rect) -> bool:
        """Say whether a gutter stands between two pieces of a row."""
        high = max(before[3] - before[1], after[3] - after[1])
        beside = (np.abs(self.middles - centre(after)[1]) < _AROUND * high) & (self.heights > _LIKE * high)
        begin = beside & (np.abs(self.lefts - after[0]) < _EDGE * high)
        end = beside & (np.abs(self.rights - before[2]) < _EDGE * high)
        across = beside & (self.lefts < before[2] - high) & (self.rights > after[0] + high)
        few, many = sorted((int(begin.sum()), int(end.sum())))
        return few >= _FEW and few + many >= _BOTH and across.sum() <= _ACROSS * many

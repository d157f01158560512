"""The records of the cut: lines of type as they were read, and the parts of a page they make."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np

from adminer.layout.rules import Rect, centre
from adminer.records import RegionKind

_NARROW: Final = 2.5  # widths of its letters to the height of the narrowest type


@dataclass(frozen=True, slots=True)
class TypeLine:
    """Hold a line of type for the cut: its rectangle, its height and what it says."""

    rect: Rect
    height: float
    text: str

    @property
    def type_size(self) -> float:
        """Return the height of its type: lines of two columns read as one stand aslant and are no taller."""
        return min(self.height, _NARROW * (self.rect[2] - self.rect[0]) / max(1, len(self.text)))


@dataclass(frozen=True, slots=True)
class Part:
    """Hold one part of a page in pixels of the cleaned picture."""

    rect: Rect
    kind: RegionKind
    confidence: float


def middle_of(line: TypeLine) -> float:
    """Return how far down the picture the middle of a line stands."""
    return centre(line.rect)[1]


def usual_size(lines: Sequence[TypeLine]) -> float:
    """Return the middle height of lines, of which there must be one."""
    return float(np.median([line.height for line in lines]))


def ends_of(lines: Sequence[TypeLine], count: int) -> list[TypeLine]:
    """Return the first and the last lines from the top down, `count` of each; of few lines some are both."""
    ordered = sorted(lines, key=middle_of)
    return [*ordered[:count], *ordered[-count:]]


def around(rects: Sequence[Rect], whole: Rect) -> Rect:
    """Return the rectangle around rectangles, `whole` where there are none."""
    if not rects:
        return whole
    return (min(r[0] for r in rects), min(r[1] for r in rects), max(r[2] for r in rects), max(r[3] for r in rects))

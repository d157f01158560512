"""Stand the columns of a page upright: a page that lay askew on the film has level lines and columns that lean.

White between narrow columns is no wider than what they lean over the height of a page, so that no upright cut goes
through it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

import numpy as np

from adminer.layout.rules import Rect
from adminer.layout.type_lines import TypeLine

_MOST: Final = 0.02  # pixels to the side a pixel down: more is no page of a scan
_STEP: Final = 0.001
_CELL: Final = 2.0  # pixels within which lines begin at one place
_SURE: Final = 1.2  # times as sharp as upright: less is chance
_UPRIGHT: Final = 4.0  # heights to a width from which a rule stands between columns


def lean_of(lines: Sequence[TypeLine]) -> float:
    """Return by how much columns lean, in pixels to the right for a pixel down: the lean at which lines align best."""
    if not lines:
        return 0.0
    left = np.array([line.rect[0] for line in lines])
    middle = np.array([(line.rect[1] + line.rect[3]) / 2 for line in lines])
    leans = np.round(np.arange(-_MOST, _MOST + _STEP / 2, _STEP), 4)
    sharp = [_sharpness(left - lean * middle) for lean in leans]
    best = int(np.argmax(sharp))
    return float(leans[best]) if sharp[best] > _SURE * _sharpness(left) else 0.0


def _sharpness(at: np.ndarray[tuple[int], np.dtype[np.float64]]) -> float:
    cells = np.floor((at - at.min()) / _CELL).astype(int) + 1
    counts = np.bincount(cells, minlength=cells.max() + 2).astype(float)
    return float(np.sum((counts[:-1] + counts[1:]) ** 2))  # a line on the edge of a cell counts in both


def upright_lines(lines: Sequence[TypeLine], lean: float) -> list[TypeLine]:
    """Return lines moved to where they would stand in upright columns."""
    return [replace(line, rect=_moved(line.rect, lean)) for line in lines]


def upright_rules(rules: Sequence[Rect], lean: float) -> list[Rect]:
    """Return rules as they would stand in upright columns: those between columns no wider than their stroke."""
    found = []
    for rule in rules:
        left, top, right, bottom = _moved(rule, lean)
        if bottom - top > _UPRIGHT * (right - left):
            thinner = min(abs(lean) * (bottom - top), 0.8 * (right - left)) / 2
            left, right = left + thinner, right - thinner
        found.append((left, top, right, bottom))
    return found


def as_printed(rect: Rect, lean: float) -> Rect:
    """Return a rectangle of upright columns at its place on the page, by where its middle stands."""
    return _moved(rect, -lean)


def _moved(rect: Rect, lean: float) -> Rect:
    shift = lean * (rect[1] + rect[3]) / 2
    return rect[0] - shift, rect[1], rect[2] - shift, rect[3]

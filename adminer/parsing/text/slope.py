"""How the type of an advert slopes and curls, and boxes moved so that its rows become level."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import groupby
from typing import Final

import numpy as np
from numpy.typing import NDArray

from adminer.records import Box, Word

_LONG_WORD: Final = 3  # letters; the box of a shorter word says little about its line
_LONG_LINE: Final = 4.0  # type sizes between the words a slope is measured with
_ENOUGH_LINES: Final = 3
_ENOUGH_FOR_GAIN: Final = 5
_STRAY: Final = 0.05  # slopes further from the middle one come from boxes of odd words
_JITTER: Final = 2.0  # pixels that the middles of the boxes at both ends of a line are off by, together
_SIGNIFICANT: Final = 2.0  # standard errors from which a change of slope down the page is one
_LEAST: Final = 0.004  # a slope below this is no slope: four pixels in a thousand


@dataclass(frozen=True, slots=True)
class Slope:
    """Hold how type slopes down to the right, pixels a pixel: at the top left, what it gains a pixel down and across.

    A row that begins at height y on the left edge is at y + at_top x + gain y x + turn x^2 / 2 + curl x^3 / 3.
    """

    at_top: float = 0.0
    gain: float = 0.0
    turn: float = 0.0
    curl: float = 0.0


LEVEL: Final = Slope()  # of type that runs level


def flattened(box: Box, slope: Slope) -> Box:
    """Return a box moved up or down so that a sloping row of boxes becomes level."""
    x, y = box.centre
    fall = (slope.at_top + (slope.turn / 2 + slope.curl * x / 3) * x) * x
    level = (y - fall) / (1 + slope.gain * x)
    return Box(box.x, round(level - box.h / 2), box.w, box.h)


def slope_of(words: tuple[Word, ...]) -> Slope:
    """Measure the slope of the type and how it changes over the page, from the lines long enough to show it.

    A plane or a curve through the slopes of the lines by where they stand, least squares weighed by how surely a line
    of its length shows a slope, after the lines far from the middle slope are left out. A change down or across the
    page that may be chance is none; level where too few lines show anything.
    """
    seen: list[tuple[float, float, float, float]] = []  # height at the left edge, both ends, slope
    for _, group in groupby(words, key=lambda w: (w.block, w.line)):
        line = [w for w in group if len(w.text) >= _LONG_WORD]
        if len(line) < 2:
            continue
        (x0, y0), (x1, y1) = line[0].box.centre, line[-1].box.centre
        if x1 - x0 > _LONG_LINE * line[0].type_px:
            slope = (y1 - y0) / (x1 - x0)
            seen.append((y0 - slope * x0, x0, x1, slope))
    if len(seen) < _ENOUGH_LINES:
        return LEVEL
    heights, lefts, rights, slopes = (np.array(column) for column in zip(*seen, strict=True))
    lengths = rights - lefts
    middle = float(np.median(np.repeat(slopes, np.maximum(lengths // 50, 1).astype(int))))
    kept = np.abs(slopes - middle) < _STRAY
    if kept.sum() < _ENOUGH_LINES:
        return Slope(middle) if abs(middle) > _LEAST else LEVEL
    slopes, sure, lefts, rights = slopes[kept], lengths[kept] / _JITTER, lefts[kept], rights[kept]
    columns = {
        "gain": heights[kept],
        "turn": (lefts + rights) / 2,
        "curl": (lefts**2 + lefts * rights + rights**2) / 3,
    }
    told: list[str] = []
    terms = [np.ones_like(slopes)]
    for name, column in columns.items():
        if len(slopes) < _ENOUGH_FOR_GAIN or np.ptp(column) == 0:
            continue
        value, error = _last_term([*terms, column], slopes, sure)
        if abs(value) * np.ptp(column) > _LEAST and abs(value) > _SIGNIFICANT * error:
            terms.append(column)
            told.append(name)
    found = _fit(terms, slopes, sure)
    if not told:
        return Slope(found[0]) if abs(found[0]) > _LEAST else LEVEL
    return Slope(found[0], **dict(zip(told, found[1:], strict=True)))


def _fit(terms: list[NDArray[np.float64]], slopes: NDArray[np.float64], sure: NDArray[np.float64]) -> list[float]:
    matrix = np.column_stack(terms) * sure[:, None]
    return [float(value) for value in np.linalg.lstsq(matrix, slopes * sure, rcond=None)[0]]


def _last_term(
    terms: list[NDArray[np.float64]], slopes: NDArray[np.float64], sure: NDArray[np.float64]
) -> tuple[float, float]:
    """Return the weight of the last term in the fit and its standard error."""
    matrix = np.column_stack(terms) * sure[:, None]
    scale = np.linalg.norm(matrix, axis=0)
    error = np.linalg.pinv((matrix / scale).T @ (matrix / scale))[-1, -1] ** 0.5 / scale[-1]
    return _fit(terms, slopes, sure)[-1], float(error)

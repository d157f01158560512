"""Flatten a picture whose lines of type converge or curl: a photo from aslant, the page of a bound volume.

How the slope of its lines changes over a picture says by how much every column is to be moved up or down. A picture
is bent back only where that is clear: one angle must not do, and most lines must agree. A flat picture stays as it is.
"""

from __future__ import annotations

from dataclasses import dataclass

import cv2
import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]

LEAST_LINES = 12  # lines that must agree
AGREE = 0.7  # part of all lines that must
EXPLAINED = 0.5  # of the spread of slopes about one angle: the bend must leave no more
AMPLITUDE = 0.6  # heights of a line: a bend that moves no line by as much does no harm
DAMPED = (0.0, 0.1, 0.1, 0.1, 0.1)  # keeps the bend small where few lines speak of it
BAND = 512  # rows flattened at a time: maps of a page of 60 megapixels would take a gigabyte


@dataclass(frozen=True, slots=True)
class Bend:
    """Hold how the lines of a picture run: slope = a + b v + c u + e u v + f u^2 at a point (u, v).

    u and v are measured from the middle of the picture in units of its width. `top` is the row of the flat picture's
    first row on the same scale.
    """

    slope: tuple[float, float, float, float, float]
    width: int
    height: int
    top: float = 0.0

    def _moves(self, x: Floats) -> tuple[Floats, Floats]:
        """Return what columns are moved by, and stretched by: v becomes v * stretch + move."""
        a, b, c, e, f = self.slope
        u = (x - self.width / 2) / self.width
        return -(a * u + c * u**2 / 2 + f * u**3 / 3), 1 - (b * u + e * u**2 / 2)

    def flat_rows(self, x: Floats, y: Floats) -> Floats:
        """Return the rows of points of the picture on the flat one."""
        move, stretch = self._moves(x)
        return ((y - self.height / 2) / self.width * stretch + move) * self.width + self.height / 2 - self.top

    def bent_rows(self, x: Floats, y: Floats) -> Floats:
        """Return the rows of points of the flat picture on the picture."""
        move, stretch = self._moves(x)
        return ((y + self.top - self.height / 2) / self.width - move) / stretch * self.width + self.height / 2


def bend_of(rows: Floats, letter: float, width: int, height: int) -> Bend | None:
    """Return the bend of a picture from its lines, None where they run level or all fall alike.

    A row is (x, y, slope, length) of one line, x and y of its middle; `letter` is the height of a usual line. All in
    pixels but the slope.
    """
    if len(rows) < LEAST_LINES:
        return None
    u, v = (rows[:, 0] - width / 2) / width, (rows[:, 1] - height / 2) / width
    terms = np.column_stack([np.ones_like(u), v, u, u * v, u**2])
    weight = np.sqrt(rows[:, 3] / width)
    found, keep = np.zeros(5), np.ones(len(u), bool)
    for _ in range(6):
        damped = np.vstack([terms[keep] * weight[keep, None], np.diag(DAMPED)])
        found = np.linalg.lstsq(damped, np.append(rows[keep, 2] * weight[keep], np.zeros(5)), rcond=None)[0]
        off = np.abs(rows[:, 2] - terms @ found)
        keep = off <= max(3 * float(np.median(off)), 0.004)
    a, b, c, e, f = (float(value) for value in found)
    bend = Bend((a, b, c, e, f), width, height)
    level = float(np.median(rows[:, 2]))
    explained = float(np.mean(off * weight)) < EXPLAINED * float(np.mean(np.abs(rows[:, 2] - level) * weight))
    if not explained or keep.mean() < AGREE:
        return None
    turned = Bend((a, 0.0, 0.0, 0.0, 0.0), width, height)
    apart = bend.flat_rows(rows[:, 0], rows[:, 1]) - turned.flat_rows(rows[:, 0], rows[:, 1])
    if np.ptp(apart) < AMPLITUDE * letter:
        return None
    edge = np.arange(width, dtype=np.float64)
    top = min(0.0, float(bend.flat_rows(edge, np.zeros(width)).min()))
    return Bend(bend.slope, width, height, top)


def flatten(gray: NDArray[np.uint8], bend: Bend) -> NDArray[np.uint8]:
    """Return a picture with its lines straight and level; it is as much higher as what the bend moves out of it."""
    width = gray.shape[1]
    columns = np.arange(width, dtype=np.float64)
    height = int(np.ceil(max(gray.shape[0], bend.flat_rows(columns, np.full(width, float(gray.shape[0]))).max())))
    flat = np.empty((height, width), np.uint8)
    for top in range(0, height, BAND):
        rows = np.arange(top, min(height, top + BAND), dtype=np.float64)
        at_y = np.stack([bend.bent_rows(columns, np.full(width, row)) for row in rows]).astype(np.float32)
        at_x = np.repeat(columns[None].astype(np.float32), len(rows), axis=0)
        flat[top : top + BAND] = cv2.remap(gray, at_x, at_y, cv2.INTER_CUBIC, borderMode=cv2.BORDER_REPLICATE)
    return flat

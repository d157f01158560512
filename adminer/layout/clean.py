"""Make a picture fit for reading: one gray plane, light evened out, turned straight; and the way back to the scan."""

from __future__ import annotations

from dataclasses import dataclass

import cv2
import numpy as np
from numpy.typing import NDArray

from adminer.layout.bend import Bend
from adminer.records import Box

Gray = NDArray[np.uint8]

PAPER_SIDE = 512  # pixels of the longer side of the copy that the light of the paper is told from
BAND = 512  # rows evened at a time: a page of 60 megapixels as floating numbers would take a gigabyte
SPECK = 4  # pixels of ink with nothing near: the point of a small type has more, or a letter beside it
BLUR = 8.0  # pixels of standard deviation that cost little; a wider blur is made on a smaller copy
SKEW_SIDE = 700  # pixels of the longer side of the copy that the fall of lines is told from
DARKER = 12  # levels of 255 under what is around it: ink there
SOLID = 150  # of 255 that is ink around a pixel: no type
LEAST_INK = 50  # pixels of that copy: less tells nothing
STEEPEST = 6.0  # degrees
CLEARER = 1.05  # times as varied must the rows of a turned picture be as those of the level one
LEAST_CONTRAST = 60  # levels of 255 between paper and ink: less is grain, not type


@dataclass(frozen=True, slots=True)
class WayBack:
    """Map points of the cleaned picture to pixels of the scan: the bend taken out of it, then a matrix (3, 3)."""

    matrix: NDArray[np.float64]
    width: int  # of the scan
    height: int
    bend: Bend | None = None

    def points(self, points: NDArray[np.float32]) -> NDArray[np.float32]:
        """Map points (N, 2) as (x, y)."""
        if self.bend is not None:
            rows = self.bend.bent_rows(points[:, 0].astype(np.float64), points[:, 1].astype(np.float64))
            points = np.column_stack([points[:, 0], rows]).astype(np.float32)
        mapped = cv2.perspectiveTransform(points.reshape(1, -1, 2).astype(np.float32), self.matrix)
        return np.asarray(mapped, np.float32).reshape(-1, 2)

    def box(self, left: float, top: float, right: float, bottom: float) -> Box:
        """Return the upright box on the scan around a rectangle of the cleaned picture, cut off at the edges."""
        corners = self.points(np.array([[left, top], [right, top], [right, bottom], [left, bottom]], np.float32))
        (x0, y0), (x1, y1) = np.floor(corners.min(axis=0) + 0.25), np.ceil(corners.max(axis=0) - 0.25)
        x0, y0 = min(max(int(x0), 0), self.width - 1), min(max(int(y0), 0), self.height - 1)
        x1, y1 = min(max(int(x1), x0 + 1), self.width), min(max(int(y1), y0 + 1), self.height)
        return Box(x0, y0, x1 - x0, y1 - y0)

    def length(self, pixels: float, x: float, y: float) -> float:
        """Return how long on the scan an upright stroke of some pixels is at a place of the cleaned picture."""
        ends = self.points(np.array([[x, y], [x, y + pixels]], np.float32))
        return float(np.linalg.norm(ends[1] - ends[0]))


def to_gray(pixels: NDArray[np.uint8]) -> Gray:
    """Return one plane (H, W) of a gray or RGB picture."""
    return pixels if pixels.ndim == 2 else np.asarray(cv2.cvtColor(pixels, cv2.COLOR_RGB2GRAY), np.uint8)


def even_light(gray: Gray) -> Gray:
    """Divide by the paper's own brightness, so that shadows and yellowing go and paper becomes white.

    The paper is what a wide closing leaves of a small copy. Where it is dark over a wide stretch there is a
    printed panel, not a shadow, and it is left as dark as it is.
    """
    height, width = gray.shape
    scale = min(1.0, PAPER_SIDE / max(height, width))
    small = cv2.resize(gray, None, fx=scale, fy=scale, interpolation=cv2.INTER_AREA)
    reach = max(9, min(small.shape) // 12) | 1
    paper = cv2.morphologyEx(small, cv2.MORPH_CLOSE, np.ones((reach, reach), np.uint8))
    paper = cv2.GaussianBlur(paper, (0, 0), reach / 2)
    usual = float(np.percentile(paper, 75))
    floor = max(90.0, 0.55 * usual)
    paper = np.maximum(paper, floor)
    gain = (235.0 / paper).astype(np.float32)
    evened = np.empty_like(gray)
    for top in range(0, height, BAND):
        rows = np.arange(top, min(height, top + BAND), dtype=np.float32)
        at_y = np.repeat(((rows + 0.5) * (gain.shape[0] / height) - 0.5)[:, None], width, axis=1)
        at_x = np.repeat(
            ((np.arange(width, dtype=np.float32) + 0.5) * (gain.shape[1] / width) - 0.5)[None], len(rows), 0
        )
        full = cv2.remap(gain, at_x, at_y, cv2.INTER_LINEAR, borderMode=cv2.BORDER_REPLICATE)
        band = gray[top : top + BAND]
        evened[top : top + BAND] = np.minimum(band * full, 255)
    return evened


@dataclass(frozen=True, slots=True)
class Ground:
    """Hold a picture and how light and how dark (levels of 255) the surroundings of each of its pixels get."""

    gray: Gray
    light: NDArray[np.float32]
    dark: NDArray[np.float32]


def ground_of(gray: Gray) -> Ground:
    """Measure the surroundings of each pixel, evenly over the page."""
    reach = max(15, min(gray.shape) // 20) | 1
    window = np.ones((reach, reach), np.uint8)
    return Ground(gray, _softened(cv2.dilate(gray, window), reach / 2), _softened(cv2.erode(gray, window), reach / 2))


def _softened(plane: cv2.typing.MatLike, sigma: float) -> NDArray[np.float32]:
    """Blur a picture that has nothing finer than the blur, at a size at which that is cheap."""
    height, width = plane.shape
    step = max(1, int(sigma / BLUR))
    size = max(1, round(width / step)), max(1, round(height / step))
    small = cv2.resize(plane.astype(np.float32), size, interpolation=cv2.INTER_AREA)
    blurred = cv2.GaussianBlur(small, (0, 0), sigma / step)
    return np.asarray(cv2.resize(blurred, (width, height), interpolation=cv2.INTER_LINEAR), np.float32)


def lift_faint(ground: Ground) -> Gray:
    """Stretch contrast neighbourhood by neighbourhood, so that faint type stands out as much as bold type does.

    For finding type only: halftones and show-through are lifted as well. Half of the picture as it was is mixed in,
    because lines of small type run together once everything is as black as can be.
    """
    spread = np.maximum(ground.light - ground.dark, LEAST_CONTRAST)
    lifted = np.clip((ground.gray - ground.light) / spread * 255 + 255, 0, 255)
    return np.asarray(0.5 * lifted + 0.5 * ground.gray, np.uint8)


def soften(gray: Gray) -> Gray:
    """Take the specks and the hard stair-steps out of a two-tone copy: the readers know type with soft edges."""
    ink = (gray < 128).astype(np.uint8)
    count, labels, stats, _ = cv2.connectedComponentsWithStats(ink, connectivity=8)
    crowded = cv2.boxFilter(ink.astype(np.float32), -1, (9, 9), normalize=False)
    speck = np.zeros(count, bool)
    speck[1:] = stats[1:, cv2.CC_STAT_AREA] <= SPECK
    lonely = speck[labels] & (crowded <= SPECK + 1)
    return np.asarray(cv2.GaussianBlur(np.where(lonely, 255, gray).astype(np.uint8), (0, 0), 0.7), np.uint8)


def skew_of(gray: Gray) -> float:
    """Return the angle in degrees by which lines of type fall to the right (positive: clockwise), within 6 degrees.

    Searches the angle whose row sums vary most (the projection profile method of Postl, 1986).
    """
    scale = min(1.0, SKEW_SIDE / max(gray.shape))
    small = cv2.resize(gray, None, fx=scale, fy=scale, interpolation=cv2.INTER_AREA)
    blur = cv2.GaussianBlur(small, (0, 0), 15)
    ink = (cv2.subtract(blur, small) > DARKER).astype(np.uint8)
    ink[cv2.blur(ink * 255, (41, 41)) > SOLID] = 0  # pictures and panels have no lines
    if ink.sum() < LEAST_INK:
        return 0.0
    ys, xs = (places.astype(np.float64) for places in np.nonzero(ink))
    best = _best_angle(xs, ys, np.arange(-STEEPEST, STEEPEST + 0.01, 0.5))
    return _best_angle(xs, ys, np.arange(best - 0.5, best + 0.51, 0.1))


def _best_angle(xs: NDArray[np.float64], ys: NDArray[np.float64], angles: NDArray[np.float64]) -> float:
    scores = []
    for angle in angles:
        rows = ys - np.tan(np.radians(angle)) * xs
        rows -= rows.min()
        counts = np.bincount(np.rint(rows, out=rows).astype(np.intp)).astype(np.float64)
        scores.append(float(np.sum(np.diff(counts) ** 2)))
    flat = int(np.argmin(np.abs(angles)))
    winner = int(np.argmax(scores))
    return float(angles[winner]) if scores[winner] > CLEARER * scores[flat] else float(angles[flat])


def straighten(gray: Gray, degrees: float) -> tuple[Gray, NDArray[np.float64]]:
    """Turn a picture by an angle about its centre; return it and the matrix (3, 3) from it back to the one given."""
    height, width = gray.shape
    turn = np.vstack([cv2.getRotationMatrix2D((width / 2, height / 2), degrees, 1.0), [0, 0, 1]])
    turned = cv2.warpAffine(gray, turn[:2], (width, height), flags=cv2.INTER_CUBIC, borderMode=cv2.BORDER_REPLICATE)
    return np.asarray(turned, np.uint8), np.asarray(np.linalg.inv(turn), np.float64)

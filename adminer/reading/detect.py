"""Where type stands on a picture: the detecting network at a chosen scale, in tiles where the picture is large."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

import cv2
import numpy as np
from numpy.typing import NDArray

from adminer.layout.clean import Gray
from adminer.reading.models import answers_of

INK_LEVEL = 0.3  # probability above which a pixel counts as type; the network's own published setting
LINE_LEVEL = 0.5  # mean probability a whole line needs; the same source
GROW = 1.6  # the network marks the kernel of a line; the line is larger by area * GROW / perimeter; same source
LYING = 3.0  # times as wide as high: a line with something hanging on it
TILE = 1280  # side of a tile in network pixels: bounds the memory of one look
SEAM = 160  # overlap of two tiles in network pixels: the tallest line that no seam may cut


@dataclass(frozen=True, slots=True)
class Line:
    """Hold one line of type as found: its four corners in pixels of the picture, clockwise from top left."""

    corners: NDArray[np.float32]
    score: float

    @property
    def width(self) -> float:
        """Return the length of the line in pixels."""
        return float(np.linalg.norm(self.corners[1] - self.corners[0]))

    @property
    def height(self) -> float:
        """Return the height of the line in pixels."""
        return float(np.linalg.norm(self.corners[3] - self.corners[0]))

    @property
    def bounds(self) -> tuple[float, float, float, float]:
        """Return left, top, right, bottom."""
        left, top = self.corners.min(axis=0)
        right, bottom = self.corners.max(axis=0)
        return float(left), float(top), float(right), float(bottom)


@dataclass(frozen=True, slots=True, eq=False)
class Sighting:
    """Hold what one look at a picture found: lines of type, and each pixel of the look that may be type at all."""

    lines: list[Line]
    marked: NDArray[np.bool_]


def find_lines(gray: Gray, scale: float, threads: int = 1) -> Sighting:
    """Find the lines of type on a picture, looked at with `scale` network pixels to one of its own.

    A large picture is looked at in overlapping tiles whose probability maps are joined before lines are cut out of
    them, so that no line is found twice.
    """
    height, width = gray.shape
    small_h, small_w = max(32, round(height * scale)), max(32, round(width * scale))
    shrunk = cv2.resize(gray, (small_w, small_h), interpolation=cv2.INTER_AREA if scale < 1 else cv2.INTER_CUBIC)
    likely = np.zeros((small_h, small_w), np.float32)
    for top, bottom in _spans(small_h):
        for left, right in _spans(small_w):
            seen = _probability(np.asarray(shrunk[top:bottom, left:right], np.uint8), threads)
            np.maximum(likely[top:bottom, left:right], seen, out=likely[top:bottom, left:right])
    lines = [
        Line((line.corners / (small_w / width, small_h / height)).astype(np.float32), line.score)
        for line in _cut_lines(likely)
    ]
    return Sighting(lines, likely > INK_LEVEL)


def _spans(length: int) -> list[tuple[int, int]]:
    if length <= TILE + SEAM:
        return [(0, length)]
    count = -(-(length - SEAM) // (TILE - SEAM))
    step = (length - SEAM) / count
    edges = [round(i * step) for i in range(count + 1)]
    return [(a, min(length, b + SEAM)) for a, b in pairwise(edges)]


def _probability(tile: Gray, threads: int) -> NDArray[np.float32]:
    height, width = tile.shape
    padded = cv2.copyMakeBorder(tile, 0, -height % 32, 0, -width % 32, cv2.BORDER_REPLICATE)
    plane = padded.astype(np.float32) / 127.5 - 1.0
    out = answers_of("det", np.broadcast_to(plane, (1, 3, *plane.shape)).copy(), threads)
    return np.asarray(out[0, 0, :height, :width], np.float32)


def _cut_lines(likely: NDArray[np.float32]) -> list[Line]:
    mask = cv2.dilate((likely > INK_LEVEL).astype(np.uint8), np.ones((2, 2), np.uint8))
    contours, _ = cv2.findContours(mask, cv2.RETR_LIST, cv2.CHAIN_APPROX_SIMPLE)
    lines = []
    for contour in contours:
        (cx, cy), (w, h), angle = cv2.minAreaRect(contour)
        if min(w, h) < 3:
            continue
        score = _mean_inside(likely, _corners(cx, cy, w, h, angle))
        if score < LINE_LEVEL and (level := _level_part(contour)) is not None:
            (cx, cy), (w, h), angle = cv2.minAreaRect(level)
            score = _mean_inside(likely, _corners(cx, cy, w, h, angle))
        if score < LINE_LEVEL:
            continue
        grow = 2 * w * h * GROW / (2 * (w + h))
        corners = _clockwise(_corners(cx, cy, w + grow, h + grow, angle))
        corners[:, 0] = corners[:, 0].clip(0, likely.shape[1] - 1)
        corners[:, 1] = corners[:, 1].clip(0, likely.shape[0] - 1)
        line = Line(corners, score)
        if min(line.width, line.height) > 3:
            lines.append(line)
    return lines


def _level_part(contour: cv2.typing.MatLike) -> NDArray[np.int32] | None:
    """Return the points of a line without what hangs on it: the tail of a letter of the line over or under it.

    None where the shape is no line lying across the page, or all of it is one.
    """
    left, top, wide, high = cv2.boundingRect(contour)
    if wide < LYING * high:
        return None
    shape = np.zeros((high, wide), np.uint8)
    cv2.drawContours(shape, [contour - (left, top)], -1, 1, cv2.FILLED)
    long = shape.sum(axis=1) > 0.5 * wide
    if long.all() or not long.any():
        return None
    points = cv2.findNonZero(shape * long[:, None].astype(np.uint8))
    return np.asarray(points, np.int32) + np.array((left, top), np.int32)


def _corners(cx: float, cy: float, w: float, h: float, angle: float) -> NDArray[np.float32]:
    return np.asarray(cv2.boxPoints(((cx, cy), (w, h), angle)), np.float32)


def _mean_inside(likely: NDArray[np.float32], corners: NDArray[np.float32]) -> float:
    left, top = np.floor(corners.min(axis=0)).astype(int).clip(0)
    right, bottom = np.ceil(corners.max(axis=0)).astype(int) + 1
    window = likely[top:bottom, left:right]
    inside = np.zeros(window.shape, np.uint8)
    cv2.fillPoly(inside, [(corners - (left, top)).round().astype(np.int32)], 1)
    return float(cv2.mean(window, inside)[0])


def _clockwise(points: NDArray[np.float32]) -> NDArray[np.float32]:
    by_x = points[np.argsort(points[:, 0], kind="stable")]
    left, right = by_x[:2], by_x[2:]
    top_left, bottom_left = left[np.argsort(left[:, 1], kind="stable")]
    top_right, bottom_right = right[np.argsort(right[:, 1], kind="stable")]
    return np.array([top_left, top_right, bottom_right, bottom_left], np.float32)

"""How a sheet lies under the lens: skew, curl, fold and perspective as one map from scan to sheet."""

from __future__ import annotations

from dataclasses import dataclass

import cv2
import numpy as np
from numpy.random import Generator
from numpy.typing import NDArray
from scipy import ndimage

from .browser import SCALE, Proof
from .facts import Wear

Box = tuple[int, int, int, int]


@dataclass(frozen=True, slots=True)
class Lie:
    """Hold the map: for every pixel of the scan the place on the flat sheet it shows."""

    x: NDArray[np.float32]
    y: NDArray[np.float32]
    shade: NDArray[np.float32]  # light lost to the fold and the curl, 0 none

    def warp(self, picture: NDArray[np.float32], outside: float) -> NDArray[np.float32]:
        """Return the picture as the lens sees it."""
        return np.asarray(
            cv2.remap(picture, self.x, self.y, cv2.INTER_CUBIC, borderMode=cv2.BORDER_CONSTANT, borderValue=outside),
            np.float32,
        )

    def inside(self, shape: tuple[int, int]) -> NDArray[np.bool_]:
        """Say for every pixel whether it shows the sheet at all."""
        height, width = shape
        return np.asarray((self.x >= 0) & (self.x < width) & (self.y >= 0) & (self.y < height))


def lay(shape: tuple[int, int], wear: Wear, rng: Generator) -> Lie:
    """Lay a sheet of (height, width) pixels under the lens."""
    height, width = shape
    margin = round(0.05 * width) if wear.perspective else round(0.012 * width) + 4
    corners = np.array([[0, 0], [width, 0], [width, height], [0, height]], np.float64)
    centre = corners.mean(axis=0)
    angle = np.deg2rad(wear.skew)
    turn = np.array([[np.cos(angle), -np.sin(angle)], [np.sin(angle), np.cos(angle)]])
    seen = (corners - centre) @ turn.T + centre
    if wear.perspective:
        seen += rng.uniform(-1, 1, (4, 2)) * wear.perspective * np.array([width, height])
        seen[0, 0] += wear.perspective * width
        seen[1, 0] -= wear.perspective * width
    seen -= seen.min(axis=0) - margin
    out_w, out_h = (int(v) + margin for v in np.ceil(seen.max(axis=0)))
    back = cv2.getPerspectiveTransform(seen.astype(np.float32), corners.astype(np.float32))
    rows, cols = np.mgrid[0:out_h, 0:out_w].astype(np.float64)
    depth = back[2, 0] * cols + back[2, 1] * rows + back[2, 2]
    x = (back[0, 0] * cols + back[0, 1] * rows + back[0, 2]) / depth
    y = (back[1, 0] * cols + back[1, 1] * rows + back[1, 2]) / depth
    shade = np.zeros_like(x)
    if wear.curl:
        near = np.exp(-np.clip(x, 0, None) / (0.16 * width))
        y = y + wear.curl * near * (1 - 2 * y / height)
        x = x - abs(wear.curl) * 0.5 * near * (1 - near)
        shade += 0.3 * near**1.5
        y = y + 0.18 * wear.curl * np.sin(2 * np.pi * x / width)
    if wear.fold is not None:
        off = (y - wear.fold * height) / (0.012 * height)
        y = y + 1.6 * np.tanh(off)
        shade += 0.16 * np.exp(-(off**2)) - 0.05 * np.exp(-((off - 2.2) ** 2))
    return Lie(x.astype(np.float32), y.astype(np.float32), shade.astype(np.float32))


def fact_boxes(proof: Proof, lie: Lie) -> dict[str, Box]:
    """Return the box of every fact's ink in pixels of the scan."""
    seen = cv2.remap(
        proof.labels, lie.x * SCALE, lie.y * SCALE, cv2.INTER_NEAREST, borderMode=cv2.BORDER_CONSTANT, borderValue=0
    )
    boxes = {}
    for fact, place in zip(proof.facts, ndimage.find_objects(seen.astype(np.int32), len(proof.facts)), strict=True):
        if place is not None:
            boxes[fact] = _box(place[1].start, place[0].start, place[1].stop, place[0].stop)
    for fact, (left, top, w, h) in proof.adverts.items():
        x, y = lie.x * SCALE, lie.y * SCALE
        rows, cols = np.nonzero((x >= left) & (x < left + w) & (y >= top) & (y < top + h))
        boxes[fact] = _box(cols.min(), rows.min(), cols.max() + 1, rows.max() + 1)
    return boxes


def _box(left: int, top: int, right: int, bottom: int) -> Box:
    return int(left), int(top), int(right - left), int(bottom - top)

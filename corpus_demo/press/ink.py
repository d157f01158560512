"""What the newspaper's press does to a sheet: halftone screens, ink spread, uneven inking, the page behind."""

from __future__ import annotations

import cv2
import numpy as np
from numpy.random import Generator
from numpy.typing import NDArray

from .browser import SCALE, Proof
from .facts import Wear

Tones = NDArray[np.float32]  # 0 black to 1 white


Boxes = list[tuple[int, int, int, int]]


def halftone(tones: NDArray[np.uint8], pictures: Boxes, tints: Boxes, cell: float) -> NDArray[np.uint8]:
    """Break pictures and tints up into dots on a 45-degree screen; `cell` is the dot pitch in pixels."""
    out = tones.copy()
    for k, (x, y, w, h) in enumerate(pictures + tints):
        part = tones[max(y, 0) : y + h, max(x, 0) : x + w]
        soft = cv2.GaussianBlur(part, (0, 0), cell * 0.22).astype(np.float32)
        rows, cols = np.mgrid[0 : part.shape[0], 0 : part.shape[1]].astype(np.float32)
        u, v = (cols + rows) * np.pi * 1.4142 / cell, (cols - rows) * np.pi * 1.4142 / cell
        screen = (np.cos(u) + np.cos(v)) * 0.25 + 0.5  # 0 to 1
        dots = 1 - np.clip((soft - 8) / 238, 0, 1) > screen * 0.96 + 0.03
        solid = part < 100 if k >= len(pictures) else np.zeros(part.shape, bool)
        out[max(y, 0) : y + h, max(x, 0) : x + w] = np.where(dots | solid, 0, 255)
    return out


def noise(rng: Generator, shape: tuple[int, int], size: float) -> Tones:
    """Return smooth noise of zero mean and unit deviation with blobs of about `size` pixels."""
    step = max(1.0, size)
    small = rng.standard_normal((int(shape[0] / step) + 3, int(shape[1] / step) + 3)).astype(np.float32)
    grown = cv2.resize(small, (shape[1], shape[0]), interpolation=cv2.INTER_CUBIC)
    return np.asarray((grown - grown.mean()) / (grown.std() + 1e-6), np.float32)


def pull(proof: Proof, wear: Wear, rng: Generator, pitch: float) -> Tones:
    """Print a proof on paper and return its ink coverage (1 full ink, 0 none) at the size of the finished scan."""
    tones = halftone(proof.tones, proof.pictures, proof.tints, pitch * SCALE)
    softness = 0.7 + 1.1 * wear.spread
    wet = cv2.GaussianBlur(1 - tones.astype(np.float32) / 255, (0, 0), softness)
    shape = (wet.shape[0], wet.shape[1])
    bite = 0.07 * noise(rng, shape, 2.2) + 0.04 * noise(rng, shape, 40)
    level = 0.5 - 0.22 * wear.spread
    dry = 1 / (1 + np.exp(-(wet + bite - level) * 11))
    size = (proof.tones.shape[1] // SCALE, proof.tones.shape[0] // SCALE)
    ink = cv2.resize(dry, size, interpolation=cv2.INTER_AREA)
    lightness = 0.9 + 0.05 * noise(rng, (size[1], size[0]), 90)
    return np.asarray(np.clip(ink * lightness, 0, 1), np.float32)


def behind(verso: NDArray[np.uint8], shape: tuple[int, int], share: float, rng: Generator) -> Tones:
    """Return what shows through from the other side: a page of news, mirrored, blurred and faint."""
    if share <= 0:
        return np.zeros(shape, np.float32)
    height, width = shape
    page = verso[::SCALE, ::SCALE][:, ::-1]
    page = np.tile(page, (height // page.shape[0] + 2, width // page.shape[1] + 2))
    top, left = (int(v) for v in rng.integers(0, 500, 2))
    part = 1 - page[top : top + height, left : left + width].astype(np.float32) / 255
    return np.asarray(cv2.GaussianBlur(part, (0, 0), 1.7) * share, np.float32)

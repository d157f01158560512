"""What the newspaper's press does to a sheet: halftone screens, ink spread, uneven inking, the page behind."""

from __future__ import annotations

import cv2
import numpy as np
from numpy.random import Generator
from numpy.typing import NDArray

from .browser import SCALE, Proof
from .facts import Wear

Tones = NDArray[np.float32]  # 0 black to 1 white


def halftone(tones: NDArray[np.uint8], boxes: list[tuple[int, int, int, int]], cell: float) -> NDArray[np.uint8]:
    """Break the pictures up into dots on a 45-degree screen; `cell` is the dot pitch in pixels."""
    out = tones.copy()
    for x, y, w, h in boxes:
        x, y = max(x, 0), max(y, 0)
        part = cv2.GaussianBlur(tones[y : y + h, x : x + w], (0, 0), cell * 0.22).astype(np.float32)
        rows, cols = np.mgrid[0 : part.shape[0], 0 : part.shape[1]].astype(np.float32)
        u, v = (cols + rows) * np.pi * 1.4142 / cell, (cols - rows) * np.pi * 1.4142 / cell
        screen = (np.cos(u) + np.cos(v)) * 0.25 + 0.5  # 0 to 1
        share = 1 - np.clip((part - 8) / 238, 0, 1)
        out[y : y + h, x : x + w] = np.where(share > screen * 0.96 + 0.03, 0, 255)
    return out


def noise(rng: Generator, shape: tuple[int, int], size: float) -> Tones:
    """Return smooth noise of zero mean and unit deviation with blobs of about `size` pixels."""
    step = max(1.0, size)
    small = rng.standard_normal((int(shape[0] / step) + 3, int(shape[1] / step) + 3)).astype(np.float32)
    grown = cv2.resize(small, (shape[1], shape[0]), interpolation=cv2.INTER_CUBIC)
    return np.asarray((grown - grown.mean()) / (grown.std() + 1e-6), np.float32)


def pull(proof: Proof, wear: Wear, rng: Generator, pitch: float) -> Tones:
    """Print a proof on paper and return its ink coverage (1 full ink, 0 none) at the size of the finished scan."""
    tones = halftone(proof.tones, proof.pictures, pitch * SCALE)
    ink = 1 - tones.astype(np.float32) / 255
    softness = 0.7 + 1.1 * wear.spread
    ink = cv2.GaussianBlur(ink, (0, 0), softness)
    bite = 0.07 * noise(rng, (ink.shape[0], ink.shape[1]), 2.2) + 0.04 * noise(rng, (ink.shape[0], ink.shape[1]), 40)
    level = 0.5 - 0.22 * wear.spread
    ink = 1 / (1 + np.exp(-(ink + bite - level) * 11))
    size = (proof.tones.shape[1] // SCALE, proof.tones.shape[0] // SCALE)
    ink = cv2.resize(ink, size, interpolation=cv2.INTER_AREA)
    lightness = 0.9 + 0.05 * noise(rng, (size[1], size[0]), 90)
    return np.asarray(np.clip(ink * lightness, 0, 1), np.float32)


def behind(ink: Tones, share: float) -> Tones:
    """Return what shows through from the other side: the sheet mirrored, blurred and faint."""
    if share <= 0:
        return np.zeros_like(ink)
    other = np.roll(ink[:, ::-1], (ink.shape[0] // 3, ink.shape[1] // 7), axis=(0, 1))
    return np.asarray(cv2.GaussianBlur(other, (0, 0), 2.2) * share, np.float32)

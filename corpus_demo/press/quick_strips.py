"""Lines of the demo's scans, some of them worn: what the quick network is made on."""

from __future__ import annotations

from pathlib import Path
from typing import Final

import cv2
import numpy as np
from numpy.typing import NDArray

from adminer.intake.scans import open_scan
from adminer.layout import lay_out
from adminer.layout.clean import Gray
from adminer.layout.recipe import default_recipes, guess_recipe
from adminer.reading.detect import find_lines
from adminer.reading.recognise import cut_strip, prepare

_OF_ONE: Final = 20  # lines taken from one scan
_WIDEST: Final = 14.0  # heights: a longer line tells no more and takes longer
_LOWEST: Final = 8  # pixels: of a worn line
Plane = NDArray[np.float32]


def planes(scans: Path, seed: int, count: int) -> list[Plane]:
    """Return `count` lines of scans as the network takes them, each (1, 3, 48, W); the same seed gives the same."""
    draw = np.random.default_rng(seed)
    made: list[Plane] = []
    for path in sorted(scans.iterdir()):
        image = next(iter(open_scan(path, path.name)))
        gray = lay_out(image.pixels, default_recipes()[guess_recipe(image.pixels)[0]]).gray
        lines = find_lines(gray, 1.0).lines
        strips = [cut_strip(gray, lines[i].corners) for i in draw.permutation(len(lines))[:_OF_ONE]]
        fit = [s for s in strips if min(s.shape) >= _LOWEST and s.shape[1] <= _WIDEST * s.shape[0]]
        made += [np.repeat(prepare(_worn(strip, draw))[None, None], 3, axis=1) for strip in fit]
    return [made[i] for i in draw.permutation(len(made))[:count]]


def _worn(strip: Gray, draw: np.random.Generator) -> Gray:
    """Return one of three strips as it is, one made small, one made small, blurred and grainy."""
    turn = draw.integers(3)
    if turn == 0:
        return strip
    height = max(_LOWEST, int(strip.shape[0] * draw.uniform(0.3, 1.0)))
    size = max(_LOWEST, strip.shape[1] * height // strip.shape[0]), height
    small = np.asarray(cv2.resize(strip, size, interpolation=cv2.INTER_AREA), np.uint8)
    if turn == 1:
        return small
    blurred = cv2.GaussianBlur(small, (0, 0), draw.uniform(0.3, 1.2))
    return np.asarray(np.clip(blurred + draw.normal(0, 8, blurred.shape), 0, 255), np.uint8)

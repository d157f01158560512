"""What the learned reader makes of a window: probabilities of no fraction, ½, ¼ and ¾."""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path
from typing import Final

import numpy as np
from numpy.typing import NDArray

from adminer.reading.fraction_model.window import SIDE

WEIGHTS: Final = Path(__file__).with_name("weights.npz")
DIRECTIONS: Final = 8  # of the edges
CELL: Final = 3  # pixels: edges are counted in cells of this side
Floats = NDArray[np.float32]


def features(windows: Floats) -> Floats:
    """Return what the reader looks at in windows (N, SIDE, SIDE): the edges by direction, and the ink at half size."""
    count = len(windows)
    padded = np.pad(windows, ((0, 0), (1, 1), (1, 1)), mode="edge")
    across, down = padded[:, 1:-1, 2:] - padded[:, 1:-1, :-2], padded[:, 2:, 1:-1] - padded[:, :-2, 1:-1]
    turn = np.mod(np.arctan2(down, across), 2 * np.pi) / (2 * np.pi) * DIRECTIONS
    first, share = np.floor(turn).astype(np.int64) % DIRECTIONS, turn - np.floor(turn)
    edges = np.zeros((*windows.shape, DIRECTIONS), np.float32)
    strength = np.hypot(across, down)
    for k in range(DIRECTIONS):
        edges[..., k] = strength * ((first == k) * (1 - share) + ((first + 1) % DIRECTIONS == k) * share)
    cells = edges.reshape(count, SIDE // CELL, CELL, SIDE // CELL, CELL, DIRECTIONS).mean((2, 4))
    half = windows.reshape(count, SIDE // 2, 2, SIDE // 2, 2).mean((2, 4))
    return np.concatenate([cells.reshape(count, -1), half.reshape(count, -1)], axis=1).astype(np.float32)


@lru_cache(maxsize=1)
def _layers() -> tuple[tuple[Floats, Floats], ...]:
    held = np.load(WEIGHTS)
    return tuple((held[f"w{k}"].astype(np.float32), held[f"b{k}"].astype(np.float32)) for k in range(len(held) // 2))


def answer(windows: Floats) -> Floats:
    """Return the probabilities (N, 4) of the classes of window.py for windows (N, SIDE, SIDE)."""
    seen = features(windows)
    layers = _layers()
    for weights, bias in layers[:-1]:
        seen = np.maximum(seen @ weights + bias, 0)
    said = seen @ layers[-1][0] + layers[-1][1]
    said = np.exp(said - said.max(axis=1, keepdims=True))
    return np.asarray(said / said.sum(axis=1, keepdims=True), np.float32)

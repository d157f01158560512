"""Train the learned reader of fractions on strikes of the press; see README.md of adminer/reading/fraction_model."""

from __future__ import annotations

import warnings
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path

import numpy as np
from numpy.typing import NDArray
from sklearn.exceptions import ConvergenceWarning
from sklearn.neural_network import MLPClassifier

from adminer.reading.fraction_model.answer import features
from adminer.reading.fraction_model.window import CLASSES, SIDE, window_of

from .strikes import strikes

HIDDEN, ROUNDS, BATCH, RATE, SLOWER = 96, 14, 256, 1.5e-3, 0.85
CHUNK = 8_000  # strikes made by one process at a time, with a seed of their own
Windows = NDArray[np.float32]


def struck(seed: int, count: int, families: tuple[str, ...] | None = None) -> tuple[Windows, NDArray[np.int64]]:
    """Return windows (count, SIDE, SIDE) and the number of the class of each."""
    windows, classes = np.zeros((count, SIDE, SIDE), np.float32), np.zeros(count, np.int64)
    for i, one in enumerate(strikes(seed, count, families)):
        windows[i] = window_of(one.picture, one.left, one.top, one.foot)
        classes[i] = CLASSES.index(one.label)
    return windows, classes


def train(seed: int, count: int, out: Path, workers: int = 2) -> None:
    """Train on `count` strikes of all faces and write the weights; the same seed gives the same."""
    chunks = -(-count // CHUNK)
    with ProcessPoolExecutor(workers) as pool:
        made = list(pool.map(struck, [seed * 1_000 + k for k in range(chunks)], [CHUNK] * chunks))
    seen = np.concatenate([features(windows) for windows, _ in made])
    meant = np.concatenate([classes for _, classes in made])
    net = MLPClassifier((HIDDEN,), batch_size=BATCH, max_iter=1, warm_start=True, alpha=1e-4, random_state=seed)
    with warnings.catch_warnings():
        warnings.simplefilter("ignore", ConvergenceWarning)  # one round at a time, so that the rate can fall
        for turn in range(ROUNDS):
            net.set_params(learning_rate_init=RATE * SLOWER**turn).fit(seen, meant)
    layers = {f"w{k}": weights.astype(np.float16) for k, weights in enumerate(net.coefs_)}
    layers |= {f"b{k}": bias.astype(np.float16) for k, bias in enumerate(net.intercepts_)}
    np.savez_compressed(out, **layers)

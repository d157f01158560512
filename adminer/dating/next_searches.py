"""Which issue to look at next: the searches that would narrow a run's start and end most, in order.

A search of a week tells whether the run was on then, with the chance q of seeing it when it was. What it tells is the
mutual information of its outcome with the run's end (or start): H(outcome) - E[H(outcome | end)], in bits (Lindley
1956, Annals of Mathematical Statistics 27:986). Picks are greedy: each is the best given the ones before it.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Final, Literal

import numpy as np
from numpy.typing import NDArray

from adminer.dating.bayes_run import BayesRun

Floats = NDArray[np.float64]
Side = Literal["start", "end"]
_DETECTION_PRIOR: Final = 0.8  # of a search still to be made, mixed with what the log shows
_MOST_JOINT: Final = 6
_LEAST_BITS: Final = 0.005


@dataclass(frozen=True, slots=True)
class NextSearch:
    """Hold one issue worth looking at: its week, whether it bears on start or end, its chance and its bits."""

    week: int
    side: Side
    chance_on: float
    bits: float


def next_searches(
    run: BayesRun,
    seen: Sequence[int],
    searched: Mapping[int, int],
    count: int = 8,
    *,
    sides: Sequence[Side] = ("start", "end"),
) -> tuple[NextSearch, ...]:
    """Return the weeks to search, best first; weeks searched already and sides not asked for are left out."""
    detection = (_DETECTION_PRIOR + run.detection) / 2 if searched else _DETECTION_PRIOR
    first, last = min(seen) - run.first_week, max(seen) - run.first_week
    picks: list[NextSearch] = []
    for side in sides:
        weights = _share(run.start[: first + 1] if side == "start" else run.end[last:][::-1])
        # position 0 lies farthest from the sightings; the run is on at positions after its start (or end, mirrored)
        offset = 0 if side == "start" else len(run.end) - 1
        sign = 1 if side == "start" else -1
        taken = {p for p in range(len(weights)) if run.first_week + offset + sign * p in searched}
        for position, bits, chance in _greedy(weights, taken, detection, count):
            picks.append(NextSearch(run.first_week + offset + sign * position, side, chance, bits))
    picks.sort(key=lambda p: (-p.bits, p.week))
    return tuple(picks[:count])


def _greedy(weights: Floats, taken: set[int], detection: float, count: int) -> list[tuple[int, float, float]]:
    on = np.cumsum(weights)  # chance that the run is on at each position
    chosen: list[int] = []
    found: list[tuple[int, float, float]] = []
    told = 0.0
    free = [p for p in range(len(weights) - 1) if p not in taken and 0.01 < on[p] < 0.99]
    while free and len(chosen) < min(count, _MOST_JOINT):
        gains = {p: information(weights, [*chosen, p], detection) - told for p in free}
        best = max(free, key=lambda p: (round(gains[p], 9), p))
        if gains[best] < _LEAST_BITS:
            break
        chosen.append(best)
        told += gains[best]
        free.remove(best)
        found.append((best, gains[best], float(on[best])))
    return found


def information(weights: Floats, positions: Sequence[int], detection: float) -> float:
    """Return the bits that searches at these positions tell about where the run begins.

    `weights` is the chance of the run beginning at each position; from there on it is on. Exact, over all outcomes.
    """
    ordered = sorted(positions)
    edges = [0, *(p + 1 for p in ordered), len(weights)]
    # the run begins between two of the searched positions: then those after it are on
    spans = np.array([weights[a:b].sum() for a, b in pairwise(edges)])
    count = len(ordered)
    outcomes = (np.arange(2**count)[:, None] >> np.arange(count)) & 1
    is_on = np.arange(count)[None, :] >= np.arange(count + 1)[:, None]
    chance = np.where(
        outcomes[:, None, :] == 1,
        np.where(is_on, detection, 0.0)[None, :, :],
        np.where(is_on, 1 - detection, 1.0)[None, :, :],
    ).prod(axis=2)
    return _entropy(chance @ spans) - float(sum(w * _entropy(chance[:, i]) for i, w in enumerate(spans) if w > 0))


def _entropy(chances: Floats) -> float:
    positive = chances[chances > 0]
    return float(-(positive * np.log2(positive)).sum())


def _share(weights: Floats) -> Floats:
    total = float(weights.sum())
    return np.asarray(weights / total if total > 0 else weights)

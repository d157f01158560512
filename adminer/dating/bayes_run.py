"""A Bayesian run from sightings and searches: when it began and ended, real gaps, one run or two.

Each week is in one of the states before, on, (pause, on again,) after. An issue looked through in a week that is "on"
shows the advert with chance q; a week nobody searched has left an advert in the file with chance r; outside the run a
sighting is an error. Weekly chances of ending are unknown too. q, r and the ending chances are summed over grids with
even priors, the states by the forward-backward recursion (Rabiner 1989, Proceedings of the IEEE 77:257): no sampling.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from itertools import product
from typing import Final

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]

_PAD_WEEKS: Final = 104  # how far beyond what was seen or searched a run is thought to reach
_SHORT_PAD: Final = 52
_DETECTION: Final = np.array([0.2, 0.4, 0.6, 0.8, 0.95])
_CHANCE_FIND: Final = np.array([0.02, 0.05, 0.1, 0.2, 0.3, 0.45, 0.6, 0.75, 0.9])
_ENDING: Final = 1 / np.array([4.0, 8.0, 16.0, 32.0, 64.0, 128.0, 256.0])
_RETURNING: Final = 1 / np.array([10.0, 52.0])
_FALSE: Final = 1e-3  # that a sighting of full reliability lies outside the run


@dataclass(frozen=True, slots=True)
class WeekRecord:
    """Hold what is known of each week by number: seen with which reliability, issues searched and found in."""

    seen: Mapping[int, float]
    searched: Mapping[int, int] = field(default_factory=dict)  # issues looked through
    found: Mapping[int, int] = field(default_factory=dict)  # of these, issues that showed it


@dataclass(frozen=True, slots=True)
class BayesRun:
    """Hold the posterior of one run on a lattice of weeks; arrays are indexed by week minus `first_week`."""

    first_week: int
    start: Floats  # chance that the run began in that week
    end: Floats  # chance that it ended with that week
    on: Floats  # chance that it was on in that week
    detection: float  # mean chance of finding it in an issue of a week when it was on
    log_evidence: float

    def start_bound(self, confidence: float = 0.95) -> int:
        """Return the week before which the run began with chance 1 - confidence only."""
        return self.first_week + int(np.searchsorted(np.cumsum(self.start), 1 - confidence))

    def end_bound(self, confidence: float = 0.95) -> int:
        """Return the week after which the run ended with chance 1 - confidence only."""
        return self.first_week + int(np.searchsorted(np.cumsum(self.end), confidence))


@dataclass(frozen=True, slots=True)
class Comparison:
    """Hold the comparison of one run with two: log10 of the Bayes factor for two, and the likeliest pause (weeks)."""

    log10_for_two: float
    chance_of_two: float
    pause: tuple[int, int] | None


def fit_run(record: WeekRecord) -> BayesRun:
    """Return the posterior of a single run; ValueError without any sighting."""
    return _fit(record, pause=False)[0]


def compare_runs(record: WeekRecord, one: BayesRun) -> Comparison:
    """Compare one run, as `fit_run` has it, with two and a pause of at least a week, both equally likely beforehand."""
    two, paused = _fit(record, pause=True)
    difference = two.log_evidence - one.log_evidence
    chance = float(1 / (1 + np.exp(-np.clip(difference, -700, 700))))
    likely = np.flatnonzero(paused > 0.5)
    pause = (one.first_week + int(likely[0]), one.first_week + int(likely[-1])) if len(likely) else None
    return Comparison(difference / float(np.log(10)), chance, pause)


def _fit(record: WeekRecord, *, pause: bool) -> tuple[BayesRun, Floats]:
    if not record.seen:
        raise ValueError("a run needs a sighting")
    weeks = sorted({*record.seen, *record.searched})
    seen = sorted(record.seen)
    pad = _PAD_WEEKS if len(seen) < 30 else max(_SHORT_PAD, (seen[-1] - seen[0]) // 4)
    # searches far from any sighting say nothing more than near ones do
    first = max(min(weeks), seen[0] - pad) - 26
    last = min(max(weeks), seen[-1] + pad) + 26
    first, last = min(first, seen[0] - pad), max(last, seen[-1] + pad)
    count = last - first + 1
    grid = _grid(record, pause)
    on, off = _emissions(record, first, count, grid)
    states = 5 if pause else 3
    is_on = np.zeros(states, dtype=bool)
    is_on[[1, 3] if pause else [1]] = True
    emission = np.where(is_on[None, None, :], on[:, :, None], off[:, :, None])
    return _forward_backward(emission, _transitions(grid, count, states), grid, first, is_on)


@dataclass(frozen=True, slots=True)
class _Grid:
    detection: Floats
    chance: Floats
    ending: Floats
    returning: Floats


def _grid(record: WeekRecord, pause: bool) -> _Grid:
    detection = _DETECTION if any(record.searched.values()) else np.array([0.5])
    points = np.array(list(product(detection, _CHANCE_FIND, _ENDING, _RETURNING if pause else [0.0])))
    return _Grid(points[:, 0], points[:, 1], points[:, 2], points[:, 3])


def _emissions(record: WeekRecord, first: int, count: int, grid: _Grid) -> tuple[Floats, Floats]:
    size = len(grid.chance)
    on = np.repeat((1 - grid.chance)[None, :], count, axis=0)
    off = np.ones((count, size))
    for week, issues in record.searched.items():
        if first <= week < first + count:
            found = min(record.found.get(week, 0), issues)
            on[week - first] = grid.detection**found * (1 - grid.detection) ** (issues - found)
            off[week - first] = _FALSE**found
    for week, reliability in record.seen.items():
        if not record.found.get(week, 0):
            vain = record.searched.get(week, 0)
            on[week - first] = grid.chance * (1 - grid.detection) ** vain
            off[week - first] = grid.chance * max(1 - reliability, _FALSE)
    return on, off


def _transitions(grid: _Grid, count: int, states: int) -> Floats:
    steps = np.zeros((len(grid.ending), states, states))
    begin = 1.0 / count
    steps[:, 0, 0], steps[:, 0, 1] = 1 - begin, begin
    if states == 3:
        steps[:, 1, 1], steps[:, 1, 2], steps[:, 2, 2] = 1 - grid.ending, grid.ending, 1.0
        return steps
    steps[:, 1, 1], steps[:, 1, 2] = 1 - grid.ending, grid.ending
    steps[:, 2, 2], steps[:, 2, 3] = 1 - grid.returning, grid.returning
    steps[:, 3, 3], steps[:, 3, 4], steps[:, 4, 4] = 1 - grid.ending, grid.ending, 1.0
    return steps


def _forward_backward(
    emission: Floats, steps: Floats, grid: _Grid, first: int, is_on: NDArray[np.bool_]
) -> tuple[BayesRun, Floats]:
    count, size, states = emission.shape
    forward = np.zeros((count, size, states))
    scale = np.zeros((count, size))
    current = np.zeros((size, states))
    current[:, 0] = 1.0
    for t in range(count):
        if t:
            current = np.einsum("gs,gsu->gu", current, steps)
        current = current * emission[t]
        scale[t] = current.sum(axis=1)
        current /= scale[t][:, None]
        forward[t] = current
    backward = np.ones((count, size, states))
    for t in range(count - 2, -1, -1):
        backward[t] = np.einsum("gsu,gu->gs", steps, emission[t + 1] * backward[t + 1]) / scale[t + 1][:, None]
    evidence = np.log(scale).sum(axis=0)
    highest = float(evidence.max())
    weights = np.exp(evidence - highest)
    log_evidence = highest + float(np.log(weights.mean()))
    weights /= weights.sum()
    inside = np.einsum("tgs,g->ts", forward * backward, weights)

    def moves(source: int, target: int) -> Floats:
        # chance of leaving one state for another between a week and the next
        arrives = emission[1:, :, target] * backward[1:, :, target] / scale[1:]
        return np.asarray((forward[:-1, :, source] * steps[:, source, target] * arrives) @ weights)

    began, ended = moves(0, 1), moves(states - 2, states - 1)
    start = np.concatenate(([0.0], began))
    end = np.concatenate((ended, [max(0.0, 1 - ended.sum())]))
    run = BayesRun(
        first,
        start / start.sum(),
        end / end.sum(),
        inside[:, is_on].sum(axis=1),
        float(weights @ grid.detection),
        log_evidence,
    )
    return run, inside[:, 2] if states == 5 else np.zeros(count)

"""A Bayesian run from sightings and searches: when it began and ended, real gaps, one run or two.

Each week is in one of the states before, on, (pause, on again,) after. An issue looked through in a week that is "on"
shows the advert with chance q; a week nobody searched has left an advert in the file with chance r; outside the run a
sighting is an error. Weekly chances of ending are unknown too. q, r and the ending chances are summed over grids with
even priors, the states by the forward-backward recursion (Rabiner 1989, Proceedings of the IEEE 77:257): no sampling.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import lru_cache
from itertools import product
from typing import Final

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]

_PAD_WEEKS: Final = 104  # how far beyond what was seen or searched a run is thought to reach
_SHORT_PAD: Final = 52
_GAPS: Final = 20  # usual gaps between sightings
_DETECTION: Final = np.array([0.2, 0.4, 0.6, 0.8, 0.95])
_CHANCE_FIND: Final = np.array([0.02, 0.05, 0.1, 0.2, 0.3, 0.45, 0.6, 0.75, 0.9])
_ENDING: Final = 1 / np.array([4.0, 8.0, 16.0, 32.0, 64.0, 128.0, 256.0])
_RETURNING: Final = 1 / np.array([10.0, 52.0])
_SILENT: Final = 1e-9  # share of the posterior, over all points together, that is left out of the states of the weeks
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
    weeks = (tuple(sorted(each.items())) for each in (record.seen, record.searched, record.found))
    return _fit_once(*weeks)


@lru_cache(maxsize=4)
def _fit_once(
    seen: tuple[tuple[int, float], ...], searched: tuple[tuple[int, int], ...], found: tuple[tuple[int, int], ...]
) -> BayesRun:
    """Fit a record once for all that ask for it: the bounds of a run and its study do, one after the other."""
    return _fit(WeekRecord(dict(seen), dict(searched), dict(found)), pause=False)[0]


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
    span = seen[-1] - seen[0]
    # a run seen every few weeks has hardly gone on unseen for twenty times as long
    pad = _PAD_WEEKS if len(seen) < 30 else max(_SHORT_PAD, min(span // 4, _GAPS * span // len(seen)))
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
    return _forward_backward(on, off, _transitions(grid, count, states), grid, first, is_on)


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


def _transitions(grid: _Grid, count: int, states: int) -> tuple[Floats, Floats]:
    """Return the chances to stay in a state and to go on to the next one, by state and point; there is no way back."""
    begin = np.full(len(grid.ending), 1.0 / count)
    leave = np.stack([begin, grid.ending] if states == 3 else [begin, grid.ending, grid.returning, grid.ending])
    stay = 1 - np.concatenate([leave, np.zeros((1, len(begin)))])
    return stay, leave


def _forward_backward(
    on: Floats, off: Floats, moves: tuple[Floats, Floats], grid: _Grid, first: int, is_on: NDArray[np.bool_]
) -> tuple[BayesRun, Floats]:
    (count, size), states = on.shape, len(is_on)
    stay, leave = moves
    shown = is_on[:, None]
    forward = np.empty((count, states, size))
    scale = np.empty((count, size))
    current = np.zeros((states, size))
    current[0] = 1.0
    for t in range(count):
        if t:
            passed = leave * current[:-1]
            current = stay * current
            current[1:] += passed
        current = current * np.where(shown, on[t], off[t])
        scale[t] = current.sum(axis=0)
        current /= scale[t]
        forward[t] = current
    evidence = np.log(scale).sum(axis=0)
    highest = float(evidence.max())
    weights = np.exp(evidence - highest)
    log_evidence = highest + float(np.log(weights.mean()))
    weights /= weights.sum()
    # the way back is gone only for points that say anything: a long record leaves few
    telling = weights > _SILENT / size
    weights, forward, scale = weights[telling], forward[:, :, telling], scale[:, telling]
    on, off, stay, leave = (array[:, telling] for array in (on, off, stay, leave))
    inside = np.empty((count, states))
    moved = np.empty((max(0, count - 1), states - 1))  # chance of leaving a state between a week and the next
    backward = np.ones((states, len(weights)))
    # on the way back only what is summed is kept: the whole would be several times the cache
    for t in range(count - 1, -1, -1):
        inside[t] = (forward[t] * backward) @ weights
        if t:
            arrives = np.where(shown, on[t], off[t]) * backward / scale[t]
            goes_on = leave * arrives[1:]
            moved[t - 1] = (forward[t - 1, :-1] * goes_on) @ weights
            backward = stay * arrives
            backward[:-1] += goes_on
    began, ended = moved[:, 0], moved[:, -1]
    start = np.concatenate(([0.0], began))
    end = np.concatenate((ended, [max(0.0, 1 - ended.sum())]))
    run = BayesRun(
        first,
        start / start.sum(),
        end / end.sum(),
        inside[:, is_on].sum(axis=1),
        float(weights @ grid.detection[telling]),
        log_evidence,
    )
    return run, inside[:, 2] if states == 5 else np.zeros(count)

"""Simulate promotions with a known start and end and see which method keeps its promise.

A run of W weeks; each week of it is found in the file with chance p; with fewer than four weeks seen it is drawn again.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from statistics import median
from typing import Final

import numpy as np

from adminer.dating.bayes_run import WeekRecord, fit_run
from adminer.dating.estimators import (
    TooFewSightingsError,
    mcinerny_upper,
    optimal_linear,
    robson_whitlock,
    solow_1993_upper,
    strauss_sadler,
)
from adminer.dating.lattice import weeks_beyond

SETTINGS: Final = ((8, 0.4), (13, 0.2), (13, 0.4), (13, 0.7), (20, 0.2), (20, 0.4), (40, 0.2), (40, 0.7))
_LEAST_SEEN: Final = 4
_SEARCHED_SHARE, _SEARCH_FINDS = 0.6, 0.8
UpperWeeks = Callable[[list[int]], float]


@dataclass(frozen=True, slots=True)
class SimulationRow:
    """Hold how one method did: the share of runs whose true end its bound held, and its median extension in weeks."""

    method: str
    weeks: int
    found: float
    runs: int
    coverage: float
    median_weeks: float


def _lattice(weeks: list[int]) -> float:
    beyond = weeks_beyond(weeks)
    return float("inf") if beyond is None else float(beyond)


def _of_upper(upper: Callable[[list[float]], float]) -> UpperWeeks:
    # the methods take continuous time and bound the last moment; half a week turns a week into a moment
    return lambda weeks: upper([float(w) for w in weeks]) - max(weeks)


METHODS: Final[dict[str, UpperWeeks]] = {
    "lattice": _lattice,
    "strauss-sadler": _of_upper(lambda t: strauss_sadler(t).upper or 0.0),
    "solow": _of_upper(solow_1993_upper),
    "robson-whitlock": _of_upper(lambda t: robson_whitlock(t).upper or 0.0),
    "mcinerny": _of_upper(mcinerny_upper),
    "optimal-linear": _of_upper(lambda t: optimal_linear(t, alpha=0.10).upper or 0.0),
}


def simulate_ends(runs: int, seed: int = 1) -> Iterator[SimulationRow]:
    """Yield one row for each method and setting: the one-sided 95 % bound on the end, start unknown."""
    for weeks, found in SETTINGS:
        draws = [_draw(np.random.default_rng([seed, weeks, round(found * 100), i]), weeks, found) for i in range(runs)]
        for name, method in METHODS.items():
            extensions, held = [], 0
            for seen in draws:
                try:
                    beyond = method(seen)
                except TooFewSightingsError:
                    beyond = float("inf")
                extensions.append(beyond)
                held += seen[-1] + beyond >= weeks - 1 - 1e-9
            yield SimulationRow(name, weeks, found, runs, held / runs, median(extensions))


def simulate_searched(runs: int, seed: int = 1) -> Iterator[SimulationRow]:
    """Yield rows for the Bayesian run: 95 % bound on the end, with a log of searches inside and after the run."""
    for weeks, found in ((13, 0.2), (13, 0.4), (20, 0.4)):
        held = 0
        extensions: list[float] = []
        for i in range(runs):
            chance = np.random.default_rng([seed, weeks, round(found * 100), i])
            seen = _draw(chance, weeks, found)
            searched = {int(w): 1 for w in range(-15, weeks + 15) if chance.random() < _SEARCHED_SHARE}
            shown = {w: 1 for w in searched if 0 <= w < weeks and chance.random() < _SEARCH_FINDS}
            by_chance = {w: 1.0 for w in seen if w not in searched}
            if not shown and not by_chance:
                held, extensions = held + 1, [*extensions, float("inf")]
                continue
            run = fit_run(WeekRecord({**by_chance, **dict.fromkeys(shown, 1.0)}, searched, shown))
            last = max([*by_chance, *shown])
            bound = run.end_bound()
            held += bound >= weeks - 1
            extensions.append(float(bound - last))
        yield SimulationRow("searched weeks", weeks, found, runs, held / runs, median(extensions))


def _draw(chance: np.random.Generator, weeks: int, found: float) -> list[int]:
    while True:
        seen = np.flatnonzero(chance.random(weeks) < found)
        if len(seen) >= _LEAST_SEEN:
            return [int(w) for w in seen]

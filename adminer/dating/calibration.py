"""How well the sets of months keep their promise, on adverts whose true day is known but was hidden."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date
from statistics import median
from typing import Final

import numpy as np

from adminer.dating.estimate import DateEstimate
from adminer.dating.months import MONTHS, index_of, log_prior

_WEIGHTS: Final = (0.0, 0.25, 0.5, 0.75, 1.0, 1.25, 1.5, 2.0, 3.0)


@dataclass(frozen=True, slots=True)
class Calibration:
    """Hold the shares of true months that lay in the 50 and 90 % sets, and the sets' widths in months."""

    adverts: int
    held_50: float
    held_90: float
    stated_50: float  # mean mass of the sets: whole months hold more than the share asked for
    stated_90: float
    median_months_50: float
    median_months_90: float
    median_error_months: float  # between the true month and the posterior's median
    missed: tuple[str, ...]  # advert ids outside their 90 % set


def calibrate(estimates: Iterable[DateEstimate], truth: Mapping[str, date]) -> Calibration:
    """Return the calibration of estimates against true days by advert id; ValueError without any such advert."""
    judged = [(found, index_of(truth[found.advert_id])) for found in estimates if found.advert_id in truth]
    if not judged:
        raise ValueError("no advert has a true day to be judged by")
    count = len(judged)
    return Calibration(
        count,
        sum(found.half.holds(month) for found, month in judged) / count,
        sum(found.ninety.holds(month) for found, month in judged) / count,
        sum(found.half.mass for found, _ in judged) / count,
        sum(found.ninety.mass for found, _ in judged) / count,
        median(found.half.months for found, _ in judged),
        median(found.ninety.months for found, _ in judged),
        median(abs(index_of(found.median) - month) for found, month in judged),
        tuple(found.advert_id for found, month in judged if not found.ninety.holds(month)),
    )


@dataclass(frozen=True, slots=True)
class KindCalibration:
    """Hold how well one kind of evidence kept its promise.

    `best_weight` is the power of its likelihood that would have scored best: below 1 it says too much, above 1 too
    little. `gain` is what it adds to the logarithm of the chance of the true month, in bits an advert.
    """

    kind: str
    adverts: int
    held_90: float
    stated_90: float
    gain: float
    best_weight: float


def calibrate_kinds(
    estimates: Iterable[DateEstimate], truth: Mapping[str, date], years: tuple[int, int] | None = None
) -> tuple[KindCalibration, ...]:
    """Return the calibration of every kind of evidence, the commonest first; `years` are those of the prior used."""
    prior = log_prior(years)
    scores: dict[str, list[tuple[list[float], bool, float]]] = {}
    for found in estimates:
        month = index_of(truth[found.advert_id]) if found.advert_id in truth else -1
        if not 0 <= month < MONTHS:
            continue
        used = [weighed.clue for weighed in found.evidence if not weighed.struck]
        total = np.asarray(sum((clue.log_likelihood for clue in used), prior))
        for kind in {clue.kind for clue in used}:
            own = np.asarray(sum(clue.log_likelihood for clue in used if clue.kind == kind))
            chances = [total + (weight - 1) * own for weight in _WEIGHTS]
            logs = [float(c[month] - np.logaddexp.reduce(c)) for c in chances]
            scores.setdefault(kind, []).append((logs, found.ninety.holds(month), found.ninety.mass))
    return tuple(
        _of_kind(kind, rows) for kind, rows in sorted(scores.items(), key=lambda item: (-len(item[1]), item[0]))
    )


def _of_kind(kind: str, rows: list[tuple[list[float], bool, float]]) -> KindCalibration:
    score = np.array([logs for logs, _, _ in rows]).mean(axis=0)
    held, mass = (float(np.mean([row[at] for row in rows])) for at in (1, 2))
    gain = float(score[_WEIGHTS.index(1.0)] - score[0]) / float(np.log(2))
    return KindCalibration(kind, len(rows), held, mass, gain, _WEIGHTS[int(score.argmax())])

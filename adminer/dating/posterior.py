"""Combine the clues of an advert in log space and say which months they leave.

log P(month) = log prior + sum of log likelihoods, the kinds of evidence taken as independent given the month.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

import numpy as np
from numpy.typing import NDArray

from adminer.dating.edtf import one_of_months
from adminer.dating.evidence.base import Clue
from adminer.dating.months import MONTHS, first_day, last_day

Floats = NDArray[np.float64]
_GAP = 3  # months left out inside a set are taken in when so few, as no historian writes such holes
_PARTS = 4
_SHORT = 0.02


@dataclass(frozen=True, slots=True)
class Weighed:
    """Hold a clue and how far it moved the answer, in bits.

    The mean of two Kullback-Leibler divergences: of the answer from the answer without the clue, and of what the clue
    alone makes of the prior from the prior. So clues that say the same share the honour instead of losing it.
    """

    clue: Clue
    moved_bits: float
    struck: bool = False


@dataclass(frozen=True, slots=True)
class MonthSet:
    """Hold a set of months that holds at least a share of the posterior: its spans (numbers, both ends in) and mass."""

    spans: tuple[tuple[int, int], ...]
    mass: float

    @property
    def edtf(self) -> str:
        """Return the set as EDTF, one of these months."""
        return one_of_months((first_day(a), last_day(b)) for a, b in self.spans)

    @property
    def bounds(self) -> tuple[date, date]:
        """Return the first and last day of the set."""
        return first_day(self.spans[0][0]), last_day(self.spans[-1][1])

    @property
    def months(self) -> int:
        """Return how many months the set has."""
        return sum(b - a + 1 for a, b in self.spans)

    def holds(self, month: int) -> bool:
        """Say whether a month (by number) lies in the set."""
        return any(a <= month <= b for a, b in self.spans)


def combine(log_prior: Floats, clues: Sequence[Clue]) -> Floats:
    """Return the posterior by month, summing to one."""
    return _normal(sum((c.log_likelihood for c in clues), log_prior))


def weigh(log_prior: Floats, clues: Sequence[Clue], struck: Sequence[Clue] = ()) -> tuple[Weighed, ...]:
    """Return the clues ranked by how much each moved the answer, struck ones last with what they would have moved."""
    total = np.asarray(sum((c.log_likelihood for c in clues), log_prior))
    posterior = _normal(total)
    log_posterior = np.log(np.maximum(posterior, 1e-300))
    used = [
        Weighed(c, (_bits(posterior, log_posterior, total - c.log_likelihood) + _alone(log_prior, c)) / 2)
        for c in clues
    ]
    out = []
    for clue in struck:
        with_it = _normal(total + clue.log_likelihood)
        moved = _bits(with_it, np.log(np.maximum(with_it, 1e-300)), total)
        out.append(Weighed(clue, (moved + _alone(log_prior, clue)) / 2, struck=True))
    order = sorted(range(len(used)), key=lambda i: (-round(used[i].moved_bits, 6), i))
    return (*(used[i] for i in order), *out)


def month_set(posterior: Floats, share: float) -> MonthSet:
    """Return the smallest set of few spans of months whose mass comes near a share of the posterior.

    The likeliest months are taken, and the small holes between them filled. Months come whole, so a set may fall two
    points short of its share, or further where one month more would overshoot by more; `mass` says what it holds.
    """
    # of equal months those nearest the middle come first, so that a set without evidence leans to no side
    apart = np.abs(np.arange(MONTHS) - median_month(posterior))
    order = np.lexsort((apart, -np.round(posterior, 12)))
    below = np.concatenate(([0.0], np.cumsum(posterior)))
    low, high = 0, int(np.searchsorted(np.cumsum(posterior[order]), share - _SHORT)) + 1
    best = _spans(order[:high])
    while high - low > 1:
        middle = (low + high) // 2
        spans = _spans(order[:middle])
        if _mass(below, spans) >= share - _SHORT:
            high, best = middle, spans
        else:
            low = middle
    if high > 1:
        less = _spans(order[: high - 1])
        if share - _mass(below, less) < _mass(below, best) - share:
            best = less
    return MonthSet(tuple(best), _mass(below, best))


def _spans(months: NDArray[np.int_]) -> list[tuple[int, int]]:
    chosen = np.sort(months)
    breaks = np.flatnonzero(np.diff(chosen) > _GAP + 1)
    firsts = chosen[np.concatenate(([0], breaks + 1))]
    lasts = chosen[np.concatenate((breaks, [len(chosen) - 1]))]
    if len(firsts) > _PARTS:
        kept = np.sort(np.argsort(lasts[:-1] - firsts[1:], kind="stable")[: _PARTS - 1])
        firsts, lasts = firsts[np.concatenate(([0], kept + 1))], lasts[np.concatenate((kept, [len(lasts) - 1]))]
    return [(int(a), int(b)) for a, b in zip(firsts, lasts, strict=True)]


def _mass(below: Floats, spans: Sequence[tuple[int, int]]) -> float:
    return float(sum(below[last + 1] - below[first] for first, last in spans))


def median_month(posterior: Floats) -> int:
    """Return the month by which half of the posterior lies."""
    return int(np.searchsorted(np.cumsum(posterior), 0.5))


def _normal(log_weights: Floats | float) -> Floats:
    weights = np.asarray(log_weights, dtype=np.float64)
    chance = np.exp(weights - weights.max())
    return np.asarray(chance / chance.sum())


def _alone(log_prior: Floats, clue: Clue) -> float:
    with_it = _normal(log_prior + clue.log_likelihood)
    return _bits(with_it, np.log(np.maximum(with_it, 1e-300)), log_prior)


def _bits(posterior: Floats, log_posterior: Floats, log_without: Floats) -> float:
    shifted = log_without - log_without.max()
    without = shifted - np.log(np.exp(shifted).sum())
    # rounding can leave a hair below zero
    return max(0.0, float((posterior * (log_posterior - without)).sum() / np.log(2)))

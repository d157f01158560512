"""Does a confidence of 0.9 mean nine in ten: the reliability curve and the expected calibration error."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

_BINS: Final = 10


@dataclass(frozen=True, slots=True)
class Bin:
    """Hold the facts whose confidence lies in [low, high): how many, their mean confidence, the share that is right."""

    low: float
    high: float
    facts: int
    confidence: float
    right: float


def reliability_curve(judged: list[tuple[float, bool]]) -> tuple[Bin, ...]:
    """Sort (confidence, right) pairs into ten bins of equal width; empty bins are left out."""
    bins = []
    for number in range(_BINS):
        low, high = number / _BINS, (number + 1) / _BINS
        last = number == _BINS - 1
        inside = [(c, ok) for c, ok in judged if low <= c and (c < high or last)]
        if inside:
            share = sum(ok for _, ok in inside) / len(inside)
            bins.append(Bin(low, high, len(inside), sum(c for c, _ in inside) / len(inside), share))
    return tuple(bins)


def calibration_error(curve: tuple[Bin, ...]) -> float | None:
    """Return the expected calibration error: the mean gap of confidence and share right, weighted by facts.

    M. P. Naeini, G. F. Cooper, M. Hauskrecht, "Obtaining well calibrated probabilities using Bayesian binning",
    AAAI 2015, equation for ECE. None without facts.
    """
    facts = sum(one.facts for one in curve)
    return sum(one.facts * abs(one.right - one.confidence) for one in curve) / facts if facts else None

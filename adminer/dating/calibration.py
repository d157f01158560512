"""How well the sets of months keep their promise, on adverts whose true day is known but was hidden."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date
from statistics import median

from adminer.dating.estimate import DateEstimate
from adminer.dating.months import index_of


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

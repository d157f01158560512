"""Published estimators of when a run truly ended, given the times it was seen; beside the default, with assumptions.

Times are numbers (years, weeks) in any order; negate them to ask for the start. `ASSUMPTIONS` says to the
user what each assumes. What a formula cannot take raises `TooFewSightingsError`.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil, comb, exp, floor, inf, lgamma, log
from typing import Final

import numpy as np
from numpy.typing import NDArray
from scipy.optimize import brentq

from adminer.errors import UsageError

ASSUMPTIONS: Final = {
    "lattice": "every week of the run is equally likely to have left an advert in the file",
    "strauss-sadler": "sightings are spread evenly over the run, in continuous time",
    "solow": "sightings come at one steady rate until the end; the first fixes the beginning",
    "robson-whitlock": "only the last two sightings count; holds for any spread, so it is very wide",
    "mcinerny": "sightings come at the rate seen so far; keeps its promise badly when few weeks were found",
    "optimal-linear": "the latest sightings behave like the extremes of a sample; made for long, thinning records",
}


class TooFewSightingsError(UsageError):
    """The sightings are too few or too alike for a formula."""


@dataclass(frozen=True, slots=True)
class EndEstimate:
    """Hold a point estimate and limits of the end of a run, in the unit of the times; None where not defined."""

    point: float | None
    lower: float | None
    upper: float | None


def strauss_sadler(times: Sequence[float], alpha: float = 0.05) -> EndEstimate:
    """Return end and upper limit for sightings spread evenly: t_n + R (alpha^(-1/(H-1)) - 1).

    Strauss & Sadler 1989, Mathematical Geology 21:411, eq. 20; H counts the distinct times, R is their range.
    """
    t = _distinct(times, 2)
    reach, h = t[-1] - t[0], len(t)
    return EndEstimate(t[-1] + reach / (h - 1), t[-1], t[-1] + reach * (alpha ** (-1 / (h - 1)) - 1))


def strauss_sadler_both_ends(times: Sequence[float], alpha: float = 0.05) -> tuple[float, float]:
    """Return limits of start and end that hold together: C = 1 - 2(1+a)^-(H-1) + (1+2a)^-(H-1), extended by aR.

    Strauss & Sadler 1989, eq. 19.
    """
    t = _distinct(times, 2)
    h = len(t)
    a = brentq(lambda x: 1 - 2 * (1 + x) ** -(h - 1) + (1 + 2 * x) ** -(h - 1) - (1 - alpha), 1e-12, 1e9)
    reach = t[-1] - t[0]
    return t[0] - a * reach, t[-1] + a * reach


def solow_1993(times: Sequence[float], now: float, origin: float | None = None) -> float:
    """Return p of still running now: (t_n / T)^n, times from the start of observation.

    Solow 1993, Ecology 74:962. Without `origin` the first sighting fixes it and is not counted.
    """
    t, n, zero = _from_origin(times, origin)
    return float(((t[-1] - zero) / (now - zero)) ** n)


def solow_1993_upper(times: Sequence[float], alpha: float = 0.05, origin: float | None = None) -> float:
    """Return the time at which p of `solow_1993` falls to alpha: t_n / alpha^(1/n) from the origin."""
    t, n, zero = _from_origin(times, origin)
    return float(zero + (t[-1] - zero) / alpha ** (1 / n))


def solow_1993_declining(times: Sequence[float], now: float) -> float:
    """Return p of still running now for sightings whose rate declines: F(t_n) / F(T); times from the origin 0.

    Solow 1993, Mathematical Biosciences 114:47.
    """
    ordered = sorted(times)
    return declining_p(len(ordered), sum(ordered), ordered[-1], now)


def declining_p(n: int, total: float, last: float, now: float) -> float:
    """Return p of the declining-rate test from its sufficient numbers: count, sum, last time and now."""

    def share(x: float) -> float:
        terms = floor(total / x)
        signs = ((-1.0) ** (i - 1) * comb(n, i) * (1 - i * x / total) ** (n - 1) for i in range(1, terms + 1))
        return 1 - sum(signs)

    if n < 2:
        raise TooFewSightingsError("the declining-rate test needs two sightings")
    return share(last) / share(now)


def robson_whitlock(times: Sequence[float], alpha: float = 0.05) -> EndEstimate:
    """Return 2 t_n - t_(n-1) and the limit t_n + (1-alpha)/alpha (t_n - t_(n-1)).

    Robson & Whitlock 1964, Biometrika 51:33.
    """
    t = _distinct(times, 2)
    gap = t[-1] - t[-2]
    return EndEstimate(t[-1] + gap, t[-1], t[-1] + (1 - alpha) / alpha * gap)


def solow_roberts(times: Sequence[float], now: float) -> float:
    """Return p of still running now from the last two sightings: (t_n - t_(n-1)) / (T - t_(n-1)).

    Solow & Roberts 2003, Ecology 84:1329.
    """
    t = _distinct(times, 2)
    return (t[-1] - t[-2]) / (now - t[-2])


def mcinerny(times: Sequence[float], now: float) -> float:
    """Return p of still running now: (1 - n/t_n)^(T - t_n), from the first sighting, which is not counted.

    McInerny et al. 2006, Conservation Biology 20:562.
    """
    t = _distinct(times, 2)
    return mcinerny_p(len(t) - 1, t[-1] - t[0], now - t[0])


def mcinerny_p(n: int, last: float, now: float) -> float:
    """Return McInerny's p from count, last time and now, all from the origin; refused at one sighting a unit."""
    if n / last >= 1:
        raise TooFewSightingsError(
            "a run seen in every week leaves this method no chance of a missed week", remedy="use the default bound"
        )
    return float((1 - n / last) ** (now - last))


def mcinerny_upper(times: Sequence[float], alpha: float = 0.05) -> float:
    """Return the first whole unit after the last time at which McInerny's p is not above alpha."""
    t = _distinct(times, 2)
    n, last = len(t) - 1, t[-1] - t[0]
    return t[-1] if n / last >= 1 else t[-1] + ceil(log(alpha) / log(1 - n / last))


def optimal_linear(times: Sequence[float], alpha: float = 0.05, latest: int = 10) -> EndEstimate:
    """Return the optimal linear estimate of the end and its limits, from the `latest` times; ties count as given.

    Roberts & Solow 2003, Nature 426:245; Solow 2005, Biological Journal of the Linnean Society 86:27, eqs. 14-16:
    weights a = L^-1 e / (e' L^-1 e), lambda_ij = G(2v+i) G(v+j) / (G(v+i) G(j)) for j <= i, symmetric.
    """
    t = _latest_first(times, latest)
    k = len(t)
    v = _shape(t)
    i, j = np.meshgrid(np.arange(1, k + 1), np.arange(1, k + 1), indexing="ij")
    low, high = np.minimum(i, j), np.maximum(i, j)
    gamma = np.vectorize(lgamma)
    matrix = np.exp(gamma(2 * v + high) + gamma(v + low) - gamma(v + high) - gamma(low))
    weights = np.linalg.solve(matrix, np.ones(k))
    weights /= weights.sum()
    reach = t[0] - t[-1]

    def limit(tail: float) -> float:
        spread = (-log(tail) / k) ** -v
        return float(t[0] + reach / (spread - 1)) if spread > 1 else inf

    return EndEstimate(float(weights @ t), limit(1 - alpha / 2), limit(alpha / 2))


def optimal_linear_p(times: Sequence[float], end: float, latest: int = 10) -> float:
    """Return p(T) = exp(-k [(T - T_1)/(T - T_k)]^(1/v)) (Solow 2005 eq. 16)."""
    t = _latest_first(times, latest)
    return exp(-len(t) * ((end - t[0]) / (end - t[-1])) ** (1 / _shape(t)))


def jaric_ebenhard(times: Sequence[float], now: float) -> float:
    """Return p of still running now allowing a trend in the intervals: (m+b) / (m+b + T - t_n).

    Jaric & Ebenhard 2010, Conservation Biology 24:1444; m the mean interval, b the mean change of intervals.
    """
    t = _distinct(times, 3)
    gaps = np.diff(t)
    expected = float(gaps.mean() + np.diff(gaps).mean())
    return expected / (expected + now - t[-1])


@dataclass(frozen=True, slots=True)
class ReliabilityEstimate:
    """Hold the estimate from sightings that may be false: their weight, expected last true time, end and limit."""

    weight: float
    last: float
    end: float
    upper: float


def jaric_roberts(times: Sequence[float], reliabilities: Sequence[float], alpha: float = 0.05) -> ReliabilityEstimate:
    """Return the end of a run when sighting i is true with probability r_i; the first fixes the origin.

    Jaric & Roberts 2014, Biodiversity and Conservation 23:1553; r = sum r_i and t_r = sum t_i r_i prod_(j>i)(1-r_j),
    both without the first sighting; end ((r+1)/r) t_r, upper limit t_r / alpha^(1/r).
    """
    pairs = sorted(zip(times, reliabilities, strict=True))
    if len(pairs) < 2:
        raise TooFewSightingsError("an end needs two sightings")
    origin = pairs[0][0]
    weight = sum(r for _, r in pairs[1:])
    last, missed = 0.0, 1.0
    for time, r in reversed(pairs[1:]):
        last += (time - origin) * r * missed
        missed *= 1 - r
    return ReliabilityEstimate(
        weight, origin + last, origin + (weight + 1) / weight * last, origin + last / alpha ** (1 / weight)
    )


def marshall_gaps(times: Sequence[float], confidence: float = 0.8, gamma: float = 0.95) -> tuple[float, float | None]:
    """Return lower and upper bound on the limit at a confidence, free of any distribution; upper None if too few gaps.

    Marshall 1994, Paleobiology 20:459: order statistics of the gaps, binomial tails. Needs many gaps without a trend.
    """
    t = _distinct(times, 3)
    gaps = np.sort(np.diff(t))
    lower, upper = marshall_orders(len(gaps), confidence, gamma)
    return t[-1] + float(gaps[lower - 1]), None if upper is None else t[-1] + float(gaps[upper - 1])


def marshall_orders(gaps: int, confidence: float, gamma: float) -> tuple[int, int | None]:
    """Return which of the sorted gaps (from 1) bracket the limit; None where there are too few for an upper one."""
    tail = (1 - gamma) / 2
    cumulative = np.cumsum([comb(gaps, x) * confidence**x * (1 - confidence) ** (gaps - x) for x in range(gaps + 1)])
    # the k-th gap exceeds the quantile when fewer than k lie below it
    lower = int(np.searchsorted(cumulative, tail, side="right"))
    upper = int(np.searchsorted(cumulative, 1 - tail, side="right")) + 1
    return max(lower, 1), upper if upper <= gaps else None


def _latest_first(times: Sequence[float], latest: int) -> NDArray[np.float64]:
    _distinct(times, 3)
    t = np.array(sorted(times, reverse=True)[:latest], dtype=np.float64)
    if t[0] == t[1]:
        raise TooFewSightingsError("the two latest sightings are of the same time, so this estimator has no shape")
    return t


def _shape(t: NDArray[np.float64]) -> float:
    k = len(t)
    if t[0] == t[-1]:
        raise TooFewSightingsError("the latest sightings are all of one time")
    v = sum(log((t[0] - t[-1]) / (t[0] - t[i])) for i in range(1, k - 1)) / (k - 1)
    if v <= 0:
        raise TooFewSightingsError("the sightings crowd at both ends, so this estimator has no shape")
    return float(v)


def _from_origin(times: Sequence[float], origin: float | None) -> tuple[list[float], int, float]:
    t = sorted(times)
    if len(_distinct(times, 1)) < (2 if origin is None else 1):
        raise TooFewSightingsError("two distinct sightings are needed where the first fixes the origin")
    return (t, len(t) - 1, t[0]) if origin is None else (t, len(t), origin)


def _distinct(times: Sequence[float], least: int) -> list[float]:
    ordered = sorted(set(times))
    if len(ordered) < least:
        raise TooFewSightingsError(
            f"{len(ordered)} distinct sightings are too few, {least} are needed", remedy="use a printed schedule"
        )
    return ordered

"""Shapes of likelihood over the months; none is ever zero, as any text may be misread or out of time.

Each returns the logarithm, 0 at its highest. Old wording lingers in standing copy and logotypes, so what was abolished
fades with a half-life instead of ending; what did not exist yet gets only the chance of a misreading.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from datetime import date
from functools import lru_cache
from typing import Final

import numpy as np
from numpy.typing import NDArray

from adminer.dating.months import MONTHS, index_of, index_of_year

Floats = NDArray[np.float64]

MISREAD: Final = 0.004  # chance that a misreading makes a sign that was not printed; judgement, no source


@lru_cache(maxsize=4096)
def spell(
    first: date | None = None,
    last: date | None = None,
    *,
    misread: float = MISREAD,
    half_life: float = 18.0,
    floor: float = 0.02,
    lingering: float = 1.0,
    leading: float = 0.0,
) -> Floats:
    """Return the likelihood of something that began on a day, ended on another and lingered (months of half-life).

    `lingering` is how likely it still is at once after its end; `leading`, where not 0, how likely it already was just
    before a beginning that is only the first one known.
    """
    months = np.arange(MONTHS)
    chance = np.ones(MONTHS)
    if last is not None:
        late = np.clip(months - index_of(last), 0, None)
        chance = np.maximum(np.where(late > 0, lingering, 1.0) * 0.5 ** (late / half_life), floor)
    if first is not None:
        early = np.clip(index_of(first) - months, 0, None)
        chance = np.where(early > 0, np.maximum(leading * 0.5 ** (early / half_life), misread), chance)
    return _frozen(chance)


@lru_cache(maxsize=2048)
def steps(points: tuple[tuple[int, float], ...]) -> Floats:
    """Return the likelihood that runs in straight lines between (year, chance) points, flat outside."""
    at = [index_of_year(year) for year, _ in points]
    return _frozen(np.interp(np.arange(MONTHS), at, [chance for _, chance in points]))


@lru_cache(maxsize=1024)
def season(weights: tuple[tuple[int, float], ...], floor: float) -> Floats:
    """Return the likelihood by month of the year: (month, chance), the floor for all others."""
    of_year = np.full(12, floor)
    for month, chance in weights:
        of_year[month - 1] = chance
    return _frozen(np.tile(of_year, MONTHS // 12))


def around(days: Mapping[int, float] | Iterable[int], floor: float, *, neighbour: float = 0.0) -> Floats:
    """Return the likelihood of certain months (by number), of the months beside them, and of all others."""
    chance = np.full(MONTHS, floor)
    weights = days if isinstance(days, Mapping) else dict.fromkeys(days, 1.0)
    for month, weight in weights.items():
        for beside, value in ((month - 1, neighbour * weight), (month + 1, neighbour * weight), (month, weight)):
            if 0 <= beside < MONTHS:
                chance[beside] = max(chance[beside], value)
    return _frozen(chance)


def within(first: int, last: int, floor: float, *, edge: float = 0.0, edge_months: int = 0) -> Floats:
    """Return the likelihood of lying between two months (numbers), with softer edges, and the floor elsewhere."""
    chance = np.full(MONTHS, floor)
    if edge_months:
        chance[max(0, first - edge_months) : max(0, last + 1 + edge_months)] = max(edge, floor)
    chance[max(0, first) : max(0, last + 1)] = 1.0
    return _frozen(chance)


def stray(wrong: float, months: int) -> float:
    """Return the floor for sharp evidence: a wrong reading (chance `wrong`) names any of the study's months alike."""
    return wrong * months / MONTHS / (1 - wrong)


def faded(log_likelihood: Floats, trust: float) -> Floats:
    """Return a likelihood mixed with 'says nothing': trust is the chance that it bears on this advert at all."""
    chance = np.exp(log_likelihood - log_likelihood.max())
    return _frozen(trust * chance + (1 - trust) * chance.mean())


def _frozen(chance: Floats) -> Floats:
    highest = float(chance.max())
    result = np.log(chance / highest if highest > 0 else np.ones(MONTHS))
    result.setflags(write=False)
    return np.asarray(result)

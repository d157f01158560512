"""How much longer a weekly promotion may have run: the bound on the lattice of weeks.

If each of the N weeks of a run is equally likely to have left an advert in the file, the n distinct weeks seen are a
draw without replacement (hypergeometric): P(last seen week <= m | N) = C(m, n) / C(N, n). The default of the project,
because in simulation it was the narrowest bound that kept its promise for runs of 8 to 20 weeks (`simulate.py`).
"""

from __future__ import annotations

from math import lgamma, log
from typing import Final

# a file that holds one week of a run says next to nothing about its length; beyond this we say "not bounded"
_LONGEST_WEEKS: Final = 52 * 100
_ROUNDING: Final = 1e-12


def largest_number(highest: int, seen: int, alpha: float = 0.05) -> int | None:
    """Return the upper limit at confidence 1 - alpha for N, given the highest of `seen` numbers drawn from 1..N.

    None where there is no number or the limit lies beyond a century of weeks.
    """
    if seen < 1 or highest < seen:
        return None
    top = _log_choose(highest, seen)
    low, high = highest, _LONGEST_WEEKS
    if top - _log_choose(high, seen) >= log(alpha) - _ROUNDING:
        return None
    while high - low > 1:
        middle = (low + high) // 2
        if top - _log_choose(middle, seen) >= log(alpha) - _ROUNDING:
            low = middle
        else:
            high = middle
    return low


def likeliest_number(highest: int, seen: int) -> float:
    """Return the unbiased point estimate of N: m + m/n - 1."""
    return highest + highest / seen - 1


def weeks_beyond(weeks: list[int], alpha: float = 0.05) -> int | None:
    """Return how many weeks past the last seen week a run may have gone on, at confidence 1 - alpha.

    `weeks` are distinct week numbers in any order. The first sighting fixes the origin and is not counted, as the start
    is unknown too. Mirror the numbers for the start. None with fewer than two sightings or no bound in a century.
    """
    ordered = sorted(set(weeks))
    if len(ordered) < 2:
        return None
    highest = ordered[-1] - ordered[0]
    limit = largest_number(highest, len(ordered) - 1, alpha)
    return None if limit is None else limit - highest


def _log_choose(n: int, k: int) -> float:
    return lgamma(n + 1) - lgamma(k + 1) - lgamma(n - k + 1)

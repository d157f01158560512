"""Consumer price levels and national average prices of staples, by month, from the tables in data/.

The item indexes are monthly and the published average prices five-yearly; the price of a month is the index times the
ratio price/index interpolated in logarithms between the published years (p = I exp(interp log(p_b / I_b))). Before 1913
there is no index: prices run in straight lines between 1890, 1895, 1900, 1905 and 1910, and those of bread, coffee and
oranges, not published before 1915, are flat and ever less sure.
"""

from __future__ import annotations

import csv
from dataclasses import dataclass
from functools import lru_cache
from importlib.resources import files
from typing import Final

import numpy as np
from numpy.typing import NDArray

from adminer.dating.months import MONTHS, index_of_year

Floats = NDArray[np.float64]

# the series that moves a staple between its published years; None has only the general food index
_INDEX_OF: Final[dict[str, str | None]] = {
    "flour": None,
    "bread": "bread",
    "round_steak": "beef",
    "bacon": "bacon",
    "butter": "butter",
    "eggs": "eggs",
    "milk": "milk",
    "oranges": "oranges",
    "potatoes": "potatoes",
    "coffee": "coffee",
    "sugar": "sugar_and_sweets",
    "pork_chops": "pork_chops",
}


@dataclass(frozen=True, slots=True)
class Staple:
    """Hold the national average price of one staple by month of the study, with how unsure it is."""

    item: str
    unit: str
    cents: Floats  # of one unit, one value a month
    spread: Floats  # standard deviation of its logarithm due to the chaining alone


@lru_cache(maxsize=1)
def consumer_prices() -> dict[str, dict[tuple[int, int], float]]:
    """Return the indexes (1982-84 = 100) by series, then (year, month)."""
    table: dict[str, dict[tuple[int, int], float]] = {}
    text = files("adminer.dating").joinpath("data/consumer_prices.csv").read_text(encoding="utf-8")
    for row in csv.DictReader(text.splitlines()):
        at = int(row["year"]), int(row["month"])
        for name, value in row.items():
            if name not in ("year", "month") and value:
                table.setdefault(name, {})[at] = float(value)
    return table


@lru_cache(maxsize=1)
def benchmarks() -> dict[str, tuple[str, dict[int, float]]]:
    """Return the published average prices: item to (unit, cents by year)."""
    text = files("adminer.dating").joinpath("data/staple_benchmarks.csv").read_text(encoding="utf-8")
    table: dict[str, tuple[str, dict[int, float]]] = {}
    for row in csv.DictReader(text.splitlines()):
        table.setdefault(row["item"], (row["unit"], {}))[1][int(row["year"])] = float(row["cents"])
    return table


@lru_cache(maxsize=64)
def log_index(name: str) -> Floats:
    """Return the logarithm of an index by month of the study; flat where nothing was published."""
    series = consumer_prices()[name]
    at = np.array([index_of_year(y) + m - 1 for y, m in series], dtype=np.float64)
    values = np.log(np.array(list(series.values())))
    return np.asarray(np.interp(np.arange(MONTHS), at, values), dtype=np.float64)


@lru_cache(maxsize=1)
def staples() -> dict[str, Staple]:
    """Return the national average prices of all staples by month."""
    return {item: _chained(item, unit, prices) for item, (unit, prices) in benchmarks().items()}


def _chained(item: str, unit: str, prices: dict[int, float]) -> Staple:
    level = log_index("food").copy()
    name = _INDEX_OF[item]
    first_exact = MONTHS
    if name is not None:
        own = log_index(name)
        year, _ = min(consumer_prices()[name])
        first_exact = index_of_year(year)
        splice = slice(first_exact, first_exact + 12)
        level += own[splice].mean() - level[splice].mean()
        level[first_exact:] = own[first_exact:]
    years = sorted(prices)
    middles = np.array([index_of_year(y) + 5.5 for y in years])
    # an annual average price belongs to the annual average of the index
    means = np.array([np.log(np.exp(level[index_of_year(y) : index_of_year(y) + 12]).mean()) for y in years])
    ratio = np.log(np.array([prices[y] for y in years])) - means
    months = np.arange(MONTHS)
    log_price = level + np.interp(months, middles, ratio)
    return Staple(item, unit, np.exp(log_price), _spread(months, middles, first_exact))


def _spread(months: NDArray[np.int_], middles: Floats, first_exact: int) -> Floats:
    # leave-one-out errors over ten-year gaps: mostly under 3 %, worst 7.7 % with the item's own index;
    # without it, and beyond the published years, wider by judgement
    spread = np.where(months >= first_exact, 0.03, 0.10)
    before = np.clip(middles[0] - months, 0, None) / 12
    after = np.clip(months - middles[-1], 0, None) / 12
    return np.asarray(np.hypot(spread, 0.02 * before + 0.015 * after), dtype=np.float64)

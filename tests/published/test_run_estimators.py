"""Every published worked example of the run estimators, to its digits; and the three known-wrong implementations.

Sources: Roberts & Solow 2003 (Nature 426:245) with the record of Hume et al.; Solow 1993a, 1993b; McInerny et al. 2006,
table 1; Strauss & Sadler 1989; Solow & Roberts 2003; Jaric & Ebenhard 2010; Jaric & Roberts 2014; Marshall 1994.
Digits beyond the papers are those of the test suites and documentation of public R implementations.
"""

from __future__ import annotations

from math import exp, lgamma

import numpy as np
import pytest

from adminer.dating import estimators as est
from adminer.dating.lattice import largest_number, likeliest_number, weeks_beyond

DODO = [1598, 1601, 1602, 1607, 1611, 1628, 1628, 1631, 1638, 1662]
# example record of an R package for these estimators: years and counts
YEARS = [1907, 1910, 1915, 1916, 1920, 1925, 1930, 1931]
COUNTS = [1, 1, 3, 4, 3, 1, 2, 1]
REPEATED = [y for y, c in zip(YEARS, COUNTS, strict=True) for _ in range(c)]


def test_the_dodo_by_optimal_linear_estimation() -> None:
    # published: 1690, 95 % 1669-1797. The formula with its shape at full precision gives 1798.879 for the upper limit;
    # 1797 is what a shape rounded to 0.39 gives (1796.6)
    found = est.optimal_linear(DODO)
    assert found.point == pytest.approx(1690.4179, abs=5e-5)
    assert found.lower == pytest.approx(1669.1331, abs=5e-5)
    assert found.upper == pytest.approx(1798.8790, abs=5e-5)
    assert est.optimal_linear(DODO, alpha=0.10).upper == pytest.approx(1770.49, abs=5e-3)
    assert est.optimal_linear_p(DODO, 1674) == pytest.approx(0.921, abs=5e-4)
    assert est.optimal_linear_p(DODO, 1690) == pytest.approx(0.635, abs=5e-4)


@pytest.mark.parametrize(
    ("latest", "point"), [(5, 1737.5), (6, 1692.3), (7, 1691.7), (8, 1690.2), (9, 1691.2), (10, 1690.4)]
)
def test_the_dodo_by_the_number_of_sightings_used(latest: int, point: float) -> None:
    # computed once in another language for the project's notes
    assert est.optimal_linear(DODO, latest=latest).point == pytest.approx(point, abs=0.05)


def test_the_limits_invert_the_p_value() -> None:
    found = est.optimal_linear(DODO)
    assert found.upper is not None
    assert found.lower is not None
    assert est.optimal_linear_p(DODO, found.upper) == pytest.approx(0.025, abs=1e-9)
    assert est.optimal_linear_p(DODO, found.lower) == pytest.approx(0.975, abs=1e-9)


def test_the_monk_seal() -> None:
    # Solow 1993a as quoted in Oryx 32:4 (1998): p = 0.053; the five years are from memory (le Boeuf et al. 1986)
    seal = [1915, 1922, 1932, 1948, 1952]
    assert est.solow_1993(seal, 1992) == pytest.approx(0.053314, abs=5e-7)
    first = next(year for year in range(1953, 2100) if est.solow_1993(seal, year) <= 0.05)
    assert first == 1994
    assert est.solow_1993_upper(seal) == pytest.approx(1993.25, abs=0.01)


def test_the_black_footed_ferret() -> None:
    # Solow 1993b: n = 28, sum 1714, last 153, now 229, p = 0.050
    assert est.declining_p(28, 1714, 153, 229) == pytest.approx(0.050132, abs=5e-7)


@pytest.mark.parametrize(("n", "last", "now", "p"), [(2, 3, 4, 0.333), (2, 5, 7, 0.360), (6, 29, 30, 0.793)])
def test_mcinerny_table_1(n: int, last: float, now: float, p: float) -> None:
    assert est.mcinerny_p(n, last, now) == pytest.approx(p, abs=5e-4)


def test_the_example_record_by_four_methods() -> None:
    linear = est.optimal_linear(YEARS)
    assert linear.point == pytest.approx(1934.661, abs=5e-4)
    assert linear.lower == pytest.approx(1931.13, abs=5e-3)
    assert linear.upper == pytest.approx(1954.5515, abs=5e-4)
    assert est.strauss_sadler(YEARS).upper == pytest.approx(1943.8191, abs=5e-5)
    # that package counts every sighting and looks for the first whole year with p <= 0.05
    first = next(y for y in range(1932, 2000) if est.solow_1993(REPEATED, y, origin=1907) <= 0.05)
    assert first == 1936


def test_a_long_geological_record() -> None:
    # 43 ages from 0.2749 to 6.95 (documentation of an R package, its andes data): 7.4435055, factor 0.0739323
    ages = list(np.linspace(0.2749, 6.95, 43))
    assert est.strauss_sadler(ages).upper == pytest.approx(7.4435055, abs=5e-8)
    assert est.strauss_sadler_both_ends(ages)[1] == pytest.approx(7.5598, abs=5e-5)
    # 42 gaps: the bounds are the 28th and 39th gap at 80 %, the 37th and none at 95 %
    assert est.marshall_orders(42, 0.80, 0.95) == (28, 39)
    assert est.marshall_orders(42, 0.95, 0.95) == (37, None)


def test_the_gaps_of_a_long_geological_record() -> None:
    # the same record at 80 %: 7.0701 and 7.2147 (trade.md C.2). Its 42 gaps are not printed; these have the 28th
    # and the 39th that those bounds need, and end at 6.95 as it does
    gaps = [*np.linspace(0.001, 0.1, 27), 0.1201, *np.linspace(0.13, 0.26, 10), 0.2647, 0.3, 0.4, 0.5]
    ages = 6.95 - np.cumsum([0.0, *np.random.default_rng(1).permutation(gaps)])
    lower, upper = est.marshall_gaps(list(ages), 0.80, 0.95)
    assert lower == pytest.approx(7.0701, abs=5e-5)
    assert upper == pytest.approx(7.2147, abs=5e-5)
    assert est.marshall_gaps(list(ages), 0.95, 0.95)[1] is None


def test_the_last_two_sightings_alone() -> None:
    assert est.solow_roberts([1900, 1905, 1910], 1990) == pytest.approx(0.058824, abs=5e-7)
    first = next(y for y in range(1911, 2100) if est.solow_roberts([1900, 1905, 1910], y) <= 0.05)
    assert first == 2005


def test_a_trend_in_the_intervals() -> None:
    assert est.jaric_ebenhard([1, 3, 6, 10], 14) == pytest.approx(0.5, abs=1e-12)
    assert next(t for t in range(11, 200) if est.jaric_ebenhard([1, 3, 6, 10], t) <= 0.05) == 86


def test_sightings_that_may_be_false() -> None:
    found = est.jaric_roberts([1900, 1910, 1920], [1, 0.8, 0.5])
    assert found.weight == pytest.approx(1.3, abs=1e-12)
    assert found.last == pytest.approx(1914, abs=1e-9)
    assert found.end == pytest.approx(1924.7692, abs=5e-5)
    assert found.upper == pytest.approx(2040.2556, abs=5e-5)


@pytest.mark.parametrize(
    ("count", "one_end", "both_ends"),
    [(3, 3.472, 4.833), (5, 1.115, 1.465), (10, 0.395, 0.500), (20, 0.171, 0.213)],
)
def test_strauss_and_sadlers_factors(count: int, one_end: float, both_ends: float) -> None:
    # computed once in another language for the project's notes, 95 %
    times = list(np.linspace(0, 1, count))
    upper = est.strauss_sadler(times).upper
    assert upper is not None
    assert upper - 1 == pytest.approx(one_end, abs=5e-4)
    assert est.strauss_sadler_both_ends(times)[1] - 1 == pytest.approx(both_ends, abs=5e-4)
    assert -est.strauss_sadler_both_ends(times)[0] == pytest.approx(both_ends, abs=5e-4)


def test_the_serial_number_problem() -> None:
    # 19, 40, 42, 60 -> 74, the classic teaching example of the serial number problem, from memory
    assert likeliest_number(60, 4) == 74
    # computed once in another language for the project's notes
    assert largest_number(60, 4) == 125


def test_the_lattice_bound_is_the_largest_number_that_is_not_refused() -> None:
    def chance(total: int) -> float:
        return exp(_log_choose(60, 4) - _log_choose(total, 4))

    assert chance(125) >= 0.05 > chance(126)
    assert weeks_beyond([0, 60, 19, 40, 42], alpha=0.05) == largest_number(60, 4, 0.05) - 60  # type: ignore[operator]


def test_wrong_swapped_covariance_is_not_ours() -> None:
    # version 0.1.0 of one R package swapped i and j: the dodo then comes out at 1708.54
    times = np.array(sorted(DODO, reverse=True), dtype=float)
    k, v = 10, 0.38465837093997235

    def swapped(i: int, j: int) -> float:
        i, j = min(i, j), max(i, j)
        return exp(lgamma(2 * v + i) + lgamma(v + j) - lgamma(v + i) - lgamma(j))

    matrix = np.array([[swapped(i, j) for j in range(1, k + 1)] for i in range(1, k + 1)])
    weights = np.linalg.solve(matrix, np.ones(k))
    wrong = float(weights @ times / weights.sum())
    assert wrong == pytest.approx(1708.54, abs=5e-3)
    assert abs((est.optimal_linear(DODO).point or 0) - wrong) > 15


def test_wrong_fixed_gap_is_not_ours() -> None:
    # one R package puts the last gap at 1 whatever it is: its limit would be 1662 + 19
    found = est.robson_whitlock(DODO)
    assert found.upper == pytest.approx(1662 + 19 * 24, abs=1e-9)
    assert found.point == 1686
    assert found.upper != 1662 + 19


def test_wrong_name_declining_rate_is_not_the_optimal_linear_p() -> None:
    # two R packages offer the declining-rate test of 1993 under the name of Solow 2005, with 1941 for their example
    declining = next(
        y for y in range(1932, 2000) if est.solow_1993_declining([t - 1907 for t in REPEATED], y - 1907) <= 0.05
    )
    linear = next(y for y in range(1932, 2000) if est.optimal_linear_p(YEARS, y) <= 0.05)
    assert declining == 1941
    assert linear != declining


@pytest.mark.parametrize(
    "times",
    [[1950.0, 1950.0], [1950.0, 1951.0], [1950.0, 1960.0, 1960.0], []],
)
def test_optimal_linear_refuses_what_has_no_shape(times: list[float]) -> None:
    with pytest.raises(est.TooFewSightingsError):
        est.optimal_linear(times)


def test_a_sighting_every_week_is_refused_by_mcinerny() -> None:
    with pytest.raises(est.TooFewSightingsError):
        est.mcinerny([1, 2, 3, 4, 5], 8)
    assert est.mcinerny_upper([1, 2, 3, 4, 5]) == 5


def _log_choose(n: int, k: int) -> float:
    return lgamma(n + 1) - lgamma(k + 1) - lgamma(n - k + 1)

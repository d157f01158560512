"""The shipped price tables against the `cpi` package, published averages and published index values."""

from __future__ import annotations

import csv
import sqlite3
from datetime import date
from decimal import Decimal
from importlib.util import find_spec
from pathlib import Path

import pytest

from adminer.dating.evidence.staples import StaplePrice, likelihood
from adminer.dating.make_price_tables import SERIES, TABLE, table_text
from adminer.dating.money import in_dollars_of, index_at
from adminer.dating.months import index_of_year
from adminer.dating.price_tables import consumer_prices, staples

# Annual all-items CPI-U as the Bureau of Labor Statistics publishes it (series CUUR0000SA0, M13), typed from its table.
ALL_ITEMS = {
    1913: "9.9", 1920: "20.0", 1929: "17.1", 1933: "13.0", 1940: "14.0", 1945: "18.0", 1950: "24.1",
    1955: "26.8", 1960: "29.6", 1965: "31.5", 1970: "38.8", 1975: "53.8", 1980: "82.4",
}  # fmt: skip


def test_the_shipped_table_is_the_one_the_script_makes() -> None:
    if find_spec("cpi") is None:
        pytest.skip("the package cpi is not installed")
    made = list(csv.reader(table_text().splitlines()))
    shipped = list(csv.reader(TABLE.read_text(encoding="utf-8").splitlines()))
    # a newer package appends months; what is shipped must be its beginning
    assert shipped[: len(made)] == made[: len(shipped)]


def test_annual_averages_agree_with_the_packages_own_annual_rows() -> None:
    spec = find_spec("cpi")
    if spec is None or spec.origin is None:
        pytest.skip("the package cpi is not installed")
    source = Path(spec.origin).parent / "cpi.db"
    connection = sqlite3.connect(f"file:{source}?mode=ro", uri=True)
    compared = 0
    for name in ("all_items", "eggs", "coffee"):
        for year, value in connection.execute(
            "SELECT year, value FROM indexes WHERE series = ? AND period = 'M13' AND year <= 1980",
            (f"CUUR0000{SERIES[name]}",),
        ):
            months = [consumer_prices()[name].get((year, m)) for m in range(1, 13)]
            if None not in months:
                assert sum(m for m in months if m) / 12 == pytest.approx(value, abs=0.1)
                compared += 1
    assert compared > 100


@pytest.mark.parametrize(("year", "value"), ALL_ITEMS.items())
def test_the_index_of_a_year_is_the_published_one(year: int, value: str) -> None:
    # months and averages are both rounded to a tenth: the two may differ by a tenth
    assert abs(index_at(year) - Decimal(value)) <= Decimal("0.1")


# National average prices in cents, second independent reading of Historical Statistics, Bicentennial edition, 1944.
# 1944 is no year of the shipped benchmarks, so this checks the chaining itself.
@pytest.mark.parametrize(
    ("item", "cents"), [("eggs", 54.5), ("milk", 31.2), ("butter", 50.0), ("round_steak", 41.4), ("bread", 8.8)]
)
def test_the_chained_price_of_1944_is_the_printed_one(item: str, cents: float) -> None:
    at = index_of_year(1944)
    assert staples()[item].cents[at : at + 12].mean() == pytest.approx(cents, rel=0.015)


# The same independent reading has 20.9 cents for eggs in 1900, the shipped table 20.7: cells agree to 0.2 cents.
def test_prices_before_the_index_are_the_printed_ones_and_move() -> None:
    eggs = staples()["eggs"].cents
    assert eggs[index_of_year(1900) + 5 : index_of_year(1900) + 7].mean() == pytest.approx(20.9, abs=0.25)
    assert eggs[index_of_year(1893)] < eggs[index_of_year(1903)] < eggs[index_of_year(1908)]
    # not published before 1915: flat, and ever less sure
    coffee = staples()["coffee"]
    assert coffee.cents[index_of_year(1895)] == pytest.approx(coffee.cents[index_of_year(1905)])
    assert coffee.spread[index_of_year(1895)] > coffee.spread[index_of_year(1905)] > staples()["eggs"].spread[0]


def test_a_basket_of_1910_is_told_from_one_of_1900() -> None:
    # the printed averages of 1910 (series E 187-202), less a grocer's eight per cent
    printed = {"round_steak": 17.4, "bacon": 25.5, "butter": 35.9, "eggs": 33.7, "potatoes": 17.0}
    level = likelihood(tuple(StaplePrice(item, cents * 0.92, "", None) for item, cents in printed.items()))
    assert level[index_of_year(1910) + 6] - level[index_of_year(1900) + 6] > 3


# The project's independent computation of the same chaining by years (its notes on the trade, B.3), cents.
CHAINED = """
year bread bacon butter milk coffee potatoes eggs oranges sugar round_steak
1942 8.7 40.2 47.6 29.7 29.1 34.2 48.2 34.5 33.8 43.2
1948 13.9 77.1 87.0 44.5 51.4 56.4 73.1 45.3 46.7 90.1
1954 17.2 81.6 72.4 46.2 110.7 52.5 58.9 55.3 51.3 89.4
1963 21.0 67.2 74.2 52.3 68.9 63.3 54.7 90.8 59.1 106.4
"""


def test_chaining_by_months_agrees_with_chaining_by_years() -> None:
    header, *rows = CHAINED.split("\n")[1:-1]
    for row in rows:
        year, *values = row.split()
        at = index_of_year(int(year))
        for item, value in zip(header.split()[1:], values, strict=True):
            # another reading of the same formula: the interpolated ratio moves within the year
            assert staples()[item].cents[at : at + 12].mean() == pytest.approx(float(value), rel=0.012), (item, year)


def test_an_amount_moves_with_the_published_index() -> None:
    # 14.0 in 1940 to 82.4 in 1980 (same table), January 1940 being 13.9 there
    restated = in_dollars_of(Decimal("1.39"), date(1940, 1, 15), 1980)
    assert restated.amount == Decimal("8.24")
    assert restated.index_then == Decimal("13.9")

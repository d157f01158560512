"""Prices as evidence: staples against the averages of their month, a line's own prices, the level of the file."""

from __future__ import annotations

from datetime import date
from math import log

import numpy as np
import pytest

from adminer.dating import price_tables
from adminer.dating.evidence import (
    file_prices,
    staples,
)
from adminer.dating.evidence.base import Context, DatedPrice, ReadPrice
from adminer.dating.months import index_of
from adminer.records import Box
from tests.dating.test_evidence import NOTHING, case, chance

EGGS = ReadPrice("Grade A large eggs", 0.60, 1.0, "doz", "everyone", "price", None)


def staple(item: str, amount: float, unit: str | None = "lb", quantity: float = 1.0) -> ReadPrice:
    return ReadPrice(item, amount, quantity, unit, "everyone", "price", None)


@pytest.mark.parametrize(
    ("price", "item", "cents"),
    [
        (EGGS, "eggs", 60),
        (staple("Coffee", 0.89), "coffee", 89),
        (staple("Pure cane sugar, 10 lb. bag", 0.95, None), "sugar", 47.5),
        (staple("White bread 20-oz. loaf", 0.25, None), "bread", 20),
        (staple("Milk, quart", 0.22, None), "milk", 44),
        (staple("Homogenized Milk ½ gal.", 0.43, None), "milk", 43),
        (staple("Milk, half-gallon", 0.43, None), "milk", 43),
        (staple("Milk, gallon jug", 0.86, None), "milk", 43),
        (staple("Eggs, ½ doz.", 0.30, None), "eggs", 60),
        (staple("U. S. No. 1 potatoes, peck", 0.75, None), "potatoes", 50),
        (staple("Butter", 1.50, "lb", 2), "butter", 75),
        (staple("Butter, 2 lbs.", 1.50, "lb", 2), "butter", 75),
        (staple("Sliced bacon 1/2-lb. pkg.", 0.33, None), "bacon", 66),
        (staple("Bread 1½-lb. loaf", 0.24, None), "bread", 16),
        (staple("Sugar-cured bacon", 0.59), "bacon", 59),
    ],
)
def test_staples_are_told_with_their_size(price: ReadPrice, item: str, cents: float) -> None:
    (found,) = staples.staple_prices(case(prices=(price,)))
    assert found.item == item
    assert found.cents == pytest.approx(cents, rel=1e-6)


@pytest.mark.parametrize(
    "price",
    [
        staple("Peanut butter", 0.39),
        staple("Evaporated milk", 0.12, "can"),
        staple("Butter dish", 0.79, None),
        staple("Covered Butter Dishes", 0.33, None),
        staple("Bread Knives", 0.15, None),
        staple("Bread & butter", 0.14, None),
        staple("Coffee pot", 1.98, None),
        staple("Potato chips", 0.29),
        staple("Sugar", 0.49, None),  # no size, so no price per pound
        staple("Egg noodles", 0.25),
        staple("Milk, 3 tall cans", 0.29, None),
        staple("Candy Easter eggs", 0.29, "doz"),
        staple("Coffee", 8.90),
        ReadPrice("Coffee", 0.99, 1.0, "lb", "former", "price", None),
    ],
)
def test_what_is_no_staple_or_has_no_size_is_left(price: ReadPrice) -> None:
    assert staples.staple_prices(case(prices=(price,))) == ()


def test_coffee_at_its_highest_points_to_the_middle_fifties() -> None:
    prices = (staple("Coffee", 1.09), EGGS, staple("Butter", 0.69), staple("Round steak", 0.85))
    (clue,) = staples.find(case(prices=prices), NOTHING)
    assert chance(clue, 1954) > 20 * chance(clue, 1948)
    assert chance(clue, 1954) > 20 * chance(clue, 1941)


def test_one_misread_staple_does_not_decide() -> None:
    good = (staple("Coffee", 0.24), staple("Butter", 0.36), staple("Eggs", 0.33, "doz"))
    clean = staples.likelihood(staples.staple_prices(case(prices=good)))
    spoilt = staples.likelihood(staples.staple_prices(case(prices=(*good, staple("Round steak", 1.20)))))
    assert abs(int(np.argmax(clean)) - int(np.argmax(spoilt))) <= 24


def test_months_that_fit_three_of_five_staples_outweigh_months_that_fit_none() -> None:
    # by the averages of data/staple_benchmarks.csv, bread, bacon and steak of June 1937 cost about the same in June
    # 1945, oranges and potatoes twice as much; in June 1965 none of the five does
    full, some, none = (index_of(date(year, 6, 1)) for year in (1937, 1945, 1965))
    five = tuple(
        staples.StaplePrice(item, float(price_tables.staples()[item].cents[full]), item, None)
        for item in ("bread", "bacon", "round_steak", "oranges", "potatoes")
    )
    likely = staples.likelihood(five)
    assert likely[full] == pytest.approx(0, abs=0.1)
    assert likely.max() == 0
    assert likely[some] - likely[none] > log(10)


def test_the_floor_of_staples_falls_with_each_one_that_fits() -> None:
    prices = staples.staple_prices(case(prices=(staple("Coffee", 0.24), staple("Butter", 0.36), EGGS)))
    floors = [float(staples.likelihood(prices[:n]).min()) for n in (1, 2, 3)]
    assert floors[0] > floors[1] > floors[2]


def test_the_same_lines_price_in_dated_adverts_draws_to_their_months() -> None:
    month = index_of(date(1951, 5, 1))
    dated = DatedPrice(month, float(np.log(0.99)), "d-a1", "d", "tidewell", "cardholder")
    context = Context(dated={file_prices.key_of("tansy-morn", "dinner_plate", "cardholder"): (dated,)})
    plate = ReadPrice("dinner plate", 0.99, 1.0, None, "cardholder", "price", None, "tansy-morn", "dinner_plate")
    (clue,) = file_prices.find(case(prices=(plate,)), context)
    assert chance(clue, 1951, 5) > chance(clue, 1957) > 0
    # the advert's own clipping is no evidence for itself
    own = Context(dated={k: (DatedPrice(month, 0.0, "c-a2", "c", None, "cardholder"),) for k in context.dated})
    assert list(file_prices.find(case(prices=(plate,)), own)) == []


def test_pieces_of_one_line_are_one_witness() -> None:
    month = index_of(date(1951, 5, 1))
    dated = DatedPrice(month, float(np.log(0.99)), "d-a1", "d", "tidewell", "cardholder")
    pieces = ("dinner_plate", "cup", "saucer")
    context = Context(dated={file_prices.key_of("tansy-morn", piece, "cardholder"): (dated,) for piece in pieces})
    prices = tuple(
        ReadPrice(piece, 0.99, 1.0, None, "cardholder", "price", Box(9, 9 * n, 20, 8), "tansy-morn", piece)
        for n, piece in enumerate(pieces)
    )
    (one,) = file_prices.find(case(prices=prices[:1]), context)
    (three,) = file_prices.find(case(prices=prices), context)
    assert np.allclose(one.log_likelihood, three.log_likelihood)
    assert "'saucer' at 0.99" in three.text and three.box == Box(9, 0, 20, 26)


def test_the_files_own_level_needs_several_dated_prices() -> None:
    plate = ReadPrice("45-piece set", 9.95, 1.0, None, "everyone", "price", None, None, "set:45")
    known = tuple(
        DatedPrice(index_of(date(1950, m, 1)), float(np.log(10 + m / 4)), f"d{m}-a1", f"d{m}", None, "everyone")
        for m in range(1, 9)
    )
    (clue,) = file_prices.find(case(prices=(plate,)), Context(levels={"set:45": known}))
    assert chance(clue, 1950) > chance(clue, 1933)
    assert list(file_prices.find(case(prices=(plate,)), Context(levels={"set:45": known[:3]}))) == []

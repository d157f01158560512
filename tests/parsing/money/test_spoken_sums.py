"""Sums that prose tells without a sign; invented wording."""

from __future__ import annotations

from decimal import Decimal

import pytest

from adminer.parsing.prices.prices import find_prices
from tests.parsing.pages import advert_text


def prices(text: str) -> list[Decimal]:
    found = find_prices(advert_text(*((40, 100 + 24 * i, 16, line) for i, line in enumerate(text.split("/")))), [])
    return [p.amount.amount for p in found]


@pytest.mark.parametrize(
    ("text", "sums"),
    [
        ("five cakes for a quarter.", ["0.25"]),
        ("Bait is still a quarter a can.", ["0.25"]),
        ("Tea still a nickel - come in", ["0.05"]),
        ("Cake, 2 layer. 2 BITS", ["0.25"]),
        ("White gloves, two-fifty plus tax.", ["2.50"]),
        ("four pounds for a half dollar.", ["0.50"]),
        ("Brooms a quarter; combs a nickel each, soap at a dime.", ["0.25", "0.05", "0.10"]),
        ("the whole service now Twelve-fifty. Come and see", ["12.50"]),
        ("a lamp at three-seventy-five, wired", ["3.75"]),
        ("Ribbons at 8, 10 and 12½ cents the yard", ["0.08", "0.10", "0.125"]),
        ("Breakages at 9 cents the cup, 7 the saucer, and/12 the large plate.", ["0.09", "0.07", "0.12"]),
        ("a cup alone is thirty cents and its saucer fifteen.", ["0.30", "0.15"]),
    ],
)
def test_sums_in_prose_are_found(text: str, sums: list[str]) -> None:
    assert prices(text) == [Decimal(s) for s in sums]


def test_the_count_of_a_lot_for_a_coin_is_taken_in() -> None:
    (found,) = find_prices(advert_text((40, 100, 16, "six bars for a quarter.")), [])
    assert found.amount.quantity == 6


@pytest.mark.parametrize(
    "text",
    [
        "The show began at ten-thirty and ran on.",
        "for a quarter of a century",
        "a yard and a quarter, hemmed",
        "at Twelve-fifty Harbor Street",
        "twenty-five pieces",
        "a drive of twelve-fifteen years",
        "12 the large plate",
    ],
)
def test_words_that_only_resemble_a_sum_add_nothing(text: str) -> None:
    assert prices(text) == []


def test_a_cell_of_wrappers_and_cents_has_one_sum() -> None:
    assert prices("Tea plate/5 and 7c") == [Decimal("0.07")]

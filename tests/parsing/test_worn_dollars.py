"""Dollars and cents whose signs and points wore off, and sums that are no prices; invented adverts."""

from __future__ import annotations

from decimal import Decimal

import pytest

from adminer.parsing.prices import find_prices
from tests.parsing.pages import advert_text


def prices(text: str) -> list[Decimal]:
    lines = ((40, 100 + 24 * i, 16, line) for i, line in enumerate(text.split("/")))
    return [p.amount.amount for p in find_prices(advert_text(*lines), [])]


def test_an_eight_before_a_sum_far_over_the_others_is_a_dollar_sign() -> None:
    assert prices("Jugs $3.90, bowls $2.25, sets 87.48, cups 9c") == [
        Decimal(s) for s in ("3.90", "2.25", "7.48", "0.09")
    ]


@pytest.mark.parametrize(
    ("text", "sums"),
    [
        ("Jugs $39.00, bowls $22.25, sets 87.48, rugs $95.00", ["39.00", "22.25", "87.48", "95.00"]),
        ("Jugs 3.90, bowls 2.25, sets 87.48, cups 9c", ["3.90", "2.25", "87.48", "0.09"]),
        ("Jugs $3.90, sets 87.48", ["3.90", "87.48"]),
        ("Jugs 9c, bowls 7c, cups $.05, sets 87.48", ["0.09", "0.07", "0.05", "87.48"]),
    ],
)
def test_an_eight_stays_where_the_others_leave_a_doubt(text: str, sums: list[str]) -> None:
    assert prices(text) == [Decimal(s) for s in sums]


@pytest.mark.parametrize(
    ("text", "sums"),
    [
        ("Stoves, nickel ..13.65", ["13.65"]),
        ("Stoves S54-75: lamps S3-49. Call S55-0142", ["54.75", "3.49"]),
        ("Bags, 20 for 88. Rakes $1.19", ["0.88", "1.19"]),
        ("Tape, two bits a roll; glue six bits", ["0.25", "0.75"]),
        ("Peanuts, bag a nickel/Orange drops 9c", ["0.05", "0.09"]),
        ("Pencils at two and a half cents, eleven cents and a half", ["0.025", "0.115"]),
        ("Pants that wear. 25. 39 and 50 cents", ["0.25", "0.39", "0.5"]),
    ],
)
def test_worn_and_spoken_sums_are_read(text: str, sums: list[str]) -> None:
    assert prices(text) == [Decimal(s) for s in sums]


@pytest.mark.parametrize(
    "text",
    [
        "Goods to the amount of five dollars go freight paid",
        "Deposit $200 or more and take home a bowl",
        "Proceeds of $186 go to the hall",
        "a loss set at $6,500, insured",
        "Door sweep, 36 x 75c, alum.",
    ],
)
def test_sums_to_reach_and_sums_of_news_are_no_prices(text: str) -> None:
    assert prices(text) == []

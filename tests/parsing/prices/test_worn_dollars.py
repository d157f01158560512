"""Dollars and cents whose signs and points wore off, and sums that are no prices; invented adverts."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest

from adminer.parsing.prices.prices import find_prices
from adminer.parsing.text.text import text_of
from tests.parsing.pages import advert_text, words_of


def prices(text: str) -> list[Decimal]:
    lines = ((40, 100 + 24 * i, 16, line) for i, line in enumerate(text.split("/")))
    return [p.amount.amount for p in find_prices(advert_text(*lines), [])]


def test_an_eight_before_a_sum_far_over_the_others_is_a_dollar_sign() -> None:
    assert prices("Jugs $3.90, bowls $2.25, sets 87.48, cups 9c") == [
        Decimal(s) for s in ("3.90", "2.25", "7.48", "0.09")
    ]


def test_an_eight_is_a_dollar_sign_where_every_other_sum_has_its_sign() -> None:
    assert prices("Beds $18.00, desks $27.00, chairs $3.85, rugs $6.25, cups 9c, stands 87.45")[-1] == Decimal("7.45")
    assert prices("Beds $18.00, desks 27.00, chairs $3.85, rugs $6.25, cups 9c, stands 87.45")[-1] == Decimal("87.45")


def test_what_is_bought_for_tapes_or_must_be_bought_is_no_price() -> None:
    assert prices("Cups 39c with each $3 purchase: buy $9, take three, with $15 buy five") == [Decimal("0.39")]
    assert prices("Jugs 39c, or paste $25 in green register tapes on a card") == [Decimal("0.39")]


@pytest.mark.parametrize(
    ("text", "sums"),
    [
        ("Jugs $39.00, bowls $22.25, sets 87.48, rugs $95.00", ["39.00", "22.25", "87.48", "95.00"]),
        ("Jugs 3.90, bowls 2.25, sets 87.48, cups 9c", ["3.90", "2.25", "87.48", "0.09"]),
        ("Jugs $3.90, sets 87.48", ["3.90", "87.48"]),
        ("Jugs $3.90, bowls $2.25, sets 27.48, cups 9c", ["3.90", "2.25", "27.48", "0.09"]),
        ("Jugs 9c, bowls 7c, cups $.05, sets 87.48", ["0.09", "0.07", "0.05", "87.48"]),
    ],
)
def test_an_eight_stays_where_the_others_leave_a_doubt(text: str, sums: list[str]) -> None:
    assert prices(text) == [Decimal(s) for s in sums]


@pytest.mark.parametrize(
    ("text", "sums"),
    [
        ("Sago 18c/Prunes 40c/Figs 25c/Walnuts 81.25", ["0.18", "0.40", "0.25", "1.25"]),  # each has a sign but one
        ("Jugs $3.90, bowls $2.25, sets 57.48, cups 9c", ["3.90", "2.25", "7.48", "0.09"]),
        ("Ranges $90.00, lamps $5.25, stools $3.75, list 9289.50", ["90", "5.25", "3.75", "289.50"]),
    ],
)
def test_a_figure_with_the_bows_of_the_sign_is_one_where_the_others_say_so(text: str, sums: list[str]) -> None:
    assert prices(text) == [Decimal(s) for s in sums]


@pytest.mark.parametrize(
    ("text", "sum_"),
    [
        ("Three for 3 65.", "3.65"),
        ("Sheets, reg. 1 25, now less", "1.25"),
        ("Oxfords for duty. 2,95 Second Floor", "2.95"),
    ],
)
def test_dollars_and_cents_without_a_point_are_a_price_where_the_others_have_points(text: str, sum_: str) -> None:
    assert Decimal(sum_) in prices(f"Caps 1.65, gowns 4.50, belts 1.05/{text}")
    assert Decimal(sum_) not in prices(f"Caps $1.65, gowns $4.50/{text}")


def test_a_lot_with_a_letter_is_a_heading_and_no_lot_of_a_sum() -> None:
    assert prices("Oxfords, welt soles, $4.85/LOT B/Felt slippers $1.35/Sold in $5 lots") == [
        Decimal("4.85"),
        Decimal("1.35"),
    ]


def test_cents_apart_from_their_dollars_belong_to_them_where_the_sum_ends() -> None:
    words = words_of([(40, 100, 16, "Pullets, laying. $1"), (300, 100, 16, "25 each, Ducks $3")])
    one_line = text_of(tuple(replace(word, line=0) for word in words))
    assert [p.amount.amount for p in find_prices(one_line, [])] == [Decimal("1.25"), Decimal(3)]


@pytest.mark.parametrize(
    "text",
    ["Call 3 65 times.", "Sizes for men 8-14", "Open Oct. 2,95 rooms", "Towels, 3 10 x 12", "Lamps, reg. 89 75."],
)
def test_two_numbers_side_by_side_are_no_price(text: str) -> None:
    assert len(prices(f"Caps 1.65, gowns 4.50, belts 1.05, hats 9.95/{text}")) == 4


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
        "Mail and phone orders filled on $2 or more",
        "Catalogue post free. No order billed under $2.50",
        "No C.O.D.'s under $5. Nothing over 50 cents",
        "Freight free to your nearest siding on £20.",
        "We will allow $5 for any old mattress",
        "Air mattress, .27 x 72",
        "Write to Dept. 41 C, Moss Ferry",
        "Goods to the amount of five dollars go freight paid",
        "Deposit $200 or more and take home a bowl",
        "Proceeds of $186 go to the hall",
        "a loss set at $6,500, insured",
        "Door sweep, 36 x 75c, alum.",
    ],
)
def test_sums_to_reach_and_sums_of_news_are_no_prices(text: str) -> None:
    assert prices(text) == []

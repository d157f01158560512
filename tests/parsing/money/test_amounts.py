"""The price grammar. Forms: those listed in the trade's vocabulary of price typography (common practice, no source)."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from adminer.parsing.money.amounts import find_amounts
from adminer.parsing.money.foreign import find_foreign, speaks_sterling, sterling_currency


def amounts(text: str) -> list[tuple[str, str]]:
    return [(str(a.amount.normalize() + 0), str(a.quantity)) for a in find_amounts(text)]


@pytest.mark.parametrize(
    ("text", "amount", "quantity"),
    [
        ("69¢", "0.69", "1"),
        ("69c", "0.69", "1"),
        ("69 cts.", "0.69", "1"),
        ("35 cents", "0.35", "1"),
        (".69", "0.69", "1"),
        ("$.69", "0.69", "1"),
        ("$0.69", "0.69", "1"),
        ("$1.39", "1.39", "1"),
        ("1.39", "1.39", "1"),
        ("$1,250.00", "1250", "1"),
        ("$1.250", "1250", "1"),  # the tail of the comma lost
        ("25c2 lbs.", "0.25", "1"),  # set close
        ("$5", "5", "1"),
        ("Twine........$3.45", "3.45", "1"),  # leaders set close
        ("2 pr. *1", "1", "1"),  # a raised sign read as a star
        ("3/*1", "1", "3"),
        ("10¢ ea.", "0.1", "1"),
        ("2 for 25¢", "0.25", "2"),
        ("2/25¢", "0.25", "2"),
        ("3/$1", "1", "3"),
        ("3 for 1.00", "1", "3"),
        ("6 for $1", "1", "6"),
        ("two for 25c", "0.25", "2"),
        ("2 lbs. for 29c", "0.29", "2"),
        ("12½¢", "0.125", "1"),
        ("12 1/2c", "0.125", "1"),
        ("seventy cents", "0.7", "1"),
        ("seventy-five cents", "0.75", "1"),
        ("one dollar", "1", "1"),
        ("39°", "0.39", "1"),
        ("$.4.50 a week", "4.5", "1"),
    ],
)
def test_each_typographic_form_gives_its_amount_and_quantity(text: str, amount: str, quantity: str) -> None:
    assert amounts(text) == [(amount, quantity)]


@pytest.mark.parametrize(
    ("text", "amount"),
    [
        ("Platter, a dollar and ten cents.", "1.1"),
        ("Hose, 1.oo pr.", "1"),
        ("Set $1,S0", "1.5"),
        ("Gas 28.9c", "0.289"),
    ],
)
def test_noughts_read_as_letters_and_cents_told_after_a_dollar_are_part_of_the_sum(text: str, amount: str) -> None:
    assert amounts(text) == [(amount, "1")]


def test_a_letter_after_a_dollar_sign_is_a_one() -> None:
    assert amounts("Nails, the keg, $i") == [("1", "1")]


def test_cents_with_a_sign_of_their_own_are_no_cents_of_the_dollars_before_them() -> None:
    assert amounts("6/$1 19¢") == [("1", "6"), ("0.19", "1")]


@pytest.mark.parametrize(
    "text",
    [
        "*1 to a customer",
        "33⅓% off",
        "½ price",
        "1/2 off",
        "45-piece set",
        "service for 8",
        "1921",
        "3924 Main Street",
        "Phone 4-2217",
        "Style No. 706",
        "size 9 x 12 ft.",
        "Open 7.30 a.m. to 8 p.m.",
        "Box 115",
        "100 per cent pure",
        "22-k. gold",
        "oven-proof to 350°",
    ],
)
def test_what_is_no_price_gives_none(text: str) -> None:
    assert amounts(text) == []


def test_two_prices_side_by_side_are_two() -> None:
    assert amounts("59¢ & 79¢") == [("0.59", "1"), ("0.79", "1")]
    assert amounts("25¢ to $1.98") == [("0.25", "1"), ("1.98", "1")]


@given(st.integers(1, 99), st.sampled_from(["¢", "c", " cents", " cts."]))
def test_cents_are_hundredths(cents: int, sign: str) -> None:
    (found,) = find_amounts(f"Cups {cents}{sign}")
    assert Fraction(found.amount) == Fraction(cents, 100)


@given(st.integers(0, 999), st.integers(0, 99))
def test_dollars_and_cents_add_up_as_fractions_do(dollars: int, cents: int) -> None:
    (found,) = find_amounts(f"Set ${dollars}.{cents:02d} now")
    assert Fraction(found.amount) == dollars + Fraction(cents, 100)


@given(st.integers(2, 12), st.integers(10, 99))
def test_a_multiple_keeps_the_printed_amount_and_its_quantity(count: int, cents: int) -> None:
    for text in (f"{count} for {cents}¢", f"{count}/{cents}¢"):
        (found,) = find_amounts(text)
        assert (found.quantity, found.amount) == (Decimal(count), Decimal(cents) / 100)


STERLING = "Collars 4/6 per doz. Shirts 3/6 each. Suits from 63/-. Postage 9d. extra. Prunes 11½d. lb"


def test_shillings_and_pence_are_pounds_at_twenty_shillings_of_twelve_pence() -> None:
    # 240 pence to the pound: Coinage of the United Kingdom before 1971, common knowledge
    found = find_foreign(STERLING, sterling=speaks_sterling(STERLING))
    pence = [Fraction(a.amount).limit_denominator(480) * 240 for a in found]
    assert pence == [54, 42, 756, 9, Fraction(23, 2)]
    assert {a.currency for a in found} == {"GBP"}


def test_a_text_in_dollars_reads_no_slash_as_shillings() -> None:
    text = "2/3 cup of sugar, 2/25¢, flour $1.50, 9/12"
    assert not speaks_sterling(text)
    assert find_foreign(text, sterling=False) == []


def test_an_australian_place_makes_it_australian_pounds() -> None:
    assert sterling_currency("Grocers, Katoomba, N.S.W.") == "AUP"


def test_a_list_before_piastres_gives_every_figure() -> None:
    found = find_foreign("Costumes at 9, 18, 25, 30 P.T. Siphon P.T. 35 and shoes 65 piastres", sterling=False)
    assert [str(a.amount) for a in found] == ["9", "18", "25", "30", "35", "65"]
    assert {a.currency for a in found} == {"EGP-piastre"}


@pytest.mark.parametrize("text", ["No. 38C1402. White cups", "Cat. 7c2210", "Style 12C345"])
def test_the_letter_of_a_stock_number_is_no_cent_sign(text: str) -> None:
    assert amounts(text) == []


def test_in_before_a_word_is_no_inch_of_a_sum() -> None:
    assert amounts("Tea set, sold at $8.25 in town") == [("8.25", "1")]


@pytest.mark.parametrize(
    ("text", "sums"),
    [
        ("Set $7.95 in china shops", ["7.95"]),
        ("Chopped ham $1.09 lb.", ["1.09"]),
        ("Tumblers $12 39 piece", ["12"]),
        ("Vitamins 2/1.99", ["1.99"]),
        ("Towels 6/.75", ["0.75"]),
        ("Shirts Reg-7.49", ["7.49"]),
        ("Tyres 33 × 6.00 and 29x4.40", []),
        ("Patterns 15cto 35c", ["0.15", "0.35"]),
        ("Paper 98ç", ["0.98"]),
        ("Cream 5lc, wax 6Qc, pitcher 1sc, collars zsc", ["0.51", "0.60", "0.15", "0.25"]),
        ("Waists $l.88, rug ll9.00", ["1.88", "119.00"]),
        ("regularly St.39, frocks two for St.25", ["1.39", "1.25"]),
        ("Osterby, 14 Granby St. 39 lamps", []),
        ("Ferncliff, Main St.", []),
        ("Roasters $]19", ["119"]),
        ("class Isc of 20", []),
    ],
)
def test_cents_stand_before_words_and_behind_a_stroke_and_letters_are_figures_where_signs_tell(
    text: str, sums: list[str]
) -> None:
    assert [a.amount for a in find_amounts(text)] == [Decimal(s) for s in sums]


@pytest.mark.parametrize(
    ("text", "amount"),
    [
        ("$1.62½ each", "1.625"),
        ("1.27½ the dozen", "1.275"),
        ("$1.6212. Socks", "1.625"),
        ("$1.25 12-inch", "1.25"),
        ("$S.9S", "5.95"),
    ],
)
def test_half_cents_and_worn_figures_after_dollars_are_part_of_the_sum(text: str, amount: str) -> None:
    assert [a.amount for a in find_amounts(text)] == [Decimal(amount)]

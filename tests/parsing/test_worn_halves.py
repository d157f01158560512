"""Cents with a worn fraction, and sums in words. Wordings invented."""

from __future__ import annotations

from decimal import Decimal

import pytest

from adminer.parsing.amounts import find_amounts
from adminer.parsing.prices import find_prices
from tests.parsing.pages import advert_text


def cents(*texts: str) -> list[Decimal]:
    lines = [(20, 20 + 40 * i, 16, text) for i, text in enumerate(texts)]
    return [p.amount.amount * 100 for p in find_prices(advert_text(*lines), [])]


@pytest.mark.parametrize(
    ("printed", "worth"),
    [
        ("12ke", "12.5"),
        ("1212°", "12.5"),
        ("171hc", "17.5"),
        ("421/hc", "42.5"),
        ("6ze.", "6.5"),
        (".22%½c", "22.5"),
        ("914c", "9.25"),
    ],
)
def test_a_worn_fraction_is_told_by_the_cents_around_it(printed: str, worth: str) -> None:
    assert cents("Lima beans 9c", "Barley 6c", f"Hominy {printed}") == [9, 6, Decimal(worth)]


@pytest.mark.parametrize("printed", ["12ke", "1212°"])
def test_without_other_cents_nothing_is_mended(printed: str) -> None:
    assert Decimal("12.5") not in cents(f"Hominy {printed}")


@pytest.mark.parametrize("printed", ["43ke", "1sc", "2514c"])
def test_sums_the_trade_printed_no_fraction_with_are_left(printed: str) -> None:
    assert all(amount == int(amount) for amount in cents("Lima beans 9c", "Barley 6c", f"Hominy {printed}"))


@pytest.mark.parametrize(
    ("text", "amount"),
    [
        ("gloves at three dollars and forty cents", "3.40"),
        ("a dollar ninety, postpaid", "1.90"),
        ("caps, half a dollar", "0.50"),
        ("a dollar and ninety, postpaid", "1.90"),
        ("enclose a two-cent stamp", "0.02"),
        ("a dollar and a quarter", "1.25"),
        ("worth 45 eents", "0.45"),
        ("comes for 6 conts in stamps", "0.06"),
    ],
)
def test_sums_in_words_are_whole(text: str, amount: str) -> None:
    assert [a.amount for a in find_amounts(text)] == [Decimal(amount)]


@pytest.mark.parametrize("text", ["for a quarter of a century", "half a cent", "a dollar ten times over"])
def test_words_that_only_resemble_a_sum_add_nothing(text: str) -> None:
    assert [a.amount for a in find_amounts(text) if a.amount != 1] == []

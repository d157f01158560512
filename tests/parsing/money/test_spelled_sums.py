"""Sums in words. Wordings invented."""

from __future__ import annotations

from decimal import Decimal

import pytest

from adminer.parsing.money.amounts import find_amounts


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
        ("lamp chimneys for 5 ets.", "0.05"),
        ("the thirty-nine eent one", "0.39"),
        ("coffee, ground fresh.19clb.", "0.19"),
        ("cases, each 21cSTREET FLOOR", "0.21"),
        ("comes for 6 conts in stamps", "0.06"),
    ],
)
def test_sums_in_words_are_whole(text: str, amount: str) -> None:
    assert [a.amount for a in find_amounts(text)] == [Decimal(amount)]


@pytest.mark.parametrize("text", ["for a quarter of a century", "half a cent", "a dollar ten times over"])
def test_words_that_only_resemble_a_sum_add_nothing(text: str) -> None:
    assert [a.amount for a in find_amounts(text) if a.amount != 1] == []

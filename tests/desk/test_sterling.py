"""Pounds, shillings and pence are typed and shown as people write them, and kept as pounds."""

from __future__ import annotations

import pytest

from adminer.desk.rendering import money, typed_amount
from adminer.desk.sterling import pounds_of


@pytest.mark.parametrize(
    ("typed", "pounds", "words"),
    [
        ("1/6", "0.075000", "1s. 6d."),
        ("9/-", "0.450000", "9s."),
        ("4½d", "0.018750", "4½d."),
        ("2s. 3d.", "0.112500", "2s. 3d."),
        ("£1 2s. 6d.", "1.125000", "£1 2s. 6d."),
        ("1d", "0.004167", "1d."),
    ],
)
def test_shillings_and_pence_are_taken_and_shown_as_people_write_them(typed: str, pounds: str, words: str) -> None:
    assert str(pounds_of(typed)) == pounds
    assert money(pounds, "GBP") == typed_amount(pounds, "AUP") == words
    assert str(pounds_of(words)) == pounds  # what a form shows it takes back unchanged


def test_what_is_no_sum_of_pounds_is_left_to_the_dollars() -> None:
    assert [pounds_of(text) for text in ("1.39", "69¢", "3/$1", "12", "d", "-", "")] == [None] * 7
    assert money("0.37001", "GBP") == "0.37001 pounds"
    assert money("7", "EGP-piastre") == "7 piastres"

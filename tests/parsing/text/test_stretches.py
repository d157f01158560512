"""Stretches of a text that share characters."""

from __future__ import annotations

from decimal import Decimal

import pytest

from adminer.parsing.money.amounts import Amount
from adminer.parsing.text.stretches import is_taken


@pytest.mark.parametrize(
    ("start", "end", "taken"), [(0, 5, False), (0, 6, True), (6, 7, True), (7, 9, True), (8, 12, False), (4, 12, True)]
)
def test_a_stretch_is_taken_where_it_shares_a_character(start: int, end: int, taken: bool) -> None:
    assert is_taken(start, end, [Amount(5, 8, Decimal(1), "USD", "bare", 0.5)]) == taken


def test_nothing_takes_nothing() -> None:
    assert not is_taken(0, 9, [])

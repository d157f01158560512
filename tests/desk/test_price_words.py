"""A price in words, with its quantity and unit."""

from __future__ import annotations

from decimal import Decimal

import pytest

from adminer.desk.rendering import price_words
from adminer.records import Box, Price


@pytest.mark.parametrize(
    ("quantity", "unit", "words"),
    [
        ("1", None, "20¢"),
        ("1", "doz", "20¢ a doz"),
        ("1", "each", "20¢ each"),
        ("2", None, "2 for 20¢"),
        ("0.25", "lb", "20¢ for 0.25 lb"),
    ],
)
def test_a_price_is_said_with_its_quantity_and_unit(quantity: str, unit: str | None, words: str) -> None:
    box = Box(0, 0, 1, 1)
    price = Price(Decimal("0.20"), "USD", box, 0.9, "20", "bare", per_quantity=Decimal(quantity), per_unit=unit)
    assert price_words(price) == words

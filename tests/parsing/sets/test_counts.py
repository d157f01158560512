"""How many a price is for: counts before it, units over and before it. Common practice of grocers, no source."""

from __future__ import annotations

from decimal import Decimal

import pytest

from tests.parsing.pages import parse


@pytest.mark.parametrize(
    ("line", "count", "unit"),
    [
        ("Navy Beans ..... 4 lbs. 19c", 4, "lb"),
        ("Navy Beans4 lbs. 19c", 4, "lb"),  # the leaders lost
        ("Macaroni or Spaghetti .3 pkgs. 20c", 3, "pkg"),  # one point left of them
        ("3 lbs. 17c", 3, "lb"),
        ("Navy Beans, 5 lbs. 19c", 1, "lb"),  # the size of the bag, part of its name
        ("Sliced Pineapple, No. 2/19c", 1, None),
        ("Tomatoes, No. 2 3 for 23c", 3, None),
        ("Peas 2/19c", 2, None),
        ("Ironstone Dinner Plates, 9 inches. Per dozen. Price . . . 82c", 1, "doz"),
        ("Salt Shakers, opal glass. Per pair. Price 18c", 1, "pair"),
    ],
)
def test_a_count_belongs_to_the_price_and_a_size_to_the_goods(line: str, count: int, unit: str | None) -> None:
    (offer,) = parse((40, 40, 14, line)).offers
    assert [(p.per_quantity, p.per_unit) for p in offer.prices] == [(Decimal(count), unit)]

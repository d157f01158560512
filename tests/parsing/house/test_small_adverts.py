"""Columns of small advertisements, which no one house places; invented names, no source."""

from __future__ import annotations

import pytest

from tests.parsing.house.test_signatures import BODY, retailer_of
from tests.parsing.pages import Line

NOTICE: list[Line] = [
    (40, 300, 14, "cockerel at the show, $7.00 the hundred"),
    (40, 320, 14, "at the farm. Mrs. J. Vale,"),
]
ROUTE: Line = (40, 340, 14, "Route 2.")


@pytest.mark.parametrize(
    "heads",
    [
        [(40, 20, 28, "WANT ADS"), (40, 280, 14, "FOR SALE-Eggs for hatching.")],
        [(40, 20, 28, "COURIER WANT ADS BRING RESULTS"), (40, 60, 20, "LIVESTOCK, POULTRY")],
        [(40, 60, 16, "For Sale"), (40, 120, 16, "For Rent"), (40, 280, 16, "Wanted")],
        [(40, 60, 14, "LOST-A tan hound."), (40, 120, 14, "FOUND: a purse."), (40, 280, 14, "TO LET - Six rooms.")],
    ],
)
def test_no_one_house_places_a_column_of_small_advertisements(heads: list[Line]) -> None:
    assert retailer_of([*heads, *NOTICE, ROUTE]) is None


def test_what_a_shop_says_of_rooms_and_finds_is_no_head() -> None:
    said = ("ROOM SIZE RUGS", "FOUND ONLY HERE", "ROOM DIVIDERS", "Everybody wants one", "WANTED BY EVERY COOK")
    lines: list[Line] = [(40, 20 + 30 * i, 16, text) for i, text in enumerate(said)]
    assert retailer_of([*lines, *NOTICE, ROUTE]) == "Mrs. J. Vale"


@pytest.mark.parametrize(
    "lines", [[(40, 20, 20, "WANTED: old gold"), *BODY], [(40, 20, 20, "FOR SALE by the maker"), *BODY]]
)
def test_one_head_is_a_dealer_s_own(lines: list[Line]) -> None:
    assert retailer_of([*lines, *NOTICE, ROUTE]) == "Mrs. J. Vale"

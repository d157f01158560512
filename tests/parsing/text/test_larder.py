"""Food that goes by the name of a piece (knowledge of the grocery trade, no source)."""

from __future__ import annotations

import pytest

from adminer.parsing.text.larder import is_food
from tests.parsing.pages import parse, some_names


@pytest.mark.parametrize(
    ("text", "piece"),
    [
        ("Pure Cane Sugar", "Sugar"),
        ("Sugar 5-lb. bag", "sugar"),
        ("Tomato Soup", "soup"),
        ("Whipping Cream, half pint", "cream"),
        ("Soup, 10½-oz. can", "soup"),
        ("Fruit cocktail", "fruit"),
    ],
)
def test_a_piece_s_name_with_a_word_of_food_is_food(text: str, piece: str) -> None:
    at = text.lower().index(piece.lower())
    assert is_food(text, at, at + len(piece))


@pytest.mark.parametrize(
    ("text", "piece"),
    [("Covered sugar", "sugar"), ("Coupe soup 8 in.", "soup"), ("Sugar, 10 oz.", "sugar"), ("Fruit", "fruit")],
)
def test_a_piece_is_none(text: str, piece: str) -> None:
    at = text.lower().index(piece.lower())
    assert not is_food(text, at, at + len(piece))


def test_a_food_takes_no_line_of_the_dinnerware_beside_it() -> None:
    advert = parse(
        (40, 40, 30, "Tansy Morn"), (40, 90, 14, "Dinner plate 39¢"), (40, 120, 14, "Saucer 19¢"),
        (400, 120, 14, "Cane Sugar 47¢"), (400, 150, 14, "Tomato Soup 12¢"),
        names=some_names(),
    )  # fmt: skip
    linked = {o.item: o.line.name if o.line else None for o in advert.offers}
    assert linked == {"Dinner plate": "Tansy Morn", "Saucer": "Tansy Morn", "Cane Sugar": None, "Tomato Soup": None}

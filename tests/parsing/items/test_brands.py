"""Adverts of one article told of in prose, which only its brand names. Texts invented."""

from __future__ import annotations

import pytest

from adminer.parsing.items.brands import BRAND, find_brand
from tests.parsing.pages import Line, advert_text, parse

PRAISE = (
    "Nobody who has lived a week with the Quorlex would go back to the",
    "old ways. It asks no skill, wants no care and makes no noise, and the",
    "young folk take to it. The Quorlex will last you half a lifetime.",
)
ASKS = "Send us only $46 and it is yours, wherever you may live."


def prose(*texts: str, sign: str = "") -> list[Line]:
    """Return an advert in prose, signed in display type."""
    lines: list[Line] = [(20, 60 + 22 * i, 14, text) for i, text in enumerate(texts)]
    return [*lines, (200, 90 + 22 * len(texts), 34, sign)] if sign else lines


def brand_of(lines: list[Line]) -> str:
    brand = find_brand(advert_text(*lines))
    return brand.text if brand is not None else ""


def said(lines: list[Line]) -> list[tuple[str, bool]]:
    """Return the items of an advert, and whether each was named by the brand."""
    return [(offer.item, offer.why == BRAND) for offer in parse(*lines).offers for _ in offer.prices]


def test_a_price_whose_words_name_nothing_is_for_the_brand() -> None:
    assert said(prose(*PRAISE, ASKS, sign="QUORLEX")) == [("Quorlex", True)]


def test_a_price_whose_sentence_names_only_the_brand_is_not_for_goods_told_of_in_the_one_before() -> None:
    told = (
        "You may buy one and put all the brooms of your house away for good.",
        "The price of the Quorlex is $46, wherever you may live.",
    )
    assert said(prose(*told, sign="QUORLEX")) == [("Quorlex", True)]


def test_goods_named_beside_a_price_stay_its_item() -> None:
    lines = prose(*PRAISE, "Spare brushes with bristles, $2.75.", sign="QUORLEX")
    assert [brand for _, brand in said(lines)] == [False]


def test_the_fullest_name_that_recurs_is_that_of_the_brand() -> None:
    body = "The Quorlex is yours.", "Ask for the Quorlex Junior by name.", "No Quorlex Junior leaves us untried."
    assert brand_of(prose(*body)) == "Quorlex Junior"


@pytest.mark.parametrize(
    "texts",
    [
        ("Come to Quorlex's on Monday, and", "Quorlex's will be glad. Home by noon from", "Quorlex's and rested."),
        ("It was Mr. Quorlex who saw it, and", "Quorlex who told us. Had it not been for", "Quorlex, who else would."),
        ("From the Quorlex Company to you, as", "the Quorlex Works and the young", "Quorlex & Daughters Ltd. have it."),
        ("It would sell, and the quorlex would", "not. Every Quorlex is a quorlex, and", "no Quorlex or Quorlex less."),
        (
            "It was Tuesday when we came, and on",
            "Tuesday we left, for a Tuesday is as",
            "good a day as any. Tuesday it is.",
        ),
    ],
    ids=["a store", "a person", "a firm", "a word in other use", "a usual word"],
)
def test_what_is_no_brand_names_nothing(texts: tuple[str, ...]) -> None:
    lines = prose(*texts, ASKS)
    assert brand_of(lines) == ""
    assert not any(brand for _, brand in said(lines))


def test_a_word_named_once_in_display_type_or_twice_in_body_type_is_no_brand() -> None:
    assert brand_of(prose("It has no like in this land or in that", "over the sea.", sign="QUORLEX")) == ""
    assert brand_of(prose(*PRAISE)) == ""
    assert brand_of(prose(*PRAISE, sign="QUORLEX")) == "Quorlex"


def test_an_advert_of_many_offers_is_of_no_brand() -> None:
    asks = [f"Send us only ${40 + i} and it is yours, wherever you live." for i in range(9)]
    assert said(prose(*PRAISE, *asks[:8], sign="QUORLEX")) == [("Quorlex", True)] * 8
    assert [brand for _, brand in said(prose(*PRAISE, *asks, sign="QUORLEX"))] == [False] * 9

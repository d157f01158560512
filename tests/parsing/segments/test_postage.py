"""Postage: what is asked for it by itself, and what is told in one breath with an article. Texts invented."""

from __future__ import annotations

from adminer.records import Advert
from tests.parsing.pages import parse


def items(advert: Advert) -> dict[str, str]:
    return {p.text: o.item for o in advert.offers for p in o.prices}


def test_postage_in_a_sentence_of_its_own_is_for_postage() -> None:
    found = items(
        parse(
            (20, 20, 14, "Dress Shirts, white, $1.25 each."),
            (20, 42, 14, "Write for our booklet, and enclose 4c in stamps for postage."),
        )
    )
    assert "postage" in found["4c"].lower()
    assert found["$1.25"] == "Dress Shirts, white"


def test_postage_told_with_a_price_is_of_the_same_offer() -> None:
    advert = parse((20, 20, 14, "Dress Shirts, white, $1.25, postage 6c."))
    (offer,) = advert.offers
    assert {(p.text, p.role) for p in offer.prices} == {("$1.25", "price"), ("6c", "postage")}


def test_the_word_postage_speaks_of_the_price_after_it_where_one_follows() -> None:
    advert = parse((20, 20, 14, "Garden Shoes for the summer."), (20, 42, 14, "Price 48c. Postage 2c."))
    assert {p.text: p.role for o in advert.offers for p in o.prices} == {"48c": "price", "2c": "postage"}


def test_a_sentence_of_its_own_after_a_whole_word_asks_for_postage_alone() -> None:
    lines = [(20, 20, 14, "Garden Shoes for the summer."), (20, 42, 14, "Price 48 piastres. Postage 2 piastres.")]
    assert items(parse(*lines))["2 piastres"] == "Postage"

"""Heads in capitals that name two goods stand over both and name neither. Texts invented."""

from __future__ import annotations

import pytest

from tests.parsing.pages import parse


def item_under(head: str) -> str:
    """Return what the only price of a paragraph under a head is for."""
    advert = parse(
        (20, 20, 16, head),
        (20, 44, 14, "Satin ribbon, all silk, in each of the new"),
        (20, 64, 14, "shades, 14c the yard."),
    )
    return advert.offers[0].item


@pytest.mark.parametrize("head", ["LACE AND RIBBONS", "LACE & RIBBONS.", "WOOL LACE AND SILK RIBBONS"])
def test_a_head_in_capitals_of_two_goods_names_neither(head: str) -> None:
    assert item_under(head).startswith("Satin ribbon")


def test_a_head_of_one_article_names_what_is_told_under_it() -> None:
    assert item_under("LACE RIBBONS") == "LACE RIBBONS"

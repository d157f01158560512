"""Misread words of money and of numbers, put right in their place. Common practice of readers, no source."""

from __future__ import annotations

from decimal import Decimal

import pytest

from adminer.parsing.money.money_words import with_money_words
from tests.parsing.pages import parse


@pytest.mark.parametrize(
    ("read", "right"),
    [
        ("crackers at six crnts the pound", "crackers at six cents the pound"),
        ("Trimmed hats, 65 plastres", "Trimmed hats, 65 piastres"),
        ("tea at ahirty-five certs", "tea at thirty-five cents"),
        ("Gloves, two dollors a pair", "Gloves, two dollars a pair"),
    ],
)
def test_a_slip_behind_a_number_is_put_right_and_nothing_moves(read: str, right: str) -> None:
    assert with_money_words(read) == right


@pytest.mark.parametrize("text", ["12 collars of linen", "10 tents, slightly worn", "six months", "Cents and certs"])
def test_words_of_their_own_and_words_without_a_number_stay(text: str) -> None:
    assert with_money_words(text) == text


def test_a_price_in_misread_words_is_read() -> None:
    advert = parse((40, 40, 20, "Crackers by the barrel at ahirty-five certs."))
    assert [price.amount for offer in advert.offers for price in offer.prices] == [Decimal("0.35")]

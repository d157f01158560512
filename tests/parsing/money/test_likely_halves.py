"""Quarters that are worn halves."""

from __future__ import annotations

from decimal import Decimal

import pytest

from adminer.parsing.prices.prices import find_prices
from tests.parsing.pages import advert_text


def amounts(text: str) -> list[Decimal]:
    return [p.amount.amount for p in find_prices(advert_text((40, 100, 16, text)), [])]


@pytest.mark.parametrize(
    ("text", "cents"), [("Collars 12¼c", "12.5"), ("Crocks 24c, lids .17¼", "17.5"), ("Screen 11¼c a foot", "11.25")]
)
def test_two_cents_over_five_have_a_half(text: str, cents: str) -> None:
    assert amounts(text)[-1] == Decimal(cents) / 100


@pytest.mark.parametrize(("text", "pence"), [("Jam 9¼d.", "9.5"), ("Hose 3/6¼", "42.5"), ("Starch 2¼d.", "2.25")])
def test_a_farthing_is_told_of_halfpenny_goods_alone(text: str, pence: str) -> None:
    assert round(amounts(f"Mats 4/6, rugs £1 2s., {text}")[-1] * 240, 3) == Decimal(pence)

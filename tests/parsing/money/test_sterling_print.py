"""Sums in pounds and in shillings as leaders and spaced points leave them."""

from __future__ import annotations

from decimal import Decimal

from adminer.parsing.money.foreign import find_foreign
from adminer.parsing.prices.prices import find_prices
from tests.parsing.pages import advert_text


def amounts(text: str) -> list[Decimal]:
    return [found.amount for found in find_foreign(text, sterling=True)]


def test_pounds_shillings_and_pence_with_spaced_points_are_one_sum() -> None:
    assert amounts("Was £9. 2. 6, now £7 . 15 . 0") == [Decimal("9.125"), Decimal("7.75")]
    assert amounts("Suite £9. 2 chairs") == [Decimal(9)]


def test_one_point_alone_before_a_sum_is_a_leader() -> None:
    assert amounts("Plates, 10 in. .1/9") == [Decimal("0.0875")]
    assert amounts("ratio 3.1/9") == []


def test_a_half_stands_with_shillings_and_in_worn_pence() -> None:
    assert amounts("Mattress 14s. 11½d., box 1s. 2d.") == [Decimal("0.747917"), Decimal("0.058333")]
    assert amounts("Mop 10kd. Cocoa 9i2d. Cups 71½d. Salve 71/gd") == [
        Decimal("0.04375"),
        Decimal("0.039583"),
        Decimal("0.03125"),
        Decimal("0.03125"),
    ]


def test_two_sums_side_by_side_are_no_sum_with_a_fraction() -> None:
    assert amounts("Cheese 3/10 3/4") == [Decimal("0.191667"), Decimal("0.166667")]
    assert amounts("Cheese 3/10¾") == [Decimal("0.194792")]


def test_worn_signs_of_shillings_and_halves() -> None:
    assert amounts("Shirts 17s, or tea 1s. 4½id., tin 9½ld. or 91éd. each") == [
        Decimal("0.85"),
        Decimal("0.06875"),
        Decimal("0.039583"),
        Decimal("0.039583"),
    ]


def test_sums_to_spend_are_no_prices() -> None:
    found = find_prices(
        advert_text((40, 100, 16, "Mats 4/6. Sack to all spending £5 or over. No cheques over £30.")), []
    )
    assert [p.amount.amount for p in found] == [Decimal("0.225")]


def test_among_shillings_no_figure_is_cents() -> None:
    found = find_prices(advert_text((40, 100, 16, "Mats 4/6, rugs £1 2s., shirts 5¼¢ bowls .19½")), [])
    assert {p.amount.currency for p in found} == {"GBP"}


def test_a_price_over_a_line_that_opens_with_orders_is_one() -> None:
    found = find_prices(
        advert_text((40, 100, 16, "Rug £2 4s. Hampers from 49/6"), (40, 124, 16, "Orders taken now.")), []
    )
    assert [p.amount.amount for p in found] == [Decimal("2.2"), Decimal("2.475")]
    found = find_prices(advert_text((40, 100, 16, "Mat 1/-. Free with £2"), (40, 124, 16, "orders this week.")), [])
    assert [p.amount.amount for p in found] == [Decimal("0.05")]


def test_an_eleven_and_the_one_of_a_shilling_read_as_letters_are_figures() -> None:
    found = find_prices(advert_text((40, 100, 16, "Mats 4/6, pillows 6/u each, or 2 for 13/-; butter, Is. 3d.")), [])
    pence = [round(p.amount.amount * 240) for p in found]
    assert pence == [54, 83, 156, 15]


def test_a_discount_in_the_pound_is_no_price() -> None:
    found = find_prices(advert_text((40, 100, 16, "Mats 4/6, rugs £1 2s. Discount of 1s. in the £ for cash.")), [])
    assert [p.amount.amount for p in found] == [Decimal("0.225"), Decimal("1.1")]

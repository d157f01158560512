"""Sums in pounds and in shillings as leaders and spaced points leave them."""

from __future__ import annotations

from decimal import Decimal

from adminer.parsing.foreign import find_foreign


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

"""Prices restated, savings and prices per piece, and what is refused."""

from __future__ import annotations

from datetime import date
from decimal import Decimal

import pytest

from adminer.dating.money import card_saving, in_dollars_of, index_at, latest_year, price_per_piece
from adminer.errors import UsageError


def test_an_amount_in_its_own_month_stays_what_it_is() -> None:
    month = index_at(1950, 6)
    year = index_at(1950)
    assert in_dollars_of(Decimal("2.00"), date(1950, 6, 1), 1950).amount == (2 * year / month).quantize(Decimal("0.01"))


def test_the_table_reaches_the_present_century() -> None:
    assert latest_year() > 2020
    assert in_dollars_of(Decimal("1.00"), date(1950, 6, 1), latest_year()).amount > Decimal("10")


@pytest.mark.parametrize("year", [1912, 2200])
def test_years_outside_the_table_are_refused_with_its_bounds(year: int) -> None:
    with pytest.raises(UsageError, match="1913"):
        index_at(year)


def test_savings_and_price_per_piece_are_decimals() -> None:
    assert card_saving(Decimal("0.99"), Decimal("1.49")) == (Decimal("0.50"), Decimal("0.336"))
    assert price_per_piece(Decimal("9.95"), 45) == Decimal("0.221")


def test_nonsense_is_refused() -> None:
    with pytest.raises(UsageError):
        card_saving(Decimal("0.10"), Decimal("0"))
    with pytest.raises(UsageError):
        price_per_piece(Decimal("9.95"), 0)

"""Pounds, shillings and pence in columns: 20 shillings to the pound, 12 pence to the shilling (the coinage to 1971)."""

from __future__ import annotations

from decimal import Decimal

from adminer.parsing.money.sterling_columns import read_columns
from adminer.parsing.prices.prices import find_prices
from tests.parsing.pages import Line, advert_text

HEAD: tuple[Line, ...] = ((400, 20, 16, "£"), (440, 20, 16, "s."), (480, 20, 16, "d."))


def row(y: int, name: str, *figures: str) -> list[Line]:
    return [(20, y, 16, name), *((x, y, 16, text) for x, text in zip((400, 440, 480), figures, strict=True) if text)]


def pounds(*lines: Line) -> list[Decimal]:
    found = find_prices(advert_text(*HEAD, *lines, (20, 300, 16, "Carriage 1/6 extra")), [])
    return [f.amount.amount for f in found if f.amount.form == "sterling"][:-1]


def test_the_figures_of_a_row_are_one_amount() -> None:
    lines = [*row(50, "Tea service", "3", "3", "0"), *row(80, "Toilet set", "0", "14", "9")]
    assert pounds(*lines) == [Decimal("3.15"), Decimal("0.7375")]


def test_a_row_without_pounds_is_shillings_and_pence_and_a_half_penny_counts() -> None:
    assert pounds(*row(50, "Jug", "", "2", "6")) == [Decimal("0.125")]
    assert pounds(*row(50, "Jug", "", "0", "6½")) == [Decimal("0.027083")]


def test_what_is_not_whole_or_no_money_makes_no_amount() -> None:
    assert pounds(*row(50, "Jug", "2", "", "6")) == []
    assert pounds(*row(50, "Jug", "2", "", "")) == []
    assert pounds(*row(50, "Jug", "1", "24", "6")) == []  # no 24 shillings beside a pound
    assert pounds(*row(50, "Jug", "1", "4", "15")) == []


def test_the_head_is_no_price_though_its_s_is_read_as_a_figure() -> None:
    head = ((400, 20, 16, "£"), (440, 20, 16, "1."), (480, 20, 16, "d."))
    advert = advert_text(*head, *row(50, "Tea service", "3", "3", "0"), (20, 80, 16, "Jug, 1/6"))
    assert [p.amount.amount for p in find_prices(advert, [])] == [Decimal("3.15"), Decimal("0.075")]


def test_figures_under_no_head_or_far_below_it_are_left() -> None:
    assert read_columns(advert_text(*row(50, "Tea service", "3", "3", "0")), "GBP").amounts == ()
    assert read_columns(advert_text(*HEAD, *row(400, "Pieces", "3", "3", "0")), "GBP").amounts == ()


def test_a_half_read_as_percent_and_a_cent_sign_among_shillings() -> None:
    advert = advert_text((20, 20, 16, "Pie dishes 4%d."), (20, 50, 16, "Jugs 1/3"), (20, 80, 16, "Set, 4¢ pieces 3/6"))
    assert [p.amount.amount for p in find_prices(advert, [])] == [
        Decimal("0.018750"),
        Decimal("0.0625"),
        Decimal("0.175"),
    ]

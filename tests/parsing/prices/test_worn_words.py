"""Counts, payments and thresholds whose words were misread or are the trade's own. Wordings invented."""

from __future__ import annotations

from decimal import Decimal

import pytest

from adminer.parsing.money.amounts import find_amounts
from adminer.parsing.money.foreign import find_foreign
from adminer.parsing.offers.groups import group_prices
from adminer.parsing.prices.prices import find_prices
from tests.parsing.pages import advert_text

BODY = ((20, 300, 14, "Sold only while the lot will last, none by telephone"), (20, 330, 14, "and none to dealers."))


@pytest.mark.parametrize("text", ["Matches 6 tor 25c", "Matches 6 f0r 25c", "Matches .6 for 25c"])
def test_a_misread_for_still_counts(text: str) -> None:
    assert [(a.quantity, a.amount) for a in find_amounts(text)] == [(Decimal(6), Decimal("0.25"))]


def test_a_figure_and_a_scrap_before_a_large_price_are_its_count() -> None:
    (large,) = find_prices(advert_text((20, 20, 60, "4 tbs. 19c"), *BODY), [])
    assert large.amount.quantity == 4 and large.start == 0
    (small,) = find_prices(advert_text((20, 20, 14, "4 tbs. 19c"), *BODY), [])
    assert small.amount.quantity == 1


@pytest.mark.parametrize("text", ["$1.25 a Woek", "$1.25 per weak", "$1.25 a\nweek"])
def test_a_misread_week_makes_an_instalment(text: str) -> None:
    lines = [(20, 20 + 20 * i, 14, line) for i, line in enumerate(text.split("\n"))]
    assert [p.role for p in find_prices(advert_text(*lines), [])] == ["instalment"]


@pytest.mark.parametrize("text", ["$3.50 sets it up", "$1 puts this piano in your home", "$5 delivers any piece"])
def test_what_sets_an_article_up_is_paid_down(text: str) -> None:
    assert [p.role for p in find_prices(advert_text((20, 20, 14, text)), [])] == ["down_payment"]


def test_an_instalment_pays_for_what_costs_twice_as_much() -> None:
    advert = advert_text((20, 20, 14, "Iron Range, $1.25 a week."), (20, 38, 14, "Zinc board $1.40."))
    groups = group_prices(advert, find_prices(advert, []))
    assert [[p.text for p in group] for group in groups] == [["$1.25"], ["$1.40"]]


def test_the_worth_of_parcels_sent_free_is_no_price() -> None:
    assert find_prices(advert_text((20, 20, 14, "Carriage paid on parcels over 20/- in value")), []) == []


@pytest.mark.parametrize("text", ["$15 for your old piano", "$15 allowed on\nyour old piano"])
def test_what_an_old_piece_is_taken_for_is_no_price(text: str) -> None:
    lines = [(20, 20 + 20 * i, 14, line) for i, line in enumerate(text.split("\n"))]
    assert find_prices(advert_text(*lines), []) == []


def test_a_speck_between_pounds_and_shillings_parts_nothing() -> None:
    (amount,) = find_foreign("Were £4 .15 08615", sterling=True)[:1]
    assert amount.amount == Decimal("4.75")

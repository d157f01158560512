"""Matching of prices: amounts, places, moneys, items and terms."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from adminer.score.prices import Matched, match_prices
from adminer.score.tally import one_to_one
from tests.score.pages import HERE, THERE, price, true_price, truth

BOXED: dict[str, Any] = {"box": [10, 10, 40, 20]}


def matched(true: dict[str, object], *found: object, money: str = "dollars", **more: object) -> Matched:
    return match_prices(truth(true, **more), tuple(found), money)  # type: ignore[arg-type]  # tests pass literals


def test_a_right_amount_in_another_place_is_wrong_where_the_truth_has_places() -> None:
    assert matched(true_price(1.39, **BOXED), price("1.39", THERE)).prices() == one_to_one(0, 1, 1)
    assert matched(true_price(1.39, **BOXED), price("1.39", HERE)).prices() == one_to_one(1, 1, 1)
    assert matched(true_price(1.39), price("1.39", THERE)).prices() == one_to_one(1, 1, 1)


def test_an_amount_counts_as_often_as_it_is_printed() -> None:
    twice = truth(true_price(0.3), true_price(0.3))
    assert match_prices(twice, (price("0.30"),), "dollars").prices() == one_to_one(1, 1, 2)
    assert match_prices(twice, (price("0.30"),) * 3, "dollars").prices() == one_to_one(2, 3, 2)


def test_extra_prices_are_no_error_where_the_truth_is_incomplete() -> None:
    found = (price("1.39"), price("2.50"))
    assert matched(true_price(1.39), *found).prices() == one_to_one(1, 2, 1)
    assert matched(true_price(1.39), *found, prices_complete=False).prices() == one_to_one(1, 1, 1)


def test_pence_agree_to_the_fourth_place_and_pounds_or_dollars_of_two_countries_are_one_money() -> None:
    elevenpence_halfpenny = true_price(0.04792, currency="AUP")  # 11.5 / 240 = 0.0479166...
    found = price(str(Decimal("11.5") / 240), currency="GBP")
    assert matched(elevenpence_halfpenny, found, money="sterling").prices() == one_to_one(1, 1, 1)
    assert matched(elevenpence_halfpenny, found, money="dollars").prices() == one_to_one(0, 0, 0)
    assert matched(true_price(1.39, currency="CAD"), price("1.39")).prices() == one_to_one(1, 1, 1)
    cut_off = true_price(0.0479, currency="AUP"), true_price(0.0916, currency="GBP")  # 22 pence are 0.091666...
    both = found, price(str(Decimal(22) / 240), currency="GBP")
    assert match_prices(truth(*cut_off), both, "sterling").prices() == one_to_one(2, 2, 2)


def test_equal_amounts_are_paired_by_the_most_alike_items() -> None:
    both = truth(true_price(0.09, "saucer"), true_price(0.09, "fruit dish"))
    tally = match_prices(both, (price("0.09", item="Fruit dish"), price("0.09", item="Saucer")), "dollars").items()
    assert tally == one_to_one(2, 2, 2)


def test_an_item_needs_amount_and_text() -> None:
    assert matched(true_price(1.39, "dinner plate"), price("1.39", item="Dinner plates")).items().right == 1
    assert matched(true_price(1.39, "dinner plate"), price("1.39", item="soup tureen")).items().right == 0
    assert matched(true_price(1.39, "dinner plate"), price("1.93", item="dinner plate")).items().right == 0


def test_terms_count_only_where_a_condition_is_printed_or_claimed() -> None:
    card = true_price(1.39, condition="cardholder")
    assert matched(card, price("1.39", condition="cardholder")).terms() == one_to_one(1, 1, 1)
    assert matched(card, price("1.39")).terms() == one_to_one(0, 0, 1)
    assert matched(true_price(1.39), price("1.39", condition="coupon")).terms() == one_to_one(0, 1, 0)


@given(st.lists(st.integers(1, 4)), st.lists(st.integers(1, 4)))
def test_without_places_the_pairs_are_the_multiset_intersection(true: list[int], found: list[int]) -> None:
    outcome = match_prices(truth(*map(true_price, true)), tuple(price(str(n)) for n in found), "dollars")
    assert len(outcome.pairs) == sum(min(true.count(n), found.count(n)) for n in {*true, *found})
    assert len(outcome.pairs) + len(outcome.missed) == len(true)
    assert len(outcome.pairs) + len(outcome.extra) == len(found)


def test_the_price_without_a_coupon_is_everybodys_and_asks_for_no_condition() -> None:
    coupon = true_price(1.39, condition="without_card", condition_text="without this coupon")
    assert matched(coupon, price("1.39")).terms() == one_to_one(0, 0, 0)
    assert matched(coupon, price("1.39", condition="without_card")).terms() == one_to_one(0, 1, 0)
    card = true_price(1.39, condition="without_card", condition_text="without card")
    assert matched(card, price("1.39", condition="without_card")).terms() == one_to_one(1, 1, 1)
    assert matched(card, price("1.39")).terms() == one_to_one(0, 0, 1)


@pytest.mark.parametrize(
    ("said", "item", "told"),
    [
        ("table, first payment", "oak table", {"role": "down_payment"}),
        ("first payment on dining set", "dining set", {"role": "down_payment"}),
        ("porch swing instalment", "porch swing", {"role": "instalment"}),
        ("postage on boots", "boys' boots", {"role": "postage"}),
        ("suit, from", "suits", {"role": "from"}),
        ("collars per half dozen", "linen collars", {"per_unit": "doz"}),
    ],
)
def test_what_an_item_says_of_its_sum_is_answered_by_role_and_unit(said: str, item: str, told: dict[str, Any]) -> None:
    assert matched(true_price(1.39, said), price("1.39", item=item, **told)).items().right == 1
    assert matched(true_price(1.39, said), price("1.39", item="tureen", **told)).items().right == 0


def test_a_role_or_unit_that_is_another_answers_nothing() -> None:
    instalment = price("1.39", item="rugs", role="instalment")
    assert matched(true_price(1.39, "rug, first payment"), instalment).items().right == 0
    assert matched(true_price(1.39, "egg per dozen"), price("1.39", item="eggs", per_unit="lb")).items().right == 0


def test_an_item_that_is_nothing_but_its_role_is_compared_whole() -> None:
    assert matched(true_price(1.39, "first payment"), price("1.39", item="", role="down_payment")).items().right == 0
    same = price("1.39", item="First payment", role="down_payment")
    assert matched(true_price(1.39, "first payment"), same).items().right == 1

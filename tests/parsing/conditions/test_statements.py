"""Conditions as whole statements: payments, gifts and claims. Wordings: common practice of stores, no source."""

from __future__ import annotations

from adminer.records import ConditionText
from tests.parsing.pages import Line, parse


def _conditions(*lines: Line) -> list[ConditionText]:
    advert = parse(*lines)
    return [*advert.conditions, *(c for offer in advert.offers for c in offer.conditions)]


def _kinds(*lines: Line) -> list[str]:
    return sorted(c.kind for c in _conditions(*lines))


def test_a_line_of_payments_under_a_price_is_the_terms_of_its_offer() -> None:
    kinds = _kinds(
        (40, 40, 24, "Walnut Dining Suite"),
        (40, 90, 40, "$118.50"),
        (40, 150, 16, "$10 DOWN — $2 A WEEK"),
    )
    assert kinds == ["deposit", "instalments"]


def test_each_offer_has_its_own_label_of_payments() -> None:
    kinds = _kinds(
        (40, 40, 20, "Wrist Watch"),
        (40, 80, 40, "$24.50"),
        (40, 140, 16, "50c A WEEK"),
        (440, 40, 20, "Chrome Toaster"),
        (440, 80, 40, "$17.95"),
        (440, 140, 16, "50c A WEEK"),
    )
    assert kinds == ["instalments", "instalments"]


def test_payments_told_in_the_sentence_of_an_entry_are_told_by_its_prices() -> None:
    lines = [
        (40, 40, 14, "No. 201. Oak rocker, leather seat. Price $4.75"),
        (40, 62, 14, "50c cash and 50c per month."),
        (40, 120, 14, "No. 202. Morris chair, oak frame. Price $7.95"),
        (40, 142, 14, "75c cash and 75c per month."),
    ]
    assert _kinds(*lines) == []
    advert = parse(*lines)
    assert {p.role for o in advert.offers for p in o.prices} >= {"down_payment", "instalment"}


def test_a_gift_and_the_purchase_it_needs_are_two_conditions() -> None:
    found = _conditions(
        (40, 40, 20, "Walnut Dining Suite $118.50"),
        (40, 140, 20, "FREE with every purchase of $50.00 or over"),
    )
    assert sorted(c.kind for c in found) == ["free", "with_purchase"]
    assert next(c.value for c in found if c.kind == "with_purchase") == "50.00"


def test_a_free_gift_over_two_lines_is_one_condition() -> None:
    assert _kinds((40, 40, 30, "5000 Bargains"), (40, 80, 30, "Free")) == ["free"]


def test_thresholds_of_a_purchase_are_no_prices() -> None:
    advert = parse((40, 40, 40, "Dinner Plate 29c"), (40, 100, 14, "One with $5, two with $10"))
    assert [p.text for o in advert.offers for p in o.prices] == ["29c"]


def test_the_heading_of_a_coupon_is_no_condition() -> None:
    assert _kinds((40, 40, 14, "DINNER PLATE COUPON"), (40, 500, 14, "Plate 29c"), (40, 530, 14, "Cup 19c")) == []


def test_a_word_that_colours_no_price_is_no_condition() -> None:
    assert _kinds((40, 40, 14, "Reading without"), (40, 62, 14, "the old lamp is a strain")) == []

"""Clauses of trade in words no list foresees. Wordings: common practice of stores, no source."""

from __future__ import annotations

import pytest

from adminer.parsing.conditions.trade_clauses import find_clauses, without_sums
from adminer.parsing.prices.prices import find_prices
from adminer.parsing.terms.terms import find_terms
from adminer.records import CONDITION_KINDS
from tests.parsing.pages import Line, advert_text, parse


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("Bills on account settled quarterly, no interest", "instalments"),
        ("Charge purchases made tomorrow appear on your next statement", "instalments"),
        ("Luxury tax is ours to pay", "tax"),
        ("Jar deposit charged", "deposit"),
        ("We cannot give Owl Stamps on flour", "stamps"),
        ("No orders from abroad", "mail_order"),
        ("Orders from the islands forwarded weekly", "mail_order"),
        ("Railage refunded to buyers of £4", "postage"),
        ("Ring engraved free", "free"),
        ("Farm cheques cashed", "cash"),
        ("Not responsible for misprints", "limit"),
        ("Forty nights' trial given", "guarantee"),
    ],
)
def test_a_clause_that_says_what_is_done_with_a_matter_of_trade_is_a_term(text: str, kind: str) -> None:
    (found,) = find_clauses(advert_text((40, 40, 14, f"Oak rocker. {text}. Walnut desk")), [], [])
    assert (found.kind, found.words) == (kind, text)
    assert found.kind in CONDITION_KINDS


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("Three to a household", "limit"),
        ("All rights reserved", "limit"),
        ("Prices slightly higher in the North", "limit"),
        ("Items and prices good at all Penhallow stores", "limit"),
        ("minimum 50c", "limit"),
        ("Please allow five weeks for delivery", "mail_order"),
        ("Order by Friday noon", "mail_order"),
        ("enclose 15c in stamps", "mail_order"),
        ("10c to cover mailing", "mail_order"),
        ("until the stock is sold", "while_they_last"),
        ("while the lot lasts", "while_they_last"),
        ("Butter and eggs taken in trade", "trade_in"),
        ("Produce same as cash", "trade_in"),
        ("plus bottle deposit", "deposit"),
        ("One-third down", "deposit"),
        ("deposit holds any coat", "deposit"),
        ("60 days same as cash", "instalments"),
        ("Use your Penhallow charge card", "instalments"),
        ("Terms to suit you", "instalments"),
        ("3-yr. motor warranty", "guarantee"),
        ("Ninety days' trial", "guarantee"),
        ("The tax is in the price", "tax"),
        ("Cash on delivery", "cash"),
        ("nothing laid away", "cash"),
        ("Cash value 1/100 of one cent", "coupon"),
        ("All prepaid", "postage"),
        ("By parcel post add 8c", "postage"),
    ],
)
def test_a_stock_wording_is_found_with_its_kind(text: str, kind: str) -> None:
    assert [term.kind for term in find_terms(text)] == [kind]


@pytest.mark.parametrize(
    "text",
    [
        "Express wagon with steel wheels",
        "Gingham checks and plaids",
        "an account of the flood was given to the council by the harbour master",
        "Tax collector's house",
        "Postage stamps",
        "Free parking behind the store",
        "Delivery boy wanted",
    ],
)
def test_a_clause_about_something_else_is_none(text: str) -> None:
    assert find_clauses(advert_text((40, 40, 14, text)), [], []) == []


def test_a_clause_may_run_over_two_lines() -> None:
    text = advert_text((40, 40, 14, "Orders from the islands are to be"), (40, 60, 14, "forwarded weekly"))
    (found,) = find_clauses(text, [], [])
    assert found.words == "Orders from the islands are to be forwarded weekly"


def _conditions(*lines: Line) -> list[tuple[str, str]]:
    advert = parse(*lines)
    return [(c.kind, c.text) for c in (*advert.conditions, *(c for offer in advert.offers for c in offer.conditions))]


def test_a_clause_is_a_condition_of_the_advert_and_no_item() -> None:
    lines: tuple[Line, ...] = ((40, 40, 20, "$4.75"), (40, 70, 14, "Farm cheques cashed."))
    assert _conditions(*lines) == [("cash", "Farm cheques cashed.")]
    assert [offer.item for offer in parse(*lines).offers] in ([], [""])


def test_a_clause_that_leads_to_a_sum_is_what_the_sum_is_for() -> None:
    text = advert_text((40, 40, 14, "Packing charge on small orders: 75c"))
    clauses, prices = find_clauses(text, [], []), find_prices(text, [])
    assert [clause.words for clause in clauses] == ["Packing charge on small orders"]
    assert without_sums(text.text, clauses, prices) == []
    assert without_sums(text.text, clauses, []) == clauses

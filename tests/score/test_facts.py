"""Scores of what is no price, on made-up pages."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from typing import Any

from adminer.records import CONDITION_KINDS, Box
from adminer.score.facts import (
    kinds_not_of,
    score_conditions,
    score_dates,
    score_lines,
    score_regions,
    score_sets,
    score_who_and_where,
)
from adminer.score.found import FoundAdvert, FoundSet, FoundText
from adminer.score.tally import Tally, one_to_one
from tests.score.pages import HERE, THERE, page, true_price, truth

LEFT, RIGHT = Box(0, 0, 100, 200), Box(110, 0, 100, 200)
TWO_ADVERTS: list[dict[str, Any]] = [
    {"box": [0, 0, 100, 200], "retailer": "Penhallow Stores", "valid": {"from": "1949-03-10", "to": "1949-03-12"}},
    {"box": [110, 0, 100, 200], "retailer": "Tidewell Markets", "city": "Osterby"},
]


def test_regions_need_seven_tenths_of_overlap() -> None:
    true = truth(adverts=TWO_ADVERTS)
    cut = Box(110, 0, 100, 130)
    assert score_regions(true, page(adverts=(FoundAdvert(LEFT), FoundAdvert(RIGHT)))) == one_to_one(2, 2, 2)
    assert score_regions(true, page(adverts=(FoundAdvert(LEFT), FoundAdvert(cut)))) == one_to_one(1, 2, 2)
    assert score_regions(true, page(adverts=(FoundAdvert(Box(0, 0, 210, 200)),))) == one_to_one(0, 1, 2)


def test_retailers_and_towns_are_those_of_the_advert_in_that_place() -> None:
    true = truth(adverts=TWO_ADVERTS)
    right = page(adverts=(FoundAdvert(RIGHT, "Tidewell Market", "Osterby"), FoundAdvert(LEFT, "Penhallow")))
    swapped = page(adverts=(FoundAdvert(RIGHT, "Penhallow"), FoundAdvert(LEFT, "Tidewell Markets", "Osterby")))
    assert score_who_and_where(true, right) == (one_to_one(2, 2, 2), one_to_one(1, 1, 1))
    who, where = score_who_and_where(true, swapped)
    assert (who, where) == (one_to_one(0, 2, 2), one_to_one(0, 1, 1))


def test_without_adverts_in_the_truth_any_advert_of_the_page_may_name_the_retailer() -> None:
    true = truth(retailer="Quillfeather's", city="Ferncliff, O.")
    found = page(adverts=(FoundAdvert(LEFT, "Quillfeathers", "Ferncliff"), FoundAdvert(RIGHT)))
    assert score_who_and_where(true, found) == (one_to_one(1, 1, 1), one_to_one(1, 1, 1))
    assert score_who_and_where(true, page()) == (one_to_one(0, 0, 1), one_to_one(0, 0, 1))


def test_validity_needs_both_ends() -> None:
    true = truth(adverts=TWO_ADVERTS)
    good = FoundAdvert(LEFT, valid_from=date(1949, 3, 10), valid_to=date(1949, 3, 12))
    half = FoundAdvert(LEFT, valid_from=date(1949, 3, 10))
    invented = FoundAdvert(RIGHT, valid_from=date(1949, 3, 10), valid_to=date(1949, 3, 10))
    assert score_dates(true, page(adverts=(good,))) == one_to_one(1, 1, 1)
    assert score_dates(true, page(adverts=(half,))) == one_to_one(0, 1, 1)
    assert score_dates(true, page(adverts=(good, invented))) == one_to_one(1, 2, 1)


def test_printed_dates_without_adverts() -> None:
    true = truth(printed_date="THURSDAY, MARCH 10, 1949", date_iso_or_null="1949-03-10")
    day = FoundText("dateline", "Thursday, March 10, 1949", HERE, "1949-03-10", date(1949, 3, 10), date(1949, 3, 10))
    assert score_dates(true, page(dates=(day,))) == one_to_one(1, 1, 1)
    assert score_dates(true, page()) == one_to_one(0, 0, 1)


def test_sets_keep_stated_and_listed_apart() -> None:
    true = truth(
        sets=[{"text": "16-pc. starter", "stated": 16, "listed": [["cup", 4], ["saucer", 4]], "box": [10, 10, 40, 20]}]
    )
    exact = FoundSet(16, (("saucer", 4), ("cup", 4)), "starter set", HERE)
    short = FoundSet(16, (("cup", 4),), "starter set", HERE)
    elsewhere = FoundSet(16, (("cup", 4), ("saucer", 4)), "anything", THERE)
    assert score_sets(true, page(sets=(exact,))) == (one_to_one(1, 1, 1), one_to_one(1, 1, 1))
    assert score_sets(true, page(sets=(short,))) == (one_to_one(1, 1, 1), one_to_one(0, 1, 1))
    assert score_sets(true, page(sets=(elsewhere,))) == (one_to_one(0, 1, 1), one_to_one(0, 1, 1))


def test_a_line_linked_where_none_is_printed_is_wrong() -> None:
    true = truth(lines=[{"text": "Tansy Morn", "line_id": "tansy-morn"}])
    right, wrong = FoundText("tansy-morn", "Tansy Morn", HERE), FoundText("silverthaw", "Silverthaw", HERE)
    assert score_lines(true, page(lines=(right, right))) == one_to_one(1, 1, 1)
    assert score_lines(true, page(lines=(right, wrong))) == one_to_one(1, 2, 1)
    assert score_lines(truth(lines=[]), page(lines=(wrong,))) == one_to_one(0, 1, 0)


def test_one_found_sentence_may_hold_two_terms() -> None:
    true = truth(offers_with_conditions=["Mail orders filled", "postage 10 cents extra"])
    both = FoundText("mail_order", "Mail orders filled, postage 10 cents extra", HERE)
    noise = FoundText("limit", "limit one", THERE)
    assert score_conditions(true, page(conditions=(both, both, noise))) == Tally(1, 2, 2, 2)


def test_the_kind_of_a_condition_counts_where_the_truth_states_it() -> None:
    true = truth(conditions=[{"kind": "limit", "text": "Limit one", "box": [10, 10, 40, 20]}])
    assert score_conditions(true, page(conditions=(FoundText("limit", "LIMIT 1", HERE),))) == one_to_one(1, 1, 1)
    assert score_conditions(true, page(conditions=(FoundText("coupon", "Limit one", HERE),))) == one_to_one(0, 1, 1)


def test_a_condition_under_a_name_that_is_no_kind_of_ours_is_compared_by_its_words() -> None:
    true = truth(conditions=[{"kind": "credit", "text": "No carrying charge on lay-aways", "box": [10, 10, 40, 20]}])
    said = FoundText("instalments", "No carrying charge on lay-aways", HERE)
    beside = FoundText("instalments", "Charge it", HERE)
    assert score_conditions(true, page(conditions=(said,))) == one_to_one(1, 1, 1)
    assert score_conditions(true, page(conditions=(beside,))) == one_to_one(0, 1, 1)


def test_days_of_sale_are_met_by_a_printed_date() -> None:
    true = truth(conditions=[{"kind": "sale_end", "text": "Prices good through May 9"}])
    day = FoundText("validity", "Prices good through May 9", HERE)
    assert score_conditions(true, page(dates=(day,))) == Tally(0, 0, 1, 1)
    assert score_conditions(true, page(dates=(replace(day, kind="dateline"),))) == Tally(0, 0, 0, 1)
    ours = truth(conditions=[{"kind": "limit", "text": "Prices good through May 9"}])
    assert score_conditions(ours, page(dates=(day,))) == Tally(0, 0, 0, 1)


def test_a_label_told_with_its_price_is_judged_there() -> None:
    box = [10, 10, 40, 20]
    true = truth(true_price(1.98, condition="former", condition_text="Reg.", box=box), conditions=[])
    right, wrong = FoundText("former", "reg.", HERE), FoundText("former", "reg.", THERE)
    assert score_conditions(true, page(conditions=(right, wrong))) == Tally(0, 1, 0, 0)
    assert score_conditions(true, page(conditions=(replace(right, kind="comparison"),))) == Tally(0, 1, 0, 0)
    listed = truth(
        true_price(1.98, condition="former", condition_text="Reg.", box=box),
        conditions=[{"kind": "former", "text": "Reg.", "box": box}],
    )
    assert score_conditions(listed, page(conditions=(right,))) == one_to_one(1, 1, 1)


def test_a_kind_that_a_truth_with_names_of_its_own_never_uses_is_compared_by_its_words() -> None:
    mine = {"kind": "free", "text": "We pay freight on orders of $20", "box": [10, 10, 40, 20]}
    true = truth(conditions=[mine, {"kind": "credit", "text": "Easy terms"}])
    unused = kinds_not_of([true])
    assert unused == CONDITION_KINDS - {"free"}
    assert kinds_not_of([truth(conditions=[mine])]) == frozenset()
    freight = FoundText("postage", "We pay freight on orders of $20", HERE)
    assert score_conditions(true, page(conditions=(freight,)), unused) == one_to_one(1, 1, 2)
    assert score_conditions(true, page(conditions=(freight,))) == one_to_one(0, 1, 2)
    beside = FoundText("postage", "F.O.B. mill", HERE)
    assert score_conditions(true, page(conditions=(beside,)), unused) == one_to_one(0, 1, 2)

"""Names whose kind of shop is set apart, names told by their echoes, and talk that is no name; invented names."""

from __future__ import annotations

import pytest

from tests.parsing.house.test_signatures import BODY, PROSE, retailer_of
from tests.parsing.pages import Line


@pytest.mark.parametrize(
    ("head", "name"),
    [
        ([(40, 20, 60, "THORNABY"), (400, 40, 16, "SELF-SERVICE STORES")], "THORNABY SELF-SERVICE STORES"),
        # a line stands between the two in the order of reading
        ([(40, 20, 60, "Thornaby"), (420, 60, 16, "Food Warehouse · Osterby"), (40, 95, 14, "This week")],
         "Thornaby Food Warehouse"),
        ([(40, 20, 60, "Thornaby"), (60, 92, 16, "MARKETS IN OSTERBY AND FERNCLIFF")], "Thornaby MARKETS"),
    ],
)  # fmt: skip
def test_a_logotype_and_its_kind_set_apart_are_one_name(head: list[Line], name: str) -> None:
    assert retailer_of([*head, *BODY]) == name


def test_a_list_of_goods_or_a_slogan_makes_no_name_with_the_kind_beside_it() -> None:
    assert (
        retailer_of(
            [
                (40, 20, 60, "Rugs.Carpets.Curtains Blankets"),
                (60, 92, 16, "Mill"),
                *BODY,
                (40, 900, 14, "9 Mill St., Osterby"),
            ]
        )
        is None
    )
    for said in ("The Big Drapers", "THREE STORES IN OSTERBY"):
        head: list[Line] = [(40, 20, 60, "Thornaby's"), (60, 92, 16, said)]
        assert retailer_of([*head, *BODY]) == "Thornaby's"


def test_the_firm_that_signs_in_full_is_whom_the_short_name_at_the_head_stands_for() -> None:
    head: list[Line] = [(40, 20, 70, "Thornaby's"), (60, 105, 26, "CASH GROCERY")]
    foot: list[Line] = [(40, 900, 24, "ADAM THORNABY & SONS"), (40, 930, 14, "Next to the Creamery, Osterby")]
    assert retailer_of([*head, *BODY, *foot]) == "ADAM THORNABY & SONS"
    other: list[Line] = [(40, 900, 24, "CORBELLE & SONS"), (40, 930, 14, "Next to the Creamery, Osterby")]
    assert retailer_of([*head, *BODY, *other]) == "Thornaby's CASH GROCERY"


@pytest.mark.parametrize(
    ("echo", "name"),
    [("HERON BASKET COUPON", "HERON BASKET"), ("NOW AT HERON BASKET", "HERON BASKET"), ("HERON BASKET, 39c", None)],
)
def test_a_name_on_coupons_or_said_to_sell_is_the_house_s(echo: str, name: str | None) -> None:
    foot: list[Line] = [(40, 900, 24, "HERON BASKET")]
    assert retailer_of([(40, 600, 14, echo), *BODY, *foot]) == name


@pytest.mark.parametrize(
    "words", ["Build it up while you shop!", "PLAIN NEWS FROM THE PLAIN GROCER", "in the Cutlery Stores"]
)
def test_a_sentence_with_a_shop_s_word_in_it_is_no_name(words: str) -> None:
    assert retailer_of([(40, 40, 30, words), *BODY]) is None


@pytest.mark.parametrize(
    ("foot", "name"),
    [
        ([(40, 900, 14, "SPOON GARAGE, R. Thornaby, Prop.")], "SPOON GARAGE"),
        ([(40, 900, 14, "SILAS THORNABY,"), (60, 918, 14, "Brick Store, Heron Center.")], "SILAS THORNABY"),
        ([(40, 900, 30, "Thornaby& Vale")], "Thornaby & Vale"),
        ([(40, 900, 14, "Thornaby Tire Service"), (40, 918, 14, "9 Mill St., Osterby")], "Thornaby Tire Service"),
        ([(40, 900, 24, "THORNABY'S TIRE & BODY")], "THORNABY'S TIRE & BODY"),
        ([(40, 900, 24, "Corbelle Jewebry")], "Corbelle Jewebry"),
        ([(40, 900, 14, "Thornaby Job Press")], None),
        ([(40, 900, 14, "9. Heron Market")], None),
    ],
)
def test_signatures_with_their_owner_trade_or_place(foot: list[Line], name: str | None) -> None:
    assert retailer_of([*PROSE, *foot]) == name


def test_words_joined_by_a_hyphen_are_no_double_name() -> None:
    assert retailer_of([(40, 40, 60, "CASH-RAISING"), *BODY]) is None
    assert retailer_of([(40, 40, 60, "CORBELLE-THORNE"), *BODY]) == "CORBELLE-THORNE"


def test_a_shop_named_after_at_is_found_without_it() -> None:
    assert retailer_of([(40, 40, 30, "at CORBELLE'S Store, Osterby"), *BODY]) == "CORBELLE'S Store"

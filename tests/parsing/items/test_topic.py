"""Adverts in prose: what a price is for when no label stands beside it. Wordings invented."""

from __future__ import annotations

from adminer.parsing import parse_page
from adminer.records import Box
from tests.parsing.pages import NO_NAMES, Line, parse, reading_of


def items(*lines: tuple[int, int, int, str]) -> list[str]:
    return [offer.item for offer in parse(*lines).offers]


def test_goods_at_the_head_of_a_paragraph_name_what_its_closing_price_is_for() -> None:
    assert items(
        (20, 20, 14, "Cottage porch swing, weathered finish, strong"),
        (20, 38, 14, "chains and ceiling hooks go with it. An appropriate"),
        (20, 56, 14, "gift for lady or gentleman."),
        (20, 74, 14, "Price only $2.95"),
    ) == ["Cottage porch swing, weathered finish"]


def test_praise_between_goods_and_their_price_is_passed_over() -> None:
    assert items(
        (20, 20, 40, "Vacuum Cleaner"),
        (20, 70, 24, "with Entirely New Principle"),
        (20, 110, 60, "$15"),
        (20, 190, 14, "Your dealer will show you how it works"),
    ) == ["Vacuum Cleaner"]


def test_the_only_price_of_an_advert_of_one_article_is_for_that_article() -> None:
    assert items(
        (20, 20, 44, "Lindow Tooth Powder"),
        (20, 100, 14, "Nobody who has tried it denies that this powder will"),
        (20, 118, 14, "whiten without injury. It is most thorough."),
        (60, 300, 14, "sample free on request"),
        (60, 330, 14, "All Druggists, 25c."),
    ) == ["Lindow Tooth Powder"]


def test_two_prices_of_one_line_with_a_measure_between_share_the_item() -> None:
    advert = parse((20, 20, 20, "Linen Collars"), (20, 50, 14, "15c the half doz. 28c per doz."))
    assert [(o.item, len(o.prices)) for o in advert.offers] == [("Linen Collars", 2)]


def test_a_heading_without_a_noun_runs_on_into_the_text_under_it() -> None:
    assert items(
        (20, 20, 22, "Solid Gold"),
        (20, 48, 14, "Ring, set with a ruby"),
        (20, 66, 18, "Price, $5.00"),
    ) == ["Solid Gold Ring, set with a ruby"]


def test_a_clean_first_clause_of_a_set_is_not_cut_to_its_number() -> None:
    (item,) = items(
        (20, 20, 14, "42-piece Cottage Sets of thin semi-porcelain, two decorations"),
        (20, 38, 14, "in gray. Special at $6.95"),
    )
    assert item.startswith("42-piece Cottage Sets")


def test_choice_before_a_price_is_no_part_of_the_item() -> None:
    assert items((20, 20, 14, "Odd plates, in many patterns, choice 19c")) == ["Odd plates, in many patterns"]


def test_the_head_of_a_part_of_the_shop_names_no_article_beside_it() -> None:
    lines: list[Line] = [
        (60, 92, 22, "Pantry Shelf"),
        (330, 40, 22, "Muffins"),
        (340, 90, 24, "29¢"),
        *((20, 140 + 22 * i, 14, row) for i, row in enumerate(("Rice . . . . 9¢", "Lentils . . . . 11¢"))),
    ]
    (advert,) = parse_page(reading_of(lines, rules=(Box(320, 70, 200, 3),)), NO_NAMES)
    assert {p.text: o.item for o in advert.offers for p in o.prices}["29¢"] == "Muffins"

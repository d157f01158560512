"""Which prices are one offer's. All invented."""

from __future__ import annotations

from dataclasses import replace

from adminer.parsing.offers.groups import _goods_between, group_prices
from adminer.parsing.prices.prices import find_prices
from adminer.records import Box
from tests.parsing.pages import advert_text, parse


def test_a_grade_in_spaced_capitals_between_two_prices_of_a_row_parts_them() -> None:
    advert = parse(
        (20, 20, 24, "Old Fenwick Brandy"),
        (20, 80, 16, "plain 35/- a case"), (260, 80, 16, "V O 53/- a case"),
        (20, 104, 16, "aged 41/- a case"), (260, 104, 16, "V S O 60/- a case"),
    )  # fmt: skip
    assert {p.text: o.item for o in advert.offers for p in o.prices}["53/-"] == "VO"
    assert {p.text: o.item for o in advert.offers for p in o.prices}["60/-"] == "VSO"


def test_prices_of_display_type_side_by_side_are_each_for_the_name_in_their_cell() -> None:
    advert = parse(
        (20, 60, 14, "Prices good through Saturday at all our stores in town"),
        (20, 100, 16, "DETERGENT"), (20, 152, 14, "giant"), (90, 140, 50, "69¢"),
        (240, 100, 16, "DOG FOOD"), (240, 118, 14, "Rex, tin"), (260, 140, 50, "47¢"),
    )  # fmt: skip
    assert [len(offer.prices) for offer in advert.offers] == [1, 1]


def test_the_price_without_the_card_goes_with_that_of_its_row_though_the_next_row_lost_its_own() -> None:
    advert = parse(
        (20, 20, 14, "PIECE OF THE WEEK"), (300, 20, 14, "WITH CARD"), (560, 20, 14, "WITHOUT CARD"),
        (20, 60, 14, "Dinner Plate"), (600, 60, 14, "29¢"),
        (20, 100, 14, "Tea Cup"), (330, 100, 14, "9¢"), (600, 100, 14, "29¢"),
        (20, 140, 14, "Saucer"), (330, 140, 14, "9¢"), (600, 140, 14, "29¢"),
    )  # fmt: skip
    assert {offer.item: len(offer.prices) for offer in advert.offers} == {"Dinner Plate": 1, "Tea Cup": 2, "Saucer": 2}


def test_goods_before_a_price_in_its_line_part_it_from_a_price_of_another_list_on_its_row() -> None:
    advert = advert_text((20, 40, 14, "Saucer"), (120, 40, 14, "9c"), (220, 40, 14, "Butter Dish ........ 1.79"))
    saucer, dish = find_prices(advert, [])
    assert _goods_between(advert, saucer, dish)


def test_a_scratch_through_a_line_of_type_parts_no_former_price_from_the_price_beside_it() -> None:
    panel = (
        (20, 20, 18, "18-PIECE BEVERAGE SET"), (20, 50, 14, "In avocado"), (20, 66, 14, "or smoke"),
        (140, 56, 40, "$3.97"), (20, 110, 14, "Reg. $5.49"),
    )  # fmt: skip
    stroke = Box(128, 4, 2, 220)
    for name, parted in (panel[0], 1), ((20, 20, 18, "18-PIECE"), 2):  # the stroke is a rule between two panels
        text = advert_text(name, *panel[1:])
        text = replace(text, lines=tuple(replace(line, block=line.number) for line in text.lines))
        now, was = sorted(find_prices(text, []), key=lambda found: found.amount.amount)
        assert len(group_prices(text, [now, replace(was, condition="former")], (stroke,))) == parted

"""Prices in prose: paragraphs, what is said beside the goods, and the words a preposition leads to. Texts invented."""

from __future__ import annotations

import pytest

from adminer.parsing.items.asides import without_asides
from adminer.parsing.items.flow import flow_cost
from adminer.parsing.prices.prices import find_prices
from adminer.parsing.segments.items import cut_segments
from adminer.parsing.text.columns import Column, paragraph_start
from adminer.parsing.text.naming import name_of
from adminer.parsing.text.text import AdvertText
from tests.parsing.pages import advert_text, parse


def prose(*lines: tuple[int, str]) -> AdvertText:
    return advert_text(*((x, 20 + 18 * i, 14, text) for i, (x, text) in enumerate(lines)))


def opening(advert: AdvertText) -> str:
    """Return the line that the paragraph of the last line starts with."""
    start = paragraph_start(advert, Column(advert.lines, ()))
    return advert.printed(advert.line_at(start))


def test_an_indented_line_after_a_sentence_opens_a_paragraph() -> None:
    first = [(20, "A tin kettle leaks before the year is"), (20, "out, and cooks have known it long.")]
    again = [(40, "Our teapot, brown, comes by post for"), (20, "7/9 and goes back free of charge.")]
    assert opening(prose(*first, *again)) == "Our teapot, brown, comes by post for"
    assert opening(prose(*first, (20, again[0][1]), again[1])) == first[0][1]
    assert opening(prose(*first, (40, "Price, 7/9 and"), again[1])) == first[0][1]  # closes what stands over it


def test_capitals_that_run_into_a_line_open_a_notice() -> None:
    one = [(20, "FOR SALE—Oak sideboard, will take"), (30, "$28. Call evenings, 219 Alder.")]
    two = [(20, "SEED POTATOES—Early, hand"), (30, "sorted, $1.10 a bushel.")]
    assert opening(prose(*one, *two)) == "SEED POTATOES—Early, hand"
    assert opening(prose(one[0], (30, "$28 for all of it, and for"), *two)) == one[0][1]  # the sentence goes on


def test_who_a_price_is_for_tells_a_kind_of_what_was_named_before() -> None:
    advert = parse((20, 20, 14, 'Silk "Larkspur." three pairs guaranteed three months. for men $2—for women $3.'))
    assert [o.item for o in advert.offers] == ['Silk "Larkspur, three pairs', 'Silk "Larkspur, three pairs women']
    seats = parse((20, 20, 14, "Tickets for men $2—for women $3."))
    assert [o.item for o in seats.offers] == ["Tickets for men", "Tickets women"]


def test_lines_set_in_under_each_head_are_no_paragraphs() -> None:
    hanging = [(20, "Teapots, brown."), (40, "Six cups. Each 9d."), (40, "Egg Cups. Each 2d."), (40, "Jugs. Each 4d.")]
    assert opening(prose(*hanging)) == "Teapots, brown."


@pytest.mark.parametrize(
    "aside",
    [
        "Weight, 11 pounds",
        "Shipping weight, 9 lbs",
        "Carriage paid",
        "Postage extra",
        "State length wanted",
        "Balance before despatch",
        "Reduced",
    ],
)
def test_what_is_said_of_weight_and_carriage_names_nothing(aside: str) -> None:
    advert = prose((20, f"Table Lamp, brass. {aside}. Each 85c"))
    texts = [s.text for s in cut_segments(advert, [], find_prices(advert, []))]
    kept = [s.text for s in without_asides(cut_segments(advert, [], find_prices(advert, [])))]
    assert aside.lower() in " ".join(texts).lower()
    assert not any(aside.lower() in text.lower() for text in kept)
    assert "Table Lamp, brass" in kept


def test_goods_with_a_weight_keep_their_place() -> None:
    advert = prose((20, "Weight Scales, kitchen. Post Boxes, free standing"))
    segments = cut_segments(advert, [], [])
    assert [s.text for s in without_asides(segments)] == ["Weight Scales, kitchen", "Post Boxes, free standing"]


def test_the_old_one_handed_in_is_not_what_a_price_is_for() -> None:
    advert = advert_text((20, 40, 18, "Food Mixer"), (20, 80, 14, "Your old one"), (200, 80, 14, "$12.00"))
    prices = find_prices(advert, [])
    segments = cut_segments(advert, [(p.start, p.end) for p in prices], prices)
    assert [s.text for s in without_asides(segments)] == ["Food Mixer"]


def test_a_weight_before_the_price_leaves_it_to_the_article() -> None:
    advert = parse(
        (20, 20, 14, "No. 41. Fluted Tumblers. Ground foot, fire"),
        (20, 38, 14, "polished edges. Hold 9 ounces. Weight, per"),
        (20, 56, 14, "dozen, 8 pounds. Price, per dozen, 36c"),
    )
    assert [o.item for o in advert.offers] == ["Fluted Tumblers"]


def test_a_new_sentence_after_a_price_is_not_what_it_is_for() -> None:
    advert = prose((20, "or in tan 17/9. A tin of cream goes with it, 7d."))
    (price, *_) = find_prices(advert, [])
    after = next(s for s in cut_segments(advert, [(price.start, price.end)], [price]) if "cream" in s.text)
    assert flow_cost(advert, [price], after, [price], [after])[0] > 1


def test_what_a_price_is_said_to_be_for_stands_after_it() -> None:
    advert = prose((20, "asked half-a-crown for teapots of that make"))
    (price,) = find_prices(advert, [])
    after = next(s for s in cut_segments(advert, [(price.start, price.end)], [price]) if s.goods)
    assert flow_cost(advert, [price], after, [price], [after])[0] < 0.5


def test_goods_that_a_preposition_leads_to_are_not_what_is_sold() -> None:
    text = "If you would like to see it on your own table we will mail you a single pitcher"
    assert name_of(text) == "single pitcher"
    assert name_of("You will find it at home on every table") == "table"

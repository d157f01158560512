"""Panels of an advert: names over pictures, descriptions, ruled grids, items under their prices. Layouts invented."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

from adminer.parsing import parse_page
from adminer.parsing.items.costs import _place_cost
from adminer.parsing.prices.prices import find_prices
from adminer.parsing.segments.items import cut_segments
from adminer.records import Advert, Box
from tests.parsing.pages import NO_NAMES, Line, advert_text, parse, reading_of


def items(advert: Advert) -> dict[str, str]:
    return {p.text: o.item for o in advert.offers for p in o.prices}


def panel(x: int, name: str, tells: str, price: str) -> tuple[Line, ...]:
    return (x, 40, 30, name), (x, 180, 14, tells), (x + 20, 210, 70, price)


def test_the_name_over_the_picture_is_the_item_not_the_small_type_under_it() -> None:
    advert = parse(
        *panel(20, "Chrome Dinette", "Plastic top table in gray", "$59.88"),
        *panel(420, "Platform Rocker", "Solid comfort, tapestry cover", "$33.88"),
    )
    assert items(advert) == {"$59.88": "Chrome Dinette", "$33.88": "Platform Rocker"}


def test_a_name_that_begins_right_of_a_price_is_that_of_the_next_panel() -> None:
    text = advert_text((20, 40, 16, "ROASTER"), (300, 40, 16, "ELECTRIC IRON"), (200, 70, 40, "79c"))
    (price,) = find_prices(text, [])
    own, next_panel = cut_segments(text, [(price.start, price.end)], [price])
    place = Box(200, 40, 80, 16)
    over = replace(own, first=place, last=place, flat=place)
    cost, aside, right_over = (_place_cost(price, s, text.body_px)[0] for s in (own, next_panel, over))
    assert right_over < cost < aside + 0.2
    assert aside > right_over + 0.5


def test_words_under_a_price_that_name_no_goods_are_not_its_item() -> None:
    advert = parse(
        *((40, 40, 18, "Panorama"), (400, 40, 18, "Wayfarer")),
        *((40, 180, 40, "$4.95"), (400, 180, 40, "$3.95")),
        *((40, 232, 16, "Closed Mondays"), (400, 232, 16, "Open evenings")),
    )
    assert items(advert) == {"$4.95": "Panorama", "$3.95": "Wayfarer"}


def test_a_heading_over_several_names_takes_no_price_from_them() -> None:
    advert = parse(
        (120, 20, 40, "Glassware for the table"),
        (40, 80, 16, "Water Tumbler"), (60, 104, 40, "10¢"),
        (300, 80, 16, "Ice-lip Pitcher"), (320, 104, 40, "69¢"),
        (560, 80, 16, "Salad Bowl"), (580, 104, 40, "25¢"),
    )  # fmt: skip
    assert items(advert) == {"10¢": "Water Tumbler", "69¢": "Ice-lip Pitcher", "25¢": "Salad Bowl"}


def grid(*rules: Box) -> Advert:
    lines: list[Line] = [
        (20, 40, 14, "Garden Peas"), (20, 104, 14, "can"), (60, 84, 33, "29¢"),
        (220, 40, 14, "Pork and Beans"), (220, 58, 14, "1-lb. can"), (230, 84, 33, "10¢"),
    ]  # fmt: skip
    return parse_page(reading_of(lines, rules=rules), NO_NAMES)[0]


def test_prices_on_both_sides_of_an_upright_rule_are_two_offers() -> None:
    assert len(grid(Box(200, 20, 2, 160)).offers) == 2
    assert len(grid(Box(200, 30, 2, 100)).offers) == 2  # a card hardly higher than its name and price
    assert len(grid(Box(200, 70, 2, 60)).offers) == len(grid().offers) == 1


def test_items_stand_under_their_prices_where_they_do_so_everywhere() -> None:
    lines: list[Line] = []
    for row, names in enumerate((("Strainer", "Oilcloth"), ("Cake Tin", "Bread Knife"), ("Tumbler", "Window Shade"))):
        for column, name in enumerate(names):
            lines += [(40 + 380 * column, 60 + 130 * row, 50, f"{row + 1}{column + 1}c")]
            lines += [(40 + 380 * column, 116 + 130 * row, 18, name)]
    found = items(parse(*lines))
    assert found == {
        "11c": "Strainer", "12c": "Oilcloth", "21c": "Cake Tin", "22c": "Bread Knife", "31c": "Tumbler",
        "32c": "Window Shade",
    }  # fmt: skip


def test_a_count_of_packages_after_leaders_belongs_to_the_price() -> None:
    advert = parse((20, 20, 14, "Macaroni ........ 4 pkgs. 25c"), (20, 44, 14, "Juice Oranges ...... 8-lb. bag 59c"))
    assert [(o.item, o.prices[0].per_quantity) for o in advert.offers] == [
        ("Macaroni", Decimal(4)),
        ("Juice Oranges", Decimal(1)),
    ]


def test_a_count_of_pieces_and_the_name_of_a_dime_store_are_no_prices() -> None:
    advert = parse(
        (20, 20, 14, "Varley's 5c to $1.00 Store"),
        (20, 60, 14, "Tea Bags, 48 ct. 49¢"),
        (20, 90, 14, "Dog Food 39¢"),
    )
    assert [str(p.amount) for o in advert.offers for p in o.prices] == ["0.49", "0.39"]


def test_a_stroke_taken_for_a_rule_inside_a_line_parts_nothing() -> None:
    lines: list[Line] = [
        (20, 20, 14, "Custard Cups, six for 29c"),
        (20, 38, 14, "Enamel Kettle, Price"),
        (20, 56, 14, "$1.05"),
    ]
    stroke = Box(60, 10, 2, 60)
    found = items(parse_page(reading_of(lines, rules=(stroke,)), NO_NAMES)[0])
    assert found == {"six for 29c": "Custard Cups", "$1.05": "Enamel Kettle"}


def test_a_price_that_qualifies_the_goods_after_it_is_theirs() -> None:
    assert items(parse((20, 20, 14, "Makers of Tablets and 5c Toilet papers"))) == {"5c": "Toilet papers"}


def bulleted(mark: str) -> dict[str, str]:
    return items(
        parse(
            (20, 40, 26, "Swirl-Master 70"),
            (20, 80, 16, f"{mark}Seven speeds, one dial"),
            (20, 104, 16, f"{mark}Mixing bowl and measuring cup"),
            (20, 156, 16, "Reg. $9.95"),
            (240, 126, 50, "$5.88"),
        )
    )


def test_bullets_tell_of_the_name_over_them() -> None:
    assert bulleted("• ") == {"$9.95": "Swirl-Master 70", "$5.88": "Swirl-Master 70"}


def labelled_panels(rules: tuple[Box, ...]) -> Advert:
    lines: list[Line] = [
        (20, 40, 26, "Starter Set"), (20, 80, 16, "four place settings"), (20, 150, 16, "Reg. $9.99"),
        (200, 130, 50, "$5.99"),
        (420, 40, 26, "Hair Dryer"), (420, 80, 16, "three heats"), (420, 150, 16, "List $19.95"),
        (640, 130, 50, "$11.44"),
    ]  # fmt: skip
    words = reading_of(lines, rules=rules)
    blocks = (0, 1, 2, 3, 4, 5, 6, 7)
    parted = tuple(replace(w, block=blocks[w.line]) for w in words.words)
    return parse_page(replace(words, words=parted), NO_NAMES)[0]


def test_a_former_price_with_its_label_stays_on_its_side_of_an_upright_rule() -> None:
    found = labelled_panels((Box(400, 20, 3, 300),))
    together = [sorted(p.text for p in o.prices) for o in found.offers]
    assert sorted(together) == [["$11.44", "$19.95"], ["$5.99", "$9.99"]]


def test_a_name_left_of_a_tall_price_is_not_the_name_over_the_next_one() -> None:
    rows = (
        ("Pineapple Juice", 592, "46-oz. can", 630, "27¢", 914, 582, 75),
        ("Grapefruit Sections", 670, "No. 303 can", 708, "17¢", 921, 659, 76),
        ("Red Kidney Beans", 749, "300 cans", 786, "3 for 29¢", 822, 749, 54),
        ("Mandarin Oranges", 827, "11-oz. can", 864, "23¢", 913, 815, 75),
    )
    lines: list[Line] = []
    for name, y, size, under, price, left, top, height in rows:
        lines += [(524, y, 22, name), (524, under, 17, size), (left, top, height, price)]
    found = items(parse(*lines))
    assert [name in found[price] for name, _, _, _, price, *_ in rows] == [True] * 4


def test_a_price_level_with_the_white_between_two_lines_is_of_the_name_they_make() -> None:
    found = items(
        parse(
            (40, 40, 14, "Oval Platter"), (300, 40, 14, "$1.99"),
            (40, 70, 14, "Round Vegetable"), (40, 88, 14, "Bowl"), (300, 79, 14, "1.49"),
            (40, 118, 14, "Covered Sugar"), (300, 118, 14, "1.59"),
            (360, 82, 14, "Begin your table now"),
        )
    )  # fmt: skip
    assert found["1.49"] == "Round Vegetable Bowl"

"""Running text and headed paragraphs: which words since the last price name what a price is for. Texts invented."""

from __future__ import annotations

from dataclasses import replace

from adminer.parsing import parse_page
from adminer.parsing.items.entries import _entry
from adminer.parsing.items.stretches import Stretch
from adminer.parsing.segments.items import cut_segments
from adminer.parsing.text.columns import Column
from adminer.records import Advert, Box
from tests.parsing.pages import NO_NAMES, Line, advert_text, parse, reading_of


def items(advert: Advert) -> dict[str, str]:
    return {p.text: o.item for o in advert.offers for p in o.prices}


def whys(advert: Advert) -> dict[str, str]:
    return {p.text: o.why for o in advert.offers for p in o.prices}


def paragraph(*texts: str, x: int = 20, y: int = 20) -> list[Line]:
    return [(x, y + 22 * i, 14, text) for i, text in enumerate(texts)]


def test_in_a_paragraph_each_price_is_for_the_goods_named_since_the_one_before() -> None:
    advert = parse(
        *paragraph(
            "Open stock cups and saucers, odd lots, 25c the pair. Odd",
            "plates, values to $1.00, choice 19c. Water Sets, jug and",
            "six tumblers, in the fern cutting, $1.98 the set. Bread",
            "Boxes, white japanned, $1.10. Tea Kettles, five quart, 89c.",
        )
    )
    assert items(advert) == {
        "25c": "Open stock cups and saucers",
        "$1.00": "Odd plates",
        "19c": "Odd plates",
        "$1.98": "Water Sets, jug and six tumblers",
        "$1.10": "Bread Boxes, white japanned",
        "89c": "Tea Kettles, five quart",
    }
    assert "since the price before" in whys(advert)["89c"]


def test_a_size_alone_goes_with_the_goods_named_before_it() -> None:
    found = items(
        parse(
            *paragraph(
                "Aluminum Sauce Pans, three sizes, 1-quart 49c, 2-quart 69c,",
                "3-quart 85c. Galvanized Tubs, medium size, 95c; large size,",
                "$1.15. Window Shades, dark green, 65c.",
            )
        )
    )
    assert found["69c"] == "Aluminum Sauce Pans 2-quart"
    assert found["85c"] == "Aluminum Sauce Pans 3-quart"
    assert found["$1.15"] == "Galvanized Tubs large size"
    assert found["65c"] == "Window Shades, dark green"


def test_two_prices_with_nothing_named_between_are_for_the_same() -> None:
    found = items(
        parse(
            *paragraph(
                "Huck Towels, hemstitched, regularly 50c, each 35c, or",
                "three for $1.00. Crash Toweling 12c the yard. Cups and",
                "Saucers at $1.39 each set or $7.50 the half dozen.",
            )
        )
    )
    assert found["50c"] == found["35c"] == found["three for $1.00"] == "Huck Towels, hemstitched"
    assert found["$1.39"] == "Cups and Saucers"
    assert found["$7.50"].startswith("Cups and Saucers")


def test_a_former_price_stays_in_its_own_sentence() -> None:
    advert = parse(
        *paragraph(
            "Bread Mixers, four-loaf size, usually $2.25,",
            "tomorrow $1.67. Dish Pans, seventeen quart, 69c.",
        )
    )
    assert items(advert) == {
        "$2.25": "Bread Mixers, four-loaf size",
        "$1.67": "Bread Mixers, four-loaf size",
        "69c": "Dish Pans, seventeen quart",
    }


def test_a_price_beside_another_column_leaves_the_sentence_of_its_neighbour_whole() -> None:
    left = paragraph("Water Sets, jug and six tumblers, in the", "fern cutting, $1.98 the set.")
    right = paragraph("four napkins, blue or rose borders, $1.19.", "Footed Candy Jars, 89c.", x=420)
    assert items(parse(*left, *right))["$1.98"] == "Water Sets, jug and six tumblers"


def headed(*names: str, x: int = 20) -> list[Line]:
    lines: list[Line] = []
    for i, name in enumerate(names):
        lines += [
            (x + 40, 20 + 130 * i, 22, name),
            *paragraph(
                "Two bread boards and three drawers,", "glass doors above. Easily kept clean.", x=x, y=52 + 130 * i
            ),
            (x, 100 + 130 * i, 14, "Price, only"),
            (x + 260, 100 + 130 * i, 14, f"${4 + i}.75"),
        ]
    return lines


def test_the_heading_of_a_description_with_one_price_names_what_it_is_for() -> None:
    advert = parse(*headed("Kitchen Cabinet", "Pantry Cupboard", "Library Table"))
    assert items(advert) == {"$4.75": "Kitchen Cabinet", "$5.75": "Pantry Cupboard", "$6.75": "Library Table"}
    assert "heading" in whys(advert)["$4.75"]


def test_a_title_names_what_the_sentence_with_the_first_price_only_tells_of() -> None:
    text = advert_text(
        (20, 20, 18, "Kitchen Cabinet"), (20, 44, 14, "It has drawers that will hold cups and has been made of oak")
    )
    head, told = cut_segments(text, [], [])
    stretch = Stretch(
        Column((text.lines[1],), (text.lines[0],)),
        (told,),
        head,
        None,
        bulleted=False,
        line=1,
        inline=True,
        label=False,
    )
    entry, after = _entry(stretch, {}, alone=False), _entry(replace(stretch, follows=0), {}, alone=False)
    assert entry is not None
    assert entry.item is head
    assert after is None or after.item is told  # a price further down may be for what is named at it


def test_a_heading_over_several_prices_names_none_of_them() -> None:
    prose = "Crash Toweling, bleached, 12c the yard. Huck Towels, 35c.", "Luncheon Sets of five pieces, $1.19."
    found = items(parse((100, 20, 24, "Linens"), *paragraph(*prose, y=60)))
    assert found == {
        "12c": "Crash Toweling, bleached",
        "35c": "Huck Towels",
        "$1.19": "Luncheon Sets of five pieces",
    }


def test_sizes_in_rows_are_sizes_of_what_the_heading_names() -> None:
    found = items(
        parse(
            (60, 20, 20, "Oak Extension Table"),
            *paragraph("This handsome table is made of oak,", "with carved feet and a heavy pedestal.", y=50),
            (20, 98, 14, "Price, 6-foot length"), (300, 98, 14, "$9.85"),
            (20, 120, 14, "Price, 8-foot length"), (300, 120, 14, "$11.40"),
        )
    )  # fmt: skip
    assert found == {"$9.85": "Oak Extension Table 6-foot length", "$11.40": "Oak Extension Table 8-foot length"}


def test_a_rule_between_heading_and_text_parts_them() -> None:
    lines: list[Line] = [
        (60, 20, 20, "Oak Rocker"),
        *paragraph("Rolled edge, heavy ticking.", y=70),
        (40, 110, 40, "$9.85"),
    ]
    apart = parse_page(reading_of(lines, rules=(Box(0, 54, 400, 2),)), NO_NAMES)[0]
    assert items(apart)["$9.85"] != "Oak Rocker"
    assert items(parse(*lines))["$9.85"] == "Oak Rocker"


def test_a_price_far_right_in_its_line_is_for_the_label_of_its_row() -> None:
    found = items(
        parse(
            *paragraph("Saucers, fruits and soups are sold singly."),
            (20, 42, 14, "Covered casserole . . . . $3.09"),
            (20, 64, 14, "Gravy boat . . . . . . . $2.19"),
        )
    )  # fmt: skip
    assert found == {"$3.09": "Covered casserole", "$2.19": "Gravy boat"}


def test_a_line_that_says_price_closes_the_paragraph_whose_first_goods_it_is_for() -> None:
    found = items(
        parse(
            *paragraph(
                "No. C-706. REFRIGERATOR BARGAIN. High grade, made of",
                "solid ash, white enamel lined, with wire shelves.",
                "Price, only $12.65",
            )
        )
    )
    assert found == {"$12.65": "REFRIGERATOR"}


def test_a_heading_of_a_stuff_runs_on_into_the_goods_that_open_the_text() -> None:
    found = items(
        parse(
            (40, 20, 22, "Solid Gold"),
            *paragraph("Ring, plain band, set with a garnet or", "an opal. An acceptable gift.", y=52),
            (40, 100, 14, "Price, $5.00"),
        )
    )
    assert found["$5.00"].startswith("Solid Gold Ring")


def test_the_size_of_a_can_is_part_of_the_name_and_no_order_number() -> None:
    found = items(parse((20, 20, 20, "Tomatoes"), (20, 46, 16, "No. 303 cans"), (220, 14, 60, "2 for 27¢")))
    assert found == {"2 for 27¢": "Tomatoes No. 303 cans"}


def test_sizes_with_a_price_each_are_offers_of_their_own() -> None:
    found = items(
        parse(*paragraph("First since the war, saucepans with covers.", "1-qt. $1.15, 2-qt. $1.45, 3-qt. $1.75."))
    )
    assert found["$1.15"] != found["$1.45"]
    assert found["$1.45"].endswith("2-qt")
    assert "saucepans" in found["$1.75"]


def test_in_a_list_of_rows_the_label_of_a_row_wins_over_a_row_whose_price_was_not_read() -> None:
    rows = "Granulated Sugar. 10 lbs.", "Hard Wheat Flour. 24-lb. sack 63c", "Corn Meal. 5-lb. sack 14c", "Beans 19c"
    found = items(parse(*paragraph(*rows)))
    assert "Hard Wheat Flour" in found["63c"]


def test_a_value_and_its_sale_price_close_the_paragraph_over_them_under_the_head_of_a_department() -> None:
    advert = parse(
        (43, 20, 17, "Shoe Department"),
        *paragraph("Girls' Lace Boots, patent", "tip, spring heel, width C", y=50),
        (20, 94, 14, "Value $3.25"),
        (180, 94, 14, "Sale $2.60"),
        *paragraph("Felt House Slippers, fur", "bound, leather soles, all", y=126),
        (20, 170, 14, "Value $1.10"),
        (180, 170, 14, "Sale 79c"),
    )
    assert items(advert) == {
        "$3.25": "Girls' Lace Boots, patent tip",
        "$2.60": "Girls' Lace Boots, patent tip",
        "$1.10": "Felt House Slippers, fur bound",
        "79c": "Felt House Slippers, fur bound",
    }


def test_a_way_to_pay_between_two_prices_names_nothing() -> None:
    found = items(
        parse(
            *paragraph(
                "Hall Chair, cane seat, cash price $8.25; on time,",
                "$9.60. Oak Table, cash price $7.15; easy terms, $8.70.",
            )
        )
    )
    assert found["$9.60"] == found["$8.25"]
    assert found["$8.70"] == found["$7.15"]


def test_a_word_broken_at_the_end_of_a_line_goes_on_though_the_next_line_is_set_a_little_smaller() -> None:
    found = items(
        parse(
            (20, 20, 17, "Four bedrooms furnished com-"),
            (20, 44, 14, "plete for $87.00; $7.00 cash, $1.25 a week."),
        )
    )
    assert set(found.values()) == {"Four bedrooms furnished complete"}


def test_a_price_that_begins_a_line_with_for_goes_with_the_sentence_before_it() -> None:
    found = items(
        parse(*paragraph("Velvet Rug. 6x9, a trifle soiled", "or shopworn, instead of $21.50,", "for $14.25."))
    )
    assert found["$14.25"] == found["$21.50"] == "Velvet Rug"


def test_the_place_that_a_colon_ends_is_not_what_is_sold_there() -> None:
    found = items(
        parse(
            *paragraph(
                "Film brought today is ready tomorrow noon, 9c. Soda",
                "bar: Chocolate sundae 39c, ham sandwich and pie 65c.",
            )
        )
    )
    assert found["39c"] == "Chocolate sundae"


def test_complete_or_otherwise_names_nothing_but_the_set_before_it() -> None:
    found = items(
        parse(
            *paragraph(
                "Old Mill 45-piece service for eight, $54.50 complete",
                "($61.20 by the piece). Every piece open stock.",
                "16-piece starter set $5.99, otherwise $7.49.",
            )
        )
    )
    assert found["$61.20"] == found["$54.50"]
    assert "starter set" in found["$7.49"]


def test_a_term_of_trade_over_a_price_is_not_what_it_is_for() -> None:
    found = items(
        parse(
            (40, 20, 18, "NO DEALERS- NO LAY-AWAYS- NO RAIN CHECKS"),
            (60, 50, 60, "$277"),
            (40, 130, 14, "Love seat in rust plaid"),
        )
    )
    assert found == {"$277": "Love seat in rust plaid"}


def test_the_line_under_a_number_of_the_catalogue_names_the_article_whatever_tells_of_it() -> None:
    advert = parse(
        (130, 20, 14, "No. 2140"), (84, 44, 18, "Arcadia Solitaire"), (10, 68, 18, "Ring, blue stone, white gold"),
        (100, 92, 18, "top"), (110, 120, 36, "$47.50"), (60, 164, 14, "$9.50 Down, $4.75 a Month"),
        (460, 20, 14, "No. 3008"), (440, 44, 18, "Thin Model Watch"), (430, 68, 18, "17 jewels, 20-year case"),
        (460, 120, 36, "$24.90"), (430, 164, 14, "$4.98 Down, $2.49 a Month"),
    )  # fmt: skip
    assert items(advert) | {"$9.50": "", "$4.75": "", "$4.98": "", "$2.49": ""} == {
        "$47.50": "Arcadia Solitaire", "$24.90": "Thin Model Watch", "$9.50": "", "$4.75": "", "$4.98": "", "$2.49": "",
    }  # fmt: skip


def test_what_is_said_over_a_list_is_no_part_of_its_first_row() -> None:
    advert = parse(
        (20, 20, 14, "On sale all fifteen weeks. No stamps on completer pieces"),
        (20, 38, 14, "14-in. Platter $1.99"), (20, 56, 14, "Covered Sugar $1.49"), (20, 74, 14, "Creamer 99¢"),
    )  # fmt: skip
    assert items(advert)["$1.99"] == "14-in. Platter"


def test_a_numbered_heading_names_the_price_under_what_tells_of_it_though_others_stand_over_several() -> None:
    text = advert_text((40, 20, 14, "No. 2140"), (20, 40, 18, "Arcadia Solitaire"), (20, 64, 18, "Blue white, in gold"))
    head, told = cut_segments(text, [], [])[-2:]
    column = Column((text.lines[2],), (text.lines[1],))
    stretch = Stretch(column, (told,), head, None, bulleted=False, line=2, inline=False, label=False)
    entry = _entry(stretch, {}, alone=False)
    assert head.numbered
    assert entry is not None
    assert entry.item is head
    assert _entry(replace(stretch, head=replace(head, numbered=False)), {}, alone=False) is None

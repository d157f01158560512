"""Names with small type under them: what the small type tells, and what of it belongs to the name. All invented."""

from __future__ import annotations

from adminer.parsing import parse_page
from adminer.records import Advert
from tests.parsing.pages import NO_NAMES, Line, parse, reading_of

BODY: tuple[Line, ...] = tuple((20, 700 + 16 * n, 11, "Open every evening until nine") for n in range(6))


def items(advert: Advert) -> dict[str, str]:
    return {p.text: o.item for o in advert.offers for p in o.prices}


def test_the_goods_that_small_type_speaks_of_are_parts_of_the_article_named_over_it() -> None:
    advert = parse(
        (20, 40, 18, "Whirlaway Sharpener"), (20, 62, 11, "Steel gears, wall bracket and screws"),
        (20, 75, 11, "Leather strap for the bench"), (160, 92, 50, "$3.95"),
        (420, 240, 18, "Bench Grinder"), (420, 262, 11, "Cast iron, with tool rest"), (560, 292, 50, "$4.95"),
        (420, 440, 18, "Bench Grinder"), (420, 462, 11, "Cast iron, with tool rest"), (560, 482, 50, "$5.95"),
        (20, 440, 18, "Nail Puller"), (20, 462, 11, "Forged, with hickory handle"), (160, 482, 50, "$1.95"),
        *BODY,
    )  # fmt: skip
    assert items(advert)["$3.95"] == "Whirlaway Sharpener"


def test_the_head_of_a_section_takes_no_price_from_the_goods_under_it() -> None:
    advert = parse(
        (20, 40, 18, "Cold Counter"), (20, 62, 11, "Large Eggs"), (60, 80, 40, "59¢"),
        (20, 140, 11, "Creamery Butter"), (60, 158, 40, "79¢"),
        *BODY,
    )  # fmt: skip
    assert items(advert) == {"59¢": "Large Eggs", "79¢": "Creamery Butter"}


def test_brand_and_pack_in_small_type_under_a_name_belong_to_it() -> None:
    advert = parse(
        (20, 40, 18, "PUMPKIN"), (20, 62, 11, "Homestead, fancy, tall can, makes two pies"), (60, 80, 40, "15¢"),
        (420, 40, 18, "MUSLIN SHEETS"), (420, 62, 11, "81 x 108, fine thread count"), (460, 80, 40, "98¢"),
        *BODY,
    )  # fmt: skip
    assert items(advert) == {"15¢": "PUMPKIN Homestead, fancy, tall can", "98¢": "MUSLIN SHEETS 81 x 108"}


def test_the_next_row_of_a_list_is_no_size_of_the_row_over_it() -> None:
    lines: list[Line] = [
        (20, 40, 14, "Pork Sausage"), (200, 40, 14, "47c"), (20, 58, 11, "Smoked Hams 10 lb."), (200, 58, 14, "59c"),
        (20, 76, 14, "Frankfurters"), (200, 76, 14, "39c"),
    ]  # fmt: skip
    (advert,) = parse_page(reading_of(lines), NO_NAMES)
    assert items(advert)["47c"] == "Pork Sausage"


def test_a_card_beside_whose_name_the_price_stands_keeps_brand_and_pack_but_no_sizes_to_choose_from() -> None:
    lines: list[Line] = [
        (20, 40, 14, "CORN MEAL"), (20, 60, 11, "Hollyhock, 5-lb. sack"), (240, 34, 24, "23¢"),
        (20, 140, 14, "HOUSE FROCKS"), (20, 160, 11, "Bright prints, 14 to 44"), (240, 134, 24, "89¢"),
        *BODY,
    ]  # fmt: skip
    assert items(parse(*lines)) == {"23¢": "CORN MEAL Hollyhock, 5-lb. sack", "89¢": "HOUSE FROCKS"}


def test_a_name_over_a_sentence_hardly_smaller_is_a_heading() -> None:
    lines: list[Line] = [
        (20, 20, 20, "Painted Garden Lanterns"),
        (20, 44, 16, "Wrought iron base, with a"),
        (20, 64, 16, "frosted chimney."),
        (20, 90, 40, "$3.29"),
    ]
    assert [o.item for o in parse(*lines).offers] == ["Painted Garden Lanterns"]


def test_a_head_in_capitals_under_a_row_is_no_size_of_its_piece() -> None:
    lines: list[Line] = []
    for i, (piece, sum_) in enumerate((("Salad plate", "2.00"), ("Cup and saucer", "4.25"))):
        lines += [(20, 40 + 30 * i, 24, piece), (420, 40 + 30 * i, 24, sum_)]
    lines += [(20, 104, 18, "SERVING PIECES"), (20, 132, 24, "Open vegetable"), (420, 132, 24, "6.25")]
    assert {p.text: o.item for o in parse(*lines).offers for p in o.prices}["4.25"] == "Cup and saucer"


def test_a_size_set_by_itself_between_a_name_and_its_price_belongs_to_the_name() -> None:
    advert = parse(
        (60, 40, 18, "HILLSIDE PEARS"), (60, 62, 11, "Whole or sliced, light syrup"), (80, 86, 24, "No. 2½ tins"),
        (60, 116, 60, "89¢"),
        *BODY,
    )  # fmt: skip
    assert items(advert) == {"89¢": "HILLSIDE PEARS No. 2½ tins"}


def test_a_size_before_the_price_of_the_next_article_belongs_to_that_one() -> None:
    advert = parse(
        (20, 40, 14, "Shortening, pure"), (300, 40, 14, "69¢"), (20, 64, 14, "Molasses"), (200, 64, 14, "3-lb. can"),
        (300, 64, 14, "55¢"), (20, 88, 14, "Honey, strained"), (300, 88, 14, "39¢"),
        *BODY,
    )  # fmt: skip
    assert items(advert) == {"69¢": "Shortening, pure", "55¢": "Molasses 3-lb", "39¢": "Honey, strained"}


def test_a_pack_told_in_two_lines_of_small_type_beside_the_price_belongs_to_the_name() -> None:
    advert = parse(
        (20, 40, 24, "SUGAR"), (20, 72, 13, "Fine grain, 10 lb."), (20, 90, 13, "cloth bag"), (200, 62, 46, "51¢"),
        (20, 150, 24, "SOAP"), (20, 182, 13, "White, floats"), (20, 200, 13, "6 bars, wrapped"), (20, 218, 13, "in"),
        (20, 236, 13, "paper and fit for the"), (20, 254, 13, "finest things you own"), (200, 172, 46, "25¢"),
        *BODY,
    )  # fmt: skip
    assert items(advert) == {"51¢": "SUGAR Fine grain, 10 lb. cloth bag", "25¢": "SOAP White"}


def test_a_short_heading_of_a_paragraph_is_completed_by_the_kind_that_its_text_begins_with() -> None:
    advert = parse(
        (200, 20, 20, "ROSES."),
        (20, 48, 16, "Hardy perpetual, two years from open ground, 35 cents each; $3.50 a dozen. Climbers, 30 cents."),
        (20, 68, 16, "The set of six, one of a kind, by mail, postage paid, $1.25."),
    )
    items = {price.text: offer.item for offer in advert.offers for price in offer.prices}
    assert items["35 cents"] == items["$3.50"] == "ROSES Hardy perpetual"


def test_a_measure_without_a_number_or_a_size_is_no_pack() -> None:
    advert = parse(
        (20, 40, 18, "SCARF PIN"), (20, 62, 11, "Seed pearl, silver head"), (60, 80, 40, "95¢"),
        (420, 40, 18, "RAISINS"), (420, 62, 11, "Seedless. pound, paper bag"), (460, 80, 40, "15¢"),
        *BODY,
    )  # fmt: skip
    assert items(advert) == {"95¢": "SCARF PIN", "15¢": "RAISINS Seedless, pound, paper bag"}


def test_a_name_of_one_word_takes_along_the_clause_that_tells_which_goods_it_means() -> None:
    advert = parse(
        (20, 40, 13, "LARD"), (20, 57, 13, "Pure, bring your pail"), (20, 76, 13, "29¢"),
        (420, 240, 13, "STOCKINGS"), (420, 257, 13, "Ribbed silk to the top"), (420, 276, 13, "98¢"),
        (420, 440, 13, "BRASSIERES"), (420, 457, 13, "Mesh or broche"), (420, 476, 13, "75¢"),
        *BODY,
    )  # fmt: skip
    assert items(advert) == {"29¢": "LARD Pure", "98¢": "STOCKINGS Ribbed silk", "75¢": "BRASSIERES Mesh"}


def test_praise_talk_and_the_next_row_tell_no_kind() -> None:
    advert = parse(
        (20, 40, 13, "REFRIGERATOR"), (20, 57, 13, "High grade, sanitary"), (20, 76, 13, "$12.65"),
        (420, 240, 16, "TUMBLER"), (420, 259, 13, "See our window"), (420, 276, 13, "18¢"),
        (20, 440, 13, "Oleomargarine"), (20, 457, 13, "Brick Cheese"), (200, 440, 13, "29¢"), (200, 457, 13, "59¢"),
        *BODY,
    )  # fmt: skip
    found = items(advert)
    assert (found["$12.65"], found["18¢"], found["29¢"]) == ("REFRIGERATOR", "TUMBLER", "Oleomargarine")


def test_the_pack_of_a_name_of_several_words_comes_without_the_description_before_it() -> None:
    advert = parse(
        (20, 40, 18, "Table Tumblers"), (20, 62, 11, "Pressed crystal, optic sides, 9-oz. size"), (60, 80, 40, "79¢"),
        (420, 40, 18, "Round Table"), (420, 62, 11, "Fumed oak, 45 inch top of selected grain"), (460, 80, 40, "$17"),
        *BODY,
    )  # fmt: skip
    assert items(advert) == {"79¢": "Table Tumblers 9-oz. size", "$17": "Round Table"}

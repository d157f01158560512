"""Sets: the title is the item, the list of its pieces tells what it holds, and both must agree."""

from __future__ import annotations

from decimal import Decimal

import pytest

from adminer.names.pieces import load_vocabulary
from adminer.parsing import parse_page
from adminer.parsing.items.catalogue import order_marks
from adminer.parsing.sets.composition import fill_counts, list_pieces
from adminer.records import Advert, Composition, Offer
from tests.parsing.pages import NO_NAMES, Line, reading_of

PIECES = load_vocabulary()


def parse(*lines: Line) -> Advert:
    (advert,) = parse_page(reading_of(list(lines)), NO_NAMES)
    return advert


def contents(offer: Offer) -> dict[str, int]:
    assert offer.composition is not None
    return {piece.piece: piece.count for piece in offer.composition.listed}


def made_of(offer: Offer) -> Composition:
    assert offer.composition is not None
    return offer.composition


EIGHT = dict.fromkeys(("dinner_plate", "bread_and_butter", "fruit_dish", "cup", "saucer"), 8)
SERVING = dict.fromkeys(("platter", "vegetable_dish", "creamer", "covered_sugar"), 1)


@pytest.mark.parametrize(
    "lines",
    [
        """8 dinner plates, 8 bread and butters, 8 fruits, 8 cups, 8
           saucers, platter, open
           vegetable, creamer, covered sugar""",
        """8 dinner plates. 8 bread and butters. 8 fruits, 8 cups. 8 saucers, platter, open
           vegetable, creamer,.covered sugar""",
        """8 dinner plates
           8 bread and butters
           8 fruits
           8 cups
           8 saucers
           platter, open vegetable, creamer, covered sugar""",
    ],
    ids=["broken in a count and in a name", "misread stops", "one under another"],
)
def test_a_list_over_several_lines_is_one_list_of_its_title(lines: str) -> None:
    rows = [(20, 60 + 20 * i, 14, text.strip()) for i, text in enumerate(lines.splitlines())]
    title, price = (20, 30, 20, "45-piece service for 8"), (20, 80 + 20 * len(rows), 40, "$24.95")
    service, chop = parse(title, *rows, price, (20, 400, 18, "Chop plate"), (20, 430, 40, "$2.25")).offers
    assert service.item == "45-piece service for 8"
    assert contents(service) == EIGHT | SERVING
    assert (made_of(service).stated, made_of(service).closes) == (45, "trade")
    assert chop.item == "Chop plate"
    assert chop.composition is None


def test_rows_of_open_stock_under_a_set_are_not_its_list() -> None:
    rows = [("Dinner plate", "39c"), ("Salad plate", "29c"), ("Cup", "25c"), ("Saucer", "19c")]
    lines: list[Line] = [(60, 40, 30, "5-pc. place setting"), (60, 90, 60, "$1.39")]
    for i, (piece, price) in enumerate(rows):
        lines += [(20, 200 + 24 * i, 14, piece), (400, 200 + 24 * i, 14, price)]
    setting, *pieces = parse(*lines).offers
    assert made_of(setting).listed == ()
    assert [(o.item, str(o.prices[0].amount)) for o in pieces] == [
        ("Dinner plate", "0.39"), ("Salad plate", "0.29"), ("Cup", "0.25"), ("Saucer", "0.19")]  # fmt: skip


def test_a_list_under_the_price_of_a_set_is_the_sets() -> None:
    (offer,) = parse(
        (60, 40, 30, "16-piece starter set"), (60, 90, 60, "$5.95"),
        (60, 166, 14, "4 dinner plates, 4 fruits, 4 cups, 4 saucers"),
    ).offers  # fmt: skip
    assert contents(offer) == {"dinner_plate": 4, "fruit_dish": 4, "cup": 4, "saucer": 4}
    assert made_of(offer).closes == "both"


def test_short_names_count_inside_a_list_only() -> None:
    setting, dinner = parse(
        (20, 30, 24, "5-pc. place setting"),
        (20, 64, 14, "dinner, salad, bread and butter, cup, saucer"),
        (20, 90, 40, "2.95"),
        (20, 300, 16, "Dinner napkins, set of 6"),
        (20, 330, 30, "98c"),
    ).offers
    assert contents(setting) == dict.fromkeys(("dinner_plate", "salad_plate", "bread_and_butter", "cup", "saucer"), 1)
    assert dinner.piece_or_set != "dinner_plate"


def test_mail_order_the_title_over_list_weight_and_order_number_is_the_item() -> None:
    first, second = parse(
        (20, 30, 16, "32-Piece Dinner Set. Sprays of leaf and berry under a"),
        (20, 52, 16, "clear glaze. Service for six: 6 dinner plates, 6 pie plates,"),
        (20, 74, 16, "6 cups, 6 saucers, 6 fruits, 1 platter, 1 oval vegetable."),
        (20, 96, 16, "Shpg. wt. 26 lbs."),
        (20, 118, 16, "45 K 3021—$7.45. Cash down $1.50, then $1 a month"),
        (20, 180, 16, "Covered Sugar. With its own lid."),
        (20, 202, 16, "45 K 3036—$.87"),
    ).offers
    assert first.item == "32-Piece Dinner Set"
    assert [(p.role, p.amount) for p in first.prices] == [
        ("price", Decimal("7.45")), ("down_payment", Decimal("1.50")), ("instalment", Decimal(1))]  # fmt: skip
    assert (made_of(first).stated, made_of(first).service_for, made_of(first).listed_sum) == (32, 6, 32)
    assert (second.item, second.piece_or_set) == ("Covered Sugar", "covered_sugar")


def test_a_set_of_eight_tumblers_states_and_lists_eight() -> None:
    boxed, named = parse(
        (20, 30, 20, "Set of 8 tumblers"), (20, 60, 14, "8 tumblers"), (20, 90, 40, "$1.00"),
        (20, 300, 14, "Star tumbler"), (400, 300, 14, "12c"), (20, 322, 12, "6 tumblers"),
    ).offers  # fmt: skip
    assert (made_of(boxed).stated, contents(boxed), boxed.pieces) == (8, {"tumbler": 8}, 8)
    assert (made_of(named).stated, contents(named)) == (6, {"tumbler": 6})


def test_the_cents_of_a_price_count_no_pieces() -> None:
    sugar, boat = parse((20, 30, 16, "Covered sugar 45 K 3036—$.87"), (20, 52, 16, "Gravy boat 45 K 3038—$1.05")).offers
    assert (sugar.pieces, boat.pieces) == (2, 1)


def test_a_count_that_was_not_read_is_supplied_where_the_stated_number_asks_for_it() -> None:
    text = "8 dinner plates, & cups, 8 saucers, 8 fruits, 8 soups"
    spans = []
    for name in ("dinner plates", "cups", "saucers", "fruits", "soups"):
        at = text.index(name)
        spans.append((at, at + len(name), PIECES.find(name) or ""))
    parts = list_pieces(text, spans)
    filled, note = fill_counts(parts, 40, 8, PIECES)
    assert [p.count for p in filled] == [8, 8, 8, 8, 8]
    assert note == "no figure was read before “cups”; 8 each makes the stated 40"
    as_printed, silent = fill_counts(parts, 45, 8, PIECES)
    assert ([p.count for p in as_printed], silent) == ([8, 1, 8, 8, 8], None)


def test_a_set_whose_pieces_do_not_add_up_is_trusted_less() -> None:
    def offer(saucers: int) -> Offer:
        text = f"8 dinner plates, 8 cups, {saucers} saucers, 8 fruits, 8 soups"
        (one,) = parse((20, 30, 20, "40-piece dinner set"), (20, 60, 14, text), (20, 90, 40, "$9.95")).offers
        return one

    right, wrong = offer(8), offer(10)
    assert made_of(wrong).likely == "claimed 40, listed 42: “10 saucers” probably reads 8"
    assert (made_of(right).closes, made_of(right).likely) == ("both", None)
    assert wrong.confidence < right.confidence


@pytest.mark.parametrize(
    ("text", "marks"),
    [
        ("Shpg. wt. 26 lbs. 45 K 3021—$7.45", ["Shpg. wt. 26 lbs.", "45 K 3021"]),
        ("Shipping weight, 2 lbs. 6 oz.", ["Shipping weight, 2 lbs. 6 oz."]),
        ("No. 8C4412 Plain white", ["No. 8C4412"]),
        ("10 lbs. sugar 49c, 2 cans 25c", []),
        ("No. 2 can 25c", []),
    ],
)
def test_order_numbers_and_weights_are_told_from_names(text: str, marks: list[str]) -> None:
    assert [text[a:b] for a, b in order_marks(text)] == marks


def test_a_count_said_of_each_holds_up_to_the_semicolon() -> None:
    (offer,) = parse(
        (20, 30, 16, "53-Piece Set for 8: 8 each dinner plates, bread and butters, fruit dishes, soup plates,"),
        (20, 52, 16, "cups and saucers; platter, vegetable dish, covered sugar (2 pcs.) and"),
        (20, 74, 16, "creamer."),
        (20, 96, 16, "86 K 2108M—Shpg. wt., 44 lbs. 53 pieces"), (700, 96, 16, "$7.45"),
    ).offers  # fmt: skip
    assert offer.item == "53-Piece Set for 8"
    assert contents(offer) == EIGHT | {"soup_plate": 8} | SERVING
    assert made_of(offer).closes == "trade"


def test_a_list_in_brackets_after_the_price_is_the_sets() -> None:
    starter, service = parse(
        (
            20,
            30,
            16,
            "16-piece starter set, $19.95* (4 each: dinner, salad, cup, saucer). 45-piece service for 8, $59.95.",
        )
    ).offers
    assert contents(starter) == dict.fromkeys(("dinner_plate", "salad_plate", "cup", "saucer"), 4)
    assert made_of(service).listed == ()


def test_plates_of_a_luncheon_set_are_luncheon_plates() -> None:
    text = "23-Piece Luncheon Set. 6 plates, 6 cups, 6 saucers, 4 fruits and 1 platter"
    (offer,) = parse((20, 30, 16, text), (20, 60, 24, "$1.79")).offers
    assert contents(offer) == {"luncheon_plate": 6, "cup": 6, "saucer": 6, "fruit_dish": 4, "platter": 1}


def test_a_set_stated_under_its_price_is_read() -> None:
    (offer,) = parse(
        (20, 30, 16, "Pine Ridge dinnerware"), (20, 60, 60, "$8.50"), (20, 130, 14, "20-pc. set for four")
    ).offers
    assert (offer.item, made_of(offer).stated, made_of(offer).service_for) == ("Pine Ridge dinnerware", 20, 4)


@pytest.mark.parametrize("text", ["Teapot, 6-cup", "Fruit or sauce dish", "Cream pitchers", "Soup bowls, set of 2"])
def test_what_is_no_list_makes_none(text: str) -> None:
    lines: list[Line] = []
    for i, row in enumerate((text, "Oval platter, 13-inch")):
        lines += [(20, 30 + 24 * i, 16, row), (500, 30 + 24 * i, 16, "$1.98")]
    first, platter = parse(*lines).offers
    assert first.composition is None or set(contents(first).values()) == {2}
    assert platter.composition is None


def test_a_second_word_that_was_misread_is_part_of_the_piece() -> None:
    listed = (20, 64, 14, "dioner plate, salad plate fruit disli cup. saucer")
    (offer,) = parse((20, 30, 24, "5-pc. place setting"), listed, (20, 90, 40, "$1.39")).offers
    assert (len(contents(offer)), made_of(offer).closes) == (5, "both")


def test_a_set_under_the_name_of_its_line_and_a_term_keeps_its_title() -> None:
    (offer,) = parse(
        (100, 20, 36, "Table's Best Friend"),
        (180, 80, 36, "Larch Cone"),
        (240, 140, 14, "Coupon expires October 22"),
        (220, 170, 26, "16-piece starter set"),
        (60, 210, 14, "4 dinner plates, 4 fruits, 4 cups, 4 saucers"),
        (90, 240, 60, "$2.88"),
    ).offers
    assert (offer.item, made_of(offer).stated, len(contents(offer))) == ("16-piece starter set", 16, 4)


def test_plates_told_apart_by_their_inches_count_each_as_many_as_the_list_says() -> None:
    advert = parse(
        (20, 20, 14, "20-Piece Set. For 4. Four each: 9-in."),
        (20, 38, 14, "plates, 6-in. plates, cups, saucers,"),
        (20, 56, 14, "fruits. $3.89"),
    )
    (made,) = [o.composition for o in advert.offers if o.composition]
    assert made.listed_sum == 20
    assert [piece.count for piece in made.listed] == [4, 4, 4, 4, 4]


def test_a_pot_for_six_and_a_promise_for_four_years_are_no_sets() -> None:
    advert = parse((20, 20, 14, "Brown teapots for six, 89c"), (20, 60, 14, "Sheets tested for four years set, 79c"))
    assert not [o for o in advert.offers if o.composition is not None]

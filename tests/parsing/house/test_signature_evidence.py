"""What speaks for and against a line as the advertiser's name; invented names, common practice, no source."""

from __future__ import annotations

import pytest

from tests.parsing.house.test_signatures import BODY, PROSE, retailer_of
from tests.parsing.pages import Line

PRICE: Line = (60, 105, 60, "$4.98")


@pytest.mark.parametrize(
    ("foot", "name"),
    [
        ([(40, 900, 14, "SILAS THORNABY"), (40, 918, 14, "Feed Store, foot of Bridge")], "SILAS THORNABY"),
        ([(40, 900, 14, "JNO. THORNABY, Ironmonger")], "JNO. THORNABY"),
        ([(40, 900, 14, "Madame Quillon")], "Madame Quillon"),
        ([(40, 900, 14, "THORNABY ELECTRIC"), (40, 918, 14, "Next to Armory, Osterby")], "THORNABY ELECTRIC"),
        ([(40, 900, 14, "Thornaby Shoes"), (40, 918, 14, "8 Levee St., Osterby")], "Thornaby Shoes"),
        ([(40, 900, 14, "ZEPHYRO, 912 Main, Osterby")], "ZEPHYRO"),
        ([(40, 900, 14, "before the snow. THORNABY BROS., Osterby")], "THORNABY BROS"),
        ([(40, 900, 14, "HERON PECANS, Box 6, Osterby")], "HERON PECANS"),
        ([(40, 900, 14, "LADY HERON SHOES, Osterby 12.")], "LADY HERON SHOES"),
        ([(40, 900, 14, "VARLEY SHOE"), (40, 918, 14, "HOUSE")], "VARLEY SHOE HOUSE"),
        (
            [(40, 900, 14, "THE VARLEY"), (40, 918, 14, "SEPARATOR"), (40, 936, 14, "AGENCY,")],
            "THE VARLEY SEPARATOR AGENCY",
        ),
        ([(40, 900, 14, "VARLEY, THORNABY &Co.,")], "VARLEY, THORNABY & Co"),
        ([(40, 900, 30, "VARLEY &t SON")], "VARLEY & SON"),
        ([(40, 900, 30, "FrederickVarley, Jeweler")], "Frederick Varley"),
        ([(40, 900, 24, "Varley's 5 & 10")], "Varley's 5 & 10"),
        ([(40, 900, 14, "THE VARLEY DIRECT SUPPLY."), (40, 918, 14, "Mill Lane, Osterby")], "THE VARLEY DIRECT SUPPLY"),
        ([(40, 900, 24, "Farm Supply of Osterby"), (40, 930, 14, "Phone 6-4410")], "Farm Supply of Osterby"),
        ([(40, 900, 24, "HERON-WAY of Osterby and Ferncliff")], "HERON-WAY"),
        ([(40, 900, 14, "Varley's Corner Market, Osterby")], "Varley's Corner Market"),
        ([(40, 900, 14, "P. & W. VARLEY")], "P. & W. VARLEY"),
        ([(40, 900, 14, "H. ABNER VARLEY")], "H. ABNER VARLEY"),
        ([(40, 900, 14, "VARLEY, Druggist. Osterby")], "VARLEY"),
        ([(40, 900, 14, "VARLEY, THE JEWELER.")], "VARLEY"),
        ([(40, 900, 14, "VARLEY,"), (60, 918, 14, "Jeweler")], "VARLEY"),
        ([(40, 900, 14, "OSTER & WENNING RY.")], "OSTER & WENNING RY"),
        ([(40, 900, 20, "VARLEY RADIO SERVICE"), (40, 924, 14, "Back of the Post Office")], "VARLEY RADIO SERVICE"),
        ([(40, 900, 14, "VARLEY TIRE CENTER")], "VARLEY TIRE CENTER"),
        ([(40, 900, 14, "VARLEY SHOE HOSPITAL")], "VARLEY SHOE HOSPITAL"),
        ([(40, 900, 14, "BLUE BARN POULTRY YARDS.")], "BLUE BARN POULTRY YARDS"),
        ([(40, 900, 14, "VARLEY& WENNING")], "VARLEY & WENNING"),
        (
            [(40, 900, 14, "THE BLUE BOOT SHOP"), (40, 918, 14, "Three doors from the Post Office")],
            "THE BLUE BOOT SHOP",
        ),
        ([(40, 900, 14, "THE VARLEY LAMP"), (60, 918, 14, "STORES, Osterby.")], "THE VARLEY LAMP STORES"),
        (
            [(40, 900, 14, "Varley Picture-Card Exchange, Osterby,"), (40, 918, 14, "Mass.")],
            "Varley Picture-Card Exchange",
        ),
    ],
)
def test_a_name_at_the_foot_is_told_by_its_form_and_what_stands_by_it(foot: list[Line], name: str) -> None:
    assert retailer_of([*PROSE, *foot]) == name


@pytest.mark.parametrize(
    "foot",
    [
        [(40, 900, 14, "Comb & Brush")],
        [(40, 900, 14, "Fri. & Sat.")],
        [(40, 900, 14, "Men's Hats")],
        [(40, 900, 14, "Quantities limited"), (40, 918, 14, "Phone 6-4410")],
        [(40, 900, 20, "FRONT & VARLEY STS."), (300, 900, 20, "Free parking")],
        [(40, 900, 14, "ZEPHYRO")],
        [(40, 900, 14, "CHICAGO")],
    ],
)
def test_goods_days_wearers_stock_and_streets_are_no_house(foot: list[Line]) -> None:
    assert retailer_of([*PROSE, *foot]) is None


@pytest.mark.parametrize(
    ("head", "name"),
    [
        ([(40, 40, 60, "heron fair"), (440, 50, 14, "4th & Cactus, Osterby")], "heron fair"),
        ([(40, 20, 16, "614 VARLEY-THORNE")], "VARLEY-THORNE"),
        ([(40, 20, 16, "143"), (300, 20, 16, "VARLEY-THORNE")], "VARLEY-THORNE"),
        ([(40, 40, 40, "Corner Market")], "Corner Market"),
        ([(40, 40, 22, "VARLEY AUTO & HOME"), (40, 66, 16, "Osterby, authorized dealer")], "VARLEY AUTO & HOME"),
        ([(40, 40, 60, "BIG HERON")], None),
        ([(40, 40, 30, "heron laundry")], "heron laundry"),
        ([(40, 40, 30, "Heron laundry")], None),
        ([(40, 40, 24, "Crestline Tires"), PRICE], None),
        ([(40, 40, 24, "Gullwing Shoes"), PRICE], None),
    ],
)
def test_a_name_at_the_head_needs_more_than_its_type(head: list[Line], name: str | None) -> None:
    assert retailer_of([*head, *BODY, (40, 900, 16, "Everything for the table")]) == name


def test_plain_words_in_the_largest_type_are_a_house_where_its_particulars_name_it() -> None:
    foot: Line = (40, 900, 16, "Items good at all Big Heron stores")
    assert retailer_of([(40, 40, 60, "BIG HERON"), *BODY, foot]) == "BIG HERON"


def test_the_maker_over_his_city_is_surer_than_his_brand() -> None:
    brand: list[Line] = [(40, 40, 60, "ZEPHYRO"), (40, 500, 14, "Ask for ZEPHYRO"), (40, 530, 14, "ZEPHYRO is best")]
    maker: list[Line] = [(40, 900, 14, "VARLEY & THORNABY"), (40, 918, 14, "CHICAGO")]
    assert retailer_of([*brand, *PROSE, *maker]) == "VARLEY & THORNABY"


def test_a_line_of_trades_under_a_name_gives_way_to_it() -> None:
    head: list[Line] = [(40, 40, 40, "VARLEY & SON"), (40, 90, 20, "Drapers, Milliners, and Outfitters")]
    assert retailer_of([*head, *PROSE]) == "VARLEY & SON"


def test_a_name_with_its_own_price_behind_it_is_goods() -> None:
    foot: list[Line] = [(40, 880, 20, "Zephyros, 3c"), (40, 904, 14, "214 Broad St., Osterby")]
    assert retailer_of([*PROSE, *foot]) is None


@pytest.mark.parametrize(
    ("lines", "name"),
    [
        ([(40, 540, 28, "Varley-Thorne")], "Varley-Thorne"),
        ([(40, 540, 28, "Varley-Thorne"), (40, 600, 28, "Best of all")], None),  # no longer the largest words
        ([(40, 40, 14, "SILAS THORNABY")], "SILAS THORNABY"),
        ([(40, 40, 14, "Silas Thornaby")], None),
        ([(40, 40, 14, "VARLEY & THORNABY")], "VARLEY & THORNABY"),
        ([(40, 540, 14, "VARLEY & THORNABY")], None),  # neither at the head nor at the foot
        (
            [(40, 540, 14, "Thornaby's"), (40, 560, 14, "Better still"), (40, 580, 14, "8 Levee St., Osterby")],
            "Thornaby's",
        ),
        ([(40, 540, 14, "Thornaby's"), (40, 560, 14, "Better still")], None),
    ],
)
def test_type_capitals_place_and_an_address_near_decide(lines: list[Line], name: str | None) -> None:
    assert retailer_of([*PROSE, *lines]) == name


@pytest.mark.parametrize(
    ("line", "name"),
    [
        ("Zephyrine", "Zephyrine"),
        ("SAVE EVERY DAY", None),
        ("Heron Bargains", None),
        ("Gullwing Tumblers", None),
    ],
)
def test_plain_words_goods_and_sentences_over_an_address_are_no_house(line: str, name: str | None) -> None:
    assert retailer_of([*PROSE, (40, 880, 20, line), (40, 904, 14, "8 Levee St., Osterby")]) == name


def test_a_name_beside_a_large_price_is_an_article() -> None:
    foot: list[Line] = [(40, 880, 20, "Zephyrine"), (300, 880, 20, "$4.98"), (40, 904, 14, "8 Levee St., Osterby")]
    assert retailer_of([*PROSE, *foot]) is None


def test_a_sentence_about_a_store_is_no_name() -> None:
    foot: list[Line] = [
        (40, 880, 14, "Varley store opens early"),
        (40, 900, 14, "Look in"),
        (40, 920, 14, "Box 8, Osterby"),
    ]
    assert retailer_of([*PROSE, *foot]) is None

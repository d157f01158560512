"""Names in capitals among prose, names of plain words, theatres, partners and officers; invented names."""

from __future__ import annotations

import pytest

from adminer.parsing.house.house_lines import name_part
from tests.parsing.house.test_signatures import BODY, PROSE, retailer_of
from tests.parsing.pages import Line


@pytest.mark.parametrize(
    ("line", "name"),
    [
        ("kiln, delivered in town. Apply J. CORBELLE, at the quarry", "J. CORBELLE"),
        ("CORBELLE'S HARDWARE on the square for your ranges", "CORBELLE'S HARDWARE"),
        ("Mrs. T. CORBELLE has the newest shapes in straw", "Mrs. T. CORBELLE"),
        ("To: OSTER DALE POTTERIES (Dept. K.4), and the coupon", "OSTER DALE POTTERIES"),
    ],
)
def test_capitals_set_off_a_name_among_prose(line: str, name: str) -> None:
    assert retailer_of([*PROSE, (40, 900, 14, line)]) == name


def test_goods_and_talk_in_capitals_among_prose_are_no_name() -> None:
    assert retailer_of([*PROSE, (40, 900, 14, "We pay the HIGHEST PRICES for all that you bring")]) is None
    tea: Line = (40, 900, 14, "Tea is served in the EVENLODE ROOM, 12 Main St., daily")
    assert retailer_of([*PROSE, tea]) is None


@pytest.mark.parametrize(
    ("head", "name"),
    [
        ([(40, 20, 60, "SILVER LADDER"), (60, 92, 18, "MARKETS")], "SILVER LADDER MARKETS"),
        (
            [(40, 20, 60, "SILVER LADDER"), (60, 92, 18, "DISCOUNT DEPARTMENT STORES")],
            "SILVER LADDER DISCOUNT DEPARTMENT STORES",
        ),
        ([(40, 20, 60, "SILVER LADDER"), (60, 92, 18, "FURNITURE")], None),
        ([(40, 20, 60, "SILVER LADDER"), (60, 92, 18, "MARKETS"), (40, 200, 58, "Weekly Budget")], None),
        ([(40, 20, 60, "Corbelle - Vale"), (60, 92, 18, "Main at Third")], "Corbelle-Vale"),
    ],
)
def test_plain_words_in_the_largest_type_are_a_name_over_a_word_of_shops(head: list[Line], name: str | None) -> None:
    assert retailer_of([*head, *BODY]) == name


@pytest.mark.parametrize(
    "said",
    ["NEW STORE", "6 neighborhood stores", "All Our Stores", "A Promise of Rain, Vale", "A CARPET", "Men's Work Shoes"],
)
def test_what_is_said_of_shops_and_an_article_are_no_name(said: str) -> None:
    assert retailer_of([(40, 20, 60, said), *BODY, (40, 900, 16, "12 Main St., Osterby")]) is None


def test_the_corner_of_a_name_is_no_corner_of_streets() -> None:
    assert retailer_of([*PROSE, (40, 900, 28, "Corner Cupboard Stores")]) == "Corner Cupboard Stores"


def test_a_theatre_is_told_by_its_name_among_shows_only() -> None:
    head: Line = (40, 20, 34, "Gaiety")
    assert retailer_of([head, *PROSE, (40, 900, 16, "Matinee 10c, evenings 25c")]) == "Gaiety"
    assert retailer_of([head, *PROSE, (40, 900, 16, "Adults 60c, students 40c, tax included")]) == "Gaiety"
    assert retailer_of([head, *PROSE, (40, 900, 16, "Plates 10c, cups 25c")]) is None


def test_the_season_of_a_catalogue_beside_its_number_of_the_page_is_no_firm_of_two() -> None:
    head: list[Line] = [(40, 20, 16, "FALL AND WINTER 1957"), (600, 20, 15, "CORBELLE-VALE CO. 417")]
    assert retailer_of([*head, *BODY]) == "CORBELLE-VALE CO"
    assert retailer_of([(40, 20, 16, "FALL AND WINTER 1957"), (600, 20, 15, "417"), *BODY]) is None


def test_an_officer_stands_behind_his_firm() -> None:
    foot: list[Line] = [(40, 860, 14, "J. T. CORBELLE, Traffic Manager")]
    assert retailer_of([(40, 20, 18, "OSTERBY AND VALE RAILWAY."), *PROSE, *foot]) == "OSTERBY AND VALE RAILWAY"
    assert retailer_of([*PROSE, *foot]) == "J. T. CORBELLE"
    agent: Line = (40, 860, 14, "J. T. CORBELLE, G. P. A., Osterby, Ohio")
    assert retailer_of([(40, 20, 18, "OSTER & VALE RY."), *PROSE, agent]) == "OSTER & VALE RY"
    signed: list[Line] = [(40, 860, 24, "Enos P. Corbelle, Pres't"), (40, 896, 14, "OSTERBY HATCHER COMPANY")]
    assert retailer_of([*PROSE, *signed, (40, 914, 14, "Box 27, Osterby, Ohio")]) == "OSTERBY HATCHER COMPANY"


@pytest.mark.parametrize(
    ("head", "name"),
    [
        ((40, 20, 26, "CORBELLE FEED & SEED"), "CORBELLE FEED & SEED"),
        ((40, 20, 36, "Corbelle & Rusk"), "Corbelle & Rusk"),
        ((40, 20, 60, "corbellemart"), "corbellemart"),
        ((40, 20, 60, "saucepans"), None),
    ],
)
def test_what_stands_over_all_else_in_large_type_is_a_name(head: Line, name: str | None) -> None:
    assert retailer_of([head, *PROSE]) == name


@pytest.mark.parametrize(
    ("line", "name"),
    [
        ("Maison Corbelle · 6 Court Sq.", "Maison Corbelle"),
        ("MESSRS. CORBELLE, THORNE & VALE", "MESSRS. CORBELLE, THORNE & VALE"),
        ("Corbelle Frères", "Corbelle Frères"),
        ("Thornaby Smokehouse, Osterby", "Thornaby Smokehouse"),
        ("Store Opens 8.30 a.m. The Corbelle-Vale Co. Limited Closes 5.30 p.m.", "The Corbelle-Vale Co. Limited"),
        ("Zeb Corbelle", "Zeb Corbelle"),
    ],
)
def test_forms_of_names(line: str, name: str) -> None:
    assert retailer_of([*PROSE, (40, 900, 16, line)]) == name


def test_a_name_before_where_it_stands_is_the_house_though_it_is_plain() -> None:
    lines: list[Line] = [
        (40, 20, 50, "TIRES FOR THE TRIP"),
        *BODY[:2],
        (40, 600, 16, "Old Mill Garage, first west of the depot"),
    ]
    assert (
        retailer_of([*lines, *[(40, 660 + 18 * i, 16, "Tubes are mounted free with each pair") for i in range(12)]])
        == "Old Mill Garage"
    )


@pytest.mark.parametrize(
    ("line", "name"),
    [
        ("CORBELLE, VALE & CO., OSTERBY, ILL.", "CORBELLE, VALE & CO"),
        ("Corbelle, Thorne & Sons, Osterby", "Corbelle, Thorne & Sons"),
        ("Corbelle, Main and Third, Osterby", "Corbelle"),
    ],
)
def test_a_comma_parts_the_partners_of_a_firm_from_each_other_not_from_their_town(line: str, name: str) -> None:
    assert name_part(line) == name

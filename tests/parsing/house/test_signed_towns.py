"""The town after the street, the corner or the floor under a shop's name; invented shops."""

from __future__ import annotations

import pytest

from adminer.parsing.house.signed_towns import town_under
from adminer.parsing.house.towns import find_town


@pytest.mark.parametrize(
    ("under", "town"),
    [
        ("FIVE FLOORS · MAIN AT THIRD · OSTER FALLS", "OSTER FALLS"),
        ("CORN HILL. OSTERBY", "OSTERBY"),
        ("DRAPERS AND OUTFITTERS. 17-21 CORNMARKET. OSTERBY\nand at Bridge Street, Little Wenning", "OSTERBY"),
        ("Opp Post Office, Osterby - Tel . 88", "Osterby"),
        ("1600 Division St. Osterby · Open Sun. 10 . 4", "Osterby"),
        ("General drapers\nRue de la Vieille Bourse.\nOsterby", "Osterby"),
        ("Harness and Tinware\nCANAL STREET AT SIXTH\nOSTERBY CITY", "OSTERBY CITY"),
        ("Osterby · Wenningham · Ferncliff", "Osterby"),
        ("Basement Salesroom. Osterby", "Osterby"),
        ("CORN HILL, OSTERBY", "OSTERBY"),
        ("Quai François-Robert, OSTERBY — Telegrams : Corbelle", "OSTERBY"),
        ("The Big Drapers, Commercial Road, Osterby: Branches at\nWenning", "Osterby"),
        ("Grocer, Osterby.", "Osterby"),
        ("12 and 14, Corn Cross, OSTERBY.", "OSTERBY"),
        ("22, 24 and 26, BROADGATE, OSTERBY.", "OSTERBY"),
        ("Superior St. at 9th Ave. - Wenning, Osterby", "Osterby"),
        ("Main Street, Osterby, Yorks.", "Osterby"),
        ("Osterby - Wenning - St. Thorne", "Osterby"),
        ("HARDWARE BY MAIL, ST. THORNE", "ST. THORNE"),
    ],
)
def test_the_town_closes_the_address_under_the_name(under: str, town: str) -> None:
    assert town_under(f"Dinner plates 39c\nCorbelle & Vale\n{under}", "Corbelle & Vale") == town


@pytest.mark.parametrize(
    "under",
    [
        "BROADWAY, COR. LOCUST",
        "Where prices are right\nMonday, Feb. 6",
        "Main Street, Oct. 18",
        "Main Street, Traffic Manager",
        "Hardware — Undertaking",
        "Main Street · Open Sundays",
        "Dinner plates, Saucers",
        "Sugar\nTea\nRice\nMain Street, Osterby",
    ],
)
def test_a_corner_a_day_or_goods_under_the_name_are_no_town(under: str) -> None:
    assert town_under(f"Corbelle & Vale\n{under}", "Corbelle & Vale") is None


def test_a_name_that_goes_on_in_the_next_line_and_none_at_all() -> None:
    assert town_under("CORBELLE VALE &\nNEPHEW,\nCLIFF PARADE. OSTERBY.", "CORBELLE VALE & NEPHEW") == "OSTERBY"
    assert town_under("Main Street, Osterby", "") is None


def test_a_theatre_is_no_place_that_leads_to_a_town() -> None:
    assert town_under("GAIETY\nTHEATRE\nOne Nght Onlly", "GAIETY THEATRE") is None
    assert town_under("GAIETY THEATRE\nOne Nght Onlly", "GAIETY THEATRE") is None


def test_the_address_under_the_name_comes_before_a_town_told_otherwise() -> None:
    text = "Corbelle & Vale\nMarket Place. Osterby\nand at Bridge Street, Little Wenning"
    assert find_town(text, house="Corbelle & Vale") == "Osterby"


def test_figures_that_look_like_states_and_goods_make_no_town() -> None:
    assert find_town("At home with rest in comfort, me and mine") is None
    assert find_town("6 dinner plates, 6 cups, o saucers, 1 platter") is None
    assert find_town("Granulated sugar, 14 lbs. 1.00 Sweet Corn, Maine pack") is None
    assert find_town("Write to Box 12, Osterby, Maine") == "Osterby"

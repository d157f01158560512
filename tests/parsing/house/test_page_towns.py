"""The town that a page's paper is called after, in adverts that name it without an address; invented pages."""

from __future__ import annotations

from dataclasses import replace

import pytest

from adminer.parsing import parse_page
from adminer.parsing.house.page_towns import town_named, towns_of_head
from adminer.records import Box, Region
from tests.parsing.pages import NO_NAMES, Line, advert_text, reading_of, words_of


@pytest.mark.parametrize(
    ("head", "towns"),
    [
        ("THE OSTERBY EVENING COURIER", {"Osterby"}),
        ("Wenning Falls Weekly Herald Page 3-A", {"Wenning Falls"}),
        ("The Osterby and Wenning Guardian", {"Osterby"}),
        ("THE : OSTERBY EVE NING COURIER.", {"Osterby", "Osterby Eve Ning"}),  # torn: either may be it
        ("OSTERBY. THURSDAY. MARCH 12. 1914", {"Osterby"}),
        ("The Lake Oster Courier", {"Lake Oster"}),
        ("OSTERBY, OHIO, THURSDAY, MAY 5, 1921", {"Osterby"}),
        ("PORT OSTER, WENNING COUNTY, OHIO, FRIDAY, MAY 6, 1921", {"Port Oster"}),
        ("THURSDAY, MARCH 12, 1914", set()),
        ("The Daily News", set()),
        ("The Farmers Weekly", set()),
    ],
)
def test_the_head_of_a_page_names_its_town(head: str, towns: set[str]) -> None:
    assert towns_of_head([advert_text((40, 20, 30, head))], 1000) == towns
    assert not towns_of_head([advert_text((40, 500, 30, head))], 1000)  # no head


@pytest.mark.parametrize(
    ("text", "town"),
    [
        ("Cups 9c\nA. J. Thorne, Prop. - Osterby", "Osterby"),
        ("OSTERBY HARDWARE CO.", "OSTERBY"),
        ("See us in Ostcrby's old mill", "Ostcrby"),
        ("Cups 9c\nFerncliff", None),
    ],
)
def test_an_advert_names_the_town_of_its_page(text: str, town: str | None) -> None:
    assert town_named(text, frozenset({"Osterby", "Osterby Creek"})) == town


def test_a_short_town_is_told_letter_by_letter() -> None:
    assert town_named("June White Sale", frozenset({"Sable"})) is None
    assert town_named("Thorne of Sable", frozenset({"Sable"})) == "Sable"


@pytest.mark.parametrize("names_it", [True, False])
def test_an_advert_is_of_the_town_of_its_page_only_where_it_names_it(names_it: bool) -> None:
    foot = "A. J. Thorne, Prop. - Osterby" if names_it else "A. J. Thorne, Prop."
    parts: list[tuple[Box, list[Line]]] = [
        (Box(0, 0, 800, 200), [(40, 20, 40, "THE OSTERBY EVENING COURIER")]),
        (Box(0, 250, 800, 750), [(40, 300, 30, "Dinner plate"), (40, 350, 30, "39c"), (40, 900, 14, foot)]),
    ]
    words = tuple(
        replace(word, region=n, line=word.line + 100 * n)
        for n, (_, lines) in enumerate(parts)
        for word in words_of(lines)
    )
    regions = (Region(parts[0][0], "masthead", 0.9), Region(parts[1][0], "advert", 0.9))
    (advert,) = parse_page(replace(reading_of([]), regions=regions, words=words), NO_NAMES, ())
    assert advert.city == ("Osterby" if names_it else None)

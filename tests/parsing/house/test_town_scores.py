"""Towns that no wording leads to, told by how they end, what stands by them and where; invented names."""

from __future__ import annotations

import pytest

from adminer.parsing.house.town_scores import best_town

HOUSE = "Corbelle & Vale"
GOODS = "Cups 9c\nSaucers 5c\nBowls 15c\nJugs 25c\n"


@pytest.mark.parametrize(
    ("foot", "town"),
    [
        ("Osterby Ferry, opposite the depot", "Osterby Ferry"),  # a landmark behind it
        ("Osterby: Sixth & Vine\nWenning Park: 2210 Grand Ave.", "Osterby"),  # the first of the branches
        ("Opposite the Depot\nOSTERBY BLUFF CENTER", "OSTERBY BLUFF CENTER"),
        ("Stone Store, Heron Center.", "Heron Center"),
        ("Universal Providers. Station Street. Osterby.", "Osterby"),  # a street before it
        ("Osterby Junction, 656-2207", "Osterby Junction"),
        ("Osterby Bay's daylight store", "Osterby Bay"),
        ("Osterleyham's Shopping Centre - Fourth Street", "Osterleyham"),
        ("The prescription store\nList", None),
        ("Wenningham", None),  # the name of a line may stand so
        ("Corner of Elm and Wenningham", None),
        ("WENNINGHAM & OSTERLEY STS.", None),
        ("Flour, Heron Prairie, 49 lbs.", None),
        ("who went to the depot, Osterleyham, and told all of it to us there\nCups 9c\nJugs 9c\nBowls 9c", None),
        ("Opposite the depot, Osterleyham", "Osterleyham"),
        ("Opposite the depot, Osterleyham, 9c", None),
    ],
)
def test_a_town_under_the_name_is_told_by_its_form_and_its_neighbours(foot: str, town: str | None) -> None:
    assert best_town(f"{GOODS}{HOUSE}\n{foot}", HOUSE) == town


def test_a_part_in_the_middle_of_an_advert_is_no_town() -> None:
    assert best_town(f"{HOUSE}\n{GOODS}{GOODS}Osterby Heights\n{GOODS}", HOUSE) is None
    assert best_town(f"{GOODS}at CORBELLE'S Store, Osterby Gap\n{GOODS}", "CORBELLE'S Store") == "Osterby Gap"


def test_a_coupon_with_the_name_over_an_article_leads_to_no_town() -> None:
    assert best_town(f"{GOODS}HERON COUPON\nOsterby Hill\n{GOODS}{GOODS}", "HERON") is None

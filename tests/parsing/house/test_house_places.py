"""Houses told by their place or their proofs of purchase; invented names, common practice, no source."""

from __future__ import annotations

import pytest

from tests.parsing.house.test_signatures import BODY, PROSE, retailer_of
from tests.parsing.pages import Line, parse

HEAD_OF_A_SALE: list[Line] = [*BODY, (40, 480, 16, "Route 9, Osterby · Open daily 9 to 9")]


@pytest.mark.parametrize(
    "address", ["Dept. H-4, Osterby, Ohio", "Osterby. Ohio", "Box 37, Osterby", "8 Levee St., Osterby"]
)
def test_a_name_right_over_the_address_is_the_house(address: str) -> None:
    assert retailer_of([*PROSE, (40, 900, 24, "Gullwing Ironstone"), (40, 935, 14, address)]) == "Gullwing Ironstone"


def test_a_name_in_small_type_or_far_from_the_address_is_not() -> None:
    assert retailer_of([*PROSE, (40, 900, 14, "Gullwing Ironstone"), (40, 935, 14, "Box 37, Osterby")]) is None
    assert retailer_of([(40, 20, 30, "Gullwing Ironstone"), *PROSE, (40, 935, 14, "Box 37, Osterby")]) is None
    assert retailer_of([*PROSE, (40, 900, 24, "Dinner Plates"), (40, 935, 14, "Box 37, Osterby")]) is None


def test_the_brand_whose_box_top_is_asked_for_makes_the_offer() -> None:
    offer: Line = (40, 700, 16, "Send 50c and one box top from Heron Lake Oats")
    assert retailer_of([*PROSE, offer]) == "Heron Lake Oats"
    assert retailer_of([*PROSE, (40, 700, 16, "Send 50c and one label from a package")]) is None


def test_the_one_large_line_at_the_head_names_the_house_where_the_foot_has_only_an_address() -> None:
    assert retailer_of([(40, 40, 60, "Bargain Barn"), *HEAD_OF_A_SALE]) == "Bargain Barn"
    assert retailer_of([(40, 40, 60, "Zephyrine"), *HEAD_OF_A_SALE]) == "Zephyrine"


def test_a_headline_of_a_sale_or_of_goods_names_no_house() -> None:
    assert retailer_of([(40, 40, 60, "Summer Carnival"), *HEAD_OF_A_SALE]) is None
    assert retailer_of([(40, 40, 60, "Oaken Chairs"), *HEAD_OF_A_SALE]) is None
    assert retailer_of([(40, 40, 60, "Zephyrine"), *BODY]) is None  # may as well be a line of ware
    assert retailer_of([(40, 40, 22, "Zephyrine"), *HEAD_OF_A_SALE]) is None


def test_a_name_and_its_trade_in_two_lines_or_read_the_wrong_way_round_is_one() -> None:
    assert retailer_of([(40, 40, 34, "Tolland's Corner"), (60, 84, 30, "Grocery"), *BODY]) == "Tolland's Corner Grocery"
    assert parse((40, 40, 34, "Tolland's Corner"), (60, 84, 30, "Grocery"), *BODY).city is None
    aside: list[Line] = [(420, 90, 40, "SUPER MARKETS"), (40, 40, 90, "Tol-Rite")]
    assert retailer_of([*aside, *BODY]) == "Tol-Rite SUPER MARKETS"


@pytest.mark.parametrize(
    ("foot", "name"),
    [
        ("Gullwing Pottery, Osterby, Ohio", "Gullwing Pottery"),
        ("Mail to: HERON OATS, Box 40, Osterby, Ohio", "HERON OATS"),
        ("Dinner Plates, Box 40, Osterby, Ohio", None),
    ],
)
def test_a_name_before_the_address_on_its_line_is_the_house(foot: str, name: str | None) -> None:
    """So the line of ware in display type at the head is not."""
    assert retailer_of([(40, 40, 60, "Zephyrine"), *BODY, (40, 900, 16, foot)]) == name


@pytest.mark.parametrize("name", ["THE FAIR", "The Golden Rule"])
def test_a_town_store_of_plain_words_over_its_address(name: str) -> None:
    assert retailer_of([(40, 40, 60, name), *BODY, (40, 900, 16, "214 Broad St., Osterby")]) == name
    assert retailer_of([(40, 40, 60, name), *BODY]) is None


@pytest.mark.parametrize(
    ("line", "name"),
    [
        ("Tolland's of Osterby", "Tolland's"),
        ("Shop at Tolland's and Save", "Tolland's"),
        ("Write Gullwing Pottery Co., Dept. 4", "Gullwing Pottery Co"),
        ("Geo. W. Tolland", "Geo. W. Tolland"),
        ("Wm. Tolland", "Wm. Tolland"),
        ("Shop Early", None),
    ],
)
def test_calls_before_and_places_after_a_name_are_no_part_of_it(line: str, name: str | None) -> None:
    assert retailer_of([(40, 40, 50, "JULY SALE"), *BODY, (40, 900, 30, line)]) == name


@pytest.mark.parametrize(
    "places",
    ["FERNCLIFF: 418 Front St. · OSTERBY: Mill & Third · HARWICK: Route 30", "OSTERBY · HARWICK SHOPPING CENTER"],
)
def test_towns_with_their_corners_and_shopping_centers_are_no_house(places: str) -> None:
    assert retailer_of([*PROSE, (40, 480, 18, places)]) is None

"""Towns in the particulars of a shop, with no authority file to help; the wordings are common practice, no source."""

from __future__ import annotations

import pytest

from adminer.parsing.house.towns import find_town


@pytest.mark.parametrize(
    ("text", "town"),
    [
        ("Dept. R, Wenning Falls, Ohio", "Wenning Falls"),
        ("620 Garnet Ave., Osterby · Phone 4-2290", "Osterby"),
        ("620 Garnet Ave , Osterby Phone 4-2290", "Osterby"),
        ("214 Broad Street, Ferncliff", "Ferncliff"),
        ("Osterby: 118 W. Second St. — Phone 340", "Osterby"),
        ("Port Amity · 9 Stores · Closed Mondays", "Port Amity"),
        ("Housewares, Third Floor · Mail and phone orders filled · Ferncliff", "Ferncliff"),
        ("Ferncliff’s Greater Store · Main at Fourth Street", "Ferncliff"),
        ("14 stations in Port Amity and Osterby", "Port Amity"),
        ("MARKETS IN PORT AMITY, DELL CITY AND WEST OSTERBY", "Port Amity"),
        ("The Seed House, Lock 70, Wenning, lowa", "Wenning"),
        ("Supermarkets·Osterby·Ferncliff", "Osterby"),
        ("Rialto Theatre, Osterby", "Osterby"),
        ("Highway 9. Port Amity — Cash and Carry", "Port Amity"),
        ("Penhallow\nOSTERBY", "Osterby"),
        ("Beecher's, Route 9 at Port Amity Plaza. Prices good May 19", "Port Amity"),
        ("41 Main, Osterby · Dial 2-6618", "Osterby"),
        ("Ceramic Transfers · East Osterby, New Jersey", "East Osterby"),
        ("Penhallow\n620 Garnet Street, Dell City, III.", "Dell City"),  # what is read of "Ill."
        ("Next to the Creamery, Corbelle's Mill", "Corbelle's Mill"),
        ("Six Stores in PORT AMITY — Open Friday nights", "Port Amity"),
        ("Sharia Abd-el-Rahim, Osterby, Branches at Wenning and Ferncliff", "Osterby"),
        ("Penhallow, Osterby and Ferncliff", "Osterby"),  # the house named at the head of the line
    ],
)
def test_a_town_stands_among_the_particulars(text: str, town: str) -> None:
    assert find_town(f"BIG SALE\nCups 9c\n{text}\n", house="Penhallow") == town


def test_an_item_below_a_street_is_no_town_and_a_pattern_called_after_a_town_neither() -> None:
    assert find_town("Port Amity's Greater Store · Main at Fourth Street\nLamps 98c\n") == "Port Amity"
    assert find_town("Boston Ivy Stoneware\nSoup Bowl 49c") is None
    assert find_town("Soup Bowl 49c\nSold in BOSTON.") == "Boston"


@pytest.mark.parametrize(
    "text",
    [
        "Cube Steaks, Lb.",
        "Main Street Store",
        "Open Friday, Saturday",
        "Penhallow, Phone 340",  # the shop's own name
        "Penhallow\nBLANKETS",
        "Mail Orders · Phone Orders · Second Floor",
        "Grandmother's Favorite Bread",
    ],
)
def test_what_is_no_town_is_left(text: str) -> None:
    assert find_town(f"BIG SALE\nCups 9c\n{text}\n", house="Penhallow") is None


def test_a_misread_street_and_a_way_of_selling_are_no_towns() -> None:
    assert find_town("Thorne Srreet · Osterby · Phone 88") == "Osterby"
    assert find_town("Penhallow\nSELF SERVE\n", house="Penhallow") is None


def test_the_town_on_the_shop_s_own_line_comes_before_one_in_a_letter_of_praise() -> None:
    text = "PENHALLOW STORES, OSTERBY, OHIO\nCups 9c\nThey sell well, writes a lady of\nFerncliff, Ohio"
    assert find_town(text, house="PENHALLOW STORES") == "Osterby"


def test_a_known_town_is_spelled_as_the_file_spells_it() -> None:
    assert find_town("214 Broad Street, Ferncliif", frozenset({"Ferncliff"})) == "Ferncliff"


@pytest.mark.parametrize(
    ("text", "town"),
    [
        ("Mill Lane, Osterby, Yorks.", "Osterby"),
        ("Dept. R-9\nOsterby. N J.", "Osterby"),
        ("PENHALLOW, Boz37 X. West Osterby. Pa", "West Osterby"),
        ("Premium Dept., Osterby, Po.", "Osterby"),
        ("PENHALLOW SHOES, Osterby 12.\nMass.", "Osterby"),
        ("Next to Armory, Osterby, Ph. 330", "Osterby"),
        ("across from the depot, Osterby", "Osterby"),
        ("Route 9 at the Grange Hall, Osterby Fork, Ohie", "Osterby Fork"),
        ("The Heron Store • Osterby Crossing Phone 12", "Osterby Crossing"),
        ("Furnishing - The Shambles, Osterby. Tel. 204. Also at Wenning", "Osterby"),
        ("All week - 3 OSTERBY STORES", "Osterby"),
        ("Broad and Thorne, Port Osterby", "Port Osterby"),
        ("JEWELER • 7 WHARF ST OSTER LANDING", "Oster Landing"),
        ("Osterby's Largest - Four Floors", "Osterby"),
        ("CORBELLE CO., 418 Quarry Ave.. Osterby. Ohio", "Osterby"),
        ("Corbelle\nSHARIA EL QASAB..OSTERBY.\nSPRING NOVELTIES", "Osterby"),
        ("CORBELLE STORES - 5 in Osterby Grove", "Osterby Grove"),
        ("Market at Sixth, Osterby", "Osterby"),
        ("Cor Thorne and Levee Sts.. OSTERBY MILLS.", "Osterby Mills"),
        ("Opposite the Depot. OSTERBY.", "Osterby"),
        ("401 E. Thorne, Osterby - 555-0142", "Osterby"),
        ("Levee Street Osterby", "Osterby"),
        ("Levee Street next to the Rialto OSTERBY", "Osterby"),
        ("Phone 88 — East Osterby", "East Osterby"),
    ],
)
def test_a_town_is_told_by_what_leads_to_it_or_closes_it(text: str, town: str) -> None:
    assert find_town(f"BIG SALE\nCups 9c\n{text}\n", house="Corbelle") == town


@pytest.mark.parametrize(
    "text",
    [
        "Corbelle\nPICNIC HAMS",
        "Corbelle\nWINTER",
        "40, Quill Row,",
        "Dept. W., 40, Quill Row,",
        "Corbelle\nJEWELER • 5 QUILL ST",
    ],
)
def test_goods_seasons_rows_and_trades_are_no_town(text: str) -> None:
    assert find_town(f"BIG SALE\nCups 9c\n{text}\n", house="Corbelle") is None


def test_a_house_called_after_a_large_town_stands_elsewhere() -> None:
    assert find_town("Cups 9c\nTHE BOSTON RACKET", house="THE BOSTON RACKET") is None
    assert find_town("Cups 9c\nFarm Supply of Osterby", house="Farm Supply of Osterby") == "Osterby"


@pytest.mark.parametrize(
    "text",
    [
        "Both Phones 61. Vine Street",
        "21 State St. · 306 Vine · Osterby Depot · Lake & 9th",
        "Prices good · Downtown · WEST END",
        "JANUARY SALE - DOWNTOWN AND EASTVALE",
        "Downtown Thornmount Lakvale Village",
        "Office: 2 The Quay. Tel. 88.",
        "Second floor, Bank Bldg. Tuesdays",
        "Main Street\nTuesdayis",
        "Gin, London dry, at our price",
        "See the film “The Last Train to Boston” tonight",
        "The buyer, home from Manchester, begs to say",
    ],
)
def test_branches_phones_goods_and_titles_are_no_town(text: str) -> None:
    assert find_town(text) is None


@pytest.mark.parametrize(
    ("text", "town"),
    [
        ("SHARIA EL CORBELLE, CAIRO.\nalso Alexandria and Port Said", "Cairo"),
        ("Alexandria - and at Tantah", "Alexandria"),
        ("Dealers in China and Glass OSTERBY, ONT.", "Osterby"),
        ("PORT SAID.\nBranch at the docks.", "Port Said"),
        ("Tickets on the day of issue only.\nOsterby Moss, July, 1910.", "Osterby Moss"),
        ("Add the sales tax. Delivery free in St. Thorne; elsewhere, express", "St. Thorne"),
        ("Prices Thurs. thru Sun.\nOsterby· Wenning· Ferncliff", "Osterby"),
        ("Corbelle Smokehouse, Osterby\nGap, Virginia", "Osterby Gap"),
    ],
)
def test_a_town_that_closes_its_line_in_capitals_or_over_a_line_end(text: str, town: str) -> None:
    assert find_town(text) == town


def test_an_officer_is_no_town() -> None:
    assert find_town("Dinner plates\nW. THORNE, Traffic Manager.", house="W. THORNE") is None


def test_a_list_of_who_uses_the_goods_tells_no_town_and_a_large_town_set_wide_is_one_word() -> None:
    assert find_town("Used at the\nGrand Hotel, New York; Palmer, Chicago.\nOsterby, Ohio") == "Osterby"
    assert find_town("Used at the\nPalmer, New York; Grand Hotel, Chicago.") != "Palmer"
    assert find_town("The Quarry Works\nNEW ARK, O.") == "Newark"
    assert find_town("The Quarry Works\nPORT AMITY, O.") == "Port Amity"


def test_a_line_of_a_coupon_and_goods_with_their_state_are_no_town() -> None:
    assert find_town("Name\nStreet\nCity\nDept. H-49, Wenning 9, Ohio") == "Wenning"
    assert find_town("Onions 5 lbs. 19c\nPotatoes, Maine\nCelery") is None

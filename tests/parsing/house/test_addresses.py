"""The forms of addresses that name a town; invented names, the wordings are common practice, no source."""

from __future__ import annotations

import pytest

from adminer.parsing.house.addresses import in_full
from adminer.parsing.house.towns import find_town


@pytest.mark.parametrize(
    ("text", "town"),
    [
        ("Complete Outfitters 19- 23 North Levee St. Port Amity", "Port Amity"),
        ("Highway 9 North, Osterby Open Sundays 1 to 6", "Osterby"),
        ("U. S. Highway 40 – Wenning Falls", "Wenning Falls"),
        ("R. F. D. 2, Osterby", "Osterby"),
        ("Route 31, West Osterby · Mon. thru Sat. 9:30-9:30", "West Osterby"),
        ("12, Abbot Row, OSTERBY", "Osterby"),
        ("P. O. Box 40, Ferncliff", "Ferncliff"),
        ("Box37 X.West Osterby.Pa", "West Osterby"),
        ("Wenning Falls. Ohio", "Wenning Falls"),
        ("Wenning Falls, Oklahoma", "Wenning Falls"),
        ("Only at Penhallow Markets in Osterby", "Osterby"),
        ("Penhallow of Ferncliff", "Ferncliff"),
        ("China, Fifth Floor - also Penhallow's Osterby", "Osterby"),
        ("Garnet & Fourth Sts., Ferncliff", "Ferncliff"),
        ("Cor. Garnet and Fourth, Ferncliff", "Ferncliff"),
        ("Opp. Post Office, Ferncliff", "Ferncliff"),
        ("On the Square in Osterby", "Osterby"),
        ("Downtown Osterby", "Osterby"),
        ("PENHALLOW'S — OSTERBY", "Osterby"),
        ("Ferncliff Store: 214 Broad St.", "Ferncliff"),
        ("Stores in Osterby, Ferncliff and Wenning Falls", "Osterby"),
        ("2 miles east of Osterby on Route 40", "Osterby"),
        ("Hilltop Shopping Center, Ferncliff", "Ferncliff"),
        ("Prices good in Osterby only", "Osterby"),
        ("Ask at our Osterby store", "Osterby"),
        ("Serving Osterby since 1903", "Osterby"),
        ("Osterby, OH 44099", "Osterby"),
        ("Penhallow, 14 Garnet St., Osterby. Phone 340", "Osterby"),
        ("Quillby\nPhone 11 Quil.", "Quillby"),
        ("214 Garnet Bldg., Phila.", "Philadelphia"),
        ("8 Levee Street, OSTERBY JUNETION", "Osterby Junction"),
        ("(Dept. W.9), 8 Kiln Row, Osterby-on -Wenn", "Osterby-on-Wenn"),
        ("1420 Route 9 at the Mill Bridge. OSTERBY FALLS Use our plan", "Osterby Falls"),
        ("CORNER GARNET & LEVEE, OSTERBY CENTER\nFans 9.95\nRadios 4.95\nCombs 9c\nSoap 8c", "Osterby Center"),
        ("THREE STORES IN OSTERBY-ONE IN FERNCLIFF", "Osterby"),
        ("Delivered to your post office in Maine, Vermont or Ohio\nOsterby, Penna.", "Osterby"),
        ("PENHALLOW Osterby, Canada 61\nUse in Maine, Vermont or Ohio", "Osterby"),
        ("Notions, Third Floor, Ferncliff\nBOST ON", "Boston"),
    ],
)
def test_an_address_closes_with_its_town(text: str, town: str) -> None:
    assert find_town(f"BIG SALE\nCups 9c\n{text}\n", house="Penhallow") == town


@pytest.mark.parametrize(
    "text",
    [
        "50 Moss Rose Place Cards",
        "12 Copperwheat Square Plates",
        "Penhallow's Corner\nGrocery",
        "Penhallow Markets in September",
        "Route 9, Open Sundays",
        "Cedar Lane Chests",
        "our Greater store",
        "214 Broad St.\nPhove 340",
        "Open evenings · Coupon",
        "our Penhallow store",
        "Downtown Store: 214 Broad St.",
        "Corner Cabinet and Table, Walnut",
        "Serving Dishes",
        "Prices good in All stores",
        "Colors: 12 Garnet Road",
        "Penhallow\nPhone 340",
        "BLANKETS\nPhone your order",
        "Room, furnished, steam heat. Box 7, Courier.",
        "Telephone 19. Penhallow, Osterby\nstreet.",
        "People's Market - Saturday Cuts",
        "Prices hold in Maine, Vermont or Ohio",
    ],
)
def test_goods_and_hours_after_a_street_word_are_no_town(text: str) -> None:
    assert find_town(f"BIG SALE\nCups 9c\n{text}\n", house="Penhallow") is None


def test_only_a_word_that_towns_end_with_is_put_right() -> None:
    assert in_full("Osterby Junetion") == "Osterby Junction"
    assert in_full("OSTERBY BLUFE") == "OSTERBY BLUFF"
    assert in_full("Osterby") == "Osterby"
    assert in_full("Creck") == "Creck"  # alone it may be the whole name
    assert in_full("Port Croak") == "Port Croak"


def test_of_branches_each_with_its_corner_the_first_is_the_town() -> None:
    branches = "OSTERBY: 418 Front St. · HARWICK: Mill & Third · FERNCLIFF: Route 30"
    assert find_town(branches, house="Thornabee's") == "Osterby"
    assert find_town("Hours: 9 to 6 · Phone: 4210", house="Thornabee's") is None

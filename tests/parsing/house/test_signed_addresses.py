"""The town of an address right behind the name that signs an advert, whatever street stands between."""

from __future__ import annotations

import pytest

from adminer.parsing.house.signed_addresses import town_signed
from adminer.parsing.house.towns import find_town


@pytest.mark.parametrize(
    ("signed", "town"),
    [
        ("OSTERBY CYCLE WORKS,\nAbbey Fields, Harwick.", "Harwick"),
        ("OSTERBY CYCLE WORKS, Saltgate,\nHarwick. Catalogue free", "Harwick"),
        ("OSTERBY CYCLE WORKS, 77 Cask\nSlip, New Harwick.", "New Harwick"),
        ("OSTERBY CYCLE WORKS, Dept. 9, Harwick Falls, Ohio.", "Harwick Falls"),
        ("Osterby Cycle Works, 19 Mill Row, St.\nHarwick, Mo.", "St. Harwick"),
        ("OSTERBY CYCLE WORKS, Dept. 9, 19 Tallow Row, Harwick\nSend me the wheel", "Harwick"),
        ("OSTERBY CYCLE WORKS, 77 Cask\nSlip, New York.", "New York"),
        ("OSTERBY CYCLE WORKS, 18, Tallow Court, Cornhill, HARWICK, E.C.", "HARWICK"),
    ],
)
def test_the_last_part_before_the_state_is_the_town(signed: str, town: str) -> None:
    text = f"BICYCLES from $12.50\n{signed}"
    assert town_signed(text, "Osterby Cycle Works") == town
    assert find_town(text, house="OSTERBY CYCLE WORKS") == town.title()


@pytest.mark.parametrize(
    "signed",
    [
        "OSTERBY CYCLE WORKS, Bicycles, lamps and bells of the best makers.",  # running text
        "OSTERBY CYCLE WORKS, 12 Mill Street.",
        "OSTERBY CYCLE WORKS, Lamps.",
        "OSTERBY CYCLE WORKS, Dale Grocery.",
        "OSTERBY CYCLE WORKS. Harwick",  # nothing joins them
        "Works, Abbey Fields, Harwick.",
    ],
)
def test_what_is_no_address_has_no_town(signed: str) -> None:
    assert town_signed(signed, "Osterby Cycle Works") is None


def test_a_shop_without_a_name_has_no_address() -> None:
    assert town_signed("A, Harwick.", "A") is None

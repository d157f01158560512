"""Texts that name nothing by themselves: a size of what a heading names, the same as was named before. All invented."""

from __future__ import annotations

from typing import Any

import pytest

from adminer.parsing import assemble
from adminer.parsing.items.assign import Pairing
from adminer.parsing.items.headings import headed
from adminer.records import Advert
from tests.parsing.pages import Line, parse

LINES: list[Line] = [
    (50, 304, 17, "Thistledown Combed Muslin Sheets"),
    (50, 330, 12, "Bleached snow-white. Firm balanced weave"),
    (150, 425, 12, "72×108"),
    (265, 426, 12, "$2.89"),
]


def headed_size(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """Note what the only bare size of the advert parsed next is a size of."""
    named: list[str] = []

    def note(advert: Any, _groups: Any, pairings: Any, segments: Any, *_: Any) -> Any:
        (size,) = (s for s in segments if s.bare)
        named.append(headed(advert, size.text, Pairing(size, 0.0, "on its row"), size, list(segments), size.flat))
        return pairings

    monkeypatch.setattr(assemble, "reconsidered", note)
    return named


def test_a_size_is_one_of_the_goods_in_the_heading_and_not_of_what_describes_them(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    named = headed_size(monkeypatch)
    parse(*LINES)
    assert named == ["Thistledown Combed Muslin Sheets 72×108"]


def items(advert: Advert) -> dict[str, str]:
    return {p.text: o.item for o in advert.offers for p in o.prices}


def test_the_same_in_another_size_is_what_was_named_before_it() -> None:
    found = items(
        parse(
            (20, 20, 14, "Ball-bearing mower, 14-in., $5.45. Same in 16-in."),
            (20, 42, 14, "$5.95. Garden hose, 25 ft., $1.39."),
        )
    )
    assert found["$5.95"].startswith("Ball-bearing mower, 16-in")


def test_ditto_stands_for_the_goods_of_the_entry_before() -> None:
    found = items(
        parse(
            (20, 100, 16, "Butter, salted, 1 lb. tins"), (400, 100, 16, "$1.20"),
            (20, 130, 16, "Ditto, 2 lb. tins"), (400, 130, 16, "$2.30"),
            (20, 160, 16, "Sparkling ditto"), (400, 160, 16, "$3.10"),
        )
    )  # fmt: skip
    assert found["$2.30"] == "Butter, 2 lb. tins"
    assert found["$3.10"] == "Butter, Sparkling"


def test_a_size_in_running_text_is_one_of_the_name_before_it_though_the_advert_has_a_heading() -> None:
    advert = parse(
        (20, 20, 40, "Rugs and Curtains"),
        (20, 80, 12, "Heather Rugs, all wool finish, 9x12, $3.75. Famous"),
        (20, 96, 12, "grade Thistle Rug, 9x12, $8.75. Standard Kelvers,"),
        (150, 121, 12, "9x12, $16.80. Lace Curtains, 45c a pair."),
    )
    assert items(advert)["$16.80"].startswith("Standard Kelvers")


def test_a_name_on_the_axis_of_its_paragraph_heads_it_though_set_in_its_type() -> None:
    advert = parse(
        (90, 40, 14, "Moorland Petticoats"), (20, 58, 14, "Deep plaited flounce, dust ruffle, in"),
        (20, 76, 14, "all the street shades and ribbons"), (20, 94, 14, "worn this fall, each $1.98"),
        (98, 130, 14, "Fellside Coats"), (20, 148, 14, "Full length, shawl collar, with frog"),
        (20, 166, 14, "fastenings and a guaranteed lining,"), (20, 184, 14, "while they last $12.50"),
    )  # fmt: skip
    assert items(advert) == {"$1.98": "Moorland Petticoats", "$12.50": "Fellside Coats"}


def test_a_size_right_under_the_number_of_an_article_is_one_of_the_article_named_after_it(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    named = headed_size(monkeypatch)
    parse(
        (20, 60, 17, "Leather Rocker"),
        (20, 304, 14, 'No. 36K777. Seamless "Tebriza"'),
        (20, 345, 14, "9×11"),
        (265, 345, 14, "$10.40"),
    )
    assert named == ['Seamless "Tebriza 9×11']


def test_another_size_behind_a_price_on_the_row_is_one_of_the_same_article() -> None:
    advert = parse(
        (400, 20, 30, "EGGS"), (400, 56, 14, "Large white, two dozen 37c"),
        (20, 120, 16, "Rivermont Coffee"), (180, 122, 12, "lb. 17c"), (400, 120, 16, "3 lbs."), (470, 112, 30, "49c"),
        (20, 160, 16, "Plume Flour"), (180, 162, 12, "24 lbs. 79c"), (400, 160, 16, "48 lbs."), (470, 152, 30, "1.53"),
    )  # fmt: skip
    assert "Coffee" in items(advert)["49c"]
    assert "Flour" in items(advert)["1.53"]


def test_a_heading_centred_over_sizes_and_their_prices_names_what_they_are_sizes_of() -> None:
    advert = parse(
        (40, 60, 14, "Six drawers, brass knobs"),
        (240, 140, 16, "JUTE MATS"),
        (40, 166, 14, "9 × 12"), (400, 166, 14, "$7.85"),
        (40, 190, 14, "Stair pads, per foot"), (400, 190, 14, "$2.40"),
    )  # fmt: skip
    assert {p.text: o.item for o in advert.offers for p in o.prices}["$7.85"] == "JUTE MATS 9 × 12"


def test_words_that_only_talk_are_no_heading_of_a_size(monkeypatch: pytest.MonkeyPatch) -> None:
    named = headed_size(monkeypatch)
    parse(
        (40, 60, 22, "HOOKED RUGS"),
        (40, 96, 14, "They lie flat and cannot curl"),
        (40, 124, 14, "9 × 12"), (400, 124, 14, "$7.85"),
    )  # fmt: skip
    assert named == ["HOOKED RUGS 9 × 12"]


@pytest.mark.parametrize("over", ["SIZES & PRICES, delivered", "Sizes and prices"])
def test_a_line_that_announces_sizes_and_prices_is_no_item(over: str) -> None:
    advert = parse((40, 60, 14, over), (400, 60, 14, "$7.85"))
    assert all(offer.item != over for offer in advert.offers)

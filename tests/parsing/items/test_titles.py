"""Titles over descriptions, and prices beside which the text names nothing. Texts invented."""

from __future__ import annotations

from adminer.parsing.items.assign import Pairing
from adminer.parsing.items.costs import BELOW
from adminer.parsing.items.entries import FIRST
from adminer.parsing.items.titles import with_title_heads, with_titles
from adminer.parsing.prices.prices import find_prices
from adminer.parsing.segments.items import cut_segments
from adminer.records import Advert
from tests.parsing.pages import Line, advert_text, parse


def items(advert: Advert) -> dict[str, str]:
    return {p.text: o.item for o in advert.offers for p in o.prices}


def whys(advert: Advert) -> dict[str, str]:
    return {p.text: o.why for o in advert.offers for p in o.prices}


def panel(title: str, told: str, more: str, was: str, price: str, x: int) -> list[Line]:
    return [(x, 20, 20, title), (x, 48, 12, told), (x, 63, 12, more), (x, 80, 10, was), (x, 95, 40, price)]


def panels(last: str) -> Advert:
    """Return four offers set alike, the last under a title that is given."""
    return parse(
        *panel("Reading Lamp", "Brass base and parchment shade,", "with a switch of its own", "Was $6.95", "$4.95", 20),
        *panel("Garden Chair", "Folds flat, canvas seat and", "with broad arms", "Was $3.50", "$2.49", 420),
        *panel("Card Table", "Padded top, steel legs and", "with brass corners", "Was $5.50", "$3.49", 820),
        *panel(last, "Leather cover, pencil and", "a pad of ruled paper", "Was $2.50", "$1.95", 1220),
    )


def test_a_title_the_trade_does_not_list_names_its_offer_where_titles_of_its_style_do() -> None:
    advert = panels("Quillmate")
    assert items(advert)["$4.95"] == "Reading Lamp"
    assert items(advert)["$1.95"] == items(advert)["$2.50"] == "Quillmate"
    assert "title" in whys(advert)["$1.95"]


def test_what_a_department_is_called_names_no_offer() -> None:
    assert items(panels("Tidy Corner"))["$1.95"] != "Tidy Corner"


def test_a_heading_over_a_list_names_none_of_its_rows() -> None:
    advert = parse(
        *panel("Reading Lamp", "Brass base and parchment shade,", "with a switch of its own", "Was $6.95", "$4.95", 20),
        *panel("Garden Chair", "Folds flat, canvas seat and", "with broad arms", "Was $3.50", "$2.49", 420),
        *panel("Card Table", "Padded top, steel legs and", "with brass corners", "Was $5.50", "$3.49", 820),
        (1220, 20, 20, "Quillmate"),
        (1220, 48, 12, "Pencils, with rubber tips, and"),
        (1220, 63, 12, "holders, 35c. Gummed white"),
        (1220, 78, 12, "Envelopes, the packet, 12c."),
    )
    assert items(advert)["35c"].startswith("Pencils")


def paragraph(*texts: str) -> Advert:
    return parse(*((20, 20 + 22 * i, 14, text) for i, text in enumerate(texts)))


def test_words_that_only_go_on_about_goods_are_no_name() -> None:
    advert = paragraph(
        "The library table, golden oak, with one drawer, was marked $14.00",
        "in May. While they last they go for $9.75. A porch swing with",
        "chains is $2.95.",
    )
    found = items(advert)
    assert found["$9.75"] == found["$14.00"]
    assert "go on about it" in whys(advert)["$9.75"]


def test_a_kind_or_a_measure_goes_with_the_goods_named_before_it() -> None:
    found = items(
        paragraph(
            "Seven-piece dining suite, stained, $64.00; in walnut, $75.00.",
            "Wheat flour, sack $1.45; the barrel, $5.60. Clothes baskets",
            "with handles, 98c. Kitchen stools, painted white, 79c.",
        )
    )
    assert found["$75.00"].endswith("walnut") and "dining suite" in found["$75.00"]
    assert found["$5.60"].startswith("Wheat flour")


def test_a_title_ends_at_the_price_of_its_description_though_that_stands_far_aside() -> None:
    advert = parse(
        (240, 20, 18, "LINEN TOWELS"), (240, 220, 18, "COTTON SHEETS"), (240, 320, 18, "WOOL BLANKETS"),
        (240, 48, 14, "Fringed ends, all white, 18 by 36. Huck of the same make, the dozen yards for 85c."),
        (100, 80, 14, "Boys' Felt Hats, 6 to 10 years, were 50c, now 29c."),
        (240, 248, 14, "Torn by hand, and with a broad hem at both ends, $2.40."),
        (240, 348, 14, "Grey, with a border, and bound at both ends, $3.60."),
    )  # fmt: skip
    assert items(advert)["29c"] == "Boys' Felt Hats"


def headed(title: str, told: str, *, beside: bool = False) -> tuple[str, str]:
    """Return the heading and the text of an offer for which the text under a title was chosen by other rules."""
    place: Line = (360, 37, 14, "$4.95") if beside else (30, 60, 30, "$4.95")
    advert = advert_text((20, 20, 16, title), (20, 39, 11, told), place)
    prices = find_prices(advert, [])
    segments = cut_segments(advert, [(p.start, p.end) for p in prices], prices)
    chosen = next(s for s in segments if s.text == told)
    (pairing,) = with_title_heads(advert, [prices], [Pairing(chosen, 0.5, BELOW)], segments)
    return (pairing.heading.text if pairing.heading else "", pairing.segment.text if pairing.segment else "")


def test_what_stands_right_under_a_title_of_goods_is_headed_by_it_and_a_description_gives_way_to_it() -> None:
    assert headed("Table Lamps", "Silk-lined shades") == ("Table Lamps", "Silk-lined shades")
    assert headed("Mattress Pads", "Quilted white cotton in bound edge") == ("", "Mattress Pads")


def test_labels_on_the_row_of_their_price_and_texts_under_a_department_keep_their_name() -> None:
    assert headed("Table Lamps", "Silk-lined shades", beside=True) == ("", "Silk-lined shades")
    assert headed("Shoe Department", "Silk-lined shades") == ("", "Silk-lined shades")
    assert headed("Table Lamps", "3-pc. bedroom set") == ("", "3-pc. bedroom set")


def named(title: str, *told: str, size: int = 16, why: str = BELOW) -> str:
    """Return the item of a price for which the last sentence under a title was chosen by other rules."""
    advert = advert_text((20, 20, size, title), (20, 39, 11, " ".join(told)), (30, 60, 30, "$4.95"))
    prices = find_prices(advert, [])
    segments = cut_segments(advert, [(p.start, p.end) for p in prices], prices)
    text = next(s for s in segments if s.text == told[-1])
    (pairing,) = with_titles(advert, [prices], [Pairing(text, 0.5, why)], segments)
    return pairing.segment.text if pairing.segment else ""


def test_a_later_sentence_of_a_description_gives_way_to_the_title_though_it_names_goods() -> None:
    assert named("Stoneware Casserole", "Glazed.", "Lid fits the skillet") == "Stoneware Casserole"


def test_the_first_sentence_under_a_title_and_one_after_a_price_are_no_later_sentence() -> None:
    assert named("Stoneware Casserole", "Lid fits the skillet") == "Lid fits the skillet"
    assert named("Stoneware Casserole", "Rack 19c. each.", "Lid fits the skillet") == "Lid fits the skillet"


def test_a_title_in_capitals_worn_to_a_smaller_size_stands_out_over_its_description() -> None:
    assert named("STONEWARE CASSEROLE", "Glazed.", "Lid fits the skillet", size=9) == "STONEWARE CASSEROLE"
    assert named("Stoneware Casserole", "Glazed.", "Lid fits the skillet", size=9) == "Lid fits the skillet"


def test_what_is_told_under_a_set_of_so_many_pieces_lists_them_and_the_set_is_the_item() -> None:
    assert named("9-Pc. Parlor Group", "Sofa, smoker and two end tables", why=FIRST) == "9-Pc. Parlor Group"
    assert named("The Parlor Group", "Sofa, smoker and two end tables", why=FIRST) == "Sofa, smoker and two end tables"

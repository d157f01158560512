"""The advertiser found by its form where no authority file names it; the forms are common practice, no source."""

from __future__ import annotations

import pytest

from tests.parsing.pages import Line, parse

BODY: list[Line] = [
    (40, 300, 16, "Dinner plates, plain white or with a blue edge"),
    (600, 300, 16, "25c"),
    (40, 340, 16, "Cups and saucers of a good weight"),
    (600, 340, 16, "19c"),
    (40, 380, 16, "Sauce dishes, each"),
    (600, 380, 16, "9c"),
]
PROSE: list[Line] = [
    (40, 300 + 18 * i, 14, "Everything for the table is sold at our lowest figures") for i in range(12)
]


def retailer_of(lines: list[Line]) -> str | None:
    advert = parse(*lines)
    return advert.retailer.name if advert.retailer else None


@pytest.mark.parametrize(
    ("head", "foot", "name"),
    [
        ("CORBELLE", "Corbelle, 620 Garnet Ave., Osterby", "CORBELLE"),
        ("Corbelle-Thorne", "", "Corbelle-Thorne"),
        ("Corbelle's 5c to $1.00 Store", "", "Corbelle's 5c to $1.00 Store"),
        ("CORBELLE STUDIO", "", "CORBELLE STUDIO"),
        ("Corbelle Tea Room", "", "Corbelle Tea Room"),
        ("CORBELLE STORES", "Opposite the Court House", "CORBELLE STORES"),
        ("SALE", "Opposite the Court House", None),
        ("SALE", "Corbelle Supermarkets · Osterby · Ferncliff", "Corbelle Supermarkets"),
        ("Corbelle Village presents", "", "Corbelle Village"),
        ("Big Corbelle Discount", "", "Big Corbelle Discount"),
        ("THE BUSY HERON", "The Busy Heron, N. P. Corbelle, Prop., Phone 340", "THE BUSY HERON"),
    ],
)
def test_the_advertiser_is_told_by_its_form(head: str, foot: str, name: str | None) -> None:
    lines = [(40, 40, 60, head), *BODY, *([(40, 440, 18, foot)] if foot else [])]
    assert retailer_of(lines) == name


@pytest.mark.parametrize(
    ("head", "foot"),
    [
        ("HARVEST SALE", ""),
        ("Bread and Butter", ""),
        ("Evenlode", "The Evenlode pattern, open stock"),
        ("Evenlode", "lovely Evenlode dinnerware, now complete"),
    ],
)
def test_slogans_pieces_and_lines_are_no_advertiser(head: str, foot: str) -> None:
    assert retailer_of([(40, 40, 60, head), *BODY, (40, 440, 16, foot or "and other things")]) is None


def test_a_small_name_over_a_line_is_believed_where_the_foot_begins_with_it_again() -> None:
    head: Line = (300, 200, 18, "Corbelle Village presents")
    assert retailer_of([head, *BODY, (40, 900, 18, "Corbelle Village, Osterby and Ferncliff")]) == "Corbelle Village"
    assert retailer_of([head, *BODY, (40, 900, 18, "Quantities are limited")]) is None


def test_partners_keep_every_name_though_a_comma_parts_them() -> None:
    assert retailer_of([*PROSE, (40, 900, 60, "Varley, Thornaby & Quill")]) == "Varley, Thornaby & Quill"


def test_a_street_corner_after_a_firm_is_no_partner() -> None:
    assert retailer_of([*PROSE, (40, 900, 30, "Varley Shoe Co., Ninth & Thornaby")]) == "Varley Shoe Co"


def test_a_pair_of_plain_words_is_no_firm() -> None:
    assert retailer_of([*PROSE, (40, 900, 22, "Sample and Booklet")]) is None
    assert retailer_of([(40, 40, 30, "Black & Tan"), *PROSE]) is None


def test_a_name_in_display_type_over_a_line_of_its_trade_is_the_house() -> None:
    head: list[Line] = [(40, 40, 60, "Aubrietia"), (60, 110, 18, "General drapery establishment")]
    assert retailer_of([*head, *PROSE]) == "Aubrietia"


def test_a_headline_of_plain_words_gives_way_to_the_signature() -> None:
    lines: list[Line] = [(40, 40, 60, "Quality Groceries"), *PROSE, (40, 900, 24, "J. S. VARLEY, LTD.")]
    assert retailer_of(lines) == "J. S. VARLEY, LTD"


def test_capitals_run_together_are_parted() -> None:
    assert retailer_of([*PROSE, (40, 900, 14, "THEVARLEY & THORNABYCO., Box37")]) == "THE VARLEY & THORNABY CO"

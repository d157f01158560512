"""Lines that head the text under them: what ends early over a sentence is a name, whatever its type."""

from __future__ import annotations

import pytest

from adminer.parsing.text.columns import is_head
from tests.parsing.pages import Line, advert_text, parse

UNDER: tuple[Line, ...] = ((20, 36, 12, "Black leatherette, tufted"), (20, 52, 12, "back, steel springs inside."))


@pytest.mark.parametrize(
    ("over", "heads"),
    [
        ((20, 20, 12, "Turkish Rocker"), True),
        ((20, 20, 12, "Turkish Rocker and Ottoman"), False),  # "Black" had no room
        ((20, 20, 12, "Turkish Rocker,"), False),
        ((34, 20, 12, "Turkish Rocker"), False),  # from another edge
    ],
)
def test_a_line_that_ends_early_heads_the_sentence_under_it(over: Line, heads: bool) -> None:
    text = advert_text(over, *UNDER)
    assert is_head(text, text.lines[0], text.lines[1]) is heads


def test_a_name_over_a_name_goes_on() -> None:
    text = advert_text(
        (20, 20, 12, "Turkish"), (20, 36, 12, "Rocker in Oak"), (20, 52, 12, "back, steel springs inside.")
    )
    assert not is_head(text, text.lines[0], text.lines[1])


def test_the_name_is_the_item_without_what_tells_of_it() -> None:
    advert = parse((20, 20, 12, "Turkish Rocker"), *UNDER, (20, 72, 18, "Price, $4.65"))
    assert advert.offers[0].item == "Turkish Rocker"


def test_a_row_reaches_to_its_price_and_a_row_with_a_price_is_no_heading() -> None:
    row: list[Line] = [(20, 130, 16, "Old Harrow, square bottle"), (420, 130, 16, "3/-"), (520, 130, 16, "35/-")]
    title: Line = (200, 100, 19, "GIN AND RUM")
    text = advert_text(title, *row)
    assert is_head(text, text.lines[0], text.lines[1])
    alone = advert_text(title, row[0])
    assert not is_head(alone, alone.lines[0], alone.lines[1])
    priced = advert_text(title, (480, 100, 16, "2/9"), (560, 100, 16, "30/-"), *row)
    assert not is_head(priced, priced.lines[0], priced.lines[3])


TOLD: tuple[Line, ...] = ((20, 36, 12, "Heavy, cut full and"), (20, 52, 12, "hooded in the plaid"))  # as wide as a head


@pytest.mark.parametrize(
    ("over", "heads"),
    [
        ("No. 214. Golf Cape", True),
        ("Cat. 3B17 Golf Cape", True),
        ("No. 214. “Fell” Cape", True),
        ("No. 8. Cape de Luxe", True),
        ("Two-Way Golf Cape", False),  # without a number it may be a piece of the text
        ("No. 214. Cape lined", False),  # the description goes on in the line
    ],
)
def test_a_number_of_the_catalogue_with_a_name_alone_on_its_line_heads_the_sentence_under_it(
    over: str, heads: bool
) -> None:
    text = advert_text((20, 20, 12, over), *TOLD)
    assert is_head(text, text.lines[0], text.lines[1]) is heads


def test_a_numbered_name_over_a_name_is_no_head() -> None:
    text = advert_text((20, 20, 12, "No. 214. Golf Cape"), (20, 36, 12, "No. 215. Tam Hat"))
    assert not is_head(text, text.lines[0], text.lines[1])


@pytest.mark.parametrize(
    ("over", "size", "heads"),
    [
        ("HOODED GOLF CAPES", 12, True),
        ("“FELL” GOLF CAPES.", 12, True),
        ("Hooded Golf Capes", 12, False),
        ("HOODEDGOLFINGCAPES", 12, False),  # a single word may open the text
        ("HOODED CAPES (WOOL)", 12, False),
        ("HOODED GOLF CAPES,", 12, False),
        ("HOODED GOLFING CAPES, FELL", 9, False),  # smaller than what it is over
    ],
)
def test_a_line_of_words_in_capitals_as_wide_as_its_column_heads_it(over: str, size: int, heads: bool) -> None:
    text = advert_text((20, 20, size, over), *TOLD)
    assert is_head(text, text.lines[0], text.lines[1]) is heads

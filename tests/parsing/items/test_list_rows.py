"""Rows of a list and what their labels name, known to the trade's lists or not. Texts invented."""

from __future__ import annotations

from adminer.parsing.items.assign import Pairing
from adminer.parsing.items.list_rows import LIST_ROW, with_list_rows
from adminer.parsing.prices.prices import find_prices
from adminer.parsing.segments.items import cut_segments
from adminer.parsing.text.cells import cells_of
from tests.parsing.pages import Line, advert_text

SIGN: Line = (150, 52, 13, "Sign of the Iron Clock")
ROWS: tuple[Line, ...] = (
    (20, 80, 13, "Cleaning"), (330, 80, 13, "$1.00"),
    (20, 98, 13, "Main Springs"), (330, 98, 13, "$0.75"),
    (20, 116, 13, "Watch Glasses"), (330, 116, 13, "$0.10"),
)  # fmt: skip


def paired(lines: tuple[Line, ...], price: str, chosen: str) -> Pairing:
    """Return what a price is for by its list, after a text was chosen for it by other rules."""
    advert = advert_text(*lines)
    prices = find_prices(advert, [], sterling_page=False)
    segments = cut_segments(advert, [(p.start, p.end) for p in prices], prices)
    text = next(s for s in segments if s.text == chosen)
    at = next(i for i, p in enumerate(prices) if p.text == price)
    pairings = [Pairing(text if i == at else None, 0.5, "") for i in range(len(prices))]
    return with_list_rows(advert, [[p] for p in prices], pairings, segments, cells_of(advert))[at]


def named(pairing: Pairing) -> str:
    return pairing.segment.text if pairing.segment else ""


def test_the_label_of_a_row_is_what_its_price_is_for_whatever_goods_stand_over_the_list() -> None:
    pairing = paired((SIGN, *ROWS), "$1.00", "Sign of the Iron Clock")
    assert (named(pairing), pairing.why) == ("Cleaning", LIST_ROW)


def test_two_rows_are_no_list() -> None:
    assert named(paired((SIGN, *ROWS[:4]), "$1.00", "Sign of the Iron Clock")) == "Sign of the Iron Clock"


def test_a_text_between_the_rows_is_the_second_line_of_a_label() -> None:
    lines = (*ROWS[:4], (40, 108, 8, "Blued steel"), *ROWS[4:])
    assert named(paired(lines, "$0.75", "Blued steel")) == "Blued steel"


def test_beside_display_prices_stand_no_rows_of_a_list() -> None:
    lines = (SIGN, *((x, y - (7 if x > 300 else 0), 27 if x > 300 else px, text) for x, y, px, text in ROWS))
    assert named(paired(lines, "$1.00", "Sign of the Iron Clock")) == "Sign of the Iron Clock"


def test_a_label_that_leans_on_what_was_named_before_names_nothing() -> None:
    lines: tuple[Line, ...] = (
        SIGN,
        (20, 80, 13, "Men's"), (330, 80, 13, "$1.00"),
        (20, 98, 13, "Boys'"), (330, 98, 13, "$0.75"),
        (20, 116, 13, "Girls'"), (330, 116, 13, "$0.10"),
    )  # fmt: skip
    assert named(paired(lines, "$1.00", "Sign of the Iron Clock")) == "Sign of the Iron Clock"

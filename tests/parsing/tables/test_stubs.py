"""What stands over the labels of a table on the row of its heads names the goods of its rows. All invented."""

from __future__ import annotations

import pytest

from adminer.parsing.prices.prices import find_prices
from adminer.parsing.tables.plain_tables import plain_rows
from adminer.parsing.tables.size_rows import size_rows
from adminer.parsing.tables.stubs import stub_over
from adminer.parsing.tables.table_rows import name_of_row
from adminer.parsing.text.cells import cells_of
from adminer.parsing.text.column_words import kind_of_head
from tests.parsing.pages import Line, advert_text, parse

COLUMNS = (20, 260, 420)
SIZES = ("54 x 90", "63 x 99", "81 x 108")
WERE, NOW = ("$2.15", "2.45", "3.05"), ("$1.60", "1.85", "2.30")
TITLE: Line = (120, 20, 34, "The Linen Room in January")


def table(*heads: str, two: bool = True) -> list[Line]:
    """Return the lines of a table of sizes under its heads, with a former price in each row where there are `two`."""
    rows = [heads, *zip(SIZES, WERE, NOW, strict=True)]
    return [
        (x, 120 + 28 * i, 16, cell)
        for i, row in enumerate(rows)
        for x, cell in list(zip(COLUMNS, row, strict=False))[: 3 if two else 2]
    ]


def plain_items(lines: list[Line]) -> list[str]:
    text = advert_text(*lines)
    made, _ = plain_rows(text, cells_of(text), find_prices(text, []), frozenset())
    return [segment.text for segment, _ in made]


def list_items(lines: list[Line]) -> list[str]:
    text = advert_text(*lines)
    made, _ = size_rows(text, cells_of(text), find_prices(text, []))
    return [segment.text for segment, _ in made]


def test_the_goods_over_the_sizes_of_a_table_are_what_its_rows_are_for() -> None:
    wanted = [f"Muslin sheets, {size}" for size in SIZES]
    assert plain_items([TITLE, *table("Muslin sheets", "Were", "Now")]) == wanted
    assert list_items([TITLE, *table("Muslin sheets", "Now", two=False)]) == wanted


def test_what_is_told_of_the_goods_after_a_comma_is_no_part_of_their_name() -> None:
    assert plain_items([TITLE, *table("Muslin sheets, bleached", "Reg.", "Sale price")])[0] == "Muslin sheets, 54 x 90"


@pytest.mark.parametrize(
    ("over", "beside", "stub"),
    [
        ((20, 100, 16, "Muslin sheets"), "Were", "Muslin sheets"),
        ((20, 100, 16, "Muslin sheets"), "Each", "Muslin sheets"),
        ((20, 100, 16, "Muslin sheets"), "Hemmed", ""),  # no head of prices
        ((60, 100, 16, "Muslin sheets"), "Were", ""),  # from another edge
        ((20, 60, 16, "Muslin sheets"), "Were", ""),  # too far over the first row
        ((20, 100, 16, "Our own make"), "Were", ""),  # no goods
    ],
)
def test_a_stub_names_goods_from_the_edge_of_the_labels_beside_a_head_of_prices(
    over: Line, beside: str, stub: str
) -> None:
    text = advert_text(over, (260, over[1], 16, beside), (20, 128, 16, "63 x 99"), (260, 128, 16, "$1.85"))
    row = next(line for line in text.lines if text.printed(line).startswith("63"))
    assert stub_over(text, row, row.flat) == stub


def test_sizes_by_two_measures_are_rows_of_what_their_heading_names_though_it_is_not_known() -> None:
    rows = [(x, y, px, text) for x, y, px, text in table("", "", two=False) if text]
    assert list_items([TITLE, (60, 84, 20, "FENNISHES"), *rows]) == [f"FENNISHES, {size}" for size in SIZES]


def test_a_term_over_a_column_is_no_heading_of_its_sizes() -> None:
    rows = [(x, y, px, text) for x, y, px, text in table("", "", two=False) if text]
    heading: list[Line] = [(60, 74, 20, "MUSLIN SHEETS"), (190, 102, 16, "REGULAR")]
    assert list_items([TITLE, *heading, *rows]) == [f"MUSLIN SHEETS, {size}" for size in SIZES]


def test_the_first_measure_of_a_size_is_no_number_of_its_row() -> None:
    assert name_of_row("63 x 99") == "63 x 99"
    assert name_of_row("63 Xenia lamp") == "Xenia lamp"


@pytest.mark.parametrize("head", ["Size in inches", "Length in feet", "Length", "Widths", "Waist", "Chest"])
def test_a_head_of_a_measure_is_over_sizes(head: str) -> None:
    assert kind_of_head(head) == "size"


def sized(head: str, *names: str) -> set[str]:
    """Return the items of a table of named sizes under a name that the trade does not list."""
    lines: list[Line] = [TITLE, (20, 84, 22, "1 Meadow Gate")]
    rows = [(head, "Were", "Now"), *zip(names, WERE, NOW, strict=True)]
    lines += [(x, 120 + 28 * i, 16, c) for i, row in enumerate(rows) for x, c in zip(COLUMNS, row, strict=True) if c]
    return {offer.item for offer in parse(*lines).offers}


def test_a_table_under_a_head_of_sizes_is_of_what_the_name_over_it_calls_its_goods() -> None:
    assert sized("Size", "Twin", "Full", "Queen") == {f"Meadow Gate, {size}" for size in ("Twin", "Full", "Queen")}


def test_a_name_over_rows_that_no_head_calls_sizes_names_none_of_them() -> None:
    assert not any("Meadow Gate" in item for item in sized("", "Twin", "Full", "Queen"))

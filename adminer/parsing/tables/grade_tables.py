"""Tables of sizes against grades ("Size | Woven | Tufted | Knotted"): a price is for one grade in one size.

Neither the head of the column nor the label of the row says alone what it is for.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final

from adminer.parsing.prices.column_heads import shares_row
from adminer.parsing.prices.prices import Found
from adminer.parsing.segments.items import Segment
from adminer.parsing.tables.measured_rows import Row, columns_of, free_pairs
from adminer.parsing.tables.plain_tables import heading_over
from adminer.parsing.tables.row_labels import RowLabel, name_in, row_labels
from adminer.parsing.tables.table_heads import kind_of_head
from adminer.parsing.tables.table_rows import row_segment
from adminer.parsing.text.cells import Cell
from adminer.parsing.text.item_words import WORD, clean_item
from adminer.parsing.text.text import AdvertText

_SIZE: Final = re.compile(r"(?:No\.? ?)?[\d½¼¾]")
_FEWEST: Final = 3  # rows, and columns of a table whose rows are goods
_SHARE: Final = 0.7
_HEAD_STEPS: Final = 2.5  # heights of the first row between it and the head of its column
_HEAD_LINES: Final = 2.0  # type sizes between the lines of a head
_GRADE_LETTERS: Final = 4

PriceRow = list[Found]


def grade_rows(
    advert: AdvertText, cells: Sequence[Cell], prices: Sequence[Found]
) -> tuple[list[Row], list[tuple[int, int]]]:
    """Return the items of tables with prices side by side, and the characters of their heads and labels."""
    made: list[Row] = []
    spans: list[tuple[int, int]] = []
    for columns in _tables(columns_of(advert, prices), cells):
        rows = _rows(columns)
        labels = row_labels(advert, rows, cells, prices)
        named = [label for label in labels if label is not None]
        if len(named) < max(_FEWEST, _SHARE * len(rows)):
            continue
        sizes = sum(_SIZE.match(label.cells[0].text) is not None for label in named) >= _SHARE * len(named)
        heads = [_head(advert, column[0], cells) for column in columns]
        found = [head for head in heads if head is not None]
        if len(found) < len(columns) or not (sizes or len(columns) >= _FEWEST):
            continue
        over = [_line_over(head, cells) for head in found]
        grades = [_grade(head, line, whole=sizes) for head, line in zip(found, over, strict=True)]
        if sizes and (heading := heading_over(advert, columns[0][0], named[0])):
            grades = [f"{heading}, {grade}" for grade in grades]
        for row, label in zip(rows, labels, strict=True):
            made += [
                (_graded(advert, label, grades[_column_of(columns, price)], sizes=sizes), frozenset([price.start]))
                for price in row
                if label is not None
            ]
        spans += [(cell.start, cell.end) for label in named for cell in label.cells]
        spans += [(cell.start, cell.end) for cell in (*found, *over) if cell is not None]
    return made, spans


def _tables(columns: list[list[Found]], cells: Sequence[Cell]) -> list[list[list[Found]]]:
    """Return the columns that stand side by side, most of their rows in common, from left to right.

    Prices on terms ("with the card") are told apart by their heads already.
    """
    tables: list[list[list[Found]]] = []
    plain = [c for c in columns if all(p.condition == "everyone" and p.role == "price" for p in c)]
    for column in sorted(plain, key=lambda c: c[0].place.x):
        home = next((table for table in tables if _beside(table[-1], column, cells)), None)
        if home is None:
            tables.append([column])
        else:
            home.append(column)
    return [table for table in tables if len(table) > 1]


def _beside(left: Sequence[Found], right: Sequence[Found], cells: Sequence[Cell]) -> bool:
    """Say whether two columns have most rows in common, and no words between their prices as a list has its names."""
    return free_pairs(left, right, cells, WORD.search) >= _SHARE * max(len(left), len(right))


def _rows(columns: list[list[Found]]) -> list[PriceRow]:
    """Return the prices of each row from left to right; a price alone on its row is by chance in line with others."""
    rows = [
        [first, *(p for column in columns[1:] for p in column if shares_row(first.place, p.place))]
        for first in columns[0]
    ]
    return [row for row in rows if len(row) > 1]


def _column_of(columns: list[list[Found]], price: Found) -> int:
    return next(i for i, column in enumerate(columns) if any(price is other for other in column))


def _head(advert: AdvertText, top: Found, cells: Sequence[Cell]) -> Cell | None:
    """Return the name of a grade right over the first price of a column; "Sale" or "Each" names none."""
    over = [
        cell
        for cell in cells
        if 0 < top.place.centre[1] - cell.flat.centre[1] < _HEAD_STEPS * max(top.place.h, advert.body_px)
        and cell.flat.across(top.place) > 0
        and not shares_row(cell.flat, top.place)
    ]
    head = max(over, key=lambda cell: cell.flat.centre[1], default=None)
    if head is None or kind_of_head(head.text) is not None or any(c.isdigit() for c in head.text):
        return None
    words = WORD.findall(clean_item(head.text))
    return head if max(map(len, words), default=0) >= _GRADE_LETTERS else None


def _line_over(head: Cell, cells: Sequence[Cell]) -> Cell | None:
    """Return the first line of a head in two lines: the pattern over its ware, the weight over its stuff."""
    over = [
        cell
        for cell in cells
        if 0 < head.flat.centre[1] - cell.flat.centre[1] < _HEAD_LINES * head.line.type_px
        and abs(cell.flat.centre[0] - head.flat.centre[0]) < head.line.type_px
        and not cell.text[:1].islower()
        and kind_of_head(cell.text) is None
    ]
    return over[0] if len(over) == 1 else None


def _grade(head: Cell, over: Cell | None, *, whole: bool) -> str:
    """Return the name of a grade: both lines of its head, of a pattern only the line that names it."""
    if over is None:
        return head.text
    return f"{over.text} {head.text}" if whole else over.text


def _graded(advert: AdvertText, label: RowLabel, grade: str, *, sizes: bool) -> Segment:
    """Return the item of one price: the grade and its size, or the pattern and the piece of it."""
    if sizes or label.name is None:
        return row_segment(advert, label.cells[0], grade, label.cells[0])
    return row_segment(advert, label.name, f"{grade} {name_in(label.name.text)}", label.size)

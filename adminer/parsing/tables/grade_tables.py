"""Tables of sizes against grades ("Size | Woven | Tufted | Knotted"): a price is for one grade in one size.

Neither the head of the column nor the label of the row says alone what it is for. The sizes may be the heads as well
("To fit age | 6 | 8 | 10").
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Final

from adminer.parsing.prices.column_heads import shares_row
from adminer.parsing.prices.prices import Found
from adminer.parsing.tables.measured_rows import Row, columns_of, free_pairs
from adminer.parsing.tables.plain_tables import heading_over, title_over
from adminer.parsing.tables.row_labels import RowLabel, name_in, row_labels
from adminer.parsing.tables.table_rows import row_segment
from adminer.parsing.text.cells import Cell
from adminer.parsing.text.column_words import kind_of_head
from adminer.parsing.text.goods import has_goods
from adminer.parsing.text.item_words import WORD
from adminer.parsing.text.lexicon import word_list
from adminer.parsing.text.naming import name_of
from adminer.parsing.text.text import AdvertText

_SIZE: Final = re.compile(
    r"(?:No\.? ?)?[\d½¼¾]|(?:twin|full|queen|king|single|double|small|medium|large)\b", re.IGNORECASE
)
_FEWEST: Final = 3  # rows, and columns of a table whose rows are goods
_FEW_ROWS: Final = 2  # of a table whose heads are sizes
_FLAT: Final = 4  # columns to a row, at most
_SHARE: Final = 0.7
_HEAD_STEPS: Final = 2.5  # heights of the first row between it and the head of its column
_HEAD_LINES: Final = 2.0  # type sizes between the lines of a head
_FINISHES: Final = word_list("finish_head")  # a price in the column of one is that of the article so finished
_GRADE_LETTERS: Final = 4  # of a head, in words of at least
_WORD_LETTERS: Final = 3

PriceRow = list[Found]


@dataclass(frozen=True, slots=True)
class _Table:
    """Hold a table: its prices by columns and by rows, the head of each column, and the label of each row."""

    columns: list[list[Found]]
    rows: list[PriceRow]
    heads: list[Cell]
    stub: Cell | None  # what stands over the labels, on the row of the heads
    labels: list[RowLabel | None]

    @property
    def named(self) -> list[RowLabel]:
        """Return the labels that there are."""
        return [label for label in self.labels if label is not None]

    @property
    def is_of_sizes(self) -> bool:
        """Say whether its rows are sizes."""
        return _are_sizes([label.cells[0].text for label in self.named])

    @property
    def priced(self) -> Iterator[tuple[Found, RowLabel, int]]:
        """Return each price with the label of its row and the number of its column."""
        for row, label in zip(self.rows, self.labels, strict=True):
            if label is None:
                continue
            for price in row:
                column = next(i for i, c in enumerate(self.columns) if any(price is other for other in c))
                yield price, label, column


def grade_rows(
    advert: AdvertText, cells: Sequence[Cell], prices: Sequence[Found]
) -> tuple[list[Row], list[tuple[int, int]]]:
    """Return the items of tables with prices side by side, and the characters of their heads and labels."""
    made: list[Row] = []
    spans: list[tuple[int, int]] = []
    for columns in _tables(columns_of(advert, prices, _FEW_ROWS), cells):
        table = _table_of(advert, columns, cells, prices)
        if table is None:
            continue
        of_sizes = table.is_of_sizes
        if not of_sizes and len(columns) < _FEWEST:
            continue
        sized = not of_sizes and _are_sizes([head.text for head in table.heads])
        if not sized and (len(table.rows) < _FEWEST or not all(WORD.search(head.text) for head in table.heads)):
            continue
        alone = not any(label.names for label in table.named)
        heading = heading_over(advert, columns[0][0], table.named[0], alone=alone)
        over = [None if sized else _line_over(head, cells) for head in table.heads]
        if sized:
            made += _sized(advert, table, heading)
        else:
            title = title_over(advert, columns[0][0], table.named[0]) if of_sizes and alone and not heading else ""
            made += _graded(advert, table, over, heading if of_sizes else "", title)
        spans += [(cell.start, cell.end) for label in table.named for cell in label.cells]
        spans += [(cell.start, cell.end) for cell in (*table.heads, *over) if cell is not None]
    return made, spans


def _table_of(
    advert: AdvertText, columns: list[list[Found]], cells: Sequence[Cell], prices: Sequence[Found]
) -> _Table | None:
    """Return the table that columns make, None where one has no head or most rows have no label.

    What stands left of the first head, over the labels, is of another panel.
    """
    tops = [column[0] for column in columns]
    heads = [head for head in (_head(advert, top, tops, cells) for top in tops) if head is not None]
    if len(heads) < len(columns) or len(columns) > _FLAT * max(map(len, columns)):
        return None
    before = [c for c in cells if c.flat.right <= heads[0].flat.x and shares_row(c.flat, heads[0].flat)]
    stub = max(before, key=lambda c: c.flat.x, default=None)
    told = stub is not None and kind_of_head(stub.text) is not None
    edge = min(c.flat.x for c in before if kind_of_head(c.text) is not None) if told else -math.inf
    inside = [c for c in cells if c.flat.right > edge]
    rows = _rows(columns)
    table = _Table(columns, rows, heads, stub, row_labels(advert, rows, inside, prices))
    return table if len(table.named) >= max(_FEW_ROWS, _SHARE * len(rows)) else None


def _are_sizes(texts: Sequence[str]) -> bool:
    return sum(_SIZE.match(text) is not None for text in texts) >= _SHARE * len(texts)


def _sized(advert: AdvertText, table: _Table, heading: str) -> list[Row]:
    """Return the items of a table whose heads are sizes: the name of the row, under its heading, in the size."""
    made: list[Row] = []
    sizes = _with_stub(table)
    for price, label, column in table.priced:
        own = name_of(" ".join(cell.text.strip(" .,") for cell in label.cells))
        name = own if label.names or not heading else f"{name_of(heading)}, {own}"
        item = row_segment(advert, label.cells[0], f"{name}, {sizes[column]}", None)
        made.append((replace(item, whole=True), frozenset([price.start])))
    return made


def _with_stub(table: _Table) -> list[str]:
    """Return the sizes in heads; bare figures with the last word of what stands over the labels ("To fit age")."""
    lettered = any(c.isalpha() for head in table.heads for c in head.text)
    words = WORD.findall(table.stub.text) if table.stub is not None and not lettered else []
    return [f"{words[-1].lower()} {head.text}" if words else head.text for head in table.heads]


def _graded(advert: AdvertText, table: _Table, over: Sequence[Cell | None], heading: str, title: str) -> list[Row]:
    """Return the items of a table whose heads are grades or patterns: the grade and its size, or the piece of it.

    A grade is told under the heading of the table, under the title of the advert only where it names no goods itself.
    """
    sizes = table.is_of_sizes
    grades = [_grade(head, line, whole=sizes) for head, line in zip(table.heads, over, strict=True)]
    stems = [heading or ("" if has_goods(grade) else title) for grade in grades]
    grades = [f"{stem}, {grade}" if stem else grade for stem, grade in zip(stems, grades, strict=True)]
    made: list[Row] = []
    for price, label, column in table.priced:
        if sizes or label.name is None:
            item = replace(row_segment(advert, label.cells[0], grades[column], label.cells[0]), whole=True)
        else:
            item = row_segment(advert, label.name, f"{grades[column]} {name_in(label.name.text)}", label.size)
        made.append((item, frozenset([price.start])))
    return made


def _tables(columns: list[list[Found]], cells: Sequence[Cell]) -> list[list[list[Found]]]:
    """Return the columns that stand side by side, most of their rows in common, from left to right.

    Prices on terms ("with the card") are told apart by their heads already.
    """
    tables: list[list[list[Found]]] = []
    plain = [[p for p in c if _is_plain(p)] for c in columns if sum(map(_is_plain, c)) > len(c) / 2]
    for column in sorted(plain, key=lambda c: c[0].place.x):
        home = next((table for table in tables if _beside(table[-1], column, cells)), None)
        if home is None:
            tables.append([column])
        else:
            home.append(column)
    return [table for table in tables if len(table) > 1]


def _is_plain(price: Found) -> bool:
    return price.condition == "everyone" and price.role in {"price", "reference"}


def _beside(left: Sequence[Found], right: Sequence[Found], cells: Sequence[Cell]) -> bool:
    """Say whether two columns have most rows in common, and no words between their prices as a list has its names."""
    return free_pairs(left, right, cells, WORD.search) >= max(_FEW_ROWS, _SHARE * min(len(left), len(right)))


def _rows(columns: list[list[Found]]) -> list[PriceRow]:
    """Return the prices of each row from left to right; a few on a row are by chance in line with the others.

    A row goes by its first price, which stands in the second column where the first leaves a blank.
    """
    rows: list[PriceRow] = []
    for number, column in enumerate(columns):
        placed = {id(price) for row in rows for price in row}
        for first in column:
            if id(first) not in placed:
                right = [p for other in columns[number + 1 :] for p in other if id(p) not in placed]
                rows.append([first, *(p for p in right if shares_row(first.place, p.place))])
    return [row for row in rows if len(row) > max(1, len(columns) / 2)]


def _head(advert: AdvertText, top: Found, tops: Sequence[Found], cells: Sequence[Cell]) -> Cell | None:
    """Return the name of a grade over the first row of a table and a column of it; "Sale" or "Each" names none."""
    first = min(tops, key=lambda t: t.place.centre[1]).place
    over = [
        cell
        for cell in cells
        if 0 < first.centre[1] - cell.flat.centre[1] < _HEAD_STEPS * max(first.h, advert.body_px)
        and cell.flat.across(top.place) > 0
        and not shares_row(cell.flat, first)
    ]
    head = max(over, key=lambda cell: cell.flat.centre[1], default=None)
    if head is not None and sum(head.flat.across(other.place) > 0 for other in tops) > 1:
        head = _words_over(advert, head, top)
    if head is None or (kind_of_head(head.text) is not None and head.text.lower() not in _FINISHES):
        return None
    lettered = sum(len(word) for word in WORD.findall(head.text) if len(word) >= _WORD_LETTERS) >= _GRADE_LETTERS
    return head if lettered or _SIZE.match(head.text) else None


def _words_over(advert: AdvertText, cell: Cell, top: Found) -> Cell | None:
    """Return the words of a cell over one price, where the heads of two columns are set close."""
    at, words = cell.start, []
    for word in cell.line.words:
        start = advert.text.find(word.text, at, cell.end)
        if start < 0:
            continue
        at = start + len(word.text)
        if advert.flat(word.box).across(top.place) > 0:
            words.append((start, at))
    if not words:
        return None
    start, end = words[0][0], words[-1][1]
    return Cell(start, end, advert.text[start:end], advert.flat(advert.box_of(start, end)), cell.line)


def _line_over(head: Cell, cells: Sequence[Cell]) -> Cell | None:
    """Return the first line of a head in two lines: the pattern over its ware, the weight over its stuff."""
    over = [
        cell
        for cell in cells
        if 0 < head.flat.centre[1] - cell.flat.centre[1] < _HEAD_LINES * head.line.type_px
        and min(abs(cell.flat.centre[0] - head.flat.centre[0]), abs(cell.flat.right - head.flat.right))
        < head.line.type_px
        and not cell.text[:1].islower()
        and kind_of_head(cell.text) is None
    ]
    return over[0] if len(over) == 1 else None


def _grade(head: Cell, over: Cell | None, *, whole: bool) -> str:
    """Return the name of a grade: both lines of its head, of a pattern only the line that names it."""
    if over is None:
        return head.text
    return f"{over.text} {head.text}" if whole else over.text

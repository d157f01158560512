"""Lists of prices with a column of measures between names and prices ("Corn, No. 2 can   14 points   14¢").

No heads tell what such a column holds; its own cells do, each a figure with one and the same word, or a unit of size.
The name of a row is then the cell at its left, however far, and never the measure beside the price.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Callable, Sequence
from itertools import pairwise
from typing import Final

from rapidfuzz import fuzz

from adminer.parsing.prices.column_heads import shares_row
from adminer.parsing.prices.prices import Found
from adminer.parsing.segments.items import Segment
from adminer.parsing.tables.table_rows import row_segment
from adminer.parsing.text.cells import Cell
from adminer.parsing.text.goods import measures
from adminer.parsing.text.lexicon import word_list
from adminer.parsing.text.text import AdvertText

_MEASURE: Final = re.compile(r"(?:[A-Z]{1,2} ?-?)?(?P<n>[\d½¼¾⅓⅔⅛./-]{1,6})[ -]?(?P<word>[A-Za-z]{2,9})?\.?(?: each)?")
# of "lb." and "oz." worn type leaves "1bs", "bs" and "02"
_PACKAGE: Final = (
    rf"(?:[l1I]?bs?|[o0][z2]|{'|'.join(sorted(measures() | word_list('size') | word_list('size_cells')))})"
)
# a measure or a package by itself, or both: at least one word, so that bare figures are no size, nor is the "reg."
# before a former price
_SIZE: Final = re.compile(
    rf"(?!reg$)(?:No[.:]? ?)?(?:[\d½¼¾⅓⅔⅛./-]{{1,5}}[ -]?)?(?:{_PACKAGE}\b\.?[ -]?){{1,3}}|No[.:]? ?\d{{1,3}}½?|"
    r"(?:set|pkg\.?|box|bag) of \d{1,3}",
    re.IGNORECASE,
)
NAMED: Final = re.compile(r"[A-Za-z]{3}")
_ALIKE: Final = 60  # rapidfuzz ratio: the word of a measure is short and set small, so often misread
_SHARE: Final = 0.7  # of the cells of a column of measures
_FEWEST: Final = 3  # rows
_EDGES: Final = 1.0  # body types between the edges of two prices of one column
_STEPS: Final = 2.5  # usual steps from row to row at which a column has ended
_APART: Final = 4.0  # body types between two parts of a name
_TOUCH: Final = 3  # pixels by which the places of two prices of a row may reach into each other
_SIZES: Final = (0.6, 1.7)  # type sizes of the prices of one column

Row = tuple[Segment, frozenset[int]]


def measured_rows(
    advert: AdvertText, cells: Sequence[Cell], prices: Sequence[Found]
) -> tuple[list[Row], list[tuple[int, int]]]:
    """Return the rows as items with the first characters of their prices, and the characters of measures and names."""
    rows: list[Row] = []
    spans: list[tuple[int, int]] = []
    for column in columns_of(advert, prices):
        left = [words_left_of(advert, price, cells, prices) for price in column]
        beside = [row[-1] for row in left if len(row) > 1 and row[-2].flat.right <= row[-1].flat.x]
        if len(beside) < _FEWEST or not _are_measures(beside):
            continue
        for price, row in zip(column, left, strict=True):
            measured = bool(row) and _is_measure(row[-1])
            name = _name_of(advert, [c for c in row[:-1] if c.flat.right <= row[-1].flat.x] if measured else row[:1])
            if (not measured and len(row) > 1) or name is None or not NAMED.search(name.text):
                continue
            size = row[-1] if measured and is_size(row[-1]) else None
            rows.append((row_segment(advert, name, name.text, size), frozenset([price.start])))
            spans += [(name.start, name.end), (row[-1].start, row[-1].end)]
    return rows, spans


def columns_of(advert: AdvertText, prices: Sequence[Found], fewest: int = _FEWEST) -> list[list[Found]]:
    """Return the prices that stand one under another in even steps, edges flush at the left or at the right."""
    columns: list[list[Found]] = []
    for price in sorted(prices, key=lambda p: p.place.centre[1]):
        over = [column for column in columns if _is_next(advert, column, price)]
        home = max(over, key=lambda column: column[-1].place.centre[1], default=None)
        if home is None:
            columns.append([price])
        else:
            home.append(price)
    return [column for column in columns if len(column) >= fewest]


def free_pairs(
    left: Sequence[Found], right: Sequence[Found], cells: Sequence[Cell], parts: Callable[[str], object]
) -> int:
    """Count the prices of two columns that share a row, no cell between them of a text that `parts` columns."""
    return sum(
        not any(
            p.place.right <= c.flat.centre[0] <= q.place.x and shares_row(c.flat, p.place) and parts(c.text)
            for c in cells
        )
        for p in left
        for q in right
        if p.place.right < q.place.x + _TOUCH and shares_row(p.place, q.place)
    )


def _is_next(advert: AdvertText, column: Sequence[Found], price: Found) -> bool:
    above = column[-1]
    flush = min(abs(above.place.right - price.place.right), abs(above.place.x - price.place.x))
    if flush > _EDGES * advert.body_px or not _SIZES[0] < price.type_px / max(above.type_px, 1.0) < _SIZES[1]:
        return False
    step = price.place.centre[1] - above.place.centre[1]
    steps = sorted(b.place.centre[1] - a.place.centre[1] for a, b in pairwise(column))
    usual = steps[len(steps) // 2] if steps else 2 * max(above.type_px, price.type_px, advert.body_px)
    return 0.4 * price.place.h < step < _STEPS * usual


def left_of(advert: AdvertText, price: Found, cells: Sequence[Cell], prices: Sequence[Found]) -> list[Cell]:
    """Return the cells on the row of a price from left to right, back to the next price at its left.

    Words set close before the price, in one cell with it, are the last of them.
    """
    wall = max(
        (p.place.right for p in prices if p.place.right < price.place.x and shares_row(p.place, price.place)),
        default=-1,
    )
    beside = [
        c for c in cells if wall <= c.flat.x and c.flat.right <= price.place.x + 2 and shares_row(c.flat, price.place)
    ]
    for cell in cells:
        close = advert.text[cell.start : price.start].rstrip() if cell.start < price.start < cell.end else ""
        if close:
            end = cell.start + len(close)
            beside.append(Cell(cell.start, end, close, advert.flat(advert.box_of(cell.start, end)), cell.line))
    return sorted(beside, key=lambda c: c.flat.x)


def words_left_of(advert: AdvertText, price: Found, cells: Sequence[Cell], prices: Sequence[Found]) -> list[Cell]:
    """Return the cells on the row of a price that say something: no leaders."""
    return [cell for cell in left_of(advert, price, cells, prices) if any(map(str.isalnum, cell.text))]


def _name_of(advert: AdvertText, cells: Sequence[Cell]) -> Cell | None:
    """Return the last of the cells with those before it that stand a few word spaces apart, as one."""
    if not cells:
        return None
    name = cells[-1]
    for cell in reversed(cells[:-1]):
        if name.flat.x - cell.flat.right > _APART * advert.body_px or cell.line.number != name.line.number:
            break
        name = Cell(cell.start, name.end, advert.text[cell.start : name.end], cell.flat.joined(name.flat), cell.line)
    return name


def _is_measure(cell: Cell) -> bool:
    return is_size(cell) or _MEASURE.fullmatch(cell.text.strip(" .,")) is not None


def is_size(cell: Cell) -> bool:
    """Say whether a cell is nothing but units, packages and their figures: "lb. tin", "No. 2½ can", "12-oz. jar"."""
    return _SIZE.fullmatch(cell.text.strip(" .,")) is not None


def _are_measures(cells: Sequence[Cell]) -> bool:
    """Say whether the cells of a column are figures with one word, misread here and there, that counts them."""
    if sum(map(is_size, cells)) >= _SHARE * len(cells):
        return True
    found = [m for c in cells if (m := _MEASURE.fullmatch(c.text.strip(" .,")))]
    words = [m["word"].lower() for m in found if m["word"]]
    if len(found) < _SHARE * len(cells) or len(words) < _SHARE * len(found):
        return False
    usual = Counter(words).most_common(1)[0][0]
    return sum(fuzz.ratio(word, usual) >= _ALIKE for word in words) >= _SHARE * len(words)

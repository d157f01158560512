"""Tables that no heads explain: prices side by side in even rows, the name of each row at its left.

The cells of such a row before its first price are its name and its size ("Foam tape   1/4 x 17 ft.   reg. 89¢   59¢");
a row that tells only a size goes on with the name above. Common practice of printed price lists, no source.
"""

from __future__ import annotations

import math
import re
from collections.abc import Sequence
from itertools import pairwise
from typing import Final

from adminer.parsing.prices.column_heads import shares_row
from adminer.parsing.prices.prices import Found
from adminer.parsing.tables.measured_rows import NAMED, Row, columns_of, free_pairs
from adminer.parsing.tables.row_labels import RowLabel, is_term, name_in, row_labels
from adminer.parsing.tables.size_rows import SECTION
from adminer.parsing.tables.stubs import stub_over
from adminer.parsing.tables.table_rows import row_segment
from adminer.parsing.text.cells import Cell
from adminer.parsing.text.column_words import kind_of_head
from adminer.parsing.text.columns import TITLE, is_head
from adminer.parsing.text.goods import has_goods
from adminer.parsing.text.naming import goods_phrase, is_slogan
from adminer.parsing.text.text import AdvertText, TextLine

_FEWEST: Final = 3  # rows, or columns of a table of
_FEW_ROWS: Final = 2
_SHARE: Final = 0.7  # of the rows: with a label
_PAIRED: Final = 0.5  # of the rows: with two prices and more, where others say "FREE"
_DISPLAY: Final = 1.6  # body types: prices so large stand in panels
_REACH: Final = 14.0  # body types from a heading to the first row: a description stands between
_LARGEST: Final = 1.8  # times the type of the rows: a line so large heads the advert and may name a house
_TITLE_WORDS: Final = 8
_BESIDE: Final = 0.25  # of the height of a head: heads of one line and of two stand in one row
_ORDER_NUMBER: Final = re.compile(r"\d{0,3} ?[A-Z]{1,3} ?-?\d{2,6}[A-Z]?")  # of a catalogue: "35 T 0421", "H408"
# of the quantity only: other heads of a price list ("White", "Plain") may be the label of a row as well
_PRICE_HEAD: Final = re.compile(
    r"(?:each|prices?|(?:per|the|a)(?: (?:doz(?:en)?|gross|pair|set|10+))?|doz(?:en)?|10+)[ .,:]*", re.IGNORECASE
)
_HEAD_STEPS: Final = 2.5  # heights from the head of the labels to the first
_NUMBERED: Final = re.compile(r"^\d{1,2}\.? (?=[A-Z])")  # the number of an article in the picture over it
_NAMING: Final = 0.5  # of the labels of a table


def plain_rows(
    advert: AdvertText, cells: Sequence[Cell], prices: Sequence[Found], names: frozenset[str]
) -> tuple[list[Row], list[tuple[int, int]]]:
    """Return the rows of tables as items with the first characters of their prices, and their characters.

    Words of `names` (lower case) are never taken for misread words of the trade.
    """
    made: list[Row] = []
    spans: list[tuple[int, int]] = []
    for table in _tables(advert, cells, prices):
        printed = _rows(table)
        labelled = zip(printed, row_labels(advert, printed, cells, prices), strict=True)
        rows = [(row, label) for row, label in labelled if not _is_of_heads(label)]
        fewest = _FEW_ROWS if min((len(row) for row, _ in rows), default=0) >= _FEWEST else _FEWEST
        least = max(fewest, _SHARE * len(rows))
        told = [label for _, label in rows if label is not None]
        worded = [label for label in told if label.name is not None]
        paired = sum(len(row) > 1 for row, _ in rows)
        if paired < max(fewest, _PAIRED * len(rows)) or len(told) < least:
            continue
        goods = sum(label.names for label in worded)
        named = len(worded) >= _NAMING * len(told) and goods >= _NAMING * len(worded)
        stub = stub_over(advert, told[0].cells[0].line, told[0].cells[0].flat)
        sized = not goods and _are_under_sizes(cells, told)
        heading = "" if named else stub or heading_over(advert, rows[0][0][0], told[0], alone=not goods, sized=sized)
        if not named and not goods:
            heading = heading or title_over(advert, rows[0][0][0], told[0])
        if not named and not heading:
            continue
        name: Cell | None = None
        over = math.inf
        for row, label in rows:
            if label is None:
                continue
            name = label.name or name
            if heading:  # of another section, where one stands between two rows
                heading = heading_over(advert, row[0], label, alone=True, below=over) or heading
            over = label.cells[0].flat.centre[1]
            if heading and not label.names:
                item = row_segment(advert, label.cells[0], _under(heading, label), None)
            elif name is not None:
                item = row_segment(advert, label.name or label.cells[0], name_in(name.text, names), label.size)
            else:
                continue
            made.append((item, frozenset(p.start for p in row)))
            spans += [(c.start, c.end) for c in label.cells]
    return made, spans


def _are_under_sizes(cells: Sequence[Cell], labels: Sequence[RowLabel]) -> bool:
    """Say whether a head over the labels of a table says that they are sizes."""
    top = min(labels, key=lambda label: label.cells[0].flat.y).cells[0].flat
    return any(
        kind_of_head(cell.text) == "size"
        and 0 < top.centre[1] - cell.flat.centre[1] < _HEAD_STEPS * max(top.h, cell.flat.h)
        and cell.flat.across(top) > 0
        for cell in cells
    )


def _is_of_heads(label: RowLabel | None) -> bool:
    """Say whether a row is that of the heads: "Each", "Per 10", whose figure was taken for a price."""
    return label is not None and all(_PRICE_HEAD.fullmatch(cell.text) for cell in label.cells)


def _under(heading: str, label: RowLabel) -> str:
    """Return the article of a heading in the size or kind that a row tells, this alone under two goods at once."""
    told = " ".join(c.text.strip(" .,") for c in label.cells)
    names = any(c.text[:1].isupper() and NAMED.search(c.text) for c in label.cells)  # "D-35" is an order number
    return told if SECTION.search(heading) and names else f"{heading}, {told}"


def heading_over(
    advert: AdvertText,
    first: Found,
    label: RowLabel,
    *,
    alone: bool = False,
    sized: bool = False,
    below: float = -math.inf,
) -> str:
    """Return the goods that the nearest heading over a table, a line or more between, names; empty where none does.

    Where it stands `alone`, no row naming goods, the first heading in capitals names them even if they are not known;
    where the rows are `sized`, told by a head to be sizes, the first one set as a name. Only lines `below` a height
    count.
    """
    top = label.cells[0].flat.centre[1]
    over = [
        line
        for line in advert.lines
        if below < line.flat.centre[1] < top < line.flat.centre[1] + _REACH * advert.body_px
        and _is_across(line, first, label)
        and not _PRICE_HEAD.fullmatch(advert.printed(line))  # the heading stands over the names
    ]
    over = [line for line in over if not _is_of_column_heads(advert, line, over)]
    over.sort(key=lambda line: -line.flat.centre[1])
    for under, line in pairwise([label.cells[0].line, *over]):
        text = advert.printed(line)
        fits = line.type_px <= _LARGEST * label.cells[0].line.type_px and not text[:1].islower()
        if not fits or not is_head(advert, line, under):
            continue
        if has_goods(text) or (alone and _may_name(text)) or (sized and TITLE.match(_NUMBERED.sub("", text))):
            return _NUMBERED.sub("", text).strip(" .,:;")
    return ""


def title_over(advert: AdvertText, first: Found, label: RowLabel) -> str:
    """Return the goods that the nearest line of display type over a table names, however far; empty where none does."""
    row = label.cells[0].line
    over = [
        line
        for line in advert.lines
        if line.flat.centre[1] < row.flat.y and line.type_px > _LARGEST * row.type_px and _is_across(line, first, label)
    ]
    title = max(over, key=lambda line: line.flat.centre[1], default=None)
    text = advert.printed(title).strip(" .,:;!") if title is not None else ""
    goods = goods_phrase(text) if len(text.split()) <= _TITLE_WORDS else ""
    return text if goods and text.endswith(goods) else ""  # "Carpet Works" and "Shoe Store" name houses


def _is_across(line: TextLine, first: Found, label: RowLabel) -> bool:
    """Say whether a line reaches over a row from the edge of its label to its first price."""
    return min(line.flat.right, first.place.right) > max(line.flat.x, label.edge)


def _is_of_column_heads(advert: AdvertText, line: TextLine, over: Sequence[TextLine]) -> bool:
    """Say whether a line is a head of a column, or stands beside one: "SIZE", "REGULAR", "SALE"."""
    beside = [
        advert.printed(other)
        for other in over
        if min(other.flat.bottom, line.flat.bottom) - max(other.flat.y, line.flat.y) > _BESIDE * line.flat.h
    ]
    return any(kind_of_head(text) is not None or is_term(text) for text in beside)


def _may_name(heading: str) -> bool:
    """Say whether a heading may be of goods that are not known: in capitals, and no slogan."""
    return heading.isupper() and not is_slogan(heading)


def _tables(advert: AdvertText, cells: Sequence[Cell], prices: Sequence[Found]) -> list[list[Found]]:
    """Return the prices of columns that stand side by side, no words between most of them."""
    tables: list[list[list[Found]]] = []
    for column in sorted(columns_of(advert, prices, _FEW_ROWS), key=lambda c: c[0].place.x):
        if sorted(p.type_px for p in column)[len(column) // 2] > _DISPLAY * advert.body_px:
            continue
        home = next((table for table in tables if any(_beside(other, column, cells) for other in table)), None)
        if home is None:
            tables.append([column])
        else:
            home.append(column)
    return [
        [p for column in table for p in column]
        for table in tables
        if len(table) > 1 and (len(table) >= _FEWEST or max(map(len, table)) >= _FEWEST)
    ]


def _beside(left: Sequence[Found], right: Sequence[Found], cells: Sequence[Cell]) -> bool:
    """Say whether most prices of the shorter of two columns share a row with one of the other, no name between them."""
    return free_pairs(left, right, cells, _begins_row) >= max(_FEW_ROWS, _SHARE * min(len(left), len(right)))


def _rows(table: Sequence[Found]) -> list[list[Found]]:
    """Return the prices of a table row by row, from left to right."""
    rows: list[list[Found]] = []
    for price in sorted(table, key=lambda p: p.place.centre[1]):
        if rows and shares_row(rows[-1][0].place, price.place):
            rows[-1].append(price)
        else:
            rows.append([price])
    return [sorted(row, key=lambda p: p.place.x) for row in rows]


def _begins_row(text: str) -> bool:
    """Say whether a cell names an article, or is its number: between two prices another row begins with it."""
    return _ORDER_NUMBER.fullmatch(text.strip(" .,")) is not None or (
        NAMED.search(text) is not None and not is_term(text)
    )

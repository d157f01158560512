"""Tables that no heads explain: prices side by side in even rows, the name of each row at its left.

The cells of such a row before its first price are its name and its size ("Foam tape   1/4 x 17 ft.   reg. 89¢   59¢");
a row that tells only a size goes on with the name above. Common practice of printed price lists, no source.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

from adminer.parsing.cells import Cell
from adminer.parsing.column_heads import shares_row
from adminer.parsing.goods import find_nouns
from adminer.parsing.measured_rows import Row, columns_of, left_of
from adminer.parsing.prices import Found
from adminer.parsing.slips import mend_text
from adminer.parsing.table_rows import row_segment
from adminer.parsing.terms import find_terms
from adminer.parsing.text import AdvertText

_FEWEST: Final = 3  # rows
_SHARE: Final = 0.7  # of the rows: with two prices and more, with a label
_DISPLAY: Final = 1.6  # body types: prices so large stand in panels
_MOST_CELLS: Final = 3  # of a label
_NAMED: Final = re.compile(r"[A-Za-z]{3}")
_CODE: Final = re.compile(r"(?:No\.? ?)?[A-Z]{0,3}-?\d{1,5}[A-Z]?", re.IGNORECASE)
_STOP: Final = re.compile(r"(?<=[a-z]{4})\. ")  # not of an abbreviation
_AFTER_DASH: Final = re.compile(r"(?<=\w)\s+[-–—]\s.*$")
_SIZE: Final = re.compile(r"[\d½¼¾⅓⅔⅛/.-]+(?: ?[x×] ?[\d½¼¾/.-]+)*['\"”]?(?: ?[a-z]{2,6}\.?){0,2}", re.IGNORECASE)
_NAMING: Final = 0.5  # of the labels of a table
_TERM: Final = 0.6  # of a cell that is a term ("reg.")


@dataclass(frozen=True, slots=True)
class _Label:
    """Hold the cells left of a row's prices, the one that names an article, and those after it that tell its size."""

    cells: tuple[Cell, ...]
    name: Cell | None
    size: Cell | None

    @property
    def names(self) -> bool:
        """Say whether a label names goods of the trade."""
        return self.name is not None and _names_goods(self.name.text)


def plain_rows(
    advert: AdvertText, cells: Sequence[Cell], prices: Sequence[Found], names: frozenset[str]
) -> tuple[list[Row], list[tuple[int, int]]]:
    """Return the rows of tables as items with the first characters of their prices, and their characters.

    Words of `names` (lower case) are never taken for misread words of the trade.
    """
    made: list[Row] = []
    spans: list[tuple[int, int]] = []
    for table in _tables(advert, cells, prices):
        rows = _rows(table)
        labels = [_label(advert, row, cells, prices) for row in rows]
        least = max(_FEWEST, _SHARE * len(rows))
        told = [label for label in labels if label is not None]
        worded = [label for label in told if label.name is not None]
        if min(sum(len(row) > 1 for row in rows), len(told)) < least:
            continue
        if sum(label.names for label in worded) < _NAMING * len(worded):
            continue
        name: Cell | None = None
        for row, label in zip(rows, labels, strict=True):
            if label is None:
                continue
            name = label.name or name
            if name is None:
                continue
            at = label.name or label.cells[0]
            made.append((row_segment(advert, at, _said(name.text, names), label.size), frozenset(p.start for p in row)))
            spans += [(c.start, c.end) for c in label.cells]
    return made, spans


def _tables(advert: AdvertText, cells: Sequence[Cell], prices: Sequence[Found]) -> list[list[Found]]:
    """Return the prices of columns that stand side by side, no words between most of them."""
    tables: list[list[list[Found]]] = []
    for column in sorted(columns_of(advert, prices), key=lambda c: c[0].place.x):
        if sorted(p.type_px for p in column)[len(column) // 2] > _DISPLAY * advert.body_px:
            continue
        home = next((table for table in tables if any(_beside(other, column, cells) for other in table)), None)
        if home is None:
            tables.append([column])
        else:
            home.append(column)
    return [[p for column in table for p in column] for table in tables if len(table) > 1]


def _beside(left: Sequence[Found], right: Sequence[Found], cells: Sequence[Cell]) -> bool:
    """Say whether most prices of the shorter of two columns share a row with one of the other, no name between them."""
    pairs = [(p, q) for p in left for q in right if p.place.right < q.place.x and shares_row(p.place, q.place)]
    free = [
        (p, q)
        for p, q in pairs
        if not any(
            p.place.right <= c.flat.centre[0] <= q.place.x and shares_row(c.flat, p.place) and _names(c.text)
            for c in cells
        )
    ]
    return len(free) >= max(_FEWEST, _SHARE * min(len(left), len(right)))


def _rows(table: Sequence[Found]) -> list[list[Found]]:
    """Return the prices of a table row by row, from left to right."""
    rows: list[list[Found]] = []
    for price in sorted(table, key=lambda p: p.place.centre[1]):
        if rows and shares_row(rows[-1][0].place, price.place):
            rows[-1].append(price)
        else:
            rows.append([price])
    return [sorted(row, key=lambda p: p.place.x) for row in rows]


def _label(advert: AdvertText, row: Sequence[Found], cells: Sequence[Cell], prices: Sequence[Found]) -> _Label | None:
    """Return what stands left of the first price of a row, without its number and the terms of the price."""
    left = [c for c in left_of(advert, row[0], cells, prices) if any(x.isalnum() for x in c.text)]
    while left and _is_term(left[-1].text):
        left.pop()
    if len(left) > 1 and _CODE.fullmatch(left[0].text.strip(" .")):
        left = left[1:]
    if not 0 < len(left) <= _MOST_CELLS:
        return None
    worded = [c for c in left if _NAMED.search(c.text)]
    name = next((c for c in worded if _names_goods(c.text)), worded[0] if worded else None)
    after = left[left.index(name) + 1 :] if name is not None else left
    return _Label(tuple(left), name, _as_one([c for c in after if _SIZE.fullmatch(c.text.strip(" .,"))]))


def _said(text: str, names: frozenset[str]) -> str:
    """Return a name without the line set after it ("Oval platter - Harbor Band"); a stop in a cell ends no sentence."""
    return mend_text(_STOP.sub(", ", _AFTER_DASH.sub("", text)), names)


def _names_goods(text: str) -> bool:
    return any(noun.strong for noun in find_nouns(text))


def _is_term(text: str) -> bool:
    return sum(t.end - t.start for t in find_terms(text)) > _TERM * len(text)


def _names(text: str) -> bool:
    return _NAMED.search(text) is not None and not _is_term(text)


def _as_one(cells: Sequence[Cell]) -> Cell | None:
    """Return cells side by side as one, None of none."""
    if not cells:
        return None
    flat = cells[0].flat
    for cell in cells[1:]:
        flat = flat.joined(cell.flat)
    return replace(cells[0], end=cells[-1].end, text=" ".join(c.text for c in cells), flat=flat)

"""Price lists by the quantity ("Pkt.   Oz.   ¼ lb.   Lb."), as seedsmen, grocers and druggists print them.

Over the rows stand only quantities, and left of them, on the same row, the kind of goods that the rows are of:
"CABBAGE" over "Early Marrow", "Stone Head". Where a name runs into a second line, its prices stand on the last one.
Common practice of printed price lists, no source.
"""

from __future__ import annotations

import math
import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import reduce
from itertools import pairwise
from typing import Final

from adminer.parsing.prices.column_heads import shares_row
from adminer.parsing.prices.prices import Found
from adminer.parsing.segments.items import Segment
from adminer.parsing.tables.measured_rows import NAMED, Row, is_size
from adminer.parsing.tables.size_rows import SECTION
from adminer.parsing.tables.table_rows import name_of_row, row_segment
from adminer.parsing.text.cells import Cell
from adminer.parsing.text.text import AdvertText
from adminer.records import Box

_FEWEST_HEADS: Final = 3
_TOLD: Final = 0.5  # of the heads: quantities, the others worn
_HEAD_LETTERS: Final = 8  # of a quantity, at most
_FEWEST_ROWS: Final = 2
_STEP: Final = 3.2  # type sizes from a row to the next, which may have two lines
_MARGIN: Final = 3.0  # type sizes that figures may reach beyond the first and the last head
_KIND: Final = re.compile(r"\s?[—–,.:;(]|\s-\s")  # after the kind: "Onion—new crop"
_OTHER: Final = re.compile(r"(?:other|more) ", re.IGNORECASE)  # kinds than the one told of before the table
_STOP: Final = re.compile(r"(?<=[a-z]{3})[.;:] ?")  # what follows a name praises the kind: "Flat Red. Keeps well."


@dataclass(frozen=True, slots=True)
class _Heads:
    """Hold a row of heads: the kind of goods at its left, its quantities, and where the next such row stands."""

    kind: Cell
    quantities: tuple[Cell, ...]
    bottom: float = math.inf

    @property
    def row(self) -> Box:
        """Return the place of the quantities."""
        return reduce(Box.joined, (cell.flat for cell in self.quantities))


def quantity_rows(
    advert: AdvertText, cells: Sequence[Cell], prices: Sequence[Found]
) -> tuple[list[Row], list[tuple[int, int]]]:
    """Return the rows of lists by the quantity as items with the first characters of their prices, and their cells."""
    words = [c for c in cells if not any(c.start <= p.start < c.end for p in prices)]
    figures = {p.start for p in prices for c in cells if c.start <= p.start < c.end and _is_alone(p, c)}
    made: list[Row] = []
    spans: list[tuple[int, int]] = []
    for heads in _all_heads(words):
        rows = _rows_under(heads, [p for p in prices if p.start in figures])
        if len(rows) < _FEWEST_ROWS or not any(len(row) > 1 for row in rows):
            continue
        top = heads.row.bottom
        labels = [c for c in words if heads.kind.flat.x - _reach(heads) < c.flat.x and NAMED.search(c.text)]
        for row in rows:
            foot = row[0].place.bottom
            mine = [c for c in labels if top <= c.flat.centre[1] < foot and c.flat.right <= row[0].place.x]
            top = foot
            if not mine:
                continue
            made.append((_item(advert, heads, mine), frozenset(p.start for p in row)))
            spans += [(c.start, c.end) for c in mine]
        spans += [(c.start, c.end) for c in (heads.kind, *heads.quantities)]
    return made, spans


def _is_alone(price: Found, cell: Cell) -> bool:
    """Say whether no words stand before a price in its cell, as they do in a line of text."""
    return not any(map(str.isalnum, cell.text[: price.start - cell.start]))


def _reach(heads: _Heads) -> float:
    return _MARGIN * heads.kind.line.type_px


def _all_heads(words: Sequence[Cell]) -> list[_Heads]:
    """Return the rows of heads of an advert from top to bottom, each with where the next in its columns stands."""
    found: list[_Heads] = []
    for kind in sorted(words, key=lambda c: c.flat.y):
        row = sorted((c for c in words if shares_row(c.flat, kind.flat)), key=lambda c: c.flat.x)
        after = [c for c in row if c.flat.x >= kind.flat.right]
        if not NAMED.search(kind.text) or is_size(kind) or any(c.flat.right <= kind.flat.x for c in row):
            continue
        sizes = sum(map(is_size, after))
        if len(after) < _FEWEST_HEADS or sizes < 2 or sizes < _TOLD * len(after):
            continue
        if all(len(c.text) <= _HEAD_LETTERS for c in after):
            found.append(_Heads(kind, tuple(after)))
    return [replace(one, bottom=below.row.y) for one, below in pairwise(found)] + found[-1:]


def _rows_under(heads: _Heads, prices: Sequence[Found]) -> list[list[Found]]:
    """Return the prices under quantities row by row, from left to right, up to where the even steps end."""
    place, reach = heads.row, _reach(heads)
    under = [
        p
        for p in prices
        if place.bottom <= p.place.centre[1] < heads.bottom
        and place.x - reach < p.place.centre[0] < place.right + reach
    ]
    rows: list[list[Found]] = []
    for price in sorted(under, key=lambda p: p.place.centre[1]):
        last = rows[-1][-1].place if rows else place
        if rows and shares_row(last, price.place):
            rows[-1].append(price)
        elif price.place.centre[1] - last.centre[1] > _STEP * heads.kind.line.type_px:
            break
        else:
            rows.append([price])
    return [sorted(row, key=lambda p: p.place.x) for row in rows]


def _item(advert: AdvertText, heads: _Heads, label: Sequence[Cell]) -> Segment:
    """Return the item of a row: its kind and the name of its sort; under two kinds at once the label tells which."""
    kind = _OTHER.sub("", _KIND.split(heads.kind.text, maxsplit=1)[0])
    told = name_of_row(" ".join(c.text for c in label))
    name = told if SECTION.search(kind) else f"{kind}, {_STOP.split(told, maxsplit=1)[0]}"
    return replace(row_segment(advert, label[0], name, None), whole=True)

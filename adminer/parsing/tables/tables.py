"""Price lists of the trade: tables with a row of heads ("No., Design, Size, per 100, per 1000").

A line of type is cut into cells at wide gaps; the heads tell what each column holds. A row is named by its cell in
the name column and its size ("Dinner plate 10 in."); a row without a name of its own, or with a ditto mark, goes on
with the name above it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from statistics import median_high
from typing import Final

import numpy as np
from scipy.optimize import linear_sum_assignment

from adminer.parsing.prices.prices import Found
from adminer.parsing.tables.table_heads import Column, Heads
from adminer.parsing.text.cells import Cell
from adminer.parsing.text.column_words import Kind

_BREAK: Final = 2.6  # usual steps from row to row at which a table has ended
_FEWEST_ROWS: Final = 2
_FAR: Final = 1e6


@dataclass(frozen=True, slots=True)
class TableRow:
    """Hold one row: the cells of its name and size, where printed, and its middle in pixels."""

    middle: float
    name: Cell | None
    size: Cell | None
    cells: tuple[Cell, ...]


def rows_of(heads: Heads, cells: Sequence[Cell], prices: Sequence[Found]) -> list[TableRow]:
    """Return the rows of a table from top to bottom, up to where the even steps of its prices end."""
    places = [p.place for p in prices if (c := heads.column_of(p.place)) is not None and c.kind == "price"]
    middles: list[float] = []
    for place in sorted(places, key=lambda b: b.centre[1]):
        if not middles or place.centre[1] - middles[-1] > 0.6 * place.h:
            middles.append(place.centre[1])
    if len(middles) < _FEWEST_ROWS:
        return []
    steps = sorted(b - a for a, b in pairwise(middles))
    step = steps[len(steps) // 2]
    kept = middles[:1]
    for middle in middles[1:]:
        if middle - kept[-1] > _BREAK * step:
            break
        kept.append(middle)
    return _inside(heads, [_row(heads, cells, middle, 0.5 * step) for middle in kept])


def _inside(heads: Heads, rows: Sequence[TableRow]) -> list[TableRow]:
    """Return the rows without the cells of what stands left of the table, beside its names and its first head."""
    names = [row.name.flat.x for row in rows if row.name is not None]
    first = heads.columns[0].place
    edge = min(first.x, median_high(names) if names else first.x) - first.h
    return [replace(row, cells=tuple(c for c in row.cells if c.flat.right > edge)) for row in rows]


def _row(heads: Heads, cells: Sequence[Cell], middle: float, reach: float) -> TableRow:
    mine = [c for c in cells if heads.holds(c.flat) and abs(c.flat.centre[1] - middle) < reach]
    held = {heads.columns[column].kind: mine[cell] for cell, column in _in_columns(heads.columns, mine)}
    return TableRow(middle, held.get("name"), held.get("size"), tuple(mine))


def _in_columns(columns: Sequence[Column], cells: Sequence[Cell]) -> list[tuple[int, int]]:
    """Return the cells of a row with the columns they stand in, one cell a column, by their numbers.

    Left edges or middles agree best with the head's, for the row as a whole: a head stands in the middle of a wide
    column of names that begin at its left, so that the nearest head alone may be that of the numbers beside it.
    """
    apart = np.full((len(cells), len(columns)), _FAR)
    for i, cell in enumerate(cells):
        for j, column in enumerate(columns):
            if _may_hold(column.kind, cell.text):
                edges, middles = column.place.x - cell.flat.x, column.place.centre[0] - cell.flat.centre[0]
                apart[i, j] = min(abs(edges), abs(middles))
    return [(int(i), int(j)) for i, j in zip(*linear_sum_assignment(apart), strict=True) if apart[i, j] < _FAR]


def _may_hold(kind: Kind, text: str) -> bool:
    """Say whether a cell can stand in a column: names have letters or ditto marks, all but sizes have figures."""
    if kind == "name":
        return not text.replace(".", "").replace(",", "").isdecimal()
    return kind == "size" or any(c.isdigit() for c in text)

"""The heads of printed tables: which words over columns of figures name, number, measure or price what.

One row of heads may be those of several tables side by side ("Piece, Each, Dozen | Piece, Each"), and a page may hold
several under each other; each goes from its heads down to the next and across to its neighbour.
"""

from __future__ import annotations

import math
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from statistics import median_high
from typing import Final

from adminer.parsing.prices.prices import Found
from adminer.parsing.text.cells import Cell
from adminer.parsing.text.column_words import LONGEST_HEAD, Kind, kind_of_head
from adminer.parsing.text.text import AdvertText
from adminer.records import Box

_COLUMN: Final = 2.5  # widths of a price from its middle to the middle of its head
_FEWEST_COLUMNS: Final = 3
_FEWEST_PRICES: Final = 3  # of a column that no word over it tells to hold prices
_POINTED: Final = re.compile(r"\$?\d{0,3}\.\d\d\.?")
_MARGIN: Final = 3.0  # heights of a head that figures under the last one may reach beyond it
_WIDEST: Final = 3.0  # widths of a head; a wider sum runs over lines of a text


@dataclass(frozen=True, slots=True)
class Column:
    """Hold one column by its head."""

    kind: Kind
    head: str
    place: Box


@dataclass(frozen=True, slots=True)
class Heads:
    """Hold the heads of a table: its columns, the foot of their row, how far it goes, and the words over it."""

    columns: tuple[Column, ...]
    foot: float
    over: str
    left: float = -math.inf
    right: float = math.inf
    bottom: float = math.inf

    @property
    def name(self) -> str:
        """Return the word over the names, lower case."""
        return next(c.head for c in self.columns if c.kind == "name").lower().strip(" .:")

    def holds(self, place: Box) -> bool:
        """Say whether a place is inside the table, its row of heads left out."""
        x, y = place.centre
        return self.left < x <= self.right and self.foot <= y < self.bottom

    def column_of(self, place: Box) -> Column | None:
        """Return the column a figure under the heads stands in, None where it stands in none."""
        if not self.holds(place):
            return None
        nearest = min(self.columns, key=lambda c: abs(c.place.centre[0] - place.centre[0]))
        return nearest if abs(nearest.place.centre[0] - place.centre[0]) < _COLUMN * place.w else None


def find_tables(advert: AdvertText, cells: Sequence[Cell], prices: Sequence[Found] = ()) -> list[Heads]:
    """Return the heads of the tables of an advert, those of one row from left to right.

    Whatever a head says, a column of `prices` with points under it holds prices ("Less carton", "Carton lots").
    """
    tables: list[Heads] = []
    seen: set[int] = set()
    words = [c for c in cells if not any(c.start <= p.start < c.end for p in prices)]
    for cell in words:
        if cell.start in seen or kind_of_head(cell.text) != "name":
            continue
        row = _stacked([c for c in words if c is cell or _one_row(c.flat, cell.flat)])
        seen |= {c.start for c in row if kind_of_head(c.text) == "name"}
        tables += _tables_under(advert, row, words, prices)
    return [replace(t, bottom=min((o.foot for o in tables if _is_under(o, t)), default=math.inf)) for t in tables]


def _is_under(table: Heads, over: Heads) -> bool:
    """Say whether a table begins under the heads of another, in its columns."""
    across = min(c.place.x for c in over.columns), max(c.place.right for c in over.columns)
    return table.foot > over.foot and any(across[0] < c.place.centre[0] < across[1] for c in table.columns)


def _tables_under(
    advert: AdvertText, row: Sequence[Cell], cells: Sequence[Cell], prices: Sequence[Found]
) -> list[Heads]:
    """Return the tables under one row of heads, each from a column of names to the next."""
    held = {c.start: _prices_under(c, row, prices) for c in row if kind_of_head(c.text) != "size"}
    kept = [c for c in row if len(held.get(c.start, ())) >= _FEWEST_PRICES or kind_of_head(c.text)]
    if len(kept) < _FEWEST_COLUMNS:
        return []
    foot = max(c.flat.centre[1] for c in kept)
    columns = [Column(_kind_of(c, held), _with_above(c, cells), c.flat) for c in sorted(kept, key=lambda c: c.flat.x)]
    over = " ".join(advert.printed(n) for n in advert.lines if n.flat.centre[1] < min(c.flat.y for c in kept))
    figures = [p.place for p in prices if p.place.centre[1] > foot]
    left, made = -math.inf, []
    blocks = _blocks(columns)
    for i, block in enumerate(blocks):
        last = block[-1].place
        edges = [f.right for f in figures if f.across(last) > 0 and f.w < _WIDEST * last.w]
        right = max(last.right, median_high([last.right, *edges])) + (0 if i + 1 < len(blocks) else _MARGIN * last.h)
        if {"name", "price"} <= {c.kind for c in block}:
            made.append(Heads(block, foot, over, left, right))
        left = right
    return made


def _blocks(columns: Sequence[Column]) -> list[tuple[Column, ...]]:
    """Return the columns of a row of heads, parted where names or numbers of more articles follow prices."""
    blocks: list[list[Column]] = [[]]
    for column in columns:
        if column.kind in {"name", "number"} and any(c.kind == "price" for c in blocks[-1]):
            blocks.append([])
        blocks[-1].append(column)
    return [tuple(block) for block in blocks]


def _stacked(row: Sequence[Cell]) -> list[Cell]:
    """Return the heads of a row, those set over each other ("Less / carton") as one."""
    stacked: list[Cell] = []
    for cell in sorted(row, key=lambda c: c.flat.y):
        over = next((o for o in stacked if o.flat.across(cell.flat) > 0.5 * min(o.flat.w, cell.flat.w)), None)
        if over is None:
            stacked.append(cell)
            continue
        both = replace(cell, text=f"{over.text} {cell.text}", flat=over.flat.joined(cell.flat))
        stacked[stacked.index(over)] = both
    return stacked


def _kind_of(head: Cell, held: Mapping[int, Sequence[Found]]) -> Kind:
    """Return what a column holds by its prices, else by its head: where others hold some, one without is no price."""
    mine = len(held.get(head.start, ()))
    kind = kind_of_head(head.text) or "other"
    if mine >= _FEWEST_PRICES:
        return "price"
    most = max(map(len, held.values()), default=0)
    return "other" if kind == "price" and not mine and most >= _FEWEST_PRICES else kind


def _prices_under(head: Cell, row: Sequence[Cell], prices: Sequence[Found]) -> list[Found]:
    """Return the prices with points under a head, nearer to it than to the other heads of its row."""
    return [
        p
        for p in prices
        if _POINTED.fullmatch(p.text.strip()) is not None
        and p.place.centre[1] > head.flat.bottom
        and abs(p.place.centre[0] - head.flat.centre[0]) < p.place.w
        and min(row, key=lambda c: abs(c.flat.centre[0] - p.place.centre[0])) is head
    ]


def _with_above(head: Cell, cells: Sequence[Cell]) -> str:
    """Return the words of a head with those right above it: "Wholesale / per doz."."""
    above = [
        c
        for c in cells
        if 0 < head.flat.centre[1] - c.flat.centre[1] < 2 * head.line.type_px
        and c.flat.across(head.flat) > 0
        and len(c.text) <= LONGEST_HEAD
        and c.text not in head.text
    ]
    return f"{above[-1].text} {head.text}" if above else head.text


def _one_row(one: Box, other: Box) -> bool:
    shared = min(one.bottom, other.bottom) - max(one.y, other.y)
    return shared > 0.3 * min(one.h, other.h)

"""Price lists of the trade: tables with a row of heads ("No., Design, Size, per 100, per 1000").

A line of type is cut into cells at wide gaps; the heads tell what each column holds. A row is named by its cell in
the name column and its size ("Dinner plate 10 in."); a row without a name of its own, or with a ditto mark, goes on
with the name above it.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Final, Literal

import numpy as np
from rapidfuzz import fuzz, process
from scipy.optimize import linear_sum_assignment

from adminer.parsing.lexicon import word_list
from adminer.parsing.prices import Found
from adminer.parsing.text import AdvertText, TextLine
from adminer.records import Box

Kind = Literal["name", "number", "size", "other", "price"]

_HEADS: Final[tuple[tuple[Kind, tuple[str, ...]], ...]] = (
    ("name", tuple(word_list("name_head"))),
    ("number", tuple(word_list("number_head"))),
    ("size", tuple(word_list("size_head"))),
    ("other", tuple(word_list("other_head"))),
    ("price", tuple(word_list("price_head"))),
)
_ALIKE: Final = 80  # rapidfuzz ratio
_LONGEST: Final = 26  # letters of a head
_GAP: Final = 1.3  # type sizes between two cells of a row
_COLUMN: Final = 2.5  # widths of a price from its middle to the middle of its head
_BREAK: Final = 2.6  # usual steps from row to row at which a table has ended
_FEWEST_ROWS: Final = 2
_FEWEST_PRICES: Final = 3  # of a column that no word over it tells to hold prices
_POINTED: Final = re.compile(r"\$?\d{0,3}\.\d\d\.?")
_FAR: Final = 1e6
_JOINING: Final = frozenset({"of", "the", "and", "in"})
_LEADER: Final = re.compile(r"[._·…=*•-]{2,}|[.·…]")
_WORD: Final = re.compile(r"[a-z0-9][a-z0-9,.]*", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Cell:
    """Hold one cell of a row: its characters, its text, and its place with the slope of the type taken out."""

    start: int
    end: int
    text: str
    flat: Box
    line: TextLine


@dataclass(frozen=True, slots=True)
class Column:
    """Hold one column by its head."""

    kind: Kind
    head: str
    place: Box


@dataclass(frozen=True, slots=True)
class Row:
    """Hold one row: the cells of its name and size, where printed, and its middle in pixels."""

    middle: float
    name: Cell | None
    size: Cell | None
    cells: tuple[Cell, ...]


@dataclass(frozen=True, slots=True)
class Heads:
    """Hold the heads of a table: its columns, the foot of their row, and the words over the table."""

    columns: tuple[Column, ...]
    foot: float
    over: str

    @property
    def name(self) -> str:
        """Return the word over the names, lower case."""
        return next(c.head for c in self.columns if c.kind == "name").lower().strip(" .:")

    def column_of(self, place: Box) -> Column | None:
        """Return the column a figure under the heads stands in, None where it stands in none."""
        if place.centre[1] < self.foot:
            return None
        nearest = min(self.columns, key=lambda c: abs(c.place.centre[0] - place.centre[0]))
        return nearest if abs(nearest.place.centre[0] - place.centre[0]) < _COLUMN * place.w else None


def cells_of(advert: AdvertText) -> list[Cell]:
    """Cut every line at gaps wider than a word space, leaders left out."""
    cells = []
    for line in advert.lines:
        at = line.start
        spans: list[tuple[int, int, Box]] = []
        for word in line.words:
            start = advert.text.index(word.text, at, line.end)
            at = start + len(word.text)
            if _LEADER.fullmatch(word.text):
                spans.append((-1, -1, word.box))  # a leader parts cells
                continue
            box = advert.flat(word.box)
            if spans and spans[-1][0] >= 0 and box.x - spans[-1][2].right < _GAP * line.type_px:
                start, box = spans[-1][0], spans[-1][2].joined(box)
                spans.pop()
            spans.append((start, at, box))
        cells += [Cell(a, b, advert.text[a:b], box, line) for a, b, box in spans if a >= 0]
    return cells


def find_heads(advert: AdvertText, cells: Sequence[Cell], prices: Sequence[Found] = ()) -> Heads | None:
    """Return the heads of a price list, None where no row of heads names its columns.

    Whatever a head says, a column of `prices` with points under it holds prices ("Less carton", "Carton lots").
    """
    for head in cells:
        if kind_of_head(head.text) != "name":
            continue
        row = _stacked([c for c in cells if c is not head and _one_row(c.flat, head.flat)])
        held = {c.start: _prices_under(c, row, prices) for c in row if kind_of_head(c.text) not in {"name", "size"}}
        row = [head] + [c for c in row if held.get(c.start, 0) >= _FEWEST_PRICES or kind_of_head(c.text)]
        columns = [Column(_kind_of(c, held), _with_above(c, cells), c.flat) for c in row]
        if len(columns) >= 3 and any(c.kind == "price" for c in columns):
            foot = max(c.flat.centre[1] for c in row)
            over = " ".join(advert.printed(n) for n in advert.lines if n.flat.centre[1] < head.flat.y)
            return Heads(tuple(columns), foot, over)
    return None


def _stacked(row: Sequence[Cell]) -> list[Cell]:
    """Return the heads of a row, those set over each other ("Less / carton") as one."""
    stacked: list[Cell] = []
    for cell in sorted(row, key=lambda c: c.flat.y):
        over = next((o for o in stacked if _shared(o.flat, cell.flat) > 0.5 * min(o.flat.w, cell.flat.w)), None)
        if over is None:
            stacked.append(cell)
            continue
        both = replace(cell, text=f"{over.text} {cell.text}", flat=over.flat.joined(cell.flat))
        stacked[stacked.index(over)] = both
    return stacked


def _shared(one: Box, other: Box) -> float:
    return min(one.right, other.right) - max(one.x, other.x)


def _kind_of(head: Cell, held: Mapping[int, int]) -> Kind:
    """Return what a column holds, by how many prices the columns hold: where others hold some, one of none is none."""
    mine = held.get(head.start, 0)
    kind = kind_of_head(head.text) or "other"
    if mine >= _FEWEST_PRICES:
        return "price"
    return "other" if kind == "price" and not mine and max(held.values()) >= _FEWEST_PRICES else kind


def _prices_under(head: Cell, row: Sequence[Cell], prices: Sequence[Found]) -> int:
    """Count the prices with points under a head, nearer to it than to the other heads of its row."""
    return sum(
        _POINTED.fullmatch(p.text.strip()) is not None
        and p.place.centre[1] > head.flat.bottom
        and abs(p.place.centre[0] - head.flat.centre[0]) < p.place.w
        and min(row, key=lambda c: abs(c.flat.centre[0] - p.place.centre[0])) is head
        for p in prices
    )


def rows_of(heads: Heads, cells: Sequence[Cell], prices: Sequence[Found]) -> list[Row]:
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
    return [_row(heads, cells, middle, 0.5 * step) for middle in kept]


def _row(heads: Heads, cells: Sequence[Cell], middle: float, reach: float) -> Row:
    mine = [c for c in cells if c.flat.centre[1] > heads.foot and abs(c.flat.centre[1] - middle) < reach]
    held = {heads.columns[column].kind: mine[cell] for cell, column in _in_columns(heads.columns, mine)}
    return Row(middle, held.get("name"), held.get("size"), tuple(mine))


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


def kind_of_head(text: str) -> Kind | None:
    """Return what a head says its column holds, None for what is no head."""
    words = [w for w in (w.strip(".,:").lower() for w in _WORD.findall(text)) if w not in _JOINING]
    if not words or len(text) > _LONGEST:
        return None
    kinds = [_kind_of_word(word) for word in words]
    if None in kinds or ("name" in kinds and len(words) > 2):
        return None
    return next((kind for kind, _ in _HEADS if kind in kinds), None)


def _kind_of_word(word: str) -> Kind | None:
    for kind, heads in _HEADS:
        if word in heads:
            return kind
    for kind, heads in _HEADS:
        if len(word) > 3 and process.extractOne(word, heads, scorer=fuzz.ratio, score_cutoff=_ALIKE):
            return kind
    return None


def _with_above(head: Cell, cells: Sequence[Cell]) -> str:
    """Return the words of a head with those right above it: "Wholesale / per doz."."""
    above = [
        c
        for c in cells
        if 0 < head.flat.centre[1] - c.flat.centre[1] < 2 * head.line.type_px
        and min(c.flat.right, head.flat.right) > max(c.flat.x, head.flat.x)
        and len(c.text) <= _LONGEST
        and c.text not in head.text
    ]
    return f"{above[-1].text} {head.text}" if above else head.text


def _one_row(one: Box, other: Box) -> bool:
    shared = min(one.bottom, other.bottom) - max(one.y, other.y)
    return shared > 0.3 * min(one.h, other.h)

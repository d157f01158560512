"""Which lines of type are cells of one printed row: goods at the left, columns of figures at the right of them.

A table or a price list is read row by row, so its rows are found before the page is cut into columns. What shows a row
is a column of figures, each beside something on its own height, or leaders that run up to a price. Common practice, no
source.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Final

from adminer.layout.paper import PRICE
from adminer.layout.rules import Rect

LEVEL: Final = 0.5  # capital heights: cells further apart, by head, foot and middle, are of two rows
ALIKE: Final = 0.4  # of the larger: cells of one row are of like size, and boxes of worn figures twice too high
BESIDE: Final = 0.3  # of the lower: so far what stands beside a cell reaches into its height
ALIGNED: Final = 1.0  # capital heights, at an edge or in the middle
STEP: Final = 9.0  # capital heights to the next cell of a column, with the head of a group between them
NEXT: Final = 3.0  # capital heights to the next line of running text
FEWEST: Final = 3  # rows that make a table
MOST: Final = 0.75  # of the cells of a column that stand beside something
LETTERS: Final = 10  # of a cell of figures: "each", "per doz.", "lb. tin"
LEADS: Final = re.compile(r".*(?:[.·…_] ?[.·…_*]| [.·…])\W*")
NUMBER: Final = re.compile(r"[\W\d½¼¾⅓⅔]*[\d½¼¾⅓⅔][\W\d½¼¾⅓⅔]*")
OPENS: Final = re.compile(r"\W*[\d½¼¾⅓⅔]")
CAPITALISED: Final = re.compile(r"[A-Z][A-Za-z]")


@dataclass(frozen=True, slots=True)
class Cell:
    """Hold one line of type as a cell of a row: its number, place, capital height and text."""

    number: int
    rect: Rect
    size: float
    text: str

    @property
    def tells_amount(self) -> bool:
        """Say whether it has a price or is a bare number."""
        return bool(PRICE.search(self.text) or NUMBER.fullmatch(self.text))

    @property
    def counts(self) -> bool:
        """Say whether it can stand in a column of figures: an amount, perhaps with its unit, that leads to no other."""
        unnamed = sum(c.isalpha() for c in self.text) <= LETTERS and not CAPITALISED.search(self.text)
        return unnamed and (self.tells_amount or bool(OPENS.match(self.text))) and not LEADS.fullmatch(self.text)


def find_rows(cells: Sequence[Cell], rules: Sequence[Rect] = ()) -> list[list[int]]:
    """Return the numbers of the cells of every row, from left to right; most lines of type are a row of their own.

    `rules` are the printed rules, which part what only seems to be a row.
    """
    left_of = {cell.number: left for cell in cells if (left := _left_of(cell, cells)) is not None}
    joined = {
        cell.number: left_of[cell.number]
        for cell in cells
        if cell.counts and cell.tells_amount and cell.number in left_of and LEADS.fullmatch(left_of[cell.number].text)
    }
    tables = [table for column in _columns(cells) if (table := _table(column, left_of, cells))]
    joined |= {cell.number: left_of[cell.number] for table in tables for cell in table}
    for table in tables:
        joined |= _labels(table, joined, left_of, cells, rules)
    inner = {left.number for left in joined.values()}
    return [_row(cell, joined) for cell in cells if cell.number not in inner]


def _table(column: Sequence[Cell], left_of: Mapping[int, Cell], cells: Sequence[Cell]) -> list[Cell]:
    """Return the figures of a column that close rows, none where it is no column of a table.

    Prices of a table stand behind something in nearly every row, from its first to its last; sizes behind goods.
    """
    beside = [i for i, cell in enumerate(column) if cell.number in left_of]
    if len(beside) < FEWEST or len(beside) < MOST * (beside[-1] - beside[0] + 1):
        return []
    rows = [column[i] for i in beside]
    if _is_running_text(rows, cells):
        return []
    sizes = 2 * sum(cell.tells_amount for cell in rows) < len(rows)
    astray = [c for c in rows if (left_of[c.number].counts if sizes else _stands_before(c, left_of[c.number], cells))]
    return rows if len(rows) > 2 * len(astray) else []


def _is_running_text(rows: Sequence[Cell], cells: Sequence[Cell]) -> bool:
    """Say whether more lines of words than figures stand among the figures of a column: they are lines of its text."""
    left, right = min(cell.rect[0] for cell in rows), max(cell.rect[2] for cell in rows)
    top, foot = rows[0].rect[1], rows[-1].rect[3]
    words = [
        cell
        for cell in cells
        if not cell.counts
        and top < (cell.rect[1] + cell.rect[3]) / 2 < foot
        and min(cell.rect[2], right) - max(cell.rect[0], left) > min(cell.rect[2] - cell.rect[0], right - left) / 2
    ]
    return len(words) > len(rows)


def _stands_before(cell: Cell, left: Cell, cells: Sequence[Cell]) -> bool:
    """Say whether figures behind those of others stand closer before the goods they are for: "67¢ Filler Paper"."""
    right = _nearest(cell, cells, right=True)
    if not left.counts or right is None or right.counts or right.rect[0] - cell.rect[2] > cell.rect[0] - left.rect[2]:
        return False
    behind = _nearest(right, cells, right=True)
    return behind is None or not behind.counts


def _row(last: Cell, joined: Mapping[int, Cell]) -> list[int]:
    row = [last.number]
    while row[-1] in joined:
        row.append(joined[row[-1]].number)
    return row[::-1]


def _labels(
    table: Sequence[Cell],
    joined: Mapping[int, Cell],
    left_of: Mapping[int, Cell],
    cells: Sequence[Cell],
    rules: Sequence[Rect],
) -> dict[int, Cell]:
    """Return what stands left of the names of a table: numbers of a catalogue, dates of a schedule.

    They are set on one edge, begin and end with the table, and no rule runs between: a column of text does not.
    """
    first = {_row(cell, joined)[0] for cell in table}
    names = [cell for cell in cells if cell.number in first]
    free = {
        cell.number: left
        for cell in names
        if (left := left_of.get(cell.number)) and left.number not in joined and not PRICE.search(left.text)
    }
    parted = [n for n in names if n.number in free and any(_runs_between(r, free[n.number], n) for r in rules)]
    if 2 * len(parted) > len(free):
        return {}
    edges = [free.get(cell.number, cell).rect[0] for cell in names]
    labels = {
        number: left
        for number, left in free.items()
        if sum(abs(left.rect[0] - edge) < ALIGNED * left.size for edge in edges) >= FEWEST
    }
    inside = min((cell.rect[0] for cell in names if cell.number in labels), default=0.0)
    return {} if any(_stands_alone(cell, labels, inside, left_of) for cell in cells) else labels


def _stands_alone(cell: Cell, labels: Mapping[int, Cell], inside: float, left_of: Mapping[int, Cell]) -> bool:
    """Say whether a line in the column of labels, or next to it, has nothing beside it: the column is running text."""
    if any(cell is left for left in left_of.values()) or cell.number in labels or cell.rect[2] > inside:
        return False
    return any(
        min(cell.rect[2], left.rect[2]) > max(cell.rect[0], left.rect[0])
        and abs(cell.rect[1] - left.rect[1]) < NEXT * left.size
        for left in labels.values()
    )


def _runs_between(rule: Rect, left: Cell, right: Cell) -> bool:
    across, room = (rule[0] + rule[2]) / 2, left.size / 3
    return (
        left.rect[2] - room < across < right.rect[0] + room
        and rule[3] - rule[1] > FEWEST * left.size
        and rule[1] < left.rect[1] + room
        and rule[3] > left.rect[3] - room
    )


def _left_of(cell: Cell, cells: Sequence[Cell]) -> Cell | None:
    """Return what stands left of a cell on its row, if nothing stands between."""
    left = _nearest(cell, cells, right=False)
    return left if left is not None and _is_level(left, cell) and _nearest(left, cells, right=True) is cell else None


def _nearest(cell: Cell, cells: Sequence[Cell], *, right: bool) -> Cell | None:
    best, nearest = None, float("inf")
    for other in cells:
        before, after = (cell, other) if right else (other, cell)
        gap = after.rect[0] - before.rect[2]
        begins = before.rect[0] < after.rect[0]
        if begins and -LEVEL * cell.size < gap < nearest and _share(cell, other) > BESIDE:
            best, nearest = other, gap
    return best


def _share(one: Cell, other: Cell) -> float:
    """Return how far two cells reach into one height, as a part of the lower."""
    a, b = one.rect, other.rect
    return (min(a[3], b[3]) - max(a[1], b[1])) / max(min(a[3] - a[1], b[3] - b[1]), 1.0)


def _is_level(one: Cell, other: Cell) -> bool:
    return _are_alike(one, other) and _apart(one, other, 1) < LEVEL * min(one.size, other.size)


def _are_alike(one: Cell, other: Cell) -> bool:
    return min(one.size, other.size) > ALIKE * max(one.size, other.size)


def _apart(one: Cell, other: Cell, axis: int) -> float:
    """Return how far two cells are from sharing an edge or a middle, across (0) or down (1)."""
    low, high = (one.rect[i] - other.rect[i] for i in (axis, axis + 2))
    return min(abs(low), abs(high), abs(low + high) / 2)


def _columns(cells: Sequence[Cell]) -> list[list[Cell]]:
    """Return the columns of figures: one under the other, on one edge or one axis."""
    columns: list[list[Cell]] = []
    for cell in sorted((cell for cell in cells if cell.counts), key=lambda cell: cell.rect[1]):
        over = [column for column in columns if _is_under(cell, column[-1])]
        if over:
            max(over, key=lambda column: column[-1].rect[1]).append(cell)
        else:
            columns.append([cell])
    return columns


def _is_under(cell: Cell, over: Cell) -> bool:
    low = min(cell.size, over.size)
    step = (cell.rect[1] + cell.rect[3] - over.rect[1] - over.rect[3]) / 2
    return _are_alike(cell, over) and low / 2 < step < STEP * low and _apart(cell, over, 0) < ALIGNED * low

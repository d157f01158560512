"""The label of a row of a table: the cells left of its first price, the one that names an article, and its size."""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import pairwise
from typing import Final

from adminer.parsing.prices.prices import Found
from adminer.parsing.sets.composition import stated_pieces
from adminer.parsing.tables.measured_rows import NAMED, words_left_of
from adminer.parsing.terms.terms import find_terms
from adminer.parsing.text.cells import Cell
from adminer.parsing.text.goods import has_goods
from adminer.parsing.text.slips import mend_text
from adminer.parsing.text.text import AdvertText

_MOST_CELLS: Final = 3  # of a label
_MOST_ROWS: Final = 0.7  # of a table: with a name at one edge
_SOME_ROWS: Final = 0.3  # of a table: with the name that the rows under it go on with
_CODE: Final = re.compile(r"(?:No\.? ?)?[A-Z]{0,3}-?\d{1,5}[A-Z]?", re.IGNORECASE)
_TERM: Final = 0.6  # of a cell that is a term ("reg.")
_SIZE: Final = re.compile(r"[\d½¼¾⅓⅔⅛/.-]+(?: ?[x×] ?[\d½¼¾/.-]+)*['\"”]?(?: ?[a-z]{2,6}\.?){0,2}", re.IGNORECASE)
_STOP: Final = re.compile(r"(?<=[a-z]{4})\. ")  # not of an abbreviation
_AFTER_DASH: Final = re.compile(r"(?<=\w)\s+[-–—]\s.*$")


@dataclass(frozen=True, slots=True)
class RowLabel:
    """Hold the cells left of a row's prices, the one that names an article, and those after it that tell its size."""

    edge: float  # where the row begins, its number included
    cells: tuple[Cell, ...]
    name: Cell | None
    size: Cell | None

    @property
    def names(self) -> bool:
        """Say whether a label names goods of the trade."""
        return self.name is not None and _names_goods(self.name.text)


def row_labels(
    advert: AdvertText, rows: Sequence[Sequence[Found]], cells: Sequence[Cell], prices: Sequence[Found]
) -> list[RowLabel | None]:
    """Return what stands left of the first price of each row, without its number and the terms of the price.

    What stands left of the edge where most names begin, or most sizes of a table that has no names, is of another
    table or panel.
    """
    left = [_on_row(words_left_of(advert, row[0], cells, prices), row[0], advert.body_px) for row in rows]
    begins = _edges(advert, left, _may_name)
    if not begins and not _edges(advert, left, _names_goods, _SOME_ROWS):
        begins = _edges(advert, left, _is_number)
    edge = _last_panel(advert, begins, left)
    return [_label([c for c in row if c.flat.right > edge]) for row in left]


def _last_panel(advert: AdvertText, begins: Sequence[int], rows: Sequence[Sequence[Cell]]) -> float:
    """Return the edge where the labels begin: right of every rule that parts two edges of them in a row."""
    edge = -math.inf
    for before, begin in pairwise((-math.inf, *begins)):
        named = [c for row in rows for c in row if abs(c.flat.x - begin) < advert.body_px]
        if math.isinf(before) or any(_is_parted(advert, cell, before) for cell in named):
            edge = begin
    return edge


def _is_parted(advert: AdvertText, cell: Cell, before: float) -> bool:
    """Say whether an upright rule stands between a cell and an edge at its left."""
    box = advert.box_of(cell.start, cell.end)
    return any(
        rule.h > rule.w and before < rule.centre[0] < box.x and rule.y <= box.centre[1] <= rule.bottom
        for rule in advert.rules
    )


def _on_row(cells: list[Cell], price: Found, body: float) -> list[Cell]:
    """Return the cells without those of the rows over and under: of two that begin at one edge the nearer stays."""
    middle = price.place.centre[1]
    away = {cell.start: abs(cell.flat.centre[1] - middle) for cell in cells}
    return [
        cell
        for cell in cells
        if not any(abs(o.flat.x - cell.flat.x) < body and away[o.start] < away[cell.start] for o in cells)
    ]


def _may_name(text: str) -> bool:
    return NAMED.search(text) is not None and not _is_size(text) and not is_term(text)


def _is_size(text: str) -> bool:
    return _SIZE.fullmatch(text.strip(" .,")) is not None


def _is_number(text: str) -> bool:
    """Say whether a cell is a size, or the number of an article that may stand before one."""
    return _is_size(text) or _CODE.fullmatch(text.strip(" .")) is not None


def _edges(
    advert: AdvertText, rows: Sequence[Sequence[Cell]], is_sought: Callable[[str], bool], least: float = _MOST_ROWS
) -> list[int]:
    """Return the places where most rows of a table have a cell of a kind begin, from left to right."""
    begins = [[c.flat.x for c in row if is_sought(c.text)] for row in rows]
    places = sorted(x for row in begins for x in row)
    return [x for x in places if _is_edge(x, begins, advert.body_px, least)]


def _is_edge(x: int, rows: Sequence[Sequence[int]], body: float, least: float) -> bool:
    return sum(any(abs(begin - x) < body for begin in row) for row in rows) >= least * len(rows)


def _label(left: list[Cell]) -> RowLabel | None:
    edge = float(left[0].flat.x) if left else 0.0
    while left and is_term(left[-1].text):
        left.pop()
    if len(left) > 1 and _CODE.fullmatch(left[0].text.strip(" .")):
        left = left[1:]
    if len(left) > 1 and not any(NAMED.search(c.text) for c in left):
        left = [left[0], *(c for c in left[1:] if any(map(str.isalpha, c.text)))]  # bare figures beside it count others
    if not 0 < len(left) <= _MOST_CELLS:
        return None
    worded = [c for c in left if NAMED.search(c.text)]
    name = next((c for c in worded if _names_goods(c.text)), worded[0] if worded else None)
    after = left[left.index(name) + 1 :] if name is not None else left
    return RowLabel(edge, tuple(left), name, _as_one([c for c in after if _is_size(c.text)]))


def name_in(text: str, names: frozenset[str] = frozenset()) -> str:
    """Return a name without the line set after it ("Oval platter - Harbor Band"); a stop in a cell ends no sentence."""
    return mend_text(_STOP.sub(", ", _AFTER_DASH.sub("", text)), names)


def _names_goods(text: str) -> bool:
    return has_goods(text) or stated_pieces(text) is not None


@lru_cache(maxsize=4096)
def is_term(text: str) -> bool:
    """Say whether a text is mostly a term of sale ("reg.")."""
    return sum(t.end - t.start for t in find_terms(text)) > _TERM * len(text)


def _as_one(cells: Sequence[Cell]) -> Cell | None:
    """Return cells side by side as one, None of none."""
    if not cells:
        return None
    flat = cells[0].flat
    for cell in cells[1:]:
        flat = flat.joined(cell.flat)
    return replace(cells[0], end=cells[-1].end, text=" ".join(c.text for c in cells), flat=flat)

"""Cells of a table of prices that lost their points: "33" and "329" among ".33", ".69" and "2.49".

Small type loses the points of some cells and keeps those of others; in a column of prices, each on the row of its name,
all of them had one. Common practice, no source.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Final

from adminer.parsing.money.amounts import AS_FIGURES, Amount
from adminer.parsing.text.item_words import WORD
from adminer.parsing.text.stretches import is_taken
from adminer.parsing.text.text import AdvertText
from adminer.records import Box

# two to four figures, the point lost or read as a dash, a comma or a space, a figure as the letter of its shape
_FIGURES: Final = re.compile(r"(?=\D{0,2}\d)(?:[1-9LlIJ|BS]|[1-9][\dOo])?[ ,\-–]?[1-9LlIJ|BSOo0][\dLlIJ|BSOo]")
_NO_FIGURE: Final = re.compile(r"[ ,\-–]")
_POINTED: Final = re.compile(r"\d*\.\d\d")
_FEWEST: Final = 3  # cells with points that must speak, and others in the column
_SHARE: Final = 3  # cells without a point to one with, at most
_ALIKE: Final = (0.6, 1.7)  # type sizes of cells of one table
_EDGE: Final = 0.8  # type sizes between edges of one column
_ROW: Final = 0.6  # type sizes between the middles of one row
_TABLE: Final = 4.0  # type sizes from row to row, at most
_NEAR: Final = 4  # times the dearest cell with a point, or below the cheapest
_TRUST: Final = 0.6


@dataclass(frozen=True, slots=True)
class _Cell:
    """Hold one cell of figures: its characters, its place, and its sum where it kept its point."""

    start: int
    end: int
    place: Box
    type_px: float
    sum: Decimal | None


def restore_column_points(advert: AdvertText, amounts: Sequence[Amount]) -> list[Amount]:
    """Return the prices of cells without a point or sign, judged by the cells around them that kept theirs."""
    kept = [
        _Cell(a.start, a.end, advert.flat(advert.box_of(a.start, a.end)), advert.type_px_of(a.start, a.end), a.amount)
        for a in amounts
        if a.currency == "USD" and _POINTED.fullmatch(advert.text, a.start, a.end)
    ]
    if len(kept) < _FEWEST:
        return []
    bare = [
        _Cell(line.start, line.end, line.flat, line.type_px, None)
        for line in advert.lines
        if _FIGURES.fullmatch(advert.text, line.start, line.end)
        and not is_taken(line.start, line.end, amounts)
        and _has_name(advert, line.flat, line.type_px)
    ]
    found = []
    for cell in bare:
        column = _column_of(cell, [*kept, *bare])
        speaking = [k for k in kept if any(m is k or _same_row(m, k) for m in column)]
        lost = sum(m.sum is None for m in column)
        if len(column) <= _FEWEST or len(speaking) < _FEWEST or lost > _SHARE * len(speaking):
            continue
        figures = _NO_FIGURE.sub("", advert.text[cell.start : cell.end]).translate(AS_FIGURES)
        value, sums = Decimal(figures) / 100, [k.sum for k in speaking if k.sum]
        if min(sums) / _NEAR <= value <= _NEAR * max(sums):
            found.append(Amount(cell.start, cell.end, value, "USD", "bare", _TRUST))
    return found


def _column_of(cell: _Cell, cells: Sequence[_Cell]) -> list[_Cell]:
    """Return the cells over and under a cell, itself among them, down and up to the first gap."""
    mates = sorted((c for c in cells if _aligned(c, cell)), key=lambda c: c.place.y)
    at = mates.index(cell)
    first = last = at
    while first > 0 and mates[first].place.y - mates[first - 1].place.bottom < _TABLE * cell.type_px:
        first -= 1
    while last + 1 < len(mates) and mates[last + 1].place.y - mates[last].place.bottom < _TABLE * cell.type_px:
        last += 1
    return mates[first : last + 1]


def _aligned(one: _Cell, other: _Cell) -> bool:
    alike = _ALIKE[0] < one.type_px / max(other.type_px, 1.0) < _ALIKE[1]
    return alike and abs(one.place.right - other.place.right) < _EDGE * max(one.type_px, other.type_px)


def _same_row(one: _Cell, other: _Cell) -> bool:
    return abs(one.place.centre[1] - other.place.centre[1]) < _ROW * max(one.type_px, other.type_px)


def _has_name(advert: AdvertText, place: Box, type_px: float) -> bool:
    """Say whether words stand left of a cell on its row."""
    return any(
        line.flat.right <= place.x
        and abs(line.flat.centre[1] - place.centre[1]) < type_px
        and WORD.search(advert.printed(line)) is not None
        for line in advert.lines
    )

"""Figures without any sign in a list that says once what they are: "Prices in cents", and below it 9, 12, 15.

Lists of tinware and tins set a grid of sizes and leave the signs out. The word says that they are cents or piastres,
the grid which figures it speaks of: those apart from their neighbours, on the row of a name, over or beside others.
Common practice of printed price lists, no source.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Final

from adminer.parsing.money.amounts import Amount, fraction_of
from adminer.parsing.text.item_words import WORD
from adminer.parsing.text.stretches import is_taken
from adminer.parsing.text.text import AdvertText, TextLine
from adminer.records import Box

_TOLD: Final = re.compile(
    r"\b(?:prices?|figures|all)\b[^.;]{0,24}?\b[it]n[ \n](?:c[a-z]{2,4}s|(?P<piastres>p[il1]ast(?:er|re)s?|P\. ?T))\b",
    re.IGNORECASE,
)
_FIGURE: Final = re.compile(r"(?P<led>[.·…_]*)(?P<n>[1-9]\d{0,2})(?P<frac>[½¼¾])?[.,]?")
_LEADERS: Final = ("..", "…", "··", "__")
_APART: Final = 0.9  # type sizes left of a cell
_NEAR: Final = 1.0  # type sizes between the middles of cells of one column
_ROW: Final = 0.7  # the same for what stands in one row
_DOLLAR: Final = 100  # cents
_FEWEST: Final = 3  # cells that make a column or a row
_TRUST: Final = 0.6


@dataclass(frozen=True, slots=True)
class _Cell:
    """Hold one figure by its characters, its place without the slope of the type, its type size and its value."""

    start: int
    end: int
    place: Box
    type_px: float
    value: Decimal


def told_piastres(text: str) -> bool:
    """Say whether an advert tells once that its prices are in piastres."""
    told = _TOLD.search(text)
    return told is not None and told["piastres"] is not None


def find_told_sums(advert: AdvertText, amounts: Sequence[Amount]) -> list[Amount]:
    """Return the figures of the lists of an advert that says that its prices are in cents or in piastres."""
    told = _TOLD.search(advert.text)
    if told is None:
        return []
    cells = [
        cell for line in advert.lines for cell in _cells(advert, line) if not is_taken(cell.start, cell.end, amounts)
    ]
    priced = [advert.flat(advert.box_of(a.start, a.end)) for a in amounts]
    places = [*priced, *(cell.place for cell in cells)]
    named = [line.flat for line in advert.lines if WORD.search(advert.printed(line))]
    return [
        Amount(cell.start, cell.end, cell.value, "EGP-piastre", "piastres", _TRUST)
        if told["piastres"]
        else Amount(cell.start, cell.end, cell.value / 100, "USD", "bare", _TRUST)
        for cell in cells
        if _in_grid(cell, places) and any(_on_row(place, cell) and place.x < cell.place.x for place in named)
        if told["piastres"] or cell.value < _DOLLAR
    ]


def _cells(advert: AdvertText, line: TextLine) -> Iterator[_Cell]:
    """Yield the figures that end a line, each apart from the word before it or carried to its place by leaders."""
    end = line.end
    for i in range(len(line.words) - 1, -1, -1):
        word = line.words[i]
        m = _FIGURE.fullmatch(word.text)
        led = i > 0 and (line.words[i - 1].text.endswith(_LEADERS) or (m is not None and m["led"] != ""))
        apart = i == 0 or word.box.x - line.words[i - 1].box.right >= _APART * line.type_px
        if m is None or not (apart or led):
            return
        start = end - len(word.text)
        value = Decimal(m["n"]) + fraction_of(m["frac"])
        place = advert.flat(advert.box_of(start + len(m["led"]), end))
        yield _Cell(start + len(m["led"]), end, place, line.type_px, value)
        end = start - 1


def _in_grid(cell: _Cell, places: Sequence[Box]) -> bool:
    """Say whether enough prices stand over and under a cell, or beside it, or a few both ways."""
    column = sum(_in_column(place, cell) for place in places)
    row = sum(_on_row(place, cell) for place in places)
    return column >= _FEWEST or row >= _FEWEST or column == row == _FEWEST - 1


def _in_column(place: Box, cell: _Cell) -> bool:
    ends = abs(place.right - cell.place.right)
    return min(ends, abs(place.centre[0] - cell.place.centre[0])) < _NEAR * cell.type_px


def _on_row(place: Box, cell: _Cell) -> bool:
    return abs(place.centre[1] - cell.place.centre[1]) < _ROW * cell.type_px

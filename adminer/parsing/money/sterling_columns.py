"""Pounds, shillings and pence set in columns under their signs once: "£ s. d." and below it "3 3 0", "0 14 9".

The figures of a row are one amount, each of the column it stands in. The head itself is no price. Common practice of
printed price lists, no source.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from itertools import pairwise
from typing import Final

from adminer.parsing.money.amounts import Amount, fraction_of, in_pounds
from adminer.parsing.text.text import AdvertText
from adminer.records import Box

# old-style signs are misread: an s as a 1, a pound as an L or an E
HEAD: Final = re.compile(r"(?:£|\bL|\bE)\.?\s{0,2}[sS15l]\.?\s{0,2}d\.?(?![\w/])")
_FIGURES: Final = re.compile(r"(?P<n>\d{1,3})(?P<frac>[½¼¾])?[.,]?|(?P<none>[-–—]+)")
_LIMITS: Final = (1000, 20, 12)  # pounds, shillings to the pound, pence to the shilling
_TRUST, _WITHOUT_POUNDS = 0.7, 0.55
_ROW: Final = 0.7  # type sizes between the middles of figures of one row
_FAR: Final = 6.0  # type sizes from row to row, from where on the column has ended


@dataclass(frozen=True, slots=True)
class SterlingColumns:
    """Hold the amounts of columns under "£ s. d." and the characters of the heads."""

    heads: tuple[tuple[int, int], ...]
    amounts: tuple[Amount, ...]


@dataclass(frozen=True, slots=True)
class _Cell:
    """Hold one figure under the head: its word by number, its column and its height without the slope of the type."""

    word: int
    column: int
    y: float


def read_columns(advert: AdvertText, currency: str) -> SterlingColumns:
    """Return the amounts under every head "£ s. d." of an advert, in pounds."""
    heads, amounts = [], []
    for m in HEAD.finditer(advert.text):
        signs = [advert.flat(w.box) for w in advert.words_of(*m.span())]
        middles = _middles(signs)
        heads.append(m.span())
        if middles is not None:
            amounts += _below(advert, signs[0].joined(signs[-1]), middles, currency)
    return SterlingColumns(tuple(heads), tuple(amounts))


def _middles(signs: Sequence[Box]) -> tuple[float, float, float] | None:
    """Return the middles of the three columns; a head read as one word is parted evenly."""
    if len(signs) == len(_LIMITS):
        one, two, three = (sign.centre[0] for sign in signs)
        return one, two, three
    if len(signs) == 1:
        return tuple(signs[0].x + signs[0].w * share for share in (1 / 6, 1 / 2, 5 / 6))  # type: ignore[return-value]  # three shares, three middles
    return None


def _below(advert: AdvertText, head: Box, middles: tuple[float, float, float], currency: str) -> list[Amount]:
    step = (middles[2] - middles[0]) / 2
    found: list[Amount] = []
    at = head.centre[1]
    for row in _rows(advert, head, middles):
        if row[0].y - at > _FAR * advert.body_px:
            break
        at = row[0].y
        amount = _amount(advert, row, currency)
        if amount is not None and step > 0:
            found.append(amount)
    return found


def _rows(advert: AdvertText, head: Box, middles: tuple[float, float, float]) -> list[list[_Cell]]:
    """Return the figures under a head row by row from the top."""
    step = (middles[2] - middles[0]) / 2
    cells = []
    for number, word in enumerate(advert.words):
        place = advert.flat(word.box)
        x, y = place.centre
        nearest = min(range(len(middles)), key=lambda i: abs(middles[i] - x))
        if y > head.bottom and abs(middles[nearest] - x) < 0.6 * step and _FIGURES.fullmatch(word.text):
            cells.append(_Cell(number, nearest, y))
    cells.sort(key=lambda c: c.y)
    rows: list[list[_Cell]] = []
    for cell in cells:
        if rows and cell.y - rows[-1][0].y < _ROW * advert.body_px:
            rows[-1].append(cell)
        else:
            rows.append([cell])
    return rows


def _amount(advert: AdvertText, row: Sequence[_Cell], currency: str) -> Amount | None:
    """Return the amount of a row whose shillings and pence were both read and whose figures follow one another."""
    cells = sorted(row, key=lambda c: c.column)
    columns = [c.column for c in cells]
    if columns not in ([0, 1, 2], [1, 2]) or any(two.word - one.word != 1 for one, two in pairwise(cells)):
        return None
    total = Decimal(0)
    for cell, worth in zip(cells, (1, 20, 240)[3 - len(cells) :], strict=True):
        m = _FIGURES.fullmatch(advert.words[cell.word].text)
        if m is None:
            return None
        figure = Decimal(m["n"] or 0) + fraction_of(m["frac"])
        if figure >= _LIMITS[cell.column]:
            return None
        total += figure / worth
    if not total:
        return None
    start = advert.starts[cells[0].word]
    end = advert.starts[cells[-1].word] + len(advert.words[cells[-1].word].text)
    trust = _TRUST if len(cells) == len(_LIMITS) else _WITHOUT_POUNDS
    return Amount(start, end, in_pounds(total), currency, "sterling", trust)

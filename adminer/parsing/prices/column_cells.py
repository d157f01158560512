"""Cells of a column of prices whose sign or stroke was misread: "22" and "$i" among dollars, "2719" among shillings.

Where prices stand over and under a cell, each on the row of its name, the cell is a price as well; what it says is then
read as leniently as its column allows. Common practice, no source.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from typing import Final

from adminer.parsing.money.amounts import AS_FIGURES, Amount, fraction_of, in_pounds
from adminer.parsing.text.item_words import WORD
from adminer.parsing.text.stretches import is_taken
from adminer.parsing.text.text import AdvertText, TextLine
from adminer.records import Box, PriceForm

_LONGEST: Final = 9  # characters of a cell
_FEWEST: Final = 2  # prices that make a column
_SUMS: Final = 2  # of them in dollars and cents, for one without its point
_EDGE: Final = 1.0  # type sizes between right edges or middles of one column
_ALIKE: Final = (0.5, 2.0)  # type sizes of cells of one column
_GAP: Final = 4.0  # type sizes from row to row, at most
_ROW: Final = 0.7  # the same between the middles of one row
_NEAR: Final = 4  # times the dearest of its column, or below the cheapest
_TRUST: Final = 0.5

_OPENS: Final = re.compile(r"[.·…_ ]*[$\dlIJ|]")
_LEADERS: Final = r"[.·…_ ]*"
_ENDS: Final = r"[.,:;]?"
_CENTS: Final = re.compile(rf"{_LEADERS}(?:(?P<lot>[2-9])/(?=\d\d\D?$))?(?P<cents>(?=\D?\d)[1-9lIJ|][\dlIJ|]?){_ENDS}")
# two figures of cents at the end, the point lost; a worn half after a point that was kept
_SUM: Final = re.compile(rf"{_LEADERS}\$?(?P<dollars>\d\d?)(?:(?P<cents>\d\d)|\.(?P<with_half>\d\d)%){_ENDS}")
_ONE_DOLLAR: Final = re.compile(rf"\$ ?[iIl|!]{_ENDS}")
# the stroke of a sum in shillings is read as a 1 or a point, an eleven in old-style figures as a letter
_SHILLINGS: Final = re.compile(
    rf"{_LEADERS}(?P<s>[1-9]\d?)(?:[1Il|\]\[)!.](?P<d>1[01]|\d)|/(?P<eleven>[un]|[1Il|]{{2}})|1[-–—])(?P<frac>[½¼¾])?{_ENDS}"
)


@dataclass(frozen=True, slots=True)
class _Cell:
    """Hold one price of a column: its place without the slope of the type, its type size and its sum."""

    place: Box
    type_px: float
    sum: Decimal


def find_column_cells(advert: AdvertText, amounts: Sequence[Amount], currency: str) -> list[Amount]:
    """Return the prices of cells that only their column tells for prices, in a currency that the advert counts in."""
    known = [a for a in amounts if a.currency == currency]
    if len(known) < _FEWEST:
        return []
    cells: list[_Cell] = []
    found = []
    for line in advert.lines:
        if line.end - line.start > _LONGEST or not _OPENS.match(advert.text, line.start, line.end):
            continue
        if is_taken(line.start, line.end, amounts):
            continue
        cells = cells or [_cell(advert, a) for a in known]
        column = [cell.sum for cell in _column(line, cells)]
        if len(column) < _FEWEST or not _has_name(advert, line):
            continue
        read = _sum_in_dollars if currency == "USD" else _sum_in_shillings
        amount = read(advert, line, column, lots=any(a.quantity > 1 for a in known))
        if amount is not None and min(column) / _NEAR <= amount.amount / amount.quantity <= _NEAR * max(column):
            found.append(replace(amount, currency=currency))
    return found


def _cell(advert: AdvertText, amount: Amount) -> _Cell:
    place = advert.flat(advert.box_of(amount.start, amount.end))
    return _Cell(place, advert.type_px_of(amount.start, amount.end), amount.amount)


def _sum_in_dollars(advert: AdvertText, line: TextLine, column: Sequence[Decimal], *, lots: bool) -> Amount | None:
    """Return what a cell of a column in dollars and cents says; lots and sums without a point need others."""
    text, lot = advert.printed(line), 1
    if (m := _CENTS.fullmatch(text)) is not None and (lots or m["lot"] is None):
        value, lot = Decimal(m["cents"].translate(AS_FIGURES)) / 100, int(m["lot"] or 1)
    elif (m := _SUM.fullmatch(text)) is not None and (m["with_half"] or _in_dollars(column)):
        cents = Decimal(m["cents"]) if m["cents"] else Decimal(m["with_half"]) + Decimal("0.5")
        value = Decimal(m["dollars"]) + cents / 100
    elif _ONE_DOLLAR.fullmatch(text):
        value = Decimal(1)
    else:
        return None
    form: PriceForm = "multiple" if lot > 1 else "bare"
    return Amount(line.start, line.end, value, "USD", form, _TRUST, quantity=Decimal(lot))


def _in_dollars(column: Sequence[Decimal]) -> bool:
    return sum(s > 1 and s % 1 > 0 for s in column) >= _SUMS


def _sum_in_shillings(advert: AdvertText, line: TextLine, column: Sequence[Decimal], *, lots: bool) -> Amount | None:
    """Return what a cell of a column in shillings and pence says."""
    m = _SHILLINGS.fullmatch(advert.printed(line))
    if m is None:
        return None
    pence = Decimal(11 if m["eleven"] else m["d"] or 0) + fraction_of(m["frac"])
    return Amount(line.start, line.end, in_pounds(Decimal(m["s"]) / 20 + pence / 240), "GBP", "sterling", _TRUST)


def _column(line: TextLine, cells: Sequence[_Cell]) -> list[_Cell]:
    """Return the prices over and under a line, up and down to the first gap; none where a price is on its row."""
    mates = [c for c in cells if _aligned(c, line)]
    if any(abs(c.place.centre[1] - line.flat.centre[1]) < _ROW * line.type_px for c in mates):
        return []
    kept: list[_Cell] = []
    for side in (
        sorted((c for c in mates if c.place.y < line.flat.y), key=lambda c: -c.place.y),
        sorted((c for c in mates if c.place.y > line.flat.y), key=lambda c: c.place.y),
    ):
        at = line.flat
        for cell in side:
            gap = max(cell.place.y - at.bottom, at.y - cell.place.bottom)
            if gap > _GAP * line.type_px:
                break
            kept.append(cell)
            at = cell.place
    return kept


def _aligned(cell: _Cell, line: TextLine) -> bool:
    if not _ALIKE[0] < cell.type_px / max(line.type_px, 1.0) < _ALIKE[1]:
        return False
    edge = _EDGE * max(cell.type_px, line.type_px)
    one, other = cell.place, line.flat
    return abs(one.right - other.right) < edge or abs(one.centre[0] - other.centre[0]) < edge


def _has_name(advert: AdvertText, line: TextLine) -> bool:
    """Say whether words stand left of a line on its row."""
    return any(
        other.flat.right <= line.flat.x
        and abs(other.flat.centre[1] - line.flat.centre[1]) < line.type_px
        and WORD.search(advert.printed(other)) is not None
        for other in advert.lines
    )

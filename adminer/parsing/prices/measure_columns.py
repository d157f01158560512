"""Bare figures in columns headed by measures: "Pkt. | Oz. | ¼ lb. | Lb." over "5 | 8 | 20 | .65" are cents.

Seed lists and price lists of grocers print them so, with a point or a sign only where a sum reaches the dollars or the
column of the largest measure. Common practice, no source.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from typing import Final

from adminer.parsing.money.amounts import Amount, unit_of
from adminer.parsing.text.item_words import WORD
from adminer.parsing.text.stretches import is_taken
from adminer.parsing.text.text import AdvertText, TextLine
from adminer.records import Box

_MEASURE: Final = re.compile(
    r"(?P<count>(?:[½¼]|1/[24])[ -]?)?"
    r"(?P<unit>pkts?|pkgs?|packets?|oz|ounce|lbs?|pounds?|doz|dozen|pts?|pints?|qts?|quarts?|pks?|pecks?|bus?|bush(?:el)?|"
    r"gals?|each|ea|per 100+|100)\b[.,:]*",
    re.IGNORECASE,
)
_COUNTS: Final = {"½": Decimal("0.5"), "1/2": Decimal("0.5"), "¼": Decimal("0.25"), "1/4": Decimal("0.25")}
_CENTS: Final = re.compile(r"[1-9]\d?")
_FEWEST_HEADS: Final = 2  # on one row, that make heads of columns
_FEWEST_ROWS: Final = 3  # with figures under them
_FEWEST_SUMS: Final = 2  # of these rows in which a sum has its point or sign: they tell that the others are money
_AXIS: Final = 1.5  # type sizes between the middle of a head and that of a figure under it
_ROW: Final = 0.6  # type sizes between the middles of two cells of one row
_STEP: Final = 3.0  # type sizes from row to row
_TRUST: Final = 0.6


@dataclass(frozen=True, slots=True)
class _Head:
    """Hold the head of a column of cents: its place without the slope of the type, and the measure it names."""

    place: Box
    quantity: Decimal
    unit: str | None


def read_measure_columns(advert: AdvertText, amounts: Sequence[Amount]) -> list[Amount]:
    """Return the amounts with the cents in columns headed by measures, all in these columns with their measure."""
    lines = [(line, heads) for line in advert.lines if (heads := _measures(advert, line))]
    found: dict[int, Amount] = {amount.start: amount for amount in amounts}
    for line, _ in lines:
        row = [(n, heads) for n, heads in lines if n.flat.same_row(line.flat)]
        together = [head for _, heads in row for head in heads]
        if row[0][0] is line and len(together) >= _FEWEST_HEADS:
            found |= _under(advert, together, amounts)
    return list(found.values())


def _measures(advert: AdvertText, line: TextLine) -> list[_Head]:
    """Return the heads of a line that says nothing but measures."""
    text, heads, at = advert.printed(line), [], 0
    for m in _MEASURE.finditer(text):
        if text[at : m.start()].strip():
            return []
        place = advert.flat(advert.box_of(line.start + m.start(), line.start + m.end()))
        word = m["unit"].lower()
        count = Decimal(100) if word.endswith("100") else _COUNTS.get((m["count"] or "").strip(" -"), Decimal(1))
        heads.append(_Head(place, count, _unit(word)))
        at = m.end()
    return [] if text[at:].strip() else heads


def _unit(word: str) -> str | None:
    if word.endswith("100"):
        return None  # a count
    return "oz" if word.startswith("o") else unit_of(word)


def _under(advert: AdvertText, heads: Sequence[_Head], amounts: Sequence[Amount]) -> dict[int, Amount]:
    """Return the amounts under the heads of a table by where they start, down to the first gap between its rows.

    A column prints its cents in one way: in one with ".65" a bare figure is something else.
    """
    known = [(a, advert.flat(advert.box_of(a.start, a.end))) for a in amounts if a.currency == "USD"]
    figures = _bare_cents(advert, amounts)
    foot, size = max(head.place.centre[1] for head in heads), max(head.place.h for head in heads)
    pointed = {_head_of(place, heads) for a, place in known if a.amount < 1 and "." in advert.text[a.start : a.end]}
    rows, told, found = 0, 0, dict[int, Amount]()
    cells = [place for _, place in (*known, *figures) if place.y > foot and _head_of(place, heads)]
    for place in sorted(cells, key=lambda cell: cell.centre[1]):
        if place.centre[1] - foot > _STEP * size:
            break
        if not _has_name(advert, place, heads) or (found and place.centre[1] - foot < _ROW * size):
            continue
        foot = place.centre[1]
        row = [(a, cell) for a, cell in known if cell.same_row(place)]
        told += any(_head_of(cell, heads) is not None for _, cell in row)
        bare = [(a, cell) for a, cell in figures if cell.same_row(place) and _head_of(cell, heads) not in pointed]
        rows += bool(bare)
        for amount, cell in (*row, *bare):
            head = _head_of(cell, heads)
            if head is not None:
                found[amount.start] = replace(amount, quantity=head.quantity, unit=head.unit)
    return found if rows >= _FEWEST_ROWS and told >= _FEWEST_SUMS else {}


def _has_name(advert: AdvertText, place: Box, heads: Sequence[_Head]) -> bool:
    """Say whether words stand left of the columns on a row."""
    edge = min(head.place.x for head in heads)
    return any(
        line.flat.x < edge and line.flat.same_row(place) and WORD.search(advert.printed(line)) for line in advert.lines
    )


def _bare_cents(advert: AdvertText, amounts: Sequence[Amount]) -> list[tuple[Amount, Box]]:
    """Return the bare figures that may be cents, each with its place without the slope of the type."""
    found = []
    for word, start in zip(advert.words, advert.starts, strict=True):
        end = start + len(word.text)
        if _CENTS.fullmatch(word.text) and not is_taken(start, end, amounts):
            cents = Amount(start, end, Decimal(word.text) / 100, "USD", "bare", _TRUST)
            found.append((cents, advert.flat(word.box)))
    return found


def _head_of(place: Box, heads: Sequence[_Head]) -> _Head | None:
    nearest = min(heads, key=lambda head: abs(head.place.centre[0] - place.centre[0]))
    return nearest if abs(nearest.place.centre[0] - place.centre[0]) < _AXIS * place.h else None

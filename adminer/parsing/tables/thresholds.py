"""Columns of what must be bought first: under "Tapes" or "Register receipts" stand sums that no one pays for a piece.

A plan that gives tableware for a shop's register tapes prints how much in tapes each piece takes, beside its price
with them and its price without. Common practice, no source.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final

from adminer.parsing.prices.prices import Found
from adminer.parsing.tables.measured_rows import columns_of
from adminer.parsing.text.cells import Cell
from adminer.parsing.text.text import AdvertText

_HEAD: Final = re.compile(
    r"(?:(?:in|amount|total|your|cash|sales|green|register|cashier['’]?s?|value|of) )*"
    r"(?:tapes?|receipts?|purchases?)(?: (?:of|needed|required|total(?:l?ing)?))?[ :.]*",
    re.IGNORECASE,
)
_WITH: Final = re.compile(  # the first line of a head of prices: "without", "with each $5"
    r"(?:price )?(?:with(?:out)?|if|no)(?: (?:any|an?|each|every))?(?: \$ ?\d+(?:[.,]\d\d)?)?[ :.]*", re.IGNORECASE
)
_STEPS: Final = 3.0  # heights of the first sum between it and the head of its column


def without_thresholds(advert: AdvertText, prices: list[Found], cells: Sequence[Cell]) -> list[Found]:
    """Return the prices of an advert without the sums of columns headed by what must be bought first."""
    opened = [c for c in cells if _WITH.fullmatch(c.text)]
    heads = [c for c in cells if _HEAD.fullmatch(c.text) and not any(_is_over(o, c) for o in opened)]
    if not heads:
        return prices
    taken = [p for column in columns_of(advert, prices) if _is_headed(column[0], heads) for p in column]
    return [p for p in prices if not any(p is other for other in taken)]


def _is_over(one: Cell, head: Cell) -> bool:
    """Say whether a cell is the line over a head: "without" over "purchase"."""
    apart = head.flat.centre[1] - one.flat.centre[1]
    across = one.flat.across(head.flat) > 0
    return across and 0 < apart < _STEPS * head.flat.h


def _is_headed(top: Found, heads: Sequence[Cell]) -> bool:
    return any(
        0 < top.place.centre[1] - head.flat.centre[1] < _STEPS * max(top.place.h, head.flat.h)
        and head.flat.across(top.place) > 0
        for head in heads
    )

"""Columns of payments under their heads: "Cash", "Down" and "Month" over the rows of a table of sets.

Common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from adminer.parsing.prices.column_heads import column_heads, shares_row
from adminer.parsing.prices.payments import BY_TIME, PAID_DOWN
from adminer.parsing.prices.prices import Found
from adminer.parsing.terms.terms import Term
from adminer.parsing.text.text import AdvertText
from adminer.records import PriceRole

_HEADS: Final[dict[str, PriceRole]] = {
    "cash": "price",
    "cash price": "price",
    **dict.fromkeys((*PAID_DOWN, "pay down", "first payment", "deposit"), "down_payment"),
    **dict.fromkeys((*BY_TIME, "month", "per mo", "week"), "instalment"),
}
_ROWS: Final = 3  # that a column has at least


def read_payment_columns(advert: AdvertText, prices: list[Found]) -> list[Found]:
    """Return the prices, those in a column under a head that tells how they are paid in the role it tells."""
    lines = [(line, advert.printed(line).lower().strip(" .,:")) for line in advert.lines]
    heads = [(line, words) for line, words in lines if words in _HEADS]
    told = [
        Term(line.start, line.end, _HEADS[words], "price", words)
        for line, words in heads
        if any(other is not line and shares_row(other.flat, line.flat) for other, _ in heads)
    ]
    boxes = {i: advert.flat(advert.box_of(term.start, term.end)) for i, term in enumerate(told)}
    roles: dict[int, PriceRole] = {
        p: _HEADS[told[i].words]
        for i, members in column_heads(advert, prices, told, boxes).items()
        if len(members) >= _ROWS
        for p in members
    }
    return [replace(price, role=roles.get(p, price.role)) for p, price in enumerate(prices)]

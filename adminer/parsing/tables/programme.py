"""What the features of a programme cost on which terms: the schedule's prices are told the terms of the feature's.

The week's feature is shown large with its terms ("29c with each $5 purchase"); the schedule says the same price again
beside the same piece, and the prices of the other weeks, without saying the terms again.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from adminer.parsing.prices.column_heads import shares_row
from adminer.parsing.prices.prices import Found
from adminer.parsing.tables.schedule import Schedule
from adminer.parsing.text.text import AdvertText

_OF_PROGRAMMES: Final = frozenset({"with_purchase", "cardholder", "stamps", "punch_card"})


def tell_features(advert: AdvertText, schedule: Schedule, prices: Sequence[Found]) -> list[Found]:
    """Return the prices with those on the rows of a schedule on the terms of the feature whose price stands there too.

    Where no price of the rows is said elsewhere on one set of terms, nothing is told.
    """
    rows = [advert.flat(advert.box_of(start, end)) for start, end in schedule.spans]
    listed = {p.start for p in prices if p.role == "price" and any(shares_row(p.place, row) for row in rows)}
    amounts = {(p.amount.amount, p.amount.currency) for p in prices if p.start in listed}
    terms = {
        (p.condition, p.condition_text)
        for p in prices
        if p.start not in listed and p.condition in _OF_PROGRAMMES and (p.amount.amount, p.amount.currency) in amounts
    }
    if len(terms) != 1:
        return list(prices)
    ((condition, words),) = terms
    return [
        replace(p, condition=condition, condition_text=words)
        if p.start in listed and p.condition == "everyone" and p.condition_text is None
        else p
        for p in prices
    ]

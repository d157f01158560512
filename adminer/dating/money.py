"""Old prices in dollars of a later year, by the consumer price index; what a card saved; price per piece.

Index: U.S. Bureau of Labor Statistics, consumer price index for all urban consumers, all items, U.S. city average,
1982-84 = 100, in data/consumer_prices.csv. It measures what money bought in general; it appraises no object.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from decimal import ROUND_HALF_UP, Decimal
from typing import Final

from adminer.dating.price_tables import consumer_prices
from adminer.errors import UsageError

SOURCE: Final = "U.S. Bureau of Labor Statistics, CPI-U, all items, U.S. city average, 1982-84 = 100"
NO_APPRAISAL: Final = "This compares what money bought; it is no appraisal of an object."
_CENT: Final = Decimal("0.01")


@dataclass(frozen=True, slots=True)
class Restated:
    """Hold an amount in dollars of another year, with the index values that made it."""

    amount: Decimal
    in_dollars_of: int
    index_then: Decimal
    index_later: Decimal


def index_at(year: int, month: int | None = None) -> Decimal:
    """Return the index of a month, or the mean of a year's published months; UsageError outside the table."""
    table = consumer_prices()["all_items"]
    months = [table[year, m] for m in ([month] if month else range(1, 13)) if (year, m) in table]
    if not months:
        first, last = min(table), max(table)
        raise UsageError(
            f"there is no consumer price index for {year}" + (f"-{month:02d}" if month else ""),
            remedy=f"use a year from {first[0]} to {last[0]}",
        )
    return sum((Decimal(str(value)) for value in months), Decimal(0)) / len(months)


def in_dollars_of(amount: Decimal, then: date, later_year: int) -> Restated:
    """Return an amount of a day's month in dollars of a later (or earlier) year, rounded to the cent."""
    index_then, index_later = index_at(then.year, then.month), index_at(later_year)
    changed = (amount * index_later / index_then).quantize(_CENT, rounding=ROUND_HALF_UP)
    return Restated(changed, later_year, index_then, index_later)


def latest_year() -> int:
    """Return the latest year the index table reaches."""
    return max(consumer_prices()["all_items"])[0]


def card_saving(with_card: Decimal, without_card: Decimal) -> tuple[Decimal, Decimal]:
    """Return what the card saved in dollars, and as a share of the price without it."""
    if without_card <= 0:
        raise UsageError(f"a price without the card of {without_card} allows no comparison")
    saved = without_card - with_card
    return saved, (saved / without_card).quantize(Decimal("0.001"), rounding=ROUND_HALF_UP)


def price_per_piece(amount: Decimal, pieces: int) -> Decimal:
    """Return the price of one piece of a set, to a tenth of a cent."""
    if pieces < 1:
        raise UsageError(f"a set of {pieces} pieces has no price per piece")
    return (amount / pieces).quantize(Decimal("0.001"), rounding=ROUND_HALF_UP)

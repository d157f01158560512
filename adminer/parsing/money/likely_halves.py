"""Quarters that a price could hardly end in: the small half of worn type is read so, "12¼c" for 12½c, "9¼d." for 9½d.

A reader takes the half for a quarter more often than a shop asked a farthing. Cents ended in quarters where goods were
sold by the foot or the pound, but two cents over five have a half: twelve and a half is an eighth of a dollar. A
farthing told halfpenny goods apart; from sixpence up prices ended in a halfpenny or three farthings. Common practice
of the trade, no source.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from decimal import Decimal
from typing import Final

from adminer.parsing.money.amounts import Amount, in_pounds

_QUARTER: Final = "¼"
_FIVE, _HALVED = 5, 2  # cents over five
_NO_FARTHINGS: Final = 6  # pence
_PENCE: Final = 240  # to the pound
_TRUST: Final = 0.6
_STERLING: Final = frozenset({"GBP", "AUP"})


def restore_halves(text: str, amounts: Sequence[Amount]) -> list[Amount]:
    """Return the amounts with the halves that were read as quarters."""
    if _QUARTER not in text:
        return list(amounts)
    return [_with_half(a) if _QUARTER in text[a.start : a.end] else a for a in amounts]


def _with_half(amount: Amount) -> Amount:
    if amount.currency == "USD" and int(amount.amount * 100) % _FIVE == _HALVED:
        return replace(amount, amount=amount.amount + Decimal("0.0025"), trust=_TRUST)
    if amount.currency in _STERLING and amount.amount * _PENCE >= _NO_FARTHINGS:
        return replace(amount, amount=in_pounds(amount.amount + Decimal("0.25") / _PENCE), trust=_TRUST)
    return amount

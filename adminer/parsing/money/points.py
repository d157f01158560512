"""Give "$149" its point back where everything else in the advert says that it costs $1.49."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from adminer.parsing.money.amounts import Amount

_POINTLESS: Final = re.compile(r"\$ ?[\dlI|tLSBOoZ]{3,4}")
_FEWEST: Final = 3  # other prices with cents that must speak
_FAR: Final = 5  # as it stands the price is more than so many times the dearest other
_NEAR: Final = 4  # and a hundredth of it at most so many times the dearest, at least the cheapest by as many
_LABEL: Final = 3  # words at most beside a numeral in its line: "without card $349"
_FOUR_FIGURES: Final = 1000  # prose has no small cents to lose, but a point; hundreds of dollars it may well mean
_TRUST: Final = 0.6


def restore_points(text: str, amounts: Sequence[Amount]) -> list[Amount]:
    """Divide whole-dollar amounts of three or four figures by a hundred where the other prices leave no doubt.

    A point or the small cents of a numeral are the first things that a worn print or a reader loses. An advert whose
    prices with cents end at $2.50 has no saucer at $119; one with a $95.00 lamp may well have a range at $119. Prose
    has no small cents to lose: "bay mare, sound, $245" among notices at 15c stays. Common practice, no source.
    """
    known = [a.amount / a.quantity for a in amounts if _has_cents(a)]
    result = list(amounts)
    doubtful = [i for i, a in enumerate(result) if _may_lack_point(text, a)]
    for i in sorted(doubtful, key=lambda i: result[i].amount):
        whole = result[i].amount
        if len(known) < _FEWEST or whole <= _FAR * max(known):
            continue
        if min(known) / _NEAR <= whole / 100 <= _NEAR * max(known):
            result[i] = replace(result[i], amount=whole / 100, form="raised_cents", trust=_TRUST)
            known.append(whole / 100)
    return result


def _has_cents(amount: Amount) -> bool:
    return amount.currency == "USD" and amount.form != "dollars_whole" and amount.amount > 0


def _may_lack_point(text: str, amount: Amount) -> bool:
    return (
        amount.currency == "USD"
        and amount.form == "dollars_whole"
        and amount.quantity == 1
        and _POINTLESS.fullmatch(text[amount.start : amount.end].rstrip(" .,")) is not None
        and (_lost_in_prose(text, amount) or len(_line_around(text, amount).split()) <= _LABEL)
    )


def _lost_in_prose(text: str, amount: Amount) -> bool:
    """Say whether a sum lost its point wherever it stands: four figures, or a letter among small ones ("$25S")."""
    letters = any(c.isalpha() for c in text[amount.start : amount.end])
    return letters or amount.amount >= _FOUR_FIGURES


def _line_around(text: str, amount: Amount) -> str:
    """Return what stands in the line of an amount beside it."""
    before, after = text[: amount.start].rpartition("\n")[2], text[amount.end :].partition("\n")[0]
    return f"{before} {after}"

"""What mail-order catalogues print between an article and its price, and what names nothing: order numbers and weights.

"32-Piece Dinner Set. ... Shpg. wt. 26 lbs. / 45 K 3021—$7.45": the price is the set's.
"""

from __future__ import annotations

import re
from typing import Final

_NUMBER: Final = (
    r"(?i:\b(?:cat(?:alog(?:ue)?)?\.? |order |stock )?no\.? ?)?"
    r"\b\d{1,3} ?[A-Z]{1,3} ?\d{3,5}(?:[A-Z](?![A-Za-z])|(?!\w))"
)
_WEIGHT: Final = (
    r"\b(?:shpg|shipping|ship|mailing)\.?,? (?:wt|weight)\b[.,:]*(?:\s(?:about |each )?\d+(?: ?[½¼¾])?"
    r"(?:\s?(?:lbs?|pounds?|ozs?|ounces?)\b[.,;]?(?: \d+ (?:ozs?|ounces?)\b\.?)?)?)?"
)
_MARK: Final = re.compile(rf"(?P<number>{_NUMBER})|(?i:{_WEIGHT})")


def order_marks(text: str) -> list[tuple[int, int]]:
    """Return the characters of order numbers ("45 K 3021") and shipping weights, which are part of no item's name."""
    return [m.span() for m in _MARK.finditer(text)]


def without_order_marks(text: str) -> tuple[str, bool]:
    """Return a text without its order numbers and weights, and whether it had an order number."""
    return _MARK.sub(" ", text), any(m["number"] for m in _MARK.finditer(text))

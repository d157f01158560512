"""What mail-order catalogues print between an article and its price, and what names nothing: order numbers and weights.

"32-Piece Dinner Set. ... Shpg. wt. 26 lbs. / 45 K 3021—$7.45": the price is the set's.
"""

from __future__ import annotations

import re
from typing import Final

from adminer.parsing.text.text import AdvertText

_NUMBER: Final = (
    r"(?i:\b(?:cat(?:alog(?:ue)?)?\.? |order |stock )?no\.? ?)?"
    r"\b(?:\d{1,3} ?[A-Z]{1,3} ?\d{3,5}|\d{1,3}-[A-Z]{1,3}-\d{2,5})(?:[A-Z](?![A-Za-z])|(?!\w))\.?"
)
_POUNDS: Final = r"\s?(?:lbs?|pounds?|ozs?|ounces?)\b[.,;]?(?: \d+ (?:ozs?|ounces?)\b\.?)?"
_WEIGHT: Final = (
    r"\b(?:shpg|shipping|ship|mailing)\.?,? (?:wt|weight)\b[.,:]*"
    rf"(?:\s(?:about |each )?\d+(?: ?[½¼¾])?(?:{_POUNDS})?)?|"
    rf"\bwt\.,? (?:about |each )?\d+(?: ?[½¼¾])?{_POUNDS}"
)
_WEIGHT_HEAD: Final = re.compile(r"(?:(?:shpg|shipping|ship|mailing)\.? )?(?:wt|weight|lbs|pounds)\.?", re.IGNORECASE)
_WEIGHT_CELL: Final = re.compile(rf"\d+(?: ?[½¼¾])?(?:{_POUNDS})?", re.IGNORECASE)
_NEXT_CELL: Final = 3.0  # type sizes of white from cell to cell
_MARK: Final = re.compile(rf"(?P<number>{_NUMBER})|(?i:{_WEIGHT})")


def order_marks(text: str) -> list[tuple[int, int]]:
    """Return the characters of order numbers ("45 K 3021") and shipping weights, which are part of no item's name."""
    return [m.span() for m in _MARK.finditer(text)]


def weight_columns(advert: AdvertText) -> list[tuple[int, int]]:
    """Return the characters of the cells under "Wt." in a table: what an article weighs is no part of its name."""
    heads = [line for line in advert.lines if _WEIGHT_HEAD.fullmatch(advert.printed(line))]
    downwards = sorted(advert.lines, key=lambda line: line.flat.y) if heads else []
    found: list[tuple[int, int]] = []
    for head in heads:
        foot = head
        for line in downwards:
            under = line.flat.across(head.flat) > 0 and line.flat.y > foot.flat.y
            if under and line.flat.y - foot.flat.bottom < _NEXT_CELL * head.type_px:
                if not _WEIGHT_CELL.fullmatch(advert.printed(line)):
                    break
                found.append((line.start, line.end))
                foot = line
    return found


def without_order_marks(text: str) -> tuple[str, bool]:
    """Return a text without its order numbers and weights, and whether it had an order number."""
    return _MARK.sub(" ", text), any(m["number"] for m in _MARK.finditer(text))

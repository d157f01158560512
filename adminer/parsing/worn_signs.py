"""A dollar sign read as an 8: "85.35" among prices of a dollar and less is $5.35.

The sign is the figure's twin in worn type. Only where the sum as it was read is many times the dearest other of its
advert, and without the 8 it stands among them. Common practice, no source.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from adminer.parsing.amounts import Amount, clean_amount

_AS_EIGHT: Final = re.compile(r"8\d{1,3}\.\d\d")
_FEWEST: Final = 3  # other prices that must speak, one of them with its sign
_FAR: Final = 5  # times the dearest other that the sum as read is more than
_NEAR: Final = 6  # times the dearest other that the sum without the 8 is at most
_TRUST: Final = 0.6


def restore_dollar_signs(text: str, amounts: Sequence[Amount]) -> list[Amount]:
    """Take the 8 before a sum for a dollar sign where the other prices of the advert leave no doubt."""
    doubtful = [i for i, a in enumerate(amounts) if a.form == "bare" and _AS_EIGHT.fullmatch(text, a.start, a.end)]
    known = [a for i, a in enumerate(amounts) if a.currency == "USD" and a.amount > 0 and i not in doubtful]
    signed = any(text[a.start] == "$" for a in known)
    if not signed or len(known) < _FEWEST:
        return list(amounts)
    dearest = max(a.amount for a in known)
    made = list(amounts)
    for i in doubtful:
        value = clean_amount(text[amounts[i].start + 1 : amounts[i].end])
        if amounts[i].amount > _FAR * dearest and 0 < value <= _NEAR * dearest:
            made[i] = replace(amounts[i], amount=value, form="dollars_point", trust=_TRUST)
    return made

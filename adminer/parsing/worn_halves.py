"""Cents with a fraction in worn type: "12½c" read as "12ke" or "1212c", "10½c" as "101hc", "6¼c" as "614c".

The small figures of a fraction run together and are read as letters or as whole figures. Three or four figures before
a cent sign are no number of cents, and fractions stand on sums that the trade printed with them: below twenty cents,
and the eighths of a dollar. Believed only where other prices are in cents. Common practice, no source.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final

from adminer.parsing.amounts import Amount, named_fraction

_WORN: Final = re.compile(
    r"(?<![\w$.,/])\.?(?P<cents>\d{1,2}?)"
    r"(?:(?P<half>1/?[hzs]|1/\.?|[kzh](?=[ce])|%½?|½2|v[éez]?|12(?=[c¢°]))|(?P<quarter>14(?=[c¢°]))|"
    r"(?P<three>34(?=[c¢°])))(?P<sign>[ce¢°])(?![a-z\d])"
)
_CENTS: Final = frozenset({"cents_sign", "raised_cent_sign", "fraction"})
_FEWEST: Final = 2  # other prices in cents
_SMALL: Final = 20
_TRUST: Final = 0.5


def find_worn_halves(text: str, amounts: Sequence[Amount]) -> list[Amount]:
    """Return the cents with a worn fraction, where other amounts of the text are cents."""
    found = []
    for m in _WORN.finditer(text):
        whole = int(m["cents"])
        others = [a for a in amounts if a.form in _CENTS and not (a.start < m.end() and m.start() < a.end)]
        if len(others) < _FEWEST or not (0 < whole < _SMALL or whole % 5 == 2):
            continue
        part = named_fraction(m)
        found.append(Amount(m.start(), m.end(), (whole + part) / 100, "USD", "fraction", _TRUST))
    return found

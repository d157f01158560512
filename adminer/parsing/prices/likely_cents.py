"""Which worn figures of an advert are prices in cents, weighed by their shape, their place and the prices around.

A careful reader takes "Sc" in a list of cents for 5c, "79;" after the name of a cup for 79c, "3 lbs. 98" for 98c: each
by itself is doubtful, so points are added up. The figure alone says something, the other cents of the advert and their
range say more, and so do the words of a price before it ("now", "each", a count), a unit after it, and an end of the
clause. Common practice, no source.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Final

from adminer.parsing.money.amounts import Amount, with_quantity
from adminer.parsing.money.worn_figures import ODD, Reading, readings
from adminer.parsing.text.item_words import LEADS_TO_PRICE
from adminer.parsing.text.stretches import is_taken
from adminer.parsing.text.text import AdvertText

_CENTS: Final = frozenset({"cents_sign", "raised_cent_sign", "fraction"})
_ENOUGH: Final = 4  # points
_SEVERAL: Final = 2  # other prices in cents
_NEAR, _FAR = 2, 4  # times the dearest other, or below the cheapest
_UNITS: Final = r"yds?|doz|dozen|lbs?|[Il]bs?|prs?|pair|yard|pint|pt|quart|qt|peck|pk|gal|bu|bunch"
_COUNTED: Final = re.compile(
    rf"(?<![\d/])(?:[2-9]|1\d) (?:for[ \n]|(?:{_UNITS}|dz|cans|pkgs|bars|rolls)[.,]? (?:for )?)$", re.IGNORECASE
)
_BEFORE: Final = re.compile(
    rf"(?:{LEADS_TO_PRICE}|\b(?:at|are|is|costs?|(?<!\d[ \n])(?:{_UNITS}))[.,:]?[ \n]|"
    r"[c¢] (?:to|or) |\b(?:was|were|reg|regularly|formerly|usually|list)[.,:]? [\d.]+[c¢][.,;]?[ \n])$",
    re.IGNORECASE,
)
_AFTER: Final = re.compile(
    r"[,.]? ?\n?(?:each\b|ea\.|apiece\b|(?:the|a|per) (?:square )?"
    r"(?:pair|set|doz\w*|yard|lb|pound|can|box|peck|quart|half|word)\b)",
    re.IGNORECASE,
)
_COMMA: Final = re.compile(r"[a-z]{2},[ \n]$")
_CLOSED: Final = re.compile(r" ?(?:[.,;:](?!\d)|\n|$)|[l1I]b\b")
_NUMBER: Final = re.compile(
    r"(?:\bN[o0]s?|#|\bsizes?|\bstyle|\bphones?|\bpages?|\blot|\bbox|\broute|\bdept|\bdesk|\bmodel|[x×]|\band|\bof)"
    r"[.:]?[ \n]$",
    re.IGNORECASE,
)
_LAST_DAY: Final = 31
_REACH: Final = 24
_TRUST: Final = 0.5


@dataclass(frozen=True, slots=True)
class _Known:
    """Hold what the sound prices of an advert say: how many are in cents, their range, and whether lots are."""

    count: int
    low: Decimal
    high: Decimal
    lots: bool


def find_likely_cents(advert: AdvertText, amounts: Sequence[Amount]) -> list[Amount]:
    """Return the worn figures of an advert that are prices in cents; those over an amount stand in its place."""
    found: list[Amount] = []
    for reading in readings(advert.text):
        if is_taken(reading.start, reading.end, found):
            continue
        rivals = [a for a in amounts if a.start < reading.end and reading.start < a.end]
        if not all(_yields(advert.text, rival, reading) for rival in rivals):
            continue
        known = _known(advert.text, [a for a in amounts if a not in rivals])
        if known is not None and _points(advert, reading, known) >= _ENOUGH:
            lot = Decimal(reading.quantity)
            price = Amount(reading.start, reading.end, reading.cents / 100, "USD", reading.form, _TRUST, quantity=lot)
            found.append(with_quantity(advert.text, price))
    return found


def _yields(text: str, rival: Amount, reading: Reading) -> bool:
    """Say whether an amount makes way: what a worn fraction holds, or hundreds of cents."""
    if reading.form != "fraction" or rival.currency != "USD":
        return False
    return rival.form in _CENTS and not text.startswith("$", rival.start)


def _known(text: str, others: Sequence[Amount]) -> _Known | None:
    sound = [a for a in others if a.form in _CENTS and 0 < a.amount < 1]
    lots = [a for a in others if a.form == "multiple" and 0 < a.amount < 1]
    sums = [a.amount * 100 for a in (*sound, *lots)]
    if not sound:
        return None
    return _Known(
        len(sums), min(sums), max(sums), any(text[a.end - 1] in "c¢" and "/" in text[a.start : a.end] for a in lots)
    )


def _points(advert: AdvertText, reading: Reading, known: _Known) -> int:
    """Return the points of a reading: of its shape, of the prices around, of its place."""
    text, start, end = advert.text, reading.start, reading.end
    line = advert.line_at(start)
    left = max(0, start - _REACH)
    if _NUMBER.search(text, left, start):
        return 0
    if reading.quantity > 1 and reading.points < ODD and reading.cents <= _LAST_DAY and not known.lots:
        return 0
    points = reading.points + (known.count >= _SEVERAL) + _in_range(reading.cents, known)
    after = _AFTER.match(text, end) is not None
    if _COUNTED.search(text, left, start):
        points += 3
    elif after or _BEFORE.search(text, left, start):
        points += 2
    elif _COMMA.search(text, left, start) or not text[line.start : start].strip(" ._·…"):
        points += 1
    return points + (1 if after or text[end - 1] in ":;" or _CLOSED.match(text, end) else -1)


def _in_range(cents: Decimal, known: _Known) -> int:
    if known.low / _NEAR <= cents <= _NEAR * known.high:
        return 1
    return 0 if known.low / _FAR <= cents <= _FAR * known.high else -2

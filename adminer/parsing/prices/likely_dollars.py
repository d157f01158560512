"""Sums of dollars whose sign or point was misread: "85.35" is $5.35, "3 65." 3.65, where the other prices say so.

The sign is the twin of an 8 or a 5 in worn type and is read as any figure now and then; the point is lost, or read as a
comma or a dash. A sum many times the dearest other of its advert is doubtful; without its first figure it must stand
among them. Two figures after one or two, apart, are a price where a word of a price leads up to them or they fill a
line, and the other prices of the advert have a point and no sign. Common practice, no source.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from decimal import Decimal
from typing import Final

from adminer.parsing.money.amounts import Amount, clean_amount
from adminer.parsing.text.item_words import LEADS_TO_PRICE
from adminer.parsing.text.stretches import is_taken
from adminer.parsing.text.text import AdvertText

_SIGN_AND_SUM: Final = re.compile(r"[35689]\d{1,3}\.\d\d")  # no other figure has the bows of the sign
_TWINS: Final = "58"
_UNSIGNED: Final = re.compile(r"[\d.,½¼¾]+")
_FEWEST: Final = 3  # other prices that must speak
_ALWAYS: Final = 4  # other sums in dollars, all with their sign: the dearest without one has it as its first figure
_FAR: Final = 5  # times the dearest other that the sum as read is more than
_FURTHER: Final = 10  # the same where the first figure is no twin of the sign
_NEAR: Final = 6  # times the dearest other that the sum without its first figure is at most
_SPLIT: Final = re.compile(
    r"(?<![\w$£/.,:×x\-])(?P<dollars>[1-9]\d?)(?P<gap>[ ,\-–])(?P<cents>\d\d)(?=[.;,]?(?:[ \n]|$))(?! ?[x×])"
)
_LEADS: Final = re.compile(rf"(?:{LEADS_TO_PRICE}|\bfor[.,:]?[ \n])$", re.IGNORECASE)
_CLOSED: Final = re.compile(r"[.;,]?(?:\n|$)|[.;,] ")
_REACH: Final = 16
_TRUST: Final = 0.5
_SIGN_TRUST: Final = 0.6


def restore_dollar_signs(text: str, amounts: Sequence[Amount]) -> list[Amount]:
    """Take the first figure of a sum for a dollar sign where the other prices of the advert leave no doubt."""
    doubtful = [i for i, a in enumerate(amounts) if a.form == "bare" and _SIGN_AND_SUM.fullmatch(text, a.start, a.end)]
    others = [a for i, a in enumerate(amounts) if a.currency == "USD" and a.amount > 0 and i not in doubtful]
    made = list(amounts)
    if len(others) < _FEWEST or not _shows_signs(text, others):
        return made
    dearest = max(a.amount for a in others)
    dollars = [text[a.start : a.end] for a in others if a.amount >= 1]
    always = len(dollars) >= _ALWAYS and all("$" in printed for printed in dollars)
    for i in doubtful:
        raw = amounts[i].amount
        value = clean_amount(text[amounts[i].start + 1 : amounts[i].end])
        twin = text[amounts[i].start] in _TWINS
        far = 1 if twin and always else _FAR if twin else _FURTHER
        if raw > far * dearest and 0 < value <= _NEAR * dearest:
            made[i] = replace(amounts[i], amount=value, form="dollars_point", trust=_SIGN_TRUST)
    return made


def _shows_signs(text: str, amounts: Sequence[Amount]) -> bool:
    """Say whether one amount has its dollar sign or most have a sign of some kind."""
    printed = [text[a.start : a.end] for a in amounts]
    return any("$" in p for p in printed) or 2 * sum(_UNSIGNED.fullmatch(p) is None for p in printed) > len(printed)


def find_split_sums(advert: AdvertText, amounts: Sequence[Amount]) -> list[Amount]:
    """Return the sums whose point was lost or misread, in an advert whose other prices have a point and no sign."""
    text = advert.text
    known = [a.amount for a in amounts if a.form == "bare" and a.currency == "USD"]
    if len(known) < _FEWEST:
        return []
    found = []
    for m in _SPLIT.finditer(text):
        start, end = m.span()
        value = Decimal(m["dollars"]) + Decimal(m["cents"]) / 100
        line = advert.line_at(start)
        if is_taken(start, end, amounts):
            continue
        if not min(known) / 2 <= value <= 2 * max(known):
            continue
        leads = _LEADS.search(text, max(line.start - 1, start - _REACH), start) is not None
        if m["gap"] == "," or (leads and _CLOSED.match(text, end)):
            found.append(Amount(start, end, value, "USD", "bare", _TRUST))
    return found

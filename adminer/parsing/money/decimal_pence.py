"""Pounds and new pence: "£1.25", "£1·25", "12½p", "9 new pence", as Britain and Ireland count since 15 February 1971.

A point parts pounds from shillings too ("£9.10"), so an advert must show that it counts in hundreds: a p after a
figure, or figures after the point that are no shillings. Old sums beside new ones ("2s. 11d. (14½p)") stay what they
are. The date of the change is common knowledge, no source.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import replace
from decimal import Decimal
from typing import Final

from adminer.parsing.money.amounts import FRACTION, Amount, fraction_of, in_pounds, with_quantity

_POINT: Final = r"[.,·•:-]"
_SHILLINGS: Final = 20  # to the pound: no more stand after the pounds of the old money
_AFTER_POUNDS: Final = re.compile(rf"£ ?\d{{1,4}}[.,·](?P<rest>\d\d)(?![\d/]|{_POINT}\d| ?[sd]\.)")
_HALF: Final = r"½|/½|1/2|[>%][a-z/]?(?=p)"  # the small half of worn type
_PENCE_SIGN: Final = r"p(?![\w'’]|\.? ?m\b)\.?"
_PENCE_SIGNS: Final = re.compile(rf"(?<![\w.,/-])\d{{1,2}}(?: ?(?:{_HALF}))?{_PENCE_SIGN}|\bnew pence\b", re.IGNORECASE)
_SURE: Final = 2  # signs of pence, where no pounds or half pence speak
_POUNDS: Final = re.compile(
    rf"(?:£ ?|(?<![\w.,])(?P<worn>[EL&])(?=\d{{1,3}}[.·]\d\d))(?P<whole>\d{{1,3}}(?:,\d{{3}})+|\d{{0,4}})"
    rf"{_POINT}(?P<pence>\d\d)(?P<half>½|1/2)?(?:p\b)?(?![\d/]|{_POINT}\d)"
)
_PENCE: Final = re.compile(
    rf"(?:(?<![\w.,/-])|(?<=[.…·]{{2}})|(?<=\s[.·])|(?<=£0\.))(?P<pence>\d{{1,3}})"
    rf"(?:(?P<frac> ?{FRACTION})|(?P<half>{_HALF}))? ?(?:{_PENCE_SIGN}|new pence\b)|"
    rf"(?<![\d\w/.])(?P<only>[½]) ?{_PENCE_SIGN}"
)
_TRUST, _WORN_TRUST = 0.9, 0.6


def counts_decimally(text: str) -> bool:
    """Say whether a text counts pounds in new pence."""
    beyond = any(m["rest"][0] == "0" or int(m["rest"]) >= _SHILLINGS for m in _AFTER_POUNDS.finditer(text))
    return beyond or pence_signs(text) >= (1 if "£" in text or "½p" in text else _SURE)


def pence_signs(text: str) -> int:
    """Count the figures of a text that the sign of new pence follows."""
    return len(_PENCE_SIGNS.findall(text))


def as_new_pence(amounts: Iterable[Amount], currency: str) -> Iterator[Amount]:
    """Yield as pence what a text that counts in them seems to say in cents: a small p beside a numeral looks like ¢."""
    for amount in amounts:
        if amount.form in {"cents_sign", "raised_cent_sign", "fraction"}:
            pounds = in_pounds(amount.amount)
            yield replace(amount, amount=pounds, currency=currency, form="sterling", trust=_WORN_TRUST)


def decimal_amounts(text: str, currency: str) -> Iterator[Amount]:
    """Yield the sums in pounds and new pence of a text that counts in them."""
    for m in _POUNDS.finditer(text):
        pence = Decimal(m["pence"]) + fraction_of(m["half"])
        value = Decimal(m["whole"].replace(",", "") or 0) + pence / 100
        trust = _WORN_TRUST if m["worn"] else _TRUST
        yield with_quantity(text, Amount(m.start(), m.end(), in_pounds(value), currency, "sterling", trust))
    for m in _PENCE.finditer(text):
        worn = m["half"] is not None and m["half"] != "½"
        part = fraction_of("½" if m["half"] else m["frac"] or m["only"])
        value = (Decimal(m["pence"] or 0) + part) / 100
        trust = _WORN_TRUST if worn else _TRUST
        yield with_quantity(text, Amount(m.start(), m.end(), in_pounds(value), currency, "sterling", trust))

"""Amounts that are no prices: the $5.00 of "with each $5.00 purchase", a phone number, a fine, a loss.

An advert names sums from which carriage is free, and a page of a newspaper tells of fines, funds and losses. Each is
known by the words right before or after it. Common usage, no source.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from decimal import Decimal
from typing import Final

from adminer.parsing.money.amounts import Amount

_REQUIRED: Final = re.compile(r"\b(?:with|for|on|every) (?:each|every|a minimum|any)[ \n]*$", re.IGNORECASE)
_PURCHASE: Final = re.compile(
    r"(?: |\n(?!(?-i:[A-Z][a-z])))(?:or more )?"
    r"(?:(?:food|grocery|total|minimum|cash) )?(?:purchases?|orders?(?! by))\b",
    re.IGNORECASE,
)
_BUYING: Final = re.compile(
    r"\b(?:purchases?|orders?|bills?|parcels?)[ \n](?:of|over|under|from|above|totall?ing|amounting to)[ \n]*$|"
    r"\b(?:one|two|three|four|1|2|3|4)[ \n]with[ \n]*$",  # "One with $5, two with $10"
    re.IGNORECASE,
)
_TRADE_IN: Final = re.compile(
    r"[ \n]+(?:allowed[ \n]+|allowance[ \n]+)?(?:for|on)[ \n]+(?:your|any)[ \n]+old\b", re.IGNORECASE
)
_MONTH_BEFORE: Final = re.compile(
    r"(?<![A-Za-z])(?:Jan(?:uary)?|Feb(?:ruary)?|Mar(?:ch)?|Apr(?:il)?|May|June?|July?|Aug(?:ust)?|Sept?(?:ember)?|"
    r"Oct(?:ober)?|Nov(?:ember)?|Dec(?:ember)?)\.? ?$|(?:JAN|FEB|MAR|APR|JUN|JUL|AUG|SEPT?|OCT|NOV|DEC)[A-Z]*\.? ?$"
)
MONTH: Final = re.compile(
    r"\b(?:Jan|Feb|Mar|Apr|May|June?|July?|Aug|Sept?|Oct|Nov|Dec)(?:\.|[a-z]{2,7}\b)? \d{1,2}(?!\d)", re.IGNORECASE
)
_COUNTED_PIECES: Final = re.compile(r"\d ?ct\.?$", re.IGNORECASE)
_DIME_STORE: Final = re.compile(  # a shop that bears its prices in its name
    r"\b(?:5|10|25) ?(?:c|¢|cents?)?[ ,]*(?:to|and|&|-)[ \n]*(?:\$1(?:\.00)?|10 ?(?:c|¢|cents?)?)[ \n]+Stores?\b",
    re.IGNORECASE,
)
_COUNTED: Final = re.compile(r"\b(?:nests?|sets?|weeks?|packs?|cartons?|boxe?s?) of[ \n]*$", re.IGNORECASE)
_LONG_NUMBER: Final = re.compile(
    r"(?:\bNo\.?|#|\bmodel|\bphone|\btel\.?|\bstyle|\blot|\bdesign|\bpage|\bbox|\bdesk|\bdept)[ .:]*$", re.IGNORECASE
)
_BY: Final = re.compile(r"\d[\"”″]? ?[x×] ?$")  # "36 x 75c", the sign of inches read as a c
_ORDINAL: Final = re.compile(r"(?:st|nd|rd|th)\b", re.IGNORECASE)  # "Desk 113.35th Street": two numbers run together
_STOCK_NUMBER: Final = re.compile(
    r"(?:\bNos?[.,:]|(?<!\d)#)[ \n]*$", re.IGNORECASE
)  # "No. 38C", its other figures lost
_FREE_FROM: Final = re.compile(
    r"\b(?:(?:carriage|rail|freight|delivery|postage|postpaid|packing|delivered|prepaid|sent)[ \n](?:is[ \n])?"
    r"(?:paid|free|allowed|prepaid)[ \n](?:on|over|for|from)(?:[ \n]all)?(?:[ \n][a-z]+)?(?:[ \n](?:of|over|above))?|"
    r"free[ \n](?:above|over|from)|"
    r"(?:filled|billed|sold|sent|shipped)[ \n](?:on|over|under|below)|"
    r"(?:no|nothing)[ \n](?:[a-z]+[ \n]){0,2}(?:under|over)|"
    r"(?:postage|carriage)[ \n](?:[\d/½-]+[ \n])?under|(?:to|at)[ \n]your[ \n][a-z]+(?:[ \n][a-z]+)?[ \n]on|"
    r"(?:articles?|goods|che(?:que|ck)s?|lots?|sales?|accounts?|amounts?|C\. ?O\. ?D\.?['’]?s?|post|purchases?|"
    r"orders?)[ \n](?:under|over|above|below|exceeding|less than|for less than))[ \n]*$",
    re.IGNORECASE,
)
_SPENDING: Final = re.compile(
    r"\b(?:to[ \n]the[ \n](?:amount|value|extent)[ \n]of|spend|spending|spent|"
    r"(?:have|has)[ \n]traded|worth[ \n]of)[ \n]*$",
    re.IGNORECASE,
)
_REACHED: Final = re.compile(
    r"[ \n](?:(?:or|and)[ \n](?:over|more|above|upwards?)[ \n,.]*(?:(?:is|are|will be)[ \n])?"
    r"(?:delivered|carriage|freight|prepaid|post|sent|free|within|(?:and[ \n])?(?:take|receive|choose|get)[ \n])|"
    r"(?:in[ \n])?value\b[ \n,.]*(?:carriage|post|sent|free)|lots?\b(?![ .·]*(?:(?-i:[A-Z])|\d{1,3}|No\.?|of)\b))",
    re.IGNORECASE,
)
_SPENT: Final = re.compile(
    r",?[ \n](?:buy|take|choose)[ \n](?:one|two|three|four|five|[1-5])\b|"  # "with $15 buy three"
    r"[ \n](?:(?:that[ \n])?you[ \n])?(?:spent|spend)\b|[ \n]is[ \n]punched\b|['’]?s? worth\b(?! ?[$£\d])",
    re.IGNORECASE,
)
_RATE: Final = re.compile(
    r"[ \n]?\bin[ \n]the[ \n](?:£|pounds?\b|dollars?\b)", re.IGNORECASE
)  # a discount of "1s. in the £"
_TAPES: Final = re.compile(
    r"[ \n](?:worth[ \n])?(?:of|in)[ \n](?:[a-z]+[ \n]){0,3}(?:tapes|receipts|slips)\b", re.IGNORECASE
)
_NEWS: Final = re.compile(
    r"\b(?:fined|fund[^.;]{0,32}stands[ \n]at|went[ \n]for|(?:put|estimated|assessed|valued)[ \n]at|damages?[ \n]of|"
    r"assessed|(?:fund|proceeds|purse|loss)[ \n]of|loss[ \n](?:set|put)[ \n]at|"
    r"bail[ \n]of|issue[ \n]of|estate[ \n]of|(?:no|nor)[ \n](?:less|more)[ \n]than)[ \n]*$",
    re.IGNORECASE,
)
_NO_SHOP: Final = Decimal(100_000)  # no shop's price, in any money
_REACH: Final = 48  # characters before an amount that its words stand in


def no_prices(text: str, amounts: Sequence[Amount]) -> frozenset[int]:
    """Return which amounts of a text are no prices, by number."""
    shops = [m.span() for m in _DIME_STORE.finditer(text)]
    counts = sum(a.form in {"cents_sign", "raised_cent_sign"} and "¢" in text[a.start : a.end] for a in amounts) > 1
    return frozenset(
        i
        for i, amount in enumerate(amounts)
        if not amount.amount  # "$0 down", or what is left of a worn figure
        or any(s <= amount.start and amount.end <= e for s, e in shops)
        or (counts and _COUNTED_PIECES.search(text, amount.start, amount.end))  # "Tea Bags, 48 ct." among prices in ¢
        or _is_threshold(text, amount)
        or _is_told_of(text, amount)
        or _is_number(text, amount)
    )


def _is_threshold(text: str, amount: Amount) -> bool:
    """Say whether a sum is one to spend or to reach: "on orders over $5", "with any $10 purchase"."""
    before = max(0, amount.start - _REACH)
    return any(p.search(text, before, amount.start) for p in (_REQUIRED, _BUYING, _FREE_FROM, _SPENDING)) or any(
        p.match(text, amount.end) for p in (_PURCHASE, _REACHED, _SPENT, _RATE, _TAPES)
    )


def _is_told_of(text: str, amount: Amount) -> bool:
    """Say whether a sum is not asked but told of: a trade-in, a fine, a loss."""
    before = max(0, amount.start - _REACH)
    if _TRADE_IN.match(text, amount.end) or amount.amount >= _NO_SHOP:
        return True
    return _NEWS.search(text, before, amount.start) is not None


def _is_number(text: str, amount: Amount) -> bool:
    """Say whether a figure is the number of a thing or a day."""
    before = max(0, amount.start - 12)
    if amount.form == "bare" and (_LONG_NUMBER.search(text, before, amount.start) or _ORDINAL.match(text, amount.end)):
        return True
    if amount.form == "cents_sign" and any(p.search(text, before, amount.start) for p in (_BY, _STOCK_NUMBER)):
        return True
    if text[amount.start : amount.end].endswith(" C") and _LONG_NUMBER.search(text, before, amount.start):
        return True  # "Dept. 41 C"
    return _is_day_or_count(text, amount)


def _is_day_or_count(text: str, amount: Amount) -> bool:
    """Say whether a figure without a dollar sign is the day of "Jan. 17" or the count of "nest of 3"."""
    if amount.form not in {"raised_cent_sign", "bare", "cents_sign"} or amount.quantity != 1:
        return False
    before = max(0, amount.start - 16)
    day = _MONTH_BEFORE.search(text, before, amount.start)
    return day is not None or _COUNTED.search(text, before, amount.start) is not None

"""Prices other than the one asked: what is said of former prices and of those of others, and of which figure.

"Formerly 39.75 and 45.00", "seconds of the $2 grade, $1.50", "USUALLY 2.59 2.79 2.89" over "SALE 1.98 2.19 2.29".
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import replace
from itertools import pairwise
from typing import Final

from adminer.parsing.prices.column_heads import BEFORE_ONLY, shares_row
from adminer.parsing.prices.prices import Found
from adminer.parsing.terms.terms import Term
from adminer.parsing.text.text import AdvertText, TextLine

OTHER_PRICES: Final = frozenset({"former", "comparison"})
AFTER_ONLY: Final = re.compile(
    r"^(?:values?|val\.?|sizes?|grades?|qualit(?:y|ies)|sellers?|kinds?|by the piece)$", re.IGNORECASE
)
_NAMED_BY_PRICE: Final = re.compile(r"^(?:sizes?|grades?|qualit(?:y|ies)|sellers?|kinds?)$", re.IGNORECASE)
_NO_WORD: Final = re.compile(r"[^\w$£¢]*")
_OR: Final = re.compile(r"\s*(?:and|to|or|[-–—])\s*", re.IGNORECASE)
_NOW: Final = re.compile(
    r"[\s,.;:–—-]*(?:now|cut to|down to|reduced to|marked(?: down)? to|sale(?: price)?|this sale|on sale at)"
    r"(?: only| at)?[\s,:]*",
    re.IGNORECASE,
)
_FROM: Final = re.compile(r"\bfrom$", re.IGNORECASE)  # "reduced from $5 to $3"
_PAIRS: Final = 2  # pairs that must say so
_ROW: Final = 3  # prices after one label in a row of their own


def row_heads(
    advert: AdvertText, prices: Sequence[Found], terms: Sequence[Term], chosen: Iterable[int]
) -> dict[int, list[int]]:
    """Find the labels that open a line of prices and nothing else ("USUALLY 2.59 2.79 2.89"), with its prices."""
    found: dict[int, list[int]] = {}
    for t in chosen:
        line = advert.line_at(terms[t].start)
        members = [p for p, price in enumerate(prices) if in_line(line, price) and price.start >= terms[t].end]
        if len(members) < _ROW or not _NO_WORD.fullmatch(advert.text, line.start, terms[t].start):
            continue
        edges = [terms[t].end, *(edge for p in members for edge in (prices[p].start, prices[p].end)), line.end]
        if all(_NO_WORD.fullmatch(advert.text, edges[i], edges[i + 1]) for i in range(0, len(edges), 2)):
            found[t] = members
    return found


def is_named(term: Term) -> bool:
    """Say whether a term only names goods by their price ("50c size"), which compares where they are sold for less."""
    return bool(_NAMED_BY_PRICE.match(term.words))


def is_cut(advert: AdvertText, prices: Sequence[Found], at: int, terms: Sequence[Term]) -> bool:
    """Say whether a lower price follows a price, the next in the text or one right of it in its row.

    "Regular $1.00 quality" is told by the word before it.
    """
    price = prices[at]
    if any(t.kind == "former" and _NO_WORD.fullmatch(advert.text, t.end, price.start) for t in terms):
        return False
    following = [p for p in prices if p.start > price.start and p.role == "price"]
    beside = [p for p in following if shares_row(p.place, price.place) and p.place.x > price.place.x]
    return any(p.amount.amount < price.amount.amount for p in [*following[:1], *beside[:1]])


def leads(advert: AdvertText, term: Term, prices: Sequence[Found]) -> bool:
    """Say whether a term belongs to the price after it: by its words, or as what is compared stands right before it."""
    words = advert.text[term.start : term.end]
    return bool(BEFORE_ONLY.match(words)) or led_price(advert, term, prices) is not None


def led_price(advert: AdvertText, term: Term, prices: Sequence[Found]) -> Found | None:
    """Return the price that follows what is said of another price, or a purchase asked for, with no word between."""
    said_first = term.kind in OTHER_PRICES or term.words.lower().startswith(("if ", "when "))
    if not said_first or AFTER_ONLY.match(advert.text[term.start : term.end]):
        return None
    following = min((p for p in prices if p.start >= term.end), key=lambda p: p.start, default=None)
    if following is None or not _NO_WORD.fullmatch(advert.text, term.end, following.start):
        return None
    return following


def both_former(advert: AdvertText, prices: Sequence[Found]) -> list[Found]:
    """Give the second of two former prices the words of the first: "formerly 39.75 and 45.00"."""
    made = list(prices)
    for i, (one, two) in enumerate(pairwise(prices)):
        first = made[i]
        if first.condition not in OTHER_PRICES or _FROM.search(first.condition_text or ""):
            continue
        if two.condition == "everyone" and two.start >= one.end and _OR.fullmatch(advert.text, one.end, two.start):
            made[i + 1] = replace(two, condition=first.condition, condition_text=first.condition_text)
    return made


def former_by_now(advert: AdvertText, prices: Sequence[Found]) -> list[Found]:
    """Take the higher of two prices that "now" parts for the former one: "$1.75 now $1.19"."""
    made = list(prices)
    for i, (one, two) in enumerate(pairwise(prices)):
        asked = one.condition == two.condition == "everyone" and one.role == two.role == "price"
        alike = one.amount.currency == two.amount.currency and one.amount.quantity == two.amount.quantity
        cut = asked and alike and one.amount.amount > two.amount.amount
        if cut and two.start >= one.end and _NOW.fullmatch(advert.text, one.end, two.start):
            made[i] = replace(one, condition="former")
    return made


def former_beside_asked(advert: AdvertText, prices: Sequence[Found]) -> list[Found]:
    """Take the first of two prices side by side for a former one where other pairs of the advert say that it is.

    "usually 3/1 2/8" is read as "sual 3/1 2/8" in one row and well in the others.
    """
    pairs = [(i, i + 1) for i, (one, two) in enumerate(pairwise(prices)) if _beside_lower(advert, one, two)]
    told = [prices[i].condition for i, _ in pairs if prices[i].condition in OTHER_PRICES]
    made = list(prices)
    if len(told) < _PAIRS or len(set(told)) > 1:
        return made
    for i, _ in pairs:
        if prices[i].condition == "everyone":
            made[i] = replace(prices[i], condition=told[0])
    return made


def _beside_lower(advert: AdvertText, one: Found, two: Found) -> bool:
    """Say whether a lower price is asked right after a price, with nothing but a space between."""
    alike = one.amount.currency == two.amount.currency and one.amount.quantity == two.amount.quantity
    asked = two.condition == "everyone" and one.role == two.role == "price"
    between = advert.text[one.end : two.start] if two.start >= one.end else "-"
    return alike and asked and between == " " and one.amount.amount > two.amount.amount


def in_line(line: TextLine, price: Found) -> bool:
    """Say whether a price is printed in a line."""
    return line.start <= price.start and price.end <= line.end

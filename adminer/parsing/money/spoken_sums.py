"""Sums that prose tells without a sign: "a quarter", "twelve-fifty", "7 and 12 cents", "9 cents the cup, 7 the saucer".

What says cents once is not said again of the next figure. Common usage of the time, no source.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from decimal import Decimal
from typing import Final

from adminer.parsing.money.amounts import NUMBER_WORDS, Amount, fraction_of, number_of, with_quantity
from adminer.parsing.text.stretches import is_taken

_COINS: Final = {"quarter": 25, "dime": 10, "nickel": 5}
_COIN: Final = re.compile(
    r"(?<!\band)(?<!\bof)(?<!\bhalf)[ \n](?P<sum>a[ \n](?P<coin>quarter|dime|nickel))"
    r"(?=[ \n]*(?:[,.;:)!?]|$|(?:each|apiece|per|a (?:can|box|bag|cup|pair|dozen|pound|yard))\b)|"
    r" *\n(?-i:[A-Z])| [-–—])",
    re.IGNORECASE,
)
_BITS: Final = re.compile(r"\b(?P<bits>two|four|six|[246])[ \n-]bits(?![\w-]|[ \n]of\b)", re.IGNORECASE)
_BIT: Final = Decimal("12.5")  # an eighth of a dollar
_LOW: Final = "|".join(word for word, number in NUMBER_WORDS.items() if 0 < number < 17 and word != "dozen")
_HIGH: Final = "|".join(word for word, number in NUMBER_WORDS.items() if number >= 15 and number % 5 == 0)
_HYPHENED: Final = re.compile(
    rf"\b(?P<dollars>{_LOW})-(?P<cents>(?:{_HIGH})(?:-five)?)"
    r"(?![\w-]|[ \n](?:(?-i:[A-Z])|years?|pounds?|pieces?|per cent))",
    re.IGNORECASE,
)
_CLOCK: Final = re.compile(r"\b(?:at|by|until|till|about)[ \n][a-z]+-(?:fifteen|thirty|forty-five)$", re.IGNORECASE)
_WORD: Final = 6  # letters and a space before an hour
_FIGURE: Final = r"[1-9]\d?(?:[½¼¾]|(?=[ \n.,]))"
# after a word of its line: a cell "6 and 9c" is so many wrappers and cents
_LIST: Final = re.compile(
    rf"(?:(?<=[a-z] )|(?<=[a-z][.,] ))(?P<list>{_FIGURE}(?:[.,][ \n]{_FIGURE}){{0,4}}),?[ \n](?:and|or|&)[ \n]$",
    re.IGNORECASE,
)
_LIST_FIGURE: Final = re.compile(r"(?P<n>\d{1,2})(?P<frac>[½¼¾])?")
_NEXT: Final = re.compile(
    r"(?:[.,;]|\band)[ \n](?:and[ \n])?(?P<sum>[1-9]\d?)(?=[ \n](?:the|each)[ \n][a-z])|"
    rf"\b(?:its|the|each|a)[ \n][a-z]+[ \n](?P<word>{'|'.join(NUMBER_WORDS)})(?=[.,;])",
)
_NEXT_PIASTRES: Final = re.compile(
    r"(?:[,;](?:[ \n][a-z'’]+){1,3}|(?:[ \n](?:the|a|per)[ \n][a-z]+)?[.,;]?[ \n](?:formerly|was|were|or|to))"
    r"[ \n](?P<n>[1-9]\d{0,2})(?P<frac>[½¼¾])?(?=[.;*](?!\d)|\n(?!\d)|$|[ \n](?:the|each)\b)"
)
_REACH: Final = 60  # characters from a sum in cents to the figure that leans on it
_CENTS: Final = frozenset({"cents_sign", "fraction", "words"})
_PIASTRES: Final = "EGP-piastre"
_TRUST: Final = 0.6


def find_spoken_sums(text: str, amounts: Sequence[Amount]) -> list[Amount]:
    """Return the sums told in words of coins and the figures that lean on a sum in cents beside them."""
    found: list[Amount] = []
    for amount in (*_coins(text), *_before(text, amounts), *_after(text, amounts)):
        if not is_taken(amount.start, amount.end, (*amounts, *found)):
            found.append(with_quantity(text, amount))
    return found


def _coins(text: str) -> Iterator[Amount]:
    for m in _COIN.finditer(text):
        yield _sum(m.start("sum"), m.end(), Decimal(_COINS[m["coin"].lower()]))
    for m in _BITS.finditer(text):
        yield _sum(*m.span(), number_of(m["bits"]) * _BIT)
    for m in _HYPHENED.finditer(text):
        if _CLOCK.search(text, max(0, m.start() - _WORD), m.end()):
            continue
        yield _sum(m.start(), m.end(), Decimal(number_of(m["dollars"])) * 100 + number_of(m["cents"]))


def _before(text: str, amounts: Sequence[Amount]) -> Iterator[Amount]:
    """Yield the figures of a list that ends in a sum in cents: "8, 10 and 12½ cents"."""
    for amount in amounts:
        if not _is_cents(amount) or amount.form == "words":
            continue
        m = _LIST.search(text, max(0, amount.start - _REACH), amount.start)
        for figure in _LIST_FIGURE.finditer(text, *m.span("list")) if m else ():
            yield _sum(*figure.span(), Decimal(figure["n"]) + fraction_of(figure["frac"]))


def _after(text: str, amounts: Sequence[Amount]) -> Iterator[Amount]:
    """Yield the figures after a sum in cents or in piastres that tell the price of the next thing."""
    for amount in amounts:
        at = amount.end
        if amount.currency == _PIASTRES and (m := _NEXT_PIASTRES.match(text, at)) is not None:
            figure = Decimal(m["n"]) + fraction_of(m["frac"])
            yield Amount(m.start("n"), m.end(), figure, _PIASTRES, "piastres", _TRUST)
        while _is_cents(amount) and (m := _NEXT.search(text, at, at + _REACH)) is not None:
            if any(a.start >= amount.end and a.start < m.end() for a in amounts):
                break
            if m["sum"]:
                yield _sum(*m.span("sum"), Decimal(m["sum"]))
            elif amount.form == "words":
                yield _sum(*m.span("word"), Decimal(number_of(m["word"])))
            at = m.end()


def _is_cents(amount: Amount) -> bool:
    return amount.currency == "USD" and amount.form in _CENTS and amount.amount < 1


def _sum(start: int, end: int, cents: Decimal) -> Amount:
    return Amount(start, end, cents / 100, "USD", "words", _TRUST)

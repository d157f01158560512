"""The level of staple prices against the national averages of their month.

log(price / average) = d + e: d shared by all items of one advert (adverts feature specials, regions and brands differ),
e of each item alone, with heavy tails for a misread price, another size or a loss leader. The averages are those of
data/staple_benchmarks.csv (Historical Statistics, series E 187-202) moved by the item indexes of the Bureau of Labor
Statistics. Each item may be misread, and with a small chance all are: then they lie anywhere, the same in every month.
The spreads are judgement: mean discount 8 %, shared spread 10 %, own spread 13 % (each Student t, 4 degrees).
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from math import lgamma, log, pi
from typing import Final

import numpy as np
from numpy.typing import NDArray

from adminer.dating.evidence.base import Case, Clue, Context, ReadPrice
from adminer.dating.price_tables import staples
from adminer.records import Box

Floats = NDArray[np.float64]

KIND: Final = "staple prices"
SOURCE: Final = (
    "Historical Statistics of the United States, series E 187-202, moved by the item indexes of the CPI; before 1913 "
    "straight lines between every fifth year from 1890, of bread, coffee and oranges none before 1915"
)
_SHARED_MEAN, _SHARED_SPREAD = -0.08, 0.10
_OWN_SPREAD, _DEGREES = 0.13, 4.0
# a misread price, or that of another thing, lies anywhere between a third and three times the average; two letters in a
# hundred misread, as on clean scans, spoil some eight prices of four characters in a hundred
_MISREAD, _ANY_PRICE = 0.08, 1 / (2 * log(3))
_TRUST: Final = 0.97  # that these are food prices of this country at all
# of the shared spread, with its weights: tails like the items' own, as a price war or a dear town moves a whole advert
_DISCOUNTS: Final = np.linspace(-4.8, 4.8, 17)
_LEVELS: Final = (1 + _DISCOUNTS**2 / _DEGREES) ** (-(_DEGREES + 1) / 2)
_NORMAL_T: Final = lgamma((_DEGREES + 1) / 2) - lgamma(_DEGREES / 2) - 0.5 * log(_DEGREES * pi)

# words that make it another thing than the staple of the statistics
_NOT: Final = re.compile(
    r"\b(?:peanut|apple|cocoa|rye|raisin|corn|ginger|brown|wheat|powdered|confection\w*|evaporated|condensed|dry|dried|"
    r"malted|butter\s?milk|chocolate|noodles?|salad|sweet|chips?|instant|cake|cookies?|rolls|juice|kni(?:fe|ves)|"
    r"dish(?:es)?|plates?|pots?|cups?|bowls?|makers?|sets?|boxes|boards?|trays?|urns?|mills?|spreaders?|shells?|tongs|"
    r"spoons?|mugs?|toasters?|servers?|squares|ends|canadian|candy|easter|marshmallow|scalloped|french|frozen|"
    r"substitute|beans?\s+with|and)\b|&",
    re.IGNORECASE,
)

_CURED: Final = re.compile(r"\b(?:sugar|honey)[\s-]+cured\b", re.IGNORECASE)
_TINNED: Final = re.compile(r"\b(?:cans?|tins?|tall|canned)\b", re.IGNORECASE)
_FRACTION: Final = re.compile(r"(?<![\d/])(\d+)?[\s-]*(½|¼|¾|1/2|1/4|3/4)(?!\d)")


@dataclass(frozen=True, slots=True)
class _Kind:
    item: str
    words: str
    pattern: re.Pattern[str]
    sizes: tuple[tuple[str, float], ...]  # pattern of a size, its amount in units of the statistics
    default: float | None  # amount where no size is printed


def _kind(item: str, words: str, sizes: tuple[tuple[str, float], ...], default: float | None) -> _Kind:
    return _Kind(item, words, re.compile(words, re.IGNORECASE), sizes, default)


_COUNT: Final = r"(\d+(?:\.\d+)?)"
_POUND: Final = ((rf"{_COUNT}[\s-]*lbs?\b", 1.0), (r"\b(?:lb|pound)s?\b", 1.0), (rf"\b{_COUNT}[\s-]*oz\b", 1 / 16))
_LIQUID: Final = ((rf"{_COUNT}?[\s-]*q(?:uar)?ts?\b", 0.5), (r"\bhalf[\s-]*gal", 1.0), (rf"{_COUNT}?[\s-]*\bgal", 2.0))
_PECK: Final = (rf"\b{_COUNT}?[\s-]*pecks?\b|\bpk\b", 1.5)
_KINDS: Final = (
    _kind("eggs", "eggs", ((rf"{_COUNT}?\s*doz(?:en)?\b", 1.0),), 1.0),
    _kind("butter", "butter", _POUND, 1.0),
    _kind("coffee", "coffee", _POUND, 1.0),
    _kind("bacon", "bacon", _POUND, 1.0),
    _kind("round_steak", "round\\s+steaks?", _POUND, 1.0),
    _kind("pork_chops", "pork\\s+chops?", _POUND, 1.0),
    _kind("sugar", "sugar", tuple((p, s / 5) for p, s in _POUND), None),
    _kind("flour", "flour", tuple((p, s / 5) for p, s in _POUND), None),
    _kind("potatoes", "potatoes", (_PECK, *((p, s / 10) for p, s in _POUND)), None),
    _kind("bread", "bread", ((rf"{_COUNT}[\s-]*lb", 1.0), (rf"\b{_COUNT}[\s-]*oz\b", 1 / 16)), 1.0),
    _kind("milk", "milk", _LIQUID, None),
    _kind("oranges", "oranges", ((rf"{_COUNT}?\s*doz(?:en)?\b", 1.0),), None),
)  # fmt: skip
_ANY: Final = re.compile(rf"\b(?:{'|'.join(kind.words for kind in _KINDS)})\b", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class StaplePrice:
    """Hold one staple's price in an advert: its kind and cents per unit of the statistics."""

    item: str
    cents: float
    shown: str
    box: Box | None


def staple_prices(case: Case) -> tuple[StaplePrice, ...]:
    """Return the staple prices of an advert, one of each kind (the middle one where several are printed)."""
    found: dict[str, list[StaplePrice]] = {}
    for price in case.prices:
        staple = _recognise(price)
        if staple is not None:
            found.setdefault(staple.item, []).append(staple)
    return tuple(
        sorted(prices, key=lambda p: (p.cents, p.shown))[(len(prices) - 1) // 2] for _, prices in sorted(found.items())
    )


def _recognise(price: ReadPrice) -> StaplePrice | None:
    if price.role not in ("price", "range_low", "from") or price.condition in ("former", "comparison", "coupon"):
        return None
    item, size = _kind_and_size(price.item, price.unit)
    if item is None or size <= 0:
        return None
    # "2 lbs." may stand in the item and in the price, and divides once
    repeated = price.quantity > 1 and abs(_counted(price.item) - price.quantity) < 1e-9
    cents = price.amount * 100 / (1.0 if repeated else max(price.quantity, 1.0)) / size
    lowest, highest = _range_of(item)
    if not lowest / 2 <= cents <= highest * 2:  # another thing, or misread
        return None
    return StaplePrice(item, cents, f"{price.item.strip()} {cents:.1f}c", price.box)


@lru_cache(maxsize=32)
def _range_of(item: str) -> tuple[float, float]:
    average = staples()[item].cents
    return float(average.min()), float(average.max())


@lru_cache(maxsize=16384)
def _kind_and_size(text: str, unit: str | None) -> tuple[str | None, float]:
    text = _FRACTION.sub(_decimal, _CURED.sub(" ", text))
    named = _ANY.search(text)
    if not named:
        return None, 0.0
    kind = next(k for k in _KINDS if k.pattern.fullmatch(named[0]))
    rest = text[: named.start()] + " " + text[named.end() :]
    if _NOT.search(rest) or (kind.item == "milk" and _TINNED.search(f"{rest} {unit or ''}")):
        return None, 0.0
    return kind.item, _size(f"{rest} {unit or ''}", kind) or 0.0


def _decimal(found: re.Match[str]) -> str:
    part = {"½": 0.5, "1/2": 0.5, "¼": 0.25, "1/4": 0.25, "¾": 0.75, "3/4": 0.75}[found[2]]
    return f" {float(found[1] or 0) + part:g}"


def _counted(text: str) -> float:
    found = re.search(r"(\d+(?:\.\d+)?)[\s-]*(?:lbs?|doz|qts?|pounds?)\b", text, re.IGNORECASE)
    return float(found[1]) if found else 0.0


def _size(text: str, kind: _Kind) -> float | None:
    for pattern, units in kind.sizes:
        found = re.search(pattern, text, re.IGNORECASE)
        if found:
            count = float(found[1]) if found.re.groups and found[1] else 1.0
            return count * units
    return kind.default


def find(case: Case, _context: Context) -> Iterator[Clue]:
    """Yield one clue from all staple prices of an advert together, as they share its level."""
    prices = staple_prices(case)
    if not prices:
        return
    boxes = [p.box for p in prices if p.box is not None]
    box = boxes[0] if boxes else None
    for other in boxes[1:]:
        box = box.joined(other) if box else other
    shown = ", ".join(p.shown for p in prices[:8])
    yield Clue(KIND, f"price level of {shown}", SOURCE, likelihood(prices), box)


def likelihood(prices: tuple[StaplePrice, ...]) -> Floats:
    """Return the log likelihood by month of staple prices that share one level."""
    total = np.asarray(sum(_of_one(price.item, round(100 * log(price.cents))) for price in prices))
    # an item's chance is never under that of a misread one, so nothing here underflows
    level = np.log(np.exp(total - total.max()) @ (_LEVELS / _LEVELS.sum())) + total.max()
    chance = np.logaddexp(log(_TRUST) + level, log(1 - _TRUST) + len(prices) * log(_ANY_PRICE))
    chance -= chance.max()
    chance.setflags(write=False)
    return np.asarray(chance)


@lru_cache(maxsize=8192)
def _of_one(item: str, hundredths: int) -> Floats:
    # by month and by shared discount; prices are told apart to one per cent
    staple = staples()[item]
    own = np.hypot(_OWN_SPREAD, staple.spread)[:, None]
    shared = _SHARED_MEAN + _SHARED_SPREAD * _DISCOUNTS
    z = (hundredths / 100 - np.log(staple.cents)[:, None] - shared[None, :]) / own
    density = np.exp(_NORMAL_T - (_DEGREES + 1) / 2 * np.log1p(z * z / _DEGREES)) / own
    return np.asarray(np.log((1 - _MISREAD) * density + _MISREAD * _ANY_PRICE))

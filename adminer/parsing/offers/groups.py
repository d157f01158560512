"""Which prices belong to one offer, by an assignment of least cost.

A price that only makes sense beside another (former, weekly) goes to its main price, at most one of a kind each.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace
from decimal import Decimal
from functools import partial
from typing import Final

import numpy as np
from scipy.optimize import linear_sum_assignment

from adminer.parsing.prices.colour import TERM_REACH
from adminer.parsing.prices.column_heads import shares_row
from adminer.parsing.prices.prices import Found
from adminer.parsing.segments.postage import joins_main
from adminer.parsing.text.goods import has_goods
from adminer.parsing.text.item_words import FUNCTION_WORDS, WORD
from adminer.parsing.text.text import AdvertText, TextLine
from adminer.records import Box, Condition

_FAR: Final = 1e5
_NEXT_WORDS: Final = 12  # terms of payment follow their price within these words
_SIDE_BY_SIDE: Final = 8.0  # body types between the two prices of one row
_OFFER_REACH: Final = 12.0  # line heights within which a second price belongs to a main one
_CLEARANCE: Final = 8  # "values to $1.00, choice 19c": odd lots go for a fraction of what they were
_HALF: Final = Decimal("0.5")  # of what is paid in instalments, one of them at most
_AND: Final = re.compile(r"\s*,?\s*(?:and|&|or|,|;)?\s*", re.IGNORECASE)
_MEASURE: Final = re.compile(r"\s*(?:the|per|a|an) \S{1,7}(?: or)?\s*")  # "2/3 the ½doz. 4/6 per doz."
_SHOWN: Final = 2.5  # body types: the rows of a table have no prices so large
_CELL_SIZES: Final = 2.0
_LONG_RULE: Final = 8.0  # body types
_NAMES_OR_SIZES: Final = re.compile(r"[A-Za-z]{3}|\d-(?:qt|pt|in|ft|oz|lb|gal)")
_SATELLITE_CONDITIONS: Final[frozenset[Condition]] = frozenset({"without_card", "former", "comparison"})
_SATELLITE_ROLES: Final = frozenset({"instalment", "down_payment", "postage", "saving"})


def group_prices(advert: AdvertText, prices: list[Found], rules: tuple[Box, ...] = ()) -> list[list[Found]]:
    """Return the prices gathered into offers, each in reading order; `rules` are the printed ones, in scan pixels."""
    parent = list(range(len(prices)))

    def root(i: int) -> int:
        while parent[i] != i:
            i = parent[i]
        return i

    def join(a: int, b: int) -> None:
        parent[max(root(a), root(b))] = min(root(a), root(b))

    for i in range(1, len(prices)):
        if _listed_together(advert, prices[i - 1], prices[i]):
            join(i - 1, i)
    for i, j in _row_mates(advert, prices, rules):
        join(i, j)
    attach = partial(_attach, advert, prices, rules)
    for wanted in ("without_card", "former", "comparison"):
        attach(partial(_is_of_condition, wanted), _is_main, join, root)
    for role in ("down_payment", "instalment", "postage", "saving"):
        attach(partial(_is_of_role, role), _is_main, join, root)
    attach(partial(_is_of_role, "instalment"), partial(_is_of_role, "down_payment"), join, root)
    for wanted in ("cardholder", "coupon", "with_purchase", "stamps"):
        attach(partial(_is_of_condition, wanted), _is_for_everyone, join, root, reach=TERM_REACH)
    attach(_is_told_for_everyone, _is_for_some, join, root)
    gathered: dict[int, list[Found]] = {}
    for i, found in enumerate(prices):
        gathered.setdefault(root(i), []).append(found)
    return [_with_both_sides(advert, gathered[key]) for key in sorted(gathered)]


def _with_both_sides(advert: AdvertText, group: list[Found]) -> list[Found]:
    """Call the unlabelled one of two prices of an offer what the other makes it: with the card, or without it.

    The head of one column is often lost to a reader; "without card" makes no sense but beside the card's price.
    """
    if len(group) != 2 or any(p.role != "price" for p in group):
        return group
    low, high = sorted(group, key=lambda p: p.amount.amount)
    gap = max(low.place.x - high.place.right, high.place.x - low.place.right)
    near = gap < max(_SIDE_BY_SIDE * advert.body_px, 2 * low.type_px)
    if low.amount.amount == high.amount.amount or not (near and shares_row(low.place, high.place)):
        return group
    if high.condition == "without_card" and low.condition == "everyone" and low.condition_text is None:
        return [replace(p, condition="cardholder") if p is low else p for p in group]
    if low.condition == "cardholder" and high.condition == "everyone" and high.condition_text is None:
        return [replace(p, condition="without_card") if p is high else p for p in group]
    return group


def _row_mates(advert: AdvertText, prices: list[Found], rules: tuple[Box, ...]) -> list[tuple[int, int]]:
    """Return neighbouring prices of one table row: no words between them, and words to the left of the first."""
    found = []
    for i, one in enumerate(prices):
        right = [
            (other.place.x, j)
            for j, other in enumerate(prices)
            if j != i and other.place.x >= one.place.right - 2 and shares_row(one.place, other.place)
        ]
        if not right:
            continue
        j = min(right)[1]
        two = prices[j]
        ratio = one.type_px / max(two.type_px, 1.0)
        gap = Box(one.place.right, one.place.y, max(two.place.x - one.place.right, 1), one.place.h)
        label = Box(0, one.place.y, max(one.place.x, 1), one.place.h)
        shown = min(one.type_px, two.type_px) > _SHOWN * advert.body_px  # each in its cell, under a name of its own
        if (
            shown
            or not 0.6 < ratio < 1.7
            or gap.w > 12 * advert.body_px
            or one.condition == two.condition != "everyone"
        ):
            continue
        texts = [line for line in advert.lines if shares_row(line.flat, one.place)]
        if any(one.box.centre[0] < r.centre[0] < two.box.centre[0] and _crosses(r, one.box) for r in rules):
            continue  # two cells of a ruled grid, each with an item of its own
        if any(_text_inside(advert, line, gap) for line in texts) or not any(
            _text_inside(advert, line, label) for line in texts
        ):
            continue
        found.append((i, j))
    return found


def _rule_parts(advert: AdvertText, one: Found, other: Found, rules: tuple[Box, ...]) -> bool:
    """Say whether a long upright rule runs between two prices, past the rows of both.

    The cells of a row of a ruled table belong together: no label stands in a cell before its price.
    """
    line = advert.lines[one.line]
    labelled = WORD.search(advert.text, line.start, one.start) is not None
    alike = 1 / _CELL_SIZES < one.type_px / max(other.type_px, 1.0) < _CELL_SIZES
    cells = shares_row(one.place, other.place) and alike and not labelled
    if line.block == advert.lines[other.line].block or cells:
        return False
    left, right = sorted((one.box.centre[0], other.box.centre[0]))
    return any(
        left < r.centre[0] < right
        and r.h > _LONG_RULE * advert.body_px
        and _crosses(r, one.box)
        and _crosses(r, other.box)
        and not any(_is_struck(line, r) for line in advert.lines)
        for r in rules
    )


def _is_struck(line: TextLine, rule: Box) -> bool:
    """Say whether an upright stroke runs through a line of type: a scratch of the film, and no rule between panels."""
    room = line.box.h
    within = rule.y < line.box.centre[1] < rule.bottom
    return within and line.box.x + room < rule.x and rule.right < line.box.right - room


def _crosses(rule: Box, price: Box) -> bool:
    """Say whether an upright rule goes past the row of a price over its whole height and more."""
    return rule.h > max(2 * price.h, 6 * rule.w) and rule.y < price.y and rule.bottom > price.bottom


def _text_inside(advert: AdvertText, line: TextLine, place: Box) -> bool:
    inside = [word.text for word in line.words if place.x <= word.box.centre[0] < place.right]
    spaced = len(inside) > 1 and all(len(text) == 1 and text.isupper() for text in inside)  # "V S", a grade
    return spaced or any(_NAMES_OR_SIZES.search(text) for text in inside)


def _is_of_condition(wanted: str, found: Found) -> bool:
    return found.condition == wanted and found.role == "price"


def _is_of_role(wanted: str, found: Found) -> bool:
    return found.role == wanted


def _is_for_everyone(found: Found) -> bool:
    return found.condition == "everyone" and found.role == "price"


def _is_told_for_everyone(found: Found) -> bool:
    return found.condition == "everyone" and found.condition_text is not None


def _is_for_some(found: Found) -> bool:
    return found.condition in {"coupon", "with_purchase", "stamps"}


def _is_main(found: Found) -> bool:
    return found.role not in _SATELLITE_ROLES | {"reference"} and found.condition not in _SATELLITE_CONDITIONS


def _listed_together(advert: AdvertText, one: Found, other: Found) -> bool:
    """Say whether two prices are a range or a list of one item ("59¢ & 79¢", "$1.50 up to $3")."""
    between = advert.text[one.end : other.start]
    if one.role == "range_low" and other.role == "range_high":
        return True
    if one.amount.listed:
        return True
    if one.line == other.line and None not in (one.amount.unit, other.amount.unit) and _AND.fullmatch(between):
        return True  # "2/3 the half doz. 4/6 per doz."
    if one.line == other.line and other.role == "price" and _MEASURE.fullmatch(between):
        return True
    alike = one.condition == other.condition == "everyone" and one.role == other.role == "price"
    return (
        alike and len(between) < 8 and bool(between.strip()) and "\n" not in between and bool(_AND.fullmatch(between))
    )


def _attach(
    advert: AdvertText,
    prices: list[Found],
    rules: tuple[Box, ...],
    is_satellite: Callable[[Found], bool],
    is_main: Callable[[Found], bool],
    join: Callable[[int, int], None],
    root: Callable[[int], int],
    reach: float = _OFFER_REACH,
) -> None:
    satellites = [i for i, f in enumerate(prices) if is_satellite(f) and root(i) == i]
    served = {root(i) for i, f in enumerate(prices) if is_satellite(f) and root(i) != i}
    mains = [i for i, f in enumerate(prices) if is_main(f) and not is_satellite(f) and root(i) not in served]
    if not satellites or not mains:
        return
    costs = np.full((len(satellites), len(mains) + len(satellites)), _FAR)
    for row, s in enumerate(satellites):
        costs[row, len(mains) + row] = reach
        for column, m in enumerate(mains):
            if not _rule_parts(advert, prices[s], prices[m], rules):
                costs[row, column] = _pair_cost(advert, prices[s], prices[m], abs(s - m))
    for row, column in zip(*linear_sum_assignment(costs), strict=True):
        if column < len(mains) and costs[row, column] < reach:
            join(satellites[row], mains[column])


def _pair_cost(advert: AdvertText, satellite: Found, main: Found, steps: int) -> float:
    if satellite.amount.currency != main.amount.currency:
        return _FAR
    ratio = (satellite.amount.amount / satellite.amount.quantity) / (main.amount.amount / main.amount.quantity)
    told = _cost_in_text(advert, satellite, main) if satellite.role == "price" else None
    if told is not None and (told >= _OFFER_REACH or 1 < ratio <= _CLEARANCE):
        return told
    if satellite.condition in _SATELLITE_CONDITIONS and not 1 < ratio <= 4:
        return _FAR
    if satellite.role in {"instalment", "down_payment", "postage", "saving"} and ratio >= 1:
        return _FAR
    if satellite.role == "instalment" and ratio > _HALF:
        return _FAR
    if satellite.role == "postage" and not joins_main(advert, satellite, main):
        return _FAR
    unit = max(advert.body_px, 0.3 * max(satellite.type_px, main.type_px))
    if satellite.role in {"instalment", "down_payment"} and main.end <= satellite.start:
        words = len(advert.text[main.end : satellite.start].split())
        if words <= _NEXT_WORDS and _in_one_column(advert, main, satellite):
            return 0.1 * words + 0.2 * (steps - 1)
    if shares_row(satellite.place, main.place):
        if _goods_between(advert, satellite, main):
            return _FAR  # the row of another list begins there
        return 0.3 * _distance(satellite.place, main.place) / unit + 0.5 * (steps - 1)
    if satellite.condition == "without_card" and main.condition == "cardholder":
        return min(_distance(satellite.place, main.place) / unit, _OFFER_REACH - 2) + (0.0 if ratio <= 2.6 else 1.0)
    return _distance(satellite.place, main.place) / unit + 1.0 * (steps - 1)


def _goods_between(advert: AdvertText, one: Found, other: Found) -> bool:
    """Say whether goods stand between two prices on their row, in a line of their own or before the price."""
    left, right = sorted((one.place, other.place), key=lambda place: place.x)
    return any(
        left.right <= line.flat.x and has_goods(" ".join(w.text for w in line.words if w.box.right <= right.x))
        for line in advert.lines
        if shares_row(line.flat, left)
    )


def _in_one_column(advert: AdvertText, one: Found, other: Found) -> bool:
    """Say whether the line of a price stands under that of another, or is the same or the next."""
    above, below = advert.lines[one.line], advert.lines[other.line]
    return other.line - one.line <= 1 or above.flat.across(below.flat) > 0


def _cost_in_text(advert: AdvertText, satellite: Found, main: Found) -> float | None:
    """Return the cost of two prices of running text: of one sentence where nothing is named between, else apart.

    "Bread Mixers, usually $2.25, tomorrow $1.67. Dish Pans, 69c": the pans were never $2.25.
    """
    one, two = sorted((satellite, main), key=lambda found: found.start)
    if not 0 <= two.line - one.line <= 1 or advert.lines[one.line].block != advert.lines[two.line].block:
        return None
    between = advert.text[one.end : two.start]
    named = [w for w in WORD.findall(between) if w.lower() not in FUNCTION_WORDS]
    if not named:
        return 0.1 if "\n" not in between or one.end > advert.lines[one.line].end - 2 else None
    own = advert.text[max(one.end, advert.lines[two.line].start) : two.start]
    return _OFFER_REACH if WORD.search(own) and len(named) > 1 else None


def _distance(one: Box, other: Box) -> float:
    dx = max(one.x - other.right, other.x - one.right, 0)
    dy = max(one.y - other.bottom, other.y - one.bottom, 0)
    return float((dx * dx + 4 * dy * dy) ** 0.5) if dy else 0.6 * dx

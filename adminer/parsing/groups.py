"""Which terms colour which price, and which prices belong to one offer.

Both are assignments of least cost: a printed term ("with card", "reg.") goes to the price it stands with, and a
price that only makes sense beside another (the price without the card, the former price, the weekly payment)
goes to its main price, at most one of a kind each.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace
from typing import Final

import numpy as np
from scipy.optimize import linear_sum_assignment

from adminer.parsing.prices import Found
from adminer.parsing.terms import Term
from adminer.parsing.text import AdvertText
from adminer.records import Box, Condition

_FAR: Final = 1e5
_TERM_REACH: Final = 4.0  # line heights within which a term colours a price
_OFFER_REACH: Final = 12.0  # line heights within which a second price belongs to a main one
_BEFORE_ONLY: Final = re.compile(
    r"^(?:was|were|formerly|reg|regular|usual|orig|comp|if perfect|made to|list|worth|would|should|retails?|sells?|values? to|values? up)",
    re.IGNORECASE,
)
_AFTER_ONLY: Final = re.compile(r"^(?:values?|val\.?)$", re.IGNORECASE)
_AND: Final = re.compile(r"\s*,?\s*(?:and|&|or|,|;)?\s*", re.IGNORECASE)
_SATELLITE_CONDITIONS: Final[frozenset[Condition]] = frozenset({"without_card", "former", "comparison"})
_SATELLITE_ROLES: Final = frozenset({"instalment", "down_payment", "postage", "saving"})


def colour_prices(advert: AdvertText, prices: list[Found], terms: list[Term]) -> tuple[list[Found], set[int]]:
    """Return the prices with their conditions, and the numbers of the terms that were used up."""
    chosen = [i for i, t in enumerate(terms) if t.scope == "price"]
    coloured = list(prices)
    used: set[int] = set()
    if not chosen or not prices:
        return coloured, used
    for heading, members in _column_headings(advert, prices, terms, chosen).items():
        for p in members:
            coloured[p] = _with_term(advert, coloured[p], terms[heading])
        used.add(heading)
    costs = np.full((len(chosen), len(prices) + len(chosen)), _FAR)
    for row, t in enumerate(chosen):
        costs[row, len(prices) + row] = _TERM_REACH
        if t in used:
            continue
        for p, price in enumerate(prices):
            if coloured[p].condition == "everyone" and price.role not in {"postage", "saving", "reference"}:
                costs[row, p] = _term_cost(advert, terms[t], price, prices)
    for row, column in zip(*linear_sum_assignment(costs), strict=True):
        if column < len(prices) and costs[row, column] < _TERM_REACH:
            t = chosen[row]
            coloured[column] = _with_term(advert, coloured[column], terms[t])
            used.add(t)
    return coloured, used


def _with_term(advert: AdvertText, price: Found, term: Term) -> Found:
    condition: Condition = term.kind  # type: ignore[assignment] -- terms of scope "price" are named as the conditions are
    words = " ".join(advert.text[term.start : term.end].split())
    return replace(price, condition=condition, condition_text=words)


def _column_headings(
    advert: AdvertText, prices: list[Found], terms: list[Term], chosen: list[int]
) -> dict[int, list[int]]:
    """Find terms that head a column of at least two prices: "WITH CARD" over one, "WITHOUT" over the other."""
    heads = {
        t: advert.box_of(terms[t].start, terms[t].end)
        for t in chosen
        if terms[t].kind in {"cardholder", "without_card"}
    }
    kinds = {terms[t].kind for t in heads}
    if len(kinds) < 2:
        return {}
    columns: dict[int, list[int]] = {}
    for t, head in heads.items():
        below = [
            p
            for p, price in enumerate(prices)
            if price.box.y > head.bottom - head.h // 2
            and abs(price.box.centre[0] - head.centre[0]) < max(head.w, price.box.w) * 0.75
        ]
        beside = [other for other, box in heads.items() if other != t and _shares_row(box, head)]
        if len(below) >= 2 and beside:
            columns[t] = below
    return columns if len(columns) >= 2 else {}


def _term_cost(advert: AdvertText, term: Term, price: Found, prices: list[Found]) -> float:
    amount = price.amount
    words = advert.text[term.start : term.end]
    if term.end <= amount.start:
        between = advert.text[term.end : amount.start]
        inside = [p for p in prices if term.end <= p.amount.start < amount.start]
        direction = 1.5 if _AFTER_ONLY.match(words) else 0.0
    elif term.start >= amount.end:
        between = advert.text[amount.end : term.start]
        inside = [p for p in prices if amount.end <= p.amount.start < term.start]
        direction = 1.5 if _BEFORE_ONLY.match(words) else 0.0
    else:
        return 0.0
    flow = 0.4 * len(between.split()) + 0.6 * between.count("\n") + 1.5 * len(inside) + direction
    if term.kind in {"former", "comparison"}:
        near = 0 if _AFTER_ONLY.match(words) else 2
        if len(between.split()) > near or inside or direction:
            return _FAR
        return flow
    box = advert.box_of(term.start, term.end)
    place = _distance(box, price.box) / max(advert.body_px, 0.4 * price.type_px) * 0.8 + direction + 0.3
    return min(flow, place)


def group_prices(advert: AdvertText, prices: list[Found]) -> list[list[Found]]:
    """Return the prices gathered into offers, each in reading order."""
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
    for wanted in ("without_card", "former", "comparison"):
        _attach(advert, prices, lambda f, w=wanted: f.condition == w and f.role == "price", _is_main, join, root)
    for role in ("down_payment", "instalment", "postage", "saving"):
        _attach(advert, prices, lambda f, r=role: f.role == r, _is_main, join, root)
    _attach(advert, prices, lambda f: f.role == "instalment", lambda f: f.role == "down_payment", join, root)
    for wanted in ("cardholder", "coupon", "with_purchase", "stamps"):
        _attach(
            advert,
            prices,
            lambda f, w=wanted: f.condition == w,
            lambda f: f.condition == "everyone" and f.role == "price",
            join,
            root,
            reach=4.0,
        )
    gathered: dict[int, list[Found]] = {}
    for i, found in enumerate(prices):
        gathered.setdefault(root(i), []).append(found)
    return [gathered[key] for key in sorted(gathered)]


def _is_main(found: Found) -> bool:
    return found.role not in _SATELLITE_ROLES | {"reference"} and found.condition not in _SATELLITE_CONDITIONS


def _listed_together(advert: AdvertText, one: Found, other: Found) -> bool:
    """Say whether two prices are a range or a list of one item ("59¢ & 79¢", "$1.50 up to $3")."""
    between = advert.text[one.end : other.start]
    if one.role == "range_low" and other.role == "range_high":
        return True
    if one.amount.listed:
        return True
    alike = one.condition == other.condition == "everyone" and one.role == other.role == "price"
    return (
        alike and len(between) < 8 and bool(between.strip()) and "\n" not in between and bool(_AND.fullmatch(between))
    )


def _attach(
    advert: AdvertText,
    prices: list[Found],
    is_satellite: Callable[[Found], bool],
    is_main: Callable[[Found], bool],
    join: Callable[[int, int], None],
    root: Callable[[int], int],
    reach: float = _OFFER_REACH,
) -> None:
    satellites = [i for i, f in enumerate(prices) if is_satellite(f)]
    mains = [i for i, f in enumerate(prices) if is_main(f) and not is_satellite(f)]
    if not satellites or not mains:
        return
    costs = np.full((len(satellites), len(mains) + len(satellites)), _FAR)
    for row, s in enumerate(satellites):
        costs[row, len(mains) + row] = reach
        for column, m in enumerate(mains):
            costs[row, column] = _pair_cost(advert, prices[s], prices[m], abs(s - m))
    for row, column in zip(*linear_sum_assignment(costs), strict=True):
        if column < len(mains) and costs[row, column] < reach and root(satellites[row]) == satellites[row]:
            join(satellites[row], mains[column])


def _pair_cost(advert: AdvertText, satellite: Found, main: Found, steps: int) -> float:
    if satellite.amount.currency != main.amount.currency:
        return _FAR
    cheaper = satellite.amount.amount < main.amount.amount
    if satellite.condition in _SATELLITE_CONDITIONS and cheaper:
        return _FAR
    if satellite.role in {"instalment", "down_payment", "postage", "saving"} and not cheaper:
        return _FAR
    unit = max(advert.body_px, 0.3 * max(satellite.type_px, main.type_px))
    return _distance(satellite.box, main.box) / unit + 1.0 * (steps - 1)


def _shares_row(one: Box, other: Box) -> bool:
    return min(one.bottom, other.bottom) - max(one.y, other.y) > 0.4 * min(one.h, other.h)


def _distance(one: Box, other: Box) -> float:
    dx = max(one.x - other.right, other.x - one.right, 0)
    dy = max(one.y - other.bottom, other.y - one.bottom, 0)
    return float((dx * dx + 4 * dy * dy) ** 0.5) if dy else 0.6 * dx

"""Which printed term colours which price: "with card", "reg.", "with coupon".

What is said in one breath is settled first ("Reg. $3.98", "49¢ with card"), then labels that head a column of prices or
stand under a row of them; the labels left go to the prices they stand with, an assignment of least cost.
"""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Final, cast

import numpy as np
from scipy.optimize import linear_sum_assignment

from adminer.parsing.prices.column_heads import DISPLAY, column_heads, shares_row
from adminer.parsing.prices.other_prices import (
    AFTER_ONLY,
    OTHER_PRICES,
    both_former,
    former_beside_asked,
    former_by_now,
    in_line,
    is_cut,
    is_named,
    leads,
    led_price,
    row_heads,
)
from adminer.parsing.prices.paired_heads import paired_heads
from adminer.parsing.prices.prices import Found
from adminer.parsing.terms.terms import Term
from adminer.parsing.text.text import AdvertText
from adminer.records import Box, Condition

TERM_REACH: Final = 4.0  # line heights within which a term colours a price
_FAR: Final = 1e5
_LED: Final = 0.3
_JOINING: Final = re.compile(r"(?:and|plus|with|for|only)\b", re.IGNORECASE)
_LOOSE_REACH: Final = 1.7
_BREATH: Final = 2  # words between a term and the price of the same breath
_BREATH_GAP: Final = 4.0  # body types between them
_FOOT: Final = 3.0  # body types between a row of prices and the label under it
_UNCOLOURED: Final = frozenset({"postage", "saving", "reference"})  # roles of prices no term is about


def colour_prices(advert: AdvertText, prices: list[Found], terms: list[Term]) -> tuple[list[Found], set[int]]:
    """Return the prices with their conditions, and the numbers of the terms that were used up."""
    chosen = [i for i, t in enumerate(terms) if t.scope == "price"]
    coloured = list(prices)
    used: set[int] = set()
    if not chosen or not prices:
        return former_by_now(advert, coloured), used

    def give(t: int, p: int) -> None:
        if coloured[p].condition == "everyone" and coloured[p].condition_text is None:
            coloured[p] = replace(coloured[p], condition=cast(Condition, terms[t].kind), condition_text=terms[t].words)
            used.add(t)

    boxes = {t: advert.flat(advert.box_of(terms[t].start, terms[t].end)) for t in chosen}
    rows = row_heads(advert, prices, terms, boxes) | paired_heads(advert, prices, terms, chosen)
    for t, members in rows.items():
        for p in members:
            give(t, p)
    boxes = {t: box for t, box in boxes.items() if t not in rows}
    bound = _in_one_breath(advert, prices, terms, boxes)
    bound = {t: p for t, p in bound.items() if not is_named(terms[t]) or is_cut(advert, prices, p, terms)}
    boxes = {t: box for t, box in boxes.items() if t in bound or not is_named(terms[t])}
    for t, p in bound.items():
        give(t, p)
    feet = _row_feet(advert, coloured, boxes, bound, terms)
    heads = column_heads(advert, prices, terms, {t: b for t, b in boxes.items() if t not in bound and t not in feet})
    for t, members in (feet | heads).items():
        for p in members:
            give(t, p)
    left = [t for t in boxes if t not in bound and t not in feet and t not in heads]
    for group in (
        [t for t in left if not _is_loose(terms[t])],
        [t for t in left if _is_loose(terms[t])],
    ):
        for t, p in _nearest(advert, prices, coloured, terms, {t: boxes[t] for t in group}).items():
            give(t, p)
    coloured = former_beside_asked(advert, former_by_now(advert, coloured))
    return _regular_is_without_card(both_former(advert, coloured)), used


def _nearest(
    advert: AdvertText, prices: list[Found], coloured: list[Found], terms: list[Term], boxes: dict[int, Box]
) -> dict[int, int]:
    """Return the terms with the prices they stand with, at most one each, prices that have their term left out."""
    chosen = list(boxes)
    settled = {p for p, price in enumerate(coloured) if price.condition_text is not None}
    by_card = [coloured[p].place for p in settled if coloured[p].condition in {"cardholder", "without_card"}]
    costs = np.full((len(chosen), len(prices) + len(chosen)), _FAR)
    for row, t in enumerate(chosen):
        costs[row, len(prices) + row] = TERM_REACH
        loose = _is_loose(terms[t])
        reach = TERM_REACH if not loose and _stands_alone(advert, terms[t], prices, terms) else _LOOSE_REACH
        for p, price in enumerate(prices):
            if (
                not _may_colour(terms[t], price)
                or p in settled
                or (loose and any(shares_row(price.place, c) for c in by_card))
            ):
                continue
            cost = _term_cost(advert, terms[t], boxes[t], price, prices, terms)
            costs[row, p] = cost if cost < reach else _FAR
    pairs = zip(*linear_sum_assignment(costs), strict=True)
    return {
        chosen[row]: int(column) for row, column in pairs if column < len(prices) and costs[row, column] < TERM_REACH
    }


def _may_colour(term: Term, price: Found) -> bool:
    """Say whether a term may be about a price: "50c off" is a price of its coupon, postage is of nothing."""
    return price.role not in _UNCOLOURED or (price.role == "saving" and term.kind == "coupon")


def _is_loose(term: Term) -> bool:
    """Say whether a term is as often one of the whole advert ("with each $5 purchase", "double stamps")."""
    return term.kind == "with_purchase" or (term.kind == "stamps" and not _JOINING.match(term.words))


def _regular_is_without_card(prices: list[Found]) -> list[Found]:
    """Call a "regular price" beside card prices what it is: the price without the card."""
    if not any(p.condition == "cardholder" for p in prices):
        return prices
    return [
        replace(p, condition="without_card")
        if p.condition == "former" and (p.condition_text or "").lower().startswith("reg")
        else p
        for p in prices
    ]


def _in_one_breath(advert: AdvertText, prices: list[Found], terms: list[Term], boxes: dict[int, Box]) -> dict[int, int]:
    """Return the terms printed in one line with their price, right before it or right after it, with the price.

    A line that begins with a price has its terms after the prices ("49¢ with card, 69¢ without"), any other before
    them; words like "reg." always stand before.
    """
    bound: dict[int, int] = {}
    for line in advert.lines:
        here = [p for p, price in enumerate(prices) if in_line(line, price) and price.role not in _UNCOLOURED]
        said = [  # what a price is compared with may begin in the line above
            t
            for t in boxes
            if line.start < terms[t].end <= line.end and (line.start <= terms[t].start or terms[t].kind in OTHER_PRICES)
        ]
        if not here or not said:
            continue
        price_first = min(prices[p].start for p in here) < min(terms[t].start for t in said)
        for t in said:
            words = advert.text[terms[t].start : terms[t].end]
            before = leads(advert, terms[t], prices) or not (price_first or AFTER_ONLY.match(words))
            if before:
                near = min(
                    (p for p in here if prices[p].start >= terms[t].end), key=lambda p: prices[p].start, default=None
                )
            else:
                near = max(
                    (p for p in here if prices[p].end <= terms[t].start), key=lambda p: prices[p].end, default=None
                )
            if near is None or near in bound.values():
                continue
            start, end = sorted((terms[t].start, terms[t].end, prices[near].start, prices[near].end))[1:3]
            gap = max(boxes[t].x - prices[near].place.right, prices[near].place.x - boxes[t].right, 0)
            if len(re.findall(r"\w+", advert.text[start:end])) <= _BREATH and gap < _BREATH_GAP * advert.body_px:
                bound[t] = near
    return bound


def _row_feet(
    advert: AdvertText, prices: list[Found], boxes: dict[int, Box], bound: dict[int, int], terms: list[Term]
) -> dict[int, list[int]]:
    """Find the labels that stand under the middle of a row of three or more like prices in display type: theirs all.

    A label with another beside it is one price's.
    """
    feet: dict[int, list[int]] = {}
    for t, box in boxes.items():
        if (
            t in bound
            or not _stands_alone(advert, terms[t], prices, terms)
            or any(shares_row(box, other) for u, other in boxes.items() if u != t)
        ):
            continue
        over = sorted(
            (
                p
                for p, price in enumerate(prices)
                if price.type_px >= DISPLAY * advert.body_px
                and 0 <= box.y - price.place.bottom < _FOOT * advert.body_px
            ),
            key=lambda p: prices[p].place.x,
        )
        spread = len(over) >= 3 and prices[over[0]].place.right < box.centre[0] < prices[over[-1]].place.x
        if spread and all(prices[p].condition == "everyone" for p in over):
            feet[t] = over
    return feet


def _term_cost(advert: AdvertText, term: Term, box: Box, price: Found, prices: list[Found], terms: list[Term]) -> float:
    """Return how far a term stands from a price, by reading order and by place, in about line heights."""
    amount = price.amount
    words = advert.text[term.start : term.end]
    if term.start > advert.line_at(term.start).start and (led := led_price(advert, term, prices)) is not None:
        return _LED if led is price else _FAR
    if term.end <= amount.start:
        between = advert.text[term.end : amount.start]
        inside = [p for p in prices if term.end <= p.amount.start < amount.start]
        wrong_side = bool(AFTER_ONLY.match(words))
    elif term.start >= amount.end:
        between = advert.text[amount.end : term.start]
        inside = [p for p in prices if amount.end <= p.amount.start < term.start]
        wrong_side = leads(advert, term, prices)
    else:
        return 0.0
    flow = 0.35 + 0.4 * len(between.split()) + 0.6 * between.count("\n") + 1.5 * len(inside) + 1.5 * wrong_side
    if AFTER_ONLY.match(words) and box.centre[1] < price.place.y:
        return _FAR  # "Terrific Value" over a price praises it
    if _stands_alone(advert, term, prices, terms):
        label = _label_cost(box, price, advert.body_px)
        return min(flow, label) if shares_row(box, price.place) and not _is_loose(term) else label
    if _is_loose(term) and "\n" in between:
        return _FAR
    if term.kind in OTHER_PRICES:
        near = 0 if AFTER_ONLY.match(words) else 2
        return _FAR if len(between.split()) > near or inside or wrong_side else flow
    return flow


def _stands_alone(advert: AdvertText, term: Term, prices: list[Found], terms: list[Term]) -> bool:
    """Say whether a term is a label: nothing else on its line but prices and other short words."""
    line = advert.line_at(term.start)
    spans = [(term.start, term.end)] + [(p.start, p.end) for p in prices]
    spans += [(t.start, t.end) for t in terms if t.scope == "price"]
    rest = advert.text[line.start : line.end]
    for start, end in spans:
        at, to = max(start - line.start, 0), min(end, line.end) - line.start
        if at < to:
            rest = rest[:at] + " " * (to - at) + rest[to:]
    return len(re.findall(r"[A-Za-z]{3,}", rest)) <= (0 if _is_loose(term) else 2)


def _label_cost(box: Box, price: Found, body: float) -> float:
    """Return the cost of a label by its place: right under a price, beside it, or over it."""
    unit = max(body, 0.25 * price.type_px)
    across = -box.across(price.place)
    aside = max(across, 0) / unit
    under, over = box.y - price.place.bottom, price.place.y - box.bottom
    if min(box.bottom, price.place.bottom) - max(box.y, price.place.y) > 0.4 * min(box.h, price.place.h):
        return 0.25 + 0.5 * aside
    if under > -0.4 * box.h and box.centre[1] > price.place.centre[1]:
        return 0.2 + 0.5 * max(under, 0) / unit + 0.8 * aside
    return 0.4 + 0.6 * max(over, 0) / unit + 0.8 * aside

"""Which terms colour which price, and which prices belong to one offer.

Both are assignments of least cost: a printed term ("with card", "reg.") goes to the price it stands with, and a
price that only makes sense beside another (the price without the card, the former price, the weekly payment)
goes to its main price, at most one of a kind each.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace
from functools import partial
from typing import Final, cast

import numpy as np
from scipy.optimize import linear_sum_assignment

from adminer.parsing.prices import Found
from adminer.parsing.terms import Term
from adminer.parsing.text import AdvertText, TextLine
from adminer.records import Box, Condition, PriceRole

_FAR: Final = 1e5
_TERM_REACH: Final = 4.0  # line heights within which a term colours a price
_LOOSE_TERMS: Final = frozenset({"with_purchase"})  # as often a term of the whole advert
_LOOSE_REACH: Final = 1.7
_LABEL_WORDS: Final = 6
_PAYMENT_LABELS: Final[dict[str, PriceRole]] = {
    "down": "down_payment",
    "cash down": "down_payment",
    "down payment": "down_payment",
    "with order": "down_payment",
    "a month": "instalment",
    "per month": "instalment",
    "monthly": "instalment",
    "a week": "instalment",
    "per week": "instalment",
    "weekly": "instalment",
}
_NEXT_WORDS: Final = 12  # terms of payment follow their price within these words
_OFFER_REACH: Final = 12.0  # line heights within which a second price belongs to a main one
_BEFORE_ONLY: Final = re.compile(
    r"^(?:was|were|formerly|reg|regular|usual|orig|comp|if perfect|made to|list|worth|would|should|retails?|"
    r"sells?|values? to|values? up)",
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
    boxes = {t: advert.flat(advert.box_of(terms[t].start, terms[t].end)) for t in chosen}
    heads = _column_heads(advert, prices, terms, boxes)
    costs = np.full((len(chosen), len(prices) + len(chosen)), _FAR)
    for row, t in enumerate(chosen):
        costs[row, len(prices) + row] = _TERM_REACH
        if t in heads:
            continue
        loose = terms[t].kind in _LOOSE_TERMS or not _stands_alone(advert, terms[t], prices, terms)
        reach = _LOOSE_REACH if loose else _TERM_REACH
        for p, price in enumerate(prices):
            if price.role not in {"postage", "saving", "reference"}:
                cost = _term_cost(advert, terms[t], boxes[t], price, prices, terms)
                costs[row, p] = cost if cost < reach else _FAR
    for row, column in zip(*linear_sum_assignment(costs), strict=True):
        if column < len(prices) and costs[row, column] < _TERM_REACH:
            t = chosen[row]
            coloured[column] = _with_term(coloured[column], terms[t])
            used.add(t)
    for t, members in heads.items():
        for p in members:
            if coloured[p].condition == "everyone":
                coloured[p] = _with_term(coloured[p], terms[t])
                used.add(t)
    return _regular_is_without_card(coloured), used


def _with_term(price: Found, term: Term) -> Found:
    return replace(price, condition=cast(Condition, term.kind), condition_text=term.words)


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


def _column_heads(
    advert: AdvertText, prices: list[Found], terms: list[Term], boxes: dict[int, Box]
) -> dict[int, list[int]]:
    """Find the labels that head a column of prices: nearer to the price below than to one above, two or more below."""
    heads: dict[int, Box] = {}
    for t, box in boxes.items():
        below = [p.place.y - box.bottom for p in prices if p.place.y > box.centre[1] and _in_column(box, p.place)]
        above = [box.y - p.place.bottom for p in prices if p.place.centre[1] < box.y and _in_column(box, p.place)]
        if len(below) >= 2 and min(below) < min(above, default=1e9) and min(below) < 4 * advert.body_px:
            heads[t] = box
    columns: dict[int, list[int]] = {t: [] for t in heads}
    for p, price in enumerate(prices):
        over = [t for t, box in heads.items() if box.centre[1] < price.place.y and _in_column(box, price.place)]
        if over:
            nearest = min(
                over, key=lambda t: (price.place.y - heads[t].y, abs(heads[t].centre[0] - price.place.centre[0]))
            )
            columns[nearest].append(p)
    return {t: _unbroken(prices, members, advert.body_px) for t, members in columns.items() if len(members) >= 2}


def _unbroken(prices: list[Found], members: list[int], body: float) -> list[int]:
    """Keep the prices of a column down to the first gap of more than six lines."""
    ordered = sorted(members, key=lambda p: prices[p].place.y)
    kept = ordered[:1]
    for p in ordered[1:]:
        if prices[p].place.y - prices[kept[-1]].place.bottom > 6 * body:
            break
        kept.append(p)
    return kept


def _in_column(head: Box, price: Box) -> bool:
    return abs(head.centre[0] - price.centre[0]) < 0.6 * max(head.w, price.w)


def _term_cost(advert: AdvertText, term: Term, box: Box, price: Found, prices: list[Found], terms: list[Term]) -> float:
    """Return how far a term stands from a price, by reading order and by place, in about line heights."""
    amount = price.amount
    words = advert.text[term.start : term.end]
    if term.end <= amount.start:
        between = advert.text[term.end : amount.start]
        inside = [p for p in prices if term.end <= p.amount.start < amount.start]
        wrong_side = bool(_AFTER_ONLY.match(words))
    elif term.start >= amount.end:
        between = advert.text[amount.end : term.start]
        inside = [p for p in prices if amount.end <= p.amount.start < term.start]
        wrong_side = bool(_BEFORE_ONLY.match(words))
    else:
        return 0.0
    flow = 0.35 + 0.4 * len(between.split()) + 0.6 * between.count("\n") + 1.5 * len(inside) + 1.5 * wrong_side
    if _stands_alone(advert, term, prices, terms):
        label = _label_cost(box, price, advert.body_px)
        return min(flow, label) if _shares_row(box, price.place) else label
    if term.kind in {"former", "comparison"}:
        near = 0 if _AFTER_ONLY.match(words) else 2
        return _FAR if len(between.split()) > near or inside or wrong_side else flow
    return flow


def _stands_alone(advert: AdvertText, term: Term, prices: list[Found], terms: list[Term]) -> bool:
    """Say whether a term is a label: nothing else on its line but prices and other short words."""
    line = advert.line_at(term.start)
    spans = [(term.start, term.end)] + [(p.start, p.end) for p in prices]
    spans += [(t.start, t.end) for t in terms if t.scope == "price"]
    rest = "".join(
        " " if any(start <= at < end for start, end in spans) else advert.text[at] for at in range(line.start, line.end)
    )
    return len(re.findall(r"[A-Za-z]{3,}", rest)) <= (0 if term.kind in _LOOSE_TERMS else 2)


def _label_cost(box: Box, price: Found, body: float) -> float:
    """Return the cost of a label by its place: right under a price, beside it, or over it."""
    unit = max(body, 0.25 * price.type_px)
    across = max(box.x, price.place.x) - min(box.right, price.place.right)
    aside = max(across, 0) / unit
    under, over = box.y - price.place.bottom, price.place.y - box.bottom
    if min(box.bottom, price.place.bottom) - max(box.y, price.place.y) > 0.4 * min(box.h, price.place.h):
        return 0.25 + 0.5 * aside
    if under > -0.4 * box.h and box.centre[1] > price.place.centre[1]:
        return 0.2 + 0.5 * max(under, 0) / unit + 0.8 * aside
    return 0.4 + 0.6 * max(over, 0) / unit + 0.8 * aside


def name_payments(advert: AdvertText, prices: list[Found]) -> list[Found]:
    """Give the prices that stand over a label like "cash down" or "a month" the role it names."""
    made = []
    for price in prices:
        role = price.role
        for line in advert.lines if role == "price" else ():
            own = any(other.line == line.number for other in prices)  # then its words speak of that price
            if own or not _is_under(line.flat, price.place, advert.body_px):
                continue
            for place, words in _short_runs(advert, line):
                label = _PAYMENT_LABELS.get(words)
                if label and _is_under(place, price.place, advert.body_px):
                    role = label
        made.append(replace(price, role=role))
    return made


def _short_runs(advert: AdvertText, line: TextLine) -> list[tuple[Box, str]]:
    """Return each word of a line and each two side by side, lower case, with their places."""
    runs = []
    for i, word in enumerate(line.words[:_LABEL_WORDS]):
        for run in (line.words[i : i + 1], line.words[i : i + 2]):
            box = word.box.joined(run[-1].box)
            runs.append((advert.flat(box), " ".join(w.text for w in run).lower().strip(" .,")))
    return runs


def _is_under(label: Box, price: Box, body: float) -> bool:
    gap = label.y - price.bottom
    across = min(label.right, price.right) - max(label.x, price.x)
    return -0.3 * label.h < gap < 7 * body and across > 0.3 * min(label.w, price.w)


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
    for i, j in _row_mates(advert, prices):
        join(i, j)
    for wanted in ("without_card", "former", "comparison"):
        _attach(advert, prices, partial(_is_of_condition, wanted), _is_main, join, root)
    for role in ("down_payment", "instalment", "postage", "saving"):
        _attach(advert, prices, partial(_is_of_role, role), _is_main, join, root)
    _attach(advert, prices, partial(_is_of_role, "instalment"), partial(_is_of_role, "down_payment"), join, root)
    for wanted in ("cardholder", "coupon", "with_purchase", "stamps"):
        _attach(advert, prices, partial(_is_of_condition, wanted), _is_for_everyone, join, root, _TERM_REACH)
    _attach(advert, prices, _is_told_for_everyone, _is_for_some, join, root)
    gathered: dict[int, list[Found]] = {}
    for i, found in enumerate(prices):
        gathered.setdefault(root(i), []).append(found)
    return [gathered[key] for key in sorted(gathered)]


def _row_mates(advert: AdvertText, prices: list[Found]) -> list[tuple[int, int]]:
    """Return neighbouring prices of one table row: no words between them, and words to the left of the first."""
    found = []
    for i, one in enumerate(prices):
        right = [
            (other.place.x, j)
            for j, other in enumerate(prices)
            if j != i and other.place.x >= one.place.right - 2 and _shares_row(one.place, other.place)
        ]
        if not right:
            continue
        j = min(right)[1]
        two = prices[j]
        ratio = one.type_px / max(two.type_px, 1.0)
        gap = Box(one.place.right, one.place.y, max(two.place.x - one.place.right, 1), one.place.h)
        label = Box(0, one.place.y, max(one.place.x, 1), one.place.h)
        if not 0.6 < ratio < 1.7 or gap.w > 12 * advert.body_px or one.condition == two.condition != "everyone":
            continue
        texts = [line for line in advert.lines if _shares_row(line.flat, one.place)]
        if any(_text_inside(advert, line, gap) for line in texts) or not any(
            _text_inside(advert, line, label) for line in texts
        ):
            continue
        found.append((i, j))
    return found


def _text_inside(advert: AdvertText, line: TextLine, place: Box) -> bool:
    return any(
        re.search(r"[A-Za-z]{3}", word.text) and place.x <= word.box.centre[0] < place.right for word in line.words
    )


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
    ratio = satellite.amount.amount / main.amount.amount
    if satellite.condition in _SATELLITE_CONDITIONS and not 1 < ratio <= 4:
        return _FAR
    if satellite.role in {"instalment", "down_payment", "postage", "saving"} and ratio >= 1:
        return _FAR
    unit = max(advert.body_px, 0.3 * max(satellite.type_px, main.type_px))
    if satellite.role in {"instalment", "down_payment"} and main.end <= satellite.start:
        words = len(advert.text[main.end : satellite.start].split())
        if words <= _NEXT_WORDS:
            return 0.1 * words + 0.2 * (steps - 1)
    if _shares_row(satellite.place, main.place):
        return 0.3 * _distance(satellite.place, main.place) / unit + 0.5 * (steps - 1)
    if satellite.condition == "without_card" and main.condition == "cardholder":
        return min(_distance(satellite.place, main.place) / unit, _OFFER_REACH - 2) + (0.0 if ratio <= 2.6 else 1.0)
    return _distance(satellite.place, main.place) / unit + 1.0 * (steps - 1)


def _shares_row(one: Box, other: Box) -> bool:
    return min(one.bottom, other.bottom) - max(one.y, other.y) > 0.4 * min(one.h, other.h)


def _distance(one: Box, other: Box) -> float:
    dx = max(one.x - other.right, other.x - one.right, 0)
    dy = max(one.y - other.bottom, other.y - one.bottom, 0)
    return float((dx * dx + 4 * dy * dy) ** 0.5) if dy else 0.6 * dx

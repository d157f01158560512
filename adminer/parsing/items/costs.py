"""What each text of an advert costs as the item of each price, by where it stands and by its wording.

The cost is measured in line heights of distance, lowered by a shared row or an unbroken flow of text, raised by rules
and prices between them.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from adminer.parsing.items.catalogue import without_order_marks
from adminer.parsing.items.descriptions import Described, descriptions, ends_of
from adminer.parsing.items.entries import is_adjectival
from adminer.parsing.items.flow import AFTER, BEFORE, CLOSES, flow_cost
from adminer.parsing.items.panels import (
    HOPELESS,
    NOWHERE,
    hang_below,
    is_cell,
    stack_cost,
    stands_left,
    stands_right,
    under_names,
    unit_between,
)
from adminer.parsing.items.rule_lines import rule_between, rules_that_part
from adminer.parsing.prices.prices import Found
from adminer.parsing.segments.items import Segment
from adminer.parsing.tables.price_lists import ON_ROW as ON_TABLE_ROW
from adminer.parsing.tables.price_lists import PriceList
from adminer.parsing.text.item_words import WORD
from adminer.parsing.text.naming import is_slogan
from adminer.parsing.text.text import AdvertText
from adminer.records import Box

_FOLLOWING_ROLES: Final = frozenset({"down_payment", "instalment", "postage", "saving"})
ON_ROW: Final = "on the same row, left of the price"
BELOW: Final = "right below the price"
ABOVE: Final = "right above the price"
_RIGHT: Final = 0.6  # a text over or under a price that begins behind it: names stand before and over their prices
_FEW_LINES: Final = 3  # of the label of one row
_TOLD: Final = 0.9  # how much less small type names than the name it is set under
_DEPARTMENT: Final = 0.8  # how much less the name of a part of the shop, or a slogan, names an article
NO_ITEM: Final = 3.0  # cost at which a price is rather left without an item of its own


@dataclass(frozen=True, slots=True)
class Costs:
    """Hold the cost of each text for each group of prices, a column a group for no item, and why each would be it."""

    table: NDArray[np.float64]
    whys: dict[tuple[int, int], str]
    described: tuple[Described, ...]  # the names that small type tells more of


@dataclass(frozen=True, slots=True)
class _Setting:
    """Hold how a group of prices is set, as far as it speaks for or against texts at some places."""

    cell: bool  # one of a column of prices
    headed: bool  # no cell, and a heading of its own stands right over it
    numbered: bool  # an order number stands before it on its line
    qualifies: bool  # it stands like an adjective before what it is for


@dataclass(frozen=True, slots=True)
class _Texts:
    """Hold what the texts of an advert are to each other and to its prices, whichever of these is asked about."""

    described: frozenset[int]  # numbers of the texts under a name on their axis
    telling: frozenset[int]  # first characters of small type that only tells more of a name
    departments: frozenset[int]  # first characters of those that head a part of the shop ("Pantry Shelf")
    labels: tuple[list[Found], ...]  # of each text the prices whose row it labels
    hanging: bool  # items stand under their prices


def costs_of(
    advert: AdvertText,
    groups: list[list[Found]],
    segments: list[Segment],
    rules: tuple[Box, ...],
    known: NDArray[np.float64],
    table: PriceList | None = None,
) -> Costs:
    """Weigh each text as the item of each group; `known` holds a bonus for a text that names a known piece or line."""
    prices = [found for group in groups for found in group]
    if not prices or not segments:
        return Costs(np.zeros((len(groups), len(segments) + len(groups))), {}, ())
    costs = np.full((len(groups), len(segments) + len(groups)), 10 * NOWHERE)
    whys: dict[tuple[int, int], str] = {}
    told = descriptions(advert, segments, prices)
    feet = {one.name.start: one.lines[-1].flat for one in told}
    under_head = [[any(_heads(advert, s, found) for s in segments) for found in group] for group in groups]
    labelled = [group[0] for group, headed in zip(groups, under_head, strict=True) if not headed[0]]
    texts = _Texts(
        under_names(segments, prices, advert.body_px),
        frozenset(text.start for one in told for text in one.texts),
        frozenset(segment.start for segment in segments if _is_department(segment)),
        tuple(_prices_labelled(segment, labelled, segments) for segment in segments),
        hang_below(groups, segments),
    )
    for g, group in enumerate(groups):
        setting = _setting_of(advert, group, prices, headed=any(under_head[g]))
        row = table.item_of(group) if table is not None else None
        rivals = [p.place.centre for p in prices if not any(p is mine for mine in group)]
        for s, segment in enumerate(segments):
            cost, why = _cost(advert, group, segment, prices, rivals, rules, segments, feet.get(segment.start))
            if segment is row:
                cost, why = -HOPELESS, ON_TABLE_ROW
            elif why == ON_ROW and _text_between(segment, group[0], segments):
                cost += 0.8
            cost = _in_company(_in_setting(cost, why, setting), why, s, segment, group[0], texts)
            costs[g, s] = cost - known[s]
            whys[g, s] = why
        costs[g, len(segments) + g] = NO_ITEM
    return Costs(costs, whys, told)


def _setting_of(advert: AdvertText, group: list[Found], prices: list[Found], *, headed: bool) -> _Setting:
    first = group[0]
    cell = any(is_cell(found, prices, advert.body_px) for found in group)
    numbered = without_order_marks(advert.text[advert.lines[first.line].start : first.start])[1]
    return _Setting(cell, headed and not cell, numbered, is_adjectival(advert, first))


def _in_setting(cost: float, why: str, setting: _Setting) -> float:
    """Return the cost of a text raised where prices set like this one are seldom for a text at its place."""
    if setting.headed and why == ON_ROW:
        cost += 0.4  # a price with a heading of its own right over it is no cell of a row
    if setting.cell and why != ON_ROW:
        cost += 0.4  # what stands over a column of prices is the head of the column
    if setting.numbered and not why.endswith(CLOSES):
        cost += 0.5  # a price after an order number closes a paragraph, which its head names
    if setting.qualifies and why in {ON_ROW, BEFORE}:
        cost += 0.6
    return cost


def _is_department(segment: Segment) -> bool:
    return not segment.goods and len(WORD.findall(segment.text)) > 1 and is_slogan(segment.text)


def _in_company(cost: float, why: str, s: int, segment: Segment, first: Found, texts: _Texts) -> float:
    """Return the cost of a text raised where it heads a department, describes another text or labels another price."""
    if segment.start in texts.departments:
        cost += _DEPARTMENT
    if segment.start in texts.telling:
        cost += _TOLD
    elif s in texts.described and not segment.last.same_row(first.place):
        cost += 0.5  # the small type under a name tells more of it
    if why in {ABOVE, BELOW} and not segment.flat.same_row(first.place):
        cost += 0.8 * any(other is not first for other in texts.labels[s])  # the label of another price's row
    if texts.hanging and why in {ABOVE, BELOW}:
        cost += 0.8 if why == ABOVE else -0.4  # as everywhere in this advert
    elif why == BELOW and not segment.goods:
        cost += 0.8
    return cost


def _cost(
    advert: AdvertText,
    group: list[Found],
    segment: Segment,
    prices: list[Found],
    rivals: list[tuple[float, float]],
    rules: tuple[Box, ...],
    segments: list[Segment],
    foot: Box | None,
) -> tuple[float, str]:
    """Return what a text costs as the item of a group, among the middles of rivals; `foot` ends its small type."""
    mains = [found for found in group if found.role not in _FOLLOWING_ROLES] or group
    first = mains[0]
    best, why = NOWHERE, ""
    for found in mains:
        for text in ends_of(segment, foot):
            cost, reason = _place_cost(found, text, advert.body_px)
            if cost < best:
                best, why = cost, reason
    if best < HOPELESS:
        best += 0.8 * _prices_between(segment, first, rivals)
    if best < HOPELESS and segment.goods and why == ABOVE and not is_cell(first, prices, advert.body_px):
        best = min(best, stack_cost(advert, segment, first, prices, segments))
    flow, reason = flow_cost(advert, mains, segment, prices, segments)
    if flow < best:
        best, why = flow, reason
    if (
        best < HOPELESS
        and not why.endswith((CLOSES, AFTER))
        and rule_between(segment.box, first.box, rules_that_part(advert, segment, first, rules))
    ):
        best += 1.0  # in one column of type what looks like a rule is none
    return best + _wording_cost(segment, why), why


def _wording_cost(segment: Segment, why: str) -> float:
    """Return what speaks against a text as the name of an item: no words of its own, or the words of a sentence."""
    if segment.text.isdigit():
        return 0.6  # a number of pieces or an order number
    if segment.content == 0:
        return 0.3 if why in {ON_ROW, BEFORE} else 0.9
    label = why in {ON_ROW, BEFORE}
    silent = 0.4 if segment.talks and (segment.content == 1 or not label) else 0.0
    return silent + min(0.12 * segment.prose, 0.6) + (0.3 if segment.content > 10 and not segment.goods else 0.0)


def _place_cost(found: Found, segment: Segment, body: float) -> tuple[float, str]:
    """Return the cost by place: on the row of the price, over it, under it or beside it."""
    price = found.place
    unit = unit_between(segment, found, body)
    head, foot = segment.first, segment.last
    if not foot.same_row(price) and _is_between_lines(segment, price):
        foot = segment.flat  # a name in two lines, its price level with the white between them
    if stands_left(foot, price):
        gap = max(price.x - foot.right, 0)
        if gap > 4 * unit and (segment.running or segment.last_line - segment.first_line >= 2):
            return 1.4, "in the column left of the price"
        if not _is_row(foot, segment.type_px, price, found.type_px):
            level = abs(segment.flat.centre[1] - price.centre[1]) / unit  # of two rows beside a tall price the nearer
            return 0.9 + 0.1 * gap / unit + 0.15 * level, "left of the price"
        return 0.25 + min(0.01 * gap / body, 0.6), ON_ROW
    if stands_right(head, price):
        gap = max(head.x - price.right, 0)
        if not _is_row(head, segment.type_px, price, found.type_px):
            return 1.0 + 0.1 * gap / unit, "right of the price"
        return 0.8 + 0.03 * gap / unit, "on the same row, right of the price"
    across = -price.across(segment.flat)  # negative where they overlap
    aside = 0.25 * max(across, 0) / unit
    if across < 0 and abs(price.centre[0] - segment.flat.centre[0]) < 0.2 * max(price.w, segment.flat.w):
        aside = -0.1  # set on one axis
    bare = 0.5 if segment.bare else 0.0
    if found.type_px > 2.5 * body and segment.type_px < 1.15 * body:
        bare += 0.2  # over a display price stands a display line; small type between them tells a size
    if segment.flat.x >= price.right:
        aside += _RIGHT
    if foot.bottom <= price.y + 0.5 * price.h and foot.y < price.y:
        return 0.45 + 0.22 * max(price.y - foot.bottom, 0) / unit + aside + bare, ABOVE
    if head.y >= price.y + 0.5 * price.h or head.y > price.bottom - 0.3 * price.h:
        return 0.85 + 0.25 * max(head.y - price.bottom, 0) / unit + aside + bare, BELOW
    return 0.6 + 0.2 * max(across, 0) / unit + bare, "beside the price"


def _is_between_lines(segment: Segment, price: Box) -> bool:
    lines = segment.last_line - segment.first_line + 1
    return 1 < lines <= _FEW_LINES and segment.first.centre[1] < price.centre[1] < segment.last.centre[1]


def _text_between(segment: Segment, found: Found, segments: list[Segment]) -> bool:
    """Say whether another text stands on the row between a text and a price."""
    left, right = segment.last.right - 2, found.place.x + 2
    return any(
        left <= other.first.x
        and other.last.right <= right
        and other is not segment
        and not (segment.goods and other.talks)  # "Suits & Raincoats. Latest style, from 27/6"
        and other.first_line != segment.last_line  # "53-piece set - Harbor Band" is one line in two parts
        and other.content > 0
        and other.last.same_row(found.place)
        for other in segments
    )


def _prices_labelled(segment: Segment, labelled: list[Found], segments: list[Segment]) -> list[Found]:
    """Return the prices, with no heading over them, that stand right of a text on its row, however tall they are."""
    return [
        price
        for price in labelled
        if stands_left(segment.flat, price.place) and not _text_between(segment, price, segments)
    ]


def _heads(advert: AdvertText, segment: Segment, found: Found) -> bool:
    """Say whether a segment is a heading right over a price, on one axis with it."""
    price, foot = found.place, segment.last
    unit = max(advert.body_px, min(found.type_px, 3 * advert.body_px))
    gap = price.y - foot.bottom
    near = -0.5 * unit < gap < 1.5 * unit and foot.centre[1] < price.y
    return (
        near
        and not segment.bare
        and segment.content > 0
        and abs(price.centre[0] - foot.centre[0]) < 0.3 * max(price.w, foot.w)
    )


def _is_row(text: Box, text_px: float, price: Box, price_px: float) -> bool:
    """Say whether text and price make a row of a list: about one type size, about one line."""
    ratio = price_px / max(text_px, 1.0)
    level = abs(text.centre[1] - price.centre[1]) < 0.6 * max(text_px, price_px)
    return 0.45 < ratio < 2.2 and level


def _prices_between(segment: Segment, found: Found, rivals: list[tuple[float, float]]) -> int:
    """Count the prices of other groups, by their middles, that stand in the strip between a segment and a price."""
    ax, ay = segment.flat.centre
    bx, by = found.place.centre
    left, right = min(ax, bx) - 1, max(ax, bx) + 1
    top, foot = min(ay, by) - 1, max(ay, by) + 1
    return min(sum(top <= y <= foot and left <= x <= right for x, y in rivals), 2)

"""Decide what each price is for, as one assignment over the whole advert.

Prices that belong together (a range, "59¢ & 79¢", the card price and the price without) form a group; groups are
matched with item segments so that the sum of costs over the whole advert is least (`costs.py`).
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy.optimize import linear_sum_assignment

from adminer.parsing.items.costs import NO_ITEM, Costs
from adminer.parsing.items.entries import BEHIND, CAPTION, SAME, Entry, read_entries
from adminer.parsing.items.panels import HOPELESS, hang_below
from adminer.parsing.prices.prices import Found
from adminer.parsing.segments.items import Segment
from adminer.parsing.tables.price_lists import PriceList
from adminer.parsing.text.text import AdvertText
from adminer.records import Box


@dataclass(frozen=True, slots=True)
class Pairing:
    """Hold the segment chosen for a group of prices, its cost, why in plain words, and what a size is a size of."""

    segment: Segment | None
    cost: float
    why: str
    heading: Segment | None = None


def pair_items(
    advert: AdvertText,
    groups: list[list[Found]],
    segments: list[Segment],
    rules: tuple[Box, ...],
    weighed: Costs,
    table: PriceList | None = None,
) -> list[Pairing]:
    """Return one pairing a group: together, over the whole advert, the texts that cost least."""
    if not groups:
        return []
    if not segments:
        return [Pairing(None, NO_ITEM, "the advert has no text that could name the item") for _ in groups]
    entries = {} if hang_below(groups, segments) else read_entries(advert, groups, segments, rules)
    costs, whys = weighed.table.copy(), dict(weighed.whys)
    for g, entry in list(entries.items()):
        if table is not None and table.item_of(groups[g]) is not None:
            del entries[g]  # what a column of a table says outdoes what stands before it in reading order
            continue
        _settle(costs, whys, g, entry, segments)
    rows, columns = linear_sum_assignment(costs)
    chosen: list[Pairing] = []
    for g, s in zip(rows, columns, strict=True):
        if s < len(segments):
            told = entries.get(int(g))
            heading = told.heading if told is not None and told.item is segments[s] else None
            chosen.append(Pairing(segments[s], max(float(costs[g, s]), -1.0), whys[int(g), int(s)], heading))
            continue
        if int(g) in entries:
            shared = entries[int(g)]
            chosen.append(Pairing(shared.item, 0.0, shared.why, shared.heading))
            continue
        nearest = int(np.argmin(costs[g, : len(segments)]))
        if costs[g, nearest] < 2 * NO_ITEM:
            why = "shares the item with another price: " + whys[int(g), nearest]
            chosen.append(Pairing(segments[nearest], float(costs[g, nearest]) + 1, why))
        else:
            chosen.append(Pairing(None, NO_ITEM, "no text near enough names the item"))
    return chosen


def _settle(
    costs: NDArray[np.float64], whys: dict[tuple[int, int], str], g: int, entry: Entry, segments: list[Segment]
) -> None:
    """Give an entry of running text its item; one that may share the item of another asks for no text of its own."""
    at = next(i for i, segment in enumerate(segments) if segment.start == entry.item.start)
    if entry.why in {SAME, BEHIND, CAPTION}:
        costs[g, len(segments) + g] = -HOPELESS
    if entry.why in {SAME, CAPTION}:
        return
    costs[g, at] = -HOPELESS
    whys[g, at] = entry.why

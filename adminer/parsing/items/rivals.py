"""Which texts of an advert may name what a price is for: those that cost least, and those about it in reading order."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np

from adminer.parsing.items.costs import Costs
from adminer.parsing.items.panels import NOWHERE
from adminer.parsing.prices.prices import Found
from adminer.parsing.segments.items import Segment

_CHEAPEST: Final = 7  # texts by the costs of the rules
_ENDS: Final = 4  # texts since the price before, from either end
_AFTER: Final = 2  # texts after the price, up to the next
_OLDER: Final = 2  # texts before the price before
_NEVER: Final = 10**9  # a character after the end of every text


@dataclass(frozen=True, slots=True)
class Rivals:
    """Hold the numbers of the texts that may name what a group of prices is for, and of all since the price before."""

    texts: tuple[int, ...]
    since: tuple[int, ...]


def rivals_of(groups: Sequence[Sequence[Found]], segments: Sequence[Segment], costs: Costs) -> list[Rivals]:
    """Return for each group of prices the texts that may name what it is for."""
    order = sorted(range(len(segments)), key=lambda s: segments[s].start)
    spans = [(found.start, found.end, g) for g, group in enumerate(groups) for found in group]
    made: list[Rivals] = []
    for g, group in enumerate(groups):
        start, end = min(f.start for f in group), max(f.end for f in group)
        last = max((e for _, e, o in spans if o != g and e <= start), default=0)
        next_ = min((s for s, _, o in spans if o != g and s >= end), default=_NEVER)
        since = [s for s in order if last <= segments[s].start and segments[s].end <= start]
        after = [s for s in order if end <= segments[s].start and segments[s].end <= next_]
        older = [s for s in order if segments[s].end <= last]
        row = costs.table[g, : len(segments)]
        cheap = [int(s) for s in np.argsort(row)[:_CHEAPEST] if row[s] < NOWHERE / 2]
        found = {*cheap, *since[:_ENDS], *since[-_ENDS:], *after[:_AFTER], *older[-_OLDER:]}
        made.append(Rivals(tuple(sorted(found)), tuple(since)))
    return made

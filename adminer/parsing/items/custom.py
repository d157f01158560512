"""How the other offers of an advert are set: where their items stand to their prices, and in what type.

A printer sets the entries of an advert alike: where eight of ten open with a name in capitals over a description and a
price, the other two do as well. What is chosen for the others speaks for a text set as theirs are.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Final

from adminer.parsing.items.costs import Costs
from adminer.parsing.items.panels import opens_line, stands_left, stands_right
from adminer.parsing.items.rivals import Rivals
from adminer.parsing.items.traits import Traits, case_of
from adminer.parsing.prices.prices import Found
from adminer.parsing.segments.items import Segment
from adminer.parsing.text.text import AdvertText

_ALIKE: Final = 0.14  # of a logarithm of two type sizes
_FEWEST: Final = 2  # other offers from which there is a custom


@dataclass(frozen=True, slots=True)
class Custom:
    """Hold how the text chosen for a group of prices is set and stands to them."""

    relation: str
    type_px: float
    case: str
    opens: bool


def custom_of(advert: AdvertText, group: Sequence[Found], rivals: Rivals, s: int, texts: Sequence[Segment]) -> Custom:
    """Return how a text is set and stands to a group of prices."""
    text = texts[s]
    return Custom(
        _relation(group, rivals, s, texts),
        max(text.type_px, 1.0),
        case_of(text.text),
        opens_line(advert, text),
    )


def traits_by_custom(mine: Custom, others: Sequence[Custom]) -> Traits:
    """Return how far a text is set as those chosen for the other offers are."""
    made: Traits = {mine.relation: 1}
    if len(others) < _FEWEST:
        return {**made, "no custom": 1}
    count = len(others)
    stands = sum(other.relation == mine.relation for other in others)
    sized = [abs(math.log(other.type_px / mine.type_px)) < _ALIKE for other in others]
    styled = sum(size and other.case == mine.case for size, other in zip(sized, others, strict=True))
    return {
        **made,
        "stands as others": math.log((stands + 0.5) / (count + 2)),
        "share that stand so": stands / count,
        "set as others": math.log((styled + 0.5) / (count + 2)),
        "share set so": styled / count,
        "share of the size": sum(sized) / count,
        "share that open lines so": sum(other.opens == mine.opens for other in others) / count,
    }


def traits_by_claims(
    g: int, s: int, claims: Mapping[int, Sequence[int]], groups: Sequence[Sequence[Found]], costs: Costs
) -> Traits:
    """Return whether a text is chosen for other prices, by the groups that claim each text."""
    rivals = [other for other in claims.get(s, ()) if other != g]
    if not rivals:
        return {}
    first = min(found.start for found in groups[g])
    return {
        "claimed": 1,
        "claimed by several": len(rivals) > 1,
        "claimed for less": min(costs.table[other, s] for other in rivals) < costs.table[g, s],
        "claimed before": min(found.start for other in rivals for found in groups[other]) < first,
    }


def _relation(group: Sequence[Found], rivals: Rivals, s: int, segments: Sequence[Segment]) -> str:
    """Return in short how a text stands to a price: in reading order, on the scan, and among those since the last."""
    first, segment = min(group, key=lambda f: f.start), segments[s]
    order = "before" if segment.end <= first.start else "after" if segment.start >= first.end else "about"
    place = first.place
    if stands_left(segment.last, place):
        where = "left"
    elif stands_right(segment.first, place):
        where = "right"
    else:
        where = "over" if segment.last.centre[1] < place.centre[1] else "under"
    if s not in rivals.since:
        return f"{order}, {where}"
    k = rivals.since.index(s)
    return f"{order}, {where}, {'first' if k == 0 else 'later'}, {'last' if k == len(rivals.since) - 1 else 'earlier'}"

"""Names, descriptions, pictures and prices set over each other: what stands over what in a column of an advert."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from adminer.parsing.prices.prices import Found
from adminer.parsing.segments.items import Segment
from adminer.parsing.sets.sets import states_set
from adminer.parsing.text.text import AdvertText
from adminer.records import Box

DISPLAY: Final = 1.8  # times the body type
HOPELESS: Final = 6.0  # a text so far away is no candidate, whatever stands between
NOWHERE: Final = 1e5  # the cost of a text that stands in no place to a price at all
_PICTURE: Final = 14.0  # body sizes that a picture between a name and its description may take up
_FAR: Final = 10_000  # pixels: where there is nothing
_NEARER: Final = 0.6  # how much nearer a text must be on one side of a price to count
_FEW_VOTES: Final = 3  # places that must speak for it, and for one that speaks against it
_SMALL: Final = 0.8  # of the type of a name: what is set so much smaller only describes
_STACK: Final = 4  # texts between goods and the price under them that may still speak of the goods


def stack_cost(
    advert: AdvertText, segment: Segment, found: Found, prices: list[Found], segments: list[Segment]
) -> float:
    """Return the cost of goods named over a price when the lines between only say more of them.

    "Vacuum Cleaner / with entirely new principle / $15": nothing between names goods of its own, and no price.
    """
    top, foot = segment.last.centre[1], found.place.y + 0.5 * found.place.h
    column = [
        other for other in segments if top < other.flat.centre[1] < foot and over_each_other(other.flat, found.place)
    ]
    beside = not over_each_other(segment.flat, found.place)
    if (
        beside
        or any(other.goods and other.type_px > _SMALL * segment.type_px for other in column)
        or any(top < p.place.centre[1] < found.place.y for p in prices)
    ):
        return HOPELESS
    gap: float = found.place.y - segment.last.bottom - sum(other.flat.h for other in column)
    if column and segment.type_px > 1.25 * max(other.type_px for other in column):
        gap = min(gap, advert.body_px)  # a picture stands between a name and what describes it
    unit = max(advert.body_px, 0.5 * found.type_px)
    return 0.5 + 0.05 * len(column) + 0.22 * max(gap, 0) / unit if len(column) <= _STACK else HOPELESS


def under_names(segments: list[Segment], prices: list[Found], body: float) -> frozenset[int]:
    """Return the numbers of the texts that only describe the name over them.

    A name is goods in larger type on the axis of the text, over it or over the picture between them, with neither
    price nor other text between; a heading over several texts side by side names none of them.
    """
    found: set[int] = set()
    for i, segment in enumerate(segments):
        if states_set(segment.text):
            continue  # a set under the name of its line is the article, not a word about it
        over = [
            other
            for other in segments
            if other.last.centre[1] < segment.first.y and over_each_other(other.flat, segment.flat)
        ]
        nearest = max(over, key=lambda other: other.last.bottom, default=None)
        if nearest is None or not nearest.goods or segment.type_px > _SMALL * nearest.type_px:
            continue
        beside = any(
            other is not segment and other.first.same_row(segment.first) and over_each_other(nearest.flat, other.flat)
            for other in segments
        )
        gap = segment.first.y - nearest.last.bottom
        aside = abs(nearest.flat.centre[0] - segment.flat.centre[0])
        between = any(
            nearest.last.bottom - 2 < p.place.centre[1] < segment.first.y
            and nearest.flat.x < p.place.centre[0] < nearest.flat.right
            for p in prices
        )
        if gap < _PICTURE * body and aside < 0.25 * max(nearest.flat.w, segment.flat.w) and not (between or beside):
            found.add(i)
    return frozenset(found)


def over_each_other(one: Box, other: Box) -> bool:
    """Say whether some of one thing stands straight over or under some of another."""
    return one.across(other) > 0


def hang_below(groups: Sequence[Sequence[Found]], segments: Sequence[Segment]) -> bool:
    """Say whether the items of an advert stand under their prices: in most places goods are nearer below than above."""
    below = above = 0
    prices = [found for group in groups for found in group]
    for group in groups:
        place = group[0].place
        column = [s for s in segments if s.goods and over_each_other(s.flat, place)]
        over = min((place.y - s.last.bottom for s in column if s.last.centre[1] < place.y), default=_FAR)
        under = min((s.first.y - place.bottom for s in column if s.first.centre[1] > place.bottom), default=_FAR)
        rivals = [p.place for p in prices if p is not group[0] and over_each_other(p.place, place)]
        over = _FAR if any(r.y < place.y and place.y - r.bottom < over for r in rivals) else over
        under = _FAR if any(r.y > place.y and r.y - place.bottom < under for r in rivals) else under
        below += under < _NEARER * over
        above += over < _NEARER * under
    return below >= _FEW_VOTES and below >= _FEW_VOTES * above


def opens_line(advert: AdvertText, segment: Segment) -> bool:
    """Say whether a text begins its printed line."""
    return segment.start <= advert.lines[segment.first_line].start + 1


def ends_line(advert: AdvertText, segment: Segment) -> bool:
    """Say whether a text ends its printed line, but for a point."""
    return segment.end >= advert.lines[segment.last_line].end - 1


def is_cell(found: Found, prices: list[Found], body: float) -> bool:
    """Say whether a price is one of a column: another of about its size close under or over it."""
    for other in prices:
        step = abs(other.place.centre[1] - found.place.centre[1])
        size = max(body, min(found.type_px, other.type_px))
        aligned = min(abs(other.place.right - found.place.right), abs(other.place.x - found.place.x)) < size
        if 0.6 * size < step < 3.6 * size and aligned and 0.6 < other.type_px / max(found.type_px, 1.0) < 1.6:
            return True
    return False


def stands_left(text: Box, price: Box) -> bool:
    """Say whether a text ends before a price on its row."""
    return text.same_row(price) and text.right <= price.x + 0.3 * price.h


def stands_right(text: Box, price: Box) -> bool:
    """Say whether a text begins behind a price on its row."""
    return text.same_row(price) and price.right <= text.x + 0.3 * price.h


def unit_between(segment: Segment, found: Found, body: float) -> float:
    """Return the type size in pixels that the way from a text to a price is measured in."""
    return max(body, 0.5 * (min(found.type_px, 4 * body) + min(segment.type_px, 4 * body)))

"""Printed rules between a text and a price: which of them can part the two."""

from __future__ import annotations

from adminer.parsing.prices.prices import Found
from adminer.parsing.segments.items import Segment
from adminer.parsing.text.text import AdvertText
from adminer.records import Box


def rules_that_part(advert: AdvertText, segment: Segment, found: Found, rules: tuple[Box, ...]) -> tuple[Box, ...]:
    """Return the rules that can part a text and a price.

    Within one printed line that is only what stands in the gap between them; between two lines set close there is no
    room for a rule at all, and what was taken for one is a stroke of a letter.
    """
    if segment.end > found.start:
        return rules
    if segment.last_line == found.line:
        edge = advert.box_of(max(segment.end - 1, segment.start), segment.end).right - 2
        return tuple(rule for rule in rules if edge <= rule.centre[0] <= found.box.x + 2)
    next_line = segment.last_line + 1 == found.line and found.type_px < 1.5 * segment.type_px
    if next_line and found.place.y - segment.last.bottom < 0.5 * segment.type_px:
        return tuple(rule for rule in rules if rule.h > rule.w)
    return rules


def rule_between(one: Box, other: Box, rules: tuple[Box, ...]) -> bool:
    """Say whether a rule, and no dash or serif of the type itself, runs between the middles of two boxes."""
    (ax, ay), (bx, by) = one.centre, other.centre
    left, right, x = min(ax, bx), max(ax, bx), (ax + bx) / 2
    top, foot, y = min(ay, by), max(ay, by), (ay + by) / 2
    for rule in rules:
        if rule.w > 3 * rule.h:
            parts = top < rule.y + rule.h / 2 < foot and rule.x <= x <= rule.x + rule.w
            if parts and not any(_is_of_type(rule, box) for box in (one, other)):
                return True
        elif rule.h > 3 * rule.w and left < rule.x + rule.w / 2 < right and rule.y <= y <= rule.y + rule.h:
            return True
    return False


def _is_of_type(rule: Box, box: Box) -> bool:
    """Say whether a level rule is a dash or a serif of the type in a box."""
    return rule.w < box.w and box.y <= rule.y + rule.h / 2 <= box.bottom

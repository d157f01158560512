"""Scratches of the film: long strokes that look like rules but run through lines of type."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from adminer.layout.rules import LEVEL, Rect
from adminer.layout.type_lines import TypeLine, middle_of, usual_size

_LONG: Final = 6  # type sizes from which an upright stroke is a rule, not a letter
_FEWEST: Final = 3  # lines that a scratch runs through
_ALONG: Final = 0.8  # of a line that a level scratch runs through from end to end
_INSIDE: Final = 0.25  # of the height of a line: a stroke so far within it is no rule under or over it


def scratches(rules: Sequence[Rect], lines: Sequence[TypeLine]) -> list[Rect]:
    """Return the strokes that run through more lines of type than begin or end at them: no rules between columns."""
    if not lines:
        return []
    size = usual_size(lines)
    return [rule for rule in rules if _is_down(rule, lines, size) or _is_across(rule, lines, size)]


def _is_down(rule: Rect, lines: Sequence[TypeLine], size: float) -> bool:
    left, top, right, bottom = rule
    if bottom - top < _LONG * size or bottom - top < LEVEL * (right - left):
        return False
    level = [n.rect for n in lines if top < middle_of(n) < bottom and n.height < 2 * size]
    through = sum(r[0] < left - 2 * size and r[2] > right + 2 * size for r in level)
    ends = sum(min(abs(r[2] - left), abs(r[0] - right)) < 2 * size for r in level)
    return through >= _FEWEST and through > ends


def _is_across(rule: Rect, lines: Sequence[TypeLine], size: float) -> bool:
    """Say whether a long level stroke runs through the middle of lines of type in several places."""
    left, top, right, bottom = rule
    if right - left < LEVEL * (bottom - top):
        return False
    middle = (top + bottom) / 2
    met = [n for n in lines if min(n.rect[2], right) - max(n.rect[0], left) > _ALONG * (n.rect[2] - n.rect[0])]
    met = [n for n in met if n.height < 2 * size]
    inside = sum(n.rect[1] + _INSIDE * n.height < middle < n.rect[3] - _INSIDE * n.height for n in met)
    return inside >= _FEWEST

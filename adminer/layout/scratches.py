"""Scratches of the film: long strokes that look like rules but run through lines of type."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import permutations
from typing import Final

from adminer.layout.rules import LEVEL, Rect, area_of, shared
from adminer.layout.type_lines import TypeLine, around, middle_of, usual_size

_LONG: Final = 6  # type sizes from which an upright stroke is a rule, not a letter
_FEWEST: Final = 3  # lines that a scratch runs through
_ALONG: Final = 0.8  # of a line that a level scratch runs through from end to end
_INSIDE: Final = 0.25  # of the height of a line: a stroke so far within it is no rule under or over it
_INSIDE_FRAME: Final = 0.8  # of a frame: it stands in the one that a scratch had parted
_ABREAST: Final = 0.9  # of the height of the lower of two frames that a scratch parted
_ALONG_BOTH: Final = 0.7  # of the height that two frames have in common


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
    """Say whether a long level stroke, thinner than type, runs through the middle of lines in several places."""
    left, top, right, bottom = rule
    if right - left < LEVEL * (bottom - top) or bottom - top > size:  # the dark ground of heads side by side
        return False
    middle = (top + bottom) / 2
    met = [n for n in lines if min(n.rect[2], right) - max(n.rect[0], left) > _ALONG * (n.rect[2] - n.rect[0])]
    met = [n for n in met if n.height < 2 * size]
    inside = sum(n.rect[1] + _INSIDE * n.height < middle < n.rect[3] - _INSIDE * n.height for n in met)
    return inside >= _FEWEST


def mended(frames: Sequence[Rect], scratches: Sequence[Rect], touching: float) -> list[Rect]:
    """Put the frames together that stand on both sides of a scratch, as high as each other or one within the other."""
    for one, two in permutations(frames, 2):
        beside = abs(two[0] - one[2]) < 2 * touching
        level = min(one[3], two[3]) - max(one[1], two[1]) > _ABREAST * min(one[3] - one[1], two[3] - two[1])
        if beside and level and any(_runs_between(s, one, two, touching) for s in scratches):
            joined = around([one, two], one)
            apart = [
                f for f in frames if shared(f, joined) <= _INSIDE_FRAME * area_of(f) or area_of(f) > area_of(joined)
            ]
            return mended([joined, *apart], scratches, touching)
    return list(frames)


def lies_on(frame: Rect, side: int, stroke: Rect) -> bool:
    """Say whether a side of a frame, 0 left or 2 right, was drawn by a scratch."""
    along = min(frame[3], stroke[3]) - max(frame[1], stroke[1])
    return stroke[0] <= frame[side] <= stroke[2] and along > 0


def _runs_between(scratch: Rect, one: Rect, two: Rect, touching: float) -> bool:
    """Say whether a scratch stands where two frames side by side meet, along most of what they have in common."""
    top, foot = max(one[1], two[1]), min(one[3], two[3])
    along = min(scratch[3], foot) - max(scratch[1], top)
    return scratch[0] - touching < one[2] < scratch[2] + touching and along > _ALONG_BOTH * (foot - top)

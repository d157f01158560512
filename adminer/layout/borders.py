"""Borders of adverts that no closed face shows: four rules that end at each other.

A scratch of the film, a panel that touches the border and the border of the advert beside it all change which faces the
rules of a page close; where its rules end they do not change. Rules between columns run on past a cell, a border ends.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise, product
from typing import Final

from adminer.layout.rules import LEVEL, Rect, area_of, shared
from adminer.layout.type_lines import around

_SLACK: Final = 0.008  # of the longer side: how far from each other the rules of a corner may end
_LEAST: Final = (0.06, 0.04)  # of the longer side: width and height of a border
_GAP: Final = 0.1  # of a rule: worn away, it is still one
_APART: Final = (0.006, 0.04)  # of the longer side: between the borders of two adverts there is white, but not much
_OWN: Final = 0.004  # of the longer side: a frame that stands no further from those in it has no border but theirs
_ABREAST: Final = 0.9  # of the height or width of a border: what stands in it so tall stands in no advert with others


Stretch = tuple[float, float]  # from and to, in pixels


def borders(rules: Sequence[Rect], longer: float, *, leaning: bool = False) -> list[Rect]:
    """Return the rectangles whose four sides are drawn, one upright and one level rule of them ending at its corners.

    `longer` is the longer side of the picture in pixels, as the rules are. Of rules that lean, on a page that curls,
    only the room they take is known: they may end anywhere in it.
    """
    slack = _SLACK * longer
    upright = [r for r in joined(rules, 1, slack / 2) if r[3] - r[1] > _LEAST[1] * longer]
    level = [r for r in joined(rules, 0, slack / 2) if r[2] - r[0] > _LEAST[0] * longer]
    found: list[Rect] = []
    for one, two in product(upright, upright):
        begin, end = max(one[1], two[1]), min(one[3], two[3])
        if two[0] - one[2] < _LEAST[0] * longer or end - begin < _LEAST[1] * longer - 2 * slack:
            continue
        sides = _met(one, two, 0, leaning=leaning)
        across = [r for r in level if _spans(r, sides, 0, slack)]
        # where both sides run from one to the other, and one of them no further
        tops = [r for r in across if r[1] - slack < begin < r[3 if leaning else 1] + slack]
        feet = [r for r in across if r[1 if leaning else 3] - slack < end < r[3] + slack]
        for top, foot in product(tops, feet):
            ends = _met(top, foot, 1, leaning=leaning)
            if (
                foot[1] - top[3] >= _LEAST[1] * longer
                and any(_ends(r, ends, 1, slack) for r in (one, two))
                and any(_ends(r, sides, 0, slack) for r in (top, foot))
            ):
                found.append((one[0], top[1], two[2], foot[3]))
    return found


def without_common(frames: Sequence[Rect], longer: float) -> list[Rect]:
    """Return frames without those that only surround others, each with a border of its own, white between them."""
    return [frame for frame in frames if not any(_is_common(frame, frames, side, longer) for side in (0, 1))]


def _is_common(frame: Rect, frames: Sequence[Rect], side: int, longer: float) -> bool:
    """Say whether tiers of frames, each of its full width (side 1) or height (side 0), fill a frame from end to end.

    A tier of several frames is one of adverts only where the frame has no border of its own: its edges are theirs.
    """
    other = 1 - side
    full = frame[other + 2] - frame[other]
    inner = [f for f in frames if f is not frame and shared(f, frame) > _ABREAST * area_of(f)]
    inner = [f for f in inner if area_of(f) < _ABREAST * area_of(frame)]
    wide = [f for f in inner if f[other + 2] - f[other] > _ABREAST * full]
    if _fill(wide, frame, side, longer):
        return True
    tiers = _tiers(inner, side)
    if not tiers or max(abs(a - b) for a, b in zip(around(tiers, frame), frame, strict=True)) > _OWN * longer:
        return False
    across = all(tier[other + 2] - tier[other] > _ABREAST * full for tier in tiers)
    return across and _fill(tiers, frame, side, longer)


def _fill(row: Sequence[Rect], frame: Rect, side: int, longer: float) -> bool:
    """Say whether frames stand in a row from end to end of a frame, white between them."""
    kept: list[Rect] = []
    for one in sorted(row, key=lambda f: (f[side], -f[side + 2])):
        if not kept or one[side] > kept[-1][side + 2]:
            kept.append(one)
    if len(kept) <= 1:
        return False
    ends = (kept[0][side] - frame[side], frame[side + 2] - kept[-1][side + 2])
    gaps = [two[side] - one[side + 2] for one, two in pairwise(kept)]
    return max(*ends, *gaps) < _APART[1] * longer and max(gaps) > _APART[0] * longer


def _tiers(frames: Sequence[Rect], side: int) -> list[Rect]:
    """Return the tiers that frames make along a side: what frames side by side take together."""
    tiers: list[Rect] = []
    for one in sorted(frames, key=lambda f: f[side]):
        if tiers and one[side] < tiers[-1][side + 2]:
            tiers[-1] = around([tiers[-1], one], one)
        else:
            tiers.append(one)
    return tiers


def joined(rules: Sequence[Rect], side: int, slack: float) -> list[Rect]:
    """Return the rules that run along a side (0 level, 1 upright), those of one line put together over small gaps."""
    across = 1 - side
    made: list[Rect] = []
    for rule in sorted(rules, key=lambda r: r[side]):
        if rule[side + 2] - rule[side] <= LEVEL * (rule[across + 2] - rule[across]):
            continue
        at = next((n for n, other in enumerate(made) if _goes_on(other, rule, side, slack)), None)
        if at is None:
            made.append(rule)
        else:
            made[at] = around([made[at], rule], rule)
    return made


def _goes_on(before: Rect, rule: Rect, side: int, slack: float) -> bool:
    across = 1 - side
    in_line = abs(before[across] + before[across + 2] - rule[across] - rule[across + 2]) / 2 < slack
    gap = rule[side] - before[side + 2]
    return in_line and gap < _GAP * (rule[side + 2] - before[side])


def _met(first: Rect, last: Rect, side: int, *, leaning: bool) -> tuple[Stretch, Stretch]:
    """Return where rules across two sides of a border may end: at its outer edges, or anywhere in a leaning side."""
    low, high = first[side], last[side + 2]
    return ((low, first[side + 2]), (last[side], high)) if leaning else ((low, low), (high, high))


def _spans(rule: Rect, ends: tuple[Stretch, Stretch], side: int, slack: float) -> bool:
    return rule[side] < ends[0][1] + slack and rule[side + 2] > ends[1][0] - slack


def _ends(rule: Rect, ends: tuple[Stretch, Stretch], side: int, slack: float) -> bool:
    (low, into), (out, high) = ends
    return low - slack < rule[side] < into + slack and out - slack < rule[side + 2] < high + slack

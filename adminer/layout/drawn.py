"""Rectangles of a page between its rules, also where several adverts share them: what may be an advert.

A closed face and a border need sides of their own; of adverts set solid each rule serves two, and a card in a column
has rules over and under it alone. So a rectangle is drawn between any two level rules, from one upright rule to another
or between the ends that the level rules have in common.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import combinations
from typing import Final, Self

from adminer.layout.borders import joined
from adminer.layout.parted import sides_of
from adminer.layout.rules import LEVEL, Rect, RuleWork, area_of, centre, shared
from adminer.layout.type_lines import TypeLine, middle_of

_SLACK: Final = 0.008  # of the longer side: how far a rule may stand from the side it draws
_LEAST: Final = (0.06, 0.03)  # of the longer side: width and height of a rectangle
_RULE: Final = (0.05, 0.03)  # of the longer side: shorter strokes, level and upright, are ornaments or letters
_LEAST_AREA: Final = 0.003  # of the page
_MOST_AREA: Final = 0.9  # of the page
_IN_A_LINE: Final = 0.1  # of its height: a stroke further inside a line is one of its letters
_OVER_LETTERS: Final = 0.6  # of an upright stroke: letters read as one
_DRAWN: Final = 0.7  # of a side
_PART: Final = (0.25, 0.75)  # of a line within a rectangle: a side cuts it
_CUT: Final = 0.2  # of the lines in a rectangle: more are cut by no side of an advert
_SAME: Final = 0.93  # of two rectangles together


@dataclass(frozen=True, slots=True)
class Strokes:
    """Hold the rules of a page that may be sides of adverts, pieces of one line joined, none that are letters."""

    level: tuple[Rect, ...]
    upright: tuple[Rect, ...]
    slack: float

    @classmethod
    def of(cls, work: RuleWork, lines: Sequence[TypeLine], longer: float) -> Self:
        """Find the rules of a page whose `longer` side is known, the sides of its dark panels among them."""
        slack = _SLACK * longer
        level = [r for r in work.rules if r[2] - r[0] > LEVEL * (r[3] - r[1]) and not _underlines(r, lines)]
        upright = [r for r in work.rules if r[3] - r[1] > LEVEL * (r[2] - r[0]) and not _is_letters(r, lines)]
        dark = sides_of(work.panels)
        level += [s for s in dark if s[1] == s[3]]
        upright += [s for s in dark if s[0] == s[2]]
        long, tall = (least * longer for least in _RULE)
        return cls(
            tuple(r for r in joined(level, 0, slack / 2) if r[2] - r[0] > long),
            tuple(r for r in joined(upright, 1, slack / 2) if r[3] - r[1] > tall),
            slack,
        )

    def across(self, at: float, left: float, right: float) -> float:
        """Return how much of a level stretch is drawn, as a share."""
        return _covered(self.level, 0, at, (left, right), self.slack)

    def down(self, at: float, top: float, bottom: float) -> float:
        """Return how much of an upright stretch is drawn, as a share."""
        return _covered(self.upright, 1, at, (top, bottom), self.slack)


def drawn_rects(strokes: Strokes, lines: Sequence[TypeLine], whole: Rect) -> list[Rect]:
    """Return the rectangles of a page between its rules that cut few lines of type."""
    longer = max(whole[2], whole[3])
    found: dict[tuple[int, ...], Rect] = {}  # borders of two rules make each rectangle several times
    for one, two in combinations(strokes.level, 2):
        top, foot = sorted((one, two), key=lambda r: r[1] + r[3])
        high, low = centre(top)[1], centre(foot)[1]
        if low - high < _LEAST[1] * longer:
            continue
        for left, right in combinations(_sides(top, foot, strokes), 2):
            rect = (left, top[1], right, foot[3])
            sized = right - left >= _LEAST[0] * longer and _LEAST_AREA < area_of(rect) / area_of(whole) < _MOST_AREA
            place = tuple(round(at / (2 * strokes.slack)) for at in rect)
            if not sized or place in found or min(strokes.across(at, left, right) for at in (high, low)) < _DRAWN:
                continue
            if _cuts_few(rect, lines):
                found[place] = rect
    return list(found.values())


def is_same(one: Rect, two: Rect) -> bool:
    """Say whether two rectangles are one but for the width of their rules."""
    common = shared(one, two)
    return common > _SAME * (area_of(one) + area_of(two) - common)


def _sides(top: Rect, foot: Rect, strokes: Strokes) -> list[float]:
    """Return where sides may stand between two level rules: at upright rules, and at the ends they share."""
    slack, (high, low) = strokes.slack, (centre(rule)[1] for rule in (top, foot))
    ends = {side(top[n], foot[n]) for n, side in ((0, min), (2, max)) if abs(top[n] - foot[n]) < 2 * slack}
    reach = max(top[0], foot[0]) - slack, min(top[2], foot[2]) + slack
    middles = {centre(rule)[0] for rule in strokes.upright}
    drawn = {at for at in middles if reach[0] < at < reach[1] and strokes.down(at, high, low) > _DRAWN}
    return sorted(ends | drawn)


def _cuts_few(rect: Rect, lines: Sequence[TypeLine]) -> bool:
    middles = ((line.rect, middle_of(line)) for line in lines)
    inside = [
        (min(r[2], rect[2]) - max(r[0], rect[0])) / max(1.0, r[2] - r[0]) for r, y in middles if rect[1] < y < rect[3]
    ]
    held = sum(share >= _PART[1] for share in inside)
    cut = sum(_PART[0] < share < _PART[1] for share in inside)
    return held > 1 and cut <= _CUT * (held + cut)


def _underlines(rule: Rect, lines: Sequence[TypeLine]) -> bool:
    """Say whether a level stroke stands in a line of type along half of itself: its letters."""
    middle = centre(rule)[1]
    inset = ((n.rect, _IN_A_LINE * n.height) for n in lines)
    met = [r for r, within in inset if r[1] + within < middle < r[3] - within]
    return any(min(rule[2], r[2]) - max(rule[0], r[0]) > (rule[2] - rule[0]) / 2 for r in met)


def _is_letters(rule: Rect, lines: Sequence[TypeLine]) -> bool:
    """Say whether an upright stroke stands over letters of lines along most of itself."""
    middle = centre(rule)[0]
    met = [n.rect for n in lines if n.rect[0] + n.height / 2 < middle < n.rect[2] - n.height / 2]
    over = sum(max(0.0, min(rule[3], r[3]) - max(rule[1], r[1])) for r in met)
    return over > _OVER_LETTERS * (rule[3] - rule[1])


def _covered(rules: Sequence[Rect], side: int, at: float, stretch: tuple[float, float], slack: float) -> float:
    """Return how much of a stretch rules near `at` cover, as a share of it."""
    low, high = stretch
    near = [r for r in rules if r[1 - side] - slack < at < r[3 - side] + slack]
    covered, end = 0.0, low
    for start, stop in sorted((max(r[side], low), min(r[side + 2], high)) for r in near):
        covered += max(0.0, stop - max(start, end))
        end = max(end, stop)
    return covered / max(1.0, high - low)

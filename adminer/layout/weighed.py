"""Weigh all rectangles of a paper's page that may be adverts against each other, by one score each.

Rules inside an advert close panels, rules that adverts share close several together. An advert reads as one and says
whose it is, is drawn on all sides, cuts no line, begins and ends at columns, and holds no adverts of its own. The
weights were fitted on the whole pages of several hands, none of which is in this repository, and rounded: fitted on all
hands but one, they found more on the pages of that one than the frames alone. No source.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import log1p, sqrt
from typing import Final

import numpy as np
from numpy.typing import NDArray

from adminer.layout.appeal import appeal, is_signed
from adminer.layout.column_grid import ColumnGrid
from adminer.layout.drawn import Strokes, drawn_rects, is_same
from adminer.layout.framed import within
from adminer.layout.paper import Paper
from adminer.layout.rules import Rect, RuleWork, area_of, level_rules, shared
from adminer.layout.type_lines import TypeLine, middle_of, usual_size

_MOST_APPEAL: Final = 6.0  # either way
_ENDS: Final = 3  # lines among which the head of an advert is
_WHOLE_LINE: Final = 0.8  # of a line: less of it stands in a rectangle that cuts it
_TOUCHED: Final = 0.1  # of a line: with less of it in a rectangle it is one beside it
_INSIDE: Final = 0.9  # of a rectangle: it stands in another
_LARGER: Final = 1.2  # times its area: what may hold it
_OVERLAP: Final = 0.15  # of the smaller of two: they are not both adverts
_UNCLEAR: Final = 0.08  # measures off the columns, where none are clear
_AT_COLUMNS: Final = 0.1  # measures off the columns, at most, of what holds panels
_TEXT: Final = 0.35  # of lines that are running text: what holds articles too
_BASE: Final = -3.1
_APPEAL: Final = 0.3  # for each point of it
_UPRIGHT: Final = 0.9  # drawn on both sides
_LEVEL: Final = 1.1  # drawn at top and foot
_CUTS: Final = -6.8  # for the share of lines it cuts
_SIGNED: Final = 1.1  # it tells whose it is or where
_RUNNING: Final = -2.5  # for the share of running text
_OFF: Final = -5.4  # for each measure off the columns
_SEVERAL: Final = -4.5  # of its area in adverts of their own
_HELD: Final = -0.2  # for each that may hold it, on a scale of logarithms
_CLOSED: Final = 3.0  # for a frame that no rule about frames left out
_LEAST_CLOSED: Final = 0.3  # such a frame is an advert where nothing heavier collides with it: prose over a bank's name


@dataclass(frozen=True, slots=True, eq=False)
class _Candidate:
    rect: Rect
    area: float
    closed: bool  # found as a frame
    lines: int
    appeal: float
    signed: bool
    headed: bool
    running: float  # share of its lines
    cut: float  # share of the lines it touches
    upright: float  # least share drawn of its two sides, and of top and foot
    level: float
    off: float  # measures

    @property
    def is_whole(self) -> bool:
        """Say whether it would do as an advert alone: read as one, with its head and whose it is."""
        return self.signed and self.headed and self.lines > _ENDS and self.appeal > 0

    @property
    def may_hold(self) -> bool:
        """Say whether it may be an advert around panels."""
        return self.off <= _AT_COLUMNS and self.running < _TEXT and self.level > _WHOLE_LINE


def weighed_frames(
    work: RuleWork, closed: Sequence[Rect], lines: Sequence[TypeLine], whole: Rect, head: Sequence[TypeLine] = ()
) -> list[Rect]:
    """Return the adverts between the rules of a page, of its `closed` frames and all that its rules draw.

    No advert holds the whole running `head` of the paper.
    """
    candidates = _candidates(work, closed, lines, whole, head)
    # a large advert outweighs its panels, which are several
    weights = [_weight(one, candidates) * sqrt(one.area) for one in candidates]
    return [candidates[n].rect for n in heaviest([c.rect for c in candidates], weights)]


def _candidates(
    work: RuleWork, closed: Sequence[Rect], lines: Sequence[TypeLine], whole: Rect, head: Sequence[TypeLine]
) -> list[_Candidate]:
    strokes = Strokes.of(work, lines, max(whole[2], whole[3]))
    drawn = [r for r in [*work.frames, *drawn_rects(strokes, lines, whole)] if not any(is_same(r, c) for c in closed)]
    drawn = [r for r in drawn if not head or not all(within(n.rect, r) for n in head)]
    paper = Paper.of(lines, usual_size(lines), level_rules(work.rules))
    grid = ColumnGrid.of(lines, paper, whole[2])
    places = np.array([n.rect for n in lines]).reshape(-1, 4)
    made = [_candidate(rect, rect in closed, lines, places, strokes, paper, grid) for rect in [*closed, *drawn]]
    return [one for one in made if one is not None]


def _candidate(
    rect: Rect,
    closed: bool,
    lines: Sequence[TypeLine],
    places: NDArray[np.float64],  # of the lines: left, top, right, bottom
    strokes: Strokes,
    paper: Paper,
    grid: ColumnGrid | None,
) -> _Candidate | None:
    left, top, right, bottom = rect
    sizes = np.maximum(0.0, places[:, 2:] - places[:, :2])
    inside = np.minimum(places[:, 2:], (right, bottom)) - np.maximum(places[:, :2], (left, top))
    shares = np.maximum(0.0, inside).prod(axis=1) / np.maximum(1.0, sizes.prod(axis=1))
    touched = [(n, share) for n, share in zip(lines, shares.tolist(), strict=True) if share > _TOUCHED]
    held = sorted((n for n, _ in touched if within(n.rect, rect)), key=middle_of)
    if len(held) < 2:
        return None
    return _Candidate(
        rect,
        area_of(rect),
        closed,
        len(held),
        max(-_MOST_APPEAL, min(_MOST_APPEAL, appeal(held))),
        is_signed(held),
        any(map(paper.is_large, held[:_ENDS])),
        sum(id(n) in paper.running for n in held) / len(held),
        sum(share < _WHOLE_LINE for _, share in touched) / len(touched),
        min(strokes.down(at, top, bottom) for at in (left, right)),
        min(strokes.across(at, left, right) for at in (top, bottom)),
        max(grid.off(left), grid.off(right)) if grid else _UNCLEAR,
    )


def _weight(one: _Candidate, others: Sequence[_Candidate]) -> float:
    larger = [o for o in others if o.area > _LARGER * one.area and o.may_hold]
    smaller = [o for o in others if one.area > _LARGER * o.area and o.is_whole]
    holders = sum(_stands_in(one.rect, o.rect) for o in larger)
    whole = [o.rect for o in smaller if _stands_in(o.rect, one.rect)]
    parts = _greedy(sorted(range(len(whole)), key=lambda n: -area_of(whole[n])), whole)
    several = sum(area_of(whole[n]) for n in parts) / one.area if len(parts) > 1 else 0.0
    drawn = _UPRIGHT * one.upright + _LEVEL * one.level + _CUTS * one.cut + _OFF * one.off
    said = _APPEAL * one.appeal + _SIGNED * one.signed + _RUNNING * one.running
    weight = _BASE + drawn + said + _SEVERAL * several + _HELD * log1p(holders)
    return max(weight + _CLOSED, _LEAST_CLOSED) if one.closed else weight


def _stands_in(inner: Rect, outer: Rect) -> bool:
    return shared(inner, outer) > _INSIDE * area_of(inner)


def _collide(one: Rect, two: Rect) -> bool:
    return shared(one, two) > _OVERLAP * min(area_of(one), area_of(two))


def heaviest(rects: Sequence[Rect], weights: Sequence[float]) -> list[int]:
    """Return which rectangles that do not collide weigh most together: of each group, the best that one begins."""
    left = sorted((n for n, weight in enumerate(weights) if weight > 0), key=lambda n: -weights[n])
    chosen: list[int] = []
    while left:
        group, grown = [left[0]], 0
        while grown < len(group):
            group += [n for n in left if n not in group and _collide(rects[group[grown]], rects[n])]
            grown += 1
        left = [n for n in left if n not in group]
        group.sort(key=lambda n: -weights[n])
        tries = [_greedy([first, *group], rects) for first in group]
        chosen += max(tries, key=lambda tried: sum(weights[n] for n in tried))
    return chosen


def _greedy(order: Sequence[int], rects: Sequence[Rect]) -> list[int]:
    """Return which rectangles, taken in an order, collide with none taken before."""
    kept: list[int] = []
    for n in order:
        if n not in kept and not any(_collide(rects[n], rects[k]) for k in kept):
            kept.append(n)
    return kept

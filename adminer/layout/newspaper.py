"""Cut the page of a paper where no frames do it: by the white between columns, cut-off rules, and runs of type.

Newspapers part an advert from the article over it by a rule across the column. A stretch of a column is editorial
matter where running text of the paper's own size fills it, an advert where anything else does.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import groupby
from typing import Final

import numpy as np

from adminer.layout.appeal import appeal, closes_with_name
from adminer.layout.classified import is_classified, parted_from_text
from adminer.layout.notices import notices
from adminer.layout.paper import PRICE, Paper, is_one_advert
from adminer.layout.rules import Rect, area_of, centre, level_rules, shared
from adminer.layout.running_head import DATELINE
from adminer.layout.type_lines import Part, TypeLine, around, middle_of

_ACROSS: Final = 0.8  # of a stretch that a cut-off rule runs across
_TOUCH: Final = 0.4  # type sizes by which lines of two columns may seem to overlap: a hairline is read as a letter
_JOINED: Final = 0.03  # of the lines beside a gutter that may run through it: two columns read as one line
_ALIGNED: Final = 0.8  # of the lines that end or begin right at a gutter that may, on a page hard to read
_FEWEST: Final = 6  # lines that must end, and begin, at such a gutter
_NEAR: Final = 1.5  # type sizes from a gutter within which they do
_OWN: Final = 0.5  # of a line that stands in a stretch, or it goes on over others
_HEAD: Final = 3  # lines of the head of an advert over its columns
_TOLD: Final = -4.0  # appeal under which lines are sentences, not names of goods beside their prices
_TOP: Final = 0.1  # of the page: the row under the title of a paper stands no lower
_LEAST: Final = 0.004  # of the page: less is a filler between rules
_WORD: Final = re.compile(r"[^\W\d_]{4,}")


@dataclass(frozen=True, slots=True)
class _Stretch:
    rect: Rect
    lines: tuple[TypeLine, ...]


def cut_page(lines: Sequence[TypeLine], rules: Sequence[Rect], whole: Rect, size: float) -> list[Part]:
    """Return the adverts and the editorial matter of a page of a paper.

    `size` is the type size of the running text in pixels of the cleaned picture, `whole` the picture.
    """
    level = level_rules(rules)
    paper = Paper.of(lines, size, level)
    page = _Stretch(around([n.rect for n in lines], whole), tuple(lines))
    runs = [run for stretch in _stretches(page, level, paper) for run in _runs(stretch, paper)]
    parts: list[Part] = []
    for rect, held in _whole_adverts(runs, paper):
        if readers := notices(held, level):
            parts += readers
            continue
        own = [n for n in held if shared(n.rect, rect) > _OWN * area_of(n.rect)]  # a headline over columns is of none
        named = closes_with_name(own, paper) and not paper.tells(own)
        if _is_dateline(own, page.rect) or not (appeal(own) > 0 or named or is_classified(own)):
            parts.append(Part(rect, "editorial", 0.7))
        elif area_of(rect) > _LEAST * area_of(whole):
            parts.append(Part(rect, "advert", 0.6))
    return parts


def _is_dateline(lines: Sequence[TypeLine], page: Rect) -> bool:
    """Say whether lines are the row under the title of a paper: its number, its date, what a year of it costs."""
    over = page[1] + _TOP * (page[3] - page[1])
    return len(lines) <= _HEAD and any(DATELINE.search(n.text) and middle_of(n) < over for n in lines)


def _stretches(stretch: _Stretch, rules: Sequence[Rect], paper: Paper) -> list[_Stretch]:
    """Cut a stretch by the first rule right across it, else by the white between its columns, as long as it goes."""
    left, top, right, bottom = stretch.rect
    if is_classified(stretch.lines) and _gutter(stretch.lines, paper) is None:
        return [stretch]
    for rule in rules:
        across = min(rule[2], right) - max(rule[0], left)
        middle = centre(rule)[1]
        if across > _ACROSS * (right - left) and top + paper.size < middle < bottom - paper.size:
            above = tuple(n for n in stretch.lines if middle_of(n) < middle)
            below = tuple(n for n in stretch.lines if middle_of(n) >= middle)
            if above and below and not _is_head(above, paper):
                over = _Stretch(_across((left, top, right, rule[3]), above), above)
                under = _Stretch(_across((left, rule[1], right, bottom), below), below)
                return [part for half in (over, under) for part in _stretches(half, rules, paper)]
    edge = _gutter(stretch.lines, paper)
    if edge is None or _stands_under_head(stretch.lines, edge, paper):
        return [stretch]
    before = tuple(n for n in stretch.lines if centre(n.rect)[0] < edge)
    after = tuple(n for n in stretch.lines if centre(n.rect)[0] >= edge)
    one, two = (around([n.rect for n in column], stretch.rect) for column in (before, after))
    # a line read across the gutter makes neither column wider
    halves = (
        _Stretch((max(one[0], left), one[1], min(one[2], edge), one[3]), before),
        _Stretch((max(two[0], edge), two[1], min(two[2], right), two[3]), after),
    )
    return [part for half in halves for part in _stretches(half, rules, paper)]


def _is_head(lines: Sequence[TypeLine], paper: Paper) -> bool:
    """Say whether lines over a rule are no more than the head of what stands under it."""
    top, bottom = min(n.rect[1] for n in lines), max(n.rect[3] for n in lines)
    low = bottom - top < _HEAD * max(n.height for n in lines)
    return low and any(map(paper.is_large, lines)) and not paper.offers(lines)


def _stands_under_head(lines: Sequence[TypeLine], edge: float, paper: Paper) -> bool:
    """Say whether the two sides of a gutter are columns of one advert: its head runs across, and little is told."""
    top = sorted(lines, key=middle_of)[:_HEAD]
    across = [n for n in top if n.rect[0] < edge < n.rect[2] and paper.is_large(n)]
    return bool(across) and paper.offers(lines) and not paper.tells(lines)


def _across(rect: Rect, lines: Sequence[TypeLine]) -> Rect:
    """Return a rectangle no wider than the lines in it: beside them may stand what is framed."""
    held = around([line.rect for line in lines], rect)
    return max(rect[0], held[0]), rect[1], min(rect[2], held[2]), rect[3]


def _gutter(lines: Sequence[TypeLine], paper: Paper) -> float | None:
    """Return where the clearest white between two columns ends, None where there is none.

    White beside running text parts columns; white between other type may be that before a column of prices.
    """
    lefts, rights = (np.array([line.rect[side] for line in lines]) for side in (0, 2))
    touch, near = _TOUCH * paper.size, _NEAR * paper.size
    best: tuple[float, float] | None = None
    for edge in map(float, np.unique(lefts)):
        crossed = float(np.sum((lefts < edge - touch) & (rights > edge + touch)))
        begin = np.sum((lefts > edge - touch) & (lefts < edge + near))
        end = np.sum((rights < edge + touch) & (rights > edge - near))
        before = [at < edge for at in (lefts + rights) / 2]
        fewer = min(sum(before), len(before) - sum(before))
        aligned = float(min(begin, end))
        allowed = max(_JOINED * fewer, _ALIGNED * aligned if aligned >= _FEWEST else 0.0)
        share = crossed / (1 + aligned)
        if not fewer or crossed > allowed or (best is not None and share >= best[0]):
            continue
        halves = [[n for n, first in zip(lines, before, strict=True) if first == side] for side in (True, False)]
        if any(map(_is_prices, halves)):
            continue
        if any(paper.has_text(half) or _is_told(half) or is_classified(half) for half in halves):
            best = share, edge
    return best[1] if best else None


def _is_prices(lines: Sequence[TypeLine]) -> bool:
    """Say whether lines are a column of prices: they belong to what stands on their rows."""
    return all(PRICE.search(n.text) and not _WORD.search(n.text) for n in lines)


def _is_told(lines: Sequence[TypeLine]) -> bool:
    """Say whether lines are sentences of articles, though too few or too worn for paragraphs."""
    return len(lines) > _HEAD and appeal(lines) < _TOLD


def _runs(stretch: _Stretch, paper: Paper) -> list[tuple[Rect, list[TypeLine]]]:
    """Cut a stretch where running text gives way to an advert without a rule; headlines go with the text."""
    if is_classified(stretch.lines):
        return _between(stretch.rect, parted_from_text(stretch.lines, paper))
    if paper.advertises(stretch.lines) and not paper.tells(stretch.lines):
        return [(stretch.rect, list(stretch.lines))]
    ordered = sorted(stretch.lines, key=middle_of)
    runs = [list(held) for _, held in groupby(ordered, key=lambda n: id(n) in paper.running)]
    joined: list[list[TypeLine]] = []
    for run in runs:
        loud = paper.stands_out(run)
        before = bool(joined) and paper.stands_out(joined[-1])
        if joined and (not (loud or before) or (before and loud)):
            joined[-1] += run
        else:
            joined.append(list(run))
    return _between(stretch.rect, joined)


def _between(rect: Rect, runs: Sequence[list[TypeLine]]) -> list[tuple[Rect, list[TypeLine]]]:
    """Return runs of lines each with its part of a stretch, from its first line to its last."""
    left, top, right, bottom = rect
    edges = [around([n.rect for n in run], rect) for run in runs]
    return [
        ((left, top if k == 0 else edge[1], right, bottom if k == len(runs) - 1 else edge[3]), run)
        for k, (edge, run) in enumerate(zip(edges, runs, strict=True))
    ]


def _whole_adverts(runs: Sequence[tuple[Rect, list[TypeLine]]], paper: Paper) -> list[tuple[Rect, list[TypeLine]]]:
    """Put runs one under the other together where the rule between them is one of an advert's own."""
    made: list[tuple[Rect, list[TypeLine]]] = []
    for rect, held in runs:
        alone = is_classified(held) or (made and is_classified(made[-1][1]))
        if made and not alone and _goes_on(made[-1][0], rect, paper.size) and is_one_advert(made[-1][1], held, paper):
            made[-1] = (around([made[-1][0], rect], rect), [*made[-1][1], *held])
        else:
            made.append((rect, list(held)))
    return made


def _goes_on(over: Rect, under: Rect, size: float) -> bool:
    """Say whether one of two rectangles stands under the other, within its width or as wide."""
    inset = under[0] - over[0], over[2] - under[2]
    return abs(under[1] - over[3]) < size and (min(inset) > -size or max(inset) < size)

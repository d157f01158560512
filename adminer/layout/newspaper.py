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

from adminer.layout.rules import Rect, area_of
from adminer.layout.type_lines import Part, TypeLine, around

_ACROSS: Final = 0.8  # of a stretch that a cut-off rule runs across
_TOUCH: Final = 0.4  # type sizes by which lines of two columns may seem to overlap: a hairline is read as a letter
_HEADLINE: Final = 3  # lines that head an article; more of them, or one with a price, are an advert
_LEADING: Final = 0.8  # type sizes of white between two lines of a paragraph
_INDENT: Final = 2.5  # type sizes by which their left ends may differ
_SAME: Final = 0.35  # of the type size by which their heights may
_FULL: Final = 0.6  # of the widest column: paragraphs fill theirs, the names of a list do not
_SOLID: Final = 0.55  # of the lines of a stretch that are running text, or it is none
_LEAST: Final = 0.004  # of the page: less is a filler between rules
_LARGE: Final = 1.4  # of the size of running text
_PRICE: Final = re.compile(r"\$ ?\d|\d ?[¢c]\b|\d ?cents?\b", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class _Stretch:
    rect: Rect
    lines: tuple[TypeLine, ...]


@dataclass(frozen=True, slots=True)
class _Paper:
    """Hold what running text looks like in a paper: its lines, those of its paragraphs, and its type size."""

    running: frozenset[int]  # lines of paragraphs, by identity
    body: frozenset[int]  # all lines of the size and length of running text
    size: float

    def has_text(self, lines: Sequence[TypeLine]) -> bool:
        """Say whether more lines of paragraphs are among them than a headline has."""
        return sum(id(line) in self.running for line in lines) > _HEADLINE

    def advertises(self, lines: Sequence[TypeLine]) -> bool:
        """Say whether lines are an advert: a price that is not told in prose, or many lines with larger type."""
        if sum(id(line) in self.running for line in lines) > _SOLID * len(lines):
            return False
        priced = [line for line in lines if _PRICE.search(line.text)]
        large = any(line.height > _LARGE * self.size for line in lines)
        return any(id(line) not in self.body for line in priced) or (large and bool(priced or len(lines) > _HEADLINE))


def cut_page(
    lines: Sequence[TypeLine], body: Sequence[TypeLine], rules: Sequence[Rect], whole: Rect, size: float
) -> list[Part]:
    """Return the adverts and the editorial matter of a page of a paper; `body` are its lines of running text.

    `size` is the type size of the running text in pixels of the cleaned picture, `whole` the picture.
    """
    level = [rule for rule in rules if rule[2] - rule[0] > 4 * (rule[3] - rule[1])]
    paper = _Paper(frozenset(map(id, _stacked(body, size))), frozenset(map(id, body)), size)
    parts: list[Part] = []
    for stretch in _stretches(_Stretch(around([n.rect for n in lines], whole), tuple(lines)), level, paper):
        for rect, held in _runs(stretch, paper):
            if not paper.advertises(held):
                parts.append(Part(rect, "editorial", 0.7))
            elif area_of(rect) > _LEAST * area_of(whole):
                parts.append(Part(rect, "advert", 0.6))
    return parts


def _stacked(body: Sequence[TypeLine], size: float) -> list[TypeLine]:
    """Return the lines that stand close one under another, four or more of one size: the paragraphs of a paper."""
    stacks: list[list[TypeLine]] = []
    for line in sorted(body, key=lambda n: n.rect[1]):
        home = next((stack for stack in stacks if _goes_on(stack[-1], line, size)), None)
        if home is None:
            stacks.append([line])
        else:
            home.append(line)
    long = [stack for stack in stacks if len(stack) > _HEADLINE]
    wide = max((_width_of(stack) for stack in long), default=0.0)
    return [line for stack in long if _width_of(stack) > _FULL * wide for line in stack]


def _width_of(stack: Sequence[TypeLine]) -> float:
    widths = sorted(line.rect[2] - line.rect[0] for line in stack)
    return widths[len(widths) // 2]


def _goes_on(above: TypeLine, line: TypeLine, size: float) -> bool:
    return (
        line.rect[1] - above.rect[3] < _LEADING * size
        and abs(line.rect[0] - above.rect[0]) < _INDENT * size
        and abs(line.height - above.height) < _SAME * size
    )


def _stretches(stretch: _Stretch, rules: Sequence[Rect], paper: _Paper) -> list[_Stretch]:
    """Cut a stretch by the first rule right across it, else by the white between its columns, as long as it goes.

    White beside running text parts columns; white between other type may be that before a column of prices.
    """
    left, top, right, bottom = stretch.rect
    for rule in rules:
        across = min(rule[2], right) - max(rule[0], left)
        middle = (rule[1] + rule[3]) / 2
        if across > _ACROSS * (right - left) and top + paper.size < middle < bottom - paper.size:
            above = tuple(n for n in stretch.lines if (n.rect[1] + n.rect[3]) / 2 < middle)
            below = tuple(n for n in stretch.lines if (n.rect[1] + n.rect[3]) / 2 >= middle)
            if above and below:
                over = _Stretch((left, top, right, rule[3]), above)
                under = _Stretch((left, rule[1], right, bottom), below)
                return [part for half in (over, under) for part in _stretches(half, rules, paper)]
    ordered = sorted(stretch.lines, key=lambda n: n.rect[0])
    edge = ordered[0].rect[2]
    for number, line in enumerate(ordered[1:], 1):
        columns = tuple(ordered[:number]), tuple(ordered[number:])
        if line.rect[0] - edge > -_TOUCH * paper.size and any(map(paper.has_text, columns)):
            halves = [_Stretch(around([n.rect for n in column], stretch.rect), column) for column in columns]
            return [part for half in halves for part in _stretches(half, rules, paper)]
        edge = max(edge, line.rect[2])
    return [stretch]


def _runs(stretch: _Stretch, paper: _Paper) -> list[tuple[Rect, list[TypeLine]]]:
    """Cut a stretch where running text gives way to an advert without a rule; headlines go with the text."""
    ordered = sorted(stretch.lines, key=lambda n: n.rect[1] + n.rect[3])
    runs = [list(held) for _, held in groupby(ordered, key=lambda n: id(n) in paper.running)]
    joined: list[list[TypeLine]] = []
    for run in runs:
        loud = paper.advertises(run)
        before = bool(joined) and paper.advertises(joined[-1])
        if joined and (not (loud or before) or (before and loud)):
            joined[-1] += run
        else:
            joined.append(list(run))
    left, top, right, bottom = stretch.rect
    edges = [around([n.rect for n in run], stretch.rect) for run in joined]
    return [
        ((left, top if k == 0 else edge[1], right, bottom if k == len(joined) - 1 else edge[3]), run)
        for k, (edge, run) in enumerate(zip(edges, joined, strict=True))
    ]

"""The page of small adverts of makers who sell by mail: each ends with the address to which the order goes.

Monthlies gathered them on a page of its own under a common title; white parts the columns, a rule one advert from the
next, and no border is drawn. Common practice, no source.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import groupby
from typing import Final

import numpy as np

from adminer.layout.borders import joined
from adminer.layout.paper import PRICE
from adminer.layout.rules import Rect, centre
from adminer.layout.states import STATES
from adminer.layout.type_lines import Part, TypeLine, around, middle_of, usual_size
from adminer.records import RegionKind

_SIGNED: Final = re.compile(
    rf"\b[A-Z][A-Za-z.]+(?: \d{{1,2}})?,? (?:{STATES}|L\.? ?I)(?![A-Za-z]| (?!City\b)[A-Za-z])|"
    rf"^(?:{STATES})\.?(?: \d{{1,5}})?$"
)
# "... Post free.—Corbelle & Son, 18, Mill Row, / Osterby.": British weeklies set the name behind a dash, and no county
_DASHED: Final = re.compile(r"[\w.,!?)'’] ?[-—–]{1,2} ?[A-Z](?!.*\d[./]\d).*[,.] ?[A-Z][A-Za-z. ]+$")
# and begin with the goods in capitals, run on in small letters: no head of one line
_RUNS_ON: Final = re.compile(r"\W*[A-Z][A-Z'’]{2,}\W.*[a-z]{3}")
_FIRST: Final = 3  # parts of lines in which that shows
_LAST_LINES: Final = 3  # of an advert: its maker's name and address
_FEWEST: Final = 4  # adverts that make such a page
_MOST: Final = 0.7  # of its stretches end with an address
_ACROSS: Final = 0.7  # of the width of a column that a rule between two adverts runs across
_WHOLE: Final = 0.9  # of the width of the page that the rule under its title runs across
_IN_A_LINE: Final = 0.2  # of its height: a stroke further inside a line is one of its letters
_THROUGH: Final = 0.1  # of the lines beside a gutter that may run through it: two columns read as one line
_COLUMNS: Final = (2, 4)  # of such a page: fewest, most
_ONE_LINE: Final = 0.3  # type sizes: pieces of one rule stand no further apart in height
_GUTTER: Final = 0.3  # type sizes: the least white between columns


@dataclass(frozen=True, slots=True)
class _Column:
    """Hold the lines of a column from the top, the heights of the rules across it and its stretches between them."""

    lines: list[TypeLine]
    cuts: list[float]
    cells: list[list[TypeLine]]

    @classmethod
    def of(cls, lines: list[TypeLine], level: Sequence[Rect]) -> _Column:
        cuts = _cuts(lines, level)
        return cls(lines, cuts, _cells(lines, cuts))


def mail_order_adverts(lines: Sequence[TypeLine], rules: Sequence[Rect], whole: Rect) -> list[Part]:
    """Return the adverts of a page of many makers, each with its own address at its foot; none on any other page."""
    if len(lines) < _FEWEST * _LAST_LINES:
        return []
    level = sorted(joined(rules, 0, _ONE_LINE * usual_size(lines)), key=lambda r: r[1])
    head, body = _under_title(lines, level)
    edges = _gutters(body)
    if not _COLUMNS[0] <= len(edges) + 1 <= _COLUMNS[1]:
        return []
    columns = [_Column.of(lines, level) for lines in _columns(body, edges)]
    cells = [cell for column in columns for cell in column.cells]
    signed = [cell for cell in cells if _is_signed(cell)]
    feet = {_foot(cell) for cell in signed}
    if len(feet) < _FEWEST or len(signed) < _MOST * len(cells):
        return []
    title = [Part(around([n.rect for n in head], whole), "masthead", 0.7)] if head else []
    return [*title, *_adverts(columns, edges, whole)]


def _under_title(lines: Sequence[TypeLine], level: Sequence[Rect]) -> tuple[list[TypeLine], list[TypeLine]]:
    """Part the title of the page from its adverts, by the rule right across under it."""
    rects = np.array([n.rect for n in lines])
    left, top, right, bottom = rects[:, 0].min(), rects[:, 1].min(), rects[:, 2].max(), rects[:, 3].max()
    for rule in level:
        high = centre(rule)[1] < top + (bottom - top) / 4
        if high and min(rule[2], right) - max(rule[0], left) > _WHOLE * (right - left):
            over = [n for n in lines if middle_of(n) < centre(rule)[1]]
            return over, [n for n in lines if n not in over]
    return [], list(lines)


def _gutters(lines: Sequence[TypeLine]) -> list[float]:
    """Return the middles of the white stretches between columns, which hardly any line runs through."""
    lefts, rights = (np.array([n.rect[side] for n in lines]) for side in (0, 2))
    size = usual_size(lines)
    places = np.arange(lefts.min(), rights.max(), 1.0)
    crossed = np.searchsorted(np.sort(lefts), places, "left") - np.searchsorted(np.sort(rights), places, "right")
    clear = crossed <= _THROUGH * len(lines) / _COLUMNS[0]
    found = []
    for is_clear, run in groupby(zip(places, clear, strict=True), key=lambda pair: bool(pair[1])):
        stretch = [float(x) for x, _ in run]
        inside = stretch[0] > lefts.min() + 4 * size and stretch[-1] < rights.max() - 4 * size
        if is_clear and inside and stretch[-1] - stretch[0] > _GUTTER * size:
            found.append((stretch[0] + stretch[-1]) / 2)
    return found


def _columns(lines: Sequence[TypeLine], edges: Sequence[float]) -> list[list[TypeLine]]:
    columns: list[list[TypeLine]] = [[] for _ in range(len(edges) + 1)]
    for line in lines:
        columns[sum(edge < centre(line.rect)[0] for edge in edges)].append(line)
    return [sorted(column, key=middle_of) for column in columns if column]


def _cuts(column: Sequence[TypeLine], level: Sequence[Rect]) -> list[float]:
    left, right = (float(np.median([n.rect[side] for n in column])) for side in (0, 2))
    wide = [r for r in level if min(r[2], right) - max(r[0], left) > _ACROSS * (right - left)]
    return [centre(r)[1] for r in wide if not _underlines(r, column)]


def _underlines(rule: Rect, column: Sequence[TypeLine]) -> bool:
    """Say whether a stroke runs through a line of type, no further than it: what was found is its letters."""
    middle = centre(rule)[1]
    through = [n for n in column if n.rect[1] + _IN_A_LINE * n.height < middle < n.rect[3] - _IN_A_LINE * n.height]
    return any(rule[0] > n.rect[0] - n.height or rule[2] < n.rect[2] + n.height for n in through)


def _cells(column: Sequence[TypeLine], cuts: Sequence[float]) -> list[list[TypeLine]]:
    """Cut a column by its rules; a stretch without an address or price goes with the one under it, whose head it is.

    What opens with its goods run on has no head over it.
    """
    cells: list[list[TypeLine]] = []
    for _, stretch in groupby(column, key=lambda n: sum(cut < middle_of(n) for cut in cuts)):
        held = list(stretch)
        if cells and not _is_whole(cells[-1]) and not _RUNS_ON.match(" ".join(n.text for n in held[:_FIRST])):
            cells[-1] += held
        else:
            cells.append(held)
    return cells


def _is_whole(cell: Sequence[TypeLine]) -> bool:
    return _is_signed(cell) or (len(cell) > _LAST_LINES and any(PRICE.search(n.text) for n in cell))


def _is_signed(cell: Sequence[TypeLine]) -> bool:
    return _foot(cell) is not None


def _foot(cell: Sequence[TypeLine]) -> str | None:
    """Return what signs an advert: the last line with a state, or what a dash leads to; None where nothing does."""
    foot = cell[-_LAST_LINES:]
    signed = next((n.text for n in reversed(foot) if _SIGNED.search(n.text)), None)
    if signed is not None:
        return signed
    dashed = _DASHED.search(" ".join(n.text for n in foot))
    return dashed[0] if dashed else None


def _adverts(columns: Sequence[_Column], edges: Sequence[float], whole: Rect) -> list[Part]:
    """Return the parts from rule to rule: over the first line of an advert its picture may stand."""
    parts = []
    for column in columns:
        sides = around([n.rect for n in column.lines], whole)
        centre = _centre(column.lines)
        left = max([sides[0], *(edge for edge in edges if edge < centre)])
        right = min([sides[2], *(edge for edge in edges if edge > centre)])
        for cell in column.cells:
            held = around([n.rect for n in cell], whole)
            top = max([cut for cut in column.cuts if cut <= middle_of(cell[0])], default=held[1])
            # "When answering advertisements please mention ..."
            kind: RegionKind = "advert" if len(cell) > 1 or _is_signed(cell) else "editorial"
            parts.append(Part((left, min(top, held[1]), right, held[3]), kind, 0.7))
    return parts


def _centre(column: Sequence[TypeLine]) -> float:
    return float(np.median([centre(n.rect)[0] for n in column]))

"""Columns of readers: small notices of many shops set like the text of the paper, each an advert of its own.

Local weeklies sold them by the word: a notice begins with an indent and its goods in capitals, and ends with a dash and
the firm. Classified notices of private hands, under heads of their own, end with neither.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise
from typing import Final

import numpy as np

from adminer.layout.paper import PRICE
from adminer.layout.rules import Rect, level_rules
from adminer.layout.type_lines import Part, TypeLine, around, middle_of

_OPENING: Final = re.compile(r"\W*[A-Z][A-Z'’]{2,}\w?\W.*[a-z]{3}")  # capitals, then words: no head of its own
_CLOSING: Final = re.compile(r"[.,!?)] ?[-—–]{1,2} ?[A-Z]")
_FEWEST: Final = 4  # notices that make such a column
_MOST: Final = 0.6  # of them that end with their firm, and that tell a price
_INDENT: Final = 0.4  # type sizes
_ACROSS: Final = 0.8  # of the measure that a rule under the last notice runs across


def notices(lines: Sequence[TypeLine], rules: Sequence[Rect]) -> list[Part]:
    """Return the notices of a column of readers, none of anything else."""
    column = sorted(lines, key=middle_of)
    openings = [n for n, (line, below) in enumerate(pairwise(column)) if _opens(line, below)]
    if len(openings) < _FEWEST:
        return []
    left, right = (float(np.median([line.rect[side] for line in column])) for side in (0, 2))
    across = [r for r in level_rules(rules) if min(r[2], right) - max(r[0], left) > _ACROSS * (right - left)]
    held = [column[one:two] for one, two in pairwise([*openings, len(column)])]
    held[-1] = _over_rule(held[-1], across)
    said = [" ".join(line.text for line in one) for one in held]
    signed, priced = (sum(bool(pattern.search(text)) for text in said) for pattern in (_CLOSING, PRICE))
    if min(signed, priced) < _MOST * len(held):
        return []
    sides = around([line.rect for one in held for line in one], column[0].rect)
    tops = [one[0].rect[1] for one in held]
    bottoms = [*tops[1:], max(line.rect[3] for line in held[-1])]
    return [Part((sides[0], top, sides[2], low), "advert", 0.6) for top, low in zip(tops, bottoms, strict=True)]


def _opens(line: TypeLine, below: TypeLine) -> bool:
    return line.rect[0] - below.rect[0] > _INDENT * line.type_size and bool(_OPENING.match(line.text))


def _over_rule(notice: list[TypeLine], across: Sequence[Rect]) -> list[TypeLine]:
    """Return the last notice without what stands under a rule: the rates of the column."""
    under = [rule[1] for rule in across if rule[1] > middle_of(notice[0])]
    return [line for line in notice if middle_of(line) < min(under, default=middle_of(line) + 1)]

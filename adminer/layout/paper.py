"""What the type of a paper looks like: its running text, what advertises, and whether two stretches are one advert."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final, Self

import numpy as np

from adminer.layout.rules import Rect, centre
from adminer.layout.type_lines import TypeLine, middle_of

_HEADLINE: Final = 3  # lines that head an article; more of them, or one with a price, are an advert
_LEADING: Final = 2.2  # type sizes from line to line of a paragraph, one lost between them
_INDENT: Final = 2.5  # type sizes by which their left ends may differ
_SAME: Final = 0.5  # of the type size by which their heights may: letters with tails and without
_LONG: Final = 6  # type sizes from which a line may be one of a paragraph
_FIGURES: Final = 0.12  # of a line that are figures: more is a list of prices
_FULL: Final = 0.6  # of the usual measure: paragraphs fill theirs, the names of a list do not
_SOLID: Final = 0.55  # of the lines of a stretch that are running text, or it is none
_OWN: Final = 0.34  # of the lines of an advert that may be set like running text
_LARGE: Final = 1.4  # of the size of running text: a headline, a name
_DISPLAY: Final = 1.8  # of the size of running text: what no headline of a column has
_ENDS: Final = 3  # lines within which the head of an advert begins and its signature ends
_DENSE: Final = 4  # lines among which an article tells one sum at most
_SENTENCE: Final = 2  # sums that one sentence of an article may tell: "no less than $3 nor more than $8"
_LONE: Final = 4  # lines of a paragraph for each of them
_LEADERS: Final = re.compile(r"(?:[.·…_-] ?){4}")  # they lead to a price, in no sentence
_ROW: Final = 20  # type sizes from a ware to its price at most, leaders between them lost
_NAME: Final = re.compile(r"[^\W\d_]{4,}")  # a word: what holds one is more than a price
PRICE: Final = re.compile(
    r"\$ ?\d{1,3}(?![\d,]|\.\d{3})|\d[½¼¾⅓⅔]? ?(?:¢|c\b)|\d ?cents?\b|(?:^|[ .])\d{0,2}\.\d\d$"
    r"|£ ?\d|\b\d{1,3}/(?:-|\d{1,2}\b)|\b\d{1,2} ?s\. ?\d{1,2} ?d\b|\d[½¼¾]? ?d\b"
    r"|\bP\.? ?Tr?\. ?\d|\d[½¼¾]? ?P\. ?T\.|\d piastres?\b",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True)
class Paper:
    """Hold what running text looks like in a paper: the lines of its paragraphs, and its type size."""

    running: frozenset[int]  # lines of paragraphs, by identity
    size: float

    @classmethod
    def of(cls, lines: Sequence[TypeLine], size: float, rules: Sequence[Rect]) -> Self:
        """Learn the running text of a paper: lines of one size and measure close under each other, no rule between."""
        return cls(frozenset(id(line) for stack in _paragraphs(lines, size, rules) for line in stack), size)

    def has_text(self, lines: Sequence[TypeLine]) -> bool:
        """Say whether more lines of paragraphs are among them than a headline has."""
        return sum(id(line) in self.running for line in lines) > _HEADLINE

    def tells(self, lines: Sequence[TypeLine]) -> bool:
        """Say whether there is more running text among them than an advert has of its own."""
        return sum(id(line) in self.running for line in lines) > _OWN * len(lines)

    def is_text(self, lines: Sequence[TypeLine]) -> bool:
        """Say whether most lines are those of paragraphs."""
        return sum(id(line) in self.running for line in lines) > _SOLID * len(lines)

    def offers(self, lines: Sequence[TypeLine]) -> bool:
        """Say whether lines tell prices, and not in prose: several, or one under or in type larger than the text's."""
        if len(lines) < _HEADLINE or self.is_text(lines):
            return False
        priced = [n.rect[3] for n in lines if id(n) not in self.running and PRICE.search(n.text)]
        return len(priced) > 1 or any(self.is_large(n) and n.rect[1] < low for n in lines for low in priced)

    def stands_out(self, lines: Sequence[TypeLine]) -> bool:
        """Say whether lines between paragraphs are an advert without a rule: offers under a head, or many of them."""
        headed = any(map(self.is_display, lines))
        return self.offers(lines) and (headed or sum(bool(PRICE.search(n.text)) for n in lines) > _HEADLINE)

    def advertises(self, lines: Sequence[TypeLine]) -> bool:
        """Say whether lines are an advert: prices, or more lines than a headline has and type larger than any has."""
        if self.offers(lines):
            return True
        # lines that were read aslant, all of them, seem taller than the text beside them, and none stands out
        usual = float(np.median([line.type_size for line in lines])) if len(lines) > 2 * _ENDS else 0.0
        display = any(line.type_size > max(_DISPLAY * self.size, _LARGE * usual) for line in lines)
        return display and len(lines) > _HEADLINE and not self.tells(lines)

    def is_large(self, line: TypeLine) -> bool:
        """Say whether a line is larger than running text: a head, a name, a numeral."""
        return line.type_size > _LARGE * self.size

    def is_display(self, line: TypeLine) -> bool:
        """Say whether a line is set to be seen first: larger than running text, or in capitals."""
        return self.is_large(line) or (line.text.isupper() and sum(map(str.isalpha, line.text)) > _HEADLINE)


def is_one_advert(over: Sequence[TypeLine], under: Sequence[TypeLine], paper: Paper) -> bool:
    """Say whether a rule between two stretches of a column is one of an advert's own.

    An advert begins with a head and ends with a signature, in larger type or capitals; between two of them the rule
    parts adverts. A stretch that is nothing but a head goes with what follows it, a lone signature with what is over.
    """
    if paper.is_text(over) or paper.is_text(under):
        return False
    first, second = (sorted(lines, key=middle_of) for lines in (over, under))
    signed, headed = any(map(paper.is_display, first[-_ENDS:])), any(map(paper.is_display, second[:_ENDS]))
    if len(first) <= _ENDS or len(second) <= _ENDS:
        return not (signed and headed) or len(first) <= _ENDS
    return not signed and not headed


def _paragraphs(lines: Sequence[TypeLine], size: float, rules: Sequence[Rect]) -> list[list[TypeLine]]:
    """Return the lines that stand close one under another, four or more of one size: the paragraphs of a paper."""
    wares = _wares(lines, size)
    told = [n for n in lines if id(n) not in wares and not _LEADERS.search(n.text)]
    alike = [n for n in told if abs(n.type_size - size) < _SAME * size]
    stacks: list[list[TypeLine]] = []
    for line in sorted(alike, key=middle_of):
        if (home := next((stack for stack in stacks if _runs_on(stack[-1], line, size, rules)), None)) is not None:
            home.append(line)
        else:
            stacks.append([line])
    full = [[line for line in _told(stack) if _is_full(line, size)] for stack in stacks]
    long = [stack for stack in full if len(stack) > _HEADLINE]
    usual = float(np.median([_width_of(stack) for stack in long for _ in stack])) if long else 0.0
    return [stack for stack in long if _width_of(stack) > _FULL * usual]


def _wares(lines: Sequence[TypeLine], size: float) -> set[int]:
    """Return the lines, by identity, at the end of whose row stands a price alone: wares of a list, no paragraph."""
    found = set()
    for price in lines:
        if PRICE.search(price.text) and not _NAME.search(price.text):
            row = [n for n in lines if abs(middle_of(n) - middle_of(price)) < size / 2]
            before = [n for n in row if n.rect[2] < price.rect[0] + size]
            ware = max(before, key=lambda n: n.rect[2], default=price)
            if price.rect[0] - ware.rect[2] < _ROW * size:
                found.add(id(ware))
    return found


def _is_full(line: TypeLine, size: float) -> bool:
    """Say whether a line is one of many words and few figures: neither the last of a paragraph nor one of a list."""
    figures = sum(c.isdigit() for c in line.text)
    return line.rect[2] - line.rect[0] > _LONG * size and figures < _FIGURES * max(1, len(line.text))


def _told(stack: Sequence[TypeLine]) -> list[TypeLine]:
    """Return the lines of a stack without those among which prices stand close: an advert set like the text over it."""
    priced = [n for n, line in enumerate(stack) if PRICE.search(line.text)]
    if len(priced) == _SENTENCE and len(stack) > _LONE * _SENTENCE:
        return list(stack)
    dense = [n for n in priced if sum(abs(n - m) < _DENSE for m in priced) > 1]
    return [line for n, line in enumerate(stack) if all(abs(n - m) >= _DENSE / 2 for m in dense)]


def _width_of(stack: Sequence[TypeLine]) -> float:
    widths = sorted(line.rect[2] - line.rect[0] for line in stack)
    return widths[len(widths) // 2]


def _runs_on(above: TypeLine, line: TypeLine, size: float, rules: Sequence[Rect]) -> bool:
    top, bottom = middle_of(above), middle_of(line)
    return (
        bottom - top < _LEADING * size
        and abs(line.rect[0] - above.rect[0]) < _INDENT * size
        and abs(line.type_size - above.type_size) < _SAME * size
        and not any(_parts(rule, top, bottom, line.rect) for rule in rules)
    )


def _parts(rule: Rect, top: float, bottom: float, under: Rect) -> bool:
    """Say whether a rule runs between two rows, over most of the line under it."""
    across = min(rule[2], under[2]) - max(rule[0], under[0])
    return top < centre(rule)[1] < bottom and across > _FULL * (under[2] - under[0])

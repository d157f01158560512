"""What the type of a paper looks like: its running text, what advertises, and whether two stretches are one advert."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final, Self

from adminer.layout.type_lines import TypeLine

_HEADLINE: Final = 3  # lines that head an article; more of them, or one with a price, are an advert
_LEADING: Final = 0.8  # type sizes of white between two lines of a paragraph
_INDENT: Final = 2.5  # type sizes by which their left ends may differ
_SAME: Final = 0.35  # of the type size by which their heights may
_FULL: Final = 0.6  # of the widest column: paragraphs fill theirs, the names of a list do not
_SOLID: Final = 0.55  # of the lines of a stretch that are running text, or it is none
_LARGE: Final = 1.4  # of the size of running text
_ENDS: Final = 3  # lines within which the head of an advert begins and its signature ends
_PRICE: Final = re.compile(r"\$ ?\d|\d ?[¢c]\b|\d ?cents?\b", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Paper:
    """Hold what running text looks like in a paper: its lines, those of its paragraphs, and its type size."""

    running: frozenset[int]  # lines of paragraphs, by identity
    body: frozenset[int]  # all lines of the size and length of running text
    size: float

    @classmethod
    def of(cls, body: Sequence[TypeLine], size: float) -> Self:
        """Learn the running text of a paper from its lines of that size and length."""
        return cls(frozenset(map(id, _stacked(body, size))), frozenset(map(id, body)), size)

    def has_text(self, lines: Sequence[TypeLine]) -> bool:
        """Say whether more lines of paragraphs are among them than a headline has."""
        return sum(id(line) in self.running for line in lines) > _HEADLINE

    def is_text(self, lines: Sequence[TypeLine]) -> bool:
        """Say whether most lines are those of paragraphs."""
        return sum(id(line) in self.running for line in lines) > _SOLID * len(lines)

    def advertises(self, lines: Sequence[TypeLine]) -> bool:
        """Say whether lines are an advert: a price that is not told in prose, or many lines with larger type."""
        if self.is_text(lines):
            return False
        priced = [line for line in lines if _PRICE.search(line.text)]
        large = any(self.is_large(line) for line in lines)
        return any(id(line) not in self.body for line in priced) or (large and bool(priced or len(lines) > _HEADLINE))

    def is_large(self, line: TypeLine) -> bool:
        """Say whether a line is larger than running text: a head, a name, a numeral."""
        return line.height > _LARGE * self.size


def is_one_advert(over: Sequence[TypeLine], under: Sequence[TypeLine], paper: Paper) -> bool:
    """Say whether a rule between two stretches of a column is one of an advert's own.

    An advert begins with a head and ends with a signature, both in larger type; between two of them the rule parts
    adverts. A stretch that is nothing but a head goes with what follows it, a lone signature with what is over it.
    """
    if paper.is_text(over) or paper.is_text(under):
        return False
    first, second = (sorted(lines, key=lambda n: n.rect[1] + n.rect[3]) for lines in (over, under))
    signed, headed = any(map(paper.is_large, first[-_ENDS:])), any(map(paper.is_large, second[:_ENDS]))
    if len(first) <= _ENDS or len(second) <= _ENDS:
        return not (signed and headed) or len(first) <= _ENDS
    return not signed and not headed


def _stacked(body: Sequence[TypeLine], size: float) -> list[TypeLine]:
    """Return the lines that stand close one under another, four or more of one size: the paragraphs of a paper."""
    stacks: list[list[TypeLine]] = []
    for line in sorted(body, key=lambda n: n.rect[1]):
        home = next((stack for stack in stacks if _runs_on(stack[-1], line, size)), None)
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


def _runs_on(above: TypeLine, line: TypeLine, size: float) -> bool:
    return (
        line.rect[1] - above.rect[3] < _LEADING * size
        and abs(line.rect[0] - above.rect[0]) < _INDENT * size
        and abs(line.height - above.height) < _SAME * size
    )

"""The cells of a printed row: stretches of type parted by wide gaps or leaders."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Final

from adminer.parsing.text.text import AdvertText, TextLine
from adminer.records import Box

_GAP: Final = 1.3  # type sizes between two cells of a row
_LEADER: Final = re.compile(r"[._·…=*•-]{2,}|[.·…]")


@dataclass(frozen=True, slots=True)
class Cell:
    """Hold one cell of a row: its characters, its text, and its place with the slope of the type taken out."""

    start: int
    end: int
    text: str
    flat: Box
    line: TextLine


def cells_of(advert: AdvertText) -> list[Cell]:
    """Cut every line at gaps wider than a word space, leaders left out."""
    cells = []
    for line in advert.lines:
        at = line.start
        spans: list[tuple[int, int, Box]] = []
        for word in line.words:
            start = advert.text.index(word.text, at, line.end)
            at = start + len(word.text)
            if _LEADER.fullmatch(word.text):
                spans.append((-1, -1, word.box))  # a leader parts cells
                continue
            box = advert.flat(word.box)
            if spans and spans[-1][0] >= 0 and box.x - spans[-1][2].right < _GAP * line.type_px:
                start, box = spans[-1][0], spans[-1][2].joined(box)
                spans.pop()
            spans.append((start, at, box))
        cells += [Cell(a, b, advert.text[a:b], box, line) for a, b, box in spans if a >= 0]
    return cells

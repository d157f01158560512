"""The items of the rows of a table: the words of the name's cell and of the size's."""

from __future__ import annotations

import re
from typing import Final

from adminer.parsing.segments.items import Segment
from adminer.parsing.text.cells import Cell
from adminer.parsing.text.text import AdvertText

_NUMBER_BEFORE: Final = re.compile(r"^\d{2,5}[A-Z]?[ .:]+(?!x\b)(?=[A-Za-z])")  # "63 x 99" is a size
_OUNCES: Final = re.compile(r"(?<=\d)[. ]0[2z]\.?$")  # "oz." misread: sizes have no hundredths
_GLUED: Final = re.compile(r"(?<=\d)(?P<n>1/2|1/4|3/4|1/8)(?!\d)")
_SIGNS: Final = {"1/2": "½", "1/4": "¼", "3/4": "¾", "1/8": "⅛"}
_LEADERS: Final = re.compile(r"(?: ?[._·…]){3,}$")
_FIGURES_RUN: Final = re.compile(r"\d{4,}")  # a fraction and its unit read as one number


def row_segment(advert: AdvertText, at: Cell, name: str, size: Cell | None) -> Segment:
    """Return the item of a row: the words of its name and its size, standing where the row has its own words."""
    words = name_of_row(name)
    told = _size_of(size.text) if size else ""
    box, flat = advert.box_of(at.start, at.end), at.flat
    if size is not None and size is not at:
        box, flat = box.joined(advert.box_of(size.start, size.end)), flat.joined(size.flat)
    line = at.line
    return Segment(
        at.start, at.end, f"{words} {told}".strip(), box, flat, flat, flat, line.number, line.number, line.type_px,
        line.block, len(words.split()), 0, running=False, bare=False, goods=True, talks=False,
    )  # fmt: skip


def name_of_row(text: str) -> str:
    """Return the name in a cell without its number and leaders; every word counts, also one that praises elsewhere."""
    return _NUMBER_BEFORE.sub("", _LEADERS.sub("", " ".join(text.split()))).strip(" .,…·")


def _size_of(text: str) -> str:
    """Return a size as printed, with the fractions and ounces a reader took for figures; empty where it is ill read."""
    if _FIGURES_RUN.fullmatch(text.strip(" .,")):
        return ""
    text = _GLUED.sub(lambda m: _SIGNS[m["n"]], text.strip(" .,"))
    return _OUNCES.sub(" oz", text)

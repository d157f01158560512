"""Shillings and pence set in columns under "s. d.": the figures of a row are put together as "1/10", "3½d.", "9/-".

Lists of grocers and ironmongers name the signs once over the figures and no pound at all. The head tells what a lone
figure is by the column it stands in. Heads with pounds are left to `sterling_columns`. Common practice, no source.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Final

from adminer.parsing.text import flattened, slope_of
from adminer.records import Box, Word

_SHILLINGS: Final = re.compile(r"[sS1358lI][.,]?")  # the old-style sign is misread for a figure
_PENCE: Final = re.compile(r"d[.,]?")
_POUNDS: Final = re.compile(r"[£LE][.,]?")
_FIGURE: Final = re.compile(r"(?P<n>\d{1,2})(?P<frac>[½¼¾])?[.,]?")
_WORN_HALF: Final = re.compile(r"(\d{1,2})/2")  # no sum stands under one sign: "7/2" is 7½
_DASH: Final = re.compile(r"[-–—]+")
_PENNIES: Final = 12
_WIDEST: Final = 8.0  # type sizes between the two signs of one head
_ROW: Final = 0.6  # type sizes between the middles of what stands in one row
_FAR: Final = 8.0  # type sizes from row to row, from where on the column has ended: a few may be bare
_ASIDE: Final = 0.6  # of the way between the signs: how far from its sign a figure may stand
_FEW: Final = 3  # rows that make a column


@dataclass(frozen=True, slots=True)
class _Head:
    """Hold the middles of the two signs of a head, its foot and the size of its type."""

    shillings: float
    pence: float
    foot: float
    type_px: float


def join_shilling_columns(words: tuple[Word, ...]) -> tuple[Word, ...]:
    """Return the words of an advert with the figures under each head "s. d." put together row by row."""
    if not any(_PENCE.fullmatch(word.text) for word in words):
        return words
    slope = slope_of(words)
    places = [flattened(word.box, slope) for word in words]
    joined: dict[int, Word] = {}
    gone: set[int] = set()
    for head in _heads(words, places):
        rows = list(_rows(words, places, head))
        sums = [(row, text) for row in rows if (text := _sum(words, row))]
        if len(sums) < _FEW:
            continue
        for row, text in sums:
            numbers = sorted(n for n in row if n is not None)
            box = words[numbers[0]].box
            for n in numbers[1:]:
                box = box.joined(words[n].box)
            joined[numbers[0]] = replace(words[numbers[0]], text=text, box=box, form=None)
            gone.update(numbers[1:])
    return tuple(joined.get(n, word) for n, word in enumerate(words) if n not in gone)


def _heads(words: Sequence[Word], places: Sequence[Box]) -> Iterator[_Head]:
    """Yield every "s." with a "d." to its right in the row and no sign of pounds to its left."""
    for p, pence in enumerate(words):
        if not _PENCE.fullmatch(pence.text):
            continue
        row = [
            n
            for n, place in enumerate(places)
            if n != p and abs(place.centre[1] - places[p].centre[1]) < _ROW * pence.type_px
        ]
        left = sorted((n for n in row if places[n].x < places[p].x), key=lambda n: -places[n].x)
        if not left or not _SHILLINGS.fullmatch(words[left[0]].text):
            continue
        if len(left) > 1 and _POUNDS.fullmatch(words[left[1]].text):
            continue
        sign = places[left[0]]
        if places[p].centre[0] - sign.centre[0] < _WIDEST * pence.type_px:
            foot = max(sign.centre[1], places[p].centre[1])
            yield _Head(sign.centre[0], places[p].centre[0], foot, pence.type_px)


def _rows(words: Sequence[Word], places: Sequence[Box], head: _Head) -> Iterator[list[int | None]]:
    """Yield what stands under the two signs, row by row from the top down to the first wide gap."""
    step = head.pence - head.shillings
    cells: list[tuple[float, int, int]] = []  # height, column, word
    spoken = {(word.block, word.line) for word in words if any(c.isalpha() for c in word.text)}
    for n, word in enumerate(words):
        if (word.block, word.line) in spoken:
            continue  # the count of a head further down: "6 for"
        x, y = places[n].centre
        column = int(abs(x - head.pence) < abs(x - head.shillings))
        aside = abs(x - (head.pence if column else head.shillings))
        if y > head.foot + _ROW * head.type_px and aside < _ASIDE * step and _is_cell(word.text):
            cells.append((y, column, n))
    row: list[int | None] = [None, None]
    last = top = head.foot
    for y, column, n in sorted(cells):
        if y - last > _FAR * head.type_px:
            break
        if row != [None, None] and (y - top > _ROW * head.type_px or row[column] is not None):
            yield row
            row = [None, None]
        if row == [None, None]:
            top = y
        row[column] = n
        last = y
    if row != [None, None]:
        yield row


def _is_cell(text: str) -> bool:
    return any(pattern.fullmatch(text) for pattern in (_FIGURE, _WORN_HALF, _DASH))


def _sum(words: Sequence[Word], row: Sequence[int | None]) -> str | None:
    """Return the sum of a row in its usual print, None where its figures make none."""
    shillings, pence = (words[n].text.rstrip(".,") if n is not None else "" for n in row)
    pence = _WORN_HALF.sub(r"\1½", pence)
    if _DASH.fullmatch(shillings):
        shillings = ""
    if shillings and not shillings.isdecimal():
        return None
    if not pence or _DASH.fullmatch(pence):
        return f"{shillings}/-" if shillings else None
    figure = _FIGURE.fullmatch(pence)
    if figure is None or int(figure["n"]) >= _PENNIES:
        return None
    return f"{shillings}/{pence}" if shillings else f"{pence}d."

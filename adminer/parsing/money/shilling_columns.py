"""Sums set in columns under "s. d." or "£ s. d.": the figures of a row are put together as "1/10", "3½d.", "£1.2.6".

Lists of grocers and ironmongers name the signs once over the figures. The head tells what a lone figure is by the
column it stands in. Rows of pounds that were read as one line with their goods are left to `sterling_columns`.
Common practice, no source.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Final

from adminer.parsing.text.text import flattened, slope_of
from adminer.records import Box, Word

_SHILLINGS: Final = re.compile(r"[sS1358lI][.,]?")  # the old-style sign is misread for a figure
_PENCE: Final = re.compile(r"d[.,]?")
_POUNDS: Final = re.compile(r"[£LE][.,]?")
_FIGURE: Final = re.compile(r"(?P<n>\d{1,2})(?P<frac>[½¼¾])?[.,]?")
_WORN_HALF: Final = re.compile(r"(\d{1,2})(?:/2|%|1[25])")  # no sum stands under one sign: "7/2" and "915" are 7½, 9½
_SIGN: Final = 3  # letters of what is read for the sign between those of pounds and of pence
_DASH: Final = re.compile(r"[-–—]+")
_PENNIES: Final = 12
_SHILLINGS_OF: Final = 20  # a pound
_WIDEST: Final = 8.0  # type sizes between the two signs of one head
_ROW: Final = 0.6  # type sizes between the middles of what stands in one row
_FAR: Final = 8.0  # type sizes from row to row, from where on the column has ended: a few may be bare
_ASIDE: Final = 0.6  # of the way between the signs: how far from its sign a figure may stand
_FEW: Final = 3  # rows that make a column


@dataclass(frozen=True, slots=True)
class _Head:
    """Hold the middles of the signs of a head, its foot and the size of its type."""

    pounds: float | None
    shillings: float
    pence: float
    foot: float
    type_px: float

    @property
    def step(self) -> float:
        """Return the way from the sign of shillings to that of pence, in pixels."""
        return self.pence - self.shillings


def join_shilling_columns(words: tuple[Word, ...]) -> tuple[Word, ...]:
    """Return the words of an advert with the figures under each head "s. d." put together row by row."""
    if not any(_PENCE.fullmatch(word.text) for word in words):
        return words
    slope = slope_of(words)
    places = [flattened(word.box, slope) for word in words]
    joined: dict[int, Word] = {}
    gone: set[int] = set()
    heads = list(_heads(words, places))
    for head in heads:
        over = [h for h in heads if abs(h.pence - head.pence) < _ASIDE * head.step]
        end = min((h.foot for h in over if h.foot > head.foot + head.type_px), default=float("inf"))
        rows = list(_rows(words, places, head, end - _ROW * head.type_px))
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
    """Yield every "s." with a "d." to its right in the row, and the sign of pounds where one stands to its left."""
    for p, pence in enumerate(words):
        if not _PENCE.fullmatch(pence.text):
            continue
        row = [
            n
            for n, place in enumerate(places)
            if n != p and abs(place.centre[1] - places[p].centre[1]) < _ROW * pence.type_px
        ]
        left = sorted((n for n in row if places[n].x < places[p].x), key=lambda n: -places[n].x)
        over = next((n for n in left[1:2] if _POUNDS.fullmatch(words[n].text)), None)
        longest = _SIGN if over is not None else 0
        if not left or not (_SHILLINGS.fullmatch(words[left[0]].text) or len(words[left[0]].text) <= longest):
            continue
        sign = places[left[0]].centre
        if places[p].centre[0] - sign[0] < _WIDEST * pence.type_px:
            foot = max(sign[1], places[p].centre[1])
            pounds = None if over is None else places[over].centre[0]
            yield _Head(pounds, sign[0], places[p].centre[0], foot, pence.type_px)


def _rows(words: Sequence[Word], places: Sequence[Box], head: _Head, end: float) -> Iterator[list[int | None]]:
    """Yield what stands under the signs, row by row from the top down to the first wide gap or the next head."""
    signs = [head.shillings, head.pence] if head.pounds is None else [head.pounds, head.shillings, head.pence]
    empty: list[int | None] = [None] * len(signs)
    cells: list[tuple[float, int, int]] = []  # height, column, word
    spoken = {(word.block, word.line) for word in words if any(c.isalpha() for c in word.text)}
    for n, word in enumerate(words):
        if (word.block, word.line) in spoken:
            continue  # the count of a head further down: "6 for"
        x, y = places[n].centre
        column = min(range(len(signs)), key=lambda i: abs(x - signs[i]))
        aside = abs(x - signs[column])
        if head.foot + _ROW * head.type_px < y < end and aside < _ASIDE * head.step and _is_cell(word.text):
            cells.append((y, column, n))
    row = empty
    last = top = head.foot
    for y, column, n in sorted(cells):
        if y - last > _FAR * head.type_px:
            break
        if row != empty and (y - top > _ROW * head.type_px or row[column] is not None):
            yield row
            row = empty
        if row == empty:
            top = y
        row = [*row[:column], n, *row[column + 1 :]]
        last = y
    if row != empty:
        yield row


def _is_cell(text: str) -> bool:
    return any(pattern.fullmatch(text) for pattern in (_FIGURE, _WORN_HALF, _DASH))


def _sum(words: Sequence[Word], row: Sequence[int | None]) -> str | None:
    """Return the sum of a row in its usual print, None where its figures make none."""
    figures = [words[n].text.rstrip(".,") if n is not None else "" for n in row]
    pounds, shillings, pence = ("" if _DASH.fullmatch(figure) else figure for figure in ["", "", *figures][-3:])
    pence = _WORN_HALF.sub(r"\1½", pence) if _WORN_HALF.fullmatch(pence) else pence
    if (pounds and not pounds.isdecimal()) or (shillings and not shillings.isdecimal()):
        return None
    if pounds:
        if not shillings or int(shillings) >= _SHILLINGS_OF or not _is_pence(pence or "0"):
            return None
        return f"£{pounds}.{shillings}.{pence or 0}"
    if not pence:
        return f"{shillings}/-" if shillings else None
    if not _is_pence(pence):
        return None
    return f"{shillings}/{pence}" if shillings.strip("0") else f"{pence}d."


def _is_pence(text: str) -> bool:
    figure = _FIGURE.fullmatch(text)
    return figure is not None and int(figure["n"]) < _PENNIES

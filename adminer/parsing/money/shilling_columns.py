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

from adminer.parsing.text.slope import flattened, slope_of
from adminer.records import Box, Word

_SHILLINGS: Final = re.compile(r"[sS1358lI][.,]?")  # the old-style sign is misread for a figure
_PENCE: Final = re.compile(r"d[.,]?")
_POUNDS: Final = re.compile(r"[£LE][.,]?")
_FIGURE: Final = re.compile(r"(?P<n>\d{1,2})(?P<frac>[½¼¾])?[.,]?")
# no sum stands under one sign, nor more than eleven pence: "7/2", "915" and "65" are 7½, 9½ and 6½
_WORN_HALF: Final = re.compile(r"(\d{1,2})(?:/2|%|1[25])|(?P<pence>[2-9])[245]")
_SIGN: Final = 3  # letters of what is read for the sign between those of pounds and of pence
_DASH: Final = re.compile(r"[-–—]+")
_PENNIES: Final = 12
_SHILLINGS_OF: Final = 20  # a pound
_WIDEST: Final = 8.0  # type sizes between the two signs of one head
_ROW: Final = 0.6  # type sizes between the middles of what stands in one row
_FAR: Final = 8.0  # type sizes from row to row, from where on the column has ended: a few may be bare
_ASIDE: Final = 0.6  # of the way between the signs: how far from its sign a figure may stand
_BESIDE: Final = 1.2  # the same right of the last sign
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
    def signs(self) -> tuple[float, ...]:
        """Return the middles of the signs from left to right."""
        pounds = () if self.pounds is None else (self.pounds,)
        return (*pounds, self.shillings, self.pence)

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
    columns: list[list[tuple[list[int | None], str]]] = []
    for head in heads:
        over = [h for h in heads if abs(h.pence - head.pence) < _ASIDE * head.step]
        end = min((h.foot for h in over if h.foot > head.foot + head.type_px), default=float("inf"))
        rows = _rows(words, places, head, heads, end - _ROW * head.type_px)
        columns.append([(row, text) for row in rows if (text := _sum(words, row))])
    if not any(len(sums) >= _FEW for sums in columns):
        return words  # a head over enough rows speaks for those over few
    for sums in columns:
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


def _rows(
    words: Sequence[Word], places: Sequence[Box], head: _Head, heads: Sequence[_Head], end: float
) -> Iterator[list[int | None]]:
    """Yield what stands under the signs, row by row from the top down to the first wide gap or the next head."""
    cells: list[tuple[float, int]] = []  # height, word
    spoken = {(word.block, word.line) for word in words if any(c.isalpha() for c in word.text)}
    for n, word in enumerate(words):
        if (word.block, word.line) in spoken:
            continue  # the count of a head further down: "6 for"
        x, y = places[n].centre
        if head.foot + _ROW * head.type_px < y < end and _is_cell(word.text) and _belongs(x, head, heads):
            cells.append((y, n))
    rows: list[list[int]] = []
    last = top = head.foot
    for y, n in sorted(cells):
        if y - last > _FAR * head.type_px:
            break
        if not rows or y - top > _ROW * head.type_px:
            rows.append([])
            top = y
        rows[-1].append(n)
        last = y
    rows = [sorted(row, key=lambda n: places[n].x) for row in rows]
    full = [row for row in rows if len(row) == len(head.signs)]
    ends = [_middle([places[row[i]].right for row in full]) for i in range(len(head.signs))] if full else []
    for row in rows:
        yield list(row) if row in full else _by_place(places, row, head, ends)


def _belongs(x: float, head: _Head, heads: Sequence[_Head]) -> bool:
    """Say whether a figure stands under a head: figures set to the right edge of a column stand right of its sign."""
    if not -_ASIDE * head.step < x - head.signs[0] < head.signs[-1] - head.signs[0] + _BESIDE * head.step:
        return False
    away = min(abs(x - sign) for sign in head.signs)
    beside = [h for h in heads if abs(h.foot - head.foot) < head.type_px and h is not head]
    return all(away <= abs(x - sign) for other in beside for sign in other.signs)


def _by_place(places: Sequence[Box], row: Sequence[int], head: _Head, ends: Sequence[float]) -> list[int | None]:
    """Return the figures of a row that lacks some, each where the full rows have their column, else under its sign."""
    placed: list[int | None] = [None] * len(head.signs)
    for n in row:
        at, marks = (places[n].right, ends) if ends else (places[n].centre[0], head.signs)
        column = min(range(len(marks)), key=lambda i: abs(at - marks[i]))
        if abs(at - marks[column]) < _ASIDE * head.step and placed[column] is None:
            placed[column] = n
    return placed


def _middle(values: Sequence[float]) -> float:
    return sorted(values)[len(values) // 2]


def _is_cell(text: str) -> bool:
    return any(pattern.fullmatch(text) for pattern in (_FIGURE, _WORN_HALF, _DASH))


def _sum(words: Sequence[Word], row: Sequence[int | None]) -> str | None:
    """Return the sum of a row in its usual print, None where its figures make none."""
    figures = [words[n].text.rstrip(".,") if n is not None else "" for n in row]
    pounds, shillings, pence = ("" if _DASH.fullmatch(figure) else figure for figure in ["", "", *figures][-3:])
    if (worn := _WORN_HALF.fullmatch(pence)) is not None:
        pence = f"{worn[1] or worn['pence']}½"
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

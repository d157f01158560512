"""Lists whose rows tell only a size or a ditto mark: "6 in.", "8", "10" under "FILES, FLAT", "do. 4 in.", "14 qt.".

Such a row goes on with the goods of the row above, or where none are named there with the heading over the rows.
Common practice of printed price lists, no source.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

from adminer.parsing.prices.column_heads import shares_row
from adminer.parsing.prices.prices import Found
from adminer.parsing.tables.measured_rows import Row, columns_of, left_of, words_left_of
from adminer.parsing.tables.row_labels import is_term
from adminer.parsing.tables.stubs import stub_over
from adminer.parsing.tables.table_rows import name_of_row, row_segment
from adminer.parsing.text.cells import Cell
from adminer.parsing.text.column_words import kind_of_head
from adminer.parsing.text.goods import has_goods
from adminer.parsing.text.text import AdvertText, TextLine

_UNIT: Final = r"(?:in|inch|ins|ft|qt|q[Ll1i]|pt|gal|oz|lb|yd|doz|cwt)\b\.?"
_BARE: Final = re.compile(
    rf"(?:No[.:]? ?)?\d{{1,3}}[½¼¾]?(?: ?(?P<unit>{_UNIT}))?|"
    r"\d{1,3}[½¼¾]? ?[x×] ?\d[\d ½¼¾]{0,4}(?: ?[a-z]{1,3}\.?)?",  # whatever is read of its fraction and unit
    re.IGNORECASE,
)
_DITTO: Final = re.compile(r"(?:do\.?|ditto|[\"”“„]{1,2})(?:,? +(?P<rest>\S.*))?", re.IGNORECASE)
_SIZE: Final = re.compile(rf"[ ,.]*\b(?:No[.:]? ?\d{{1,3}}|\d{{1,3}}[½¼¾]? ?{_UNIT}).*$", re.IGNORECASE)
_FEWEST: Final = 2  # rows that tell nothing but a size, which make such a list
_OVER: Final = 6.0  # type sizes between a heading and the first row under it: heads of columns may stand between
_STEP: Final = 2.2  # type sizes from row to row
SECTION: Final = re.compile(r" (?:and|&) ", re.IGNORECASE)  # "FISH and MEATS" over both is no name of either
_LARGER: Final = 1.2
_ALL_SIZES: Final = 3  # rows of a list that has no heading but the title of its advert
_TITLE: Final = 1.4  # times the type of the rows
_QUALIFIER: Final = 5  # words of a row that only qualifies the goods of its heading
_HEAD_LETTERS: Final = 4


@dataclass(frozen=True, slots=True)
class _Entry:
    """Hold one row: its label as one cell, its text, and the prices on it."""

    label: Cell
    text: str
    prices: tuple[Found, ...]

    @property
    def goes_on(self) -> bool:
        """Say whether a row names nothing itself."""
        return _BARE.fullmatch(self.text) is not None or _DITTO.fullmatch(self.text) is not None


def size_rows(
    advert: AdvertText, cells: Sequence[Cell], prices: Sequence[Found]
) -> tuple[list[Row], list[tuple[int, int]]]:
    """Return the rows of lists of sizes as items with the first characters of their prices, and their characters."""
    rows: list[Row] = []
    spans: list[tuple[int, int]] = []
    done: set[int] = set()
    for column in columns_of(advert, prices):
        for run in _runs(advert, _entries(advert, column, cells, prices)):
            if sum(entry.goes_on for entry in run) < _FEWEST and not _only_qualify(advert, run):
                continue
            for entry, name in zip(run, _names(advert, run), strict=True):
                starts = frozenset(p.start for p in entry.prices) - done
                if name and starts:
                    rows.append((row_segment(advert, entry.label, name, None), starts))
                    spans.append((entry.label.start, entry.label.end))
                    done |= starts
    return rows, spans


def _entries(
    advert: AdvertText, column: Sequence[Found], cells: Sequence[Cell], prices: Sequence[Found]
) -> list[_Entry]:
    """Return the rows of a column of prices that have words at their left, with the prices set beside its own."""
    found = []
    for price in column:
        left = words_left_of(advert, price, cells, prices)
        if not left or any(c.line.number != left[0].line.number for c in left):
            continue
        first, end = left[0], max(c.end for c in left)  # a unit before the price may have been cut from its cell
        flat = first.flat
        for cell in left[1:]:
            flat = flat.joined(cell.flat)
        label = replace(first, end=end, text=advert.text[first.start : end], flat=flat)
        beside = [
            p
            for p in prices
            if p is not price
            and p.place.x > price.place.right
            and shares_row(p.place, price.place)
            and left_of(advert, p, cells, prices) == []
        ][:1]
        text = label.text.strip(" .,…·")
        found.append(_Entry(label, text if _BARE.fullmatch(text) else name_of_row(text), (price, *beside)))
    return found


def _runs(advert: AdvertText, entries: Sequence[_Entry]) -> list[list[_Entry]]:
    """Return the rows of a column parted where a heading stands between two of them."""
    runs: list[list[_Entry]] = []
    for entry in entries:
        if not runs or _heading(advert, entry, below=runs[-1][-1].label.flat.centre[1]) is not None:
            runs.append([])
        runs[-1].append(entry)
    return runs


def _only_qualify(advert: AdvertText, run: Sequence[_Entry]) -> bool:
    """Say whether a heading names goods and no row under it does: "NAILS" over "8d", "6d", "3d fine"."""
    line = _heading(advert, run[0])
    if line is None or len(run) < _FEWEST or not has_goods(advert.printed(line)):
        return False
    told = all(any(c.isdigit() for c in entry.text) for entry in run)
    return told and not any(has_goods(entry.text) for entry in run)


def _names(advert: AdvertText, run: Sequence[_Entry]) -> list[str]:
    """Return the full name of each row, empty for a row that names its goods itself."""
    line = _heading(advert, run[0])
    head = stub_over(advert, run[0].label.line, run[0].label.flat)
    head = head or (_goods_of(advert.printed(line)) if line is not None else _title_over(advert, run))
    if SECTION.search(head):
        head = ""
    names: list[str] = []
    stem = _stem_over(advert, run[0]) if _DITTO.fullmatch(run[0].text) else ""
    unit = ""
    for entry in run:
        bare, ditto = _BARE.fullmatch(entry.text), _DITTO.fullmatch(entry.text)
        if ditto is not None:
            rest = ditto["rest"] or ""
            names.append(f"{stem or head} {rest}".strip() if stem or head else "")
        elif bare is not None:
            unit = bare["unit"] or unit
            told = entry.text if bare["unit"] or not unit or "o" in entry.text.lower() else f"{entry.text} {unit}"
            names.append(f"{stem or head}, {told}" if stem or head else "")
        elif head and not has_goods(entry.text) and len(entry.text.split()) <= _QUALIFIER:
            names.append(f"{head}, {entry.text}")
            stem = _SIZE.sub("", names[-1])
        else:
            names.append("")
            stem = _SIZE.sub("", entry.text.split(",", maxsplit=1)[0])
    return names


def _title_over(advert: AdvertText, run: Sequence[_Entry]) -> str:
    """Return the goods named in display type nearest over a list that tells nothing but sizes; empty where none are."""
    if sum(_BARE.fullmatch(entry.text) is not None for entry in run) < _ALL_SIZES:
        return ""
    row, right = run[0].label, run[0].prices[0].place.right
    names = [
        (line.flat.centre[1], _goods_of(advert.printed(line)).split(",", maxsplit=1)[0].strip())
        for line in advert.lines
        if line.flat.centre[1] < row.flat.y
        and line.type_px > _TITLE * row.line.type_px
        and min(line.flat.right, right) > max(line.flat.x, row.flat.x)
    ]
    return max(((y, name) for y, name in names if has_goods(name)), default=(0.0, ""))[1]


def _stem_over(advert: AdvertText, entry: _Entry) -> str:
    """Return the goods of the row right over a row, though its price stands in no column with the others."""
    row = entry.label.flat
    over = [
        line
        for line in advert.lines
        if 0 < row.centre[1] - line.flat.centre[1] < _STEP * entry.label.line.type_px
        and abs(line.flat.x - row.x) < entry.label.line.type_px
    ]
    above = max(over, key=lambda line: line.flat.centre[1], default=None)
    return _SIZE.sub("", name_of_row(advert.printed(above)).split(",", maxsplit=1)[0]) if above is not None else ""


def _goods_of(heading: str) -> str:
    """Return a heading without the quantity its prices are for: "NAILS, per pound"."""
    return re.split(r",? \(?per\b", name_of_row(heading), maxsplit=1)[0]


def _heading(advert: AdvertText, entry: _Entry, *, below: float | None = None) -> TextLine | None:
    """Return the heading right over a row: larger or in capitals, on no row with a price, `below` a height."""
    row = entry.label
    right = entry.prices[0].place.right
    over: list[TextLine] = []
    for line in advert.lines:
        step = row.flat.centre[1] - line.flat.centre[1]
        across = min(line.flat.right, right) - max(line.flat.x, row.flat.x)
        if 0.5 * row.line.type_px < step < _OVER * row.line.type_px and across > 0.5 * line.flat.w:
            over.append(line)
    heads = [line for line in over if _is_heading(advert, line, row.line)]
    best = max(heads, key=lambda line: line.flat.centre[1], default=None)
    if best is None or (below is not None and best.flat.centre[1] <= below):
        return None
    return best


def _is_heading(advert: AdvertText, line: TextLine, row: TextLine) -> bool:
    text = advert.printed(line)
    letters = sum(c.isalpha() for c in text)
    if letters < _HEAD_LETTERS or kind_of_head(text) is not None or is_term(text):
        return False
    name = _goods_of(text)
    larger = line.type_px >= _LARGER * row.type_px and name[:1].isupper()
    return not _BARE.match(text) and (name.isupper() or larger)

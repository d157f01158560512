"""An answer on a narrow terminal: the columns that fit stand as a table, the others on a line below each row."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence
from typing import Final

from rich.cells import cell_len, set_cell_size
from rich.text import Text

_GAP: Final = 2
_WIDEST: Final = 26  # of one column; a longer text is cut there and stands whole below
_INDENT: Final = "    "


def natural_width(names: Sequence[str], rows: Sequence[Sequence[str]]) -> int:
    """Return how many characters wide the answer is when no cell is broken."""
    return sum(_widths(names, rows)) + _GAP * (len(names) - 1)


def narrow_lines(names: Sequence[str], rows: Sequence[Sequence[str]], right: Sequence[bool], width: int) -> list[Text]:
    """Lay the answer out in lines of at most `width` characters where words allow it; `right` marks numbers."""
    widths = [min(wide, _WIDEST) for wide in _widths(names, rows)]
    above: list[int] = []
    used = -_GAP
    for number, wide in enumerate(widths):
        if used + _GAP + wide <= width:
            above.append(number)
            used += _GAP + wide
    above = above or [0]
    headings = [_broken(name) for name in names]
    tall = max(len(headings[number]) for number in above)
    headings = [[""] * (tall - len(heading)) + heading for heading in headings]
    lines = [
        Text(
            _row([heading[level] if level < len(heading) else "" for heading in headings], above, widths, right), "bold"
        )
        for level in range(tall)
    ]
    for row in rows:
        lines.append(Text(_row(row, above, widths, right)))
        whole = {number for number in above if cell_len(row[number]) <= widths[number]}
        said = "; ".join(f"{names[n]} {cell}" for n, cell in enumerate(row) if cell and n not in whole)
        for line in textwrap.wrap(
            said, width, initial_indent=_INDENT, subsequent_indent=_INDENT, break_on_hyphens=False
        ):
            lines.append(Text(line, "dim"))
    return lines


def _widths(names: Sequence[str], rows: Sequence[Sequence[str]]) -> list[int]:
    headings = [max(map(cell_len, _broken(name))) for name in names]
    return [max([wide, *(cell_len(row[number]) for row in rows)]) for number, wide in enumerate(headings)]


def _broken(name: str) -> list[str]:
    """Break a heading between words, so that it makes no column wider than its longest word."""
    return name.split(" ")


def _row(cells: Sequence[str], above: Sequence[int], widths: Sequence[int], right: Sequence[bool]) -> str:
    parts = []
    for number in above:
        cell, wide = cells[number], widths[number]
        if cell_len(cell) > wide:
            cell = set_cell_size(cell, wide - 1) + "…"
        parts.append(" " * (wide - cell_len(cell)) + cell if right[number] else set_cell_size(cell, wide))
    return (" " * _GAP).join(parts).rstrip()

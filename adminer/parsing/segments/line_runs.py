"""How lines of type follow each other: columns of running text, and the indents that open paragraphs."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from typing import Final

from adminer.parsing.prices.prices import Found
from adminer.parsing.text.item_words import WORD
from adminer.parsing.text.text import AdvertText, TextLine

_COLUMN: Final = 4  # lines of a column of running text, at least
_FEWEST: Final = 3  # prices of a column before its texts
_BEHIND: Final = 8.0  # type sizes of white between a price and its text: what stands further is of another column
_FEW_STARTS: Final = 3  # lines after a price that tell how paragraphs open


def running_lines(advert: AdvertText, rows: set[int]) -> frozenset[int]:
    """Return the lines of running text: four or more close under each other, few with a price on their row."""
    found: set[int] = set()
    run: list[int] = []
    for line in [*advert.lines, None]:
        if line is not None and run and _is_close_under(advert.lines[run[-1]], line):
            run.append(line.number)
            continue
        if len(run) >= _COLUMN and sum(n in rows for n in run) <= len(run) / 2:
            found.update(run)
        run = [line.number] if line is not None else []
    return frozenset(found)


def _is_close_under(above: TextLine, below: TextLine) -> bool:
    size = min(above.type_px, below.type_px)
    if max(above.type_px, below.type_px) > 1.5 * size:
        return False
    step = below.flat.centre[1] - above.flat.centre[1]
    return abs(above.flat.x - below.flat.x) < 2 * size and 0.4 * size < step < 2.2 * size


def rows_behind_prices(advert: AdvertText, prices: Sequence[Found]) -> dict[int, int]:
    """Return the line that begins a row behind its price by where the price starts, of columns of prices before texts.

    "25c  Tomato Soup" over "19c  Pink Salmon": nothing stands before the prices, and their texts are set from one edge.
    """
    rows = [(price, line) for price in prices if (line := _line_behind(advert, price)) is not None]
    return {
        price.start: line.number
        for price, line in rows
        if sum(_aligned(price, other) and _flush(line, own) for other, own in rows) >= _FEWEST
    }


def _aligned(one: Found, other: Found) -> bool:
    edge = min(abs(one.place.x - other.place.x), abs(one.place.right - other.place.right))
    return edge < 0.5 * one.type_px and 1 / 1.5 < one.type_px / max(other.type_px, 1.0) < 1.5


def _flush(one: TextLine, other: TextLine) -> bool:
    """Say whether two lines are set from one edge."""
    return abs(one.flat.x - other.flat.x) < one.type_px


def _line_behind(advert: AdvertText, price: Found) -> TextLine | None:
    """Return the nearest line right of a price alone in its own, None where a text stands before the price."""
    own = advert.lines[price.line]
    if WORD.search(advert.text[own.start : price.start] + " " + advert.text[price.end : own.end]):
        return None
    row = [n for n in advert.lines if n is not own and n.flat.same_row(price.place)]
    if any(n.flat.x < price.place.x for n in row):
        return None
    near = price.place.right + _BEHIND * max(price.type_px, own.type_px)
    return min((n for n in row if price.place.right <= n.flat.x < near), key=lambda n: n.flat.x, default=None)


def indent_of(advert: AdvertText, line: TextLine) -> float:
    """Return how far a line starts inside its column, in its type size; 0 where it is centred or at the edge."""
    size = max(line.type_px, 1.0)
    near = [
        other
        for other in advert.lines[max(line.number - 4, 0) : line.number + 5]
        if other.flat.across(line.flat) > 0.3 * min(other.flat.w, line.flat.w) and 0.7 < other.type_px / size < 1.4
    ]
    indent = line.flat.x - min(other.flat.x for other in near)
    short = max(other.flat.right for other in near) - line.flat.right
    return indent / size if 0.7 * size < indent < 4 * size and short < 0.6 * indent else 0.0


def indents_starts(advert: AdvertText, taken: list[tuple[int, int]]) -> bool:
    """Say whether paragraphs open with an indent here: whether lines after a price are mostly set in."""
    ends = {end for _, end in taken}
    starts = [two for one, two in pairwise(advert.lines) if any(one.end - 2 <= end <= one.end for end in ends)]
    indented = sum(indent_of(advert, line) > 0 for line in starts)
    return len(starts) >= _FEW_STARTS and indented > len(starts) / 2

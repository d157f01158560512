"""The rows of a list: labels set from one edge, prices that end at one, each price for the label on its row.

"Cleaning ..... $1.00" over "Main Springs ..... .75": that a label stands in such a list says more than whether its
words are known goods. Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass
from typing import Final

from adminer.parsing.items.assign import Pairing
from adminer.parsing.items.leaning import leans
from adminer.parsing.prices.prices import Found
from adminer.parsing.segments.items import Segment
from adminer.parsing.segments.postage import POSTAGE
from adminer.parsing.tables.price_lists import ON_ROW as ON_TABLE_ROW
from adminer.parsing.text.cells import Cell
from adminer.parsing.text.item_words import WORD
from adminer.parsing.text.naming import is_sentence
from adminer.parsing.text.text import AdvertText

LIST_ROW: Final = "the label on the row of the price, in a list of such rows"
_ROWS: Final = 3  # that make a list
_EDGE: Final = 0.8  # type sizes that labels or prices may be off their edge
_ONE_SIZE: Final = 1.4  # between the types of two rows
_INDENT: Final = 2.5  # type sizes that the second line of a label is set in, at most
_TALLEST: Final = 1.8  # times the type of its label, a price with a raised figure
_REACH: Final = 9.0  # type sizes from one row of a list to another that vouches for it
_SURE: Final = frozenset({POSTAGE, ON_TABLE_ROW})


@dataclass(frozen=True, slots=True)
class _Row:
    price: Found
    label: Cell


def with_list_rows(
    advert: AdvertText,
    groups: Sequence[Sequence[Found]],
    pairings: Sequence[Pairing],
    segments: Sequence[Segment],
    cells: Sequence[Cell],
) -> list[Pairing]:
    """Return the pairings, those of prices in a list given the label of their row instead of a text outside it."""
    rows = _rows_of(advert, groups, cells)
    listed = {g: row for g, row in rows.items() if _vouched(row, rows.values())}
    made = list(pairings)
    for g, row in listed.items():
        if pairings[g].why in _SURE or _stands_in_row(pairings[g], row, listed.values()):
            continue
        name = _name_in(row.label, segments)
        if name is not None:
            made[g] = Pairing(name, pairings[g].cost, LIST_ROW)
    return made


def _rows_of(advert: AdvertText, groups: Sequence[Sequence[Found]], cells: Sequence[Cell]) -> dict[int, _Row]:
    """Return the cell left of each group of prices that stands apart from the words before it, by its number."""
    prices = [found for group in groups for found in group]
    priced, free = list[Cell](), list[Cell]()
    for cell in cells:
        if WORD.search(cell.text):
            own = any(cell.start < p.end and p.start < cell.end for p in prices)
            (priced if own else free).append(cell)
    rows: dict[int, _Row] = {}
    for g, group in enumerate(groups):
        first = min(group, key=lambda found: found.start)
        if any(c.start < first.start < c.end and WORD.search(advert.text, c.start, first.start) for c in priced):
            continue
        left = [c for c in free if c.flat.same_row(first.place) and c.flat.right <= first.place.x + 2]
        nearest = max(left, key=lambda c: c.flat.right, default=None)
        if nearest is not None and not any(
            p.place.same_row(first.place) and nearest.flat.right <= p.place.x < first.place.x for p in prices
        ):
            rows[g] = _Row(first, nearest)
    return rows


def _vouched(row: _Row, rows: Collection[_Row]) -> bool:
    return sum(_in_one_list(row, other) for other in rows) >= _ROWS


def _in_one_list(one: _Row, other: _Row) -> bool:
    size = one.price.type_px
    return (
        1 / _ONE_SIZE < other.price.type_px / max(size, 1.0) < _ONE_SIZE
        and abs(one.price.place.right - other.price.place.right) < _EDGE * size
        and abs(one.label.flat.x - other.label.flat.x) < _EDGE * size
        and _is_label(one)
        and abs(one.label.flat.y - other.label.flat.y) < _REACH * size
    )


def _is_label(row: _Row) -> bool:
    """Say whether a price is set as large as its label; beside a display price stands no row of a list."""
    return row.price.type_px < _TALLEST * row.label.line.type_px


def _stands_in_row(pairing: Pairing, row: _Row, rows: Collection[_Row]) -> bool:
    """Say whether a chosen text stands on the row, or between the rows before and after, as a long label does."""
    segment = pairing.segment
    if segment is None:
        return False
    foot = segment.last
    if foot.same_row(row.label.flat):
        return foot.x < row.price.place.x
    above = [r.label.flat.y for r in rows if r.label.flat.y < row.label.flat.y and _in_one_list(r, row)]
    below = [r.label.flat.y for r in rows if r.label.flat.y > row.label.flat.y and _in_one_list(r, row)]
    between = max(above, default=0) < segment.first.y < min(below, default=segment.first.y + 1)
    return between and abs(segment.first.x - row.label.flat.x) < _INDENT * row.price.type_px


def _name_in(label: Cell, segments: Sequence[Segment]) -> Segment | None:
    """Return the text of a label that names goods, else its first that names anything."""
    own = [s for s in segments if label.start <= s.start and s.end <= label.end + 1 and s.content > 0 and not s.bare]
    own = [s for s in own if not is_sentence(s.text)]
    return next((s for s in own if s.goods), next((s for s in own if not leans(s.text)), None))

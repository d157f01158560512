"""What the table of a price list gives its prices: lost points, the quantity of the column, the item of the row."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from functools import partial
from typing import Final

from adminer.parsing.money.amounts import NUMBER_WORDS, Amount
from adminer.parsing.prices.prices import Found, make_price
from adminer.parsing.segments.items import Segment
from adminer.parsing.tables.grade_tables import grade_rows
from adminer.parsing.tables.measured_rows import Row, measured_rows
from adminer.parsing.tables.plain_tables import plain_rows
from adminer.parsing.tables.quantity_tables import quantity_rows
from adminer.parsing.tables.size_rows import size_rows
from adminer.parsing.tables.table_heads import Column, Heads, find_tables
from adminer.parsing.tables.table_rows import row_segment
from adminer.parsing.tables.tables import TableRow, rows_of
from adminer.parsing.text.cells import Cell
from adminer.parsing.text.stretches import is_taken
from adminer.parsing.text.text import AdvertText

ON_ROW: Final = "in the column of names of the price list, on the row of the price"
_PER: Final = re.compile(r"\bper\s*(?P<n>1[,.]?000|100|dozen|doz\b\.?|gross|hundred|thousand)", re.IGNORECASE)
_COUNTS: Final = {"100": 100, "hundred": 100, "1000": 1000, "thousand": 1000}
_EACH: Final = re.compile(r"\beach\b", re.IGNORECASE)
_POINTED: Final = re.compile(r"\d{0,3}\.\d\d")
_FIGURE: Final = re.compile(r"[.\s]*(?P<dollars>\d{0,3}?)[ .,]?(?P<cents>\d\d)[.\s]*")
_CENTS: Final = re.compile(r"\d[½¼¾]?(?:¢|c\b)")
_MOST: Final = 0.5  # of the figures of a table without a point: fewer have lost theirs
_TRUST: Final = 0.6
_DITTO: Final = re.compile(r"^(?:[\"”“„'’`,.]{1,4}|do\.?|ditto)$", re.IGNORECASE)
_DITTO_WITH: Final = re.compile(r"^(?:[\"”“„]{1,2}|do\.|ditto)[ ,]+(?P<rest>\w.*)$", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class PriceList:
    """Hold the rows of a price list, each as the item of its prices, and the characters the table takes up."""

    rows: tuple[tuple[Segment, frozenset[int]], ...]  # with the first characters of the prices of the row
    spans: tuple[tuple[int, int], ...]
    names: tuple[tuple[int, int, str], ...]  # the cells in columns of names, and the word over them in lower case

    def item_of(self, group: Sequence[Found]) -> Segment | None:
        """Return the row a group of prices stands in, None for prices outside the table."""
        return next((row for row, starts in self.rows if group[0].start in starts), None)

    def join_rows(self, groups: Sequence[list[Found]]) -> list[list[Found]]:
        """Return the groups with all prices of a row in one: they are one item's, by quantity or finish.

        Prices for the grades of a table of sizes are each for an item of their own.
        """
        joined: list[list[Found]] = []
        rows: dict[int, list[Found]] = {}
        for group in self._parted(groups):
            row = self.item_of(group)
            if row is not None and id(row) in rows:
                rows[id(row)] += group
                continue
            joined.append(list(group))
            if row is not None:
                rows[id(row)] = joined[-1]
        return [sorted(group, key=lambda p: p.start) if self.item_of(group) else group for group in joined]

    def _parted(self, groups: Sequence[list[Found]]) -> list[list[Found]]:
        parted: list[list[Found]] = []
        for group in groups:
            by_row: dict[int, list[Found]] = {}
            for price in group:
                by_row.setdefault(id(self.item_of([price])), []).append(price)
            parted += by_row.values()
        return parted

    def replace_segments(self, segments: Sequence[Segment]) -> list[Segment]:
        """Return the segments with those that stand in the table changed for its rows."""
        outside = [s for s in segments if not any(a < s.end and s.start < b for a, b in self.spans)]
        return sorted([*outside, *(row for row, _ in self.rows)], key=lambda s: s.start)


def read_price_list(
    advert: AdvertText,
    prices: list[Found],
    cells: Sequence[Cell],
    proper: frozenset[str] = frozenset(),
    weights: Sequence[tuple[int, int]] = (),
) -> tuple[PriceList | None, list[Found]]:
    """Return the table of a price list, None where there is none, and the prices as its columns have them.

    Words of `proper` (lower case) are never taken for misread words of the trade; the characters of `weights` are
    cells that tell what an article weighs.
    """
    cells = [c for c in cells if not any(a <= c.start < b for a, b in weights)]
    rows: list[Row] = []
    spans: list[tuple[int, int]] = []
    names: list[tuple[int, int, str]] = []
    for heads in find_tables(advert, cells, prices):
        prices = _in_columns(advert, heads, cells, prices)
        printed = rows_of(heads, cells, prices)
        made = _items(advert, printed, prices)
        starts = frozenset().union(*(found for _, found in made))
        prices = [_with_quantity(heads, p) if p.start in starts else p for p in prices]
        rows += made
        spans += [(c.start, c.end) for row in printed for c in row.cells]
        spans += [(c.start, c.end) for c in cells if any(c.flat.joined(h.place) == h.place for h in heads.columns)]
        names += [(row.name.start, row.name.end, heads.name) for row in printed if row.name]
    for find in (quantity_rows, grade_rows, measured_rows, size_rows, partial(plain_rows, names=proper)):
        named = frozenset().union(*(starts for _, starts in rows))
        made, told = find(advert, cells, [p for p in prices if p.start not in named])
        rows, spans = [*rows, *made], [*spans, *told]
    return PriceList(tuple(rows), tuple(spans), tuple(names)) if rows or spans else None, prices


def _items(advert: AdvertText, rows: Sequence[TableRow], prices: Sequence[Found]) -> list[Row]:
    """Return the item of each row with the first characters of its prices; one without a name goes on with the last."""
    made: list[Row] = []
    name = ""
    for row in rows:
        own = row.name if row.name and not _DITTO.match(row.name.text) else None
        at = own or row.size
        name = _with_name_above(own.text, name) if own else name
        if at is None or not name:
            continue
        mine = frozenset(p.start for c in row.cells for p in prices if c.start <= p.start < c.end)
        made.append((row_segment(advert, at, name, row.size), mine))
    return made


def _with_name_above(name: str, above: str) -> str:
    """Return the name of a row, a ditto mark at its head replaced by what the name above begins with.

    "Ditto, cut star" under "Table tumbler, plain" is a table tumbler, cut star.
    """
    m = _DITTO_WITH.match(name)
    return f"{above.split(',', maxsplit=1)[0]}, {m['rest']}" if m and above else name


def _in_columns(advert: AdvertText, heads: Heads, cells: Sequence[Cell], prices: list[Found]) -> list[Found]:
    """Give figures in columns of prices their lost points; under "Size" stand no prices."""
    figures = [c for c in cells if _FIGURE.fullmatch(c.text) and _is_price(heads.column_of(c.flat))]
    lost = [c for c in figures if not _POINTED.fullmatch(c.text)]
    mended = [_figure(advert, c) for c in lost] if len(lost) < _MOST * len(figures) else []
    kept = []
    for price in prices:
        if is_taken(price.start, price.end, mended):
            continue
        column = heads.column_of(price.place)
        if column is None or _is_price(column) or "$" in price.text or _in_cents(column, price):
            kept.append(price)
    return sorted([*kept, *mended], key=lambda p: p.start)


def _in_cents(column: Column, price: Found) -> bool:
    """Say whether a price has a cent sign, and stands where that tells: under a head of sizes "10¢" may be 10 in."""
    return column.kind == "other" and _CENTS.search(price.text) is not None


def _is_price(column: Column | None) -> bool:
    return column is not None and column.kind == "price"


def _figure(advert: AdvertText, cell: Cell) -> Found:
    """Return the price of a cell whose point was lost or doubled: the last two figures are cents, as in its column."""
    m = _FIGURE.fullmatch(cell.text)
    dollars, cents = (m["dollars"] or "0", m["cents"]) if m else ("0", "00")
    amount = Decimal(f"{dollars}.{cents}")
    return make_price(advert, Amount(cell.start, cell.end, amount, "USD", "bare", _TRUST))


def _with_quantity(heads: Heads, price: Found) -> Found:
    """Give a price the quantity its head tells, else the one told over the table ("Net Prices per Dozen")."""
    column = heads.column_of(price.place)
    if column is None or column.kind != "price":
        return price
    word = column.head.lower().strip(" .:")
    own = _PER.search(column.head)
    if own is None and (_EACH.search(word) or word in NUMBER_WORDS):
        quantity = Decimal(NUMBER_WORDS.get(word, 1))
        return replace(price, amount=replace(price.amount, quantity=quantity, unit=price.amount.unit or "each"))
    m = own or _PER.search(heads.over)
    if m is None:
        return price
    count = m["n"].lower().replace(",", "").replace(".", "")
    if count in _COUNTS:
        amount = replace(price.amount, quantity=Decimal(_COUNTS[count]))
    else:
        amount = replace(price.amount, unit="gross" if count == "gross" else "doz")
    return replace(price, amount=amount, condition_text=column.head if own else m[0])

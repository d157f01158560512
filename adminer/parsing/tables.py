"""Price lists of the trade: tables with a head row ("No., Design, Size, per 100, per 1000").

The name of a row stands in the column headed so, wherever the price columns are; a head over a price column may
give the quantity its prices are for.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from decimal import Decimal
from typing import Final

from rapidfuzz import fuzz, process

from adminer.parsing.prices import Found
from adminer.parsing.text import AdvertText, TextLine

_NAME_HEADS: Final = ("design", "article", "pattern", "name", "item", "description", "decoration", "piece", "articles")
_OTHER_HEADS: Final = (
    "no.", "number", "size", "sizes", "price", "each", "per 100", "per 1000", "per dozen", "doz.", "white", "decorated",
    "plain", "gold", "weight", "list", "net", "per gross", "color", "colors",
)  # fmt: skip
_NO_PRICES: Final = ("size", "sizes", "no.", "number", "weight")
_ALIKE: Final = 80  # rapidfuzz ratio
_PER: Final = re.compile(r"per\s*(?P<n>1[,.]?000|100|dozen|doz\.?|gross|hundred|thousand)", re.IGNORECASE)
_COUNTS: Final = {"100": 100, "hundred": 100, "1000": 1000, "thousand": 1000}


@dataclass(frozen=True, slots=True)
class PriceTable:
    """Hold a table: which lines are names, and the head over each price column by its middle in pixels."""

    names: frozenset[int]  # numbers of the lines in the name column
    heads: tuple[tuple[float, str], ...]
    top: int
    head: str = ""  # the word over the names, lower case


def find_table(advert: AdvertText) -> PriceTable | None:
    """Return the table of a price list, None where no row of heads names its columns."""
    for head in advert.lines:
        if not _is_head(advert, head, _NAME_HEADS):
            continue
        row = [
            line
            for line in advert.lines
            if line is not head and _one_row(line, head) and _is_head(advert, line, _OTHER_HEADS)
        ]
        if len(row) < 2:
            continue
        right = min((line.flat.x for line in row if line.flat.x > head.flat.right), default=head.flat.right * 2)
        names = frozenset(
            line.number
            for line in advert.lines
            if line.flat.y > head.flat.centre[1]
            and line.flat.right < right
            and abs(line.flat.x - head.flat.x) < 2.5 * head.type_px
        )
        heads = tuple((line.flat.centre[0], advert.text[line.start : line.end]) for line in row)
        return PriceTable(names, heads, head.flat.y, advert.text[head.start : head.end].lower().strip(" :"))
    return None


def with_column_quantities(table: PriceTable, prices: list[Found]) -> list[Found]:
    """Give the prices under "per 100" and the like the quantity of their column; under "Size" stand no prices."""
    made = []
    for price in prices:
        found = price
        if table.heads and price.place.y > table.top:
            middle, text = min(table.heads, key=lambda head: abs(head[0] - price.place.centre[0]))
            near = abs(middle - price.place.centre[0]) < 2.5 * price.place.w
            signed = "$" in price.text
            if (
                near
                and not signed
                and process.extractOne(text.lower().strip(" :"), _NO_PRICES, scorer=fuzz.ratio, score_cutoff=_ALIKE)
            ):
                continue
            if near and (m := _PER.search(text)):
                word = m["n"].lower().replace(",", "").replace(".", "")
                if word in _COUNTS:
                    amount = replace(price.amount, quantity=Decimal(_COUNTS[word]))
                else:
                    amount = replace(price.amount, unit="gross" if word == "gross" else "doz")
                found = replace(price, amount=amount, condition_text=text)
        made.append(found)
    return made


def _is_head(advert: AdvertText, line: TextLine, heads: tuple[str, ...]) -> bool:
    text = advert.text[line.start : line.end].lower().strip(" :")
    if len(text) > 14:
        return False
    return process.extractOne(text, heads, scorer=fuzz.ratio, score_cutoff=_ALIKE) is not None


def _one_row(one: TextLine, other: TextLine) -> bool:
    shared = min(one.flat.bottom, other.flat.bottom) - max(one.flat.y, other.flat.y)
    return shared > 0.3 * min(one.flat.h, other.flat.h)

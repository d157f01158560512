"""The stub of a table: what stands over its labels on the row of its heads ("Muslin sheets   Were   Now").

Common practice of printed tables, no source.
"""

from __future__ import annotations

import re
from typing import Final

from adminer.parsing.prices.column_heads import shares_row
from adminer.parsing.tables.row_labels import is_term
from adminer.parsing.text.column_words import kind_of_head
from adminer.parsing.text.goods import has_goods
from adminer.parsing.text.text import AdvertText, TextLine
from adminer.records import Box

_STEP: Final = 3.0  # type sizes from the row of the heads to the first row
_SLIP: Final = 1.0  # type sizes by which both may begin apart
_HEADS: Final = re.compile(
    r"(?:were|was|now|reg\.?|regular|sale|cash|special)(?: (?:were|was|now|sale|price))*", re.IGNORECASE
)


def stub_over(advert: AdvertText, row: TextLine, label: Box) -> str:
    """Return the goods named in the stub over the label of a table's first row, in flat pixels; empty where none are.

    What is told of them after a comma is left out.
    """
    for line in reversed(advert.lines):
        step = label.centre[1] - line.flat.centre[1]
        if not 0 < step < _STEP * row.type_px or shares_row(line.flat, label):
            continue
        text = advert.printed(line).strip(" .,:;")
        if abs(line.flat.x - label.x) < _SLIP * row.type_px and has_goods(text) and _has_heads_beside(advert, line):
            return text.split(",", maxsplit=1)[0]
    return ""


def _has_heads_beside(advert: AdvertText, stub: TextLine) -> bool:
    """Say whether a head of prices stands on the row of a line, right of it."""
    return any(
        kind_of_head(text) == "price" or is_term(text) or _HEADS.fullmatch(text)
        for line in advert.lines
        if line.flat.x > stub.flat.right and shares_row(line.flat, stub.flat)
        for text in [advert.printed(line).strip(" .,:;")]
    )

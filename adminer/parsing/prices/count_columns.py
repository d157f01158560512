"""Columns of a table that count things and price none: the pieces left of a line, the points of rationed food."""

from __future__ import annotations

import re
from typing import Final

from adminer.parsing.text.column_words import kind_of_head
from adminer.parsing.text.text import AdvertText
from adminer.records import Box

_FIGURES: Final = re.compile(r"[\d.,¢$½¼¾%/ \-–—]+")
_ROW: Final = 3.0  # type sizes from row to row of a table, at most


def in_count_column(advert: AdvertText, place: Box, type_px: float) -> bool:
    """Say whether a figure without a sign stands under a head that counts: "Pieces left", "Points".

    What stands between the head and the figure is figures of the same column, row by row. `place` is without the slope
    of the type, in pixels of the scan, as is `type_px`.
    """
    over = [line for line in advert.lines if line.flat.across(place) > 0 and line.flat.centre[1] < place.y]
    foot = place.y
    for line in sorted(over, key=lambda line: -line.flat.centre[1]):
        if foot - line.flat.bottom > _ROW * type_px:
            return False
        said = advert.printed(line)
        if _FIGURES.fullmatch(said) is None:
            return kind_of_head(said) == "other"
        foot = line.flat.y
    return False

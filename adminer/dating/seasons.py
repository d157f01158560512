"""Seasons printed with a year, as on catalogue covers: "Fall 1961", "Spring and Summer 1948".

Seasons are written 21 (spring) to 24 (winter) after the year (EDTF level 1, ISO 8601-2:2019). Winter is left
alone, as "Winter 1961" may be either end of that year.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Final

_SEASONS: Final = {"spring": 21, "summer": 22, "autumn": 23, "fall": 23}
_NAME: Final = r"(?:Spring|Summer|Autumn|Fall|SPRING|SUMMER|AUTUMN|FALL)"
_PRINTED: Final = re.compile(
    rf"\b(?P<first>{_NAME})(?:\s*(?:and|AND|&|-|–|/)\s*(?P<last>{_NAME}))?,?\s*(?:of\s+)?(?P<year>1[89]\d\d)(?![\d-])"
)


def seasons_in(text: str) -> Iterator[tuple[tuple[int, int], str]]:
    """Yield the characters and the EDTF of every season printed with its year.

    Two seasons that follow each other in the year are a span; in any other order the text is left alone.
    """
    for found in _PRINTED.finditer(text):
        first = _SEASONS[found["first"].lower()]
        last = _SEASONS[found["last"].lower()] if found["last"] else first
        if last < first:
            continue
        year = found["year"]
        edtf = f"{year}-{first}" if last == first else f"{year}-{first}/{year}-{last}"
        yield found.span(), edtf

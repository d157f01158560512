"""Columns of small advertisements: many people's notices under common heads, and so no one's advert.

"WANT ADS", "FOR SALE - Oak sideboard ...", "LOST - Between church and depot ...": a name that closes one notice, or a
head over some, places none of the others. Common practice of newspapers, no source.
"""

from __future__ import annotations

import re
from typing import Final

from adminer.parsing.text.text import AdvertText

_TITLE: Final = re.compile(
    r"^(?:[A-Z]\w+ )?(?:want ads?|want column|classified (?:ads?|advertisements?|advertising|columns?|directory)|"
    r"small advertisements)(?: bring results)?\W*$",
    re.IGNORECASE,
)
# set off by a dash or alone in its line; rooms and livestock are goods of a shop as well
_HEAD: Final = re.compile(
    r"^(?:(?:FOR (?:SALE|RENT|EXCHANGE|TRADE|HIRE)|TO (?:LET|RENT|EXCHANGE)|(?:HELP |SITUATIONS? )?WANTED|LOST|FOUND|"
    r"STRAYED|For (?:Sale|Rent)|To (?:Let|Rent)|(?:Help )?Wanted|Lost|Found)(?=\W*$| ?[-–—:])|"
    r"(?:LOST|Lost) (?:AND|and|&) (?:FOUND|Found)|(?:LIVESTOCK|LIVE STOCK|MISCELLANEOUS|ROOMS (?:AND|&) [A-Z]+)"
    r"(?:, [A-Z]+)?\W*$)"
)
_FEWEST: Final = 3  # heads of one column; two may be those of a dealer's
_WITH_TITLE: Final = 1


def is_of_small_adverts(advert: AdvertText) -> bool:
    """Say whether what was cut as one advert is a column of many people's small ones."""
    lines = [advert.printed(line) for line in advert.lines]
    heads = sum(_HEAD.match(line) is not None for line in lines)
    titled = any(_TITLE.match(line) for line in lines)
    return heads >= (_WITH_TITLE if titled else _FEWEST)

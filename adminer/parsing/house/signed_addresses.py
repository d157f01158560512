"""The town of an address that stands right behind the name that signs an advert, as mail-order houses print it.

"OSTERBY CYCLE WORKS, Abbey Fields, Osterby.", "CORBELLE & VALE, 77 Cask Slip, Osterby.", "Dale's Stock Farm,
Mt. Osterby, Ky.": parts between commas, of which the town is the last, or the last before the state. Common practice,
no source.
"""

from __future__ import annotations

import re
from typing import Final

from adminer.parsing.house.addresses import LANDS, STREET, is_talk
from adminer.parsing.house.house_forms import TRADE
from adminer.parsing.text.goods import has_goods

# one part: words with capitals and numbers, "of" and "the" among them, no sum
_SHORT: Final = r"(?:St|Mt|Ft|Pt|Dept|No|Bldg|Ave|Rd|Box|[NSEW]|P|O|R|F|D)\."
_CITY_STATES: Final = ("New York", "Washington")  # they end an address without a state
_WORD: Final = rf"(?:{_SHORT}|[A-Z][\w'’-]*|\d{{1,5}}(?:-\d{{1,5}})?[A-D]?|of|the|&)"
_PART: Final = rf"{_WORD}(?:\s{_WORD}){{0,4}}"
_ADDRESS: Final = re.compile(rf" ?,\s(?P<parts>{_PART}(?:,\s?{_PART}){{0,4}})(?:[.;:\n]|$)")
_LAND: Final = re.compile(rf"{LANDS}\.?|[NSEW]\.? ?[CW]?\.?|[NSEW][EW]?\d{{0,2}}", re.IGNORECASE)
_TOWN: Final = re.compile(r"(?:(?:St|Mt|Ft|Pt)\. )?[A-Z][A-Za-z'’-]{2,}(?: [A-Z][A-Za-z'’-]+){0,2}")
_STREET: Final = re.compile(rf"\b{STREET}$|^\d")
_LEAST: Final = 4  # letters of a name that can be told in a text


def town_signed(text: str, house: str) -> str | None:
    """Return the town of the last address right behind a shop's name, as printed; None where none is."""
    name = house.strip(" .,")
    if len(name) < _LEAST:
        return None
    town = None
    sought = re.compile(r"\s".join(map(re.escape, name.split())) + r"\.?(?=,)", re.IGNORECASE)
    for found in sought.finditer(text):
        address = _ADDRESS.match(text, found.end())
        if address is None:
            continue
        parts = [" ".join(part.split()) for part in address["parts"].split(",")]
        *front, last = parts
        while front and _LAND.fullmatch(parts[-1]):
            parts.pop()
            front = parts[:-1]
        if _is_town(parts[-1]):
            town = parts[-1]
        elif last in _CITY_STATES:
            town = last
    return town


def _is_town(part: str) -> bool:
    if _TOWN.fullmatch(part) is None or _STREET.search(part) or is_talk(part) or has_goods(part):
        return False
    return TRADE.fullmatch(part.rsplit(" ", 1)[-1]) is None

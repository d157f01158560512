"""The town that closes the address under a shop's name: after its street, its corner, its floor, or alone below it.

"Court Street at Third, Osterby", "CORN HILL. OSTERBY", "Opp. Post Office, Osterby - Tel. 88", "Rue Vieille / Osterby";
commas are read as points, and towns stand in capitals. Common practice, no source.
"""

from __future__ import annotations

import re
from typing import Final

from adminer.dating.calendar_words import MONTHS, WEEKDAYS
from adminer.layout.states import STATES
from adminer.parsing.house.addresses import STREET, is_talk
from adminer.parsing.house.house_forms import TRADE
from adminer.parsing.text.lexicon import word_list

_CROSSING: Final = r"(?:\d+(?:st|nd|rd|th)|First|Second|Third|Fourth|Fifth|Sixth|Seventh|Eighth|Ninth|Main)"
_PLACE: Final = re.compile(
    rf"\b(?:{STREET}|Hill|Yard|Gate|Bridge|Cornmarket|Market Place|Walk|Post Office|"
    r"(?:Rue|Quai|Midan|Sharia|Chareh) [A-Z]\w+|Court ?House|Depot|"
    r"Salesrooms?|Showrooms?|\w+ Floors?|(?:North|South|East|West) s\Wde of)(?![a-z])|"
    rf"\b[A-Z]\w+\.? (?:at|&|and) {_CROSSING}\b|"
    r"^\d{1,5}(?: ?- ?\d{1,5})? (?:[NSEW]\.? )?[A-Z]\w+",
    re.IGNORECASE,
)
_CORNER: Final = re.compile(r"\bCor(?:ner)?$", re.IGNORECASE)  # two streets, no town, stand on its sides
_PARTS: Final = re.compile(r"(?<!\b[A-Z]),\s*|(?<=\w{2})\.\s+|(?<=\w{2})\.$|\s*[·•|;:–—]\s*|\s+-\s+")
_NAME: Final = re.compile(r"(?:[A-Z][a-z]{2,}|(?:St|Ft|Mt)\.)(?: [A-Z][a-z]{2,}){0,2}|[A-Z]{3,}(?: [A-Z]{3,}){0,2}")
_DAYS: Final = "|".join(sorted({*MONTHS, *WEEKDAYS}))
_NO_TOWN: Final = re.compile(
    rf"{STREET}|(?:{_DAYS}|North|South|East|West|Phones?|Tel|Open|Closed|Free|Dept|Box|Near|Opp|Next|And|The|{STATES})(?![a-z])",
    re.IGNORECASE,
)
_REACH: Final = 3  # lines under a name in which its address stands
_LEAST: Final = 4  # letters of a name that can be told in a line
_BRANCHES: Final = 2  # parts of a line that are all towns: those of the branches


def town_under(text: str, house: str) -> str | None:
    """Return the town in the lines under a shop's name, as printed; None where no address leads to one."""
    lines = [line.strip() for line in text.splitlines()]
    name = house.lower().strip(" .,")
    if len(name) < _LEAST:
        return None
    for at, line in enumerate(lines):
        if not _names(line.lower().strip(" .,"), name):
            continue
        placed = False
        for below in lines[at : at + _REACH + 1]:
            parts = [part.strip(" .,") for part in _PARTS.split(below) if part.strip(" .,")]
            if placed and len(parts) == 1 and _is_town(parts[0], name):
                return parts[0]
            found, placed = _after_place(parts, name)
            if found is None and len(parts) > _BRANCHES and all(_is_town(part, name) for part in parts):
                found = parts[0]
            if found is not None:
                return found
    return None


def _names(line: str, name: str) -> bool:
    """Say whether a line holds a name, or the beginning of one that goes on in the next line."""
    return name in line or (len(line) >= _LEAST and name.startswith(f"{line} "))


def _after_place(parts: list[str], house: str) -> tuple[str | None, bool]:
    """Return the first town after a part that is a place in it, and whether the last part is such a place."""
    placed = False
    for part in parts:
        if placed and _is_town(part, house):
            return part, False
        if _CORNER.search(part):
            return None, False
        placed = bool(_PLACE.search(part)) or (placed and _NO_TOWN.match(part) is not None)
    return None, placed


def _is_town(part: str, house: str) -> bool:
    if _NAME.fullmatch(part) is None or part.lower() in house or _NO_TOWN.match(part) or _PLACE.search(part):
        return False
    last = part.rsplit(" ", 1)[-1]
    return not (is_talk(part) or (TRADE.fullmatch(last) and last.lower() not in word_list("place_generics")))

"""The town that closes the address under a shop's name: after its street, its corner, its floor, or alone below it.

"Court Street at Third, Osterby", "CORN HILL. OSTERBY", "Opp. Post Office, Osterby - Tel. 88", "Rue Vieille / Osterby";
commas are read as points, and towns stand in capitals. Common practice, no source.
"""

from __future__ import annotations

import re
from typing import Final

from adminer.dating.calendar_words import MONTHS, WEEKDAYS
from adminer.layout.states import STATES
from adminer.parsing.house.addresses import LANDS, STREET, is_talk
from adminer.parsing.house.house_forms import PROPRIETOR, TRADE, is_trade_line
from adminer.parsing.text.lexicon import word_list

_CROSSING: Final = r"(?:\d+(?:st|nd|rd|th)|First|Second|Third|Fourth|Fifth|Sixth|Seventh|Eighth|Ninth|Main)"
_PLACE: Final = re.compile(
    rf"\b(?:{STREET}|Hill|Yard|Gate|Bridge|Cornmarket|Market Place|Walk|Post Office|"
    r"(?:Rue|Quai|Midan|Sharia|Chareh) [A-Z]\w+|Court ?House|Depot|"
    r"Salesrooms?|Showrooms?|\w+ Floors?|(?:North|South|East|West) s\Wde of)(?![a-z])|"
    rf"\b[A-Z]\w+\.? (?:at|&|and) {_CROSSING}\b|"
    r"^\d{1,5}(?: ?(?:-|&|and) ?\d{1,5})* (?:[NSEW]\.? )?[A-Z]\w+",
    re.IGNORECASE,
)
_NUMBERS: Final = re.compile(r"\d{1,5}(?: ?(?:-|&|and) ?\d{1,5})*")  # British: a comma parts them from their street
_CORNER: Final = re.compile(r"\bCor(?:ner)?$", re.IGNORECASE)  # two streets, no town, stand on its sides
_PARTS: Final = re.compile(
    r"((?<!\b[A-Z]),\s*|(?<=\w{2})(?<!^S[Tt])(?<![,·•|–—-]\sS[Tt])\.\s+|(?<=\w{2})\.$|\s*[·•|;:–—]\s*|\s+-\s+)"
)
_NAME: Final = re.compile(
    r"(?:[A-Z][a-z]{2,}|(?:St|Ft|Mt)\.)(?: [A-Z][a-z]{2,}){0,2}|(?:(?:ST|FT|MT)\. )?[A-Z]{3,}(?: [A-Z]{3,}){0,2}"
)
_SAINT: Final = re.compile(r"^(?:St|Ft|Mt|ST|FT|MT)\. (?=[A-Z])")
_DAYS: Final = "|".join(sorted({*MONTHS, *WEEKDAYS}))
_NO_TOWN: Final = re.compile(
    rf"{STREET}|(?:{_DAYS}|North|South|East|West|Phones?|Tel|Open|Closed|Free|Dept|Box|Near|Opp|Next|And|The|{STATES})(?![a-z])",
    re.IGNORECASE,
)
_LAND: Final = re.compile(LANDS, re.IGNORECASE)
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
        # a theatre's or a building's own name is no place that a town follows
        for below in (_without(line, name) for line in lines[at : at + _REACH + 1]):
            parts = _parted(below)
            if placed and len(parts) == 1 and _is_town(parts[0][0], name):
                return parts[0][0]
            found, placed = _after_place(parts, name)
            if found is None and len(parts) > _BRANCHES and all(_is_town(part, name) for part, _ in parts):
                found = parts[0][0]
            if found is not None:
                return found
    return None


def _names(line: str, name: str) -> bool:
    """Say whether a line holds a name, or the beginning of one that goes on in the next line."""
    return name in line or (len(line) >= _LEAST and name.startswith(f"{line} "))


def _without(line: str, name: str) -> str:
    """Return a line without the name, or without anything where it is a part of the name by itself."""
    alone = line.lower().strip(" .,")
    if alone and re.search(rf"\b{re.escape(alone)}$", name):
        return ""
    return re.sub(re.escape(name), "", line, flags=re.IGNORECASE)


def _parted(line: str) -> list[tuple[str, str]]:
    """Return the parts of a line, each with the mark behind it."""
    pieces = [*_PARTS.split(line), ""]
    parts = [(part.strip(" .,-–—"), mark.strip()) for part, mark in zip(pieces[::2], pieces[1::2], strict=True)]
    parts = [(part, mark) for part, mark in parts if part]
    while len(parts) > 1 and _NUMBERS.fullmatch(parts[0][0]):
        (number, _), (street, mark), *rest = parts
        parts = [(f"{number}-{street}" if _NUMBERS.fullmatch(street) else f"{number} {street}", mark), *rest]
    return parts


def _after_place(parts: list[tuple[str, str]], house: str) -> tuple[str | None, bool]:
    """Return the town after a part that is a place or a trade in it, and whether the last part is such a one.

    Of two such parts that end a line, with a comma between, the first is a district or a street: "9th Ave., West Side,
    Osterby".
    """
    placed = False
    for at, (part, mark) in enumerate(parts):
        if placed and _is_town(part, house):
            two = at == len(parts) - _BRANCHES and mark == "," and _is_town(parts[-1][0], house)
            two = two and not _LAND.fullmatch(parts[-1][0])
            return (parts[-1][0] if two else part), False
        if _CORNER.search(part):
            return None, False
        trade = mark == "," and at < len(parts) - 1 and is_trade_line(part)
        stands = trade or bool(_PLACE.search(part))
        placed = stands or (placed and _NO_TOWN.match(part) is not None)
    return None, placed


def _is_town(part: str, house: str) -> bool:
    part = _SAINT.sub("", part)
    if _NAME.fullmatch(part) is None or part.lower() in house or _NO_TOWN.match(part) or _PLACE.search(part):
        return False
    if PROPRIETOR.search(part):
        return False
    last = part.rsplit(" ", 1)[-1]
    return not (is_talk(part) or (TRADE.fullmatch(last) and last.lower() not in word_list("place_generics")))

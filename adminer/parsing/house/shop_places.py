"""Whether a line says where a shop is: a number and street, a corner, a landmark, a town and its state, a telephone."""

from __future__ import annotations

import re
from typing import Final

from adminer.parsing.house.address_slips import is_large_town
from adminer.parsing.house.addresses import BOXED, NUMBERED, ROUTED, STATE_LINE
from adminer.parsing.house.house_lines import ADDRESS, LANDMARK
from adminer.parsing.house.towns import PARTICULARS, WITH_STATE

_STREETS: Final = (
    r"(?:First|Second|Third|Fourth|Fifth|Sixth|Seventh|Eighth|Ninth|Tenth|\d{1,3}(?:st|nd|rd|th)|Main|Broad|Front|High|"
    r"Market|Court|State|Church|Cent(?:er|re)|Water|Union|Park|Mill|Elm|Oak|Maple|Pine|Washington|Lincoln|Jefferson)"
)
_PLACED: Final = re.compile(
    rf"{NUMBERED}|{ROUTED}|{BOXED}|\bDept\.? ?[A-Z0-9]|\b(?i:ph(?:one)?\.? ?\d)|"
    rf"\b{_STREETS} (?:at|&|and) [A-Z0-9]\w+|\b[A-Z]\w+ (?:at|&|and) {_STREETS}\b|"
    r"\b\d{1,5} [A-Z][a-z]+, [A-Z][a-z]|"
    r"^[A-Z][a-z]{2,}(?: [A-Z][a-z]+)? \d{1,2}[.,]?$|"  # a town and its postal zone
    rf"(?:^|[·•|,] ?)(?i:{LANDMARK.pattern})"
)


def starts_address(text: str) -> bool:
    """Say whether a line begins with an address or with a shop's particulars."""
    return bool(STATE_LINE.search(text)) or any(p.match(text) for p in (ADDRESS, PARTICULARS, _PLACED))


def is_place(text: str) -> bool:
    """Say whether a line tells a place or a shop's particulars anywhere in it."""
    return any(p.search(text) for p in (ADDRESS, WITH_STATE, PARTICULARS, STATE_LINE, _PLACED)) or is_large_town(
        text.strip(" .,")
    )

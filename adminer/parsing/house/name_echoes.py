"""Where an advert names its house again: with its particulars, at the foot, or on its coupons, stamps and cards.

A shop heads its coupons with its own name ("THORNFIELD COUPON") and says where it sells ("Now at Thornfield"); the
firm signs in full at the foot. Common practice, no source.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import Final

from adminer.parsing.house.house_forms import FIRM, HOUSE
from adminer.parsing.house.house_lines import Candidate
from adminer.parsing.house.shop_places import is_place
from adminer.parsing.text.text import AdvertText

_WARE: Final = re.compile(
    r" (?:pattern|design|dinner ?ware|china|ware|tableware|ironstone|pottery|glassware|set|plates?|cups?|tumblers?|"
    r"brand|coffee|tea|flour|butter|bread|soap)\b"
)
_OWN: Final = r" (?:coupons?|stamps?|(?:trading )?stamp|charge|card|credit|customers?|budget|gift certificates?)\b"
_AT: Final = r"\b(?:now |only |today |again |exclusively )?at "
_SHORT_NAME: Final = re.compile(r"(?P<name>[A-Z][A-Za-z]{2,})(?:['’][Ss]|[sS]['’])(?![A-Za-z])")
_NEAR_LINES: Final = 3
_LEAST: Final = 4  # letters of a name that can be told in a line


def find_echo(advert: AdvertText, candidate: Candidate) -> str:
    """Return how a candidate's name is said again elsewhere in its advert, as its weight is called; empty where not."""
    names = {candidate.name.lower(), advert.printed(candidate.line).strip(" .,-").lower()}
    name = min(names, key=len) if candidate.has_kind else candidate.name.lower()
    others = [n for n in advert.lines if not candidate.holds(n) and name in advert.printed(n).lower()]
    if not others or is_ware(advert, candidate.name):
        return ""
    if any(is_place(advert.printed(n)) or HOUSE.search(advert.printed(n)) for n in others):
        return "again with particulars"
    foot = advert.lines[-_NEAR_LINES:]
    again = re.compile(rf"{re.escape(name)}\W? ?[,·•]")
    if any(again.match(advert.printed(n).lower()) for n in others if n in foot):
        return "again at the foot"
    own = re.compile(rf"{re.escape(name)}{_OWN}|{_AT}{re.escape(name)}(?![a-z])")
    if len(name) >= _LEAST and any(own.search(advert.printed(n).lower()) for n in others):
        return "again on coupons or stamps"
    return ""


def find_firm(best: Candidate, others: Iterable[Candidate]) -> Candidate | None:
    """Return the firm of `others` that signs what a shop's short name heads: "Thorne's" is "ADAM THORNE & SONS"."""
    short = _SHORT_NAME.match(best.name)
    if short is None:
        return None
    surname = re.compile(rf"\b{re.escape(short['name'])}\b", re.IGNORECASE)
    for other in others:
        signs = FIRM.search(other.name) and surname.search(other.name) and not _SHORT_NAME.match(other.name)
        if signs and other.line.flat.y > best.last.flat.y:
            return other
    return None


def is_ware(advert: AdvertText, name: str) -> bool:
    """Say whether an advert names a pattern, a brand or a ware so."""
    said, sought = advert.joined.lower(), name.lower()
    return any(_WARE.match(said, at + len(sought)) for at in range(len(said)) if said.startswith(sought, at))

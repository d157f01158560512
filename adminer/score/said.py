"""What a true item text says of its sum and not of the goods: "table, first payment", "collars per dozen".

A person who writes down what a sum pays for says so in one breath; we keep the goods, the role and the unit apart.
Words that our role or unit answers are therefore left out before two item texts are compared. Where ours says
something else, they stay, and the texts differ by them.
"""

from __future__ import annotations

import re
from typing import Final

from adminer.parsing.money.amounts import UNIT, unit_of
from adminer.score.found import FoundPrice

_ROLES: Final[dict[str, re.Pattern[str]]] = {
    role: re.compile(rf"[,:;]?\s*\b(?:{words})(?:\s+(?:on|for|of)\b)?", re.IGNORECASE)
    for role, words in (
        ("down_payment", "(?:first|down|cash) payment|(?:payment|amount) down|deposit"),
        ("instalment", "instal?lments?|(?:monthly|weekly|further) payments?"),
        ("from", r"from(?=\s*$)|prices? from"),
        ("postage", "(?:postage|carriage|mailing)(?: paid)?"),
        ("range_low", r"from(?=\s*$)"),
        ("range_high", r"(?:up )?to(?=\s*$)"),
        ("up_to", r"up to(?=\s*$)"),
    )
}
_PER: Final = re.compile(rf"[,:;]?\s*\b(?:per|the|a|by the) (?:half |½ ?)?(?P<unit>{UNIT})\s*$", re.IGNORECASE)


def goods_said(text: str, found: FoundPrice) -> str:
    """Return a true item text without the words that the role and the unit of the found price answer.

    A text that says nothing else is returned whole.
    """
    role = _ROLES.get(found.role)
    said = role.sub("", text) if role else text
    per = _PER.search(said)
    if per and found.per_unit is not None and unit_of(per["unit"]) == found.per_unit:
        said = said[: per.start()]
    return said.strip(" ,:;") or text

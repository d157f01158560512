"""The brand whose proofs of purchase must be sent in: it makes the offer where no house signs it.

Common practice, no source.
"""

from __future__ import annotations

import re
from typing import Final

from adminer.parsing.house.house_forms import is_plain
from adminer.parsing.text.text import AdvertText
from adminer.records import Link

_SPONSOR: Final = re.compile(
    r"\b(?:box ?tops?|labels?|wrappers?|carton ends?|package ends?|coupons?|seals?|trade ?marks?)[ \n]from[ \n]"
    r"(?:(?:a|an|one|two|each|any|every|your|specially marked|packages?|box(?:es)?|bags?|jars?|cans?|of)[ \n]){0,4}"
    r"(?P<name>[A-Z][A-Za-z'’-]+(?:[ \n][A-Z][A-Za-z'’-]+){0,3})"
)
_SURENESS: Final = 0.45


def find_sponsor(advert: AdvertText) -> Link | None:
    """Return the brand whose box tops are asked for; None without one."""
    m = _SPONSOR.search(advert.text)
    if m is None or is_plain(m["name"]):
        return None
    name = " ".join(m["name"].split())
    why = "taken as the signature: the brand whose proof of purchase is asked for"
    return Link(None, name, name, advert.box_of(*m.span("name")), _SURENESS, why)

"""The advertiser's name where no firm's word tells it: by where it stands and by what its proofs of purchase are of.

A name right over the address; the one large line at the head of an advert whose foot has an address without a name;
the brand whose box top must be sent in. Looked for only where no signature was found. Common practice, no source.
"""

from __future__ import annotations

import re
from itertools import pairwise
from typing import Final

from adminer.layout.states import STATES
from adminer.parsing.addresses import BOXED, NUMBERED, ROUTED, STATE_LINE
from adminer.parsing.goods import find_nouns
from adminer.parsing.signatures import is_common, is_plain
from adminer.parsing.text import AdvertText, TextLine
from adminer.records import Link

_ADDRESS_LINE: Final = re.compile(rf"(?:Dept\.? ?[\w-]+|{BOXED}|{NUMBERED}|{ROUTED})(?![\w$¢])")
_PLACE: Final = re.compile(rf"{NUMBERED}|{ROUTED}|(?i:\bopen (?:daily|evenings|nights|sun)|\bphone \d)")
_NAME: Final = re.compile(r"(?:The |THE )?[A-Z][\w'’-]+(?: (?:[A-Z][\w'’-]+|&|and|of)){0,4}")
_ADDRESSED: Final = re.compile(
    rf"(?:(?:Mail|Write|Send|Address)(?: to)?:? )?(?P<name>[A-Z][\w'’-]+(?: [A-Z][\w'’-]+){{1,3}}), ?"
    rf"(?:Dept\.? ?[\w-]+|{BOXED}|{NUMBERED}|{ROUTED}|[A-Z]\w+(?: [A-Z]\w+)?, ?{STATES}(?![a-z]))"
)
_SPONSOR: Final = re.compile(
    r"\b(?:box ?tops?|labels?|wrappers?|carton ends?|package ends?|coupons?|seals?|trade ?marks?)[ \n]from[ \n]"
    r"(?:(?:a|an|one|two|each|any|every|your|specially marked|packages?|box(?:es)?|bags?|jars?|cans?|of)[ \n]){0,4}"
    r"(?P<name>[A-Z][A-Za-z'’-]+(?:[ \n][A-Z][A-Za-z'’-]+){0,3})"
)
# what discount houses of the 1950s to 1970s called themselves after
_DISCOUNTERS: Final = frozenset({"town", "city", "barn", "world", "land", "mart", "village", "way", "king", "castle"})
# what town stores called themselves from the 1880s on, in words that name nobody
_BAZAAR: Final = re.compile(
    r"the (?:(?:big|new|golden|busy|red|great) )?(?:fair|hub|leader|bazaar|model|emporium|bee ?hive|toggery|racket|"
    r"palace|globe|rule|popular|elite|vogue|front)",
    re.IGNORECASE,
)
_OVER: Final = 1.25  # body sizes of a name over its address
_OVER_SCORE, _SPONSOR_SCORE, _HEAD_SCORE = 0.5, 0.45, 0.4
_LARGEST: Final = 1.4  # times the next largest line of words
_FOOT_LINES: Final = 3


def find_nameplate(advert: AdvertText) -> Link | None:
    """Return the name of the house by its place, or of the brand whose box tops are asked for; None without one."""
    return _over_address(advert) or _before_address(advert) or _sponsor(advert) or _at_head(advert)


def _over_address(advert: AdvertText) -> Link | None:
    for line, below in pairwise(advert.lines):
        text, address = advert.printed(line).strip(" .,"), advert.printed(below)
        near = below.flat.y - line.flat.y > 0 and below.flat.y - line.flat.bottom < 1.5 * line.type_px
        if not near or line.type_px < _OVER * max(advert.body_px, below.type_px) or not _may_name(text):
            continue
        if _ADDRESS_LINE.match(address) or STATE_LINE.search(address):
            return _link(advert, line, text, _OVER_SCORE, "stands in larger type right over the address")
    return None


def _before_address(advert: AdvertText) -> Link | None:
    for line in reversed(advert.lines):
        m = _ADDRESSED.match(advert.printed(line))
        if m is not None and _may_name(m["name"]) and not is_plain(m["name"]):
            return _link(advert, line, m["name"], _OVER_SCORE, "stands before the address")
    return None


def _sponsor(advert: AdvertText) -> Link | None:
    m = _SPONSOR.search(advert.text)
    if m is None or is_plain(m["name"]):
        return None
    name = " ".join(m["name"].split())
    why = "the brand whose proof of purchase is asked for"
    return Link(None, name, name, advert.box_of(*m.span("name")), _SPONSOR_SCORE, why)


def _at_head(advert: AdvertText) -> Link | None:
    if not advert.lines:
        return None
    line = advert.lines[0]
    text = advert.printed(line).strip(" .,")
    others = [n.type_px for n in advert.lines[1:] if re.search(r"[a-z]{3}|[A-Z]{3}", advert.printed(n))]
    foot = [advert.printed(n) for n in advert.lines[-_FOOT_LINES:]]
    if len(others) < _FOOT_LINES or line.type_px < _LARGEST * max(others) or not _may_name(text):
        return None
    words = text.lower().split()
    if (
        words[-1] not in _DISCOUNTERS
        and not _BAZAAR.fullmatch(text)
        and (is_common(words[0]) or any(noun.strong for noun in find_nouns(text)))
    ):
        return None  # "Summer Carnival" is a sale, but "Thrift Town" a discount house
    if not any(STATE_LINE.search(t) or _PLACE.match(t) for t in foot):
        return None
    return _link(advert, line, text, _HEAD_SCORE, "the largest type, at the head, and an address without a name below")


def _may_name(text: str) -> bool:
    named = _NAME.fullmatch(text) is not None and not is_plain(text)
    return 4 <= len(text) <= 40 and (named or _BAZAAR.fullmatch(text) is not None)


def _link(advert: AdvertText, line: TextLine, text: str, score: float, reason: str) -> Link:
    why = f"taken as the signature: {reason}, type {line.type_px / advert.body_px:.1f} times the body"
    return Link(None, text, text, line.box, score, why)

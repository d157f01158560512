"""A logotype and what it calls itself, set apart in smaller type: "THORNFIELD" and beside or under it "Food Warehouse".

The two are one name, whichever was read first and whatever stands between them in the order of reading. Common
practice, no source.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Final

from adminer.parsing.house.house_forms import is_common, is_plain, is_trade_line, names_kind
from adminer.parsing.text.goods import find_nouns
from adminer.parsing.text.text import AdvertText, TextLine

_LARGE: Final = 1.5  # times the body: from here a line may be a logotype
_NAME_WORDS: Final = 3
_KIND_WORDS: Final = 4
_UNDER: Final = 1.2  # type sizes of the logotype down to the line of its kind
_BESIDE: Final = 2.5  # the same across
_SMALLER: Final = 1.1  # a kind is set no larger than the name
_KIND_ENDS: Final = re.compile(r"[.,:;]\s|\s?[·•|*]|\s?[–—-]\s| (?i:in|at|of) (?=[A-Z])")
_SLOGAN: Final = re.compile(r"(?:the|an?|our|your|all|both|two|three|four|five|six|seven|eight|\d+) ", re.IGNORECASE)
_SHORTENED: Final = re.compile(r"\b[A-Z]{2}\b")  # "TV"
_PLAIN_KIND: Final = re.compile(
    r"(?:(?:food|drug|discount|department|variety|cash) |super ?)*(?:stores?|markets?|shops?|centers?|company|co)",
    re.IGNORECASE,
)
_LARGEST: Final = 1.25  # times the next largest line of words: a logotype may be plain words then
_GOODS: Final = 2  # articles in a line that lists them


def find_logotypes(advert: AdvertText) -> Iterator[tuple[TextLine, TextLine, str]]:
    """Yield each logotype with the line of its kind of shop: the first line, the last, and what both say."""
    kinds = [(line, kind) for line in advert.lines if (kind := kind_of(advert.printed(line)))]
    for one in advert.lines:
        said = advert.printed(one).strip(" .,-–—")
        if one.type_px < _LARGE * advert.body_px:
            continue
        own = _may_be_logotype(said)
        if not own and not _stands_out(advert, one, said):
            continue
        for two, kind in kinds:
            if two is one or two.type_px > _SMALLER * one.type_px or not (own or _PLAIN_KIND.fullmatch(kind)):
                continue
            if _stands_under(one, two) or stands_beside(one, two):
                yield one, two, f"{said} {kind}"


def kind_of(text: str) -> str:
    """Return the kind of shop that a line begins with, as printed; empty where it begins with none."""
    kind = _KIND_ENDS.split(text)[0].strip(" .,-–—")
    short = 1 <= len(kind.split()) <= _KIND_WORDS and kind[:1].isupper() and not _SLOGAN.match(kind)
    return kind if short and is_trade_line(_SHORTENED.sub("", kind)) and names_kind(kind) else ""


def _may_be_logotype(said: str) -> bool:
    words = said.split()
    if not 1 <= len(words) <= _NAME_WORDS or any(c.isdigit() for c in said) or len(said) < 3:
        return False
    if sum(noun.strong for noun in find_nouns(said.replace(".", " "))) >= _GOODS:
        return False
    return not (is_plain(said) if len(words) > 1 else is_common(said)) and not is_trade_line(said)


def _stands_out(advert: AdvertText, line: TextLine, said: str) -> bool:
    """Say whether two or three plain words, no trade, are the largest line: "SILVER LADDER" / "MARKETS"."""
    words = said.split()
    if not 2 <= len(words) <= _NAME_WORDS or not all(w.isalpha() and w[0].isupper() for w in words):
        return False
    others = [n.type_px for n in advert.lines if n is not line and re.search(r"[A-Za-z]{3}", advert.printed(n))]
    return not is_trade_line(said) and line.type_px >= _LARGEST * max(others, default=1.0)


def _stands_under(one: TextLine, two: TextLine) -> bool:
    over = one.flat.across(two.flat) > 0
    return over and two.flat.y > one.flat.centre[1] and two.flat.y - one.flat.bottom < _UNDER * one.type_px


def stands_beside(one: TextLine, two: TextLine) -> bool:
    """Say whether a line stands on the row of another in larger type, right of it and near."""
    gap = two.flat.x - one.flat.right
    within = one.flat.y - 0.5 * two.flat.h < two.flat.centre[1] < one.flat.bottom + 0.5 * two.flat.h
    return within and -0.2 * one.type_px < gap < _BESIDE * one.type_px

"""The town a page's paper is called after: adverts of the page name it without an address.

"THE OSTERBY EVENING COURIER", "OSTERBY, THURSDAY, MAY 5": a merchant who signs "A. J. Thorne, Prop. - Osterby" under
such a head is of that town, and so is the Osterby Hardware Co. Common practice, no source.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import Final

from rapidfuzz import fuzz

from adminer.dating.calendar_words import MONTHS, WEEKDAYS
from adminer.parsing.house.addresses import in_full
from adminer.parsing.text.lexicon import word_list
from adminer.parsing.text.slips import is_word
from adminer.parsing.text.text import AdvertText

_TITLE: Final = (
    r"(?:evening|morning|semi-|tri-|weekly|daily|sunday|county|"
    rf"{'|'.join(sorted(word_list('papers'), key=len, reverse=True))})(?![a-z])"
)
_WORD: Final = r"[A-ZÀ-Ý][A-Za-zÀ-ÿ'’]+"
_TITLED: Final = re.compile(rf"^\W*[Tt][Hh][Ee]\W+(?P<city>{_WORD}(?: (?:and|{_WORD})){{0,3}}?) (?i:{_TITLE})")
_UNTITLED: Final = re.compile(rf"^\W*(?P<city>{_WORD}(?: (?:and|{_WORD})){{0,3}}?) (?i:{_TITLE})(?! [a-z])")
_DAYS: Final = "|".join(sorted({*MONTHS, *WEEKDAYS}))
# between a town and the day stand its county and state: "OSTERBY, WENNING COUNTY, OHIO, THURSDAY, MAY 5"
_DATED: Final = re.compile(
    rf"^\W*(?P<city>{_WORD}(?: {_WORD}){{0,2}})[.,:;] (?:{_WORD}(?: {_WORD})?\.?[.,:;]+ ){{0,2}}(?i:{_DAYS})[.,]? "
)
_NO_TOWN: Final = re.compile(rf"(?:{_DAYS}|Thurs?|Tues?|Wed|Fri|Sat|Sun|Mon)", re.IGNORECASE)
# whom papers and shops are for, singular: "The Farmers' Journal", "People's Market"
READERS: Final = frozenset(
    {"farmer", "planter", "miner", "worker", "people", "stockman", "seaman", "american", "national", "catholic"}
    | {"merchant", "citizen", "settler", "working"}
)
_TOP: Final = 0.12  # of the height of a page, above which its head stands
_LEAST: Final = 4  # letters of a town that can be told in an advert
_MOST_WORDS: Final = 12  # of a line of the head
_SAME_TOWN: Final = 84  # rapidfuzz ratio; common practice, no source
_LETTER_BY_LETTER: Final = 100
_WORN: Final = 6  # letters of a town that is told with one of them misread: "Sale" is no "Sable"
_MARKS: Final = " .,:;·•|*-–—()!"


def towns_of_head(texts: Iterable[AdvertText], height: int) -> frozenset[str]:
    """Return the towns that the title and the dateline at the head of a page of `height` pixels name."""
    towns = set()
    for text in texts:
        for line in text.lines:
            if line.box.y > _TOP * height or len(line.words) > _MOST_WORDS:
                continue
            for pattern in (_TITLED, _UNTITLED, _DATED):
                if (m := pattern.match(text.printed(line))) and (town := _town_in(m["city"])):
                    towns |= {town, _first_word(town)}
                    break
    return frozenset(towns)


def town_named(text: str, towns: frozenset[str]) -> str | None:
    """Return the town of its page's head that an advert names, as the advert prints it; None where it names none."""
    for town in sorted(towns, key=lambda t: (-len(t), t)):
        length = len(town.split())
        for line in text.splitlines():
            words = [re.sub(r"['’][sS]$", "", word.strip(_MARKS)) for word in line.split()]
            for at in range(len(words) - length + 1):
                name = " ".join(words[at : at + length])
                least = _SAME_TOWN if len(town) >= _WORN else _LETTER_BY_LETTER
                if name[:1].isupper() and fuzz.ratio(name.lower(), town.lower()) >= least:
                    return name
    return None


def _town_in(name: str) -> str | None:
    """Return the town that a paper's name begins with: up to the first word that towns are not called after."""
    first, *rest = name.split()
    kept = [first]
    for word in rest:
        if is_word(word.lower()) and word.lower() not in word_list("place_generics"):
            break
        kept.append(word)
    town = in_full(" ".join(word.capitalize() if word.isupper() else word for word in kept))
    if len(town) < _LEAST or any(_NO_TOWN.fullmatch(word) for word in kept):
        return None
    plain = all(is_word(word.lower()) or word.lower().rstrip("s'’") in READERS for word in kept)
    return None if plain else town


def _first_word(town: str) -> str:
    """Return a town without what may be the misread rest of its paper's name ("Osterby Eve Ning Courier")."""
    first, *rest = town.split()
    generics = word_list("place_generics")
    named = not rest or not generics.isdisjoint((first.lower(), rest[-1].lower()))
    kept = named or len(first) < _LEAST or is_word(first.lower())
    return town if kept else first

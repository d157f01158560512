"""The text of an advert as its addresses are sought in it: what line ends, readers and wide setting do is put right.

A name of a town or street goes on in the next line, the comma of an address is read as a point, the I of a state as a
small l, and a town whose letters are set wide comes apart ("OSTER BY"). Common practice, no source.
"""

from __future__ import annotations

import re
import tomllib
from functools import cache
from importlib.resources import files
from typing import Final

from adminer.layout.states import STATES
from adminer.parsing.house.addresses import LANDS, SMALL_WORDS
from adminer.parsing.text.lexicon import word_list

_SMALL_L: Final = re.compile(r"(?<=[,.] )l(?=(?:owa|ll|nd|daho)\b)")  # what readers make of the I of a state
_STROKES: Final = re.compile(r"(?<=[a-z], )[Il1]{3}(?=\.?\W*$)", re.MULTILINE)  # and of "Ill."
# what readers make of the comma before a town in capitals, or before its state: "Ave.. Osterby", "Osterby. Ohio"
_POINT: Final = re.compile(rf"\.\. ?(?=[A-Z])|(?<=[a-z]{{2}})\. (?=[A-Z][a-z]{{3}})(?={STATES}\b)")
_STREET_ON: Final = re.compile(r"(?<=[a-z]{2})\n(?=(?:street|avenue|road|lane|square|boulevard)\b)")
_HYPHENS: Final = re.compile(rf"(?<=[a-z]) ?- ?(?P<small>{SMALL_WORDS}) ?- ?(?=[A-Z])")  # "Osterby-on -Wenn"
_WIDE: Final = re.compile(r"^[A-Z]+(?: [A-Z]+)+(?=\W*$)", re.MULTILINE)
_LETTERS_APART: Final = 4  # the most letters of a piece of a name that came apart


def mend_addresses(text: str) -> str:
    """Return a text with the names of towns, streets and states in it put together and right."""
    text = _POINT.sub(", ", _STROKES.sub("Ill", _SMALL_L.sub("I", text)))
    text = _HYPHENS.sub(lambda m: f"-{m['small']}-", _STREET_ON.sub(" ", _wrapped().sub(" ", text)))
    return _WIDE.sub(_closed, text)


@cache
def _wrapped() -> re.Pattern[str]:
    """Return the line end within the name of a town: "Osterby / Falls, Ohio"."""
    last = "|".join(sorted(word.capitalize() for word in word_list("place_generics")))
    return re.compile(rf"(?<=[a-z]{{2}})\n(?=(?:{last}),? (?:{LANDS})(?![a-z]))")


def _closed(found: re.Match[str]) -> str:
    """Return a line in capitals without its spaces where only so it is a large town's name: "TOR ONTO"."""
    closed = found[0].replace(" ", "")
    torn = min(map(len, found[0].split())) <= _LETTERS_APART
    return closed if torn and is_large_town(closed) and not is_large_town(found[0]) else found[0]


def in_case(name: str) -> str:
    """Return a name with small letters for the capitals that a whole word is set in."""
    return " ".join(word.capitalize() if word.isupper() else word for word in name.split())


def is_large_town(text: str) -> bool:
    """Say whether a text is the name of a large town of the world, in capitals or not."""
    return in_case(text) in large_towns()


@cache
def large_towns() -> frozenset[str]:
    """Return the names of the large towns of the world (data/places.toml, with its source)."""
    text = files("adminer.parsing").joinpath("data", "places.toml").read_text(encoding="utf-8")
    return frozenset(tomllib.loads(text)["towns"])

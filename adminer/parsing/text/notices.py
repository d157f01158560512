"""Small notices, each opened by the name of its goods in capitals that run into the line: "ICE BOX, oak, $6.00".

Classified columns set them so, and catalogues, before the name the letter of its picture ("(E) BREAD BOX. Enameled").
Common practice, no source.
"""

from __future__ import annotations

import re
from typing import Final

from adminer.parsing.text.columns import is_head
from adminer.parsing.text.lexicon import word_list
from adminer.parsing.text.text import AdvertText

_FIGURE: Final = re.compile(r"\d+(?:-[A-Z]+\.?)?$")  # "1929 COACH, new paint", "42-PC. SET of china"
_ENDS: Final = re.compile(r"[,.;:—–-]$")
_LETTER: Final = re.compile(r"\(?[A-Z]\) ")  # of the picture
_ENDED: Final = re.compile(r"[.!?][\"'”’)]?$")
_CLAUSE: Final = re.compile(r"[,.;:] ")
_LETTERS: Final = 3  # of a name in capitals, at least
_WORDS: Final = 5  # of it, at most
_FEWEST: Final = 3  # notices that make it the custom of an advert
_MATTERS: Final = word_list("notice_matter")  # what a notice is for is no name of its goods


def lead_in(text: str) -> str:
    """Return the name in capitals that a text opens with, a figure before it; empty where it has none or no more."""
    words = _without_letter(text).split()
    taken: list[str] = []
    for word in words:
        if word != word.upper() or not (any(map(str.isalpha, word)) or (not taken and _FIGURE.match(word))):
            break
        taken.append(word)
        if _ENDS.search(word) and not _FIGURE.match(word):
            break
    name = " ".join(taken).rstrip(" ,.;:—–-")
    told = [w.strip("&'’.,").lower() for w in name.split()]
    letters = sum(map(str.isalpha, name))
    if letters < _LETTERS or len(told) > _WORDS or all(w in _MATTERS for w in told):
        return ""
    return name if any(map(str.islower, " ".join(words[len(taken) :]))) else ""


def _without_letter(text: str) -> str:
    m = _LETTER.match(text)
    return text[m.end() :] if m else text


def name_of_notice(text: str) -> str:
    """Return the short name of a notice: its words in capitals, of one word with what tells of it ("ROOM, warm")."""
    name = lead_in(text) or _without_letter(text)
    if " " in name:
        return name
    told = _CLAUSE.split(text[text.find(name) + len(name) :].strip(" ,.;:—–-"), maxsplit=1)[0]
    return f"{name}, {told}" if told and len(told.split()) < _WORDS else name


def notices(advert: AdvertText) -> frozenset[int]:
    """Return the numbers of the lines that open notices, none where too few do to make it a custom.

    The line over such a line ends a sentence, or heads it, but where the letter of a picture opens it.
    """
    found = set()
    for line in advert.lines:
        if not lead_in(advert.printed(line)):
            continue
        if _LETTER.match(advert.printed(line)):
            found.add(line.number)
            continue
        over = advert.lines[line.number - 1] if line.number else None
        text = advert.printed(over).rstrip() if over is not None else ""
        if over is None or text.isupper() or _ENDED.search(text) or is_head(advert, over, line):
            found.add(line.number)
    return frozenset(found) if len(found) >= _FEWEST else frozenset()

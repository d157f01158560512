"""Names of lines that no authority file knows: found by grammar ("the ... pattern") and by typography.

A name in display type is a guess until it is seen again; what is found here is gathered across adverts and proposed
to a person, never linked by itself.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Final

from spacy.tokens import Doc

from adminer.names.matching import fold_name
from adminer.parsing.lexicon import word_list
from adminer.parsing.offers import speaks_of_tableware
from adminer.parsing.pipeline import LINES, MAKERS, PIECES, names_of, terms_of
from adminer.parsing.text import AdvertText, TextLine
from adminer.records import Box, Link

_NAME_WORD: Final = r"(?:[A-Z][A-Za-z'’]+)"
_JOINERS: Final = r"(?:(?:of|and|&|the|de|la|le|du) )?"
_NAME: Final = rf"{_NAME_WORD}(?: {_JOINERS}{_NAME_WORD}){{0,3}}"
_QUOTED: Final = re.compile(rf"[“\"‘]\s?(?P<name>{_NAME})\s?[”\"’]")
_BEFORE: Final = re.compile(
    rf"(?P<name>{_NAME})[”\"’]? (?:pattern|design|dinnerware|china(?!ware)|decoration|line|tableware|dinner set|"
    rf"semi-porcelain|ironstone)\b"
)
_AFTER: Final = re.compile(rf"\b(?:pattern|design|decoration|line)(?: is| called| named|:|,)? [“\"‘]?(?P<name>{_NAME})")
_MADE_BY: Final = re.compile(
    r"^(?:(?:by|now made by|fine china by|china by|ironstone by|dinnerware by|pottery by|a product of|made by|"
    r"created by|"
    r"fine china|dinnerware|ironstone|semi-porcelain|translucent china|ovenware|stainless|silverplate|melamine)\b)",
    re.IGNORECASE,
)
_SLOGAN: Final = word_list("slogan")
_DISPLAY: Final = 1.8  # times the body type
_LEAST: Final = 0.3
_ALONE: Final = 0.35  # score of a name that only its type speaks for
_WARE_REACH: Final = 40  # body types down the column within which tableware must be named


@dataclass(frozen=True, slots=True)
class _Candidate:
    start: int
    end: int
    name: str
    score: float
    why: str


def find_unknown_names(doc: Doc, advert: AdvertText, taken: list[tuple[int, int]]) -> tuple[Link, ...]:
    """Return names that may be lines without an entry; `taken` are characters of prices, dates, signature and terms."""
    if not speaks_of_tableware(doc):
        return ()
    known = [(n.start, n.end) for key in (LINES, MAKERS) for n in names_of(doc, key)]
    known += [(s.start_char, s.end_char) for s in doc.spans[PIECES] if s.end_char - s.start_char > 4]
    blocked = known + taken + [(t.start, t.end) for t in terms_of(doc)]
    found: dict[str, _Candidate] = {}
    ware = [
        advert.flat(advert.box_of(s.start_char, s.end_char)) for s in doc.spans[PIECES] if s.end_char - s.start_char > 4
    ]
    for candidate in [*_by_grammar(doc.text), *(c for c in _by_type(advert) if _has_ware_near(advert, c, ware))]:
        if any(candidate.start < end and start < candidate.end for start, end in blocked):
            continue
        if not _is_name(candidate.name):
            continue
        key = fold_name(candidate.name)
        if key in found:
            one, two = sorted((found[key], candidate), key=lambda c: -c.score)
            again = one.why.startswith("stands alone") and two.why.startswith("stands alone")  # the same kind of guess
            score = one.score if again else round(1 - (1 - one.score) * (1 - two.score), 3)
            found[key] = _Candidate(one.start, one.end, one.name, score, f"{one.why}; {two.why}")
        else:
            found[key] = candidate
    best = sorted(found.values(), key=lambda c: (-c.score, c.start))
    return tuple(
        Link(
            None, c.name, " ".join(advert.text[c.start : c.end].split()), advert.box_of(c.start, c.end), c.score, c.why
        )
        for c in best
        if c.score >= _LEAST
    )


def _has_ware_near(advert: AdvertText, candidate: _Candidate, ware: list[Box]) -> bool:
    """Say whether pieces of tableware are named in the column under or just over a name in display type."""
    if candidate.score > _ALONE:
        return True  # its maker or ware stands right under it
    place = advert.flat(advert.box_of(candidate.start, candidate.end))
    reach = _WARE_REACH * advert.body_px
    return any(
        min(box.right, place.right) > max(box.x, place.x) and -reach / 4 < box.y - place.bottom < reach for box in ware
    )


def _by_grammar(text: str) -> list[_Candidate]:
    made = []
    for pattern, score, why in (
        (_BEFORE, 0.6, "stands before a word like “pattern”"),
        (_AFTER, 0.45, "stands after a word like “pattern”"),
        (_QUOTED, 0.5, "stands in quotation marks"),
    ):
        for m in pattern.finditer(text):
            start, name = _without_slogan(m.start("name"), m["name"])
            if name:
                made.append(_Candidate(start, start + len(name), name, score, why))
    return made


def _without_slogan(start: int, name: str) -> tuple[int, str]:
    """Drop words like "The" and "New" from the front of a name."""
    while name and name.split(maxsplit=1)[0].lower() in _SLOGAN:
        cut = len(name.split(maxsplit=1)[0]) + 1
        start, name = start + cut, name[cut:]
    return start, name


def _by_type(advert: AdvertText) -> list[_Candidate]:
    """Find names set alone in display type, surer where the next line says who made it."""
    made = []
    for i, line in enumerate(advert.lines):
        size = line.type_px / advert.body_px
        if size < _DISPLAY or len(line.words) > 4:
            continue
        name = advert.text[line.start : line.end].strip(" .,:;!-*“”\"'")
        score, why = _ALONE, f"stands alone in type {size:.1f} times the body"
        if _maker_below(advert, line, advert.lines[i + 1 : i + 3]):
            score, why = 0.75, why + ", with the maker or ware under it"
        if name.isupper():
            score -= 0.05
        made.append(_Candidate(line.start, line.end, name, score, why))
    return made


def _maker_below(advert: AdvertText, line: TextLine, below: tuple[TextLine, ...]) -> bool:
    for other in below:
        gap = other.flat.centre[1] - line.flat.centre[1]
        if 0 < gap < 1.6 * line.type_px + other.type_px and _MADE_BY.match(advert.text[other.start : other.end]):
            return True
    return False


def _is_name(name: str) -> bool:
    words = name.split()
    if not 1 <= len(words) <= 4 or len(name) < 4 or re.search(r"[\d$¢%!?]", name):
        return False
    lower = [re.sub(r"[^a-z]", "", w.lower()) for w in words]
    strange = [w for w in lower if w not in _SLOGAN and len(w) > 2]
    slogans = sum(w in _SLOGAN for w in lower if w not in {"and", "of", "the"})
    return bool(strange) and slogans == 0 and words[0][0].isupper()

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
from adminer.parsing.offers.linking import speaks_of_tableware
from adminer.parsing.tables.price_lists import PriceList
from adminer.parsing.terms.pipeline import LINES, MAKERS, PIECES, names_of, terms_of
from adminer.parsing.text.lexicon import word_list
from adminer.parsing.text.text import AdvertText, TextLine
from adminer.records import Box, Link

_NAME_WORD: Final = r"(?:[A-Z][A-Za-z'’]+)"
_JOINERS: Final = r"(?:(?:of|and|&|the|de|la|le|du) )?"
_NAME: Final = rf"{_NAME_WORD}(?: {_JOINERS}{_NAME_WORD}){{0,3}}"
_ONE: Final = rf"{_NAME_WORD}(?: (?:of )?{_NAME_WORD}){{0,2}}"  # in a list "and" parts names
_QUOTED: Final = re.compile(rf"[“\"‘]\s?(?P<name>{_NAME})\s?[”\"’](?! ?(?:[Ss]hape|[Ss]ize|[Bb]rand))")
_BEFORE: Final = re.compile(
    rf"(?P<name>{_NAME})[”\"’]? (?:pattern|design|china(?!ware)|decoration|line|dinner set|(?i:dinner ?ware|tableware|"
    r"semi-porcelain|ironstone|stoneware|stainless|silverplate|flatware|glassware|crystal|melamine))\b"
)
_AFTER: Final = re.compile(
    r"\b(?:(?:pattern|design|decoration|line)(?: is| called| named|:|,)?|"
    rf"(?:in|of) (?:our |the )?(?:lovely|beautiful|famous)) [“\"‘]?(?P<name>{_NAME})"
)
_LISTED: Final = re.compile(
    rf"\b(?:[Pp]atterns|[Dd]esigns|[Dd]ecorations)(?::| are| in)? (?P<names>{_ONE}(?:,? (?:and |or )?{_ONE})+)"
)
_TITLED: Final = re.compile(rf"\b(?:[Ss]et|[Ss]ervice|[Dd]innerware)\. (?P<name>{_NAME})\.(?!\w)")  # mail-order style
_DASHED: Final = re.compile(rf" [—–-]+ ?(?P<name>{_NAME})(?=\n|$)")
_BEFORE_PIECE: Final = re.compile(r"(?:^|\n|[^\w ] )(?P<name>(?:[A-Z][a-z'’]+ ){2,3})$")
_NAME_HEADS: Final = frozenset({"design", "pattern", "name", "decoration"})
_MADE_BY: Final = re.compile(
    r"^(?:(?:by|now made by|fine china by|china by|ironstone by|dinnerware by|pottery by|a product of|made by|"
    r"created by|"
    r"fine china|dinnerware|ironstone|semi-porcelain|translucent china|ovenware|stainless|silverplate|melamine)\b)",
    re.IGNORECASE,
)
_SET: Final = re.compile(r"\d+[- ](?:pc|piece)|service for|set of \w+|place setting", re.IGNORECASE)
_JOINING: Final = frozenset({"of", "&", "de", "la", "le", "du"})
_SLOGAN: Final = word_list("slogan")
_DISPLAY: Final = 1.8  # times the body type
_LEAST: Final = 0.3
_SHORTEST: Final = 5  # letters of a single word that only grammar speaks for: "Tlie pattern" is a misread "the"
_TITLE: Final = 1.3  # times the type of the piece or set that a name is set over
_OVER: Final = 3.2  # sizes of the larger type from line to line of one block
_SURNAMES: Final = re.compile(r"^[A-Z]\w+[-–][A-Z]\w+$")  # the style of a house
_ALONE: Final = 0.35  # score of a name that only its type speaks for
_WARE_REACH: Final = 40  # body types down the column within which tableware must be named


@dataclass(frozen=True, slots=True)
class _Candidate:
    start: int
    end: int
    name: str
    score: float
    why: str


def find_unknown_names(
    doc: Doc, advert: AdvertText, taken: list[tuple[int, int]], table: PriceList | None = None
) -> tuple[Link, ...]:
    """Return names that may be lines without an entry; `taken` are characters of prices, dates, signature and terms."""
    columns = _by_column(advert, table)
    if not columns and not speaks_of_tableware(doc):
        return ()
    known = [(n.start, n.end) for key in (LINES, MAKERS) for n in names_of(doc, key)]
    known += [(s.start_char, s.end_char) for s in doc.spans[PIECES] if s.end_char - s.start_char > 4]
    blocked = known + taken + [(t.start, t.end) for t in terms_of(doc)]
    found: dict[str, _Candidate] = {}
    ware = [
        advert.flat(advert.box_of(s.start_char, s.end_char)) for s in doc.spans[PIECES] if s.end_char - s.start_char > 4
    ]
    printed = [
        *columns,
        *_by_grammar(doc.text),
        *_by_piece(doc, advert),
        *(c for c in _by_type(advert, doc) if _has_ware_near(advert, c, ware)),
    ]
    for candidate in printed:
        if any(candidate.start < end and start < candidate.end for start, end in blocked):
            continue
        if not _is_name(candidate.name):
            continue
        key = fold_name(candidate.name)
        if key in found:
            one, two = sorted((found[key], candidate), key=lambda c: -c.score)
            again = one.why.split(" in type")[0] == two.why.split(" in type")[0]  # the same kind of guess
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
    return any(box.across(place) > 0 and -reach / 4 < box.y - place.bottom < reach for box in ware)


def _by_grammar(text: str) -> list[_Candidate]:
    made = []
    for m in _LISTED.finditer(text):
        for one in re.finditer(_ONE, m["names"]):
            at = m.start("names") + one.start()
            made.append(_Candidate(at, at + len(one[0]), one[0], 0.6, "stands in a list of patterns"))
    for pattern, score, why in (
        (_BEFORE, 0.6, "stands before a word like “pattern”"),
        (_AFTER, 0.45, "stands after a word like “pattern”"),
        (_QUOTED, 0.5, "stands in quotation marks"),
        (_TITLED, 0.5, "stands as a sentence after a set"),
    ):
        for m in pattern.finditer(text):
            start, name = _without_slogan(m.start("name"), m["name"])
            if name and (" " in name or len(name) >= _SHORTEST):
                made.append(_Candidate(start, start + len(name), name, score, why))
    return made


def _by_column(advert: AdvertText, table: PriceList | None) -> list[_Candidate]:
    """Find the names of a trade list: what stands in the column headed "Design", "Pattern" or "Name"."""
    made = []
    for start, end, head in table.names if table is not None else ():
        if head not in _NAME_HEADS:
            continue
        name = advert.text[start:end].strip(" .,:;*")
        made.append(_Candidate(start, end, name, 0.6, f"stands in the column headed “{head}”"))
    return made


def _by_piece(doc: Doc, advert: AdvertText) -> list[_Candidate]:
    """Find the names beside pieces: "Tansy Morn dinner plate" (capitals before none), "Soup plate — Quince Arbor"."""
    made = []
    text = doc.text  # joined anew from its tokens each time it is asked for
    for m in _DASHED.finditer(text):
        first = advert.line_at(m.start()).start
        if any(first <= s.start_char and s.end_char <= m.start() for s in doc.spans[PIECES]):
            made.append(_Candidate(*m.span("name"), m["name"], 0.4, "stands after a piece and a dash"))
    for span in doc.spans[PIECES]:
        found = _BEFORE_PIECE.search(text, 0, span.start_char) if span.text.islower() else None
        if found is not None:
            start, name = _without_slogan(found.start("name"), found["name"].strip())
            if " " in name:
                made.append(_Candidate(start, start + len(name), name, 0.45, "stands before the name of a piece"))
    return made


def _without_slogan(start: int, name: str) -> tuple[int, str]:
    """Drop words like "The" and "New" from the front of a name."""
    while name and name.split(maxsplit=1)[0].lower() in _SLOGAN:
        cut = len(name.split(maxsplit=1)[0]) + 1
        start, name = start + cut, name[cut:]
    return start, name


def _by_type(advert: AdvertText, doc: Doc) -> list[_Candidate]:
    """Find names set alone in display type, in one line or two, surer where the next line says who made it.

    A name over the piece or set it is of may be smaller.
    """
    made: list[_Candidate] = []
    joined: set[int] = set()  # second lines of names
    text = doc.text  # joined anew from its tokens each time it is asked for
    pieces = {s.start_char for s in doc.spans[PIECES] if s.end_char - s.start_char > 4}
    for i, line in enumerate(advert.lines):
        size = line.type_px / advert.body_px
        below = advert.lines[i + 1] if i + 1 < len(advert.lines) else None
        if line.number in joined:
            continue
        last, following = line, advert.lines[i + 1 : i + 3]
        if below is not None and size >= _DISPLAY and _goes_on(line, below) and _is_name(_words(advert, line, below)):
            last, following = below, advert.lines[i + 2 : i + 4]
            joined.add(below.number)
        if len(line.words) + (len(last.words) if last is not line else 0) > 4:
            continue
        heads = below is not None and last is line and _heads_a_piece(pieces, text, line, below)
        if size < _DISPLAY and not heads:
            continue
        name = _words(advert, line, last)
        score, why = _ALONE, f"stands alone in type {size:.1f} times the body"
        if heads:
            score, why = _ALONE + 0.1, f"stands over a piece in type {size:.1f} times the body"
        if _maker_below(advert, last, following):
            score, why = 0.75, why + ", with the maker or ware under it"
        if name.isupper():
            score -= 0.05
        made.append(_Candidate(line.start, last.end, name, score, why))
    return made


def _words(advert: AdvertText, first: TextLine, last: TextLine) -> str:
    return " ".join(advert.text[first.start : last.end].split()).strip(" .,:;!-*“”\"'")


def _goes_on(above: TextLine, below: TextLine) -> bool:
    """Say whether two lines of one or two words are one name in two lines: of one type, close under each other."""
    step = below.flat.centre[1] - above.flat.centre[1]
    alike = 0.7 < above.type_px / max(below.type_px, 1.0) < 1.4
    across = above.flat.across(below.flat)
    return alike and len(above.words) <= 2 and len(below.words) <= 2 and 0 < step < 2.4 * above.type_px and across > 0


def _heads_a_piece(pieces: set[int], text: str, line: TextLine, below: TextLine) -> bool:
    """Say whether a line in larger type stands right over one that begins with a piece or a set.

    `pieces` are the first characters of pieces in the text.
    """
    step = below.flat.centre[1] - line.flat.centre[1]
    if not 0 < step < _OVER * line.type_px or line.type_px < _TITLE * below.type_px:
        return False
    return bool(_SET.match(text[below.start : below.end])) or below.start in pieces


def _maker_below(advert: AdvertText, line: TextLine, below: tuple[TextLine, ...]) -> bool:
    for other in below:
        gap = other.flat.centre[1] - line.flat.centre[1]
        if 0 < gap < 1.6 * line.type_px + other.type_px and _MADE_BY.match(advert.printed(other)):
            return True
    return False


def _is_name(name: str) -> bool:
    words = name.split()
    if not 1 <= len(words) <= 4 or len(name) < 4 or re.search(r"[\d$¢%!?,:;()]", name) or _SURNAMES.match(name):
        return False
    if words[-1].lower() in _JOINING | {"and", "the"}:
        return False
    if (len(words) == 1 and len(name) < _SHORTEST) or any(len(w) < 3 and w.lower() not in _JOINING for w in words):
        return False
    lower = [re.sub(r"[^a-z]", "", w.lower()) for w in words]
    strange = [w for w in lower if w not in _SLOGAN and len(w) > 2]
    slogans = sum(w in _SLOGAN for w in lower if w not in {"and", "of", "the"})
    return bool(strange) and slogans == 0 and words[0][0].isupper()

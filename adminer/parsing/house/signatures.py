"""Who placed an advert: one scored choice among all its lines.

Each line that may hold a name gathers evidence, weights that add up: its form, its type against the body, its place,
the address or telephone beside it, its trade under it, whether it stands again elsewhere; and against it that it is
goods, talk, or the label of a price. A line with a form of its own needs less than one that only its type and place
speak for. All weights are judgement, no source.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Final

from adminer.parsing.house.address_slips import is_large_town
from adminer.parsing.house.house_forms import (
    BAZAAR,
    FIRM,
    OFFICER,
    PROPRIETOR,
    THEATRE,
    is_coined,
    is_common,
    is_plain,
    is_trade_line,
    names_goods,
    weigh_form,
)
from adminer.parsing.house.house_lines import Candidate, find_candidates
from adminer.parsing.house.name_echoes import find_echo, find_firm, is_ware
from adminer.parsing.house.neighbours import around, behind, beside, stands_first
from adminer.parsing.house.run_on_names import find_run_on_names
from adminer.parsing.house.shop_places import is_place, starts_address
from adminer.parsing.text.text import AdvertText, TextLine
from adminer.records import Box, Link

# what each thing says for or against a line, beside the weight of its form (house_forms.py)
_WEIGHTS: Final = {
    "type": 0.15,  # for each body size of its type
    "type at most": 0.7,
    "largest": 0.2,  # no other words stand in type nearly as large
    "capitals": 0.15,
    "last word broken off": 0.2,  # a name set in two lines for its last word
    "small letters": -0.5,  # a word of a name begins with a capital
    "all small letters": -0.1,  # but logotypes of the 1970s stand in small letters throughout
    "foot": 0.35,
    "head": 0.15,
    "first": 0.2,  # in large type, over everything else in the advert
    "page number": 0.5,  # beside it at the very head: the running head of a catalogue
    "by post": 0.8,  # a department or box number right behind it
    "behind a dash": 0.8,  # before the address that ends the advert
    "address behind": 0.6,
    "address beside": 0.5,
    "address near": 0.35,
    "address alone below": 0.4,  # the foot has an address and no name over it
    "trade": 0.3,
    "again with particulars": 0.5,
    "again at the foot": 0.3,
    "again on coupons or stamps": 0.5,
    "proprietor": 0.4,
    "officer": 0.25,  # he signs for the house, whose name may stand elsewhere
    "signed": 0.4,
    "shows": 0.6,  # a theatre's name, and the advert speaks of shows
    "a sentence": -0.9,
    "plain words": -0.5,
    "a common word": -0.2,
    "goods": -0.6,
    "goods in a name's form": -0.3,
    "a price beside it": -0.4,
    "a price behind it": -0.6,
}
_FORMED: Final = 0.75  # the score from which a name with a form of its own is believed
_UNFORMED: Final = 0.9  # the same for one that only type, place and neighbours speak for
_SURE: Final = 2.2  # the score of a name beyond doubt
_LARGE: Final = 1.8  # times the body: from here a line may be a logotype
_NO_BODY: Final = 1.25  # times the body: from here type says something
_LARGEST: Final = 1.25  # times the next largest line of words
_HEAD, _FOOT = 0.15, 0.7  # of the advert's height
_NEAR_LINES: Final = 3
_LAST_LINES: Final = 2
_LOGOTYPE_WORDS: Final = 4
_TRADE_WORDS: Final = 7
_PRICE: Final = re.compile(r"[$¢£]|\d ?c\b|\d/-|\d/\d|^\W*\.?\d+(?:\.\d\d)?\W*$")
_OF_TOWNS: Final = re.compile(r" of [A-Z]\w+(?: [A-Z]\w+)?(?:,| and| &|$)")  # "Thorne's of Osterby and Ferncliff"
_BY_POST: Final = re.compile(r"^[,. ]*(?:Dept|Desk|Box|Drawer|Station)\.? ?[A-Z0-9]", re.IGNORECASE)
_TRADE_LINE: Final = re.compile(
    r"\b(?:Establishment|Drapers?|Ironmongers?|Drapery|Jewell?er|(?:authorized|franchised) dealers?|dealers? in)\b",
    re.IGNORECASE,
)
_TALK: Final = re.compile(
    r"(?<![\w'’-])(?:from|with|while|until|when|if|because|you|your|yours|we|our|us|i|my|it|its|they|them|this|these|that|"
    r"is|are|was|were|will|be|have|has|can|do|don['’]t|let['’]s|now|here|there)(?![\w'’-])",
    re.IGNORECASE,
)
_SHOWS: Final = re.compile(
    r"\b(?:matin[eé]es?|admission|balcony|gallery|cartoon|newsreel|serial|chapter \d|reels?|"
    r"(?:dish|bank|amateur) ni(?:te|ght)|two shows|shows? (?:at|starts?|every)|curtain at|double feature|talkies?|"
    r"vaudeville|photoplay|double bill|shows? \d+|(?:adults?|children|students) (?=\d))\b",
    re.IGNORECASE,
)
_OWN_NAME: Final = 0.6  # the weight of a form that goods and labels do not have
_JOINING: Final = frozenset({"and", "&", "of", "the", "de", "at", "for", "in"})


@dataclass(slots=True)
class _Case:
    """Hold what speaks for one candidate, and what it comes to."""

    score: float = 0.0
    reasons: list[str] = field(default_factory=list)
    witnesses: int = 0  # things beside form and type that speak for it

    def add(self, weight: float, reason: str = "", *, witness: bool = False) -> None:
        self.score += weight
        self.witnesses += witness
        if reason:
            self.reasons.append(reason)


def find_signature(advert: AdvertText, box: Box) -> Link | None:
    """Weigh each line as the advertiser's name and return the likeliest; None where none is likely enough.

    `box` is the advert's, in pixels.
    """
    weighed = [
        (c, case)
        for c in (*find_candidates(advert), *find_run_on_names(advert))
        if (case := _weigh(advert, box, c)) is not None
    ]
    if not weighed:
        return None
    # of lines that say as much the one with more of the name
    best, case = max(weighed, key=lambda pair: (round(pair[1].score, 2), len(pair[0].name)))
    firm = find_firm(best, [c for c, one in weighed if one.witnesses])
    if firm is not None:
        best, case = next(pair for pair in weighed if pair[0] is firm)
    why = "taken as the signature: " + ", ".join(case.reasons)
    return Link(None, best.name, best.name, best.line.box, min(round(case.score / _SURE, 2), 0.9), why)


def _weigh(advert: AdvertText, box: Box, candidate: Candidate) -> _Case | None:
    form, reason = weigh_form(candidate.name, behind(advert, candidate))
    case = _Case()
    if form:
        case.add(form, reason)
    elif candidate.dashed or candidate.signs or _may_be_name(advert, candidate):
        case.add(0.0, "a name in large type" if candidate.line.type_px >= _LARGE * advert.body_px else "a name")
    else:
        return None
    _weigh_look(advert, candidate, case)
    _weigh_place(advert, box, candidate, case)
    near = around(advert, candidate)
    _weigh_neighbours(advert, candidate, near, case)
    if candidate.has_kind and form < _OWN_NAME:
        case.add(_WEIGHTS["trade"], "its trade beside it", witness=True)
    _weigh_echoes(advert, candidate, case)
    _weigh_against(advert, candidate, near, case, form)
    if form:
        return case if case.score > _FORMED else None
    return case if case.witnesses and case.score > _UNFORMED else None


def _weigh_look(advert: AdvertText, candidate: Candidate, case: _Case) -> None:
    size = candidate.line.type_px / advert.body_px
    if size > _NO_BODY:
        case.add(min(_WEIGHTS["type"] * size, _WEIGHTS["type at most"]), f"type {size:.1f} times the body")
    if candidate.name.isupper():
        case.add(_WEIGHTS["capitals"])
    if candidate.last is not candidate.line and len(candidate.last.words) == 1:
        case.add(_WEIGHTS["last word broken off"])
    words = re.findall(r"[^\s]+", candidate.name)
    if not all(w[0].isupper() or not w[0].isalpha() or w.lower() in _JOINING for w in words):
        all_small = size > _LARGE and candidate.name.islower()
        case.add(_WEIGHTS["all small letters" if all_small else "small letters"])
    others = [n for n in advert.lines if not candidate.holds(n)]
    sizes = [n.type_px for n in others if re.search(r"[A-Za-z]{3}", advert.printed(n))]
    if size > _LARGE and candidate.line.type_px >= _LARGEST * max(sizes, default=1.0):
        case.add(_WEIGHTS["largest"], "the largest words")
        name = candidate.name
        own = not is_common(name) or weigh_form(name, "")[0] > 0 or BAZAAR.fullmatch(name) is not None
        if own and any(starts_address(advert.printed(n)) for n in others[-_NEAR_LINES:]):
            case.add(_WEIGHTS["address alone below"], "an address without a name below", witness=True)


def _weigh_place(advert: AdvertText, box: Box, candidate: Candidate, case: _Case) -> None:
    place = (candidate.line.box.centre[1] - box.y) / max(box.h, 1)
    if place > _FOOT:
        case.add(_WEIGHTS["foot"], "near the foot")
    elif place < _HEAD:
        case.add(_WEIGHTS["head"], "at the head")
        if stands_first(advert, candidate) and not is_plain(candidate.name):
            case.add(_WEIGHTS["first"], "over all else", witness=_is_logotype(candidate))
    folio = candidate.has_folio or any(
        re.fullmatch(r"\d{1,4}", advert.printed(n)) and beside(candidate.line, n) for n in advert.lines
    )
    if folio and place < _HEAD / 2:
        case.add(_WEIGHTS["page number"], "with the number of the page", witness=True)


def _is_logotype(candidate: Candidate) -> bool:
    """Say whether a name is one coined word in small letters: "thornemart"; with a capital it may be a line of ware."""
    return re.fullmatch(r"[a-z]+", candidate.name) is not None and is_coined(candidate.name)


def _weigh_neighbours(advert: AdvertText, candidate: Candidate, near: Sequence[TextLine], case: _Case) -> None:
    own = behind(advert, candidate)
    if _BY_POST.match(own):
        case.add(_WEIGHTS["by post"], "a department or box number after it", witness=True)
    elif _is_addressed(own):
        case.add(_WEIGHTS["address behind"], "an address behind it", witness=True)
    elif any(is_place(advert.printed(n)) for n in near):
        case.add(_WEIGHTS["address beside"], "an address beside it", witness=True)
    else:
        following = " ".join(advert.printed(n) for n in advert.lines[candidate.last.number + 1 :][:_NEAR_LINES])
        if is_place(following):
            case.add(_WEIGHTS["address near"], "an address near it")
    below = [n for n in near if n.flat.y > candidate.last.flat.centre[1]]
    if (
        candidate.has_kind
        or any(len(n.words) <= 8 and _is_trade_of(advert.printed(n)) for n in below[:1])
        or is_trade_line(own.strip(" ,."))
    ):
        case.add(_WEIGHTS["trade"], "its trade under it", witness=True)
    if THEATRE.fullmatch(candidate.name) and _SHOWS.search(advert.text):
        case.add(_WEIGHTS["shows"], "a theatre's name among shows", witness=True)
    if OFFICER.match(own.strip(" ,.")):
        case.add(_WEIGHTS["officer"], "an officer of the house")
    elif PROPRIETOR.search(own) or any(PROPRIETOR.search(advert.printed(n)) for n in below[:1]):
        case.add(_WEIGHTS["proprietor"], "its proprietor behind it", witness=True)
    if candidate.dashed:
        case.add(_WEIGHTS["behind a dash"], "behind a dash before the last address", witness=True)
    if candidate.signs or _is_signed(advert, candidate):
        case.add(_WEIGHTS["signed"], "an address after it ends the advert", witness=True)


def _is_signed(advert: AdvertText, candidate: Candidate) -> bool:
    """Say whether a line that ends with a comma is followed by the last lines of its advert: "R. THORNE, / Tinner"."""
    rest = advert.lines[candidate.last.number + 1 :]
    ends = advert.printed(candidate.last).endswith(",") and candidate.after.strip() == ","
    return ends and 1 <= len(rest) <= _LAST_LINES and all(len(n.words) <= _TRADE_WORDS for n in rest)


def _is_addressed(own: str) -> bool:
    """Say whether what stands right behind a name is an address, a department or the towns of branches."""
    return bool(_BY_POST.match(own) or _OF_TOWNS.match(own)) or is_place(own.strip(" ,.·•|-"))


def _weigh_echoes(advert: AdvertText, candidate: Candidate, case: _Case) -> None:
    echo = find_echo(advert, candidate)
    if echo:
        case.add(_WEIGHTS[echo], f"named {echo}", witness=True)


def _weigh_against(
    advert: AdvertText, candidate: Candidate, near: Sequence[TextLine], case: _Case, form: float
) -> None:
    name = candidate.name
    if _TALK.search(name) or (name[:1].islower() and not name.islower()):
        case.add(_WEIGHTS["a sentence"])
    if FIRM.search(name) or form >= _OWN_NAME:
        return
    plain = is_plain(name) and not BAZAAR.fullmatch(name)
    if plain and not form:
        case.add(_WEIGHTS["plain words"])
    if plain or not _is_addressed(behind(advert, candidate)):  # a maker is called after what he makes
        if names_goods(name):
            case.add(_WEIGHTS["goods in a name's form" if form else "goods"])
        elif not plain and not form and is_common(name):
            case.add(_WEIGHTS["a common word"])
    if any(_PRICE.search(advert.printed(n)) and n.type_px > 1.2 * advert.body_px for n in near):
        case.add(_WEIGHTS["a price beside it"])
    if _PRICE.search(candidate.after):
        case.add(_WEIGHTS["a price behind it"])


def _may_be_name(advert: AdvertText, candidate: Candidate) -> bool:
    """Say whether a line without a form of its own is a few capitalised words in larger type or capitals."""
    text = re.sub(r"^The ", "", candidate.name, flags=re.IGNORECASE)
    words = text.split()
    if not 1 <= len(words) <= _LOGOTYPE_WORDS or len(text) < 4 or any(c.isdigit() for c in text):
        return False
    if BAZAAR.fullmatch(candidate.name) or (THEATRE.fullmatch(candidate.name) and _SHOWS.search(advert.text)):
        return True
    if is_large_town(text) or (len(words) == 1 and is_common(text)):
        return False
    large = candidate.line.type_px >= _LARGE * advert.body_px
    if not large and not (text.isupper() or candidate.line.type_px >= _NO_BODY * advert.body_px):
        return False
    if any(not re.fullmatch(r"[A-Z][\w'’.-]+|&|and|of", word) for word in words) and not (large and text.islower()):
        return False
    return not is_ware(advert, text)


def _is_trade_of(text: str) -> bool:
    """Say whether a line tells a trade: "General drapery establishment", "Hardware & Tinware"."""
    if re.search(r"\b(?:by|for|of|from)\b", text):  # "made by ..." stands under the name of a line
        return False
    return (is_trade_line(text) and len(text.split()) <= _TRADE_WORDS) or bool(_TRADE_LINE.search(text))

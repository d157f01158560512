"""The lines of an advert that may name its house, each parted into the name and what stands around it.

A call before it ("Write", "Shop at"), its address, department, branches and trade after it are no part of the name; a
name set in two or three lines is one. Common practice, no source.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

from adminer.dating.calendar_words import MONTHS, WEEKDAYS
from adminer.parsing.house.house_forms import (
    DIME_STORE,
    FIRM,
    HOUSE,
    PAIR,
    PRESENTS,
    is_plain,
    is_trade_line,
    weigh_form,
)
from adminer.parsing.house.logotypes import find_logotypes
from adminer.parsing.text.lexicon import word_list
from adminer.parsing.text.text import AdvertText, TextLine
from adminer.records import Box, Word

ADDRESS: Final = re.compile(
    r"\b\d{1,5}(?:-\d+)? (?:[NSEW]\.? |North |South |East |West )?[A-Z0-9][\w.'’]*(?: "
    r"[A-Z0-9][\w.'’]*){0,3},? ?(?:St|Street|Ave|Avenue|Road|Rd|Blvd|Boulevard|Place|Pl|Square|Sq|Bldg|Drive|Dr|"
    r"Lane|Highway|Broadway|Way|Terrace|Pike)\b\.?"
    r"|(?<!['’][sS] )\b(?:Cor\.?|Corner(?: of|(?= [A-Z0-9][\w.]* (?:and|&|at|St|Sts|Street|Streets)\b))|Box) "
    r"(?:of )?[A-Z0-9][\w.]*(?: (?:and|&) [A-Z][\w.]*)?",
)
LANDMARK: Final = re.compile(
    r"(?:opp(?:osite|\.)|near|next (?:door )?to|across from|facing|over|foot of|head of)(?: the)? (?=[A-Z])|"
    r"on the (?:public )?square\b|(?:(?:first|second|third|\w+ (?:doors?|blocks?|miles?)|just) )?"
    r"(?:north|south|east|west|back|rear) of the \w|\w+ (?:doors?|blocks?|steps?) from the \w",
    re.IGNORECASE,
)
_AFTER_NAME: Final = re.compile(
    r",? (?:Dept|Desk|Box|Makers?|Phone|Tel|Successors?|Proprietors?|Props?)\b|,? Box ?(?=\d)|,(?= ?\d)|"
    r"(?<=Ltd)\.? ?(?=\d)|, (?=New York|Chicago|Boston)"
)
# "Write Thorne Pottery Co.", "Shop at Thorne's and save", "Thorne's of Anytown"
_CALL: Final = re.compile(
    r"^(?:(?:write|mail|send|address|see|visit|ask|sold|made|shop|trade|buy|save)(?:,| only)?"
    r"(?: (?:to|at|by|with))?:? )+"
    r"(?=[A-Z])|^(?:now |only )?at (?=(?-i:[A-Z]))",
    re.IGNORECASE,
)
_AFTER_POSSESSIVE: Final = re.compile(r"(?<=['’][sS]),? (?:of|in|and) (?=[A-Z][a-z])")
_CORNER: Final = re.compile(r", (?=[A-Z][A-Za-z]+ (?:and|&) [A-Z])")
_SEGMENT: Final = re.compile(r",\s+(?!(?i:inc|ltd|limited|co|and|incorporated)\b|& )")
# "Thorne, Vale & Co., Osterby": the comma parts partners, not the name from its town
_PARTNERS: Final = re.compile(
    r"(?:[A-Z][\w'’.-]+, )(?:[A-Z][\w'’.-]+,? )?(?:&|and|AND) (?:C[Oo]|Company|S[Oo][Nn][Ss]?|B[Rr][Oo][Ss])\b\.?"
)
_PARTED: Final = re.compile(r" ?[·•|*] ?| [–—-] ")
_RUN_ON: Final = re.compile(r"^(?=[a-z])[^.!?]*[.!?] (?=[A-Z]\w)")  # the end of the text before a name
# the hours that a department store prints on both sides of its name
_HOURS: Final = re.compile(
    r"^(?:Store|Shop) (?:Opens|Open|Hours)\b.{0,14}?\b[ap]\.? ?m\.?,? |"
    r"(?:(?<=[a-z.])| )(?:Store )?(?:Close?s|Closed? at) ?\d.*$",
    re.IGNORECASE,
)
_FOLIO: Final = re.compile(
    r"^\d{1,4} (?=[A-Z]{3})|(?:(?<=[A-Z]{3})|(?<=\bCO\.)|(?<=\bINC\.)) \d{1,4}$"
)  # the number of a catalogue's page beside its name
_AMPERSAND: Final = re.compile(r"(?: |(?<=[A-Za-z]{3}))&(?:[a-z]? |-?(?=[A-Z]))")  # "&Co.", "&t Son", "Thorne& Vale"
_SPACED_PAIR: Final = re.compile(r"^([A-Z][a-z]{2,}|[A-Z]{3,}) [–—-] ([A-Z][a-z]{2,}|[A-Z]{3,})$")  # "Thorne - Vale"
_GLUED_PERSON: Final = re.compile(r"^(?P<first>[A-Z][a-z]{3,})(?=[A-Z][a-z]{2})")
_BRANCHES: Final = re.compile(r" (?:of|in) [A-Z]\w+(?: [A-Z]\w+)?(?:,| and| &) [A-Z].*$")
# a name in capitals among words in small letters: "Apply to J. THORNE, Quarry Lane", "THORNE'S HARDWARE on the Square"
_IN_CAPITALS: Final = re.compile(
    r"(?<![\w'’.&-])(?:(?:Mrs?|Dr|Messrs|Miss|Mme)\b\.? )?[A-Z][A-Z'’.-]*(?:['’]s)?"
    r"(?: (?:&|[A-Z][A-Z'’.-]*(?:['’]s)?)){1,6}(?![\w'’])"
)
_DATED: Final = re.compile(
    rf"\b(?:{'|'.join(sorted({*MONTHS, *WEEKDAYS}))}|Fri|Sat|Sun|Mon|Tues?|Wed|Thurs?)\b|"
    r"\b(?:spring|summer|fall|autumn|winter)(?:,? (?:and|&|-) (?:spring|summer|fall|autumn|winter)| 1[89]\d\d)\b",
    re.IGNORECASE,
)
_NO_NAME: Final = re.compile(
    r"\d{3}|[$¢%]|&$|^\d{1,3}[.,] |\bJob (?:Press|Print|Office)\b|: |(?i:\bShopping Cent(?:er|re)$|\b(?:Plaza|Mall)$)|"
    r"(?i:\b(?:Sales?|Events?|Days|Week|Values?|Specials?|Bargains?|Clearance|Clearaway|Features?|Buys)!?$)"
)
STREET_LINE: Final = re.compile(
    r"(?:^|\w )(?:Streets?|Sts?|Avenues?|Aves?|Roads?|Rd|Blvd|Lane|Terrace|Crescent|Row|Square|Sq|Place|Quay|Wharf|"
    r"Drive|Bldg|Building)\.?$",
    re.IGNORECASE,
)
_MOST_WORDS, _LONGEST = 8, 60
_OWN_NAME: Final = 0.4  # the least weight of a form that is taken out of a line
_FEWEST_PARTNERS: Final = 3
_ONE_SIZE: Final = (0.7, 1.4)
_LOGOTYPE: Final = 1.8  # times the body: from here a line may be a logotype
_SHORT: Final = 4  # words of a line that may go on in the next as one name


@dataclass(frozen=True, slots=True)
class Candidate:
    """Hold a line (or lines that are one name), the name in it, and what stands behind the name."""

    line: TextLine
    last: TextLine  # the last line it is made of
    name: str
    after: str
    has_folio: bool
    has_kind: bool = False  # whether it is a logotype with the kind of its shop set apart from it
    dashed: bool = False  # whether it stands behind a dash with the address that ends the advert
    signs: bool = False  # the same behind the last sentence

    def holds(self, line: TextLine) -> bool:
        """Say whether a line is one of those the candidate is made of."""
        return self.line.start <= line.start < self.line.end or line.start == self.last.start


def find_candidates(advert: AdvertText) -> Iterator[Candidate]:
    """Yield every line, and every two or three that may be one name, that has something like a name in it."""
    lines = [(*one, False) for one in _lines(advert)] + [(*one, True) for one in _logotypes(advert)]
    for line, last, printed, has_kind in lines + [(*one, False) for one in _in_capitals(advert)]:
        folio = _FOLIO.search(printed)
        raw = printed[: folio.start()] + printed[folio.end() :] if folio else printed
        raw = _GLUED_PERSON.sub(_part_person, _AMPERSAND.sub(" & ", raw))
        if line.type_px > _LOGOTYPE * advert.body_px:
            raw = _SPACED_PAIR.sub(r"\1-\2", raw)
        name = name_part(raw)
        if not 3 <= len(name) <= _LONGEST or len(name.split()) > _MOST_WORDS or name.startswith("&"):
            continue
        if (
            LANDMARK.match(name)
            or STREET_LINE.search(name)
            or _NO_NAME.search(DIME_STORE.sub("", name))
            or _DATED.search(name)
        ):
            continue
        at = raw.find(name)
        yield Candidate(line, last, name, raw[at + len(name) :] if at >= 0 else raw, folio is not None, has_kind)


def name_part(raw: str) -> str:
    """Return a line without what follows the name: address, department, branches, trade, a corner of streets."""
    parts = _PARTED.split(_RUN_ON.sub("", raw))
    text = next((part for part in parts if HOUSE.search(part)), parts[0])
    text = _HOURS.sub("", text)
    text = re.split(PRESENTS, _AFTER_NAME.split(ADDRESS.split(text)[0])[0])[0]
    text = _BRANCHES.sub("", _AFTER_POSSESSIVE.split(_CALL.sub("", text))[0])
    before = _CORNER.split(text)[0]
    # "Thorne, Corbelle & Vale" is a firm of three
    partners = text[:6].lower() == "messrs" and PAIR.match(text)
    text = (before if weigh_form(before, "")[0] and not partners else text).strip(" ,.;:-–—*•")
    firm = _PARTNERS.match(text)
    if firm is not None:
        text = firm[0]
    elif not PAIR.match(text):
        first, *_ = _SEGMENT.split(text)
        text = first
    return _unglued(text.strip(" ,.;:-–—*•"))


def _part_person(m: re.Match[str]) -> str:
    return m[0] + " " if m["first"].lower() in word_list("forenames") else m[0]


def _unglued(text: str) -> str:
    """Part "THE" and "CO" from a name in capitals that close setting ran together with them."""
    if not text.isupper():
        return text
    return re.sub(r"(?<=[A-Z]{4})CO\.?$", " CO", re.sub(r"^THE(?=[A-Z]{4})", "THE ", text))


def _lines(advert: AdvertText) -> Iterator[tuple[TextLine, TextLine, str]]:
    """Yield the lines with what they say, and each two or three that may be one signature.

    They are one on one row, whichever was read first, or of one size under each other.
    """
    for line in advert.lines:
        yield line, line, advert.printed(line)
    for one, two in pairwise(advert.lines):
        joined = _joined(advert, one, two)
        if joined is not None:
            yield joined[0], two, joined[1]
    for one, two, three in zip(advert.lines, advert.lines[1:], advert.lines[2:], strict=False):
        if _stacked(advert, one, two) and _stacked(advert, two, three) and _closes(advert, three):
            both = _one_line(one, two, one.words + two.words)
            said = " ".join(advert.printed(n) for n in (one, two, three))
            yield _one_line(both, three, both.words + three.words), three, said


def _logotypes(advert: AdvertText) -> Iterator[tuple[TextLine, TextLine, str]]:
    for one, two, said in find_logotypes(advert):
        box, flat = one.box.joined(two.box), one.flat.joined(two.flat)
        yield TextLine(one.number, one.start, one.end, one.words, box, flat, one.type_px, one.block), two, said


def _in_capitals(advert: AdvertText) -> Iterator[tuple[TextLine, TextLine, str]]:
    """Yield the lines of prose in which capitals set off a name that has a form of its own, from that name on."""
    for line in advert.lines:
        printed = advert.printed(line)
        for m in _IN_CAPITALS.finditer(printed):
            name = m[0].strip(" .&")
            around = printed[: m.start()] + printed[m.end() :]
            if re.search(r"[a-z]{3}", around) and weigh_form(name, "")[0] >= _OWN_NAME:
                yield line, line, f"{name}, {printed[m.end() :].lstrip(' .,')}"


def _joined(advert: AdvertText, one: TextLine, two: TextLine) -> tuple[TextLine, str] | None:
    row = min(one.box.bottom, two.box.bottom) - max(one.box.y, two.box.y) > 0.5 * min(one.box.h, two.box.h)
    swapped = row and two.box.x < one.box.x
    first, second = (two, one) if swapped else (one, two)
    said = " ".join(w.text for w in first.words if not (row and _read_twice(w.box, second)))
    trade = advert.printed(second)
    gap = second.box.x - first.box.right if row else second.box.y - first.box.bottom
    goes_on = trade.startswith("&") or said.endswith("&")
    alike = _ONE_SIZE[0] < first.type_px / max(second.type_px, 1.0) < _ONE_SIZE[1]
    large = first.type_px > 1.2 * advert.body_px and alike
    stacked = not row and _stacked(advert, one, two) and _closes(advert, two)
    if is_plain(said) and not goes_on and not stacked:
        return None
    if (stacked or ((large or goes_on) and not swapped)) and gap < 1.2 * first.type_px:
        return _one_line(one, two, first.words + second.words), f"{said} {trade}"
    return None


def _stacked(advert: AdvertText, one: TextLine, two: TextLine) -> bool:
    """Say whether a short line may go on in the one under it: both in capitals or in larger type of one size."""
    alike = _ONE_SIZE[0] < one.type_px / max(two.type_px, 1.0) < _ONE_SIZE[1]
    over = one.flat.across(two.flat) > 0 and two.flat.y > one.flat.centre[1]
    near = two.flat.y - one.flat.bottom < 1.2 * one.type_px
    above, below = advert.printed(one).rstrip(), advert.printed(two).rstrip(".,")
    display = (above.isupper() and below.split(",")[0].isupper()) or one.type_px > 1.2 * advert.body_px
    return alike and over and near and display and len(one.words) <= _SHORT and not above.endswith(",")


def _closes(advert: AdvertText, line: TextLine) -> bool:
    """Say whether a line of a word or two ends a name begun above it: "STANWICK SHOE / HOUSE"."""
    text = advert.printed(line).split(",")[0].rstrip(".")
    return len(text.split()) <= 2 and (bool(FIRM.search(text)) or is_trade_line(text) or not is_plain(text))


def _one_line(one: TextLine, last: TextLine, words: tuple[Word, ...]) -> TextLine:
    box, flat = one.box.joined(last.box), one.flat.joined(last.flat)
    return TextLine(one.number, one.start, last.end, words, box, flat, one.type_px, one.block)


def _read_twice(box: Box, beside: TextLine) -> bool:
    """Say whether a word at the end of a line is the beginning of the one beside it, read a second time."""
    shared = box.across(beside.box)
    return shared > 0.8 * box.w

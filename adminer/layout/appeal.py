"""How far a stretch of type reads as an advert, not as an article: one score of its prices, words and signature.

An advert names prices line by line, in the words of trade, and tells whose it is and where; an article tells in
sentences, which small words hold together. All weights are judgement: they were chosen on rendered whole pages of
several hands that are not in this repository, and rounded. No source.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import lru_cache
from typing import Final

import numpy as np

from adminer.layout.paper import PRICE, Paper
from adminer.layout.type_lines import TypeLine, ends_of, middle_of

_STREETS: Final = (
    "Sts?|Streets?|Aves?|Avenues?|Road|Rd|Blvd|Boulevard|Lane|Square|Sq|Plaza|Block|Bldg|Building|Arcade|Mall|Broadway|"
    "Main|Parade|Place|Terrace|Row|Wharf|Quay|Court|Drive"
)
_STREET: Final = rf"(?:{_STREETS}|{_STREETS.upper()})"
_SIGNED: Final = re.compile(
    rf"\b\d{{1,5}},? (?:[NSEW]\.? )?[A-Z][\w.']+,? {_STREET}\b|"
    rf"\b[A-Z][\w']+,? {_STREET}\b|\b\d{{1,5}} (?:[NSEW]\.? [A-Z]|North|South|East|West)|"
    rf"{_STREET}\.? (?:at|AT|and|AND|&) (?:the )?[A-Z]|\b[A-Z]\w+ (?:at|AT) (?:the )?[A-Z]\w+|"
    r"(?i:\b(?:hwy|highway|route)\b\.? \d|\b(?:next (?:to|door)|opposite|corner|across from|side of)\b|"
    r"\b(?:tele)?phones?\b.{0,8}\d|\b\d{3}-\d{4}\b|& (?:sons?|daughters?|co|bros)\b|"
    r"\b(?:bros|brothers|co|company|inc|ltd|limited)\b)"
)
_WORD: Final = re.compile(r"[^\W\d_]{2,}|\ba\b", re.IGNORECASE)
_TELLING: Final = re.compile(
    r"\b(?:the|an?|of|in|to|at|by|on|as|from|into|after|was|were|is|are|be|been|has|had|have|will|would|said|that|which|"
    r"who|whose|his|her|he|she|they|their|it|its)\b",
    re.IGNORECASE,
)
_TRADING: Final = re.compile(
    r"\b(?:per|each|lbs?|doz(?:en)?|yds?|pairs?|pkgs?|oz|gal|qt|cans?|tins?|box(?:es)?|bottles?|sizes?|sets?|free|sale|"
    r"specials?|prices?|priced|bargains?|cash|terms|credit|deposit|discount|weekly|delivered|delivery|orders?|write|send|"
    r"postpaid|call|open|closed|now|new|best|quality|fine|choice|fresh|assorted|guaranteed?|ready|stock|goods|your|you|we|"
    r"our|us|only|buy|save|formerly|reduced|reg|regular|values?|usual|begs?|honou?r|respectfully|patrons|"
    r"customers|admission|adults|matin[eé]es?|seats)\b",
    re.IGNORECASE,
)
# "a purse of $50", "no more than $10", "the drive cleared $112": a round sum that a sentence tells, no price
_SUM: Final = re.compile(
    r"\b(?:an?|the|than|of|about|nearly|some|over|by|cleared|raised|netted|totall?ed|paid|received|fined|won|drew) "
    r"\$ ?\d{1,3}(?![\d,]|\.\d)"
)
_ENDS: Final = 4  # lines at the head and at the foot of an advert among which it says whose it is
_FIRM: Final = re.compile(r"\W*[A-Z][A-Z'’&]+ [A-Z'’&]{2,}")  # a name in capitals, run on into where it is
_LAST: Final = 3  # lines at the foot among which that name is
_BASE: Final = -1.6
_PRICED: Final = 22.0  # for the share of lines with a price
_MOST_PRICED: Final = 0.4  # of its lines: a list that tells more prices is no more of an advert
_TOLD: Final = -18.0  # for the share of small words among all
_TRADED: Final = 30.0  # for the share of words of trade
_NAMED: Final = 1.9  # it tells whose it is or where
_CLOSED: Final = 2.0  # its last line is in large type
_LARGE: Final = 1.5  # times the usual type of a stretch: a name


def appeal(lines: Sequence[TypeLine]) -> float:
    """Score how far lines read as an advert: over nought they do, under it they read as an article."""
    if not lines:
        return _BASE
    words, priced, telling, trading = map(sum, zip(*(_counted(line.text) for line in lines), strict=True))
    told, traded = (count / max(1, words) for count in (telling, trading))
    said = _PRICED * min(priced / len(lines), _MOST_PRICED) + _TOLD * told + _TRADED * traded
    return _BASE + said + _NAMED * is_signed(lines) + _CLOSED * _ends_large(lines)


@lru_cache(maxsize=4096)  # of each line once: it stands in many rectangles that may be adverts
def _counted(text: str) -> tuple[int, int, int, int]:
    """Count the words of a line, its prices (one at most, no sum in a sentence), small words and words of trade."""
    words, telling, trading = (len(pattern.findall(text)) for pattern in (_WORD, _TELLING, _TRADING))
    return words, int(PRICE.search(_SUM.sub("", text)) is not None), telling, trading


def is_advert(lines: Sequence[TypeLine], paper: Paper) -> bool:
    """Say whether lines read as an advert, or end with a name larger than the text of the paper: a bank's."""
    return appeal(lines) > 0 or closes_with_name(lines, paper)


def closes_with_name(lines: Sequence[TypeLine], paper: Paper) -> bool:
    """Say whether the last line is a name larger than the text of the paper."""
    last = max(lines, key=middle_of, default=None)
    return last is not None and paper.is_large(last) and last.text[:1].isupper()


def is_signed_off(lines: Sequence[TypeLine], paper: Paper) -> bool:
    """Say whether a name set to be seen stands under the text of an advert, at most where it is to be had after it."""
    ordered = sorted(lines, key=middle_of)
    for line in reversed(ordered[-_LAST:]):
        if id(line) in paper.running:
            return False
        if (paper.is_display(line) and line.text[:1].isupper()) or (_FIRM.match(line.text) and is_signed([line])):
            return line is not ordered[0] and not all(map(paper.is_display, ordered))
    return False


def is_signed(lines: Sequence[TypeLine]) -> bool:
    """Say whether lines tell at their head or foot where a shop is, or the style of a firm."""
    return any(_SIGNED.search(line.text) for line in ends_of(lines, _ENDS))


def _ends_large(lines: Sequence[TypeLine]) -> bool:
    """Say whether the last line is in large type, as the name of a firm is and no article ends."""
    last = max(lines, key=middle_of)
    usual = float(np.median([line.type_size for line in lines]))
    return last.type_size > _LARGE * usual and last.text[:1].isupper()

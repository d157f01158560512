"""The town of an advert where no wording leads to it: one scored choice among all parts of its lines that may be one.

Each part gathers what speaks for it: it ends as towns do ("Falls", "Junction"), its words are no words of the language,
a street or landmark stands before or behind it, its telephone behind it, the shop's name before or over it, other towns
beside it. All weights are judgement, no source.
"""

from __future__ import annotations

import re
from typing import Final

from adminer.dating.calendar_words import MONTHS, WEEKDAYS
from adminer.parsing.house.addresses import LANDMARK, ROUTED, STREET, is_street_or_trade
from adminer.parsing.house.house_forms import HOUSE, PROPRIETOR, TRADE, is_trade_line
from adminer.parsing.house.page_towns import READERS
from adminer.parsing.text.goods import has_goods
from adminer.parsing.text.lexicon import word_list
from adminer.parsing.text.slips import is_word

_WEIGHTS: Final = {
    "ends as towns do": 0.8,
    "no word of the language": 0.4,
    "behind a place": 0.6,
    "before a place": 0.5,
    "whose store it is": 0.9,
    "on the line of the name": 0.4,
    "under the name": 0.3,
    "near the end": 0.2,
    "ends its line": 0.1,
    "among towns": 0.3,
    "a line of towns": 0.4,
    "in running text": -0.4,
    "beside a price": -0.6,
    "among goods": -0.8,
}
_ENOUGH: Final = 1.1
_AS_GOOD: Final = 0.85  # of towns that score about the same the first is the main store's
_PARTS: Final = re.compile(r"\s*[·•|*;:–—]\s*|\s*,\s*|(?<=\w{3})\.\s+|\s?-\s|\s+(?:&|and|AND)\s+(?=[A-Z])")
_NAME: Final = re.compile(r"(?:[A-Z][a-z]{2,}|[A-Z]{3,})(?:[ -](?:[A-Z][a-z]{2,}|[A-Z]{3,})){0,2}")
_WHOSE: Final = re.compile(
    r"^(?P<city>[A-Z][A-Za-z]{3,}(?: [A-Z][A-Za-z]{2,})?)['’][sS] (?:[A-Za-z-]+ ){0,3}"
    r"(?i:stores?|shops?|shopping|markets?|house)\b"
)
_ORDINAL: Final = r"(?:First|Second|Third|Fourth|Fifth|Sixth|Seventh|Eighth|Ninth|Tenth|Main|\d{1,2}(?:st|nd|rd|th))"
_STANDS: Final = (
    rf"\b{STREET}|{LANDMARK}|^{_ORDINAL}(?:$| (?:&|and|at|AND|AT) )|^\d{{1,5}} (?:[NSEW]\. )?[A-Z][A-Za-z]+$|{ROUTED}|"
    r"(?i:\b(?:post office|court ?house|depot|cornmarket|market place|plaza|mall|viaduct)\b)"
)
_BEHIND: Final = re.compile(_STANDS)
_PLACED: Final = re.compile(rf"{_STANDS}|(?i:\b(?:floor|hall|hotel|rink|grange|store)$)")
_CROSSING: Final = re.compile(rf"^{_ORDINAL}$|\b(?:Sts|Aves|STS|AVES)$")
_CORNER: Final = re.compile(r"\bCor(?:\.|ner\b)", re.IGNORECASE)
_PHONE: Final = re.compile(r"(?:(?:Tele)?[Pp]hones?|Tel|Ph|Dial)\b|\d{3}-\d{4}|\d-\d{4}")
_PRICE: Final = re.compile(r"[$¢£]|\d ?c\b|\d/-")
_DAYS: Final = re.compile(
    rf"\b(?:{'|'.join(sorted({*MONTHS, *WEEKDAYS}))})\b|\b(?:mon|tues|wednes|thurs|fri|satur|sun)day", re.IGNORECASE
)
_NO_TOWN: Final = (
    word_list("particulars")
    | word_list("function")
    | word_list("slogan")
    | word_list("prose")
    | {"prop", "office", "list", "dollar"}
)
_SEVERAL: Final = 3  # parts of a line that are all towns
_LAST_LINES: Final = 3
_RUNNING: Final = 6  # words of a part of a line that is a sentence
_LEAST: Final = 4  # letters


def best_town(text: str, house: str) -> str | None:
    """Return the likeliest town of an advert's text, as printed; None where no part of it is likely enough."""
    lines = text.splitlines()
    named = [at for at, line in enumerate(lines) if _names(line, house)]
    scored = [one for at in range(len(lines)) for one in _weigh_line(lines, at, named, house)]
    best = max((score for score, _ in scored), default=0.0)
    if best < _ENOUGH:
        return None
    return next(name for score, name in scored if score >= max(_ENOUGH, best - _AS_GOOD))


def _is_place(before: str) -> bool:
    """Say whether what stands before a part, on its line or over it, ends an address."""
    if not before or len(before.split()) > _RUNNING or _PRICE.search(before):
        return False
    return bool(_PLACED.search(before)) or (is_street_or_trade(before) and not is_trade_line(before))


def _names(line: str, house: str) -> bool:
    """Say whether a line names the house, in full or by the first word of its name, and is no coupon's."""
    said, name = line.lower(), house.lower()
    first = name.split(" ")[0]
    begins = len(first) >= _LEAST and said.startswith(first)
    return len(name) >= _LEAST and (name in said or begins) and "coupon" not in said


def _weigh_line(lines: list[str], at: int, named: list[int], house: str) -> list[tuple[float, str]]:
    line = lines[at]
    whose = _WHOSE.match(line)
    of_many = whose and whose["city"].lower().rstrip("s") in READERS
    if whose and not of_many and is_town_like(whose["city"], house):
        return [(_WEIGHTS["whose store it is"] + _form(whose["city"]), whose["city"])]
    parts = [part.strip(" .,()") for part in _PARTS.split(line)]
    like = [part for part in parts if is_town_like(part, house)]
    found = []
    for i, part in enumerate(parts):
        if part not in like:
            continue
        before = parts[i - 1] if i else (lines[at - 1] if at and len(parts) == 1 else "")
        behind = parts[i + 1] if i + 1 < len(parts) else ""
        if _CORNER.search(before) or re.search(rf"{re.escape(part)} (?:&|and|AND) .*{STREET}", line):
            continue  # two streets, no town, stand on its sides
        follows = _is_place(before)
        leads = bool(behind and (_BEHIND.search(behind) or _PHONE.match(behind)))
        under = any(0 <= at - n < _LAST_LINES for n in named)
        ends = at >= len(lines) - _LAST_LINES
        if not ((follows and i) or leads or under or ends):
            continue  # the middle of an advert names goods
        score = _form(part) + _WEIGHTS["behind a place"] * follows + _WEIGHTS["before a place"] * leads
        score += _WEIGHTS["on the line of the name" if at in named else "under the name"] * under
        score += _WEIGHTS["near the end"] * ends
        score += _WEIGHTS["ends its line"] * (i == len(parts) - 1)
        goods = any(has_goods(other) for other in parts if other != part)
        score += _WEIGHTS["among goods"] * goods
        score += _WEIGHTS["among towns"] * (len(like) > 1)
        score += _WEIGHTS["a line of towns"] * (len(like) == len(parts) >= _SEVERAL)
        score += _WEIGHTS["in running text"] * any(len(other.split()) > _RUNNING for other in parts)
        score += _WEIGHTS["beside a price"] * bool(_PRICE.search(line))
        found.append((round(score, 2), part))
    return found


def _form(name: str) -> float:
    words = name.lower().replace("-", " ").split()
    generic = len(words) > 1 and words[-1] in word_list("place_generics")
    score = _WEIGHTS["ends as towns do"] * (generic and not has_goods(name))
    return score + _WEIGHTS["no word of the language"] * any(not is_word(word) for word in words)


def is_town_like(name: str, house: str = "") -> bool:
    """Say whether a part of a line may be a town by itself: no goods, trade, street, person, day or everyday word."""
    words = name.lower().replace("-", " ").split()
    if len(name) < _LEAST or _NAME.fullmatch(name) is None or name.lower() in house.lower() or _DAYS.search(name):
        return False
    generic = len(words) > 1 and words[-1] in word_list("place_generics")
    if not generic and (any(word in _NO_TOWN for word in words) or all(is_word(word) for word in words)):
        return False
    if not generic and (words[0] in word_list("forenames") and len(words) > 1):
        return False
    if PROPRIETOR.search(name):
        return False
    if _CROSSING.search(name) or is_street_or_trade(name) or HOUSE.search(name) or (TRADE.search(name) and not generic):
        return False
    return generic or not has_goods(name)

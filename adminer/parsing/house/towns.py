"""The town an advert was for: printed with its state, after an address, on the contact line, or known to the file."""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import cache
from itertools import pairwise
from typing import Final

from rapidfuzz import fuzz, process

from adminer.dating.calendar_words import MONTHS, WEEKDAYS
from adminer.layout.states import STATES
from adminer.parsing.house.address_slips import in_case, is_large_town, large_towns, mend_addresses
from adminer.parsing.house.addresses import LANDS, STREET, in_full, is_street_or_trade, is_talk, towns_of_addresses
from adminer.parsing.house.page_towns import town_named
from adminer.parsing.house.signed_addresses import town_signed
from adminer.parsing.house.signed_towns import town_under
from adminer.parsing.house.town_scores import best_town
from adminer.parsing.text.goods import find_nouns, has_goods
from adminer.parsing.text.lexicon import word_list

WITH_STATE: Final = re.compile(
    rf"(?:^|[,.;] |[\n–—·•|-] ?|(?<=\d )|(?<=Street )|(?<=St\. )|\bat |\bin |\bof "
    rf")(?P<city>[A-Z][A-Za-z.'’]+(?:[ ][A-Z][A-Za-z.'’]+){{0,2}})(?: \d{{1,2}})?(?:, ?|(?<=\d)\.\n)"
    rf"(?P<state>{LANDS})(?=[^A-Za-z]|$)",
    re.IGNORECASE,
)
# "Town", "Two Words", "Town City"; then an end: of the line, of the part, or a postal zone
_NAME: Final = r"(?P<city>[A-Z][A-Za-z.]{2,}(?: [A-Z][A-Za-z]{2,}){0,2})"
_END: Final = r"(?= ?(?:[\n·•|;*–—]|[,.]? ?(?:Phone|Tel|Open|Prices|Closed)|\.? \d{1,2}(?![\w-])|[.,]?$))"
_AFTER_ADDRESS: Final = re.compile(rf"\b{STREET}(?: ?, ?|\n){_NAME}{_END}", re.MULTILINE)
# "OSTERBY: 418 Front St. · HARWICK: Mill & Third": the first of the branches
_OF_BRANCHES: Final = re.compile(
    rf"^{_NAME}: ?(?:\d{{1,5}} |[A-Z][a-z]+ (?:&|and|at) [A-Z]).*[·•|] ?[A-Z][A-Za-z]+(?: [A-Z][A-Za-z]+)?: ",
    re.MULTILINE,
)
_CENTER: Final = re.compile(r"\bat (?P<city>[A-Z][a-z]+(?: [A-Z][a-z]+)?) (?:Plaza|Shopping (?:Center|Plaza)|Mall)\b")
_BRANCHES: Final = re.compile(
    r"\b(?i:stores?|stations?|shops?|markets?|offices?|theat(?:re|er)s?)(?: ?[–—-] ?\d{1,2})? (?i:in|at) "
    r"(?P<city>[A-Z][a-z]+(?: [A-Z][a-z]+)?|[A-Z]{3,}(?: [A-Z]{3,})?)(?=,| (?i:and) | ?[·•|–—] ?|-[A-Z]|[ .]*(?:\n|$))"
)
_BEHIND_TEXT: Final = re.compile(  # "Dealers in China OSTERBY, ONT."
    rf"(?<=[a-z.] )(?P<city>[A-Z]{{4,}}(?: [A-Z]{{3,}}){{0,2}}), ?(?:{LANDS.upper()})(?![A-Za-z])"
)
# a line of a shop's particulars: what else stands on it says that its parts are addresses and towns
PARTICULARS: Final = re.compile(
    r"\b(?:\d+ stores|store hours|open (?:daily|evenings?|every|mon|tue|wed|thu|fri|sat|sun|nights?|till|'?til)|closed|"
    r"free parking|phone|telephone|tel\.|dial \d|mail (?:and|&|or) (?:phone|telephone)|phone orders|week of|delivery|"
    rf"(?:\d+|[A-Z][a-z]+) {STREET}|\d(?:st|nd|rd|th) (?:&|and|at)|(?-i:[A-Z][a-z]+ at [A-Z][a-z]+)|"
    r"route \d+|highway \d+|downtown|uptown|main office)|\b(?:super)?markets ?[·•|]|\bstores ?[·•|]",
    re.IGNORECASE,
)
_PARTS: Final = re.compile(r"\s*[·•|*:;–—]\s*|\s+-\s+|, (?=[A-Z])|(?<=\d)\. (?=[A-Z])|\n")
_ONE_NAME: Final = re.compile(
    r"[A-Z][a-z]{3,}(?: (?:[A-Z][a-z]{2,}))?(?: \d{1,2})?|[A-Z]{4,}(?: [A-Z]{3,})?(?: \d{1,2})?"
)
_PRIDE: Final = re.compile(
    r"\b(?P<city>[A-Z][a-z]{3,}(?: [A-Z][a-z]{2,})?|[A-Z]{4,}(?: [A-Z]{3,})?)['’](?i:s (?:own |only )?"
    r"(?:greater|greatest|largest|leading|finest|biggest|favou?rite|foremost|oldest|newest|busiest|friendliest)"
    r"(?: (?:[a-z'’]+ ){0,2}(?:stores?|shops?|markets?|jewell?ers?|grocer[sy]?|druggists?|outfitters?|"
    r"clothiers?|house|furniture)\b| ?(?=[-–—·•|\n]|$)))"
)
_STREET_WORD: Final = re.compile(
    r"(?:Street|St\.?|Cor\.?|Ave\.?|Avenue|Dept\.?|Box|Co\.?|Company|Road|Rd\.?|Bldg\.?|P\.|O\.|Desk|Floor|Sq\.?|"
    r"Ltd\.?|Inc\.?|Phone|Prices?|Props?\.?|Proprietors?|Mgr\.?|Manager)",
    re.IGNORECASE,
)
_CALENDAR: Final = re.compile(
    rf"^(?:{'|'.join(sorted({*MONTHS, *WEEKDAYS}))}|spring|summer|autumn|winter)$|"
    r"^(?:mon|tues|wednes|thurs|fri|satur|sun)day",
    re.IGNORECASE,
)
_PHONE: Final = re.compile(r"p[hb][oce0][nvru][ec]")  # as readers see it
_BEFORE: Final = frozenset({"north", "south", "east", "west", "st"})  # the name of a town
_NO_TOWN: Final = word_list("particulars")
_LEADING: Final = frozenset({"both", "and", "also", "all", "our", "one", "any", "every", "for", "office"})
_DISTRICT: Final = re.compile(r"(?:north|south|east|west) (?:end|side)", re.IGNORECASE)
_STANDING: Final = frozenset({"depot", "station", "hotel", "hall", "block", "building", "office"})
_NOT_A_TOWN: Final = (
    r"street|st\b|ave|avenue|road|rd\b|blvd|cream|steak|broil|style|ware|silver|china|shape|pattern|rug|chair"
)
# what stands behind a town that ends an address: the line's end, a state or zone, a mark; no word that goes on
_CLOSES: Final = re.compile(r" ?(?:$|\n|[.,]+ ?(?:[A-Z\d]|$|\n)|[·•|–—]|- |\d{1,2}(?!\d))")
_BRANCH: Final = re.compile(r"\b(?:also|branch(?:es)?|and at)\b", re.IGNORECASE)
_LIST_GOES_ON: Final = re.compile(r" ?; ?[A-Z][a-z]")  # "Grand Hotel, New York; Palmer, Chicago": who uses the goods
_LAND: Final = re.compile(STATES)
_LANDS_ON: Final = re.compile(rf"(?:,|,? (?:or|and|&)) ?{STATES}(?![A-Za-z])")  # "Ohio, Indiana or Michigan" are states
_LEAST_NAME: Final = 4  # letters of a house's name that can be told at the head of a line
_LAST_LINES: Final = 4
_SAME_TOWN: Final = 84  # rapidfuzz ratio


def find_town(
    text: str, towns: frozenset[str] = frozenset(), house: str = "", of_page: frozenset[str] = frozenset()
) -> str | None:
    """Return the town of an advert's text, spelled as `towns` (authority files and notes) spell it; None without one.

    `house` is the retailer's name as printed, which is no town where it stands alone; `of_page` are the towns that the
    head of its page names. A town with its state comes first, then one after an address, one the file or the page
    knows, one among a shop's particulars ("Open evenings · Phone 4-2290"), the likeliest part of its lines, and a
    large town of the world. The wordings are common practice, no source.
    """
    text = mend_addresses(text)
    found = (
        next((in_case(t) for find in (town_signed, town_under) if (t := find(text, house)) and _may_be_town(t)), None)
        or _with_state(text, house)
        or _named_by((_BEHIND_TEXT, _OF_BRANCHES, _BRANCHES, _CENTER, _PRIDE, _AFTER_ADDRESS), text)
        or next((in_case(t) for t in towns_of_addresses(text, house) if _may_be_town(t)), None)
        or _known(text, towns)
        or _of_page(text, of_page)
        or _large_at_the_foot(text, house)
        or _among_particulars(text, house)
        or _likeliest(text, house)
    )
    found = found or _known(text, large_towns(), house, closing=True)
    return _spelled_right(in_full(found.rstrip(".")) if found else None, towns)


def _likeliest(text: str, house: str) -> str | None:
    best = best_town(text, house)
    return in_case(best) if best else None


def _of_page(text: str, towns: frozenset[str]) -> str | None:
    named = town_named(text, towns) if towns else None
    return in_case(named) if named else None


def _large_at_the_foot(text: str, house: str) -> str | None:
    """Return a large town that is one of the last lines by itself, as department stores end their adverts."""
    last = [line.strip(" .,") for line in text.splitlines()[-_LAST_LINES:]]
    return next((in_case(line) for line in last if is_large_town(line) and line.lower() not in house.lower()), None)


def _with_state(text: str, house: str) -> str | None:
    """Return the town printed with its state on the shop's own line, else the last one."""
    found = None
    own = re.compile(rf"(?i:{re.escape(house)})[.,]? {_NAME}, ?(?:{LANDS})(?![A-Za-z])")
    if len(house) >= _LEAST_NAME and (m := own.search(text)) and not find_nouns(m["city"]):
        return in_case(m["city"])
    for m in WITH_STATE.finditer(text):
        words = m["city"].split()
        if m["city"][0].islower() or m["state"][0].islower() or find_nouns(m["city"]):
            continue  # "6 cups, o saucers", "Sweet Corn, Maine pack"
        if _LIST_GOES_ON.match(text, m.end()):
            continue
        if _LAND.fullmatch(m["city"]) and _LANDS_ON.match(text, m.end()):
            continue
        while words and _STREET_WORD.fullmatch(words[0]):
            words = words[1:]
        if words and not _STREET_WORD.fullmatch(words[-1]):
            found = in_case(" ".join(words))
            before = text[: m.start("city")].rsplit("\n", 1)[-1].rstrip(" ,.")
            if len(house) >= _LEAST_NAME and before.lower().endswith(house.lower().rstrip(" .")):
                return found
    return found


def _named_by(patterns: Iterable[re.Pattern[str]], text: str) -> str | None:
    """Return the first town that one of the patterns, the first before the next, finds in a text."""
    for pattern in patterns:
        for m in pattern.finditer(text):
            if _may_be_town(m["city"]):
                return in_case(m["city"])
    return None


def _among_particulars(text: str, house: str) -> str | None:
    for above, line in pairwise(["", *text.splitlines()]):
        if house and above == house and _ONE_NAME.fullmatch(line) and _may_be_town(line) and not is_talk(line):
            return in_case(line)
        signed = len(house) >= _LEAST_NAME and re.match(
            rf"{re.escape(house)}(?:['’]s)?\W? ?[,·•–—]", line, re.IGNORECASE
        )
        ending = frozenset() if signed else _STANDING
        if not (signed or PARTICULARS.search(line)):
            continue
        parts = [part.strip(" .,") for part in _PARTS.split(line)]
        # the first part of several may be the shop's name
        for part in parts if len(parts) > 1 else ():
            one = re.split(r" (?:and|&) (?=[A-Z])", part)[0] if signed else part
            bare = one.rstrip("0123456789 ")
            if not _ONE_NAME.fullmatch(one) or is_talk(bare) or bare.lower().rsplit(" ", 1)[-1] in ending:
                continue
            if _may_be_town(one) and one.lower() not in house.lower():
                return in_case(one.rstrip("0123456789 "))
    return None


def _may_be_town(name: str) -> bool:
    words = name.lower().replace(".", "").split()
    words = words[1:] if len(words) > 1 and words[0] in _BEFORE else words
    if not words or is_street_or_trade(name) or _CALENDAR.search(name):
        return False
    if words[0] in _LEADING or _DISTRICT.fullmatch(name):
        return False
    if " " not in name and (words[0] in word_list("place_generics") or has_goods(name)):
        return False  # "City" in a coupon, "Potatoes, Maine"
    own = words[:-1] if words[-1] in word_list("place_generics") and words[1:] else words  # "Osterby Center"
    return not any(word in _NO_TOWN or _STREET_WORD.fullmatch(word) or _PHONE.fullmatch(word) for word in own)


def _known(text: str, towns: frozenset[str], house: str = "", *, closing: bool = False) -> str | None:
    """Return the last of `towns` in a text; where it must be `closing`, one that ends its line or an address there."""
    if not towns:
        return None
    last = None
    for m in _town_pattern(towns).finditer(text):
        goes_on = re.match(r" [A-Za-z]+", text[m.end() :])
        named = goes_on is not None and (m[0] + goes_on[0]).lower() in house.lower()  # "The Boston Store"
        before = text[: m.start()].rsplit("\n", 1)[-1]
        branch = _BRANCH.search(before) is not None or not _CLOSES.match(text[m.end() :])
        if m[0][0].isupper() and not named and not (closing and branch):
            last = m[0]
    return in_case(last) if last else None


def _spelled_right(city: str | None, towns: frozenset[str]) -> str | None:
    if city is None:
        return None
    # the reader may be a letter or two off, and sees spaces where type is set wide
    closed = city.replace(" ", "").capitalize()
    if city.count(" ") == 1 and is_large_town(closed):
        city = closed
    if not towns:
        return city
    near = process.extractOne(city, sorted(towns), scorer=fuzz.ratio, score_cutoff=_SAME_TOWN)
    return near[0] if near else city


@cache
def _town_pattern(towns: frozenset[str]) -> re.Pattern[str]:
    names = "|".join(re.escape(town) for town in sorted(towns, key=lambda t: (-len(t), t)))
    return re.compile(rf"(?<![A-Za-z])(?:{names})(?![A-Za-z'’]| (?:{_NOT_A_TOWN}))", re.IGNORECASE)

"""The advertiser's name told by its form: a firm's word, initials, a logotype in large type, an address beside it.

All weights are judgement, no source.
"""

from __future__ import annotations

import re
from itertools import pairwise
from typing import Final

from adminer.names.pieces import load_vocabulary
from adminer.parsing.goods import find_nouns, praise, stops
from adminer.parsing.lexicon import word_list
from adminer.parsing.slips import is_word
from adminer.parsing.text import AdvertText, TextLine
from adminer.parsing.towns import PARTICULARS, WITH_STATE
from adminer.records import Box, Link

_HOUSE: Final = re.compile(
    r"\b(?:Co|Company|Bros|Brothers|& Sons?|and Sons?|Ltd|Limited|Inc|Stores?|Markets?|Mercantile|Mfg|"
    r"Manufacturing|Dry Goods|"
    r"Shops?|Shoppe|Grocery|Groceries|Grocers?|Hardware|Furniture|Jewelers?|Pharmacy|Drug Store|Department "
    r"Store|Emporium|Bazaar|Supermarkets?|Super Markets?|"
    r"Variety Store|Theat(?:re|er)|(?:Service |Filling )?Stations?|(?:Discount|Shopping|"
    r"Food|Trading) (?:Center|Centre)|Discount|Mart|Nurser(?:y|ies)|Dairy|Dairies|"
    r"Studios?|Tea ?Rooms?|Greenhouses?|Florists?|(?:Fuel|Coal|Lumber|Wood) Yard|"
    r"Works|Mills?|Corporation|Corp|Bakery|Trading Post|House|Outfitters?|Tailors?|Drapers?|Importers?|Agency|& "
    r"Co|Cie)\b\.?",
    re.IGNORECASE,
)
_FORENAME: Final = r"(?:Geo|Wm|Chas|Jas|Jno|Thos|Robt|Jos|Saml|Benj|Edw|Alex|Theo|Fred|Hy|Danl?)\. ?"  # set short
_INITIALS: Final = re.compile(
    rf"^(?:Mrs?\.? )?(?:{_FORENAME}|[A-Z]\. ?|[A-Z] ){{1,3}}[A-Z][A-Za-z'’]{{2,}}"
    r"(?:[,.]? (?:& )?(?:Co|Bros|Sons?|Ltd|Inc)\.?,?)*$"
)
_OWNER: Final = re.compile(
    r"^[A-Z][a-z]+ (?:[A-Z]\. ?){1,3}[A-Z][A-Za-z'’]{2,}$|^[A-Z]{3,} (?:[A-Z]\. ?){1,3}[A-Z]{3,}$"
)
_PAIR: Final = re.compile(
    r"^[A-Z][\w'’.]+,? (?:(?:[A-Z][\w'’.]+,? )?)(?:&|and) [A-Z][\w'’.]+(?:,? (?:Co|Company|Inc|Ltd|Limited)\.?)?$"
)
_POSSESSIVE: Final = re.compile(r"^[A-Z][A-Za-z]{2,}(?:[- ][A-Z][a-z]+)?(?:['’][Ss]|[sS]['’])$")
ADDRESS: Final = re.compile(
    r"\b\d{1,5}(?:-\d+)? (?:[NSEW]\.? |North |South |East |West )?[A-Z0-9][\w.'’]*(?: "
    r"[A-Z0-9][\w.'’]*){0,3},? ?(?:St|Street|Ave|Avenue|Road|Rd|Blvd|Boulevard|Place|Pl|Square|Sq|Bldg|Drive|Dr|"
    r"Lane|Highway|Broadway|Way|Terrace|Pike)\b\.?"
    r"|(?<!['’][sS] )\b(?:Cor(?:ner)?\.?|Box) (?:of )?[A-Z0-9][\w.]*(?: (?:and|&) [A-Z][\w.]*)?",
)
_LANDMARK: Final = re.compile(r"(?:opp(?:osite|\.)|near|next (?:door )?to|across from|facing) ", re.IGNORECASE)
_AFTER_NAME: Final = re.compile(
    r",? (?:Dept|Desk|Box|Makers?|Phone|Tel|Successors?|Proprietors?|Props?)\b|,? Box ?(?=\d)|,(?= ?\d)|"
    r"(?<=Ltd)\.? ?(?=\d)|, (?=New York|Chicago|Boston)"
)
# "Write Thorne Pottery Co.", "Shop at Thorne's and save", "Thorne's of Anytown"
_CALL: Final = re.compile(
    r"^(?:(?:write|mail|send|address|see|visit|ask|sold|made|shop|trade|buy|save)(?:,| only)?"
    r"(?: (?:to|at|by|with))?:? )+"
    r"(?=[A-Z])",
    re.IGNORECASE,
)
_AFTER_POSSESSIVE: Final = re.compile(r"(?<=['’][sS]),? (?:of|in|and) (?=[A-Z][a-z])")
_CORNER: Final = re.compile(r", (?=[A-Z][A-Za-z]+ (?:and|&) [A-Z])")
_BY_POST: Final = re.compile(r"\b(?:Dept|Desk|Box|Drawer|Station)\.? ?[A-Z0-9]", re.IGNORECASE)
_CAPITALISED: Final = re.compile(r"^[A-Z]")
_DIME_STORE: Final = re.compile(r"\b(?:\d+c?,? )?\d+c? (?:to|and|&) (?:\d+c|\$1(?:\.00)?) Stores?\b", re.IGNORECASE)
_DOUBLE_NAME: Final = re.compile(r"^[A-Z][a-z]{2,}-[A-Z][a-z]{2,}$|^[A-Z]{3,}-[A-Z]{3,}$")
_PRESENTS: Final = r" (?:presents?|announces?|invites|offers|introduces|celebrates)\b"
_PROPRIETOR: Final = re.compile(r"\bProp(?:rietor)?s?\b|\bManager\b|\bMgr\b", re.IGNORECASE)
_WARE: Final = (
    r" (?:pattern|design|dinner ?ware|china|ware|tableware|ironstone|pottery|glassware|set|plates?|cups?|tumblers?|"
    r"brand|coffee|tea|flour|butter|bread|soap)\b"
)
_COMMON: Final = (
    word_list("slogan") | word_list("function") | word_list("prose") | word_list("particulars") | word_list("enquiry")
)
_FIRM: Final = re.compile(
    r"\b(?:Co|Company|Bros|Brothers|Sons?|Ltd|Limited|Inc|Mfg|Corp|Corporation|Cie)\b", re.IGNORECASE
)
_TRADE_LINE: Final = re.compile(
    r"\b(?:Establishment|Furnishers?|Hatters?|Stationers|Department Store|Super ?Market|Druggists?|Drapery)\b",
    re.IGNORECASE,
)
_FOOT_LINES: Final = 3
_TRADE_WORDS: Final = 5
_WEAKLY: Final = 0.8  # the score of a logotype that nothing but its type speaks for
_LARGE: Final = 1.8  # times the body: from here a line may be a logotype
_PARTED: Final = re.compile(r" ?[·•|*] ?")


def find_signature(advert: AdvertText, box: Box) -> Link | None:
    """Judge each line as the advertiser's name: a firm's word, initials, large type, its place, an address near.

    `box` is the advert's, in pixels. None where no line is likely enough.
    """
    best: tuple[float, Link] | None = None
    for line, raw in _signature_lines(advert):
        text = _name_part(raw)
        if not 3 <= len(text) <= 60 or len(text.split()) > 8 or text.startswith("&") or _LANDMARK.match(text):
            continue
        if re.search(r"[$¢%]|\d{3}", _DIME_STORE.sub("Store", text)):
            continue
        score, reasons = _signature_score(advert, box, line, text)
        if _BY_POST.search(raw) and not re.search(r"[a-z]{3}", raw[: len(text)].replace("and", "")):
            score, reasons = score + (0.3 if reasons else 0.8), [*reasons, "a department or box number after it"]
        if score > 0.75 and (best is None or score > best[0]):
            why = "taken as the signature: " + ", ".join(reasons)
            best = (score, Link(None, text, text, line.box, min(round(score / 2.2, 2), 0.9), why))
    return best[1] if best else None


def _name_part(raw: str) -> str:
    """Return a line without what follows the name: address, department, branches, a corner of streets."""
    parts = _PARTED.split(raw)
    text = next((part for part in parts if _HOUSE.search(part)), parts[0])
    text = re.split(_PRESENTS, _AFTER_NAME.split(ADDRESS.split(text)[0])[0])[0]
    text = _AFTER_POSSESSIVE.split(_CALL.sub("", text))[0]
    before = _CORNER.split(text)[0]
    # "Thorne, Corbelle & Vale" is a firm of three
    firm = any(form.search(before) for form in (_HOUSE, _INITIALS, _PAIR, _POSSESSIVE))
    return _unglued((before if firm else text).strip(" ,.;:-–—*•"))


def _unglued(text: str) -> str:
    """Part "THE" and "CO" from a name in capitals that close setting ran together with them."""
    if not text.isupper():
        return text
    return re.sub(r"(?<=[A-Z]{4})CO\.?$", " CO", re.sub(r"^THE(?=[A-Z]{4})", "THE ", text))


def _is_trade_line(text: str) -> bool:
    """Say whether a line under a logotype is part of it: "Super Markets", "Furniture Company"."""
    rest = _HOUSE.sub("", _AFTER_NAME.split(text)[0])
    return len(text.split()) <= _TRADE_WORDS and bool(_HOUSE.search(text)) and is_plain(rest)


def _signature_lines(advert: AdvertText) -> list[tuple[TextLine, str]]:
    """Return the lines with what they say, and each two that may be one signature.

    Two are one on one row, whichever was read first, or of one large size under each other.
    """
    found = [(line, advert.printed(line)) for line in advert.lines]
    for one, two in pairwise(advert.lines):
        row = min(one.box.bottom, two.box.bottom) - max(one.box.y, two.box.y) > 0.5 * min(one.box.h, two.box.h)
        swapped = row and two.box.x < one.box.x
        first, second = (two, one) if swapped else (one, two)
        said = " ".join(w.text for w in first.words if not (row and _read_twice(w.box, second)))
        trade = advert.printed(second)
        gap = second.box.x - first.box.right if row else second.box.y - first.box.bottom
        goes_on = trade.startswith("&") or said.endswith("&")
        large = first.type_px > 1.2 * advert.body_px and 0.7 < first.type_px / max(second.type_px, 1.0) < 1.4
        logotype = first.type_px > 2 * advert.body_px and _is_trade_line(trade)
        if is_plain(said) and not goes_on:
            continue
        if (logotype or ((large or goes_on) and not swapped)) and gap < 1.2 * first.type_px:
            words = first.words + second.words
            box, flat = one.box.joined(two.box), one.flat.joined(two.flat)
            line = TextLine(one.number, one.start, two.end, words, box, flat, first.type_px, one.block)
            found.append((line, f"{said} {trade}"))
    return found


def _read_twice(box: Box, beside: TextLine) -> bool:
    """Say whether a word at the end of a line is the beginning of the one beside it, read a second time."""
    shared = min(box.right, beside.box.right) - max(box.x, beside.box.x)
    return shared > 0.8 * box.w


def _signature_score(advert: AdvertText, box: Box, line: TextLine, text: str) -> tuple[float, list[str]]:
    score, reasons = _score_of_form(advert, line, text)
    logotype = not reasons and _is_logotype(advert, line, text)
    witnesses = 0
    if logotype:
        score, reasons, witnesses = _score_of_logotype(advert, line, text)
    elif not reasons:
        return 0.0, reasons
    named = _DIME_STORE.sub("Store", text).split()
    if not all(_CAPITALISED.match(w.lstrip("&")) or w.lower() in {"and", "&", "of", "the", "de"} for w in named):
        score -= 0.5
    place = (line.box.centre[1] - box.y) / max(box.h, 1)
    if place > 0.7:
        score += 0.35
        reasons.append("near the foot")
    elif place < 0.15:
        score += 0.15
        reasons.append("at the head")
    size = line.type_px / advert.body_px
    if size > 1.25:
        score += min(0.15 * size, 0.6)
        reasons.append(f"type {size:.1f} times the body")
    if text.isupper():
        score += 0.15
    after = (
        advert.printed(line)
        + " "
        + " ".join(advert.printed(n) for n in advert.lines[line.number + 1 : line.number + 4])
    )
    if ADDRESS.search(after) or WITH_STATE.search(after) or PARTICULARS.search(after):
        score += 0.35
        reasons.append("an address beside it")
    if not logotype and _heads_the_foot(advert, line, text):
        score += 0.3
        reasons.append("named again at the foot")
    if logotype and not witnesses:
        # a name in display type at the head may as well be that of a line
        score = min(score, _WEAKLY) if place > 0.7 or _DOUBLE_NAME.match(text) else 0.0
    return score, reasons


def _score_of_form(advert: AdvertText, line: TextLine, text: str) -> tuple[float, list[str]]:
    if dime := _DIME_STORE.search(text):
        return 0.8, [f"“{dime[0]}”"]
    houses = list(_HOUSE.finditer(text))
    if houses and len(rest := _HOUSE.sub("", text).strip(" &.,")) >= 2:
        plain = is_plain(rest) and not _FIRM.search(text)
        return (0.8 if houses[-1].end() >= len(text) - 2 else 0.4) - 0.4 * plain, [f"“{houses[-1][0]}”"]
    if _INITIALS.match(text) or _OWNER.match(text):
        # the owner named under a shop's own name
        owner = _PROPRIETOR.search(advert.text[line.start : line.end + 12])
        return (0.05 if owner else 0.7), ["initials and a name"]
    if _PAIR.match(text) and not is_plain(text) and not re.search(r"[a-z]{4}\. ", text):
        return 0.6, ["two names"]
    if re.match(re.escape(text) + _PRESENTS, advert.printed(line)) and not is_plain(text):
        return 0.6, ["presents what is offered"]
    if _POSSESSIVE.match(text):
        return 0.5, ["a name in the possessive"]
    return 0.0, []


def _score_of_logotype(advert: AdvertText, line: TextLine, text: str) -> tuple[float, list[str], int]:
    """Return score, reasons, and how many things beside its type speak for a name in large type."""
    score, reasons, witnesses = 0.0, ["a name in large type"], 0
    if _DOUBLE_NAME.match(text):
        score += 0.3
    if line.number == 0 and line.type_px >= max(n.type_px for n in advert.lines):
        score += 0.2
    if any(_is_trade_of(line, n, advert.printed(n)) for n in advert.lines[line.number + 1 :][:1]):
        score, witnesses = score + 0.3, witnesses + 1
        reasons.append("its trade under it")
    if _echoed(advert, line, text):
        score, witnesses = score + 0.5, witnesses + 1
        reasons.append("named again with the particulars of a shop")
    return score, reasons, witnesses


def _is_logotype(advert: AdvertText, line: TextLine, text: str) -> bool:
    """Say whether a line is one to three capitalised words in large type that mean nothing and name no ware."""
    words = text.removeprefix("The ").removeprefix("THE ").split()
    if line.type_px < _LARGE * advert.body_px or not 1 <= len(words) <= 3 or len(text) < 4:
        return False
    if any(not re.fullmatch(r"[A-Z][\w'’-]+|&", word) for word in words) or any(c.isdigit() for c in text):
        return False
    return not is_common(text) and not re.search(re.escape(text) + _WARE, advert.joined, re.IGNORECASE)


def _is_trade_of(line: TextLine, below: TextLine, text: str) -> bool:
    """Say whether the line under a name tells its trade: "General drapery establishment", "Hardware & Tinware"."""
    near = below.flat.y - line.flat.bottom < line.type_px and below.flat.y > line.flat.y
    near = near and not re.search(r"\b(?:by|for|of|from)\b", text)  # "made by ..." stands under the name of a line
    return near and len(below.words) <= _TRADE_WORDS and bool(_TRADE_LINE.search(text) or _HOUSE.search(text))


def is_common(text: str) -> bool:
    """Say whether a text has a word of everyday talk or of goods in it, which a logotype has not."""
    words = _plain_words(text)
    return is_plain(text) or any(noun.strong for noun in find_nouns(text)) or any(word in _COMMON for word in words)


def is_plain(text: str) -> bool:
    """Say whether a text is made of words of the trade and the language only, so that it names nobody."""
    if load_vocabulary().find(text):
        return True
    words = _plain_words(text)
    return all(w in _COMMON or w in stops() or w in praise() or is_word(w) for w in words)


def _plain_words(text: str) -> list[str]:
    return [word for word in re.findall(r"[a-zà-ÿ-]+", text.lower()) if len(word) > 1 and word not in ("the", "and")]


def _heads_the_foot(advert: AdvertText, line: TextLine, text: str) -> bool:
    """Say whether one of the last lines begins with a name printed before: "Thorne Village, Anytown and Othertown"."""
    return any(
        other.number > line.number and re.match(rf"{re.escape(text)}\W? ?[,·•]", advert.printed(other))
        for other in advert.lines[-_FOOT_LINES:]
    )


def _echoed(advert: AdvertText, line: TextLine, text: str) -> bool:
    """Say whether a name stands again beside an address, hours, a town or a firm's word."""
    name = text.lower()
    for other in advert.lines:
        printed = advert.printed(other)
        if other.number == line.number or name not in printed.lower():
            continue
        if any(pattern.search(printed) for pattern in (ADDRESS, WITH_STATE, PARTICULARS, _HOUSE)):
            return True
    return False

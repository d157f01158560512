"""Who placed the advert, and where: the retailer from signature, logotype or authority file, town and addresses."""

from __future__ import annotations

import re
import tomllib
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from itertools import pairwise
from typing import Final

from rapidfuzz import fuzz, process

from adminer.names.matching import Spelling
from adminer.names.spotting import spot_names
from adminer.parsing.goods import praise, stops
from adminer.parsing.slips import is_word
from adminer.parsing.text import AdvertText, TextLine
from adminer.records import Box, Link

_HOUSE: Final = re.compile(
    r"\b(?:Co|Company|Bros|Brothers|& Sons?|and Sons?|Ltd|Limited|Inc|Stores?|Markets?|Mercantile|Mfg|"
    r"Manufacturing|Dry Goods|"
    r"Shops?|Shoppe|Grocery|Groceries|Grocers?|Hardware|Furniture|Jewelers?|Pharmacy|Drug Store|Department "
    r"Store|Emporium|Bazaar|Supermarkets?|Super Markets?|"
    r"Works|Mills?|Corporation|Corp|Bakery|Trading Post|House|Outfitters?|Tailors?|Drapers?|Importers?|Agency|& "
    r"Co|Cie)\b\.?",
    re.IGNORECASE,
)
_INITIALS: Final = re.compile(
    r"^(?:Mrs?\.? )?(?:[A-Z]\. ?|[A-Z] ){1,3}[A-Z][A-Za-z'’]{2,}(?:[,.]? (?:& )?(?:Co|Bros|Sons?|Ltd|Inc)\.?,?)*$"
)
_OWNER: Final = re.compile(
    r"^[A-Z][a-z]+ (?:[A-Z]\. ?){1,3}[A-Z][A-Za-z'’]{2,}$|^[A-Z]{3,} (?:[A-Z]\. ?){1,3}[A-Z]{3,}$"
)
_PAIR: Final = re.compile(
    r"^[A-Z][\w'’.]+,? (?:(?:[A-Z][\w'’.]+,? )?)(?:&|and) [A-Z][\w'’.]+(?:,? (?:Co|Company|Inc|Ltd|Limited)\.?)?$"
)
_POSSESSIVE: Final = re.compile(r"^[A-Z][A-Za-z]{2,}(?:[- ][A-Z][a-z]+)?(?:['’][Ss]|[sS]['’])$")
_ADDRESS: Final = re.compile(
    r"\b\d{1,5}(?:-\d+)? (?:[NSEW]\.? |North |South |East |West )?[A-Z0-9][\w.'’]*(?: "
    r"[A-Z0-9][\w.'’]*){0,3},? ?(?:St|Street|Ave|Avenue|Road|Rd|Blvd|Boulevard|Place|Pl|Square|Sq|Bldg|Drive|Dr|"
    r"Lane|Highway|Broadway|Way|Terrace|Pike)\b\.?"
    r"|\b(?:Cor(?:ner)?\.?|Box) (?:of )?[A-Z0-9][\w.]*(?: (?:and|&) [A-Z][\w.]*)?",
)
STATES: Final = (
    r"(?:Ala|Ariz|Ark|Cal|Calif|Colo|Conn|Del|Fla|Ga|Ida|Idaho|Ill|Illinois|Ind|Indiana|Ia|Iowa|Kan|Kans|Kansas|"
    r"Ky|La|Me|Maine|Md|Mass|Mich|Michigan|Minn|"
    r"Minnesota|Miss|Mo|Mont|Neb|Nebr|Nev|N\. ?H|N\. ?J|N\. ?M|N\. ?Y|New York|New Jersey|N\. ?C|N\. ?D|Ohio|O|"
    r"Okla|Ore|Oregon|Pa|Penna|Pennsylvania|R\. ?I|S\. ?C|S\. ?D|Tenn|Tex|"
    r"Texas|Utah|Vt|Va|Virginia|Wash|Washington|W\. ?Va|Wis|Wisc|Wisconsin|Wyo|D\. ?C|England|Eng|Scotland|"
    r"Ireland|Canada|Ont|Egypt)"
)
_CITY: Final = re.compile(
    rf"(?:^|[,.;] |[\n–—-] ?|(?<=\d )|(?<=Street )|(?<=St\. )|\bat |\bin |\bof "
    rf")(?P<city>[A-Z][A-Za-z.'’]+(?:[ ][A-Z][A-Za-z.'’]+){{0,2}})(?: \d{{1,2}})?, ?(?P<state>{STATES})(?=[^A-Za-z]|$)",
    re.IGNORECASE,
)
_AFTER_NAME: Final = re.compile(
    r",? (?:Dept|Desk|Box|Makers?|Phone|Tel|Successors?|Proprietors?|Props?)\b|,? Box ?(?=\d)|,(?= ?\d)|"
    r"(?<=Ltd)\.? ?(?=\d)|"
    r", (?=New York|Chicago|Boston)"
)
_CORNER: Final = re.compile(r", (?=[A-Z][A-Za-z]+ (?:and|&) [A-Z])")  # "Shoe Co., Ninth & Main": streets, not partners
_BY_POST: Final = re.compile(r"\b(?:Dept|Desk|Box|Drawer|Station)\.? ?[A-Z0-9]", re.IGNORECASE)
_STREET_WORD: Final = re.compile(
    r"(?:Street|St\.?|Ave\.?|Avenue|Dept\.?|Box|Co\.?|Company|Road|Rd\.?|Bldg\.?|P\.|O\.|Desk|Floor|Sq\.?|"
    r"Ltd\.?|Inc\.?|Phone|Prices?)",
    re.IGNORECASE,
)
_AFTER_ADDRESS: Final = re.compile(
    r"(?:Street|Ave\.?|Avenue|Road|Rd\.?|Blvd\.?|Bldg\.?|Place|Square|"
    r"Block),? ?[,.\n]? ?(?P<city>[A-Z][A-Za-z.]{3,}(?: City)?)(?=[\s,.]*(?:\n|$))"
)
_NOT_A_TOWN: Final = (
    r"street|st\b|ave|avenue|road|rd\b|blvd|cream|steak|broil|style|ware|silver|china|shape|pattern|rug|chair"
)
_FIRM: Final = re.compile(
    r"\b(?:Co|Company|Bros|Brothers|Sons?|Ltd|Limited|Inc|Mfg|Corp|Corporation|Cie)\b", re.IGNORECASE
)
_LOGOTYPE: Final = 1.8  # body sizes
_TRADE_WORDS: Final = 5
_SAME_TOWN: Final = 84  # rapidfuzz ratio
_ORDINARY: Final = frozenset(["book", "booklet", "catalog", "catalogue", "black", "tan", "save", "terms", "size"])
_TRADE_LINE: Final = re.compile(
    r"\b(?:Establishment|Emporium|Drapers?|Tailors?|Grocers?|Jewell?ers?|Outfitters?|Furnishers?|Hatters?|Stationers|"
    r"Department Store|Dry Goods|Super ?Market|Hardware|Druggists?)\b",
    re.IGNORECASE,
)
_CAPITALISED: Final = re.compile(r"^[A-Z]")


@dataclass(frozen=True, slots=True)
class House:
    """Hold who advertises: the link, the town and the addresses as printed."""

    retailer: Link | None
    city: str | None
    addresses: tuple[str, ...]
    spans: tuple[tuple[int, int], ...] = ()  # characters of signature and addresses, which name no item


def find_house(advert: AdvertText, box: Box, retailers: list[Spelling], towns: frozenset[str] = frozenset()) -> House:
    """Find the retailer, town and addresses of an advert standing in `box`."""
    printed = list(_ADDRESS.finditer(advert.text))
    addresses = tuple(dict.fromkeys(" ".join(m[0].split()) for m in printed))
    retailer = _from_authority(advert, retailers) or _from_type(advert, box)
    spans = [m.span() for m in printed]
    if retailer is not None:
        spans += [(n.start, n.end) for n in advert.lines if retailer.box.overlap(n.box) > 0.8 * n.box.area]
    return House(retailer, _spelled_right(find_city(advert.text, towns), towns), addresses, tuple(spans))


def _spelled_right(city: str | None, towns: frozenset[str]) -> str | None:
    """Return a town as the authority files and notes spell it, where the reader was a letter or two off."""
    if city is None or not towns:
        return city
    near = process.extractOne(city, sorted(towns), scorer=fuzz.ratio, score_cutoff=_SAME_TOWN)
    return near[0] if near else city


def find_city(text: str, towns: frozenset[str] = frozenset()) -> str | None:
    """Return the last town printed with its state, else one of the towns known, None where there is none."""
    found = None
    for m in _CITY.finditer(text):
        words = m["city"].split()
        while words and _STREET_WORD.fullmatch(words[0]):
            words = words[1:]
        if words and not _STREET_WORD.fullmatch(words[-1]):
            found = " ".join(_capital(w) for w in words)
    if found:
        return found
    if address := _AFTER_ADDRESS.search(text):
        return " ".join(_capital(w) for w in address["city"].split())
    known = _town_pattern(towns | _big_towns())
    last = None
    for town in known.findall(text):
        if town[0].isupper():
            last = town
    return " ".join(_capital(w) for w in last.split()) if last else None


def _capital(word: str) -> str:
    return word.capitalize() if word.isupper() else word


@cache
def _big_towns() -> frozenset[str]:
    text = files("adminer.parsing").joinpath("data", "places.toml").read_text(encoding="utf-8")
    return frozenset(tomllib.loads(text)["towns"])


@cache
def _town_pattern(towns: frozenset[str]) -> re.Pattern[str]:
    names = "|".join(re.escape(town) for town in sorted(towns, key=lambda t: (-len(t), t)))
    return re.compile(rf"(?<![A-Za-z])(?:{names})(?![A-Za-z'’]| (?:{_NOT_A_TOWN}))", re.IGNORECASE)


def _from_authority(advert: AdvertText, spellings: list[Spelling]) -> Link | None:
    """Return the best known name printed in the advert, larger type before smaller."""
    known = [spotted for spotted in spot_names(advert.text, spellings) if spotted.match.entry_id is not None]
    if not known:
        return None
    best = max(known, key=lambda n: n.match.score + 0.15 * min(advert.type_px_of(n.start, n.end) / advert.body_px, 6))
    match = best.match
    box = advert.line_at(best.start).box
    return Link(match.entry_id, match.name, best.text, box, match.score, match.why, match.candidates)


def _from_type(advert: AdvertText, box: Box) -> Link | None:
    """Judge each line as a signature: house word, initials, large type, at the foot or head, an address near."""
    best: tuple[float, Link] | None = None
    for line in _signature_lines(advert):
        raw = advert.text[line.start : line.end].replace("\n", " ")
        text = _ADDRESS.split(raw)[0]
        text = _AFTER_NAME.split(text)[0]
        before = _CORNER.split(text)[0]
        text = before if _HOUSE.search(before) or _INITIALS.match(before) else text
        text = _unglued(text.strip(" ,.;:-–—*•"))
        if not 3 <= len(text) <= 60 or len(text.split()) > 8 or re.search(r"[$¢%]|\d{3}", text):
            continue
        score, reasons = _signature_score(advert, box, line, text)
        if _BY_POST.search(raw) and not re.search(r"[a-z]{3}", raw[: len(text)].replace("and", "")):
            score, reasons = score + (0.3 if reasons else 0.8), [*reasons, "a department or box number after it"]
        if score > 0.75 and (best is None or score > best[0]):
            why = "taken as the signature: " + ", ".join(reasons)
            best = (score, Link(None, text, text, line.box, min(round(score / 2.2, 2), 0.9), why))
    return best[1] if best else None


def _unglued(text: str) -> str:
    """Part "THE" and "CO" from a name in capitals that close setting ran together with them."""
    if not text.isupper():
        return text
    return re.sub(r"(?<=[A-Z]{4})CO\.?$", " CO", re.sub(r"^THE(?=[A-Z]{4})", "THE ", text))


def _is_plain(text: str) -> bool:
    """Say whether a text is made of words of the trade and the language only, so that it names nobody."""
    words = [w for w in re.findall(r"[a-zà-ÿ]+", text.lower()) if len(w) > 1]
    return all(w in stops() or w in praise() or w in _ORDINARY or is_word(w) for w in words)


def _signature_lines(advert: AdvertText) -> list[TextLine]:
    """Return the lines, and each two that may be one signature: on one row, or of one large size under each other."""
    found = list(advert.lines)
    for one, two in pairwise(advert.lines):
        ratio = one.type_px / max(two.type_px, 1.0)
        row = min(one.box.bottom, two.box.bottom) - max(one.box.y, two.box.y) > 0.5 * min(one.box.h, two.box.h)
        gap = two.box.x - one.box.right if row else two.box.y - one.box.bottom
        goes_on = advert.text[two.start : two.start + 1] == "&" or advert.text[one.end - 1 : one.end] == "&"
        large = one.type_px > 1.2 * advert.body_px and 0.7 < ratio < 1.4
        second = advert.text[two.start : two.end]
        trade_line = _HOUSE.search(second) and _is_plain(_HOUSE.sub("", _AFTER_NAME.split(second)[0]))
        logotype = one.type_px > 2 * advert.body_px and trade_line and " by " not in f" {second.lower()} "
        if (large or logotype or goes_on) and gap < 1.2 * one.type_px:
            words = one.words + two.words
            found.append(
                TextLine(
                    one.number,
                    one.start,
                    two.end,
                    words,
                    one.box.joined(two.box),
                    one.flat.joined(two.flat),
                    one.type_px,
                    one.block,
                )
            )
    return found


def _is_logotype(advert: AdvertText, line: TextLine, text: str) -> bool:
    """Say whether a line is a name in display type with "General drapery establishment" or the like right under it."""
    if line.type_px < _LOGOTYPE * advert.body_px or _is_plain(text) or line.number + 1 >= len(advert.lines):
        return False
    below = advert.lines[line.number + 1]
    near = below.flat.y - line.flat.bottom < line.type_px and below.flat.y > line.flat.y
    words = advert.text[below.start : below.end]
    return near and len(below.words) <= _TRADE_WORDS and bool(_TRADE_LINE.search(words))


def _signature_score(advert: AdvertText, box: Box, line: TextLine, text: str) -> tuple[float, list[str]]:
    score, reasons = 0.0, []
    houses = list(_HOUSE.finditer(text))
    if houses and len(rest := _HOUSE.sub("", text).strip(" &.,")) >= 2:
        score += 0.8 if houses[-1].end() >= len(text) - 2 else 0.4
        score -= 0.4 * (_is_plain(rest) and not _FIRM.search(text))
        reasons.append(f"“{houses[-1][0]}”")
    elif _INITIALS.match(text) or _OWNER.match(text):
        score += 0.7
        reasons.append("initials and a name")
    elif _PAIR.match(text) and not _is_plain(text) and not re.search(r"[a-z]{4}\. ", text):
        score += 0.6
        reasons.append("two names")
    elif _POSSESSIVE.match(text):
        score += 0.5
        reasons.append("a name in the possessive")
    elif _is_logotype(advert, line, text):
        score += 0.5
        reasons.append("display type over a line that tells the trade")
    else:
        return 0.0, reasons
    if not all(_CAPITALISED.match(w.lstrip("&")) or w.lower() in {"and", "&", "of", "the", "de"} for w in text.split()):
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
        advert.text[line.start : line.end]
        + " "
        + " ".join(advert.text[n.start : n.end] for n in advert.lines[line.number + 1 : line.number + 4])
    )
    if _ADDRESS.search(after) or _CITY.search(after):
        score += 0.35
        reasons.append("an address beside it")
    return score, reasons

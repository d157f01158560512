"""Adverts of one article under a brand: "The price of the Quillon is $46" is for a Quillon, whatever else was named.

National adverts tell of one article in prose and call it by its brand, a word that is in no other use: capitals
wherever it stands, again and again, and rare in print. Where the words beside a price name nothing, or goods of a
sentence before, the brand is what the price is for. Common practice, no source.
"""

from __future__ import annotations

import re
from collections import Counter, defaultdict
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

from adminer.parsing.items.assign import Pairing
from adminer.parsing.items.topic import find_topic, says_nothing
from adminer.parsing.prices.prices import Found
from adminer.parsing.segments.items import Segment
from adminer.parsing.segments.postage import POSTAGE
from adminer.parsing.tables.price_lists import ON_ROW as ON_TABLE_ROW
from adminer.parsing.tables.table_rows import row_segment
from adminer.parsing.text.cells import Cell
from adminer.parsing.text.goods import has_goods, heads_of
from adminer.parsing.text.item_words import FUNCTION_WORDS
from adminer.parsing.text.naming import opens_with_talk
from adminer.parsing.text.text import AdvertText
from adminer.reading.lexicon import share_of

BRAND: Final = "the brand of the advert's article, of which the sentence of the price tells"
_FEW: Final = 8  # offers up to which an advert may be of one brand
_OFTEN: Final = 3  # namings in body type that make a brand
_TWICE: Final = 2  # the same with one in display type
_DISPLAY: Final = 1.4  # body sizes
_LARGEST: Final = 4.0  # body sizes; larger type says no more
_RARE: Final = -13.0  # natural logarithm of a share of print: a word more usual, one in 440,000, is of the language
_LETTERS: Final = 4
_MOST_WORDS: Final = 5
_WORD: Final = re.compile(r"[A-Za-z][\w'’-]*[\w]")
_POSSESSIVE: Final = re.compile(r"['’]s$", re.IGNORECASE)
_NAME: Final = r"(?:(?:No\.?|Number) ?\d+|[A-Z][\w'’-]*)"
_RIGHT: Final = re.compile(rf"[ \n]{_NAME}")
_LEFT: Final = re.compile(rf"{_NAME} $")
_FIRM_WORD: Final = (
    r"(?i:co|company|mfg|works|mills?|factory|potter(?:y|ies)|inc|ltd|limited|bros|brothers|sons|corporation)\b"
)
_FIRM: Final = re.compile(rf"\b{_FIRM_WORD}")
_FIRM_AFTER: Final = re.compile(rf"[ ,\n](?:(?:[A-Z][\w'’-]*|&)[ ,\n]+){{0,3}}{_FIRM_WORD}")
_TITLE_BEFORE: Final = re.compile(r"\b(?:Mr|Mrs|Miss|Dr|Prof|Rev|Capt)\.? (?:[A-Z][\w.]* )?$")
_TOLD: Final = re.compile(
    r"(?:\b(?:the|an?|each|every|this|our|one|your|my|(?:bottle|box|package|pair|tin|cake|tube|jar|can)s? of)[ \n]"
    r"(?:[A-Z]\w* |No\.? ?\d+ )?|[“\"] ?)$",
    re.IGNORECASE,
)
_STOP: Final = re.compile(r"(?<=[a-z0-9)\"”’])[.!?][\"”’)]*\s+(?=[\"“(]?[A-Z$])")


@dataclass(frozen=True, slots=True)
class Brand:
    """Hold the name of an advert's article, with its characters where it stands fullest."""

    start: int
    end: int
    text: str


def with_brands(
    advert: AdvertText, groups: Sequence[Sequence[Found]], pairings: Sequence[Pairing], segments: Sequence[Segment]
) -> list[Pairing]:
    """Return the pairings of an advert of one brand, those that name nothing or a thing told of before given it."""
    brand = find_brand(advert) if 0 < len(pairings) <= _FEW else None
    if brand is None:
        return list(pairings)
    article = find_topic(advert, segments)
    topic = heads_of(article.text) if article is not None else frozenset()
    item = _segment(advert, brand)
    paired = zip(groups, pairings, strict=True)
    return [_branded(advert, item, brand.text, topic, group, pairing) for group, pairing in paired]


def _branded(
    advert: AdvertText, item: Segment, brand: str, topic: frozenset[str], group: Sequence[Found], pairing: Pairing
) -> Pairing:
    """Return a pairing, given the brand where its text names nothing or, told before, no `topic` of the advert."""
    text = pairing.segment
    if pairing.why in {POSTAGE, ON_TABLE_ROW} or (text is not None and brand.lower() in text.text.lower()):
        return pairing
    first = min(group, key=lambda found: found.start)
    begins = _sentence_start(advert, first.start)
    if text is None or says_nothing(pairing):
        return Pairing(item, pairing.cost, BRAND)
    told = pairing.heading or text
    before = told.end <= begins and not text.last.same_row(first.place)
    if before and opens_with_talk(told.text) and not heads_of(told.text) & topic:
        return Pairing(item, pairing.cost, BRAND)
    return pairing


def _segment(advert: AdvertText, brand: Brand) -> Segment:
    line = advert.line_at(brand.start)
    box = advert.box_of(brand.start, brand.end)
    cell = Cell(brand.start, brand.end, brand.text, advert.flat(box), line)
    return replace(row_segment(advert, cell, brand.text, None), whole=True)


def _sentence_start(advert: AdvertText, end: int) -> int:
    """Return where the sentence begins that a character stands in."""
    stops = [m.end() for m in _STOP.finditer(advert.text, 0, end)]
    return stops[-1] if stops else 0


def find_brand(advert: AdvertText) -> Brand | None:
    """Return the brand that an advert names most; None where no rare word in capitals recurs in it."""
    places: dict[str, list[tuple[int, int]]] = defaultdict(list)
    small: set[str] = set()
    for m in _WORD.finditer(advert.text):
        key = _POSSESSIVE.sub("", m.group().lower())
        if m.group()[0].isupper():
            places[key].append(m.span())
        else:
            small.add(key)
    best: tuple[float, str] | None = None
    for key, found in places.items():
        if len(key) < _LETTERS or key in small or len(found) < _TWICE or share_of(key) > _RARE:
            continue
        if has_goods(key):
            continue
        if any(_TITLE_BEFORE.search(advert.text[:start]) for start, _ in found):
            continue  # a person
        size = max(advert.line_at(start).type_px / advert.body_px for start, _ in found)
        if len(found) < _OFTEN and size < _DISPLAY:
            continue
        score = len(found) + min(size, _LARGEST) / 2
        if best is None or score > best[0]:
            best = (score, key)
    return _brand(advert, places[best[1]]) if best is not None else None


def _brand(advert: AdvertText, places: Sequence[tuple[int, int]]) -> Brand | None:
    """Return the brand of a word: its fullest naming, None where it only names a firm."""
    own = [(a, b) for a, b in (_naming(advert, *place) for place in places) if not _is_firm(advert, a, b)]
    told = any(_TOLD.search(advert.text[:a]) for a, _ in own)
    goods = any(has_goods(" ".join(advert.text[a:b].split())) for a, b in own)
    free = len(own) == len(places) and not all(_POSSESSIVE.search(advert.text[a:b]) for a, b in own)
    if not own or not (told or goods or free):
        return None
    counts = Counter(advert.text[a:b].casefold() for a, b in own)

    def fullness(naming: tuple[int, int]) -> tuple[int, int, int]:
        text = advert.text[slice(*naming)]
        return counts[text.casefold()], min(len(text.split()), 3), -naming[0]

    start, end = max(own, key=fullness)
    return Brand(start, end, " ".join(advert.text[start:end].split()))


def _naming(advert: AdvertText, start: int, end: int) -> tuple[int, int]:
    """Return the characters of a naming: a word in capitals with those beside it that belong to it."""
    text = advert.text
    for _ in range(_MOST_WORDS):
        m = _RIGHT.match(text, end)
        if m is None or (m.group()[0] == "\n" and not _is_one_size(advert, start, end + 1)):
            break
        end = m.end()
    for _ in range(_MOST_WORDS):
        m = _LEFT.search(text, 0, start)
        if m is None or m.group().strip().lower() in FUNCTION_WORDS:
            break
        start = m.start()
    return start, end


def _is_one_size(advert: AdvertText, one: int, other: int) -> bool:
    a, b = advert.line_at(one).type_px, advert.line_at(other).type_px
    return 0.8 < a / max(b, 1.0) < 1.25


def _is_firm(advert: AdvertText, start: int, end: int) -> bool:
    return _FIRM.search(advert.text, start, end) is not None or _FIRM_AFTER.match(advert.text, end) is not None

"""Names for prices beside which the text names nothing: the goods told of before, about which it goes on.

"Library table, golden oak, was $14.00. While they last they go for $9.75": the words at the second price only go on
about the table; "in walnut, $11", "the barrel, $5.60" or "for women, $3" tells a kind or a measure of what was named
before, or who it is for. Common practice, no source.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from adminer.parsing.items.assign import Pairing
from adminer.parsing.items.entries import NOTICE
from adminer.parsing.prices.prices import Found
from adminer.parsing.segments.items import Segment
from adminer.parsing.segments.postage import POSTAGE
from adminer.parsing.text.goods import find_nouns, stops, talk
from adminer.parsing.text.item_words import FUNCTION_WORDS, WORD
from adminer.parsing.text.lexicon import word_list
from adminer.parsing.text.notices import name_of_notice
from adminer.parsing.text.text import AdvertText

GOES_ON: Final = "what was named before: the words at the price only go on about it"
KIND_OF: Final = "a kind or measure of what was named before"
_SIZE_WORDS: Final = word_list("size")
_KIND: Final = re.compile(
    r"(?:(?:or|and) )?(?:(?:in|with|without) [A-Za-z]|for (?:\d|two|three|four|six|eight|ten|twelve)\b|"
    r"the (?:larger|smaller|large|small|pair|half|dozen|set|barrel|sack|bushel|pound|yard|case)\b)",
    re.IGNORECASE,
)
_KIND_WORDS: Final = 6  # of a kind, at most
_GOODS_WORDS: Final = 3  # of a kind whose words name goods as well: "in walnut"
_MEASURE: Final = re.compile(
    r"(?:or )?(?:(?:the|per|a|half|quarter|one|two|three|four|five|six|ten|\d+)\b[ -]*){1,2}(?P<noun>[A-Za-z]+)\.?",
    re.IGNORECASE,
)
_PEOPLE: Final = (
    r"(?:men|women|boys|girls|child(?:ren)?|misses|ladies|gents|gentlemen|youths|infants|adults|students)[.,]?"
)
_WEARER: Final = re.compile(rf"(?:for )?{_PEOPLE}", re.IGNORECASE)
_FOR_OTHERS: Final = re.compile(rf" for {_PEOPLE}$", re.IGNORECASE)
_BRINGS_UP: Final = re.compile(r"^both\b|\b(?:an?|another) [A-Za-z]|\b(?:take|buy|get|add|have) the \w", re.IGNORECASE)
_LEADS_ON: Final = re.compile(r"\W*(?:to|down|until|than|from|as|off)\b")


def with_subjects(advert: AdvertText, groups: Sequence[Sequence[Found]], pairings: Sequence[Pairing]) -> list[Pairing]:
    """Return the pairings, those whose text names nothing given the goods that it goes on about."""
    made = list(pairings)
    ends = sorted(found.end for group in groups for found in group)
    said: Pairing | None = None
    for g in sorted(range(len(made)), key=lambda g: min(found.start for found in groups[g])):
        first = min(groups[g], key=lambda found: found.start)
        end = max((end for end in ends if end <= first.start), default=None)
        if said is not None and end is not None:
            made[g] = _named(advert, first, made[g], end, said)
        if _names(advert, made[g]):
            said = made[g]
    return made


def _names(advert: AdvertText, pairing: Pairing) -> bool:
    """Say whether a pairing names something that the text after it may go on about."""
    segment = pairing.segment
    if segment is None or pairing.why == POSTAGE:
        return False
    return segment.goods or pairing.heading is not None or not _goes_on(_raw(advert, segment))


def _named(advert: AdvertText, first: Found, pairing: Pairing, end: int, said: Pairing) -> Pairing:
    """Return a pairing with what was `said` before, where its text, after the price that ends at `end`, goes on."""
    segment = pairing.segment
    if segment is None or pairing.heading is not None or pairing.why == POSTAGE:
        return pairing
    if not _is_one_text(advert, end, segment, first):
        return pairing
    raw = _raw(advert, segment)
    if not segment.goods and _goes_on(raw):
        return replace(said, why=GOES_ON)
    named = said.heading or said.segment
    if named is not None and said.why == NOTICE:
        named = replace(named, text=name_of_notice(named.text))
    if named is None or named.bare or not _follows(advert, end, segment):
        return pairing
    kind = _KIND.match(raw) is not None and len(raw.split()) <= (_GOODS_WORDS if segment.goods else _KIND_WORDS)
    if not segment.goods and _WEARER.fullmatch(raw):
        return replace(pairing, heading=replace(named, text=_FOR_OTHERS.sub("", named.text)), why=KIND_OF)
    measure = not segment.goods and _is_measure(raw)
    return replace(pairing, heading=named, why=KIND_OF) if kind or measure else pairing


def _raw(advert: AdvertText, segment: Segment) -> str:
    return " ".join(advert.text[segment.start : segment.end].split())


def _is_one_text(advert: AdvertText, end: int, segment: Segment, found: Found) -> bool:
    """Say whether a text and its price go on in the block of type that the price before stands in."""
    if not end <= segment.start <= found.start:
        return False
    line = advert.line_at(max(end - 1, 0))
    return all(n.block == line.block for n in advert.lines[line.number : found.line + 1])


def _follows(advert: AdvertText, end: int, segment: Segment) -> bool:
    """Say whether a text stands right after a price, its unit aside."""
    words = [w.lower() for w in WORD.findall(advert.text[end : segment.start])]
    return all(w in FUNCTION_WORDS or w in _SIZE_WORDS for w in words)


def _goes_on(raw: str) -> bool:
    """Say whether words are a piece of a sentence that brings up nothing new: "and go no higher", not "and a rug"."""
    words = [w.lower().replace("’", "'") for w in WORD.findall(raw)]
    if not words or _BRINGS_UP.search(raw):
        return False
    opens = words[0] in stops() or raw[:1].islower()
    return _LEADS_ON.match(raw) is not None or (opens and any(w in talk() for w in words))


def _is_measure(raw: str) -> bool:
    """Say whether words are only a measure: "the barrel", "3 pairs", "half pound"."""
    m = _MEASURE.fullmatch(raw)
    return m is not None and (
        m["noun"].lower() in _SIZE_WORDS or any(noun.kind == "measures" for noun in find_nouns(m["noun"]))
    )

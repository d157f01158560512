"""Texts that lean on what was named before them: "men's $2.95, boys' $2.45", "3 pairs $1", "the odd ones 10c".

A measure, a size, whom it is for, a grade or a word such as "others" names no article; a reader goes back to the goods
told of since the price before, else to those of that price, else to the heading of the column. Common practice, no
source.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from functools import cache
from typing import Final

from adminer.parsing.items.assign import Pairing
from adminer.parsing.items.headings import says_same
from adminer.parsing.items.panels import opens_line
from adminer.parsing.items.subjects import KIND_OF
from adminer.parsing.prices.prices import Found
from adminer.parsing.segments.items import Segment
from adminer.parsing.segments.postage import POSTAGE
from adminer.parsing.tables.price_lists import ON_ROW as ON_TABLE_ROW
from adminer.parsing.text.columns import column_over
from adminer.parsing.text.goods import find_nouns, qualifiers, stops
from adminer.parsing.text.item_words import FUNCTION_WORDS
from adminer.parsing.text.lexicon import word_list
from adminer.parsing.text.naming import is_sentence
from adminer.parsing.text.text import AdvertText
from adminer.records import Box

_LETTERS: Final = re.compile(r"[A-Za-zÀ-ÿ][A-Za-zÀ-ÿ'’&-]*")
_FEW: Final = 2  # words in small letters that no list knows
_QUOTES: Final = frozenset('"“”')
_WEAK: Final = frozenset({"measures", "crowds"})


def with_goods_before(
    advert: AdvertText,
    groups: Sequence[Sequence[Found]],
    pairings: Sequence[Pairing],
    segments: Sequence[Segment],
    rules: tuple[Box, ...],
) -> list[Pairing]:
    """Return the pairings, those whose text leans on what was named before given it as their heading."""
    priced = frozenset(found.line for group in groups for found in group)
    ends = [[found.end for o, group in enumerate(groups) if o != g for found in group] for g in range(len(groups))]
    items = frozenset(p.segment.start for p in pairings if p.segment is not None)
    made: list[Pairing] = []
    for g, pairing in enumerate(pairings):
        named = None
        if pairing.segment is not None and _needs_name(pairing, pairing.segment):
            before = _goods_before(advert, pairing.segment, segments, priced, rules)
            named = _leant_on(pairing.segment, before, ends[g], items)
        made.append(pairing if named is None else replace(pairing, heading=named, why=KIND_OF))
    return made


def leans(text: str) -> bool:
    """Say whether a text names nothing by itself: measures, sizes, grades, persons, or a word or two in small type."""
    words = _LETTERS.findall(text)
    if not words:
        return False
    small = len(words) <= _FEW and not any(w[0].isupper() for w in words) and not _QUOTES & set(text)
    return small or all(_is_leaning(w.lower().replace("’", "'")) for w in words)


def _is_leaning(word: str) -> bool:
    return word in _leaning_words() or len(word) == 1 or any(noun.kind in _WEAK for noun in find_nouns(word))


@cache
def _leaning_words() -> frozenset[str]:
    return FUNCTION_WORDS | word_list("size") | word_list("leaning") | stops() | qualifiers()


def _needs_name(pairing: Pairing, segment: Segment) -> bool:
    if segment.goods or pairing.heading is not None or pairing.why in {POSTAGE, ON_TABLE_ROW}:
        return False
    return leans(segment.text) and not says_same(segment.text)


def _goods_before(
    advert: AdvertText, segment: Segment, segments: Sequence[Segment], priced: frozenset[int], rules: tuple[Box, ...]
) -> list[Segment]:
    """Return the texts of goods before a text in its column: labels before a label, else those of its own block."""
    column = column_over(advert, advert.lines[segment.first_line], rules, priced, alone=False)
    numbers = {line.number for line in (*column.lines, *column.head)}
    before = [
        s
        for s in segments
        if s.goods and not s.bare and s.end <= segment.start and {s.first_line, s.last_line} <= numbers
    ]
    if opens_line(advert, segment):
        return [s for s in before if opens_line(advert, s) and not is_sentence(s.text)]  # a label leans on labels
    return [s for s in before if s.block == segment.block]


def _leant_on(
    segment: Segment, before: Sequence[Segment], ends: Sequence[int], items: frozenset[int]
) -> Segment | None:
    """Return the goods that a text leans on: the first since the price before, else that price's, else the nearest."""
    if not before:
        return None
    told = [s for s in before if s.start in items]
    last = max([*(end for end in ends if end <= segment.start), *(s.start for s in told[-1:])], default=0)
    return next((s for s in before if s.start >= last), (told or before)[-1])

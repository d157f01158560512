"""Texts that lean on what was named before them: "men's $2.95, boys' $2.45", "3 pairs $1", "the odd ones 10c".

A measure, a size, whom it is for, a grade or a word such as "others" names no article; a reader goes back to the goods
told of since the price before, else to those of that price, else to the heading of the column. Common practice, no
source.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from adminer.parsing.assign import Pairing
from adminer.parsing.columns import column_over
from adminer.parsing.goods import find_nouns, qualifiers, stops
from adminer.parsing.headings import says_same
from adminer.parsing.item_words import FUNCTION_WORDS
from adminer.parsing.items import Segment
from adminer.parsing.lexicon import word_list
from adminer.parsing.naming import is_sentence
from adminer.parsing.postage import POSTAGE
from adminer.parsing.price_lists import ON_ROW as ON_TABLE_ROW
from adminer.parsing.prices import Found
from adminer.parsing.subjects import KIND_OF
from adminer.parsing.text import AdvertText
from adminer.records import Box

_LETTERS: Final = re.compile(r"[A-Za-zÀ-ÿ][A-Za-zÀ-ÿ'’&-]*")
_LEANING: Final = word_list("leaning")
_SIZES: Final = word_list("size")
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
    made = list(pairings)
    priced = frozenset(found.line for group in groups for found in group)
    ends = sorted(found.end for group in groups for found in group)
    for g in sorted(range(len(made)), key=lambda g: min(found.start for found in groups[g])):
        segment = made[g].segment
        if segment is None or not _needs_name(made[g], segment):
            continue
        named = _named_before(advert, segment, segments, ends, [p.segment for p in made], priced, rules)
        if named is not None:
            made[g] = replace(made[g], heading=named, why=KIND_OF)
    return made


def leans(text: str) -> bool:
    """Say whether a text names nothing by itself: measures, sizes, grades, persons, or a word or two in small type."""
    words = _LETTERS.findall(text)
    if not words:
        return False
    small = len(words) <= _FEW and not any(w[0].isupper() for w in words) and not _QUOTES & set(text)
    return small or all(_is_leaning(w.lower().replace("’", "'")) for w in words)


def _is_leaning(word: str) -> bool:
    known = word in FUNCTION_WORDS or word in _SIZES or word in _LEANING or word in stops() or word in qualifiers()
    return known or len(word) == 1 or any(noun.kind in _WEAK for noun in find_nouns(word))


def _needs_name(pairing: Pairing, segment: Segment) -> bool:
    if segment.goods or pairing.heading is not None or pairing.why in {POSTAGE, ON_TABLE_ROW}:
        return False
    return leans(segment.text) and not says_same(segment.text)


def _named_before(
    advert: AdvertText,
    segment: Segment,
    segments: Sequence[Segment],
    ends: Sequence[int],
    chosen: Sequence[Segment | None],
    priced: frozenset[int],
    rules: tuple[Box, ...],
) -> Segment | None:
    """Return the goods that a text leans on: the first since the price before, else that price's, else the nearest."""
    column = column_over(advert, advert.lines[segment.first_line], rules, priced, alone=False)
    numbers = {line.number for line in (*column.lines, *column.head)}
    before = [
        s
        for s in segments
        if s.goods and not s.bare and s.end <= segment.start and {s.first_line, s.last_line} <= numbers
    ]
    if _opens(advert, segment):
        before = [s for s in before if _opens(advert, s) and not is_sentence(s.text)]  # a label leans on labels
    else:
        before = [s for s in before if s.block == segment.block]
    items = {s.start for s in chosen if s is not None}
    told = [s.start for s in before if s.start in items]
    last = max([*(end for end in ends if end <= segment.start), *told[-1:]], default=0)
    since = [s for s in before if s.start >= last]
    return since[0] if since else next((s for s in before if s.start in told[-1:]), before[-1] if before else None)


def _opens(advert: AdvertText, segment: Segment) -> bool:
    return segment.start <= advert.lines[segment.first_line].start + 1

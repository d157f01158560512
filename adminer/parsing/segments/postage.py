"""Postage that is asked by itself: "Postage abroad, 9d. extra", "enclose 4c in stamps for postage"."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final

from adminer.parsing.prices.prices import Found
from adminer.parsing.segments.items import Segment, segment_of
from adminer.parsing.text.item_words import WORD
from adminer.parsing.text.text import AdvertText

POSTAGE: Final = "the postage that the price is asked for"
_WORD: Final = r"postage(?:,? (?:and|&) packing| abroad| extra)?"
_BEFORE: Final = re.compile(rf"\b(?P<word>{_WORD})\b[\s,:]*(?:is |of |only )?$", re.IGNORECASE)
_AFTER: Final = re.compile(rf"[\s.]*[^.!?]{{0,30}}?\b(?P<word>{_WORD})\b", re.IGNORECASE)
_SENTENCE_END: Final = re.compile(r"[.!?;]\s")
_WORD_LETTERS: Final = 4
_WORD_END: Final = re.compile(r"[a-z]{4}\.\s")  # no abbreviation: "ea. Postage 2c" is one breath
_SHORT: Final = 4  # words of a text that needs no shorter one for its "postage"
_MAY_STAND: Final = frozenset(
    ["postage", "post", "postpaid", "extra", "abroad", "packing", "packed", "add", "plus", "for", "and", "by", "mail"]
)


def joins_main(advert: AdvertText, postage: Found, main: Found) -> bool:
    """Say whether postage is told in one breath with the price of an article: nothing else is said between them.

    "Price 48 piastres. Postage 2 piastres." are two sentences, and the second asks for postage alone.
    """
    one, two = sorted((postage, main), key=lambda found: found.start)
    between = WORD.findall(advert.text[one.end : two.start])
    told = all(word.lower() in _MAY_STAND for word in between)
    if told:
        return not _WORD_END.search(advert.text, max(one.end - _WORD_LETTERS - 1, 0), two.start)
    return not _SENTENCE_END.search(advert.text, one.end - 1, two.start)


def with_postage(advert: AdvertText, groups: Sequence[Sequence[Found]], segments: Sequence[Segment]) -> list[Segment]:
    """Return the texts with the word "postage" for each price that is asked for postage alone."""
    made = list(segments)
    for group in groups:
        place = postage_of(advert, group)
        if place is None or any(
            s.start < place[1] and place[0] < s.end and len(s.text.split()) <= _SHORT for s in made
        ):
            continue
        word = segment_of(advert, *place)
        if word is not None:
            made.append(word)
    return sorted(made, key=lambda s: s.start)


def postage_of(advert: AdvertText, group: Sequence[Found]) -> tuple[int, int] | None:
    """Return where the word stands that a group of prices is asked for, None where they are no postage alone."""
    if any(found.role != "postage" for found in group):
        return None
    found = group[0]
    m = _BEFORE.search(advert.text, max(0, found.start - 40), found.start) or _AFTER.match(advert.text, found.end)
    return m.span("word") if m else None

"""What a head over a column of figures says that the column holds: names, numbers, sizes, prices or something else."""

from __future__ import annotations

import re
from functools import lru_cache
from typing import Final, Literal

from rapidfuzz import fuzz

from adminer.parsing.text.lexicon import word_list

Kind = Literal["name", "number", "size", "other", "price"]

_HEADS: Final[tuple[tuple[Kind, tuple[str, ...]], ...]] = (
    ("name", tuple(word_list("name_head"))),
    ("number", tuple(word_list("number_head"))),
    ("size", tuple(word_list("size_head"))),
    ("other", tuple(word_list("other_head"))),
    ("price", tuple(word_list("price_head") | word_list("finish_head"))),
)
_ALIKE: Final = 80  # rapidfuzz ratio
_SHORT: Final = 3  # letters of a word too short to tell when it is misread
LONGEST_HEAD: Final = 26  # letters of a head
_JOINING: Final = frozenset({"of", "the", "and", "in", "inches", "feet"})  # "Size in inches"
_WORD: Final = re.compile(r"[a-z0-9][a-z0-9,.]*", re.IGNORECASE)


def kind_of_head(text: str) -> Kind | None:
    """Return what a head says its column holds, None for what is no head."""
    words = [w for w in (w.strip(".,:").lower() for w in _WORD.findall(text)) if w not in _JOINING]
    if not words or len(text) > LONGEST_HEAD:
        return None
    kinds = [_kind_of_word(word) for word in words]
    if None in kinds or ("name" in kinds and len(words) > 2):
        return None
    return next((kind for kind, _ in _HEADS if kind in kinds), None)


@lru_cache(maxsize=4096)
def _kind_of_word(word: str) -> Kind | None:
    """Return what the word of a head tells, of a misread one too; "Closet" is not "cost"."""
    for kind, heads in _HEADS:
        if word in heads:
            return kind
    if len(word) > _SHORT:
        for kind, heads in _HEADS:
            if any(abs(len(head) - len(word)) <= 1 and fuzz.ratio(word, head) >= _ALIKE for head in heads):
                return kind
    return None

"""When two texts say the same: the similarity used for items, names and conditions."""

from __future__ import annotations

import re
import unicodedata
from typing import Final

from rapidfuzz import fuzz

ALIKE: Final = 0.8  # issue 2: "item text with similarity of 0.8"
_LONGEST: Final = 3  # a text of more than three times the words of the other is another text, whatever it contains
_NOT_WORD: Final = re.compile(r"[^\w½¼¾⅓⅔⅛%]+")
_APOSTROPHE: Final = re.compile(r"['’ʼ]")
_EMPTY_IN_NAMES: Final = frozenset(
    ["the", "and", "co", "company", "ltd", "limited", "inc", "bros", "brothers", "mfg", "store", "stores", "of"]
)


def words_of(text: str) -> str:
    """Fold case, accents and punctuation: what is compared are the words and figures."""
    folded = unicodedata.normalize("NFKC", text.replace("½", " ½")).casefold()
    return " ".join(_NOT_WORD.sub(" ", _APOSTROPHE.sub("", folded)).split())


def similarity(one: str, other: str) -> float:
    """Return how alike two item texts are, 0 to 1, whatever the order of their words.

    rapidfuzz token_set_ratio / 100: words that both have count once, so "Rice, best" and "best Rice per lb." agree.
    That ratio calls any text holding all words of the other the same; therefore a text with more than three times
    the words of the other scores by token_sort_ratio, which counts what is too much.
    """
    a, b = words_of(one), words_of(other)
    if not a or not b:
        return 0.0
    short, long = sorted((len(a.split()), len(b.split())))
    ratio = fuzz.token_set_ratio if long <= _LONGEST * short else fuzz.token_sort_ratio
    return float(ratio(a, b)) / 100


def strict_similarity(one: str, other: str) -> float:
    """Return how alike two item texts are, 0 to 1, counting every word too many or too few (token_sort_ratio)."""
    return float(fuzz.token_sort_ratio(words_of(one), words_of(other))) / 100


def same_name(one: str, other: str) -> bool:
    """Say whether two printed names are one house's: alike after words like "Co." and a bracketed second name."""
    mine = _name_words(one)
    for form in (other, *re.split(r"[()]", other)):
        theirs = _name_words(form)
        if mine and theirs and fuzz.token_set_ratio(mine, theirs) / 100 >= ALIKE:
            return True
    return False


def _name_words(text: str) -> str:
    words = words_of(text).split()
    kept = [word for word in words if word not in _EMPTY_IN_NAMES]
    return " ".join(kept or words)


def same_terms(one: str, other: str) -> bool:
    """Say whether two printed conditions are one: alike, or the shorter (two words at least) stands in the longer."""
    a, b = words_of(one), words_of(other)
    if not a or not b:
        return False
    if fuzz.token_sort_ratio(a, b) / 100 >= ALIKE:
        return True
    return min(len(a.split()), len(b.split())) >= 2 and fuzz.partial_ratio(a, b) / 100 >= ALIKE

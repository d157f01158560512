"""Put right the words of printed terms before their wordings are looked for, keeping every character's place.

Terms are set in the smallest type of an advert, so readers get their words wrong by a letter, glue them together,
tear a spaced-out word to pieces, or hand on the hyphen of a line's end. What is mended here is only what the wordings
are matched with; the text of a term stays as it was read.
"""

from __future__ import annotations

import re
import tomllib
from functools import cache, lru_cache
from importlib.resources import files
from typing import Final

from rapidfuzz import process
from rapidfuzz.distance import Levenshtein

_WORD: Final = re.compile(r"[A-Za-z]{5,}")
_TORN: Final = re.compile(r"(?<![A-Za-z'’])(?:(?:[A-Za-z] ){2,}[A-Za-z]|[B-HJ-Zb-hj-z] [A-Za-z]{2,})(?![A-Za-z'’])")
_GLUED: Final = re.compile(r"(?<=[a-z]{2})(?=[A-Z][a-z]{2})")
_BROKEN: Final = re.compile(r"([A-Za-z]{2,})-\s([a-z]{2,})")
_SHORT: Final = 6  # letters below which a word is mended only where the letters look alike
_BUILDS: Final = ("iltfjr", "ocegqas", "nmruhbvw")  # thin, round and arched letters
_LONG: Final = 8  # letters from which two of them may be wrong


@cache
def term_words() -> frozenset[str]:
    """Return the words that printed terms are made of, long enough to be told from others by their letters."""
    return frozenset(" ".join(tomllib.loads(_data())["words"].values()).split())


@cache
def _data() -> str:
    return files("adminer.parsing").joinpath("data", "terms.toml").read_text(encoding="utf-8")


@cache
def _sound_words() -> frozenset[str]:
    """Return every word that stands in the data, whole: none of them is a slip of another."""
    return frozenset(re.findall(r"(?<![A-Za-z\\])[a-z]{5,}(?![a-z(?])", _data()))


def mend(text: str) -> tuple[str, list[int]]:
    """Return the text with the words of terms put right, and for each of its characters and its end the old place.

    A torn or broken word is joined only where that makes a word of the terms ("F R E E", "guarantee satis-\\nfaction").
    """
    joined, places = _replaced(text, list(range(len(text) + 1)), _joins(text))
    glued = [(m.start(), m.start(), " ") for m in _GLUED.finditer(joined)]
    parted, places = _replaced(joined, places, glued)
    changes = []
    for m in _WORD.finditer(parted):
        word = m[0].lower()
        right = word if word in _sound_words() else _nearest(word)
        if right is not None and right != word:
            changes.append((m.start(), m.end(), right.upper() if m[0].isupper() else right))
    return _replaced(parted, places, changes)


def _joins(text: str) -> list[tuple[int, int, str]]:
    found = []
    for m in _TORN.finditer(text):
        whole = m[0].replace(" ", "")
        if whole.lower() in term_words():
            found.append((m.start(), m.end(), whole))
    for m in _BROKEN.finditer(text):
        whole = m[1] + m[2]
        if whole.lower() in term_words() or _nearest(whole.lower()) is not None:
            found.append((m.start(), m.end(), whole))
    return sorted(found)


def _replaced(text: str, places: list[int], changes: list[tuple[int, int, str]]) -> tuple[str, list[int]]:
    """Apply changes (start, end, new text) in order; the characters of a new text share out the old places."""
    parts: list[str] = []
    kept: list[int] = []
    at = 0
    for start, end, new in changes:
        if start < at:
            continue
        parts += [text[at:start], new]
        kept += places[at:start]
        kept += [places[start + i * (end - start) // len(new)] for i in range(len(new))]
        at = end
    parts.append(text[at:])
    return "".join(parts), kept + places[at:]


@lru_cache(maxsize=8192)
def _nearest(word: str) -> str | None:
    """Return the word of the terms that a misread word of five letters or more stands for, or None."""
    near = process.extractOne(word, _in_order(), scorer=Levenshtein.distance, score_cutoff=2)
    if near is None:
        return None
    wrong = 0 if len(word) < _SHORT else 1 if len(word) < _LONG else 2  # letters of any build
    if near[1] > wrong and not (_look_alike(word, near[0]) and near[1] <= max(wrong, 1) + (len(word) >= _SHORT)):
        return None
    return near[0]


@cache
def _in_order() -> tuple[str, ...]:
    return tuple(sorted(term_words()))


def _look_alike(one: str, other: str) -> bool:
    """Say whether two words of one length differ in letters of one build only, as a reader takes one for another."""
    return len(one) == len(other) and all(
        a == b or any(a in build and b in build for build in _BUILDS) for a, b in zip(one, other, strict=True)
    )

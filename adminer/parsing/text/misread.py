"""Names of pieces that a reader got wrong by a letter or two: "fiuit dishes", "bread and hutters".

Looked for only in adverts that show tableware, in what stands between commas, figures and line ends; short names
only inside a list, where a stray word like "fruit" is less likely than a misread one.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import lru_cache
from typing import Final

from rapidfuzz import fuzz, process
from rapidfuzz.distance import Levenshtein

_PART: Final = re.compile(r"[^,;:.\n\d$¢|(){}]+")
_SECOND: Final = re.compile(r" [a-z]{4,7}\b")
_LONG: Final = 8  # letters from which a likeness of the whole is enough
_ALIKE: Final = 84  # rapidfuzz ratio
_SHORTEST: Final = 4
_IN_LIST: Final = re.compile(r"(?:\d|,|\band|&) ?$")
_KINDS: Final = frozenset({"dinnerware", "serving", "glass", "flatware"})


def misread_pieces(text: str, taken: Sequence[tuple[int, int]], names: dict[str, str]) -> list[tuple[int, int, str]]:
    """Return (start, end, piece id) of likely misread pieces outside what is taken; `names` are names with ids."""
    if not taken:
        return []
    spelled = tuple(names)
    found = []
    for part in _PART.finditer(text):
        start, end = part.span()
        words = part[0].strip()
        start += len(part[0]) - len(part[0].lstrip())
        end = start + len(words)
        if not _SHORTEST <= len(words) <= 28 or any(a < end and start < b for a, b in taken):
            continue
        near = _nearest(words.lower(), spelled)
        if near is None:
            continue
        if len(words) < _LONG and not _IN_LIST.search(text, max(0, start - 5), start):
            continue
        found.append((start, end, names[near]))
    return found


def lengthened(text: str, start: int, end: int, names: dict[str, str]) -> tuple[int, str] | None:
    """Return the end and id of a longer name that a known one begins, its second word misread: "fruit disli"."""
    m = _SECOND.match(text, end)
    if m is None:
        return None
    words = text[start : m.end()].lower()
    first = tuple(name for name in names if name.startswith(text[start:end].lower() + " "))
    near = process.extractOne(words, first, scorer=fuzz.ratio, score_cutoff=_ALIKE) if first else None
    return (m.end(), names[near[0]]) if near else None


@lru_cache(maxsize=16384)
def _nearest(words: str, spelled: tuple[str, ...]) -> str | None:
    if len(words) >= _LONG:
        near = process.extractOne(words, spelled, scorer=fuzz.ratio, score_cutoff=_ALIKE)
        return near[0] if near else None
    close = process.extractOne(words, spelled, scorer=Levenshtein.distance, score_cutoff=1)
    return close[0] if close and len(close[0]) >= _SHORTEST else None


def names_of_pieces(pieces: Sequence[tuple[str, str, tuple[str, ...]]]) -> dict[str, str]:
    """Return every name of the pieces of the table with its id; given are (id, kind, names)."""
    return {name.lower(): piece for piece, kind, names in pieces if kind in _KINDS for name in names}

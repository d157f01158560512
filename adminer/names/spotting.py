"""Find the names of an authority file in running text, whatever the reader made of their letters."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np
from rapidfuzz import fuzz, process

from adminer.names.matching import NEAR, Match, Spelling, best_match, fold_house, fold_name

_WORD: Final = re.compile(r"\S+")
_BREAK: Final = re.compile(r"[.;:!?](?:\s|$)|\n\s*\n")
_LONGEST: Final = 6  # words of a name


@dataclass(frozen=True, slots=True)
class Spotted:
    """Hold a name found in a text by its characters start to end."""

    start: int
    end: int
    text: str
    match: Match


def spot_names(text: str, spellings: Sequence[Spelling]) -> list[Spotted]:
    """Return the names found, left to right; of overlapping finds the better and longer one stays."""
    if not spellings:
        return []
    windows = _windows(text, max(len(s.folded.split()) for s in spellings) + 1)
    if not windows:
        return []
    keys = sorted({key for _, _, key, _ in windows})
    targets = [s.folded for s in spellings]
    near = process.cdist(keys, targets, scorer=fuzz.ratio, score_cutoff=100 * NEAR, dtype=np.uint8).max(axis=1)
    matches = {key: best_match(key, spellings) for key, score in zip(keys, near, strict=True) if score}
    found = [
        (whole, Spotted(start, end, " ".join(text[start:end].split()), match))
        for start, end, key, whole in windows
        if (match := matches.get(key)) is not None
    ]
    found.sort(key=lambda f: (-round(f[1].match.score, 2), not f[0], -(f[1].end - f[1].start), f[1].start))
    kept: list[Spotted] = []
    for _, spotted in found:
        if not any(spotted.start < k.end and k.start < spotted.end for k in kept):
            kept.append(spotted)
    return sorted(kept, key=lambda s: s.start)


def _windows(text: str, longest: int) -> list[tuple[int, int, str, bool]]:
    """Return runs of words that may be a name: they start with a capital, a quotation mark or a figure read for one.

    Each comes as start, end, folded text, and whether that is the whole text or words like "pattern" were left out.
    """
    words = [(m.start(), m.end()) for m in _WORD.finditer(text)]
    windows = []
    for i, (start, first_end) in enumerate(words):
        first = text[start:first_end].lstrip("“\"‘'(*")
        if not first or not (first[0].isupper() or first[0].isdigit()):
            continue
        for j in range(i, min(i + min(longest, _LONGEST), len(words))):
            end = words[j][1]
            if j > i and _BREAK.search(text[start : words[j][0]]):
                break
            folded = fold_name(text[start:end])
            if folded:
                windows.append((start, end, folded, True))
                if (house := fold_house(text[start:end])) != folded:
                    windows.append((start, end, house, False))
    return windows

"""Character error rate of transcribed lines, each against the stretch of the read text that fits it best."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Final

import numpy as np

_SPACE: Final = re.compile(r"\s+")
# One glyph printed alike, typed in several ways; neither is wrong.
_ALIKE: Final = str.maketrans({"“": '"', "”": '"', "„": '"', "’": "'", "‘": "'", "`": "'", "—": "-", "–": "-", "―": "-"})


@dataclass(frozen=True, slots=True)
class LineScore:
    """Hold one transcribed line, the stretch of read text that fits it best, and the edits between them."""

    line: str
    stretch: str
    edits: int


def plain(text: str) -> str:
    """Fold white space to single spaces and typographic quotes and dashes to their typewriter forms; case stays."""
    return _SPACE.sub(" ", text.translate(_ALIKE)).strip()


def best_stretch(line: str, text: str) -> LineScore:
    """Find the stretch of `text` with the fewest edits (insert, delete, replace: 1 each) to `line`.

    Approximate string matching with free ends: P. H. Sellers, "The theory and computation of evolutionary
    distances: pattern recognition", Journal of Algorithms 1 (1980), 359-373. A line that was not read at all
    costs its whole length. Both are compared after `plain`.
    """
    line, text = plain(line), plain(text)
    read = np.array([ord(c) for c in text], dtype=np.int64)
    steps = np.arange(len(text) + 1)
    row = np.zeros(len(text) + 1, dtype=np.int64)
    begin = steps.copy()
    for letter in line:
        take = row[:-1] + (read != ord(letter))
        skip = row[1:] + 1
        best = np.concatenate(([row[0] + 1], np.minimum(take, skip)))
        origin = np.concatenate(([begin[0]], np.where(take <= skip, begin[:-1], begin[1:])))
        # An insertion runs rightwards along the row: the running minimum of cost minus position settles all at once.
        slack = best - steps
        lowest = np.minimum.accumulate(slack)
        source = np.maximum.accumulate(np.where(slack == lowest, steps, 0))
        row, begin = lowest + steps, origin[source]
    end = int(row.argmin())
    return LineScore(line, text[int(begin[end]) : end], int(row[end]))


def score_lines(lines: tuple[str, ...], text: str) -> tuple[LineScore, ...]:
    """Score every transcribed line of a page against the whole text read on it."""
    return tuple(best_stretch(line, text) for line in lines if plain(line))


def error_rate(scores: tuple[LineScore, ...]) -> float | None:
    """Return edits by characters of truth over all lines; None without lines."""
    length = sum(len(score.line) for score in scores)
    return sum(score.edits for score in scores) / length if length else None

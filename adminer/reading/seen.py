"""A line of type as it was seen: where it stands, its straightened strip, what it says."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from adminer.layout.clean import Gray
from adminer.reading.detect import Line
from adminer.reading.letters import Letter, ReadLine

SHORT = 16  # letters: a price by itself is no longer, and may have come without a figure
LEAST_CONFIDENCE = 0.5  # mean probability of the letters of a line: below it is a picture, a smear or a border


@dataclass(frozen=True, slots=True)
class Seen:
    """Hold one line: where it stands on the cleaned picture, its straightened strip, and what it says."""

    line: Line
    strip: Gray
    read: ReadLine


def figures(letters: Sequence[Letter]) -> list[float]:
    """Return the probabilities of the figures and money signs: a word can be guessed from its neighbours, they not."""
    return [letter.confidence for letter in letters if letter.text.isdigit() or letter.text in "$¢"]


def may_price(letters: Sequence[Letter]) -> bool:
    """Say whether a line may hold a price: a figure or money sign is among its letters, or they are few."""
    return bool(figures(letters)) or len(letters) <= SHORT

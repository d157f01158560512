"""Letters among figures: where the network half saw a figure in its place, "2O" is 20 and "9x1z" a size."""

from __future__ import annotations

import re
from typing import Final

from adminer.reading.letters import Answers, Letter, ReadLine, step_of
from adminer.reading.models import number_of

HALF_SEEN: Final = 0.05  # probability from which a figure was seen in a letter's place; what is a letter shows far less
_ROUND: Final = "OoZzlI"  # letters that figures are taken for in any number
_IN_SIZES: Final = _ROUND + "SsBgq"  # those in sizes and cents; before a sum they are something else: "S5" is $5
_MIXED: Final = re.compile(
    rf"(?<!\w)(?!0z\b)(?=\w*\d)(?=[\dxX×]*[{_IN_SIZES}])"
    rf"(?:[\d{_ROUND}]{{2,}}|(?<=\d\.)[\d{_IN_SIZES}]{{2}}|[\d{_IN_SIZES}]{{1,2}}[xX×][\d{_IN_SIZES}]{{1,3}})(?!\w)"
)


def with_likely_figures(read: ReadLine, answers: Answers, width: int) -> ReadLine:
    """Return a line with the letters in its numbers and sizes as the figures that were half seen in their places.

    `answers` are the network's, `width` that of the strip as it read it, in pixels. A figure put in has the probability
    that the network gave it.
    """
    letters = list(read.letters)
    for found in _MIXED.finditer(read.text):
        for k in range(*found.span()):
            if letters[k].text in _IN_SIZES:
                letters[k] = _figure_in(letters[k], answers, width)
    return ReadLine(tuple(letters))


def _figure_in(letter: Letter, answers: Answers, width: int) -> Letter:
    """Return the likeliest figure in the place of a letter, the letter where none was half seen."""
    at = step_of(letter, width)
    seen = answers[max(0, at - 1) : at + 2].max(axis=0)
    figure = max("0123456789", key=lambda c: float(seen[number_of(c)]))
    chance = float(seen[number_of(figure)])
    return Letter(figure, letter.at, chance) if chance >= HALF_SEEN else letter

"""What a strip of type says, letter by letter, each with its place and its probability."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

STEP = 8  # pixels of a strip as the network reads it, to one step of its answer

Answers = NDArray[np.float32]  # of the network for a strip: steps by characters of its alphabet


@dataclass(frozen=True, slots=True)
class Letter:
    """Hold one character with its place along the line (0 to 1 of its width) and its probability.

    `cent` and `dollar` say how likely the network held the same place to be "¢" or "c", and "$", `point` how likely
    it saw a "." just before: what it takes them for when it is wrong depends on the line, what it half saw does not.
    """

    text: str
    at: float
    confidence: float
    cent: float = 0.0
    dollar: float = 0.0
    point: float = 0.0


@dataclass(frozen=True, slots=True)
class ReadLine:
    """Hold what one strip says."""

    letters: tuple[Letter, ...]

    @property
    def text(self) -> str:
        """Return the line as one string."""
        return "".join(letter.text for letter in self.letters)

    @property
    def confidence(self) -> float:
        """Return the mean probability of its letters, 0 for an empty line."""
        return float(np.mean([letter.confidence for letter in self.letters])) if self.letters else 0.0


def place_of(step: int, width: int) -> float:
    """Return the place along a strip of so many pixels (0 to 1 of its width) that a step of the answers tells of."""
    return min(1.0, (step + 0.5) * STEP / width)


def step_of(letter: Letter, width: int) -> int:
    """Return the step of the network's answers that a letter was read from, in a strip of so many pixels."""
    return int(letter.at * width / STEP)

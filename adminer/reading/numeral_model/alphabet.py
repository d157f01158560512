"""What the numeral reader can say: figures and signs, the same raised, and one mark for everything else."""

from __future__ import annotations

from collections.abc import Sequence

PLAIN = "0123456789$£¢c.,/-½¼¾⅓df?"  # "f" stands for the word "for", "?" for letters that are no numeral
RAISED = "0123456789¢c"
CLASSES = 1 + len(PLAIN) + len(RAISED)  # class 0 is the blank between two characters

HEIGHT = 32  # pixels a crop is brought to
WIDTH = 256  # pixels a crop is cut off at
STEP = 2  # pixels of width to one step of the answer


def encode(label: str) -> list[int]:
    """Return the classes of a label; what follows "^" is raised, as in "$1^39" and "69^¢".

    Raises ValueError for a character the reader does not know.
    """
    plain, _, raised = label.partition("^")
    return [1 + PLAIN.index(c) for c in plain] + [1 + len(PLAIN) + RAISED.index(c) for c in raised]


def decode(classes: Sequence[int]) -> str:
    """Return the text of classes, blanks and repeats already gone; "^" stands before each raised run."""
    text = ""
    high = False
    for number in classes:
        raised = number > len(PLAIN)
        if raised and not high:
            text += "^"
        text += RAISED[number - 1 - len(PLAIN)] if raised else PLAIN[number - 1]
        high = raised
    return text

"""The first reading of lines: by the quick network, and by the full one where a price may hang on it."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

import numpy as np

from adminer.layout.clean import Gray
from adminer.reading.letters import ReadLine
from adminer.reading.models import first_reader
from adminer.reading.recognise import read_strips
from adminer.reading.seen import SHORT, figures, may_price

SURE: Final = 0.995  # probability of each figure and money sign from which the quick network is taken at its word
DOUBTED: Final = 0.93  # mean probability of the letters of a line under which it is not
DISPLAY: Final = 1.5  # times the usual height of a line: it names houses and goods, in faces of all kinds


def read_first(strips: Sequence[Gray], threads: int = 1) -> list[ReadLine]:
    """Read straightened lines (gray, dark on light or light on dark)."""
    network = first_reader()
    reads = read_strips(strips, threads, network=network, room=True)
    if network == "rec" or not strips:
        return reads
    large = DISPLAY * float(np.median([strip.shape[0] for strip in strips]))
    asked = [i for i, read in enumerate(reads) if is_doubted(read, display=strips[i].shape[0] > large)]
    for i, read in zip(asked, read_strips([strips[i] for i in asked], threads, room=True), strict=True):
        reads[i] = read
    return reads


def is_doubted(read: ReadLine, *, display: bool = False) -> bool:
    """Say whether the full network reads a line too: a price by itself; if unsure, display type and what may price."""
    sure = figures(read.letters)
    if sure and (len(read.letters) <= SHORT or min(sure) < SURE):
        return True
    return read.confidence < (SURE if display else DOUBTED) and (display or may_price(read.letters))

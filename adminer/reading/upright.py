"""Whether a scan lies on its side or stands on its head: told from how little of it could be read as it is."""

from __future__ import annotations

import cv2
import numpy as np
from numpy.typing import NDArray

from adminer.layout.clean import even_light, to_gray
from adminer.reading.detect import find_lines
from adminer.reading.recognise import cut_strip, read_strips
from adminer.records import PageReading

READ_WELL = 0.8  # mean confidence of the letters of a page that stands upright
SHORTEST = 2.5  # letters of its mean word: lines that lie on their side are found as single letters
SURE = 0.8  # confidence of a line that counts
LEAST_LETTERS = 30  # in sure lines: fewer are no text, whichever way they stand
MORE = 3.0  # times the sure letters of the picture as it lies
SIDE = 1200  # pixels: large enough to tell the way that type stands, if not every word
LINES = 24  # the longest, which say most


def quarter_turns(pixels: NDArray[np.uint8], reading: PageReading, threads: int = 1) -> int:
    """Return how many quarter turns to the left set a read page upright: 0 where it stands so, or no way is better.

    `pixels` is the picture, (H, W) gray or (H, W, 3) RGB, of which `reading` is the reading.
    """
    letters = sum(len(word.text) for word in reading.words)
    sure = sum(len(word.text) * word.confidence for word in reading.words)
    if sure >= READ_WELL * letters and letters >= SHORTEST * len(reading.words) > 0:
        return 0
    gray = to_gray(pixels)
    scale = min(1.0, SIDE / max(gray.shape))
    small = even_light(np.asarray(cv2.resize(gray, None, fx=scale, fy=scale, interpolation=cv2.INTER_AREA), np.uint8))
    as_it_is, *turned = (_sure_letters(np.ascontiguousarray(np.rot90(small, turns)), threads) for turns in range(4))
    best = int(np.argmax(turned))
    return best + 1 if turned[best] >= max(LEAST_LETTERS, MORE * as_it_is) else 0


def _sure_letters(gray: NDArray[np.uint8], threads: int) -> int:
    """Count the letters of those of the longest lines that are read without doubt."""
    longest = sorted(find_lines(gray, 1.0, threads).lines, key=lambda line: -line.width)[:LINES]
    read = read_strips([cut_strip(gray, line.corners) for line in longest], threads, room=True)
    return sum(len(line.text) for line in read if line.confidence >= SURE)

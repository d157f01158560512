"""Words in pixels of the cleaned picture, on their way from the strips to the scan."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from adminer.layout.clean import WayBack
from adminer.layout.rules import Rect
from adminer.reading.detect import Line
from adminer.reading.words import StripWord
from adminer.records import PriceForm, Reader, Word


@dataclass(frozen=True, slots=True)
class PlacedWord:
    """Hold one word upright in the cleaned picture, with the middle of each of its letters along x."""

    text: str
    left: float
    top: float
    right: float
    bottom: float
    type_px: float
    confidence: float
    line: int  # index of the line it was read in
    centres: tuple[float, ...]
    reader: Reader = "display"
    form: PriceForm | None = None
    cent: float = (
        0.0  # how likely the last letter before its stop is a cent sign, the first a dollar sign, as half seen
    )
    dollar: float = 0.0
    point: float = 0.0  # how likely a point stands before its last two letters, as half seen

    @property
    def rect(self) -> Rect:
        """Return left, top, right, bottom."""
        return self.left, self.top, self.right, self.bottom


def place(word: StripWord, line: Line, number: int, strip_shape: tuple[int, ...]) -> PlacedWord:
    """Carry a word from its strip to the cleaned picture."""
    height, width = strip_shape[:2]
    origin, right, down = line.corners[0], line.corners[1], line.corners[3]
    along, across = (right - origin) / width, (down - origin) / height
    xs = np.array((word.left, word.left, word.right, word.right), np.float32)[:, None]
    ys = np.array((word.top, word.bottom) * 2, np.float32)[:, None]
    corners = origin + along * xs + across * ys
    (x0, y0), (x1, y1) = corners.min(axis=0), corners.max(axis=0)
    middle = (word.top + word.bottom) / 2
    centres = origin[0] + along[0] * np.array(word.centres, np.float32) + across[0] * middle
    return PlacedWord(
        word.text,
        float(x0),
        float(y0),
        float(x1),
        float(y1),
        word.type_px * float(np.linalg.norm(across)),
        word.confidence,
        number,
        tuple(centres.tolist()),
        cent=word.cent,
        dollar=word.dollar,
        point=word.point,
    )


def to_scan(word: PlacedWord, way_back: WayBack, number: int) -> Word:
    """Carry a word from the cleaned picture to the scan; `number` is its line in reading order."""
    return Word(
        word.text,
        way_back.box(word.left, word.top, word.right, word.bottom),
        way_back.length(word.type_px, word.left, word.top),
        word.confidence,
        word.reader,
        line=number,
        form=word.form,
    )

"""From a line that was read to words with boxes of their own: where the ink of each word begins and ends."""

from __future__ import annotations

import re
from dataclasses import dataclass
from itertools import pairwise

import cv2
import numpy as np
from numpy.typing import NDArray

from adminer.layout.clean import Gray
from adminer.reading.letters import ReadLine

DESCENDERS = frozenset("gjpqy,;Q()[]{}$|")
ASCENDERS = frozenset("bdfhkltABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789$¢£½¼¾&%/!?()[]{}|")
STOPS = frozenset(".,;:")  # that end a word and are no letter of it
SUM_BEHIND_WORD = re.compile(r"(?P<word>[A-Za-z]{3,})[$£]\d")  # US$ and A$ are signs of their own


@dataclass(frozen=True, slots=True)
class StripWord:
    """Hold one word of a strip: pixel rows and columns of its ink within the strip, capital height in its pixels."""

    text: str
    left: float
    right: float
    top: float
    bottom: float
    type_px: float
    confidence: float
    centres: tuple[float, ...]  # middle of each letter along the strip
    cent: float  # how likely the last letter before its stop is a cent sign, the first a dollar sign, as half seen
    dollar: float
    point: float  # how likely a point stands before its last two letters, as half seen


def split_words(strip: Gray, read: ReadLine) -> list[StripWord]:
    """Split a line at its spaces and where a sum stands right behind a word; give each word the box of its own ink."""
    groups: list[list[int]] = [[]]
    sums = {found.end("word") for found in SUM_BEHIND_WORD.finditer(read.text)}
    for i, letter in enumerate(read.letters):
        if letter.text == " " or i in sums:
            groups.append([])
        if letter.text != " ":
            groups[-1].append(i)
    groups = [g for g in groups if g]
    if not groups:
        return []
    height, width = strip.shape
    ink = ink_of(strip)
    centres = [letter.at * width for letter in read.letters]
    cuts = _cuts(ink, groups, centres, width)
    words = []
    for group, (left, right) in zip(groups, cuts, strict=True):
        text = "".join(read.letters[i].text for i in group)
        confidence = float(np.mean([read.letters[i].confidence for i in group]))
        box = _ink_box(ink, left, right)
        top, bottom = box[2], box[3]
        middles = tuple(centres[i] for i in group)
        words.append(
            StripWord(
                text,
                *box,
                capital_height(text, bottom - top, height),
                confidence,
                middles,
                read.letters[group[-2 if len(group) > 1 and text[-1] in STOPS else -1]].cent,
                read.letters[group[0]].dollar,
                read.letters[group[-2]].point if len(group) > 1 else 0.0,
            )
        )
    return words


def ink_of(strip: Gray, *, light: bool | None = None) -> NDArray[np.bool_]:
    """Return which pixels of a strip are ink: with `light` None, whichever of ink and paper its edges do not show."""
    level, _ = cv2.threshold(strip, 0, 255, cv2.THRESH_BINARY + cv2.THRESH_OTSU)
    dark = strip <= level
    if light is None:
        light = bool(np.concatenate([dark[0], dark[-1]]).mean() > 0.6)
    return np.asarray(~dark if light else dark)


def capital_height(text: str, ink_height: float, strip_height: float) -> float:
    """Return the capital height of a word from the height of its ink.

    Proportions of text faces, common practice, no source: small letters stand 0.7 and tails hang 0.25 of a capital.
    """
    tall = any(c in ASCENDERS for c in text)
    tail = any(c in DESCENDERS for c in text)
    if not any(c.isalnum() for c in text):
        return strip_height * 0.6
    parts = (1.0 if tall else 0.7) + (0.25 if tail else 0.0)
    return ink_height / parts


def _cuts(
    ink: NDArray[np.bool_], groups: list[list[int]], centres: list[float], width: int
) -> list[tuple[float, float]]:
    """Return the left and right limit of each word: the middle of the emptiest stretch between two words."""
    columns = ink.sum(axis=0)
    limits = [0.0]
    for before, after in pairwise(groups):
        a, b = centres[before[-1]], centres[after[0]]
        lo, hi = int(np.floor(a)), int(np.ceil(b))
        window = columns[lo : hi + 1]
        if window.size < 2:
            limits.append((a + b) / 2)
            continue
        empty = np.nonzero(window == window.min())[0]
        runs = np.split(empty, np.nonzero(np.diff(empty) > 1)[0] + 1)
        longest = max(runs, key=len)
        limits.append(lo + float(longest.mean()) + 0.5)
    limits.append(float(width))
    return list(pairwise(limits))


def _ink_box(ink: NDArray[np.bool_], left: float, right: float) -> tuple[float, float, float, float]:
    part = ink[:, int(left) : max(int(left) + 1, int(np.ceil(right)))]
    if not part.any():
        return left, right, 0.0, float(ink.shape[0])
    top, bottom = _rows_of(np.asarray(part.any(axis=1)))
    columns = np.nonzero(part[int(top) : int(bottom)].any(axis=0))[0]
    return int(left) + float(columns[0]), int(left) + float(columns[-1] + 1), top, bottom


def _rows_of(inked: NDArray[np.bool_]) -> tuple[float, float]:
    """Return first and last row of a word: from the middle of the strip outwards to the first row without ink.

    What lies beyond is the foot of the line above or the head of the line below. Dots of "i" and bars of "=" stay,
    as gaps of less than a tenth of the strip are crossed.
    """
    height = len(inked)
    skip = max(1, height // 10)
    middle = [r for r in range(height // 3, height - height // 3) if inked[r]] or list(np.nonzero(inked)[0])
    top, bottom = int(min(middle)), int(max(middle))
    while top > 0 and inked[max(0, top - skip) : top].any():
        top -= 1
    while bottom < height - 1 and inked[bottom + 1 : bottom + 1 + skip].any():
        bottom += 1
    return float(top), float(bottom + 1)

"""A second reader for the price signs of body type: Tesseract is asked where the display reader takes "¢" for a figure.

The rule by which the two are merged: the figures must be the same in both readings, and only the sign is Tesseract's.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import cv2
import numpy as np

from adminer.errors import MachineError
from adminer.layout.clean import Gray
from adminer.reading.placed import PlacedWord
from adminer.reading.signs import CENTS, LOOKS_LIKE_CENTS
from adminer.reading.tesseract import tesseract_words

CAPITAL = 26.0  # pixels: capital height words are enlarged to; common practice, no source
SMALLEST = 7.0  # pixels on the picture: lower figures stay illegible however much they are enlarged
LARGEST = 40.0  # and taller ones are display type, which Tesseract reads worse than the display reader
ROOM = 0.35  # of the capital height: paper left around a word
BORDER = 8  # pixels of paper around the enlarged word
SURE = 0.8  # probability that Tesseract must give its reading; set by eye, not measured
UNSURE = 0.97  # mean probability of its letters from which the display reader is not doubted (as in sight.py)
MOST_WORDS = 150  # of one page: bounds the time
SECONDS = 60.0  # after which Tesseract is given up for this page


def second_opinion(gray: Gray, words: Sequence[PlacedWord]) -> tuple[list[PlacedWord], str | None]:
    """Return the words with the cent signs that Tesseract sees after the same figures; a remark if it is missing."""
    result = list(words)
    asked = [i for i, word in enumerate(words) if is_doubtful(word)][:MOST_WORDS]
    if not asked:
        return result, None
    try:
        answers = _ask([_crop(gray, words[i]) for i in asked])
    except MachineError as error:
        return result, f"read without a second opinion on cent signs: {error.why}"
    for i, (text, confidence) in zip(asked, answers, strict=True):
        result[i] = merged(words[i], text, confidence)
    return result, None


def is_doubtful(word: PlacedWord) -> bool:
    """Say whether a word of body type may be a number of cents whose sign was misread."""
    if word.form or not SMALLEST <= word.type_px <= LARGEST or word.confidence >= UNSURE:
        return False
    found = LOOKS_LIKE_CENTS.match(word.text)
    if found:
        return found["sign"] != "¢" and not (found["sign"].isdigit() and len(found["figures"]) < 2)
    found = CENTS.match(word.text)
    return bool(found) and word.text.count("c") == 1


def merged(word: PlacedWord, text: str, confidence: float) -> PlacedWord:
    """Return a doubtful word as Tesseract read it where both have the same figures and Tesseract a cent sign."""
    mine = LOOKS_LIKE_CENTS.match(word.text) or CENTS.match(word.text)
    other = CENTS.match(text)
    if not mine or not other or other["sign"] != "¢" or confidence < SURE:
        return word
    if (mine["head"], mine["figures"]) != (other["head"], other["figures"]):
        return word
    settled = f"{mine['head']}{mine['figures']}¢{mine['rest']}"
    return replace(word, text=settled, confidence=max(word.confidence, min(confidence, 0.9)), reader="tesseract")


def _crop(gray: Gray, word: PlacedWord) -> Gray:
    """Cut a word out, dark on light and with capitals CAPITAL pixels high."""
    room = ROOM * word.type_px
    left, top = max(0, int(word.left - room)), max(0, int(word.top - room))
    cut = gray[top : int(word.bottom + room) + 1, left : int(word.right + room) + 1]
    if np.median(cut) < 128:
        cut = 255 - cut
    scale = CAPITAL / word.type_px
    enlarged = cv2.resize(cut, None, fx=scale, fy=scale, interpolation=cv2.INTER_CUBIC)
    return np.asarray(cv2.copyMakeBorder(enlarged, BORDER, BORDER, BORDER, BORDER, cv2.BORDER_REPLICATE), np.uint8)


def _ask(crops: Sequence[Gray]) -> list[tuple[str, float]]:
    """Return what Tesseract reads in each picture and the least probability of its words; one process reads all.

    Raises MachineError when Tesseract is missing or fails.
    """
    found: list[list[tuple[str, float]]] = [[] for _ in crops]
    for word in tesseract_words(crops, psm=7, dpi=300, seconds=SECONDS):
        found[word.page].append((word.text, word.confidence))
    return [("".join(t for t, _ in words), min((c for _, c in words), default=0.0)) for words in found]

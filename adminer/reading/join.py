"""Put together what one line of print was taken apart into: pieces of a line, dollars and their cents."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from adminer.layout.rules import Rect
from adminer.reading.gutters import Gutters
from adminer.reading.placed import PlacedWord

NEAR = 0.45  # of the line height: wider gaps are the white between columns
OVERLAP = 0.4  # of it: boxes of one line run into each other by no more
LEVEL = 0.25  # of the higher of two: their middles differ by less
LIKE = 0.6  # of it: the lower is higher than that
WORD_GAP = 0.55  # of the capital height: dollars and cents of one price stand closer than two words do
LOST_POINT = 0.85  # of it: and as far, where nothing follows that the second number could be the number of
FIGURE_PITCH = 0.95  # of the height of figures: the middles of two in one number are no further apart
DOLLARS = re.compile(r"^(?P<head>[^\w$]*)\$(?P<figures>\d{1,3}|s)(?P<point>\.?)$")
CENTS = re.compile(r"^(?P<point>[.,]?)(?P<figures>\d\d)(?P<rest>[^\w¢%/]*|[-–—][a-z]+\W*)$")
ONE_FIGURE = re.compile(r"^[^\w$£]*[1-9]$")
CENTS_OF_ONE = re.compile(r"^\d[c¢]\W*$")
POINT_ONLY = re.compile(r"^\$\d{1,3}[,:·•]\d\d(?P<rest>[^\w]*)$")


def join_lines(rects: dict[int, Rect]) -> dict[int, int]:
    """Return for every line the line it belongs to: pieces side by side on one foot, of one size, are one line."""
    order = sorted(rects, key=lambda n: rects[n][0])
    owner = {n: n for n in rects}
    gutters = Gutters.of(rects.values())
    ends = np.array([rects[n] for n in order], np.float64).reshape(-1, 4)
    first = np.ones(len(order), bool)  # of a line, as far as it was joined
    for k, n in enumerate(order):
        left, top, right, bottom = ends[:k].T
        own = ends[k]
        low, tall = np.minimum(bottom - top, own[3] - own[1]), np.maximum(bottom - top, own[3] - own[1])
        gap = own[0] - right
        level = np.abs((top + bottom) - (own[1] + own[3])) / 2 < LEVEL * tall
        close = (gap > -OVERLAP * low) & (gap < NEAR * low) & (left < own[0])
        beside = np.flatnonzero(first[:k] & close & level & (low > LIKE * np.maximum(tall, 1.0)))
        near = sorted(beside, key=lambda i: (gap[i], order[i]))
        at = next((i for i in near if not gutters.between(rect_of(ends[i]), rects[n])), None)
        if at is not None:
            owner[n], first[k] = order[at], False
            ends[at] = (*np.minimum(ends[at, :2], own[:2]), *np.maximum(ends[at, 2:], own[2:]))
    return owner


def rect_of(ends: NDArray[np.float64]) -> Rect:
    """Return the rectangle of a line from its row of left, top, right and bottom."""
    left, top, right, bottom = map(float, ends)
    return left, top, right, bottom


def join_prices(words: Sequence[PlacedWord]) -> list[PlacedWord]:
    """Return the words with "$3" and "75" as close as one word made "$3.75", a comma in its place a point.

    "2" and "9c" whose figures stand as close as those of one number are 29c.
    """
    result: list[PlacedWord] = []
    for k, word in enumerate(words):
        last = k + 1 == len(words) or words[k + 1].line != word.line
        if result and _one_price(result[-1], word, last=last):
            result[-1] = _price_of(result[-1], word)
        elif result and _one_number(result[-1], word):
            result[-1] = _number_of(result[-1], word)
        elif word.form is None and POINT_ONLY.match(word.text):
            text = re.sub(r"[,:·•]", ".", word.text, count=1)
            result.append(replace(word, text=text))
        else:
            result.append(word)
    return result


def _one_number(left: PlacedWord, right: PlacedWord) -> bool:
    """Say whether a figure and the cents after it are one number that was taken apart."""
    if not ONE_FIGURE.match(left.text) or not CENTS_OF_ONE.match(right.text) or left.line != right.line:
        return False
    known = len(left.centres) == len(left.text) and len(right.centres) == len(right.text)
    return known and right.centres[0] - left.centres[-1] < FIGURE_PITCH * min(left.type_px, right.type_px)


def _number_of(left: PlacedWord, right: PlacedWord) -> PlacedWord:
    return _as_one(left, right, left.text + right.text, (*left.centres, *right.centres))


def _as_one(left: PlacedWord, right: PlacedWord, text: str, centres: tuple[float, ...] = ()) -> PlacedWord:
    """Return two words side by side as one that says a text, with the middles of its letters where they are known."""
    return replace(
        left,
        text=text,
        centres=centres,
        top=min(left.top, right.top),
        right=right.right,
        bottom=max(left.bottom, right.bottom),
        confidence=min(left.confidence, right.confidence, 0.85),
    )


def _one_price(left: PlacedWord, right: PlacedWord, *, last: bool) -> bool:
    """Say whether dollars and cents are one price; `last` says that the second word ends its line."""
    dollars, cents = DOLLARS.match(left.text), CENTS.match(right.text)
    if not dollars or not cents or left.form or right.form or left.line != right.line:
        return False
    size = min(left.type_px, right.type_px)
    if dollars["point"] and cents["point"]:
        return False
    gap = right.left - left.right
    alone = last or cents["rest"].startswith((",", ";", "."))
    return -0.5 * size < gap < (1.2 if cents["point"] else LOST_POINT if alone else WORD_GAP) * size


def _price_of(left: PlacedWord, right: PlacedWord) -> PlacedWord:
    dollars, cents = DOLLARS.match(left.text), CENTS.match(right.text)
    head, figures = (dollars["head"], dollars["figures"].replace("s", "8")) if dollars else ("", "")
    text = f"{head}${figures}.{cents['figures'] if cents else ''}{cents['rest'] if cents else ''}"
    return _as_one(left, right, text)

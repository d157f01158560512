"""Prices that no look at the page has found: numerals standing free in ink that no line of type covers.

The detecting network is made for lines of text; it passes over a price that stands by itself at the end of a row of
leader dots, and over a numeral as high as a hand.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

import cv2
import numpy as np
from numpy.typing import NDArray

from adminer.layout.clean import LEAST_CONTRAST, Ground
from adminer.reading.detect import Line

LOWEST: Final = 9  # pixels: figures lower than this are not told from grain
SMALLEST: Final = 5  # pixels: lower ink is a leader dot or a speck, higher may be a piece of a broken figure
HIGHEST: Final = 0.25  # of the page's height
FULLEST: Final = 0.85  # of its box: a figure has holes and corners, a spot of a halftone or a rule has not
THINNEST: Final = 0.12  # of its box: less ink is a drawn line or a frame
WIDEST: Final = 4.0  # of its height: figures that touch each other
LONE: Final = 1.2  # of its height: a single blob as wide as this may be several figures
JOINED: Final = 0.3  # of its height: what stands closer belongs to the same numeral
MOST_FIGURES: Final = 7  # blobs of one numeral
LONGEST: Final = 5.0  # heights of a numeral
RING: Final = 0.3  # of its height: paper around a numeral that stands free
RING_INK: Final = 0.12  # ink in that paper: more is a picture
COVERED: Final = 0.6  # of a blob: so much of it under a line of type, and that line has read it
MOST: Final = 60  # numerals looked at on a page, those with the cleanest paper around them first
PRICE: Final = re.compile(r"^\$?\d{1,3}(?:[.,]\d\d)?[¢cC°*\"'“”’efé©]?$|^\d{1,2}/(?:\$?\d{1,2}[½¼¾¢cC]?|[-–—])?$")
SURE: Final = 0.8  # the least probability of a figure
WIDE: Final = 1.0  # heights: a lone figure is narrower
BESIDE: Final = 0.55  # of the height of a lone figure: its cents stand no further right of it
RAISED: Final = (0.25, 0.8)  # of that height: how high they are
LIFT: Final = 0.15  # of that height: and how far their foot stands above its foot, their head about its head
BIG: Final = 20  # pixels: lower figures have no cents that could be told
Rectangle = tuple[int, int, int, int]  # left, top, right, bottom


@dataclass(frozen=True, slots=True)
class Free:
    """Hold where a numeral may stand; `raised`: smaller ink stands beside its head, as the cents of a price do."""

    line: Line
    raised: bool


def free_numerals(ground: Ground, lines: Sequence[Line]) -> list[Free]:
    """Return where numerals may stand on a cleaned picture beside the lines of type found on it."""
    gray, light, dark = ground.gray, ground.light, ground.dark
    plain = light - dark > LEAST_CONTRAST
    middle = (light + dark) / 2
    reach = max(30, min(gray.shape) // 10) | 1
    panel = cv2.blur(gray, (reach, reach)) < middle  # else the paper around black type would be ink on itself
    covered = np.zeros(gray.shape, np.uint8)
    for line in lines:
        cv2.fillPoly(covered, [line.corners.round().astype(np.int32)], 1)
    found = [
        one
        for ink in (plain & (gray < middle), plain & panel & (gray >= middle))
        for one in _standing_free(ink.astype(np.uint8), covered)
    ]
    found.sort(key=lambda one: one[0])
    return [Free(_line(box), raised) for _, box, raised in found[:MOST]]


def is_price(text: str, figures: Sequence[float], wide: bool) -> bool:
    """Say whether a reading of such a place is a price beyond doubt.

    `figures` are the probabilities of its figures; a lone figure needs a `wide` place, or raised cents beside it.
    """
    return bool(PRICE.match(text)) and min(figures) >= SURE and (len(text) > 1 or wide)


def _standing_free(ink: NDArray[np.uint8], covered: NDArray[np.uint8]) -> list[tuple[float, Rectangle, bool]]:
    """Return the boxes of free numerals in one plane of ink, each with the share of ink in the paper around it.

    What a line of type has read counts as paper: a price may be set close to its name. Last comes whether raised ink
    stands beside it.
    """
    count, labels, stats, _ = cv2.connectedComponentsWithStats(ink, connectivity=8)
    blobs = stats[1:]
    wide, high, area = (blobs[:, at] for at in (cv2.CC_STAT_WIDTH, cv2.CC_STAT_HEIGHT, cv2.CC_STAT_AREA))
    full, read = area / (wide * high), np.bincount(labels[covered > 0], minlength=count)[1:] / area
    sized = (high >= SMALLEST) & (high <= HIGHEST * ink.shape[0]) & (wide <= WIDEST * high)
    free = sized & (full > THINNEST) & (full < FULLEST) & (read < COVERED)
    boxes = [(int(x), int(y), int(w), int(h)) for x, y, w, h, _ in blobs[free]]
    reach = np.zeros(ink.shape, np.uint8)
    for x, y, w, h in boxes:
        room = max(1, round(JOINED * h / 2))
        reach[y : y + h, max(0, x - room) : x + w + room] = 1
    count, groups = cv2.connectedComponents(reach, connectivity=4)
    members: list[list[tuple[int, int, int, int]]] = [[] for _ in range(count)]  # left, top, width, height
    for box in boxes:
        members[groups[box[1] + box[3] // 2, box[0] + box[2] // 2]].append(box)
    sums = np.asarray(cv2.integral(ink & (1 - covered)), np.int32)
    result = []
    for group in members[1:]:
        left, top = min(x for x, _, _, _ in group), min(y for _, y, _, _ in group)
        right, bottom = max(x + w for x, _, w, _ in group), max(y + h for _, y, _, h in group)
        tall = max(h for _, _, _, h in group)
        several = 1 < len(group) <= MOST_FIGURES or right - left > LONE * tall
        raised = tall >= BIG and len(group) <= MOST_FIGURES and _has_raised(stats, (left, top, right, bottom))
        if not (several or raised) or tall < LOWEST or bottom - top > 1.3 * tall or right - left > LONGEST * tall:
            continue
        ring = _ring_ink(sums, left, top, right, bottom, max(2, round(RING * min(tall, right - left))))
        if ring < RING_INK:
            result.append((ring, (left, top, right, bottom), raised))
    return result


def _has_raised(stats: cv2.typing.MatLike, box: Rectangle) -> bool:
    """Say whether smaller ink stands right of the head of a box."""
    _, top, right, bottom = box
    tall = bottom - top
    x, y, h = stats[1:, cv2.CC_STAT_LEFT], stats[1:, cv2.CC_STAT_TOP], stats[1:, cv2.CC_STAT_HEIGHT]
    near = (x >= right - 0.1 * tall) & (x <= right + BESIDE * tall)
    high = (abs(y - top) <= LIFT * tall) & (y + h < bottom - LIFT * tall)
    return bool((near & high & (h > RAISED[0] * tall) & (h < RAISED[1] * tall)).any())


def _ring_ink(sums: NDArray[np.int32], left: int, top: int, right: int, bottom: int, room: int) -> float:
    """Return the share of ink in a frame of paper around a box."""
    height, width = sums.shape[0] - 1, sums.shape[1] - 1
    x0, y0, x1, y1 = max(0, left - room), max(0, top - room), min(width, right + room), min(height, bottom + room)
    outer = sums[y1, x1] - sums[y0, x1] - sums[y1, x0] + sums[y0, x0]
    inner = sums[bottom, right] - sums[top, right] - sums[bottom, left] + sums[top, left]
    return float((outer - inner) / max(1, (x1 - x0) * (y1 - y0) - (right - left) * (bottom - top)))


def _line(box: Rectangle) -> Line:
    left, top, right, bottom = box
    room = 0.15 * (bottom - top)
    x0, y0, x1, y1 = left - room, top - room, right + room, bottom + room
    return Line(np.array([[x0, y0], [x1, y0], [x1, y1], [x0, y1]], np.float32), 1.0)

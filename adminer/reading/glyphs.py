"""The glyphs of a word: its own ink cut letter by letter, what belongs to its neighbours left out."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

import cv2
import numpy as np
from numpy.typing import NDArray

from adminer.layout.clean import Gray
from adminer.reading.placed import PlacedWord
from adminer.reading.words import ink_of

WORK_HEIGHT = 64  # height in pixels that a word is brought to before its glyphs are measured
LEAST_INK = 12  # pixels of ink at that height: less is grain
LOWEST = 0.15  # of that height: what is lower is a point, a dash or a speck
THICKEST = 0.25  # of that height: a rule under raised cents is no thicker
SHIFTS = tuple(k * 0.06 * WORK_HEIGHT for k in range(-5, 3))  # the network places letters late more often than early
USUAL = 0.55  # width of a figure by its height; common practice, no source
SHIFTED = 0.5  # what a shift of a whole height would cost, a letter so far away costs 1
ODD_SHAPE = 0.15  # what it costs when that ratio is off by a factor e
AT_END = 0.05  # what it costs to leave out small ink before or after all letters: a raised sign that was not read
LEFT_OUT = 0.6  # and any other ink that stands free: as much as a letter that is 0.75 of a height away
CUT_OFF = 0.03  # and ink that the edge of the window cuts: the line above, a frame, a panel
EVEN = 0.75  # of the tallest: figures of one size are no lower, so what is lower was cut badly
MOST_TOUCHING = 4  # figures in one blob
POINTS = frozenset(".,:;-–—_·•")  # too low to be told from specks: they get no glyph
AT_EDGE = 0.06  # of that height: how far a broken piece may stand out above or below the glyphs of its word


@dataclass(frozen=True, slots=True)
class Glyph:
    """Hold the ink of one character in pixels of the page."""

    left: float
    top: float
    right: float
    bottom: float

    @property
    def height(self) -> float:
        """Return the height of the ink."""
        return self.bottom - self.top

    @property
    def width(self) -> float:
        """Return the width of the ink."""
        return self.right - self.left


def letters_of(word: PlacedWord) -> str:
    """Return the letters of a word that have a glyph: all but points and dashes."""
    return "".join(c for c in word.text if c not in POINTS)


def glyphs_of(gray: Gray, word: PlacedWord) -> list[Glyph]:
    """Return the ink of a word as glyphs from left to right, one for each letter where the places of these are known.

    A blob of ink is the word's own where a letter stands on it, and is cut between letters that share it; feet of the
    line above, frames and edges of panels hold no letter. A word without places gets all the blobs in its box.
    """
    edge = 0.04 * (word.bottom - word.top)
    scale = WORK_HEIGHT / max(1.0, word.bottom - word.top)
    crop, x0, y0 = cut_out(gray, word.left - edge, word.top - edge, word.right + edge, word.bottom + edge, scale)
    if crop.size == 0:
        return []
    if len(word.centres) != len(word.text):
        return _stacked(blobs_of(crop, x0, y0, scale))
    _, labels, stats, _ = cv2.connectedComponentsWithStats(ink_of(crop).astype(np.uint8), connectivity=8)
    places = [(x - x0) * scale for x, c in zip(word.centres, word.text, strict=True) if c not in POINTS]
    found = _by_letter(np.asarray(labels, np.int32), np.asarray(stats, np.int32), places)
    return [Glyph(x0 + g.left / scale, y0 + g.top / scale, x0 + g.right / scale, y0 + g.bottom / scale) for g in found]


def _can_be_type(_x: int, _y: int, width: int, height: int, area: int) -> bool:
    """Say whether a blob is neither a speck nor a rule; figures that touch each other are long but not low."""
    low = height < LOWEST * WORK_HEIGHT
    return area >= LEAST_INK and not low and (width <= 2 * height or height > THICKEST * WORK_HEIGHT)


def _by_letter(labels: NDArray[np.int32], stats: NDArray[np.int32], places: Sequence[float]) -> list[Glyph]:
    """Return the glyph of each letter, whose places are columns of the picture; none where the ink does not suit."""
    blobs = sorted(
        (i for i in range(1, len(stats)) if _can_be_type(*stats[i])), key=lambda i: stats[i][0] + stats[i][2] / 2
    )
    shares = _share_out([_rect(stats[i]) for i in blobs], places, labels.shape)
    if not places or not shares:
        return []
    glyphs: list[Glyph] = []
    for blob, letters in zip(blobs, shares, strict=True):
        if letters:
            glyphs += _cut_up(labels == blob, _rect(stats[blob]), letters)
    owned = {blob for blob, letters in zip(blobs, shares, strict=True) if letters}
    return _with_pieces(
        [_rect(stats[i]) for i in range(1, len(stats)) if i not in owned and stats[i][4] >= LEAST_INK], glyphs
    )


def _rect(stat: NDArray[np.int32]) -> Glyph:
    x, y, w, h = (int(value) for value in stat[:4])
    return Glyph(x, y, x + w, y + h)


def _share_out(blobs: Sequence[Glyph], places: Sequence[float], shape: tuple[int, ...]) -> list[int]:
    """Return how many letters each blob holds, from left to right, so that all letters stand near their places.

    The cheapest sharing out is found by dynamic programming, once for each of a few shifts of all places.
    """
    best: tuple[float, list[int]] = (np.inf, [])
    tallest = max((blob.height for blob in blobs), default=0.0)
    for shift in SHIFTS:
        costs: dict[int, tuple[float, list[int]]] = {
            0: (SHIFTED * (shift / WORK_HEIGHT) ** 2, [])
        }  # letters dealt out: cost, and the shares so far
        for blob in blobs:
            dealt: dict[int, tuple[float, list[int]]] = {}
            for done, (cost, shares) in costs.items():
                for more in range(min(MOST_TOUCHING, len(places) - done) + 1):
                    at_end = done in (0, len(places)) and blob.height < 0.8 * tallest
                    new = cost + _cost(blob, [place + shift for place in places[done : done + more]], shape, at_end)
                    if new < dealt.get(done + more, (np.inf,))[0]:
                        dealt[done + more] = (new, [*shares, more])
            costs = dealt
        if len(places) in costs and costs[len(places)][0] < best[0]:
            best = costs[len(places)]
    return best[1]


def _cost(blob: Glyph, places: Sequence[float], shape: tuple[int, ...], at_end: bool) -> float:
    """Return how badly a blob suits letters at some places; without letters, how odd it is to leave it out."""
    if not places:
        edge = blob.left <= 1 or blob.top <= 1 or blob.right >= shape[1] - 1 or blob.bottom >= shape[0] - 1
        return CUT_OFF if edge else AT_END if at_end else LEFT_OUT * min(1.0, blob.height / WORK_HEIGHT)
    each = blob.width / len(places)
    away = sum(((blob.left + each * (k + 0.5) - place) / WORK_HEIGHT) ** 2 for k, place in enumerate(places))
    odd = len(places) * float(np.log(each / blob.height / USUAL)) ** 2
    return away + ODD_SHAPE * odd


def _cut_up(mask: NDArray[np.bool_], rect: Glyph, letters: int) -> list[Glyph]:
    """Cut a blob between its letters, each time where the least ink stands near the even share."""
    columns = mask.sum(axis=0)
    each = rect.width / letters
    edges = [int(rect.left)]
    for k in range(1, letters):
        low, high = int(rect.left + each * (k - 0.3)), int(rect.left + each * (k + 0.3)) + 1
        edges.append(low + int(columns[low:high].argmin()))
    edges.append(int(rect.right))
    glyphs = []
    for left, right in pairwise(edges):
        rows = np.nonzero(mask[:, left:right].any(axis=1))[0]
        glyphs.append(Glyph(left, int(rows[0]), right, int(rows[-1]) + 1) if len(rows) else rect)
    return glyphs


def _with_pieces(pieces: Sequence[Glyph], glyphs: Sequence[Glyph]) -> list[Glyph]:
    """Give each glyph the pieces that broke off it: blobs without a letter over or under it within the word."""
    whole = around(glyphs)
    slack = AT_EDGE * WORK_HEIGHT
    result = list(glyphs)
    for piece in pieces:
        if piece.top < whole.top - slack or piece.bottom > whole.bottom + slack or piece.width > 2 * piece.height:
            continue
        for i, glyph in enumerate(result):
            if _overlap(glyph, piece) > 0.6 * min(glyph.width, piece.width):
                result[i] = around([glyph, piece])
                break
    return result


def _stacked(blobs: Sequence[Glyph]) -> list[Glyph]:
    """Make one glyph of blobs one above the other; small ones beside large ones are no glyphs."""
    glyphs: list[Glyph] = []
    for blob in sorted(blobs, key=lambda g: (g.left + g.right) / 2):
        if glyphs and _overlap(glyphs[-1], blob) > 0.6 * min(glyphs[-1].width, blob.width):
            glyphs[-1] = around([glyphs[-1], blob])
        else:
            glyphs.append(blob)
    tallest = max((blob.height for blob in blobs), default=0.0)
    return [glyph for glyph in glyphs if glyph.height > 0.2 * tallest]


def _overlap(a: Glyph, b: Glyph) -> float:
    return min(a.right, b.right) - max(a.left, b.left)


def blobs_of(crop: Gray, x0: float, y0: float, scale: float, *, light: bool | None = None) -> list[Glyph]:
    """Return the blobs of a window that can be figures, in pixels of the page: neither specks nor rules."""
    _, _, stats, _ = cv2.connectedComponentsWithStats(ink_of(crop, light=light).astype(np.uint8), connectivity=8)
    return [
        Glyph(x0 + x / scale, y0 + y / scale, x0 + (x + w) / scale, y0 + (y + h) / scale)
        for x, y, w, h, area in stats[1:]
        if _can_be_type(x, y, w, h, area)
    ]


def around(glyphs: Sequence[Glyph]) -> Glyph:
    """Return the rectangle around some glyphs."""
    return Glyph(
        min(g.left for g in glyphs),
        min(g.top for g in glyphs),
        max(g.right for g in glyphs),
        max(g.bottom for g in glyphs),
    )


def cut_out(gray: Gray, left: float, top: float, right: float, bottom: float, scale: float) -> tuple[Gray, int, int]:
    """Cut a window out of the page and resize it; return it with its left and top in the page."""
    x0, y0 = max(0, int(left)), max(0, int(top))
    x1, y1 = min(gray.shape[1], int(np.ceil(right))), min(gray.shape[0], int(np.ceil(bottom)))
    if x1 - x0 < 2 or y1 - y0 < 2:
        return np.zeros((0, 0), np.uint8), x0, y0
    window: NDArray[np.uint8] = gray[y0:y1, x0:x1]
    kind = cv2.INTER_CUBIC if scale > 1 else cv2.INTER_AREA
    return np.asarray(cv2.resize(window, None, fx=scale, fy=scale, interpolation=kind), np.uint8), x0, y0


def alone(gray: Gray, box: Glyph, height: float) -> Gray:
    """Cut a part of a word out at a height in pixels, with clean paper around it in place of its neighbours."""
    crop, _, _ = cut_out(gray, box.left, box.top, box.right, box.bottom, height / max(1.0, box.height))
    if crop.size == 0:
        return crop
    paper = crop[~ink_of(crop)]
    room = round(0.35 * height)
    shade = int(np.median(paper)) if paper.size else 255
    return np.asarray(cv2.copyMakeBorder(crop, room, room, room, room, cv2.BORDER_CONSTANT, value=shade), np.uint8)

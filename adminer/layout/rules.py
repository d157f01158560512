"""Printed rules, the frames they make, and dark panels, on the cleaned picture."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import cv2
import numpy as np
from numpy.typing import NDArray

from adminer.layout.clean import Gray

Rect = tuple[float, float, float, float]  # left, top, right, bottom in pixels of the cleaned picture
Mask = NDArray[np.uint8]

LOOK_SIDE = 1400  # rules are looked for at this length of the longer side: thin ones survive, grain does not
SHORTEST = 0.035  # of the longer side: shorter strokes are letters, dashes and underlines of prices
SIDE_DRAWN = 0.7  # of each side of a frame must be printed: old borders have gaps
LEAST_FRAME = (1.5, 0.8)  # shortest rules: width and height of a frame
SAME = 0.85  # of the larger of two rectangles: they are edges of one border
FILLED = 0.8  # of its bounding box a closed face must fill, or it is no rectangle
LEVEL = 4  # times as long as it is thick: a rule, and no panel
LEAST_PANEL = 0.4  # of the square of the shortest rule: smaller dark stretches are letters
PANEL_SIDE = 0.022  # of the longer side: dark over more than this both ways is a panel (or a picture), not type


@dataclass(frozen=True, slots=True)
class RuleWork:
    """Hold rules, frames and dark panels, each as (left, top, right, bottom)."""

    rules: tuple[Rect, ...]
    frames: tuple[Rect, ...]
    panels: tuple[Rect, ...]


def find_rules(gray: Gray) -> RuleWork:
    """Find straight rules, the rectangles they close, and dark panels."""
    longer = max(gray.shape)
    scale = min(1.0, LOOK_SIDE / longer)
    small = cv2.resize(gray, None, fx=scale, fy=scale, interpolation=cv2.INTER_AREA) if scale < 1 else gray
    ink = _ink(np.asarray(small, np.uint8))
    side = max(small.shape)
    length = max(12, round(SHORTEST * side))
    solid = _panels(ink, max(5, round(PANEL_SIDE * side)))
    thin = cv2.bitwise_and(ink, cv2.bitwise_not(cv2.erode(solid, np.ones((3, 3), np.uint8))))
    joined = np.asarray(cv2.morphologyEx(thin, cv2.MORPH_CLOSE, np.ones((3, 3), np.uint8)), np.uint8)
    across = _strokes(joined, length, horizontal=True)
    down = _strokes(joined, length, horizontal=False)
    panels = [r for r in _boxes(solid) if (r[2] - r[0]) * (r[3] - r[1]) > LEAST_PANEL * length * length]
    drawn = np.asarray(across | down | solid, np.uint8)
    frames = _frames(drawn, length)
    rules = [*_boxes(across), *_boxes(down)]
    return RuleWork(_scaled(rules, scale), _scaled(frames, scale), _scaled(panels, scale))


def _ink(gray: Gray) -> Mask:
    """Return 1 where a pixel is clearly darker than the paper around it, or simply dark."""
    paper = cv2.GaussianBlur(cv2.dilate(gray, np.ones((9, 9), np.uint8)), (0, 0), 6)
    return np.asarray(((cv2.subtract(paper, gray) > 55) | (gray < 90)).astype(np.uint8))


def _panels(ink: Mask, side: int) -> Mask:
    """Return the stretches that stay dark after letters cut out of them are filled and letters around are removed."""
    filled = cv2.morphologyEx(ink, cv2.MORPH_CLOSE, np.ones((3, 3), np.uint8))
    block = np.ones((side, side), np.uint8)
    core = np.asarray(
        cv2.morphologyEx(filled, cv2.MORPH_OPEN, np.ones((side // 2 | 1, side // 2 | 1), np.uint8)), np.uint8
    )
    if not cv2.hasNonZero(core):
        return core
    edge = _at_edge(core)
    # the black around a frame of film joins no panel beside it
    outer, inner = (cv2.morphologyEx(part, cv2.MORPH_CLOSE, block) for part in (edge, cv2.bitwise_and(core, 1 - edge)))
    grown = cv2.bitwise_or(outer, inner)
    return np.asarray(cv2.morphologyEx(grown, cv2.MORPH_OPEN, block), np.uint8)


def _at_edge(solid: Mask) -> Mask:
    """Return the stretches that touch the edge of the picture."""
    _, labels = cv2.connectedComponents(solid, connectivity=8)
    outer = np.unique(np.concatenate([labels[0], labels[-1], labels[:, 0], labels[:, -1]]))
    return np.asarray(np.isin(labels, outer[outer > 0]), np.uint8)


def _strokes(ink: Mask, length: int, *, horizontal: bool) -> Mask:
    """Return the straight strokes of one direction, with gaps of a third of the shortest rule closed."""
    gap = max(3, length // 3)
    slack, bar, bridge = ((3, 1), (1, length), (1, gap)) if horizontal else ((1, 3), (length, 1), (gap, 1))
    strokes = cv2.morphologyEx(cv2.dilate(ink, np.ones(slack, np.uint8)), cv2.MORPH_OPEN, np.ones(bar, np.uint8))
    return np.asarray(cv2.morphologyEx(strokes, cv2.MORPH_CLOSE, np.ones(bridge, np.uint8)), np.uint8)


def _frames(drawn: Mask, length: int) -> list[Rect]:
    """Return rectangles that are closed faces of the rules, or whose four sides are mostly printed."""
    padded = cv2.copyMakeBorder(drawn, 2, 2, 2, 2, cv2.BORDER_CONSTANT, value=0)
    bridged = np.asarray(cv2.morphologyEx(padded, cv2.MORPH_CLOSE, np.ones((7, 7), np.uint8)), np.uint8)
    contours, hierarchy = cv2.findContours(bridged, cv2.RETR_CCOMP, cv2.CHAIN_APPROX_SIMPLE)
    found: list[Rect] = []
    for contour, links in zip(contours, hierarchy[0] if hierarchy is not None else [], strict=True):
        x, y, w, h = cv2.boundingRect(contour)
        if w < LEAST_FRAME[0] * length or h < LEAST_FRAME[1] * length:
            continue
        is_face = links[3] >= 0
        if is_face and cv2.contourArea(contour) < FILLED * w * h:
            continue
        if not is_face and not _drawn_around(bridged, x, y, w, h):
            continue
        found.append((x - 2, y - 2, x + w - 2, y + h - 2))
    return _distinct(found)


def _drawn_around(drawn: Mask, x: int, y: int, w: int, h: int) -> bool:
    band = max(3, min(w, h) // 25)
    sides = (
        drawn[y : y + band, x : x + w].max(axis=0),
        drawn[y + h - band : y + h, x : x + w].max(axis=0),
        drawn[y : y + h, x : x + band].max(axis=1),
        drawn[y : y + h, x + w - band : x + w].max(axis=1),
    )
    return all(float(side.mean()) >= SIDE_DRAWN for side in sides)


def _distinct(rects: list[Rect]) -> list[Rect]:
    """Keep the larger of two nearly equal rectangles: the inner and outer edge of one border."""
    kept: list[Rect] = []
    for rect in sorted(rects, key=area_of, reverse=True):
        if all(shared(rect, other) / max(area_of(other), 1.0) < SAME for other in kept):
            kept.append(rect)
    return kept


def area_of(rect: Rect) -> float:
    """Return the area of a rectangle."""
    return max(0.0, rect[2] - rect[0]) * max(0.0, rect[3] - rect[1])


def centre(rect: Rect) -> tuple[float, float]:
    """Return the middle of a rectangle as (x, y)."""
    return (rect[0] + rect[2]) / 2, (rect[1] + rect[3]) / 2


def level_rules(rules: Sequence[Rect]) -> list[Rect]:
    """Return the rules that run across a page: several times as long as they are thick."""
    return [rule for rule in rules if rule[2] - rule[0] > LEVEL * (rule[3] - rule[1])]


def shared(a: Rect, b: Rect) -> float:
    """Return the area two rectangles share."""
    return area_of((max(a[0], b[0]), max(a[1], b[1]), min(a[2], b[2]), min(a[3], b[3])))


def _boxes(mask: Mask) -> list[Rect]:
    if not cv2.hasNonZero(mask):
        return []
    # strokes and panels are few: their numbers fit into 16 bits, which takes a third of the time
    _, _, stats, _ = cv2.connectedComponentsWithStats(mask, connectivity=8, ltype=cv2.CV_16U)
    return [(float(x), float(y), float(x + w), float(y + h)) for x, y, w, h, _ in stats[1:]]


def _scaled(rects: list[Rect], scale: float) -> tuple[Rect, ...]:
    return tuple((a / scale, b / scale, c / scale, d / scale) for a, b, c, d in rects)

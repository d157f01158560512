"""Find and read the type of a picture: several scales, each line once, every line with its strip and its letters."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import cv2
import numpy as np
from numpy.typing import NDArray

from adminer.layout.clean import Gray, Ground, ground_of, lift_faint
from adminer.layout.rules import Rect
from adminer.reading.again import second_try
from adminer.reading.detect import Line, find_lines
from adminer.reading.first import read_first
from adminer.reading.leftover import WIDE, free_numerals, is_price
from adminer.reading.recognise import cut_strip
from adminer.reading.seen import LEAST_CONFIDENCE, Seen, figures
from adminer.reading.words import ink_of

SHORT_SIDE = 736  # network pixels: the shorter side of a picture is brought to at least this
LONG_SIDE = 2000  # and the longer side at first to at most this
FINE = 13.0  # lines lower than this in network pixels are missed or cut badly
AIM = 22.0  # the height that the fine look brings them to
COARSE = 0.35  # the look for the largest type: at this part of the first scale
LARGE = 24.0  # lines at least this high in the coarse look are large type
UNREAD = 0.6  # mean probability of its letters under which a tall box may be several lines
VALLEY = 0.6  # of the ink of the rows around: less between two lines that touch; set by eye on one column of figures
LEAST_ROW = 0.4  # of the usual height of a line: what is lower is a stroke, not a line
LINE_OF_ROWS = 1.2  # of it: and what is higher is display type, which has valleys of its own
LONG = 3.0  # heights of a line from which its slope means something
MOST_PIXELS = 14e6  # pixels of one look: bounds time and memory on a very large page


@dataclass(frozen=True, slots=True)
class Look:
    """Hold the first look at a cleaned picture: its lines as first read, and the picture at the size it was looked at.

    `ratio` is (x, y), pixels of the cleaned picture to one of those. `marked` says of each look which of its pixels may
    be type.
    """

    gray: Gray
    seen: tuple[Seen, ...]
    ground: Ground
    ratio: NDArray[np.float32]
    marked: tuple[NDArray[np.bool_], ...]

    def hints_at(self, place: Line) -> bool:
        """Say whether any look saw something of type at a place of the picture as it was looked at."""
        left, top, right, bottom = place.bounds
        height, width = self.ground.gray.shape
        for marked in self.marked:
            x, y = marked.shape[1] / width, marked.shape[0] / height
            rows = marked[max(0, int(top * y)) : int(bottom * y) + 1]
            if rows[:, max(0, int(left * x)) : int(right * x) + 1].any():
                return True
        return False


def look_at(gray: Gray, threads: int = 1) -> Look:
    """Find the lines of type on a cleaned picture and read each once."""
    ground, ratio = _within_pixels(gray)
    lines, marked = _at_scales(ground, threads)
    found = [Line(line.corners * ratio, line.score) for line in lines]
    return Look(gray, tuple(_read(gray, found, threads)), ground, ratio, marked)


def see(look: Look, threads: int = 1) -> list[Seen]:
    """Return every line of type of a picture: the badly read are read again, missed prices are sought."""
    usual = float(np.median([one.line.height for one in look.seen])) if look.seen else 0.0
    seen: list[Seen] = []
    pieces: list[Line] = []
    for one in look.seen:
        rows = split_rows(one, usual) if one.read.confidence < UNREAD else []
        pieces += rows
        if not rows:
            seen.append(one)
    seen += _read(look.gray, pieces, threads)
    seen = second_try(look.gray, seen, threads)
    return [*seen, *_missed(look, [one.line for one in seen if one.read.confidence >= LEAST_CONFIDENCE], threads)]


def _missed(look: Look, lines: Sequence[Line], threads: int) -> list[Seen]:
    """Read the prices that stand free beside the lines that were found.

    What was made no line of is a numeral only where there was a hint of type; in drawings there is none.
    """
    free = free_numerals(look.ground, [Line(line.corners / look.ratio, line.score) for line in lines])
    free = [one for one in free if look.hints_at(one.line)]
    read = _read(look.gray, [Line(one.line.corners * look.ratio, one.line.score) for one in free], threads)
    return [
        one
        for one, place in zip(read, free, strict=True)
        if is_price(one.read.text, figures(one.read.letters), place.raised or one.line.width > WIDE * one.line.height)
    ]


def running_lines(seen: Sequence[Seen]) -> tuple[NDArray[np.float64], float]:
    """Return (x, y, slope, length) of each line long enough to tell its slope, and the usual height of these."""
    long = [one.line for one in seen if one.line.width > LONG * one.line.height and one.read.confidence > UNREAD]
    rows = []
    for line in long:
        start, end = (line.corners[0] + line.corners[3]) / 2, (line.corners[1] + line.corners[2]) / 2
        rows.append([*((start + end) / 2), (end[1] - start[1]) / max(end[0] - start[0], 1.0), line.width])
    height = float(np.median([line.height for line in long])) if long else 0.0
    return np.array(rows, np.float64).reshape(-1, 4), height


def _read(gray: Gray, lines: Sequence[Line], threads: int) -> list[Seen]:
    strips = [cut_strip(gray, line.corners) for line in lines]
    return [Seen(*parts) for parts in zip(lines, strips, read_first(strips, threads), strict=True)]


def split_rows(one: Seen, usual: float) -> list[Line]:
    """Return the rows of a block that was taken for one line: narrow columns of figures stand close enough for that.

    `usual` is the median height of a line on the page. Nothing is returned for what is no such block.
    """
    height = one.strip.shape[0]
    if one.line.height < 1.7 * usual or one.line.width > 4 * one.line.height:
        return []
    inked = ink_of(one.strip).mean(axis=1)
    busy = np.nonzero(inked > 0.15 * inked.max(initial=0.0))[0]
    runs = [run for run in np.split(busy, np.nonzero(np.diff(busy) > 1)[0] + 1) if len(run) > 0.3 * usual]
    cut = [row for run in runs for row in _at_valleys(inked, run, usual)]
    if len(cut) > len(runs) and all(len(row) < LINE_OF_ROWS * usual for row in cut):
        runs = cut
    if len(runs) < 2:
        return []
    origin, right, down = one.line.corners[0], one.line.corners[1], one.line.corners[3]
    rows = []
    for run in runs:
        edge = 0.2 * len(run)
        a, b = max(0.0, run[0] - edge) / height, min(float(height), run[-1] + 1 + edge) / height
        corners = [origin + (down - origin) * a, right + (down - origin) * a]
        corners += [right + (down - origin) * b, origin + (down - origin) * b]
        rows.append(Line(np.array(corners, np.float32), one.line.score))
    return rows


def _at_valleys(inked: NDArray[np.float64], run: NDArray[np.int64], usual: float) -> list[NDArray[np.int64]]:
    """Cut a run of rows of ink where there is much less of it than above and below: lines whose strokes touch."""
    shortest = max(2, round(LEAST_ROW * usual))
    middle = run[shortest : len(run) - shortest]
    if len(middle) == 0:
        return [run]
    valley = int(middle[inked[middle].argmin()])
    above, below = run[run < valley], run[run >= valley]
    if inked[valley] > VALLEY * min(inked[above].max(), inked[below].max()):
        return [run]
    return [*_at_valleys(inked, above, usual), *_at_valleys(inked, below, usual)]


def _at_scales(ground: Ground, threads: int) -> tuple[list[Line], tuple[NDArray[np.bool_], ...]]:
    """Return the lines of a picture found at the scales that its type needs, and what each look marked as type."""
    gray, lifted = ground.gray, lift_faint(ground)
    scale = max(SHORT_SIDE / min(gray.shape), min(1.0, LONG_SIDE / max(gray.shape)))
    scale = min(scale, (MOST_PIXELS / gray.size) ** 0.5)  # a long strip would grow to a hundred thousand pixels
    looks = [find_lines(lifted, scale, threads)]
    lines = looks[0].lines
    if lines:
        low = float(np.percentile([min(line.height, line.width) for line in lines], 30)) * scale
        finer = min(scale * AIM / low, (MOST_PIXELS / gray.size) ** 0.5)
        if low < FINE and finer > 1.25 * scale:
            looks.append(find_lines(lifted, finer, threads))
            lines = _united(looks[-1].lines, [line for line in lines if line.height * finer > 60])
    looks.append(find_lines(lifted, scale * COARSE, threads))
    coarse = [line for line in looks[-1].lines if line.height * scale * COARSE > LARGE]
    return _united(lines, coarse), tuple(look.marked for look in looks)


def _within_pixels(gray: Gray) -> tuple[Ground, NDArray[np.float32]]:
    """Return a picture of at most MOST_PIXELS, itself where it has no more, and the ratio (x, y) of the sizes."""
    reduced = (MOST_PIXELS / gray.size) ** 0.5
    if reduced >= 1.0:
        return ground_of(gray), np.ones(2, np.float32)
    small = np.asarray(cv2.resize(gray, None, fx=reduced, fy=reduced, interpolation=cv2.INTER_AREA), np.uint8)
    return ground_of(small), np.array([gray.shape[1] / small.shape[1], gray.shape[0] / small.shape[0]], np.float32)


def _united(kept: Sequence[Line], more: Sequence[Line]) -> list[Line]:
    """Add the lines of a second look that the first has not, and let one of them stand for the pieces it joins."""
    result = [(line, line.bounds) for line in kept]
    for line in more:
        bounds = line.bounds
        pieces = [other for other, within in result if _share(within, bounds) > 0.6]
        covered = sum(other.width * other.height for other in pieces)
        if covered < 0.4 * line.width * line.height:
            slivers = {id(other) for other in pieces if other.height >= 0.5 * line.height}
            result = [*(one for one in result if id(one[0]) not in slivers), (line, bounds)]
    return [line for line, _ in result]


def _share(a: Rect, b: Rect) -> float:
    """Return how much of a rectangle lies within another, 0 to 1."""
    w = min(a[2], b[2]) - max(a[0], b[0])
    h = min(a[3], b[3]) - max(a[1], b[1])
    area = (a[2] - a[0]) * (a[3] - a[1])
    return w * h / area if w > 0 and h > 0 and area > 0 else 0.0

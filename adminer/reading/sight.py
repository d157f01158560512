"""Find and read the type of a picture: several scales, each line once, every line with its strip and its letters."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from adminer.layout.clean import lift_faint
from adminer.reading.detect import Line, find_lines
from adminer.reading.recognise import Gray, ReadLine, cut_strip, read_strips

SHORT_SIDE = 736  # network pixels: the shorter side of a picture is brought to at least this
LONG_SIDE = 2000  # and the longer side at first to at most this
FINE = 13.0  # lines lower than this in network pixels are missed or cut badly
AIM = 22.0  # the height that the fine look brings them to
COARSE = 0.35  # the look for the largest type: at this part of the first scale
LARGE = 24.0  # lines at least this high in the coarse look are large type
MOST_PIXELS = 14e6  # network pixels of one look: bounds its time on a very large page


@dataclass(frozen=True, slots=True)
class Seen:
    """Hold one line: where it stands on the cleaned picture, its straightened strip, and what it says."""

    line: Line
    strip: Gray
    read: ReadLine


def see(gray: Gray, threads: int = 1) -> list[Seen]:
    """Find and read every line of type on a cleaned picture."""
    lines = find_all(gray, threads)
    strips = [cut_strip(gray, line.corners) for line in lines]
    reads = read_strips(strips, threads)
    return [Seen(*parts) for parts in zip(lines, strips, reads, strict=True)]


def find_all(gray: Gray, threads: int = 1) -> list[Line]:
    """Return the lines of a picture found at the scales that its type needs."""
    lifted = lift_faint(gray)
    scale = max(SHORT_SIDE / min(gray.shape), min(1.0, LONG_SIDE / max(gray.shape)))
    lines = find_lines(lifted, scale, threads)
    if lines:
        low = float(np.percentile([min(line.height, line.width) for line in lines], 30)) * scale
        finer = min(scale * AIM / low, (MOST_PIXELS / gray.size) ** 0.5)
        if low < FINE and finer > 1.25 * scale:
            fine = find_lines(lifted, finer, threads)
            lines = _united(fine, [line for line in lines if line.height * finer > 60])
    coarse = [line for line in find_lines(lifted, scale * COARSE, threads) if line.height * scale * COARSE > LARGE]
    return _united(lines, coarse)


def _united(kept: Sequence[Line], more: Sequence[Line]) -> list[Line]:
    """Add the lines of a second look that the first has not, and let one of them stand for the pieces it joins."""
    result = list(kept)
    for line in more:
        pieces = [i for i, other in enumerate(result) if _share(other, line) > 0.6]
        covered = sum(result[i].width * result[i].height for i in pieces)
        if covered < 0.4 * line.width * line.height:
            slivers = {i for i in pieces if result[i].height >= 0.5 * line.height}
            result = [other for i, other in enumerate(result) if i not in slivers]
            result.append(line)
    return result


def _share(inner: Line, outer: Line) -> float:
    """Return how much of a line lies within the bounds of another, 0 to 1."""
    a, b = inner.bounds, outer.bounds
    w = min(a[2], b[2]) - max(a[0], b[0])
    h = min(a[3], b[3]) - max(a[1], b[1])
    area = (a[2] - a[0]) * (a[3] - a[1])
    return w * h / area if w > 0 and h > 0 and area > 0 else 0.0

"""A second reading of what was read badly: with more contrast and a little more room, the unsure part alone."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

import numpy as np

from adminer.layout.clean import Gray
from adminer.reading.detect import Line
from adminer.reading.letters import Letter, ReadLine
from adminer.reading.recognise import cut_strip, read_strips, stretch
from adminer.reading.seen import Seen, figures, may_price
from adminer.reading.words import split_words

SURE = 0.9  # mean probability of letters from which they are not read a second time, if each figure is as sure
BETTER = 0.01  # by how much the second reading must be the surer one
ROOM = 0.15  # of the height of a line: added at both ends for the second reading
MANY = 30  # letters of a line: no second reading ever made one out, on real scans or of the press, that was
BLUR = 0.6  # less sure than this on the whole
LONG = 15.0  # heights of a line from which its parts are read by themselves: words in their line are read better
CROWD = 300  # lines of a page of a paper, most of them editorial matter: only what may hold a price is read again
MOSTLY = 0.6  # of a line unsure, and the whole of it is read again


@dataclass(frozen=True, slots=True)
class Part:
    """Hold an unsure stretch of a line: its letters from `first` to before `end`, and where it lies in the strip."""

    first: int
    end: int
    left: float
    right: float


def second_try(gray: Gray, seen: Sequence[Seen], threads: int) -> list[Seen]:
    """Read what is unsure again and keep the surer reading; the lines keep their order."""
    result = list(seen)
    wanted = [is_asked(one.read.letters) and (len(seen) < CROWD or may_price(one.read.letters)) for one in seen]
    asked = [(i, part) for i, one in enumerate(seen) if wanted[i] for part in unsure_parts(one)]
    lines = [_line_of(seen[i], part) for i, part in asked]
    strips = [stretch(cut_strip(gray, line.corners)) for line in lines]
    answers = zip(asked, lines, strips, read_strips(strips, threads, room=True), strict=True)
    for (i, part), line, strip, read in sorted(answers, key=lambda answer: -answer[0][1].first):
        letters = seen[i].read.letters
        before = ReadLine(letters[part.first : part.end])
        if read.confidence <= before.confidence + BETTER or len(read.text) < 0.8 * len(before.text):
            continue
        whole = len(before.letters) == len(letters)
        result[i] = Seen(line, strip, read) if whole else _with_part(result[i], part, read, strip.shape[1])
    return result


def is_asked(letters: Sequence[Letter]) -> bool:
    """Say whether a line is read again: it is unsure, and not one of many letters that are a blur either way."""
    blurred = len(letters) >= MANY and ReadLine(tuple(letters)).confidence < BLUR
    return is_unsure(letters) and not blurred


def is_unsure(letters: Sequence[Letter]) -> bool:
    """Say whether letters were read badly: on the whole, or one figure among them."""
    return min([ReadLine(tuple(letters)).confidence, *figures(letters)]) < SURE


def unsure_parts(one: Seen) -> list[Part]:
    """Return the stretches of a long line whose words are unsure: one sure word between two of them belongs to both."""
    letters, width = one.read.letters, float(one.strip.shape[1])
    whole = [Part(0, len(letters), 0.0, width)]
    if one.line.width < LONG * one.line.height:
        return whole
    words = split_words(one.strip, one.read)
    spaces = [-1, *(k for k, letter in enumerate(letters) if letter.text == " "), len(letters)]
    spans = [(a + 1, b) for a, b in pairwise(spaces) if b > a + 1]
    edges = [0.0, *((a.right + b.left) / 2 for a, b in pairwise(words)), width]
    parts: list[Part] = []
    last = -2
    for k, (first, end) in enumerate(spans):
        if not is_unsure(letters[first:end]):
            continue
        if k - last <= 2 and parts:
            parts[-1] = replace(parts[-1], end=end, right=edges[k + 1])
        else:
            parts.append(Part(first, end, edges[k], edges[k + 1]))
        last = k
    return whole if sum(part.right - part.left for part in parts) > MOSTLY * width else parts or whole


def _line_of(one: Seen, part: Part) -> Line:
    """Return where a part of a line stands on the picture, with room at both ends."""
    top_left, top_right, bottom_right, bottom_left = one.line.corners
    start, end = part.left / one.strip.shape[1], part.right / one.strip.shape[1]
    step = (top_right - top_left) / max(one.line.width, 1.0) * (ROOM * one.line.height)
    over, under = top_right - top_left, bottom_right - bottom_left
    corners = [top_left + over * start - step, top_left + over * end + step]
    corners += [bottom_left + under * end + step, bottom_left + under * start - step]
    return Line(np.array(corners, np.float32), one.line.score)


def _with_part(one: Seen, part: Part, read: ReadLine, width: int) -> Seen:
    """Return a line with a stretch of its letters taken from the second reading, `width` pixels wide."""
    whole = one.strip.shape[1]
    start = part.left - ROOM * one.line.height
    letters = [replace(letter, at=min(1.0, max(0.0, (start + letter.at * width) / whole))) for letter in read.letters]
    kept = one.read.letters
    return replace(one, read=ReadLine((*kept[: part.first], *letters, *kept[part.end :])))

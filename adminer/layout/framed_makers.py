"""A page of makers' adverts, each in a frame of its own within one rule around them all.

Magazines set them so at the end of a number. The frame around all is no advert: each frame in it says whose it is, and
no shop's name stands over or under them. Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from adminer.layout.appeal import is_signed
from adminer.layout.framed import frames_with_type, held_in, outermost, outside_of, within
from adminer.layout.rules import Rect, RuleWork, area_of
from adminer.layout.type_lines import Part, TypeLine, around, middle_of, usual_size

_FEWEST: Final = 3  # frames, and lines of an advert
_SIGNED: Final = 0.6  # of the frames, which tell whose they are
_LARGEST: Final = 0.7  # of the frame around all: larger is its inner rule
_HEAD: Final = 1.5  # times the usual type: a name over the frames
_NEAR: Final = 3.0  # type sizes between two lines of an advert whose frame was not found
_SURE, _LESS_SURE = 0.8, 0.6


def framed_makers(around_all: Rect, work: RuleWork, lines: Sequence[TypeLine], whole: Rect) -> list[Part]:
    """Return the adverts in a frame around adverts of several makers; none of one that is an advert itself."""
    inner = frames_with_type(work, lines, whole, _LARGEST * area_of(around_all))
    frames = outermost([f for f in inner if within(f, around_all)])
    signed = sum(is_signed(held_in(lines, f)) for f in frames)
    if len(frames) < _FEWEST or signed < _SIGNED * len(frames):
        return []
    loose = sorted(outside_of(lines, frames), key=middle_of)
    top, foot = min(f[1] for f in frames), max(f[3] for f in frames)
    outside = [n for n in loose if middle_of(n) < top or middle_of(n) > foot]
    if any(n.type_size > _HEAD * usual_size(lines) for n in outside):
        return []
    groups = [group for group in _groups([n for n in loose if n not in outside]) if len(group) >= _FEWEST]
    unframed = [Part(around([n.rect for n in group], whole), "advert", _LESS_SURE) for group in groups]
    return [*(Part(f, "advert", _SURE) for f in frames), *unframed]


def _groups(lines: Sequence[TypeLine]) -> list[list[TypeLine]]:
    """Return lines gathered by what stands close over each other, from the top."""
    groups: list[list[TypeLine]] = []
    for line in lines:
        home = next((group for group in groups if _is_close(group, line)), None)
        if home is None:
            groups.append([line])
        else:
            home.append(line)
    return groups


def _is_close(group: Sequence[TypeLine], line: TypeLine) -> bool:
    box = around([n.rect for n in group], line.rect)
    across = min(box[2], line.rect[2]) - max(box[0], line.rect[0])
    return across > 0 and line.rect[1] - box[3] < _NEAR * max(line.height, group[-1].height)

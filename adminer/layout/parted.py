"""Adverts that abut, parted where a rule runs right through between them and each side is an advert of its own.

Adverts set solid share a rule, or their borders touch: together they close one face. Rules inside one advert end at
its head, run between its panels, or have its name on one side only. Learned from pages, no source.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from adminer.layout.appeal import is_signed
from adminer.layout.paper import PRICE
from adminer.layout.rules import Rect, RuleWork
from adminer.layout.type_lines import TypeLine, middle_of, usual_size

_THROUGH: Final = 0.8  # of a stretch that a rule runs along, to part it
_TOUCH: Final = 0.4  # type sizes by which a line may reach over a rule: a hairline is read as a letter
_FEWEST: Final = 3  # lines of an advert
_APART: Final = (0.3, 4.0)  # type sizes between the two rules of borders that stand beside each other
_HEAD: Final = 1.5  # times the usual type: a head
_FIRST: Final = 4  # lines among which a head is
_FULL: Final = 6  # lines of an advert with a head, offers and a signature
_SPAN: Final = 0.1  # of the width of a frame: how far on both sides a rule goes on over one that would part it
_SLIM: Final = 5  # times as long as it is thick: a rule


def parted(frame: Rect, lines: Sequence[TypeLine], rules: Sequence[Rect]) -> list[Rect]:
    """Return the adverts in a frame: itself, or those that rules right through it part."""
    if len(lines) < 2 * _FEWEST:
        return [frame]
    size = usual_size(lines)
    for side in (0, 1):  # side by side, one over the other
        through = _through(frame, rules, side, size)
        for rule in through:
            middle = _middle(rule, side)
            before = [n for n in lines if n.rect[side] + n.rect[side + 2] < 2 * middle]
            after = [n for n in lines if n.rect[side] + n.rect[side + 2] >= 2 * middle]
            if min(len(before), len(after)) < _FEWEST or any(_crosses(n, rule, side, size) for n in lines):
                continue
            if side == 0 and _is_spanned(frame, rules, middle, size):
                continue
            double = any(_APART[0] * size < abs(_middle(r, side) - middle) < _APART[1] * size for r in through)
            if _are_two(before, after, size, double=double, level=side == 1):
                one, two = _halves(frame, middle, side)
                return [*parted(one, before, rules), *parted(two, after, rules)]
    return [frame]


def _is_spanned(frame: Rect, rules: Sequence[Rect], at: float, size: float) -> bool:
    """Say whether a level rule in a frame goes on over a place across it: the foot of a head over all its panels."""
    reach = _SPAN * (frame[2] - frame[0])
    return any(
        r[0] < at - reach and r[2] > at + reach
        for r in rules
        if r[2] - r[0] > _SLIM * (r[3] - r[1]) and frame[1] + 2 * size < _middle(r, 1) < frame[3] - 2 * size
    )


def sides_as_rules(work: RuleWork) -> list[Rect]:
    """Return the rules of a page and the sides of its dark panels, which part adverts as rules do."""
    return [*work.rules, *sides_of(work.panels)]


def sides_of(panels: Sequence[Rect]) -> list[Rect]:
    """Return the four sides of each panel, as rules without thickness."""
    return [
        side
        for left, top, right, bottom in panels
        for side in (
            (left, top, left, bottom),
            (right, top, right, bottom),
            (left, top, right, top),
            (left, bottom, right, bottom),
        )
    ]


def _through(frame: Rect, rules: Sequence[Rect], side: int, size: float) -> list[Rect]:
    """Return the rules that run from end to end of a frame, without those that run on past both: scratches."""
    along = 1 - side
    low, high = frame[along], frame[along + 2]
    inside = [r for r in rules if frame[side] + 2 * size < _middle(r, side) < frame[side + 2] - 2 * size]
    slim = [r for r in inside if r[side + 2] - r[side] < (r[along + 2] - r[along]) / _SLIM]
    past = [_middle(r, side) for r in slim if r[along] < low - 2 * size and r[along + 2] > high + 2 * size]
    through = [r for r in slim if min(r[along + 2], high) - max(r[along], low) > _THROUGH * (high - low)]
    return [r for r in through if all(abs(_middle(r, side) - at) > size for at in past)]


def _halves(frame: Rect, at: float, side: int) -> tuple[Rect, Rect]:
    left, top, right, bottom = frame
    if side == 0:
        return (left, top, at, bottom), (at, top, right, bottom)
    return (left, top, right, at), (left, at, right, bottom)


def _middle(rule: Rect, side: int) -> float:
    return (rule[side] + rule[side + 2]) / 2


def _crosses(line: TypeLine, rule: Rect, side: int, size: float) -> bool:
    return line.rect[side] < rule[side] - _TOUCH * size and line.rect[side + 2] > rule[side + 2] + _TOUCH * size


def _are_two(before: Sequence[TypeLine], after: Sequence[TypeLine], size: float, *, double: bool, level: bool) -> bool:
    """Say whether a rule parts two adverts: a double one is the borders of both where each has its head and text."""
    headed = all(_is_headed(lines, size) for lines in (before, after))
    signed = is_signed(before) and is_signed(after)
    if not level:
        return double or headed
    offered = all(
        len(lines) >= _FULL and sum(bool(PRICE.search(n.text)) for n in lines) > 1 for lines in (before, after)
    )
    return headed and ((signed and offered) or (double and min(len(before), len(after)) >= _FULL))


def _is_headed(lines: Sequence[TypeLine], size: float) -> bool:
    first = sorted(lines, key=middle_of)[:_FIRST]
    return any(n.height > _HEAD * size and sum(map(str.isalpha, n.text)) > _FEWEST for n in first)

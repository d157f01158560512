"""Put together what one line of print was taken apart into: pieces of a line, dollars and their cents."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from adminer.layout.rules import Rect, centre
from adminer.reading.gutters import Gutters
from adminer.reading.placed import PlacedWord

NEAR = 0.45  # of the line height: wider gaps are the white between columns
WORD_GAP = 0.55  # of the capital height: dollars and cents of one price stand closer than two words do
DOLLARS = re.compile(r"^(?P<head>[^\w$]*)\$(?P<figures>\d{1,3}|s)(?P<point>\.?)$")
CENTS = re.compile(r"^(?P<point>[.,]?)(?P<figures>\d\d)(?P<rest>[^\w¢%/]*|[-–—][a-z]+\W*)$")
POINT_ONLY = re.compile(r"^\$\d{1,3}[,:·•]\d\d(?P<rest>[^\w]*)$")


def join_lines(rects: dict[int, Rect]) -> dict[int, int]:
    """Return for every line the line it belongs to: pieces side by side on one foot, of one size, are one line."""
    owner = {n: n for n in rects}
    gutters = Gutters.of(rects.values())
    order = sorted(rects, key=lambda n: rects[n][0])
    end = dict(rects)
    for n in order:
        rect = rects[n]
        high = rect[3] - rect[1]
        best: tuple[float, int] | None = None
        for m in order:
            if m == n or owner[m] != m or owner[n] != n:
                continue
            other = end[m]
            tall = other[3] - other[1]
            gap = rect[0] - other[2]
            level = abs(centre(rect)[1] - centre(other)[1])
            like = min(high, tall) / max(high, tall, 1.0)
            close = -0.4 * min(high, tall) < gap < NEAR * min(high, tall)
            if (
                rect[0] > other[0]
                and like > 0.6
                and level < 0.25 * max(high, tall)
                and close
                and not gutters.between(other, rect)
            ):
                best = min(best or (gap, m), (gap, m))
        if best:
            m = best[1]
            owner[n] = m
            a, b = end[m], rect
            end[m] = (min(a[0], b[0]), min(a[1], b[1]), max(a[2], b[2]), max(a[3], b[3]))
    return owner


def join_prices(words: Sequence[PlacedWord]) -> list[PlacedWord]:
    """Return the words with "$3" and "75" as close as one word made "$3.75", a comma in its place a point."""
    result: list[PlacedWord] = []
    for word in words:
        if result and _one_price(result[-1], word):
            result[-1] = _price_of(result[-1], word)
        elif word.form is None and POINT_ONLY.match(word.text):
            text = re.sub(r"[,:·•]", ".", word.text, count=1)
            result.append(replace(word, text=text))
        else:
            result.append(word)
    return result


def _one_price(left: PlacedWord, right: PlacedWord) -> bool:
    dollars, cents = DOLLARS.match(left.text), CENTS.match(right.text)
    if not dollars or not cents or left.form or right.form or left.line != right.line:
        return False
    size = min(left.type_px, right.type_px)
    if dollars["point"] and cents["point"]:
        return False
    gap = right.left - left.right
    return -0.5 * size < gap < (1.2 if cents["point"] else WORD_GAP) * size


def _price_of(left: PlacedWord, right: PlacedWord) -> PlacedWord:
    dollars, cents = DOLLARS.match(left.text), CENTS.match(right.text)
    head, figures = (dollars["head"], dollars["figures"].replace("s", "8")) if dollars else ("", "")
    text = f"{head}${figures}.{cents['figures'] if cents else ''}{cents['rest'] if cents else ''}"
    return replace(
        left,
        text=text,
        centres=(),
        top=min(left.top, right.top),
        right=right.right,
        bottom=max(left.bottom, right.bottom),
        confidence=min(left.confidence, right.confidence, 0.85),
    )

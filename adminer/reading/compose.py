"""From lines that were read to a PageReading: words, numerals, adverts and the order a person reads them in."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from functools import reduce

import numpy as np

from adminer.layout import Layout
from adminer.layout.adverts import FRAMED, find_adverts
from adminer.layout.parted import sides_as_rules
from adminer.layout.rules import Rect, centre
from adminer.layout.type_lines import Part, TypeLine, around
from adminer.reading.join import join_lines, join_prices
from adminer.reading.justified import join_justified
from adminer.reading.numerals import settle_numerals
from adminer.reading.opinion import second_opinion
from adminer.reading.order import reading_order
from adminer.reading.placed import PlacedWord, place, to_scan
from adminer.reading.rows import Cell, find_rows
from adminer.reading.seen import LEAST_CONFIDENCE, Seen
from adminer.reading.signs import restore_signs
from adminer.reading.words import split_words
from adminer.records import Block, BlockKind, Box, PageReading, Region, Word

RAISED_FOOT = 0.25  # of the higher of two words: cents stand so far above the foot of the dollars beside them
LEADERS = ".·…_ "  # lead from a name to its price in another column
BESIDE = 0.75  # of the narrower: what is seen of one box in the other is the paper around their figures


def compose(layout: Layout, seen: Sequence[Seen], recipe: str, clipping_id: str, dpi: float | None) -> PageReading:
    """Put the reading of a page together from its lines; boxes leave in pixels of the scan."""
    kept = [one for one in seen if one.read.confidence >= LEAST_CONFIDENCE]
    placed = [
        place(word, one.line, number, one.strip.shape)
        for number, one in enumerate(kept)
        for word in split_words(one.strip, one.read)
    ]
    placed = settle_numerals(layout.gray, join_prices(restore_signs(_once(placed))))
    placed, unasked = second_opinion(layout.gray, placed)
    height, width = layout.gray.shape
    owner = join_lines(_line_rects(placed))
    placed = [replace(word, line=owner[word.line]) for word in placed]
    owner = join_justified(_line_rects(placed), of_text(placed), layout.work.rules)
    placed = [replace(word, line=owner[word.line]) for word in placed]
    rects = _line_rects(placed)
    texts = {n: " ".join(w.text for w in placed if w.line == n) for n in rects}
    type_lines = [TypeLine(rect, rect[3] - rect[1], texts[n]) for n, rect in rects.items()]
    parts = find_adverts(layout.work, type_lines, width, height)
    words, blocks = _in_order(placed, rects, parts, layout)
    regions = tuple(Region(layout.way_back.box(*part.rect), part.kind, part.confidence) for part in parts)
    rules = tuple(layout.way_back.box(*rect) for rect in sides_as_rules(layout.work))
    return PageReading(
        clipping_id,
        layout.way_back.width,
        layout.way_back.height,
        recipe,
        regions,
        blocks,
        words,
        rules,
        dpi,
        (*layout.remarks, unasked) if unasked else layout.remarks,
    )


def of_text(words: Sequence[PlacedWord]) -> frozenset[int]:
    """Return the lines that may be pieces of running text: they have words, and no leaders run through them."""
    led = {word.line for word in words if not word.text.strip(LEADERS)}
    return frozenset(word.line for word in words if any(map(str.isalpha, word.text))) - led


def _once(words: list[PlacedWord]) -> list[PlacedWord]:
    """Drop the less sure of two readings of the same place."""
    left, top, right, bottom = np.array([word.rect for word in words], np.float64).reshape(-1, 4).T
    kept = np.zeros(len(words), bool)
    for i in sorted(range(len(words)), key=lambda i: -words[i].confidence * min(len(words[i].text), 8)):
        word = words[i]
        met = kept & (left < word.right) & (right > word.left) & (top < word.bottom) & (bottom > word.top)
        others = (words[k] for k in np.flatnonzero(met))
        kept[i] = all(word.line == other.line or _hidden(word.rect, other) < 0.5 for other in others)
    return [words[i] for i in np.flatnonzero(kept)]


def _hidden(rect: Rect, other: PlacedWord) -> float:
    """Return how much of the smaller of two words the other covers; none where one stands over it or raised beside."""
    low, high = sorted((rect[3] - rect[1], other.bottom - other.top))
    if abs(centre(rect)[1] - (other.top + other.bottom) / 2) > 0.4 * low or low < 0.4 * high:
        return 0.0
    w = min(rect[2], other.right) - max(rect[0], other.left)
    h = min(rect[3], other.bottom) - max(rect[1], other.top)
    narrow = min(rect[2] - rect[0], other.right - other.left)
    if abs(rect[3] - other.bottom) > RAISED_FOOT * high and w < BESIDE * narrow:
        return 0.0
    area = min((rect[2] - rect[0]) * (rect[3] - rect[1]), (other.right - other.left) * (other.bottom - other.top))
    return w * h / area if w > 0 and h > 0 and area > 0 else 0.0


def _line_rects(words: Sequence[PlacedWord]) -> dict[int, Rect]:
    rects: dict[int, Rect] = {}
    for w in words:
        a, b, c, d = rects.get(w.line, w.rect)
        rects[w.line] = (min(a, w.left), min(b, w.top), max(c, w.right), max(d, w.bottom))
    return rects


def _in_order(
    placed: Sequence[PlacedWord], rects: dict[int, Rect], parts: Sequence[Part], layout: Layout
) -> tuple[tuple[Word, ...], tuple[Block, ...]]:
    """Sort the lines of each part into reading order and number lines and blocks through the page."""
    by_line: dict[int, list[PlacedWord]] = {n: [] for n in rects}
    for word in placed:
        by_line[word.line].append(word)
    by_part: dict[int, list[int]] = {}
    for n, rect in rects.items():
        by_part.setdefault(part_of(rect, parts), []).append(n)
    words: list[Word] = []
    blocks: list[Block] = []
    number = 0
    for part in sorted(by_part, key=lambda p: (parts[p].rect[1], parts[p].rect[0])):
        rows = find_rows([_cell(n, by_line[n], rects[n]) for n in by_part[part]], layout.work.rules)
        order = reading_order([around([rects[n] for n in row], rects[row[0]]) for row in rows])
        row_of = {n: number + at for at, i in enumerate(order) for n in rows[i]}
        number += len(rows)
        for group in _blocks([rows[i] for i in order], rects):
            group_words = [
                replace(to_scan(word, layout.way_back, row_of[n]), region=part, block=len(blocks))
                for n in group
                for word in sorted(by_line[n], key=lambda w: w.left)
            ]
            words += group_words
            box = reduce(Box.joined, (word.box for word in group_words))
            size = float(np.median([w.type_px for w in group_words]))
            blocks.append(Block(box, _kind(group, rects, layout), size, part))
    return tuple(words), tuple(blocks)


def _cell(number: int, words: Sequence[PlacedWord], rect: Rect) -> Cell:
    """Return a line of type as a cell of a row."""
    size = float(np.median([word.type_px for word in words]))
    return Cell(number, rect, size, " ".join(word.text for word in sorted(words, key=lambda w: w.left)))


def part_of(rect: Rect, parts: Sequence[Part]) -> int:
    """Return the part that a line stands in or nearest to: a framed one, for the others were cut without its lines."""
    x, y = centre(rect)

    def away(part: Part) -> tuple[float, bool, float]:
        left, top, right, bottom = part.rect
        distance = max(left - x, 0.0, x - right) + max(top - y, 0.0, y - bottom)
        return distance, part.confidence < FRAMED, (right - left) * (bottom - top)

    return min(range(len(parts)), key=lambda i: away(parts[i]))


def _blocks(order: Sequence[Sequence[int]], rects: dict[int, Rect]) -> list[list[int]]:
    """Group lines that follow each other in one column with like size and little white between them.

    Each cell of a row of several is a block of its own.
    """
    groups: list[list[int]] = []
    cells = True
    for row in order:
        before, cells = cells, len(row) > 1
        if cells:
            groups += [[n] for n in row]
            continue
        n = row[0]
        rect = rects[n]
        if not before:
            last = rects[groups[-1][-1]]
            low, high = sorted((rect[3] - rect[1], last[3] - last[1]))
            overlap = min(rect[2], last[2]) - max(rect[0], last[0])
            if low > 0.6 * high and overlap > 0 and -0.5 * high < rect[1] - last[3] < 1.0 * high:
                groups[-1].append(n)
                continue
        groups.append([n])
    return groups


def _kind(group: Sequence[int], rects: dict[int, Rect], layout: Layout) -> BlockKind:
    rect = rects[group[0]]
    x, y = centre(rect)
    inside = any(p[0] <= x <= p[2] and p[1] <= y <= p[3] for p in layout.work.panels)
    return "reversed" if inside else "text"

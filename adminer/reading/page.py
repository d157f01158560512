"""The whole way from pixels to a PageReading on one screen."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from adminer.layout import lay_out
from adminer.layout.clean import WayBack, lift_faint
from adminer.layout.recipe import Recipe
from adminer.reading.detect import Line, find_lines
from adminer.reading.numerals import settle_numerals
from adminer.reading.order import reading_order
from adminer.reading.placed import PlacedWord, place, to_scan
from adminer.reading.recognise import cut_strip, read_strips
from adminer.reading.words import split_words
from adminer.records import Block, Box, PageReading, Word

LEAST_CONFIDENCE = 0.5  # mean probability of the letters of a line: below it is a picture, a smear or a border


def read_page(
    pixels: NDArray[np.uint8],
    recipe: Recipe,
    clipping_id: str = "",
    dpi: float | None = None,
    threads: int = 1,
) -> PageReading:
    """Read one picture, (H, W) gray or (H, W, 3) RGB and upright; all boxes come in its pixels."""
    layout = lay_out(pixels, recipe)
    height, width = pixels.shape[:2]
    gray = layout.gray
    scale = max(1.0, 736 / min(gray.shape))
    lines = find_lines(lift_faint(gray), scale, threads)
    strips = [cut_strip(gray, line.corners) for line in lines]
    reads = read_strips(strips, threads)
    placed = [
        place(word, line, number, strip.shape)
        for number, (line, strip, read) in enumerate(zip(lines, strips, reads, strict=True))
        if read.confidence >= LEAST_CONFIDENCE
        for word in split_words(strip, read)
    ]
    placed = settle_numerals(gray, placed, threads)
    words = _in_order(placed, lines, layout.way_back)
    block = Block(Box(0, 0, width, height), "text", float(np.median([w.type_px for w in words])) if words else 0.0)
    return PageReading(
        clipping_id,
        width,
        height,
        recipe.name,
        layout.regions,
        (block,),
        tuple(words),
        layout.rules,
        dpi,
        layout.remarks,
    )


def _in_order(placed: list[PlacedWord], lines: list[Line], way_back: WayBack) -> list[Word]:
    by_line: dict[int, list[PlacedWord]] = {}
    for word in placed:
        by_line.setdefault(word.line, []).append(word)
    kept = list(by_line.values())
    order = reading_order([lines[found[0].line].bounds for found in kept])
    return [to_scan(word, way_back, number) for number, i in enumerate(order) for word in kept[i]]

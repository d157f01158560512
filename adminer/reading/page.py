"""The whole way from pixels to a PageReading on one screen."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from adminer.layout import lay_out
from adminer.layout.clean import WayBack
from adminer.layout.recipe import Recipe
from adminer.reading.detect import Line, find_lines
from adminer.reading.order import reading_order
from adminer.reading.recognise import cut_strip, read_strips
from adminer.reading.words import StripWord, split_words
from adminer.records import Block, Box, PageReading, Word


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
    lines = find_lines(gray, scale, threads)
    strips = [cut_strip(gray, line.corners) for line in lines]
    reads = read_strips(strips, threads)
    kept = [
        (line, found)
        for line, strip, read in zip(lines, strips, reads, strict=True)
        if read.confidence >= 0.5 and (found := split_words(strip, read))
    ]
    order = reading_order([line.bounds for line, _ in kept])
    words: list[Word] = []
    for number, i in enumerate(order):
        line, found = kept[i]
        words += [_place(word, line, layout.way_back, number) for word in found]
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


def _place(word: StripWord, line: Line, way_back: WayBack, number: int) -> Word:
    """Carry a word from its strip through the cleaned picture to the scan."""
    origin, right, down = line.corners[0], line.corners[1], line.corners[3]
    along = (right - origin) / max(1.0, float(int(line.width)))
    across = (down - origin) / max(1.0, float(int(line.height)))
    corners = np.array(
        [
            origin + along * x + across * y
            for x, y in (
                (word.left, word.top),
                (word.right, word.top),
                (word.right, word.bottom),
                (word.left, word.bottom),
            )
        ],
        np.float32,
    )
    x0, y0 = corners.min(axis=0)
    x1, y1 = corners.max(axis=0)
    type_px = way_back.length(word.type_px, float(x0), float(y0))
    return Word(
        word.text,
        way_back.box(float(x0), float(y0), float(x1), float(y1)),
        type_px,
        word.confidence,
        "display",
        line=number,
    )

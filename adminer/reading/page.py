"""The whole way from pixels to a PageReading on one screen."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from adminer.layout import Layout, flattened, lay_out
from adminer.layout.bend import bend_of
from adminer.layout.recipe import Recipe
from adminer.reading.compose import compose
from adminer.reading.sight import look_at, running_lines, see
from adminer.records import PageReading


def read_page(
    pixels: NDArray[np.uint8],
    recipe: Recipe,
    clipping_id: str = "",
    dpi: float | None = None,
    threads: int = 1,
) -> PageReading:
    """Read one picture, (H, W) gray or (H, W, 3) RGB and upright; all boxes come in its pixels."""
    layout: Layout = lay_out(pixels, recipe)
    look = look_at(layout.gray, threads)
    bend = bend_of(*running_lines(look.seen), *layout.gray.shape[::-1]) if recipe.straighten else None
    if bend is not None:
        layout = flattened(layout, bend)
        look = look_at(layout.gray, threads)
    return compose(layout, see(look, threads), recipe.name, clipping_id, dpi)

"""The whole of layout on one screen: clean the picture, then find rules, frames and dark panels on it."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from adminer.layout.bend import Bend, flatten
from adminer.layout.clean import Gray, WayBack, even_light, skew_of, soften, straighten, to_gray
from adminer.layout.recipe import Recipe
from adminer.layout.rules import RuleWork, find_rules

STRAIGHT_ENOUGH = 0.25  # degrees: a line of 20 letters then leans by less than a tenth of its height


@dataclass(frozen=True, slots=True)
class Layout:
    """Hold the cleaned picture, the way from it back to the scan, and what was drawn on it, in its own pixels."""

    gray: Gray
    way_back: WayBack
    work: RuleWork
    remarks: tuple[str, ...] = ()


def lay_out(pixels: NDArray[np.uint8], recipe: Recipe) -> Layout:
    """Clean a picture, (H, W) gray or (H, W, 3) RGB, by its recipe and find the rules and panels on it."""
    gray = to_gray(pixels)
    height, width = gray.shape
    remarks = []
    matrix = np.eye(3)
    if recipe.even_light:
        gray = even_light(gray)
    if recipe.denoise:
        gray = soften(gray)
    if recipe.straighten:
        skew = skew_of(gray)
        if abs(skew) > STRAIGHT_ENOUGH:
            gray, matrix = straighten(gray, skew)
            remarks.append(f"turned by {skew:+.1f} degrees")
    return Layout(gray, WayBack(matrix, width, height), find_rules(gray), tuple(remarks))


def flattened(layout: Layout, bend: Bend) -> Layout:
    """Return a layout with the bend of its lines taken out of the cleaned picture; rules are looked for anew."""
    gray = flatten(layout.gray, bend)
    remark = "lines that converge or curl made level"
    return Layout(gray, replace(layout.way_back, bend=bend), find_rules(gray), (*layout.remarks, remark))

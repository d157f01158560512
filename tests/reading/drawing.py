"""Draw small test pages with the face that Pillow carries: type, raised cents, panels."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from PIL import Image, ImageDraw, ImageFont


@dataclass(frozen=True, slots=True)
class Setting:
    """Hold one piece of type: text, left and foot (baseline) in pixels, size in pixels, gray level."""

    text: str
    x: float
    foot: float
    size: float
    ink: int = 10


def draw(width: int, height: int, *settings: Setting, paper: int = 245) -> NDArray[np.uint8]:
    """Return a gray page (H, W) with the pieces of type set on it."""
    page = Image.new("L", (width, height), paper)
    pen = ImageDraw.Draw(page)
    for one in settings:
        pen.text((one.x, one.foot), one.text, font=ImageFont.load_default(one.size), fill=one.ink, anchor="ls")
    return np.asarray(page, np.uint8)


def width_of(text: str, size: float) -> float:
    """Return the advance width of a text in pixels."""
    return float(ImageFont.load_default(size).getlength(text))

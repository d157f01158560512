"""Pictures for tests: a card of black type on white paper, saved in many ways."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import numpy as np
from numpy.typing import NDArray
from PIL import Image, ImageDraw, ImageFont


def card(width: int = 360, height: int = 240, words: str = "CUP 29c") -> Image.Image:
    """Draw a small card of type, darker at the left so that turning and mirroring show."""
    picture = Image.new("L", (width, height), 245)
    pen = ImageDraw.Draw(picture)
    pen.text((20, height // 3), words, fill=15, font=ImageFont.load_default(size=min(48, height // 4)))
    pen.rectangle((0, 0, width // 8, height // 8), fill=60)  # the mark of the upper left corner
    return picture


def corner_is_dark(pixels: NDArray[np.uint8]) -> bool:
    """Say whether the mark stands in the upper left corner."""
    height, width = pixels.shape[:2]
    return bool(pixels[height // 20, width // 20].mean() < 100 < pixels[height // 20, -width // 20].mean())


def save(picture: Image.Image, path: Path, **options: Any) -> Path:
    """Save and return the path."""
    path.parent.mkdir(parents=True, exist_ok=True)
    picture.save(path, **options)
    return path

"""What intake accepts: kinds of picture, sizes, and the check that a picture shows anything at all."""

from __future__ import annotations

from pathlib import Path
from typing import Final

import cv2
import numpy as np
from numpy.typing import NDArray

from adminer.errors import ScanError

Pixels = NDArray[np.uint8]  # (height, width) gray or (height, width, 3) RGB

MAX_PIXELS: Final = 180_000_000  # a broadsheet page at 600 dpi is about 130 million
MAX_LEAVES: Final = 2000
MIN_SIDE: Final = 16  # shorter than one line of type
MIN_CONTRAST: Final = 16  # of 255; less is a blank or a failed exposure
PICTURE_FORMATS: Final = ("PNG", "JPEG", "TIFF", "WEBP", "BMP", "GIF", "JPEG2000", "PPM")
REMEDY_SAVE: Final = "save it again as PNG, JPEG, TIFF, WebP or PDF"


def check_file(path: Path, file: str) -> None:
    """Refuse a file that is no file, or has nothing in it.

    Raises ScanError.
    """
    if not path.is_file():
        raise ScanError("cannot be opened", file=file, why="it is not a file", remedy="take it out of scans/")
    if path.stat().st_size == 0:
        raise ScanError("is empty", file=file, why="it has 0 bytes", remedy="copy it again from where it came from")


def check_size(width: int, height: int, file: str) -> None:
    """Refuse a picture too large for the memory of a desk computer, or too small to hold a line of type.

    Width and height in pixels. Raises ScanError.
    """
    if width * height > MAX_PIXELS:
        raise ScanError(
            f"is too large ({width} x {height} pixels)",
            file=file,
            why=f"more than {MAX_PIXELS // 1_000_000} million pixels do not fit in memory with what reading needs",
            remedy="save it at a lower resolution (300 dpi is enough for newspaper type) or cut it in parts",
        )
    if min(width, height) < MIN_SIDE:
        raise ScanError(
            f"is too small ({width} x {height} pixels)",
            file=file,
            why="no line of type fits in it",
            remedy="scan it again at 300 dpi",
        )


def check_contrast(pixels: Pixels, file: str) -> None:
    """Refuse a picture of one tone: all black, all white, or so faint that nothing stands out.

    Raises ScanError.
    """
    gray = pixels if pixels.ndim == 2 else pixels[..., 1]
    height, width = gray.shape
    # the mean over small cells forgets single specks of dust and sensor noise, not type
    small = cv2.resize(gray, (max(1, width // 4), max(1, height // 4)), interpolation=cv2.INTER_AREA)
    low, high = int(small.min()), int(small.max())
    if high - low >= MIN_CONTRAST:
        return
    tone = "black" if high < 64 else "white" if low > 192 else "of one gray"
    raise ScanError(
        f"is all {tone}" if tone != "of one gray" else "is of one gray all over",
        file=file,
        why="nothing on it stands out from the paper",
        remedy="scan the clipping again, face down, or take the file out of scans/",
    )

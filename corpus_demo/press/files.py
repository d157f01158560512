"""Writes finished scans in the kinds of file that people have, byte for byte the same every time."""

from __future__ import annotations

import time
from pathlib import Path

import numpy as np
from numpy.typing import NDArray
from PIL import Image

EXIF_ORIENTATION = 0x0112
TURNED = "turned"  # in a file name: stored on its side with an EXIF turn
_DAY = time.gmtime(0)


def _bilevel(image: Image.Image) -> Image.Image:
    return image.convert("L").point(lambda value: 255 if value > 180 else 0).convert("1")


def write(path: Path, leaves: list[NDArray[np.uint8]], *, bilevel: bool, dpi: int = 200, quality: int = 62) -> None:
    """Write one file of one or more leaves; the suffix decides the kind."""
    images = [Image.fromarray(leaf) for leaf in leaves]
    if bilevel:
        images = [_bilevel(image) for image in images]
    first, rest = images[0], images[1:]
    match path.suffix:
        case ".jpg":
            exif = Image.Exif()
            if TURNED in path.name:
                first = first.transpose(Image.Transpose.ROTATE_90)
                exif[EXIF_ORIENTATION] = 6
            first.save(path, quality=quality, dpi=(dpi, dpi), exif=exif)
        case ".png":
            first.save(path, optimize=True, dpi=(dpi, dpi))
        case ".webp":
            first.save(path, quality=quality, method=4)
        case ".tif":
            compression = "group4" if bilevel else "jpeg"
            first.save(path, save_all=True, append_images=rest, compression=compression, dpi=(dpi, dpi))
        case ".pdf":
            first.save(
                path,
                save_all=True,
                append_images=rest,
                resolution=dpi,
                quality=quality,
                creationDate=_DAY,
                modDate=_DAY,
            )
        case kind:
            raise ValueError(f"no way to write {kind}")

"""Pictures in files to pixels: every depth and colour space becomes 8 bit gray or RGB, turned upright."""

from __future__ import annotations

import warnings
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Final

import numpy as np
from PIL import Image, ImageOps, UnidentifiedImageError

from adminer.errors import ScanError
from adminer.intake.limits import MAX_LEAVES, PICTURE_FORMATS, REMEDY_SAVE, Pixels, check_size

# Pillow's own guard warns at this size and raises at twice it; ours (check_size) speaks first and names a remedy.
Image.MAX_IMAGE_PIXELS = None

_EXTENSIONS: Final = {
    ".png": "PNG",
    ".jpg": "JPEG",
    ".jpeg": "JPEG",
    ".tif": "TIFF",
    ".tiff": "TIFF",
    ".webp": "WEBP",
    ".bmp": "BMP",
    ".gif": "GIF",
    ".jp2": "JPEG2000",
    ".pdf": "PDF",
}
_DEEP_MODES: Final = ("I;16", "I;16L", "I;16B", "I;16N", "I", "F")


def count_picture_leaves(path: Path, file: str) -> int:
    """Count the pages of a picture file; only TIFF has more than one.

    Raises ScanError.
    """
    with _opened(path, file) as image:
        if image.format != "TIFF":
            return 1
        leaves = int(getattr(image, "n_frames", 1))
        if leaves > MAX_LEAVES:
            raise ScanError(
                f"has {leaves} pages", file=file, why=f"{MAX_LEAVES} is the most", remedy="split it into several files"
            )
        return leaves


def decode_picture(path: Path, file: str, leaf: int) -> tuple[Pixels, float | None, str | None]:
    """Decode one page of a picture file, upright by its EXIF tag.

    Returns the pixels, the resolution in dots an inch where it is believable, and a remark where the name of the
    file says another format than its content. Raises ScanError.
    """
    with _opened(path, file) as image:
        if leaf > 1:
            image.seek(leaf - 1)
        check_size(*image.size, file)
        dpi = believable_dpi(image.info.get("dpi"), image.size)
        image.load()
        upright = ImageOps.exif_transpose(image)
        return to_eight_bit(upright), dpi, _mislabel(path, image.format or "")


def to_eight_bit(image: Image.Image) -> Pixels:
    """Turn a picture of any mode into 8 bit gray (H, W) or RGB (H, W, 3); see-through becomes white paper."""
    if image.mode in _DEEP_MODES:
        return _scale_down(np.asarray(image))
    if "transparency" in image.info or image.mode in ("LA", "La", "RGBA", "RGBa", "PA"):
        layered = image.convert("RGBA")
        paper = Image.new("RGBA", layered.size, "white")
        image = Image.alpha_composite(paper, layered).convert("L" if image.mode in ("LA", "La") else "RGB")
    elif image.mode in ("1", "L"):
        image = image.convert("L")
    else:
        image = image.convert("RGB")
    return np.array(image, dtype=np.uint8)


def believable_dpi(stated: object, size: tuple[int, int]) -> float | None:
    """Return the stated resolution, or None where it is missing, zero, lopsided or what programs write unasked.

    Sizes in pixels. 72 and 96 are what programs write when nobody told them; a page of more than 60 inches or less
    than half an inch does not exist.
    """
    if not isinstance(stated, (tuple, list)) or len(stated) < 2:
        return None
    try:
        across, down = float(stated[0]), float(stated[1])
    except (TypeError, ValueError, ZeroDivisionError):
        return None
    if not (97 <= across <= 2400 and 97 <= down <= 2400) or max(across, down) > 1.02 * min(across, down):
        return None
    longest = max(size) / across
    return across if 0.5 <= longest <= 60 else None


def _scale_down(deep: np.ndarray) -> Pixels:
    """Map more than 8 bits to 8: by the full range of 16, by the range in use where a camera filled only 10 to 14."""
    values = np.nan_to_num(deep.astype(np.float32))
    low, high = float(values.min()), float(values.max())
    if low >= 0 and high > 16383:
        low, high = 0.0, 65535.0 if high <= 65535 else high
    elif low >= 0 and high <= 255:
        low, high = 0.0, 255.0
    span = max(high - low, 1e-6)
    return np.asarray(np.clip((values - low) * (255.0 / span) + 0.5, 0, 255), dtype=np.uint8)


def _mislabel(path: Path, found: str) -> str | None:
    named = _EXTENSIONS.get(path.suffix.lower())
    found = "JPEG" if found == "MPO" else found
    if named is None or named == found:
        return None
    return f"its name says {named}, its content is {found}; it was read as {found}"


@contextmanager
def _opened(path: Path, file: str) -> Iterator[Image.Image]:
    """Open a picture and turn every way in which decoders fail into one ScanError."""
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")  # decoders warn of odd metadata; what matters raises
            with Image.open(path, formats=PICTURE_FORMATS) as image:
                yield image
    except UnidentifiedImageError:
        raise ScanError("is not a picture", file=file, why=_what_it_is(path), remedy=REMEDY_SAVE) from None
    except ScanError:
        raise
    except MemoryError:
        raise ScanError(
            "does not fit in memory", file=file, why="decoding it ran out of memory", remedy="save it smaller"
        ) from None
    except PermissionError:
        raise ScanError(
            "cannot be opened", file=file, why="you have no right to read it", remedy="change its permissions"
        ) from None
    # Pillow's plug-ins raise whatever the damaged bytes led them to: OSError, SyntaxError, ValueError, struct.error ...
    except Exception as fault:  # noqa: BLE001
        raise ScanError(
            "is damaged",
            file=file,
            why=f"its data end too early or make no sense ({str(fault) or type(fault).__name__})",
            remedy="copy it again from where it came from, or scan again",
        ) from None


def _what_it_is(path: Path) -> str:
    head = path.open("rb").read(512)
    if head[4:12] in (b"ftypheic", b"ftypheix", b"ftypmif1", b"ftyphevc"):
        return "it is an HEIC picture of a phone, which cannot be decoded here"
    named = _EXTENSIONS.get(path.suffix.lower())
    kind = "text" if head and all(byte >= 9 and byte != 127 for byte in head) else "something else"
    return f"its name says {named} but its content is {kind}" if named else f"its content is {kind}"

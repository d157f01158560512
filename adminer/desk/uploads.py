"""Files dropped on the page: checked, then put into scans/ under a name of our own making.

What a browser calls a file is hostile text and never becomes a path: letters, figures and hyphens of it are
kept, the ending is that of what the content is, and a name that is taken gets a number.
"""

from __future__ import annotations

import os
import re
import unicodedata
from dataclasses import dataclass
from pathlib import Path
from typing import BinaryIO, Final

from PIL import Image, UnidentifiedImageError

from adminer.errors import MachineError, ScanError
from adminer.intake.limits import MAX_PIXELS, check_size

MOST_FILE_BYTES: Final = 400_000_000
_ENDINGS: Final = {
    "PNG": ".png",
    "JPEG": ".jpg",
    "MPO": ".jpg",
    "TIFF": ".tif",
    "WEBP": ".webp",
    "BMP": ".bmp",
    "GIF": ".gif",
    "JPEG2000": ".jp2",
    "PPM": ".ppm",
}
_CHUNK: Final = 1 << 20
_RESERVED: Final = re.compile(r"^(con|prn|aux|nul|com\d|lpt\d)$")


@dataclass(frozen=True, slots=True)
class Taken:
    """Hold what became of one uploaded file: its new name, or why it was refused."""

    offered: str
    file: str | None
    problem: str | None = None


def take_in(scans: Path, offered: str, content: BinaryIO) -> Taken:
    """Check one file and put it into scans/; a refusal is an answer, not an exception.

    Raises MachineError where the disk refuses.
    """
    try:
        ending = _ending_of(content)
        file = _write(scans, slug_of(offered), ending, content)
    except ScanError as error:
        why = f", because {error.why}" if error.why else ""
        remedy = f" {error.remedy[0].upper()}{error.remedy[1:]}." if error.remedy else ""
        return Taken(offered, None, f"{error.what}{why}.{remedy}")
    except OSError as error:
        raise MachineError(
            "a scan was not saved", file=str(scans), why=error.strerror, remedy="free space on the disk and try again"
        ) from error
    return Taken(offered, file)


def slug_of(offered: str) -> str:
    """Return a harmless stem for an offered file name: lower-case letters, figures and single hyphens."""
    stem = re.split(r"[\\/]", offered)[-1].rsplit(".", 1)[0]
    ascii_only = unicodedata.normalize("NFKD", stem).encode("ascii", "ignore").decode().lower()
    slug = re.sub(r"[^a-z0-9]+", "-", ascii_only).strip("-")[:80].strip("-")
    return "scan" if not slug or _RESERVED.match(slug) else slug


def _ending_of(content: BinaryIO) -> str:
    size = content.seek(0, os.SEEK_END)
    content.seek(0)
    if size == 0:
        raise ScanError("is empty", remedy="choose it again")
    if size > MOST_FILE_BYTES:
        raise ScanError("is too large", why=f"more than {MOST_FILE_BYTES // 1_000_000} MB", remedy="save it smaller")
    head = content.read(1024)
    content.seek(0)
    if b"%PDF-" in head:
        return ".pdf"
    try:
        with Image.open(content) as picture:
            kind, (width, height) = picture.format or "", picture.size
    except Image.DecompressionBombError as error:
        raise ScanError(
            "is too large",
            why=f"more than {MAX_PIXELS // 1_000_000} million pixels do not fit in memory with what reading needs",
            remedy="save it at a lower resolution",
        ) from error
    except (UnidentifiedImageError, OSError, ValueError, SyntaxError) as error:
        raise ScanError("is no picture that can be read", remedy="save it as PNG, JPEG, TIFF, WebP or PDF") from error
    finally:
        content.seek(0)
    if kind not in _ENDINGS:
        raise ScanError("is a kind of picture the desk does not read", remedy="save it as PNG, JPEG, TIFF or WebP")
    check_size(width, height, "")
    return _ENDINGS[kind]


def _write(scans: Path, stem: str, ending: str, content: BinaryIO) -> str:
    """Write under the first free name; the picture is whole before it has its name."""
    unfinished = scans / f".{stem}.{os.getpid()}.part"
    try:
        with unfinished.open("wb") as target:
            while chunk := content.read(_CHUNK):
                target.write(chunk)
            target.flush()
            os.fsync(target.fileno())
        for number in range(1, 100_000):
            file = f"{stem}{ending}" if number == 1 else f"{stem}-{number}{ending}"
            try:
                os.link(unfinished, scans / file)  # unlike a rename it never replaces what is there
            except FileExistsError:
                continue
            return file
    finally:
        unfinished.unlink(missing_ok=True)
    raise ScanError("finds no free name", remedy="give it another name")

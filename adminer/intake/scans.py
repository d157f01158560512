"""Scan files to page images: the only place where a picture of the user's is opened."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from adminer.intake.decode import count_picture_leaves, decode_picture
from adminer.intake.identity import clipping_id_of, digest_of
from adminer.intake.limits import Pixels, check_contrast, check_file
from adminer.intake.pdf import count_pdf_leaves, is_pdf, render_leaf


@dataclass(frozen=True, slots=True)
class PageImage:
    """Hold one upright page of one scan: pixels (H, W, 3) RGB or (H, W) gray, 8 bit."""

    clipping_id: str
    file: str  # path below scans/, forward slashes
    sha256: str
    leaf: int  # from 1
    pixels: Pixels
    dpi: float | None  # None where the file states none or an unbelievable one
    remark: str | None = None


def count_leaves(path: Path, file: str) -> int:
    """Count the pages of a scan without decoding them.

    Raises ScanError.
    """
    check_file(path, file)
    return count_pdf_leaves(path, file) if is_pdf(path) else count_picture_leaves(path, file)


def open_leaf(path: Path, file: str, leaf: int, sha256: str | None = None) -> PageImage:
    """Decode one page of a scan; leaf counts from 1, sha256 saves hashing again where it is known.

    Raises ScanError for anything that cannot be decoded or shows nothing.
    """
    check_file(path, file)
    remark = None
    if is_pdf(path):
        pixels, dpi = render_leaf(path, file, leaf)
        found: float | None = dpi
    else:
        pixels, found, remark = decode_picture(path, file, leaf)
    check_contrast(pixels, file)
    sha256 = sha256 or digest_of(path)
    return PageImage(clipping_id_of(sha256, leaf), file, sha256, leaf, pixels, found, remark)


def open_scan(path: Path, file: str) -> Iterator[PageImage]:
    """Decode a scan page by page; file is its path below scans/.

    Raises ScanError for anything that cannot be decoded or shows nothing.
    """
    leaves = count_leaves(path, file)
    sha256 = digest_of(path)
    for leaf in range(1, leaves + 1):
        yield open_leaf(path, file, leaf, sha256)

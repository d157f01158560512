"""Pages of a PDF to pixels, at the resolution of the scan that was put into it."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any, Final

import numpy as np
import pypdfium2 as pdfium
import pypdfium2.raw as pdfium_raw

from adminer.errors import ScanError
from adminer.intake.limits import MAX_LEAVES, MAX_PIXELS, REMEDY_SAVE, Pixels, check_size

DEFAULT_DPI: Final = 300.0  # for pages drawn in type and lines, without a scan inside
_LOWEST, _HIGHEST = 100.0, 600.0
_POINTS_AN_INCH: Final = 72.0


def is_pdf(path: Path) -> bool:
    """Say whether the content is a PDF; the mark may stand anywhere in the first 1024 bytes (ISO 32000, annex H)."""
    with path.open("rb") as stream:
        return b"%PDF-" in stream.read(1024)


def count_pdf_leaves(path: Path, file: str) -> int:
    """Count the pages of a PDF.

    Raises ScanError.
    """
    with _opened(path, file) as document:
        leaves = len(document)
    if not 0 < leaves <= MAX_LEAVES:
        raise ScanError(
            f"has {leaves} pages",
            file=file,
            why=f"1 to {MAX_LEAVES} can be read",
            remedy="split it into several files" if leaves else "save it again",
        )
    return leaves


def render_leaf(path: Path, file: str, leaf: int) -> tuple[Pixels, float]:
    """Draw one page as RGB or gray; returns the pixels and the resolution used, in dots an inch.

    Raises ScanError.
    """
    with _opened(path, file) as document:
        page = document[leaf - 1]
        width, height = page.get_size()
        dpi = _resolution(page, width, height)
        check_size(round(width * dpi / _POINTS_AN_INCH), round(height * dpi / _POINTS_AN_INCH), file)
        # the renderer rounds up; a hair less keeps 900 pixels from becoming 901
        scale = dpi / _POINTS_AN_INCH * (1 - 1e-6)
        bitmap = page.render(scale=scale, rev_byteorder=True, may_draw_forms=False)
        pixels = np.array(bitmap.to_numpy(), dtype=np.uint8)
    if pixels.ndim == 3 and pixels.shape[2] == 4:
        pixels = pixels[..., :3]
    if pixels.ndim == 3 and pixels.shape[2] == 1:
        pixels = pixels[..., 0]
    return np.ascontiguousarray(pixels), dpi


def _resolution(page: Any, width: float, height: float) -> float:
    """Choose the dots an inch at which the largest picture of the page keeps its own pixels."""
    best = 0.0
    for item in page.get_objects(filter=[pdfium_raw.FPDF_PAGEOBJ_IMAGE]):
        left, bottom, right, top = item.get_bounds()
        if (right - left) * (top - bottom) < 0.5 * width * height:
            continue
        across, _down = item.get_px_size()
        best = max(best, across / max(right - left, 1.0) * _POINTS_AN_INCH)
    dpi = min(max(best, _LOWEST), _HIGHEST) if best else DEFAULT_DPI
    largest = (MAX_PIXELS * _POINTS_AN_INCH**2 / (width * height)) ** 0.5
    return min(dpi, largest * 0.99) if largest > _LOWEST else dpi


@contextmanager
def _opened(path: Path, file: str) -> Iterator[Any]:
    document = None
    try:
        document = pdfium.PdfDocument(path)
        yield document
    except pdfium.PdfiumError as fault:
        if "password" in str(fault).lower():
            raise ScanError(
                "is locked", file=file, why="the PDF asks for a password", remedy="save it once more without a password"
            ) from None
        raise ScanError(
            "is damaged", file=file, why=f"the PDF cannot be opened ({fault})", remedy=REMEDY_SAVE
        ) from None
    finally:
        if document is not None:
            document.close()

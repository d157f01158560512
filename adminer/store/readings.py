"""What .readings/ keeps: one small file for each page read, by content, recipe and reader; safe to delete."""

from __future__ import annotations

import gzip
import os
import zlib
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path
from typing import Final

from pydantic import TypeAdapter, ValidationError

from adminer.records import PageReading

SUFFIX: Final = ".reading.json.gz"
WORDLESS_SUFFIX: Final = ".wordless" + SUFFIX  # a reading in which not one word was found
UNREAD_SUFFIX: Final = ".unread.json.gz"


@dataclass(frozen=True, slots=True)
class LeafReading:
    """Hold what came of one page of a scan: a reading, or the reason why there is none."""

    clipping_id: str
    sha256: str
    leaf: int
    key: str  # recipe asked for and version of the reader
    recipe_why: str
    reading: PageReading | None
    problem: str | None = None
    remedy: str | None = None
    seconds: float = 0.0


def kept_path(folder: Path, clipping_id: str, key: str) -> Path | None:
    """Return where the outcome of one page lies, a reading or a reason for none (see is_unread), or None."""
    for suffix in (SUFFIX, WORDLESS_SUFFIX, UNREAD_SUFFIX):
        path = folder / f"{clipping_id}.{key}{suffix}"
        if path.is_file():
            return path
    return None


def is_unread(path: Path) -> bool:
    """Say whether a kept file holds a reason instead of a reading."""
    return path.name.endswith(UNREAD_SUFFIX)


def is_wordless(path: Path) -> bool:
    """Say whether a kept file holds a reading in which not one word was found."""
    return path.name.endswith(WORDLESS_SUFFIX)


def save_reading(folder: Path, kept: LeafReading) -> Path:
    """Write an outcome in one step: a stop at any moment leaves the old file or the new one, never half.

    Raises OSError where the disk refuses.
    """
    suffix = SUFFIX if kept.reading and kept.reading.words else WORDLESS_SUFFIX if kept.reading else UNREAD_SUFFIX
    path = folder / f"{kept.clipping_id}.{kept.key}{suffix}"
    outdated = {found for ending in (SUFFIX, UNREAD_SUFFIX) for found in folder.glob(f"{kept.clipping_id}.*{ending}")}
    write_whole(path, gzip.compress(_adapter().dump_json(kept), compresslevel=3, mtime=0))
    for found in outdated - {path}:  # of other recipes and earlier readers; one reading a page is kept
        found.unlink(missing_ok=True)
    return path


def load_reading(path: Path) -> LeafReading | None:
    """Read a kept reading; None where there is none or it is damaged (it is then read again)."""
    try:
        return _adapter().validate_json(gzip.decompress(path.read_bytes()))
    except (FileNotFoundError, EOFError, OSError, zlib.error, ValidationError):
        return None


def is_sound(path: Path) -> bool:
    """Say whether a kept file is whole; one damaged by the disk or by hand is not."""
    try:
        gzip.decompress(path.read_bytes())
    except (EOFError, OSError, zlib.error):
        return False
    return True


def older_reading(folder: Path, clipping_id: str) -> Path | None:
    """Return the newest kept reading of a page whatever its recipe and reader, or None."""
    return max(folder.glob(f"{clipping_id}.*{SUFFIX}"), key=lambda path: path.stat().st_mtime, default=None)


def write_whole(path: Path, content: bytes) -> None:
    """Write a file under another name, sync it, and put it in place in one step.

    Raises OSError where the disk refuses; nothing half written stays behind.
    """
    unfinished = path.with_name(f".{path.name}.{os.getpid()}")
    try:
        with unfinished.open("wb") as stream:
            stream.write(content)
            stream.flush()
            os.fsync(stream.fileno())
        unfinished.replace(path)
    except BaseException:
        unfinished.unlink(missing_ok=True)
        raise


def remove_leavings(folder: Path) -> None:
    """Remove what processes that were killed left half written; files of running ones stay."""
    for path in folder.glob(".*"):
        owner = path.suffix.removeprefix(".")
        if owner.isdigit() and not _is_running(int(owner)):
            path.unlink(missing_ok=True)


def _is_running(process: int) -> bool:
    try:
        os.kill(process, 0)
    except ProcessLookupError:
        return False
    except PermissionError:
        return True
    return True


@lru_cache(maxsize=1)
def _adapter() -> TypeAdapter[LeafReading]:
    return TypeAdapter(LeafReading)

"""What decides whether kept work still holds: digests of the program's own rooms and of the user's files."""

from __future__ import annotations

import hashlib
from collections.abc import Iterable
from functools import lru_cache
from pathlib import Path
from typing import Final

_PACKAGE: Final = Path(__file__).resolve().parent.parent
READING_ROOMS: Final = ("intake", "layout", "reading")
PARSING_ROOMS: Final = ("parsing", "names", "dating")
STORE_ROOMS: Final = ("store", "engine")
_NOUNS: Final = ("box.py", "records.py")  # of every room
_CODE: Final = frozenset({".py", ".toml", ".csv", ".sql", ".txt", ".json", ".onnx", ".npz"})


@lru_cache(maxsize=16)
def rooms_digest(rooms: tuple[str, ...]) -> str:
    """Return the digest of the program files of these rooms: another program, another reading."""
    digest = hashlib.sha256(b"".join((_PACKAGE / name).read_bytes() for name in _NOUNS))
    for room in rooms:
        for path in sorted((_PACKAGE / room).rglob("*")):
            if path.suffix in _CODE and path.is_file():
                digest.update(path.relative_to(_PACKAGE).as_posix().encode())
                digest.update(path.read_bytes())
    return digest.hexdigest()


def folder_digest(folder: Path, patterns: Iterable[str] = ("*.toml",)) -> str:
    """Return the digest of the matching files of a folder; a missing folder has one too."""
    return files_digest(sorted(path for pattern in patterns for path in folder.glob(pattern)))


def files_digest(paths: Iterable[Path]) -> str:
    """Return the digest of some files, each with its name; a missing file counts as absent."""
    digest = hashlib.sha256()
    for path in paths:
        digest.update(path.name.encode() + b"\0")
        digest.update(path.read_bytes() if path.is_file() else b"\0absent")
    return digest.hexdigest()


def text_digest(*parts: object) -> str:
    """Return the digest of some texts in 16 hex digits."""
    return hashlib.sha256("\x1f".join(str(part) for part in parts).encode()).hexdigest()[:16]

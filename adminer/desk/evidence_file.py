"""Write evidence a person adds or strikes out into evidence.toml, entry by entry, and take an entry back."""

from __future__ import annotations

import json
from collections.abc import Mapping
from pathlib import Path

from adminer.dating.personal import FILE_NAME, load_personal
from adminer.errors import MachineError
from adminer.store.readings import write_whole


def add_entry(folder: Path, table: str, values: Mapping[str, str]) -> str:
    """Append one entry ([[add]] or [[strike]]) and return its text.

    Raises FolderError where the file would no longer be understood; it then stays as it was.
    """
    # a JSON string is a TOML basic string, but for DEL, which TOML wants escaped
    lines = [f"{name} = {json.dumps(value).replace(chr(0x7F), chr(92) + 'u007F')}" for name, value in values.items()]
    entry = "\n".join([f"[[{table}]]", *lines]) + "\n"
    path = folder / FILE_NAME
    before = path.read_text(encoding="utf-8-sig") if path.is_file() else ""
    _write(path, f"{before.rstrip()}\n\n{entry}" if before.strip() else entry)
    try:
        load_personal(folder)
    except Exception:
        _write(path, before)
        raise
    return entry


def remove_entry(folder: Path, entry: str) -> bool:
    """Take an entry out again, letter for letter; says whether it was there."""
    path = folder / FILE_NAME
    before = path.read_text(encoding="utf-8-sig") if path.is_file() else ""
    if entry not in before:
        return False
    _write(path, before.replace(entry, "", 1))
    return True


def restore_entry(folder: Path, entry: str) -> None:
    """Put an entry back that was taken out."""
    path = folder / FILE_NAME
    before = path.read_text(encoding="utf-8-sig") if path.is_file() else ""
    _write(path, f"{before.rstrip()}\n\n{entry}" if before.strip() else entry)


def _write(path: Path, text: str) -> None:
    try:
        write_whole(path, text.encode())
    except OSError as error:
        raise MachineError(
            "the evidence was not saved", file=str(path), why=error.strerror, remedy="free space or make it writable"
        ) from error

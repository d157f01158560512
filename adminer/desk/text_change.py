"""A change of a text file as the journal keeps it: what stood there, what stands there now, and what is around."""

from __future__ import annotations

from pathlib import Path
from typing import Final

from adminer.errors import FolderError, MachineError
from adminer.store.facts import Fields
from adminer.store.readings import write_whole

_AROUND: Final = 120  # characters kept on each side, to find the place again


def change_between(file: str, before: str, after: str) -> tuple[Fields, Fields]:
    """Return the old and new fields of an act that changed a text file; the smallest part that differs."""
    start = 0
    while start < min(len(before), len(after)) and before[start] == after[start]:
        start += 1
    end = 0
    while end < min(len(before), len(after)) - start and before[-1 - end] == after[-1 - end]:
        end += 1
    ahead = before[max(0, start - _AROUND) : start]
    behind = before[len(before) - end : len(before) - end + _AROUND]
    old = {"file": file, "text": before[start : len(before) - end]}
    new = {"file": file, "text": after[start : len(after) - end], "ahead": ahead, "behind": behind}
    return old, new


def turn_change(folder: Path, old: Fields, new: Fields, *, back: bool) -> None:
    """Take a change back, or bring it back.

    Raises FolderError where the file has changed at that place since, MachineError where the disk refuses.
    """
    path = folder / str(new["file"])
    text = path.read_text(encoding="utf-8-sig") if path.is_file() else ""
    here, there = (new["text"], old["text"]) if back else (old["text"], new["text"])
    found = f"{new['ahead']}{here}{new['behind']}"
    if text.count(found) != 1:
        raise FolderError(
            "has changed at this place since",
            file=str(new["file"]),
            remedy="open the file in an editor and change it there",
        )
    try:
        write_whole(path, text.replace(found, f"{new['ahead']}{there}{new['behind']}").encode())
    except OSError as error:
        raise MachineError(
            "the names were not saved", file=str(path), why=error.strerror, remedy="free space or make it writable"
        ) from error

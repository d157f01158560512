"""Which clippings folder a command means: the word after the command, --folder, or the folder one is in."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from adminer.engine.folder import SETTINGS_FILE, ClippingsFolder, open_folder
from adminer.errors import FolderError, UsageError

Folder = Annotated[Path | None, typer.Argument(help="The clippings folder; the one you are in by default.")]
FolderWord = Annotated[str | None, typer.Argument(help="The clippings folder; the one you are in by default.")]
FolderOption = Annotated[Path | None, typer.Option("--folder", help="Another way to name the clippings folder.")]


def place_of(folder: Path | None, option: Path | None, otherwise: Path = Path()) -> Path:
    """Return the folder that is meant, named either way. Raises UsageError where it is named both ways."""
    if folder is not None and option is not None and folder != option:
        raise UsageError("two folders are named", why=f"{folder} and {option}", remedy="name one of them")
    return folder or option or otherwise


def folder_and_name(
    place: str | None, name: str | None, option: Path | None = None
) -> tuple[ClippingsFolder, str | None]:
    """Open the folder that is meant among up to two words and an option, and return the other word.

    A single word that is no folder is the name, and the folder is the one we are in; of two words the folder comes
    first, or is the one that is a clippings folder. Raises FolderError where none is one, UsageError where two are.
    """
    words = [word for word in (place, name) if word is not None]
    if option is not None:
        if len(words) == 2:
            raise UsageError("two folders are named", why=f"{words[0]} and {option}", remedy="leave one of them out")
        return open_folder(option), words[0] if words else None
    if not words:
        return open_folder(Path()), None
    if len(words) == 2:
        first, second = words
        if not is_clippings_folder(first) and is_clippings_folder(second):
            first, second = second, first
        return open_folder(Path(first)), second
    (word,) = words
    if Path(word).is_dir():
        return open_folder(Path(word)), None
    if not is_clippings_folder("."):
        raise FolderError(
            f"'{word}' is no folder, and here is no clippings folder that could have it",
            remedy="name the clippings folder first, then what you seek in it",
        )
    return open_folder(Path()), word


def is_clippings_folder(word: str) -> bool:
    """Say whether a word names a clippings folder."""
    try:
        return (Path(word) / SETTINGS_FILE).is_file()
    except (OSError, ValueError):  # a query is longer than any path
        return False

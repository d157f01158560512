"""Which clippings folder is meant, where a command takes the folder first and then a name inside it."""

from __future__ import annotations

from pathlib import Path

from adminer.engine.folder import ClippingsFolder, open_folder


def folder_and_name(place: str | None, name: str | None) -> tuple[ClippingsFolder, str | None]:
    """Open the folder named first; a first word that is no folder is the name, and the folder is the one we are in.

    Raises FolderError where neither is a clippings folder.
    """
    if place is None:
        return open_folder(Path()), name
    if name is None and not Path(place).is_dir():
        return open_folder(Path()), place
    return open_folder(Path(place)), name

"""A clippings folder: where its parts lie, its settings, and making a new one."""

from __future__ import annotations

import os
import shutil
import tomllib
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from pydantic import BaseModel, ConfigDict, Field, ValidationError

from adminer.errors import FolderError, machine_error

SETTINGS_FILE: Final = "clippings.toml"
_IGNORED: Final = frozenset({"thumbs.db", "desktop.ini", "ehthumbs.db"})  # what file managers leave behind
_PICTURE_ENDINGS: Final = frozenset(
    [".png", ".jpg", ".jpeg", ".jpe", ".tif", ".tiff", ".webp", ".pdf", ".bmp", ".gif", ".jp2", ".ppm", ".pgm", ".heic"]
)
_NEW_SETTINGS: Final = """\
# A clippings folder. Put scans in scans/, notes about them in notes.csv, names in names/.
title = {title}
# recipe = "microfilm_print"   # how most scans were made; without it each scan is measured
# region = "Ohio"              # where most papers come from; helps dating
# years = [1938, 1964]         # between which years most adverts fall; helps dating
"""
_NEW_NOTES: Final = "file,publication,published,city,state,page,found_in,rights,remark,recipe,continues\n"
_NEW_NAMES: Final = {
    "lines.toml": (
        "# One [[line]] for each line (pattern) you follow:\n# [[line]]\n"
        '# id = "tansy-morn"\n# name = "Tansy Morn"\n# maker = "marrowstone"\n'
    ),
    "makers.toml": '# [[maker]]\n# id = "marrowstone"\n# name = "Marrowstone Pottery"\n',
    "retailers.toml": '# [[retailer]]\n# id = "penhallow"\n# name = "Penhallow Stores"\n# kind = "chain"\n',
}


class Settings(BaseModel):
    """Hold what clippings.toml says of the whole folder."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    title: str = "Clippings"
    recipe: str | None = None
    region: str | None = None
    years: tuple[int, int] | None = None
    workers: int | None = Field(default=None, ge=1, le=256)


_BY_HAND: Final = ("clippings.toml", "notes.csv", "objects.csv", "searches.csv", "evidence.toml")


@dataclass(frozen=True, slots=True)
class ClippingsFolder:
    """Hold the place of a clippings folder and its settings."""

    root: Path
    settings: Settings

    @property
    def scans(self) -> Path:
        """Return the folder of the scans, which are never changed."""
        return self.root / "scans"

    @property
    def notes(self) -> Path:
        """Return the file of notes, one row a scan."""
        return self.root / "notes.csv"

    @property
    def names(self) -> Path:
        """Return the folder of the authority files."""
        return self.root / "names"

    @property
    def journal(self) -> Path:
        """Return the file of confirmations and corrections."""
        return self.root / "journal.jsonl"

    @property
    def files_by_hand(self) -> tuple[Path, ...]:
        """Return the files a person may edit of which, beside scans and journal, the database is built."""
        return (*(self.root / name for name in _BY_HAND), *sorted(self.names.glob("*.toml")))

    @property
    def readings(self) -> Path:
        """Return the folder of what was read, safe to delete."""
        return self.root / ".readings"

    @property
    def database(self) -> Path:
        """Return the database file, safe to delete."""
        return self.root / "clippings.duckdb"

    @property
    def unfinished_database(self) -> Path:
        """Return the file in which the next database is built."""
        return self.root / ".clippings.duckdb.building"

    def existing_database(self) -> Path:
        """Return the database file.

        Raises FolderError where none was built yet.
        """
        if not self.database.is_file():
            raise FolderError(
                "has no database yet",
                file=str(self.root),
                why="its scans were not read",
                remedy=f"run: adminer digitise {self.root}",
            )
        return self.database


def open_folder(root: Path) -> ClippingsFolder:
    """Open a clippings folder.

    Raises FolderError where it is none or its clippings.toml is broken.
    """
    if not root.is_dir():
        raise FolderError("does not exist", file=str(root), remedy=f"make it with: adminer new {root}")
    settings_file = root / SETTINGS_FILE
    if not settings_file.is_file():
        raise FolderError(
            "is not a clippings folder",
            file=str(root),
            why=f"it has no {SETTINGS_FILE}",
            remedy=f"make one and copy these scans into it with: adminer new my-clippings --scans {root}",
        )
    try:
        settings = Settings.model_validate(tomllib.loads(settings_file.read_text(encoding="utf-8-sig")))
    except (tomllib.TOMLDecodeError, UnicodeDecodeError) as fault:
        raise FolderError(
            "cannot be understood", file=str(settings_file), why=str(fault), remedy="correct that line"
        ) from None
    except ValidationError as fault:
        first = fault.errors()[0]
        place = ".".join(str(part) for part in first["loc"])
        raise FolderError(
            f"has a wrong entry '{place}'",
            file=str(settings_file),
            why=first["msg"].lower(),
            remedy=f"known entries are {', '.join(Settings.model_fields)}",
        ) from None
    return ClippingsFolder(root.resolve(), settings)


def list_scans(folder: ClippingsFolder) -> tuple[str, ...]:
    """List the files below scans/ in a fixed order, with forward slashes; hidden files are no scans."""
    found = []
    for base, folders, files in os.walk(folder.scans):
        folders[:] = sorted(name for name in folders if not name.startswith("."))
        here = Path(base)
        found += [
            (here / name).relative_to(folder.scans).as_posix()
            for name in files
            if not name.startswith(".") and name.lower() not in _IGNORED
        ]
    return tuple(sorted(found))


def create_folder(root: Path, title: str | None = None, scans: Iterable[Path] = ()) -> ClippingsFolder:
    """Make a new clippings folder, copying these scan files (or the pictures of these folders) into it.

    Raises FolderError where there is one already, MachineError where the disk refuses.
    """
    if (root / SETTINGS_FILE).exists():
        raise FolderError("is a clippings folder already", file=str(root), remedy="choose another name")
    try:
        for part in (root, root / "scans", root / "names"):
            part.mkdir(parents=True, exist_ok=True)
        for name, content in _NEW_NAMES.items():
            _write_new(root / "names" / name, content)
        _write_new(root / "notes.csv", _NEW_NOTES)
        for source in scans:
            _copy_scans(source, root / "scans")
        quoted = '"' + (title or root.resolve().name).replace("\\", "\\\\").replace('"', '\\"') + '"'
        _write_new(root / SETTINGS_FILE, _NEW_SETTINGS.format(title=quoted))
    except OSError as fault:
        raise machine_error(fault, root) from None
    return open_folder(root)


def _write_new(path: Path, content: str) -> None:
    if not path.exists():
        path.write_text(content, encoding="utf-8")


def _copy_scans(source: Path, target: Path) -> None:
    """Copy one file, or the files of a folder whose names are those of pictures; notes beside them are no scans."""
    if not source.exists():
        raise FolderError("does not exist", file=str(source), remedy="check the name of the scans to copy")
    files = sorted(path for path in source.rglob("*") if path.is_file()) if source.is_dir() else [source]
    for path in files:
        below = path.relative_to(source) if source.is_dir() else Path(path.name)
        if any(part.startswith(".") for part in below.parts) or (
            source.is_dir() and path.suffix.lower() not in _PICTURE_ENDINGS
        ):
            continue
        (target / below).parent.mkdir(parents=True, exist_ok=True)
        shutil.copy2(path, target / below)

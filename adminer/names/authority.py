"""The authority files: lines, makers and retailers, every name each goes by, and how they hang together.

Text files a person edits: names/lines.toml, makers.toml and retailers.toml in a clippings folder. An entry has its
own id, the name this file prefers, and other names with who used each, from when to when, and the source.
"""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Any, Final, Literal

from pydantic import BaseModel, ConfigDict, Field, ValidationError

from adminer.errors import FolderError
from adminer.names.pieces import Vocabulary, load_vocabulary
from adminer.names.repairs import load_repairs

UsedBy = Literal["maker", "decal_supplier", "retailer", "collectors"]
EntryKind = Literal["lines", "makers", "retailers"]  # as the files are called
Relation = Literal["same_decal", "same_shape", "made_for", "made_by", "later_made_by", "decorated_by"]


class _Record(BaseModel):
    model_config = ConfigDict(frozen=True, extra="forbid", populate_by_name=True, coerce_numbers_to_str=True)


class NameUse(_Record):
    """Hold another name of an entry: who used it, from which year to which, and where that is written."""

    name: str = Field(min_length=1)
    used_by: UsedBy | None = None
    used_by_id: str | None = None
    from_year: int | None = Field(default=None, alias="from")
    to_year: int | None = Field(default=None, alias="to")
    source: str | None = None


class LineRelation(_Record):
    """Hold what one line has to do with another line, a maker or a decal supplier."""

    relation: Relation
    other: str
    source: str | None = None


class Entry(_Record):
    """Hold what every entry of an authority file has: its own id, the name this file prefers, and a remark."""

    id: str = Field(min_length=1)
    name: str = Field(min_length=1)
    remark: str | None = None


class LineEntry(Entry):
    """Hold one line (pattern): its preferred name, maker, years, shape, decal and every name it went by."""

    maker: str | None = None
    first_year: int | None = None
    last_year: int | None = None
    shape: str | None = None
    decal: str | None = None
    names: tuple[NameUse, ...] = ()
    relations: tuple[LineRelation, ...] = ()


class MakerEntry(Entry):
    """Hold one maker, decorator or decal supplier."""

    kind: str | None = None
    names: tuple[str, ...] = ()
    from_year: int | None = Field(default=None, alias="from")
    to_year: int | None = Field(default=None, alias="to")
    city: str | None = None


class RetailerEntry(Entry):
    """Hold one retailer: chain, department store, mail-order house or stamp company, with its branches."""

    kind: str | None = None
    names: tuple[str, ...] = ()
    branches: tuple[str, ...] = ()
    from_year: int | None = Field(default=None, alias="from")
    to_year: int | None = Field(default=None, alias="to")


class Authorities(BaseModel):
    """Hold all authority entries of a folder and the vocabulary of pieces."""

    model_config = ConfigDict(frozen=True, arbitrary_types_allowed=True)

    lines: tuple[LineEntry, ...] = ()
    makers: tuple[MakerEntry, ...] = ()
    retailers: tuple[RetailerEntry, ...] = ()
    pieces: Vocabulary = Field(default_factory=load_vocabulary)
    repairs: dict[str, str] = Field(default_factory=dict)  # what recurring misreadings are, in lower case

    def maker_name(self, maker_id: str | None) -> str | None:
        """Return the preferred name of a maker, None where it is not known."""
        return next((m.name for m in self.makers if m.id == maker_id), None)


# the name of each entry's table, and its model
_TABLES: Final[dict[EntryKind, tuple[str, type[Entry]]]] = {
    "lines": ("line", LineEntry),
    "makers": ("maker", MakerEntry),
    "retailers": ("retailer", RetailerEntry),
}


def load_authorities(folder: Path | None) -> Authorities:
    """Read the authority files of a names/ folder; a missing folder or file is an empty one.

    Raise FolderError for a file that is no TOML, has a key nobody knows, or an id twice.
    """
    found: dict[str, tuple[Any, ...]] = {}
    for kind in _TABLES:
        found[kind] = _load_file(folder / f"{kind}.toml", kind) if folder is not None else ()
    own = folder / "pieces.toml" if folder is not None else None
    repairs = load_repairs(folder) if folder is not None else {}
    return Authorities(pieces=load_vocabulary(own), repairs=repairs, **found)


def _load_file(path: Path, kind: EntryKind) -> tuple[Any, ...]:
    shown = f"{path.parent.name}/{path.name}"
    try:
        return parse_entries(path.read_text(encoding="utf-8-sig"), kind, shown)
    except FileNotFoundError:
        return ()
    except UnicodeDecodeError as error:
        raise _unreadable(shown, error) from error


def parse_entries(text: str, kind: EntryKind, shown: str) -> tuple[Any, ...]:
    """Return the entries of the text of one authority file; `shown` is what an error calls the file.

    Raise FolderError where it is no TOML, has a key nobody knows, or an id twice.
    """
    key, model = _TABLES[kind]
    try:
        data = tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        raise _unreadable(shown, error) from error
    strange = set(data) - {key}
    if strange:
        raise FolderError(
            f"unknown table {sorted(strange)[0]!r}", file=shown, remedy=f"every entry starts with [[{key}]]"
        )
    entries: list[Any] = []
    seen: set[str] = set()
    for number, row in enumerate(data.get(key, []), 1):
        try:
            entry: Any = model.model_validate(row)
        except ValidationError as error:
            first = error.errors()[0]
            where = ".".join(str(part) for part in first["loc"])
            raise FolderError(
                f"entry {number} is not as expected at {where!r}",
                file=shown,
                why=first["msg"],
                remedy="correct the entry and try again",
            ) from error
        if entry.id in seen:
            raise FolderError(f"the id {entry.id!r} stands twice", file=shown, remedy="give each entry its own id")
        seen.add(entry.id)
        entries.append(entry)
    return tuple(entries)


def _unreadable(shown: str, error: Exception) -> FolderError:
    return FolderError(
        "this authority file cannot be read", file=shown, why=str(error), remedy="correct that line and try again"
    )

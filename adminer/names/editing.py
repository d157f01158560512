"""Edit the authority files as a person would: accept, merge, split or reject a name; comments and order stay."""

from __future__ import annotations

import tomllib
from datetime import date
from pathlib import Path

import tomlkit

from adminer.errors import FolderError
from adminer.names.authority import LineEntry, NameUse, UsedBy, load_authorities
from adminer.names.entries import add_entry, change_entry, read_text, write_text
from adminer.names.matching import fold_name
from adminer.names.proposals import REJECTED_FILE


def accept_line(folder: Path, name: str, *, maker: str | None = None, source: str | None = None) -> str:
    """Add a name to names/lines.toml as a new line and return its id."""
    fields = {"maker": maker, "remark": source}
    return add_entry(folder, "lines", name, **{key: value for key, value in fields.items() if value})


def accept_maker(folder: Path, name: str, *, source: str | None = None) -> str:
    """Add a name to names/makers.toml as a new maker and return its id."""
    return add_entry(folder, "makers", name, **({"remark": source} if source else {}))


def merge_into_line(
    folder: Path,
    name: str,
    line_id: str,
    *,
    used_by: UsedBy | None = None,
    used_by_id: str | None = None,
    source: str | None = None,
) -> None:
    """Add a name to an existing line as one more name it goes by."""
    line = _line(folder, line_id)
    if any(fold_name(use) == fold_name(name) for use in (line.name, *(u.name for u in line.names))):
        return
    use = NameUse(name=name, used_by=used_by, used_by_id=used_by_id or None, source=source or None)
    change_entry(folder, "lines", line.model_copy(update={"names": (*line.names, use)}))


def split_from_line(folder: Path, line_id: str, name: str) -> str:
    """Take one name away from a line, make it a line of its own, and return the new id."""
    line = _line(folder, line_id)
    if name not in {use.name for use in line.names}:
        raise FolderError(
            f"the line {line_id!r} has no further name {name!r}",
            file=f"{folder.name}/lines.toml",
            remedy="give one of its names other than the preferred one",
        )
    left = tuple(use for use in line.names if use.name != name)
    change_entry(folder, "lines", line.model_copy(update={"names": left}))
    return accept_line(folder, name, maker=line.maker)


def reject_name(folder: Path, name: str, *, on: date | None = None) -> None:
    """Note a name as rejected, so that it is not proposed again."""
    text = read_text(folder / REJECTED_FILE)
    known = {fold_name(str(row.get("name", ""))) for row in tomllib.loads(text).get("rejected", [])} if text else set()
    if fold_name(name) in known:
        return
    row = tomlkit.table()
    row.update({"name": name, **({"on": on.isoformat()} if on else {})})
    head = text.rstrip("\n") + "\n\n" if text.strip() else "# Names a person looked at and found to be no line.\n\n"
    write_text(folder, REJECTED_FILE, f"{head}[[rejected]]\n{tomlkit.dumps(row)}")


def _line(folder: Path, line_id: str) -> LineEntry:
    found = next((line for line in load_authorities(folder).lines if line.id == line_id), None)
    if found is None:
        raise FolderError(
            f"there is no line {line_id!r}", file=f"{folder.name}/lines.toml", remedy="give the id of an entry"
        )
    return found

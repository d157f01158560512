"""Change or add one entry of an authority file in its text; comments, order and every other entry stay as written.

Every edit is checked by reading the new text back before it takes the place of the old one in one step.
"""

from __future__ import annotations

import os
import re
import unicodedata
from pathlib import Path
from typing import Any, Final

import tomlkit
from tomlkit.exceptions import TOMLKitError
from tomlkit.items import AoT, Array, InlineTable, Table

from adminer.errors import FolderError, MachineError
from adminer.names.authority import Entry, EntryKind, parse_entries

TABLES: Final[dict[EntryKind, str]] = {"lines": "line", "makers": "maker", "retailers": "retailer"}


def fields_of(entry: Entry) -> dict[str, Any]:
    """Return the fields of an entry as its file writes them; what is not known is left out."""
    return {name: value for name, value in entry.model_dump(by_alias=True, exclude_none=True).items() if value != ()}


def change_entry(folder: Path, kind: EntryKind, wanted: Entry) -> tuple[str, ...]:
    """Write what differs between an entry and the one of the same id in its file; returns the changed fields.

    Raises FolderError where there is no such entry or its text is too unusual to be changed alone.
    """
    text = read_text(folder / f"{kind}.toml")
    before = parse_entries(text, kind, _shown(folder, kind))
    now = next((entry for entry in before if entry.id == wanted.id), None)
    if now is None:
        raise FolderError(
            f"there is no {TABLES[kind]} {wanted.id!r}", file=_shown(folder, kind), remedy="give the id of an entry"
        )
    old, new = fields_of(now), fields_of(wanted)
    changed = tuple(name for name in {**old, **new} if old.get(name) != new.get(name))
    if not changed:
        return ()
    try:
        document = tomlkit.parse(text)
        table: Table = next(each for each in document[TABLES[kind]] if str(each["id"]) == wanted.id)
        for name in changed:
            _put(table, name, old.get(name), new.get(name))
        after = tomlkit.dumps(document)
    except (TOMLKitError, StopIteration, ValueError, TypeError) as error:
        raise _unusual(folder, kind, str(error)) from error
    if parse_entries(after, kind, _shown(folder, kind)) != tuple(wanted if e.id == wanted.id else e for e in before):
        raise _unusual(folder, kind, "others would change with it")
    write_text(folder, f"{kind}.toml", after)
    return changed


def add_entry(folder: Path, kind: EntryKind, name: str, **fields: str) -> str:
    """Add an entry with a name and further fields; returns its id."""
    text = read_text(folder / f"{kind}.toml")
    known = {entry.id for entry in parse_entries(text, kind, _shown(folder, kind))}
    entry_id = _new_id(name, known)
    table = tomlkit.table()
    table.update({"id": entry_id, "name": name, **fields})
    entry = f"[[{TABLES[kind]}]]\n{tomlkit.dumps(table)}"
    after = f"{text.rstrip()}\n\n{entry}" if text.strip() else entry
    parse_entries(after, kind, _shown(folder, kind))
    write_text(folder, f"{kind}.toml", after)
    return entry_id


def read_text(path: Path) -> str:
    """Return the text of an authority file; a missing one is empty."""
    try:
        return path.read_text(encoding="utf-8-sig")
    except FileNotFoundError:
        return ""


def write_text(folder: Path, name: str, text: str) -> None:
    """Put a text in the place of a file in one step.

    Raises MachineError where the disk refuses.
    """
    folder.mkdir(parents=True, exist_ok=True)
    unfinished = folder / f".{name}.writing"
    try:
        with unfinished.open("w", encoding="utf-8", newline="\n") as out:
            out.write(text)
            out.flush()
            os.fsync(out.fileno())
        unfinished.replace(folder / name)
    except OSError as error:
        unfinished.unlink(missing_ok=True)
        raise MachineError(
            "this file cannot be written",
            file=f"{folder.name}/{name}",
            why=error.strerror,
            remedy="free space or rights",
        ) from error


def _put(table: Table, name: str, old: Any, new: Any) -> None:
    """Put a value into an entry, touching no more of its text than has to change."""
    held = table.get(name)
    if new is None:
        del table[name]
    elif held is None:
        _add(table, name, _array(new) if isinstance(new, tuple) else new)
    elif not isinstance(new, tuple):
        table[name] = new
    elif isinstance(held, Array | AoT):
        _put_list(held, old, new)
    else:
        raise TypeError(f"{name} is no list")


def _add(table: Table, name: str, value: Any) -> None:
    """Add a field behind the last one, before the blank lines and comments that lead to the next entry."""
    body = table.value.body
    end = len(body)
    while end and body[end - 1][0] is None:
        end -= 1
    tail = body[end:]
    del body[end:]
    table.add(name, value)
    body.extend(tail)


def _put_list(held: Array | AoT, old: tuple[Any, ...], new: tuple[Any, ...]) -> None:
    item = _inline if isinstance(held, Array) else _whole
    kept = [each for each in old if each in new]
    if len(old) == len(new):
        for index, (before, after) in enumerate(zip(old, new, strict=True)):
            if before != after:
                held[index] = item(after)
        return
    if kept != list(new[: len(kept)]):
        kept = []
    for index in reversed(range(len(old))):
        if old[index] not in kept:
            del held[index]
    for each in new[len(kept) :]:
        held.append(item(each))


def _array(values: tuple[Any, ...]) -> Array:
    array = tomlkit.array()
    for each in values:
        array.append(_inline(each))
    return array.multiline(isinstance(values[0], dict))


def _inline(value: Any) -> Any:
    if not isinstance(value, dict):
        return value
    table: InlineTable = tomlkit.inline_table()
    table.update(value)
    return table


def _whole(value: Any) -> Table:
    table = tomlkit.table()
    table.update(value)
    return table


def _new_id(name: str, known: set[str]) -> str:
    plain = "".join(c for c in unicodedata.normalize("NFKD", name) if not unicodedata.combining(c)).lower()
    base = re.sub(r"[^a-z0-9]+", "_", plain).strip("_") or "entry"
    number, entry_id = 2, base
    while entry_id in known:
        entry_id, number = f"{base}_{number}", number + 1
    return entry_id


def _shown(folder: Path, kind: EntryKind) -> str:
    return f"{folder.name}/{kind}.toml"


def _unusual(folder: Path, kind: EntryKind, why: str) -> FolderError:
    return FolderError(
        "this entry cannot be changed by itself",
        file=_shown(folder, kind),
        why=why,
        remedy="edit it by hand: the file is yours",
    )

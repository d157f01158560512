"""Edit the authority files as a person would: accept, merge, split or reject a name; comments and order stay.

Every edit is checked by reading the file back before it takes the place of the old one in one step.
"""

from __future__ import annotations

import contextlib
import os
import re
import tomllib
import unicodedata
from datetime import date
from pathlib import Path
from typing import Final

from adminer.errors import FolderError, MachineError
from adminer.names.authority import Authorities, LineEntry, UsedBy, load_authorities
from adminer.names.matching import fold_name
from adminer.names.proposals import REJECTED_FILE

_LINES_FILE: Final = "lines.toml"
_ENTRY: Final = re.compile(r"^[ \t]*\[\[line\]\][ \t]*(?:#.*)?$", re.MULTILINE)


def accept_line(folder: Path, name: str, *, maker: str | None = None, source: str | None = None) -> str:
    """Add a name to names/lines.toml as a new line and return its id."""
    authorities = load_authorities(folder)
    line_id = _new_id(name, {line.id for line in authorities.lines})
    parts = [f"\n[[line]]\nid = {_quoted(line_id)}\nname = {_quoted(name)}\n"]
    if maker:
        parts.append(f"maker = {_quoted(maker)}\n")
    if source:
        parts.append(f"remark = {_quoted(source)}\n")
    text = _read(folder / _LINES_FILE)
    _write(folder, _LINES_FILE, text.rstrip("\n") + "\n" + "".join(parts) if text.strip() else "".join(parts).lstrip())
    return line_id


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
    line = _line(load_authorities(folder), line_id, folder)
    if any(fold_name(use) == fold_name(name) for use in (line.name, *(u.name for u in line.names))):
        return
    fields = {"name": name, "used_by": used_by, "used_by_id": used_by_id, "source": source}
    given = ", ".join(f"{key} = {_quoted(value)}" for key, value in fields.items() if value)
    text = _read(folder / _LINES_FILE)
    start, end = _block(text, line_id, folder)
    block = text[start:end]
    if array := re.search(r"^[ \t]*names[ \t]*=[ \t]*\[", block, re.MULTILINE):
        block = block[: array.end()] + f"\n    {{ {given} }}," + block[array.end() :]
    else:
        head = re.search(r"^[ \t]*\[\[?line\.", block, re.MULTILINE)
        at = head.start() if head else len(block.rstrip())
        table = "[[line.names]]\n" + "".join(f"{k} = {_quoted(v)}\n" for k, v in fields.items() if v)
        block = block[:at].rstrip() + "\n\n" + table + "\n" + block[at:].lstrip("\n")
    _write(folder, _LINES_FILE, text[:start] + block + text[end:])


def split_from_line(folder: Path, line_id: str, name: str) -> str:
    """Take one name away from a line, make it a line of its own, and return the new id."""
    line = _line(load_authorities(folder), line_id, folder)
    if name not in {use.name for use in line.names}:
        raise FolderError(
            f"the line {line_id!r} has no further name {name!r}",
            file=f"{folder.name}/{_LINES_FILE}",
            remedy="give one of its names other than the preferred one",
        )
    text = _read(folder / _LINES_FILE)
    start, end = _block(text, line_id, folder)
    block = text[start:end]
    wanted = re.escape(_quoted(name))
    inline = re.compile(rf"[ \t]*\{{[^{{}}]*name[ \t]*=[ \t]*{wanted}[^{{}}]*\}}[ \t]*,?[ \t]*\n?")
    table = re.compile(
        rf"^[ \t]*\[\[line\.names\]\](?:(?!^[ \t]*\[)[\s\S])*?name[ \t]*=[ \t]*{wanted}(?:(?!^[ \t]*\[)[\s\S])*",
        re.MULTILINE,
    )
    cut, found = inline.subn("", block, count=1)
    if not found:
        cut, found = table.subn("", block, count=1)
    if not found:
        raise FolderError(
            f"the name {name!r} cannot be cut out by itself",
            file=f"{folder.name}/{_LINES_FILE}",
            remedy="edit the entry by hand: the file is yours",
        )
    _write(folder, _LINES_FILE, text[:start] + cut + text[end:])
    return accept_line(folder, name, maker=line.maker)


def reject_name(folder: Path, name: str, *, on: date | None = None) -> None:
    """Note a name as rejected, so that it is not proposed again."""
    text = _read(folder / REJECTED_FILE)
    known = {fold_name(str(row.get("name", ""))) for row in tomllib.loads(text).get("rejected", [])} if text else set()
    if fold_name(name) in known:
        return
    entry = f"[[rejected]]\nname = {_quoted(name)}\n" + (f"on = {_quoted(on.isoformat())}\n" if on else "")
    head = text.rstrip("\n") + "\n\n" if text.strip() else "# Names a person looked at and found to be no line.\n\n"
    _write(folder, REJECTED_FILE, head + entry)


def _line(authorities: Authorities, line_id: str, folder: Path) -> LineEntry:
    found = next((line for line in authorities.lines if line.id == line_id), None)
    if found is None:
        raise FolderError(
            f"there is no line {line_id!r}", file=f"{folder.name}/{_LINES_FILE}", remedy="give the id of an entry"
        )
    return found


def _block(text: str, line_id: str, folder: Path) -> tuple[int, int]:
    """Return where the entry of a line starts and ends in the text of lines.toml."""
    heads = [m.start() for m in _ENTRY.finditer(text)]
    for start, end in zip(heads, [*heads[1:], len(text)], strict=True):
        with contextlib.suppress(tomllib.TOMLDecodeError):
            if any(str(row.get("id")) == line_id for row in tomllib.loads(text[start:end]).get("line", [])):
                return start, end
    raise FolderError(
        f"the entry of {line_id!r} cannot be found in the text",
        file=f"{folder.name}/{_LINES_FILE}",
        remedy="start each entry with a line [[line]]",
    )


def _new_id(name: str, known: set[str]) -> str:
    plain = "".join(c for c in unicodedata.normalize("NFKD", name) if not unicodedata.combining(c)).lower()
    base = re.sub(r"[^a-z0-9]+", "_", plain).strip("_") or "line"
    number, line_id = 2, base
    while line_id in known:
        line_id, number = f"{base}_{number}", number + 1
    return line_id


def _quoted(value: str) -> str:
    """Return a TOML basic string."""
    escaped = value.replace("\\", "\\\\").replace('"', '\\"')
    return '"' + "".join(c if c.isprintable() else f"\\u{ord(c):04x}" for c in escaped) + '"'


def _read(path: Path) -> str:
    try:
        return path.read_text(encoding="utf-8-sig")
    except FileNotFoundError:
        return ""


def _write(folder: Path, name: str, text: str) -> None:
    """Check the new text by reading it, then put it in the place of the old in one step."""
    folder.mkdir(parents=True, exist_ok=True)
    unfinished = folder / f".{name}.writing"
    try:
        with unfinished.open("w", encoding="utf-8", newline="\n") as out:
            out.write(text)
            out.flush()
            os.fsync(out.fileno())
        tomllib.loads(text)
        unfinished.replace(folder / name)
    except tomllib.TOMLDecodeError as error:
        unfinished.unlink(missing_ok=True)
        raise FolderError(
            "the edit would break this file", file=f"{folder.name}/{name}", why=str(error), remedy="edit it by hand"
        ) from error
    except OSError as error:
        unfinished.unlink(missing_ok=True)
        raise MachineError(
            "this file cannot be written",
            file=f"{folder.name}/{name}",
            why=error.strerror,
            remedy="free space or rights",
        ) from error

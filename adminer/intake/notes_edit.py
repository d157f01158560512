"""Change notes.csv in place: the rows named and nothing else, however a spreadsheet wrote the file."""

from __future__ import annotations

import csv
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from io import StringIO
from pathlib import Path
from typing import Final

from adminer.errors import MachineError
from adminer.intake.notes import COLUMNS, _column, _decoded, _records, _split, same_name
from adminer.store.readings import write_whole

_SEPARATORS: Final = (",", ";", "\t", "|")


@dataclass(frozen=True, slots=True)
class NoteChange:
    """Hold what changed in the note of one file: old and new values by column."""

    file: str
    old: Mapping[str, str]
    new: Mapping[str, str]


def change_notes(path: Path, files: Sequence[str], values: Mapping[str, str]) -> tuple[NoteChange, ...]:
    """Set the same values in the notes of several files; a file without a row gets one, others stay to the letter.

    Values by column name; an empty one clears the cell. Raises FolderError where notes.csv cannot be understood,
    MachineError where the disk refuses.
    """
    values = {name: value for name, value in values.items() if name in COLUMNS and name != "file"}
    content = path.read_bytes() if path.is_file() else b""
    text = _decoded(content, path.name)
    records = [record for _, record in _records(text)] or [",".join(COLUMNS)]
    separator = max(_SEPARATORS, key=records[0].count)
    titles = _split(records[0], separator)
    header = [_column(cell) for cell in titles]
    missing = [name for name in values if name not in header]
    if missing:
        titles, header = [*titles, *missing], [*header, *missing]
        records[0] = _record(titles, separator)
    wanted = {same_name(file): file for file in files}
    changes: list[NoteChange] = []
    met: set[str] = set()
    for number, record in enumerate(records[1:], 1):
        try:
            cells = _split(record, separator)
        except csv.Error:
            continue
        row = dict(zip(header, cells, strict=False))
        name = same_name(row.get("file", ""))
        if name not in wanted:
            continue
        met.add(name)
        old = {column: row.get(column, "") for column in values if row.get(column, "") != values[column]}
        if old:
            changes.append(NoteChange(wanted[name], old, {column: values[column] for column in old}))
            records[number] = _record([{**row, **values}.get(column, "") for column in header], separator)
    for name, file in wanted.items():
        new = {column: value for column, value in values.items() if value}
        if name not in met and new:
            changes.append(NoteChange(file, dict.fromkeys(new, ""), new))
            records.append(_record([{"file": file, **new}.get(column, "") for column in header], separator))
    if changes:
        _write(path, "\n".join(records) + "\n", plain=_is_plain(content))
    return tuple(changes)


def _record(cells: Sequence[str], separator: str) -> str:
    stream = StringIO()
    csv.writer(stream, delimiter=separator, lineterminator="").writerow(cells)
    return stream.getvalue()


def _is_plain(content: bytes) -> bool:
    """Say whether a file is UTF-8 without a mark at its head; others are written with one, for the spreadsheet."""
    try:
        content.decode("utf-8")
    except UnicodeDecodeError:
        return False
    return not content.startswith(b"\xef\xbb\xbf")


def _write(path: Path, text: str, *, plain: bool) -> None:
    try:
        write_whole(path, text.encode("utf-8" if plain else "utf-8-sig"))
    except OSError as error:
        raise MachineError(
            "the notes were not saved", file=str(path), why=error.strerror, remedy="free space or make it writable"
        ) from error

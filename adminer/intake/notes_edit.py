"""Change notes.csv in place: the rows named and nothing else, however a spreadsheet wrote the file."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from adminer.intake.notes import COLUMNS, same_name
from adminer.intake.table_edit import open_csv


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
    table = open_csv(path, COLUMNS)
    table.add_columns([*values])
    wanted = {same_name(file): file for file in files}
    changes: list[NoteChange] = []
    met: set[str] = set()
    for place, record in enumerate(table.records):
        row = table.cells(record)
        name = same_name(row.get("file", "")) if row else ""
        if row is None or name not in wanted:
            continue
        met.add(name)
        old = {column: row.get(column, "") for column in values if row.get(column, "") != values[column]}
        if old:
            changes.append(NoteChange(wanted[name], old, {column: values[column] for column in old}))
            table.records[place] = table.record({**row, **values})
    for name, file in wanted.items():
        new = {column: value for column, value in values.items() if value}
        if name not in met and new:
            changes.append(NoteChange(file, dict.fromkeys(new, ""), new))
            table.records.append(table.record({"file": file, **new}))
    if changes:
        table.save(path, "the notes")
    return tuple(changes)

"""Change a table that a person keeps as CSV, one row at a time; the others stay to the letter, whoever wrote them."""

from __future__ import annotations

import csv
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from adminer.errors import FolderError, MachineError
from adminer.intake.notes import _column, _decoded, _records, _split
from adminer.intake.notes_edit import _SEPARATORS, _is_plain, _record
from adminer.store.readings import write_whole

Cells = Mapping[str, str]  # by column name; empty ones left out


@dataclass(frozen=True, slots=True)
class TableRow:
    """Hold one row and its place below the head, counted from 0."""

    place: int
    cells: Cells


@dataclass(slots=True)
class CsvText:
    """Hold a CSV text taken apart as far as it takes to change single rows."""

    head: str  # as written
    header: list[str]  # as column names
    separator: str
    records: list[str]  # the rows below the head, as written
    plain: bool  # UTF-8 without a mark at its head; others are written with one, for the spreadsheet

    def cells(self, record: str) -> Cells | None:
        """Return the filled cells of a row; None where they are more than the head names, or cannot be told apart."""
        try:
            cells = _split(record, self.separator)
        except csv.Error:
            return None
        if any(cell.strip() for cell in cells[len(self.header) :]):
            return None
        return {name: cell for name, cell in zip(self.header, cells, strict=False) if cell.strip()}

    def add_columns(self, names: Sequence[str]) -> None:
        """Add the columns that the head does not name."""
        missing = [name for name in names if name not in self.header]
        if missing:
            self.head = _record([*_split(self.head, self.separator), *missing], self.separator)
            self.header += missing

    def record(self, cells: Cells) -> str:
        """Return the text of a row."""
        return _record([cells.get(name, "") for name in self.header], self.separator)

    def save(self, path: Path, what: str) -> None:
        """Write the text in one step; `what` is named where the disk refuses (MachineError)."""
        text = "\n".join([self.head, *self.records]) + "\n"
        try:
            write_whole(path, text.encode("utf-8" if self.plain else "utf-8-sig"))
        except OSError as error:
            raise MachineError(
                f"{what} were not saved", file=str(path), why=error.strerror, remedy="free space or make it writable"
            ) from error


def open_csv(path: Path, columns: Sequence[str]) -> CsvText:
    """Return a CSV file taken apart; a missing or empty one has the columns given and no rows.

    Raises FolderError where it is no text.
    """
    content = path.read_bytes() if path.is_file() else b""
    text = _decoded(content, path.name)
    records = [record for _, record in _records(text)] or [",".join(columns)]
    separator = max(_SEPARATORS, key=records[0].count)
    header = [_column(cell) for cell in _split(records[0], separator)]
    return CsvText(records[0], header, separator, records[1:], _is_plain(content))


def table_rows(path: Path, columns: Sequence[str]) -> tuple[TableRow, ...]:
    """Return the rows of a table with their places; empty ones and those that cannot be told apart are left out.

    Raises FolderError where it is no text.
    """
    table = open_csv(path, columns)
    found = ((place, table.cells(record)) for place, record in enumerate(table.records))
    return tuple(TableRow(place, cells) for place, cells in found if cells)


def put_row(path: Path, columns: Sequence[str], place: int, old: Cells | None, new: Cells | None) -> int:
    """Put a row in the place of another and return where it stands; `old` None adds one, `new` None takes it out.

    The old row is looked for at its place, then near it, for others may have been added or taken out meanwhile.
    Raises FolderError where no such row is left, MachineError where the disk refuses.
    """
    table = open_csv(path, columns)
    if new:
        table.add_columns([*new])
    if old is None:
        place = min(max(place, 0), len(table.records))
        table.records.insert(place, table.record(new or {}))
    else:
        places = [n for n, record in enumerate(table.records) if table.cells(record) == old]
        if not places:
            raise FolderError(
                "has no such row any more", file=path.name, remedy="look at it once more, or change it in a spreadsheet"
            )
        place = min(places, key=lambda n: abs(n - place))
        table.records[place : place + 1] = [table.record(new)] if new else []
    table.save(path, f"the rows of {path.name}")
    return place

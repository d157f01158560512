"""Read notes.csv as spreadsheets write it: any usual encoding and separator, broken rows reported and left out."""

from __future__ import annotations

import csv
import re
import unicodedata
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from adminer.dating.edtf import bounds_of
from adminer.errors import FolderError
from adminer.records import Note

COLUMNS: Final = (
    "file",
    "publication",
    "published",
    "city",
    "state",
    "page",
    "found_in",
    "rights",
    "remark",
    "recipe",
    "continues",
)
_SEPARATORS: Final = (",", ";", "\t", "|")
_MOST_LINES: Final = 30  # of one remark; a quotation mark left open would swallow the rest of the file
_ISO_DAY: Final = re.compile(r"^(\d{4})-(\d{2})-(\d{2})[T ].*$")


@dataclass(frozen=True, slots=True)
class NotesResult:
    """Hold the notes that could be read, in file order, and a sentence for each that could not."""

    notes: tuple[Note, ...]
    problems: tuple[str, ...]


def read_notes(path: Path) -> NotesResult:
    """Read notes.csv; a missing file is no notes, a broken row is a problem and the others stay.

    Raises FolderError where the file as a whole cannot be understood.
    """
    if not path.is_file():
        return NotesResult((), ())
    text = _decoded(path.read_bytes(), path.name)
    rows = _records(text)
    first = next(rows, None)
    if first is None:
        return NotesResult((), ())
    separator = max(_SEPARATORS, key=first[1].count)
    header = [_column(cell) for cell in _split(first[1], separator)]
    if "file" not in header:
        raise FolderError(
            "has no column 'file'",
            file=path.name,
            why=f"its first row reads {first[1].strip()[:80]!r}",
            remedy=f"write the column names in the first row: {', '.join(COLUMNS)}",
        )
    notes: list[Note] = []
    problems = [
        f"{path.name}, column '{name}': unknown and left out; known are {', '.join(COLUMNS)}."
        for name in header
        if name and name not in COLUMNS
    ]
    for number, record in rows:
        if not record.strip(f' \r\n{separator}"'):
            continue
        try:
            note, doubt = _note(header, _split(record, separator))
        except (ValueError, csv.Error) as fault:
            problems.append(f"{path.name}, line {number}: {fault}; this row is left out, the others are used.")
            continue
        notes.append(note)
        problems += [f"{path.name}, line {number} ({note.file}): {doubt}"] if doubt else []
    return NotesResult(tuple(notes), tuple(problems))


def same_name(name: str) -> str:
    """Return a file name in the one spelling in which names are compared: forward slashes, composed letters."""
    name = unicodedata.normalize("NFC", name.strip().replace("\\", "/"))
    return name.removeprefix("./").removeprefix("scans/")


def _note(header: list[str], cells: list[str]) -> tuple[Note, str | None]:
    if any(cell.strip() for cell in cells[len(header) :]):
        raise ValueError(
            f"{len(cells)} cells under {len(header)} column names (a separator inside a cell needs quotation marks)"
        )
    values = {
        name: " ".join(cell.split())
        for name, cell in zip(header, cells, strict=False)
        if name in COLUMNS and cell.strip()
    }
    if "file" not in values:
        raise ValueError("the cell 'file' is empty")
    if "\x00" in "".join(values.values()):
        raise ValueError("it holds a zero byte, so it is damaged")
    doubt = None
    if "published" in values:
        values["published"] = _ISO_DAY.sub(r"\1-\2-\3", values["published"])
        try:
            bounds_of(values["published"])
        except FolderError:
            doubt = (
                f"'{values.pop('published')}' is no date in EDTF, so the date is left out; "
                "write 1952-03-14, 1952-03, 1952, 1952? or 1950/1955."
            )
    values["file"] = same_name(values["file"])
    if "continues" in values:
        values["continues"] = same_name(values["continues"])
    return Note(**values), doubt


def _column(cell: str) -> str:
    return re.sub(r"[\s\-]+", "_", cell.strip().strip("\ufeff").lower())


def _split(record: str, separator: str) -> list[str]:
    return next(csv.reader([record], delimiter=separator, strict=True), [])


def _records(text: str) -> Iterator[tuple[int, str]]:
    """Cut the text into rows, joining lines while a quotation mark is open; one never closed spoils one line."""
    lines = text.replace("\r\n", "\n").replace("\r", "\n").split("\n")
    at = 0
    while at < len(lines):
        if not lines[at].strip():
            at += 1
            continue
        end = at + 1
        while _open_mark(lines[at:end]) and end < min(len(lines), at + _MOST_LINES):
            end += 1
        if _open_mark(lines[at:end]):
            end = at + 1
        yield at + 1, "\n".join(lines[at:end])
        at = end


def _open_mark(lines: list[str]) -> bool:
    """Say whether a quotation mark is still open after these lines."""
    return sum(line.count('"') for line in lines) % 2 == 1


def _decoded(content: bytes, name: str) -> str:
    if content.startswith((b"\xff\xfe", b"\xfe\xff")):
        encodings: tuple[str, ...] = ("utf-16",)
    elif content[1:2] == b"\x00" and content[3:4] == b"\x00":
        encodings = ("utf-16-le",)
    elif content[:1] == b"\x00" and content[2:3] == b"\x00":
        encodings = ("utf-16-be",)
    else:
        encodings = ("utf-8-sig", "cp1252")
    for encoding in encodings:
        try:
            return content.decode(encoding)
        except UnicodeDecodeError:
            continue
    raise FolderError(
        "is no text that can be read", file=name, remedy="save it from the spreadsheet as 'CSV UTF-8' and try again"
    )

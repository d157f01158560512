"""The scans of a folder with their notes, for the page where papers and dates are filled in."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from adminer.dating.edtf import bounds_of
from adminer.desk.desk import Desk
from adminer.desk.forms import FormError
from adminer.desk.shelf import Row
from adminer.errors import FolderError
from adminer.intake.notes import read_notes, same_name

FIELDS: Final = (
    ("publication", "Paper or magazine"),
    ("published", "Published (1954-01-07, Jan 7, 1954, 1954?)"),
    ("city", "Town"),
    ("state", "State"),
    ("page", "Page"),
    ("found_in", "Found in"),
    ("rights", "Rights"),
    ("remark", "Remark"),
)
_READ: Final = """
    SELECT file, clipping_id, leaf FROM clippings SEMI JOIN (SELECT unnest(?) AS file) USING (file) ORDER BY file, leaf
"""
_UNREAD: Final = "SELECT file, reason, remedy FROM unread SEMI JOIN (SELECT unnest(?) AS file) USING (file)"


@dataclass(frozen=True, slots=True)
class ScanRow:
    """Hold one file of scans/ with its note and what became of it."""

    file: str
    note: dict[str, str]
    clippings: tuple[Row, ...]
    reason: str | None  # why it could not be read


def scan_rows(desk: Desk, files: Sequence[str]) -> tuple[list[ScanRow], tuple[str, ...]]:
    """Return these files of scans/ with what is known of them, and what is wrong with notes.csv in sentences."""
    result = read_notes(desk.folder.notes)
    notes = {same_name(note.file): note for note in result.notes}
    read: dict[str, list[Row]] = {}
    reasons: dict[str, str] = {}
    if desk.shelf.exists and files:
        for row in desk.shelf.rows(_READ, [list(files)]):
            read.setdefault(row["file"], []).append(row)
        for row in desk.shelf.rows(_UNREAD, [list(files)]):
            reasons[row["file"]] = f"{row['reason']}. {row['remedy'] or ''}"
    rows = []
    for file in files:
        note = notes.get(same_name(file))
        values = {name: getattr(note, name) or "" for name, _ in FIELDS} if note else {}
        rows.append(ScanRow(file, values, tuple(read.get(file, ())), reasons.get(file)))
    return rows, result.problems


def check_values(values: dict[str, str]) -> None:
    """Refuse a date that is none.

    Raises FormError.
    """
    if values.get("published"):
        try:
            bounds_of(values["published"])
        except FolderError as error:
            raise FormError(
                f"“{values['published']}” is no date; write 1954-01-07, Jan 7, 1954, 1954-01, 1954, about 1954, or "
                "1950 to 1955"
            ) from error

"""The tables a person keeps by hand, of which the desk writes single rows, and how an act on one is turned back."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import Final

from adminer.dating import searches
from adminer.desk.table_edit import put_row
from adminer.names import objects
from adminer.store.journal import Act


@dataclass(frozen=True, slots=True)
class RowFile:
    """Hold the name of a table's file and its columns, in the order in which a new file gets them."""

    file: str
    columns: tuple[str, ...]


ROW_FILES: Final = {  # by the act of the journal
    "search": RowFile(searches.FILE_NAME, searches.COLUMNS),
    "object": RowFile(objects.FILE_NAME, objects.COLUMNS),
}


def turn_row(folder: Path, act: Act, *, back: bool) -> None:
    """Take the change of a row back, or bring it back.

    Raises FolderError where the row has changed since, MachineError where the disk refuses.
    """
    where = ROW_FILES[act.act]
    here, there = (act.new, act.old) if back else (act.old, act.new)
    put_row(folder / where.file, where.columns, int(act.seen.get("place", 0)), here or None, there or None)

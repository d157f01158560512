"""What a clippings folder holds, in sentences, without reading a scan."""

from __future__ import annotations

from pathlib import Path

import duckdb

from adminer.engine.built import changed_scans, changed_texts
from adminer.engine.folder import ClippingsFolder, list_scans, open_folder
from adminer.intake.notes import read_notes, same_name
from adminer.store.queries import open_readonly

_TABLES = ("clippings", "adverts", "offers", "prices", "sightings", "corrections")


def folder_status(root: Path) -> list[str]:
    """Describe a folder: counts, unread pages with reasons, notes without files, what changed since it was read.

    Raises FolderError where it is no clippings folder, QueryError where its database cannot be opened.
    """
    folder = open_folder(root)
    files = list_scans(folder)
    notes = read_notes(folder.notes)
    lines = [f"{folder.settings.title}: {len(files)} files in scans/, {len(notes.notes)} notes."]
    lines += [f"  {problem}" for problem in notes.problems]
    known = {same_name(file).casefold() for file in files}
    lines += [
        f"  notes.csv: there is no file '{note.file}' in scans/."
        for note in notes.notes
        if note.file.casefold() not in known
    ]
    if not folder.database.is_file():
        return [*lines, f"Nothing was read yet; run: adminer digitise {root}"]
    with open_readonly(folder.database) as connection:
        counts = {table: int(connection.table(table).count("*").fetchall()[0][0]) for table in _TABLES}
        lines.append("The database has " + ", ".join(f"{count} {table}" for table, count in counts.items()) + ".")
        lines += _unread(connection)
        lines += _lost_corrections(connection)
    return [*lines, *_changes(folder, files)]


def _unread(connection: duckdb.DuckDBPyConnection) -> list[str]:
    rows = connection.execute("SELECT file, leaf, reason, remedy FROM unread ORDER BY file, leaf").fetchall()
    if not rows:
        return ["Every page could be read."]
    lines = [f"{len(rows)} pages could not be read:"]
    for file, leaf, reason, remedy in rows:
        name = file if leaf == 1 else f"{file} (page {leaf})"
        lines.append(f"  {name}: {reason}." + (f" {remedy[0].upper()}{remedy[1:]}." if remedy else ""))
    return lines


def _lost_corrections(connection: duckdb.DuckDBPyConnection) -> list[str]:
    rows = connection.execute(
        "SELECT act_no, who, act, clipping_id FROM corrections WHERE NOT found ORDER BY act_no"
    ).fetchall()
    if not rows:
        return []
    return [
        f"{len(rows)} corrections find no offer any more; they are kept in journal.jsonl:",
        *(f"  no. {number}, {who}: {act} on clipping {clipping}" for number, who, act, clipping in rows),
    ]


def _changes(folder: ClippingsFolder, files: tuple[str, ...]) -> list[str]:
    changed, newer = changed_texts(folder), changed_scans(folder, files)
    lines = [f"Changed since the last run: {name}" for name in changed]
    if newer:
        lines.append(f"{len(newer)} scans are new or changed since the last run: {', '.join(newer[:10])}")
    return [*lines, f"Run: adminer digitise {folder.root}"] if lines else ["Nothing changed since the last run."]

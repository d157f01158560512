"""The second half of a run: parsed pages, a person's corrections and the authority files to one database."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

import duckdb

from adminer.engine.folder import ClippingsFolder
from adminer.engine.parse_ahead import parse_ahead
from adminer.engine.parse_pages import ReadPage, Unparsed, parsed_pages
from adminer.engine.progress import Watcher
from adminer.engine.sources import Source
from adminer.engine.version import PARSING_ROOMS, folder_digest, rooms_digest, text_digest
from adminer.intake.identity import clipping_id_of
from adminer.names.authority import load_authorities
from adminer.names.objects import read_objects
from adminer.parsing import parse_page
from adminer.store.authority_rows import authority_rows, object_rows
from adminer.store.correction_rows import CorrectionRow, correction_table_row, same_advert_rows
from adminer.store.dating_step import dating_step
from adminer.store.journal import check_journal
from adminer.store.load import DatabaseExtras, LoadedCounts, build_database, insert_rows
from adminer.store.overlay import lay_over
from adminer.store.rows import Row


def assemble(
    folder: ClippingsFolder,
    sources: Iterable[Source],
    pages: Sequence[ReadPage],
    unread: Sequence[Row],
    *,
    workers: int | None,
    watch: Watcher,
) -> tuple[LoadedCounts, tuple[str, ...]]:
    """Parse the pages that were read and build the database; returns its counts and faults in sentences.

    Raises FolderError where an authority file cannot be understood, OSError where the disk refuses.
    """
    authorities = load_authorities(folder.names)
    version = text_digest(rooms_digest(PARSING_ROOMS), folder_digest(folder.names))
    parse_ahead(pages, version=version, names=folder.names, readings=folder.readings, workers=workers, watch=watch)
    problems: list[Unparsed] = []
    parsed = parsed_pages(pages, authorities, parse_page, version=version, problems=problems, folder=folder.readings)
    journal = check_journal(folder.journal)
    extras = DatabaseExtras(
        {
            "unread": unread,
            "said_same": same_advert_rows(journal.acts),
            **authority_rows(authorities),
            **object_rows(read_objects(folder.root / "objects.csv").objects, authorities),
        },
        {file: clipping_id_of(source.sha256, 1) for source in sources for file in source.files},
    )
    corrections: list[CorrectionRow] = []

    def keep_corrections(connection: duckdb.DuckDBPyConnection) -> None:
        # the rows are known only when the last page has passed through the overlay
        insert_rows(connection, "corrections", [correction_table_row(row) for row in corrections])

    doubts: list[str] = []
    settings = folder.settings
    date_adverts = dating_step(folder.root, authorities, region=settings.region, years=settings.years, problems=doubts)
    counts = build_database(
        folder.database,
        lay_over(parsed, journal.acts, corrections),
        extras,
        unfinished=folder.unfinished_database,
        after=(keep_corrections, date_adverts),
    )
    lost = sum(not row.found for row in corrections)
    faults = [
        f"{fault.file}, page {fault.leaf}: its words were read but no offers could be made of them "
        f"({fault.reason}); please report it."
        for fault in problems
    ]
    faults += journal.problems
    faults += doubts
    if lost:
        faults.append(f"journal.jsonl: {lost} corrections find no place any more; adminer status lists them.")
    return counts, tuple(faults)

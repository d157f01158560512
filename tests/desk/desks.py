"""A desk over a small folder made in the test: pages from records, no reader, no network."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any

import cv2
import numpy as np
from starlette.testclient import TestClient

from adminer.desk.app import make_app
from adminer.desk.desk import Desk, Progress, ReadBox
from adminer.desk.guard import Door
from adminer.desk.shelf import Shelf
from adminer.engine.folder import create_folder
from adminer.names.authority import load_authorities
from adminer.records import Box, ParsedPage
from adminer.store.correction_rows import CorrectionRow, correction_table_row, same_advert_rows
from adminer.store.journal import Journal, read_journal
from adminer.store.load import DatabaseExtras, build_database
from adminer.store.overlay import overlay

PORT = 8737
TOKEN = "token-of-the-tests"  # noqa: S105 - no secret: the tests make it up
HERE = f"http://127.0.0.1:{PORT}"


@dataclass
class StillReader:
    """Count what it is asked for and read nothing."""

    told: Progress = field(default_factory=Progress)
    starts: int = 0
    pauses: int = 0

    def start(self) -> None:
        self.starts += 1

    def soon(self) -> None:
        pass

    def pause(self) -> None:
        self.pauses += 1

    def progress(self) -> Progress:
        return self.told

    def close(self) -> None:
        pass


@dataclass
class SmallDesk:
    """Hold a desk with the pages it was made of."""

    desk: Desk
    pages: dict[str, ParsedPage]

    @property
    def reader(self) -> StillReader:
        assert isinstance(self.desk.reader, StillReader)
        return self.desk.reader

    def client(self, *, let_in: bool = True, follow: bool = True) -> TestClient:
        """Return a browser of this desk, let in by the token where asked."""
        client = TestClient(make_app(self.desk), base_url=HERE, follow_redirects=follow)
        client.headers["sec-fetch-site"] = "same-origin"
        if let_in:
            client.cookies.set(self.desk.door.cookie, TOKEN)
        return client

    def rebuild(self) -> None:
        """Build the database from the pages and the journal, as a digitising run does."""
        build(self.desk.folder.database, tuple(self.pages.values()), self.desk.folder.journal)


def small_desk(root: Path, pages: Sequence[ParsedPage]) -> SmallDesk:
    """Make a folder with one drawn scan for each page, and open its desk."""
    folder = create_folder(root / "clippings", "Small file")
    named = {page.clipping.clipping_id: page for page in pages}
    for page in pages:
        sheet = np.full((page.clipping.height, page.clipping.width), 235, np.uint8)
        for word in page.reading.words:
            cv2.putText(sheet, word.text[:8], (word.box.x, word.box.bottom), cv2.FONT_HERSHEY_SIMPLEX, 0.7, 20, 2)
        cv2.imwrite(str(folder.scans / page.clipping.file), sheet)
    build(folder.database, tuple(pages), folder.journal)
    desk = Desk(
        folder=folder,
        journal=Journal(folder.journal),
        shelf=Shelf(folder.database),
        reader=StillReader(),
        door=Door(frozenset({f"127.0.0.1:{PORT}", f"localhost:{PORT}"}), TOKEN, PORT),
        base_page=named.get,
        read_box=_read_nothing,
        authorities=lambda: load_authorities(folder.names),
        who="tester",
    )
    return SmallDesk(desk, named)


def build(database: Path, pages: Sequence[ParsedPage], journal: Path) -> None:
    laid, rows = overlay(pages, read_journal(journal))
    tables: dict[str, list[dict[str, Any]]] = {
        "corrections": [correction_table_row(row) for row in _sorted(rows)],
        "said_same": same_advert_rows(read_journal(journal)),
    }
    build_database(database, laid, DatabaseExtras(tables))


def _sorted(rows: Sequence[CorrectionRow]) -> list[CorrectionRow]:
    return sorted(rows, key=lambda row: row.act_no)


def _read_nothing(pixels: Any, box: Box, clipping_id: str) -> ReadBox:
    return ReadBox("soup plate 29¢", ())


def renamed(page: ParsedPage, file: str) -> ParsedPage:
    """Return a page whose scan has another name."""
    return replace(page, clipping=replace(page.clipping, file=file))


def mark_of(client: TestClient, fact: str) -> str:
    """Return the mark that a form about an advert or offer is posted with."""
    clipping = fact.partition("-a")[0]
    card = client.get(f"/check/{clipping}").text.split(f'id="f-{fact}"')[1]
    found = re.search(r'name="mark" value="(\w+)"', card)
    assert found is not None
    return found[1]

"""Open the desk of a folder: lock its journal, tie the reading, parsing and names together, make a token."""

from __future__ import annotations

import secrets
import threading
from collections import OrderedDict
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any, Final

from adminer.desk.background import Background
from adminer.desk.desk import Desk, ReadBox
from adminer.desk.guard import Door
from adminer.desk.shelf import Shelf
from adminer.engine.folder import ClippingsFolder, open_folder
from adminer.engine.parse_pages import ReadPage, Unparsed, parsed_pages
from adminer.engine.version import PARSING_ROOMS, folder_digest, rooms_digest, text_digest
from adminer.intake.notes import read_notes, same_name
from adminer.names.authority import Authorities, load_authorities
from adminer.records import Advert, Box, Note, Offer, ParsedPage
from adminer.store.journal import FILE_NAME, Journal
from adminer.store.readings import older_reading

_KEPT_PAGES: Final = 16


def open_desk(root: Path, *, port: int, hosts: tuple[str, ...] = (), who: str = "reader") -> Desk:
    """Open the desk of a clippings folder; `hosts` are names beside the loopback ones under which it answers.

    Raises FolderError where it is no clippings folder or another desk has it open, MachineError where it cannot
    be written.
    """
    folder = open_folder(root)
    folder.scans.mkdir(exist_ok=True)
    names = NamesReader(folder)
    pages = PageSource(folder, Shelf(folder.database), names)
    known = (*hosts, "127.0.0.1", "localhost", "[::1]")
    return Desk(
        folder=folder,
        journal=Journal(folder.root / FILE_NAME),
        shelf=pages.shelf,
        reader=Background(folder.root, folder.settings.workers),
        door=Door(frozenset(f"{host}:{port}" for host in known), secrets.token_urlsafe(24), port),
        base_page=pages.page,
        read_box=_BoxReader(names),
        authorities=names.load,
        who=who,
    )


@dataclass(slots=True)
class NamesReader:
    """Load the authority files of a folder, again when they have changed."""

    folder: ClippingsFolder
    _kept: tuple[str, Authorities] | None = None

    def load(self) -> Authorities:
        """Return the entries as they stand now. Raises FolderError."""
        return self._current()[1]

    def digest(self) -> str:
        """Return what changes when any authority file changes."""
        return self._current()[0]

    def _current(self) -> tuple[str, Authorities]:
        digest = folder_digest(self.folder.names)
        if self._kept is None or self._kept[0] != digest:
            self._kept = (digest, load_authorities(self.folder.names))
        return self._kept


@dataclass(slots=True)
class PageSource:
    """Give parsed pages by clipping id from what the reading kept, parsed anew where names or notes have changed."""

    folder: ClippingsFolder
    shelf: Shelf
    names: NamesReader
    _kept: OrderedDict[str, tuple[Any, ParsedPage]] = field(default_factory=OrderedDict)
    _lock: threading.Lock = field(default_factory=threading.Lock)

    def page(self, clipping_id: str) -> ParsedPage | None:
        """Return one page as read and parsed, before the journal's word; None where it was not read."""
        rows = (
            self.shelf.rows("SELECT file, sha256, leaf FROM clippings WHERE clipping_id = ?", [clipping_id])
            if self.shelf.exists
            else []
        )
        reading = older_reading(self.folder.readings, clipping_id) if rows else None
        if reading is None:
            return None
        notes = self._notes(clipping_id)
        key = (reading, reading.stat().st_mtime_ns, self.names.digest(), notes)
        with self._lock:
            kept = self._kept.get(clipping_id)
            if kept is None or kept[0] != key:
                page = self._parse(ReadPage(rows[0]["file"], rows[0]["sha256"], rows[0]["leaf"], notes, reading))
                if page is None:
                    return None
                kept = self._kept[clipping_id] = (key, page)
                while len(self._kept) > _KEPT_PAGES:
                    self._kept.popitem(last=False)
            self._kept.move_to_end(clipping_id)
            return kept[1]

    def _parse(self, page: ReadPage) -> ParsedPage | None:
        from adminer.parsing import parse_page  # noqa: PLC0415 - its language pipeline is slow to load

        version = text_digest(rooms_digest(PARSING_ROOMS), self.names.digest())
        problems: list[Unparsed] = []
        parsed = parsed_pages(
            [page], self.names.load(), parse_page, version=version, problems=problems, folder=self.folder.readings
        )
        return next(iter(parsed), None)

    def _notes(self, clipping_id: str) -> tuple[Note, ...]:
        rows = self.shelf.rows("SELECT file FROM notes WHERE clipping_id = ?", [clipping_id])
        files = {same_name(row["file"]) for row in rows}
        files |= {
            same_name(row["file"])
            for row in self.shelf.rows("SELECT file FROM clippings WHERE clipping_id = ?", [clipping_id])
        }
        return tuple(note for note in read_notes(self.folder.notes).notes if same_name(note.file) in files)


@dataclass(frozen=True, slots=True)
class _BoxReader:
    """Read and parse a region of a scan on the spot."""

    names: NamesReader

    def __call__(self, pixels: Any, box: Box, clipping_id: str) -> ReadBox:
        from adminer.layout.recipe import default_recipes, guess_recipe  # noqa: PLC0415 - loads the models
        from adminer.parsing import parse_page  # noqa: PLC0415
        from adminer.reading import read_page  # noqa: PLC0415

        crop = pixels[box.y : box.bottom, box.x : box.right]
        recipe, _ = guess_recipe(crop)
        reading = read_page(crop, default_recipes()[recipe], clipping_id, None)
        adverts = parse_page(reading, self.names.load(), ())
        words = " ".join(word.text for word in reading.words)
        return ReadBox(words, tuple(_moved(advert, box.x, box.y) for advert in adverts))


def _moved(advert: Advert, x: int, y: int) -> Advert:
    """Return an advert read in a crop with its boxes in pixels of the whole scan."""

    def to_scan(box: Box) -> Box:
        return Box(box.x + x, box.y + y, box.w, box.h)

    def offer_to_scan(offer: Offer) -> Offer:
        prices = tuple(replace(price, box=to_scan(price.box)) for price in offer.prices)
        line = replace(offer.line, box=to_scan(offer.line.box)) if offer.line else None
        return replace(offer, box=to_scan(offer.box), prices=prices, line=line)

    return replace(advert, box=to_scan(advert.box), offers=tuple(offer_to_scan(offer) for offer in advert.offers))

"""The desk of one folder: its journal, its database, its pictures, and the one place where acts are written."""

from __future__ import annotations

import hashlib
import json
import threading
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, Final, Protocol

from adminer.desk.evidence_file import add_entry
from adminer.desk.guard import Door
from adminer.desk.pictures import Pictures
from adminer.desk.row_files import ROW_FILES
from adminer.desk.shelf import Row, Shelf
from adminer.desk.table_edit import Cells, put_row
from adminer.desk.turning import turn_act
from adminer.engine.folder import ClippingsFolder
from adminer.errors import FolderError, MachineError, ScanError
from adminer.intake.notes_edit import change_notes
from adminer.intake.scans import open_leaf
from adminer.names.authority import Authorities
from adminer.records import Advert, Box, Offer, ParsedPage
from adminer.store.facts import Fields, advert_fields, changed_fields, offer_fields
from adminer.store.journal import Act, Journal, ids_taken_back
from adminer.store.overlay import Overlaid, overlay_page

Pixels = Any
NO_CHANGE_SINCE: Final = "this fact was read or changed anew meanwhile; look at it once more"


class StaleError(Exception):
    """The page that asked for an act showed something else than what stands there now."""


@dataclass(frozen=True, slots=True)
class Progress:
    """Hold how far the background reading is."""

    state: str = "idle"  # idle, reading, building, pausing, paused, done, failed
    done: int = 0
    total: int = 0
    current: str = ""
    unread: tuple[tuple[str, str], ...] = ()  # file, reason
    words: str = ""  # one sentence for people


@dataclass(frozen=True, slots=True)
class ReadBox:
    """Hold what was read in a region of a scan; boxes are in pixels of the whole scan."""

    words: str
    adverts: tuple[Advert, ...]


class BackgroundReader(Protocol):
    """Read in the background what is new, and bring the database up to date."""

    def start(self) -> None:
        """Begin, or go on after a pause; where a run goes on already, another follows it."""

    def soon(self) -> None:
        """Begin in a moment, unless asked again before or paused by a person."""

    def pause(self) -> None:
        """Stop after the pages in hand."""

    def progress(self) -> Progress:
        """Say how far it is."""

    def close(self) -> None:
        """Stop and wait for the end."""


@dataclass(slots=True)
class Desk:
    """Hold all that the pages of the desk need; acts are written one at a time."""

    folder: ClippingsFolder
    journal: Journal
    shelf: Shelf
    reader: BackgroundReader
    door: Door
    base_page: Callable[[str], ParsedPage | None]  # what was read and parsed, before the journal's word
    read_box: Callable[[Pixels, Box, str], ReadBox]  # a region of a scan, read on the spot
    authorities: Callable[[], Authorities]
    who: str = "reader"
    said: str = ""  # what the next page says about the last act
    edits_seen: dict[Path, int] = field(default_factory=dict)  # files edited by hand, as the last build met them
    pictures: Pictures = field(init=False)
    # held again by the names a correction teaches
    _writing: threading.RLock = field(default_factory=threading.RLock)

    def __post_init__(self) -> None:
        """Bind the pictures to the scans of the folder."""
        self.pictures = Pictures(self._decode, self.folder.readings / "pictures")

    def page(self, clipping_id: str) -> Overlaid:
        """Return one clipping as it stands now: the reading with every act laid over it.

        Raises ScanError where it was not read.
        """
        base = self.base_page(clipping_id)
        if base is None:
            raise ScanError(
                "was not read yet, or its reading was deleted",
                file=clipping_id,
                remedy="start the reading on the page In; what was confirmed before comes back with it",
            )
        return overlay_page(base, self.journal.acts)

    def offer_act(
        self, clipping_id: str, offer_id: str, act: str, mark: str, said: Callable[[Fields], Fields] | None = None
    ) -> Act | None:
        """Confirm, reject or correct one offer; `said` makes of its fields what a person says of them.

        Only fields that differ are kept, and nothing is written where none does. Raises StaleError where the page
        showed other values than stand there now, MachineError where the disk refuses.
        """
        with self._writing:
            laid = self.page(clipping_id)
            offer = _find_offer(laid, offer_id)
            seen = offer_fields(offer)
            if mark != mark_of(offer):
                raise StaleError(NO_CHANGE_SINCE)
            fields = _fields_said(act, seen, said)
            if not fields:
                return None
            old = {name: seen.get(name) for name in fields} if act == "correct" else {"status": offer.status}
            return self._write(
                act, "offer", clipping_id, box=offer.box, old=old, new=fields, seen=seen,
                thread=laid.threads.get(offer_id),
            )  # fmt: skip

    def advert_act(
        self, clipping_id: str, advert_id: str, act: str, mark: str, said: Callable[[Fields], Fields] | None = None
    ) -> Act | None:
        """Confirm, correct, split or reject one advert; does and raises as `offer_act`."""
        with self._writing:
            laid = self.page(clipping_id)
            advert = _find_advert(laid, advert_id)
            seen = advert_fields(advert)
            if mark != mark_of(advert):
                raise StaleError(NO_CHANGE_SINCE)
            fields = _fields_said(act, seen, said)
            if not fields:
                return None
            old = {name: seen.get(name) for name in fields} if act == "correct" else {"box": seen["box"]}
            return self._write(
                act, "advert", clipping_id, box=advert.box, old=old, new=fields, seen=seen,
                thread=laid.threads.get(advert_id),
            )  # fmt: skip

    def add(self, clipping_id: str, kind: str, fields: Fields) -> Act:
        """Write that a person found an offer or an advert the reading had missed; fields name its box."""
        with self._writing:
            self.page(clipping_id)
            box = Box(*fields["box"])
            return self._write("add", kind, clipping_id, box=box, new=fields, seen=fields)

    def tell(self, act: str, kind: str, clipping_id: str, old: Fields, new: Fields) -> Act:
        """Write an act that is about no region: a note, a name, a clipping that goes on elsewhere."""
        with self._writing:
            return self._write(act, kind, clipping_id, old=old, new=new)

    def undo(self, act_id: str) -> Act:
        """Take back one act.

        Raises FolderError where the journal knows no such act, StaleError where it was taken back already.
        """
        with self._writing:
            act = next((a for a in self.journal.acts if a.id == act_id), None)
            if act is None:
                raise FolderError("knows no such act", file=self.journal.path.name, remedy="look at the page Journal")
            if act.id in ids_taken_back(self.journal.acts):
                raise StaleError("this act was taken back already")
            turn_act(self.folder, self.journal.acts, act)
            undone = self.journal.undo(self.who, act)
            self.reader.soon()
            return undone

    def clipping(self, clipping_id: str) -> Row:
        """Return the row of a clipping.

        Raises ScanError where the database has none.
        """
        rows = (
            self.shelf.rows("SELECT * FROM clippings WHERE clipping_id = ?", [clipping_id]) if self.shelf.exists else []
        )
        if not rows:
            raise ScanError(
                "is no clipping of this folder", file=clipping_id, remedy="start the reading on the page In"
            )
        return rows[0]

    def _write(self, act: str, kind: str, clipping_id: str, **values: Any) -> Act:
        written = self.journal.append(self.who, act, kind, clipping_id, **values)
        self.reader.soon()
        return written

    def set_notes(self, files: Sequence[str], values: Mapping[str, str]) -> int:
        """Write the same values into the notes of several files and into the journal; returns how many changed.

        Raises MachineError where the disk refuses.
        """
        with self._writing:
            changes = change_notes(self.folder.notes, files, values)
            for change in changes:
                self.journal.append(
                    self.who,
                    "note",
                    "clipping",
                    "",
                    old={"file": change.file, **change.old},
                    new={"file": change.file, **change.new},
                )
            return len(changes)

    def put_row(self, act: str, place: int, old: Cells | None, new: Cells | None) -> Act:
        """Add, change or take out one row of a table kept by hand, and write it into the journal; see ROW_FILES.

        Raises FolderError where the row is no longer there, MachineError where the disk refuses; the table is then as
        it was.
        """
        with self._writing:
            where = ROW_FILES[act]
            path = self.folder.root / where.file
            place = put_row(path, where.columns, place, old, new)
            try:
                return self._write(act, act, "", old=dict(old or {}), new=dict(new or {}), seen={"place": place})
            except MachineError:
                put_row(path, where.columns, place, new, old)
                raise

    def add_evidence(self, clipping_id: str, table: str, values: Mapping[str, str]) -> Act:
        """Write evidence a person adds or strikes out into evidence.toml and into the journal.

        Raises FolderError where evidence.toml cannot be understood, MachineError where the disk refuses.
        """
        with self._writing:
            entry = add_entry(self.folder.root, table, values)
            return self._write("evidence", "clipping", clipping_id, new={"entry": entry, **values})

    def say(self, said: str) -> None:
        """Keep a sentence for the next page."""
        self.said = said

    def take_said(self) -> str:
        """Return the sentence kept for this page, once."""
        said, self.said = self.said, ""
        return said

    def _decode(self, clipping_id: str) -> Pixels:
        row = self.clipping(clipping_id)
        path = (self.folder.scans / row["file"]).resolve()
        if not path.is_relative_to(self.folder.scans.resolve()):
            raise ScanError("lies outside scans/", file=row["file"], remedy="copy it into scans/")
        return open_leaf(path, row["file"], row["leaf"], row["sha256"]).pixels


def mark_of(fact: Offer | Advert) -> str:
    """Return a short mark of all that a person can see of a fact; it changes with any of it."""
    fields = offer_fields(fact) if isinstance(fact, Offer) else advert_fields(fact)
    status = fact.status if isinstance(fact, Offer) else ""
    return hashlib.sha256(json.dumps([fields, status], sort_keys=True).encode()).hexdigest()[:12]


def _fields_said(act: str, seen: Fields, said: Callable[[Fields], Fields] | None) -> Fields:
    """Return the fields that an act writes: all that is confirmed, what a person changed, or that it is rejected."""
    if said is None:
        return seen if act == "confirm" else {"status": "rejected"}
    # the fields are made only now: a name that is new changes how the page is parsed
    return said(seen) if act == "confirm" else changed_fields(seen, said(seen))[1]


def _find_offer(laid: Overlaid, offer_id: str) -> Offer:
    for advert in laid.page.adverts:
        for offer in advert.offers:
            if offer.offer_id == offer_id:
                return offer
    raise StaleError(NO_CHANGE_SINCE)


def _find_advert(laid: Overlaid, advert_id: str) -> Advert:
    for advert in laid.page.adverts:
        if advert.advert_id == advert_id:
            return advert
    raise StaleError(NO_CHANGE_SINCE)

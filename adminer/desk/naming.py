"""Names at the desk: every edit of an authority file is an act of the journal and can be taken back."""

from __future__ import annotations

import json
from collections.abc import Callable
from typing import Any, Final, Literal, TypeVar

from adminer.desk.desk import Desk, StaleError
from adminer.desk.entry_form import entry_mark
from adminer.desk.text_change import change_between
from adminer.errors import FolderError
from adminer.names.authority import Entry, EntryKind, LineEntry, MakerEntry, RetailerEntry, load_authorities
from adminer.names.editing import accept_line, merge_into_line, reject_name, split_from_line
from adminer.names.entries import add_entry, change_entry, fields_of
from adminer.names.matching import fold_name
from adminer.names.proposals import REJECTED_FILE, NameSighting, Proposal, propose, read_rejected
from adminer.names.repairs import FILE_NAME as REPAIRS_FILE
from adminer.names.repairs import recurring
from adminer.records import Box
from adminer.store.journal import active
from adminer.store.readings import write_whole

_SOURCE: Final = "named at the desk"
_MOST: Final = 20_000
Result = TypeVar("Result")


def proposals_of(desk: Desk) -> tuple[Proposal, ...]:
    """Return the names found in adverts that the names of this file do not know, the surest first."""
    if not desk.shelf.exists:
        return ()
    rows = desk.shelf.rows(
        "SELECT advert_id, text, x, y, w, h, score, why, kind FROM proposed_names ORDER BY score DESC LIMIT ?", [_MOST]
    )
    sightings = [
        NameSighting(
            r["advert_id"], r["text"], Box(r["x"], r["y"], r["w"], r["h"]), r["score"], r["why"] or "", r["kind"]
        )
        for r in rows
    ]
    names = desk.authorities()
    # what was accepted since the snapshot is known now
    known = {fold_name(use) for line in names.lines for use in (line.name, *(each.name for each in line.names))}
    fresh = [sighting for sighting in sightings if fold_name(sighting.text) not in known]
    return propose(fresh, names, read_rejected(desk.folder.names))


def accept(desk: Desk, name: str, maker: str | None = None) -> str:
    """Make a name an entry of its own; returns its id."""
    folder = desk.folder.names
    return _edit(desk, "lines.toml", f"accepted {name}", lambda: accept_line(folder, name, maker=maker, source=_SOURCE))


def merge(desk: Desk, name: str, line_id: str) -> None:
    """Make a name one more name of an entry."""
    folder = desk.folder.names
    _edit(desk, "lines.toml", f"{name} is {line_id}", lambda: merge_into_line(folder, name, line_id, source=_SOURCE))


def split(desk: Desk, name: str, line_id: str) -> str:
    """Take a name away from an entry and make it an entry of its own; returns its id."""
    folder = desk.folder.names
    return _edit(desk, "lines.toml", f"{name} is not {line_id}", lambda: split_from_line(folder, line_id, name))


def reject(desk: Desk, name: str) -> None:
    """Note that a name is no line; it is not proposed again."""
    _edit(desk, REJECTED_FILE, f"{name} is no line", lambda: reject_name(desk.folder.names, name))


def learn_line(desk: Desk, name: str) -> str | None:
    """Return the id of a line a person named, making the entry where there is none; None where several go by it."""
    found = _goes_by(desk, name)
    if len(found) > 1:
        return None
    return found[0].id if found else accept(desk, name)


def learn_entry(desk: Desk, kind: Literal["makers", "retailers"], name: str) -> str | None:
    """Return the id of a maker or shop a person named, made where there is none; None where several go by it."""
    folded = name.casefold()
    entries: tuple[MakerEntry | RetailerEntry, ...] = getattr(desk.authorities(), kind)
    found = [e.id for e in entries if folded in {e.name.casefold(), *(other.casefold() for other in e.names)}]
    if found:
        return found[0] if len(found) == 1 else None
    return _edit(desk, f"{kind}.toml", f"accepted {name}", lambda: add_entry(desk.folder.names, kind, name))


def change(desk: Desk, kind: EntryKind, wanted: Entry, mark: str) -> tuple[str, ...]:
    """Write an entry as a person changed it; returns what was changed.

    Raises StaleError where the page showed another entry than stands there now, FolderError where its text refuses.
    """
    now = next((entry for entry in getattr(desk.authorities(), kind) if entry.id == wanted.id), None)
    if now is None or entry_mark(now) != mark:
        raise StaleError("this entry was changed meanwhile; look at it once more")
    old, new = fields_of(now), fields_of(wanted)
    differs = [name for name in {**old, **new} if old.get(name) != new.get(name)]
    told = "; ".join(_told(name, old.get(name), new.get(name)) for name in differs)
    return _edit(desk, f"{kind}.toml", f"{wanted.name}: {told}", lambda: change_entry(desk.folder.names, kind, wanted))


def learn_repairs(desk: Desk) -> tuple[str, ...]:
    """Write misreadings that persons put right on several clippings into the repair list; returns the new ones."""
    changes = [
        (act.clipping_id, str(act.old.get("item") or ""), str(act.new.get("item") or ""))
        for act in active(desk.journal.acts)
        if act.act == "correct" and act.kind == "offer" and "item" in act.new
    ]
    names = desk.authorities()
    words = {word for name in names.pieces.by_name for word in name.split()}
    found = {wrong: what for wrong, what in recurring(changes, words).items() if wrong not in names.repairs}
    if not found:
        return ()
    entries = [
        f"[[repair]]\nread = {json.dumps(wrong)}\nis = {json.dumps(right)}\nseen = {count}\n"
        for wrong, (right, count) in found.items()
    ]

    def write() -> None:
        path = desk.folder.names / REPAIRS_FILE
        text = path.read_text(encoding="utf-8-sig") if path.is_file() else ""
        write_whole(path, "\n".join([text.rstrip(), *entries] if text.strip() else entries).encode())

    told = tuple(f"“{wrong}” is “{right}”" for wrong, (right, _) in found.items())
    _edit(desk, REPAIRS_FILE, f"learned that {', '.join(told)}", write)
    return told


def _told(name: str, old: Any, new: Any) -> str:
    """Return one change of an entry in words, for the journal."""
    words = {"names": "its names", "relations": "its relations"}.get(name, name.replace("_", " "))
    if isinstance(old, tuple) or isinstance(new, tuple):
        return words
    return f"{words} {old or 'nothing'} → {new or 'nothing'}"


def _goes_by(desk: Desk, name: str) -> list[LineEntry]:
    folded = fold_name(name)
    return [
        line
        for line in desk.authorities().lines
        if folded in {fold_name(line.name), *(fold_name(use.name) for use in line.names)}
    ]


def _edit(desk: Desk, file: str, said: str, change: Callable[[], Result]) -> Result:
    """Change an authority file and write what changed into the journal; a file that would break stays as it was."""
    path = desk.folder.names / file
    before = path.read_text(encoding="utf-8-sig") if path.is_file() else ""
    result = change()
    try:
        load_authorities(desk.folder.names)
    except FolderError:
        write_whole(path, before.encode())
        raise
    after = path.read_text(encoding="utf-8-sig") if path.is_file() else ""
    if after != before:
        old, new = change_between(file, before, after)
        desk.tell("name", "name", "", old, {**new, "said": said})
    return result

"""What the answers do not know yet, acts and files edited by hand: say so, and have the database built anew at once."""

from __future__ import annotations

from datetime import UTC, datetime

from adminer.desk.desk import Desk

_BUSY = ("reading", "building", "pausing")


def newer_than_answers(desk: Desk) -> str:
    """Return what is newer than the snapshot, in a sentence, empty where nothing is; a new snapshot is then begun.

    An act from the time of building is followed by a build of its own, which the act itself asked for.
    """
    if not desk.shelf.exists:
        return ""
    built = desk.shelf.path.stat().st_mtime_ns
    moment = datetime.fromtimestamp(built / 1e9, UTC).strftime("%Y-%m-%dT%H:%M:%SZ")
    count = sum(act.at > moment for act in desk.journal.acts)
    edited = {path: path.stat().st_mtime_ns for path in desk.folder.files_by_hand if path.is_file()}
    edited = {path: time for path, time in edited.items() if time > built}
    state = desk.reader.progress().state
    # a file that was only touched leaves the database as it is: it is looked at once, not for ever
    unseen = edited != desk.edits_seen
    if not count and not (edited and (unseen or state in _BUSY)):
        return ""
    if state not in (*_BUSY, "paused"):
        desk.edits_seen = edited
        desk.reader.start()
    what = [f"{count} act{'' if count == 1 else 's'}"] if count else []
    what += sorted(path.relative_to(desk.folder.root).as_posix() for path in edited)
    verb = "is" if len(what) == 1 and count < 2 else "are"
    after = "paused; let the reading go on to bring it up to date" if state == "paused" else "being brought up to date"
    return f"Newer than this page {verb} {', '.join(what)}; the database is {after}."

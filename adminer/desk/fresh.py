"""Acts the answers do not know yet: say so, and have the database built anew at once."""

from __future__ import annotations

from datetime import UTC, datetime

from adminer.desk.desk import Desk


def newer_acts(desk: Desk) -> int:
    """Return how many acts came after the snapshot was put in place; where there are any, a new one is begun.

    An act from the time of building is followed by a build of its own, which the act itself asked for.
    """
    if not desk.shelf.exists:
        return 0
    built = datetime.fromtimestamp(desk.shelf.path.stat().st_mtime, UTC).strftime("%Y-%m-%dT%H:%M:%SZ")
    count = sum(act.at > built for act in desk.journal.acts)
    if count and desk.reader.progress().state not in ("reading", "building", "pausing", "paused"):
        desk.reader.start()
    return count

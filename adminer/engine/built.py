"""What a database was last built from, by content, so that a copied folder is not taken for a changed one."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from typing import Any, Final

from adminer.engine.folder import ClippingsFolder
from adminer.engine.version import files_digest
from adminer.intake.identity import digest_of
from adminer.store.readings import write_whole

_STATE: Final = "state.json"


def built_state(folder: ClippingsFolder) -> dict[str, Any]:
    """Return what the database was last built from; nothing where that is not known."""
    try:
        state = json.loads((folder.readings / _STATE).read_text(encoding="utf-8"))
    except (OSError, ValueError):
        return {}
    return state if isinstance(state, dict) else {}


def write_built_state(folder: ClippingsFolder, state: Mapping[str, object]) -> None:
    """Keep what the database was built from. Raises OSError where the disk refuses."""
    write_whole(folder.readings / _STATE, json.dumps(state, ensure_ascii=False).encode())


def digests_of_texts(folder: ClippingsFolder) -> dict[str, str]:
    """Return the digest of each file a person writes, and of the journal, by its name in the folder."""
    texts = [path for path in (*folder.files_by_hand, folder.journal) if path.is_file()]
    return {path.relative_to(folder.root).as_posix(): files_digest([path]) for path in texts}


def changed_texts(folder: ClippingsFolder) -> list[str]:
    """Return the files a person writes that are other than at the last build, new, or gone."""
    before, now = built_state(folder).get("texts"), digests_of_texts(folder)
    if not isinstance(before, dict):  # built by a version that kept no digests: the times have to do
        built = folder.database.stat().st_mtime
        return sorted(name for name in now if (folder.root / name).stat().st_mtime > built)
    return sorted(name for name in {*before, *now} if before.get(name) != now.get(name))


def changed_scans(folder: ClippingsFolder, files: Iterable[str]) -> list[str]:
    """Return the scans that are new or other than at the last build, in their order.

    Only files that are younger than the database, or not known to it, are opened.
    """
    built = folder.database.stat().st_mtime
    before = built_state(folder).get("scans")
    known = before if isinstance(before, dict) else {}

    def same(file: str) -> bool:
        path = folder.scans / file
        try:
            if path.stat().st_mtime <= built and (file in known or before is None):
                return True
            return known.get(file) == digest_of(path)
        except OSError:
            return False

    return [file for file in files if not same(file)]

"""What lies in scans/, by content: one source for each picture, however many files show it."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from adminer.engine.folder import ClippingsFolder, list_scans
from adminer.engine.pool import Pool
from adminer.engine.read_leaf import CountTask, count_task
from adminer.errors import machine_error
from adminer.intake.identity import digest_of
from adminer.intake.notes import same_name
from adminer.records import Note
from adminer.store.readings import write_whole


@dataclass(frozen=True, slots=True)
class Source:
    """Hold one picture of the folder: its content, the files that show it, and the notes about it."""

    sha256: str
    files: tuple[str, ...]  # the first gives its name to the clipping
    notes: tuple[Note, ...]
    leaves: int  # 0 where they could not be counted
    problem: str | None = None
    remedy: str | None = None


_Count = tuple[int, str | None, str | None]  # pages, why they could not be counted, what to do


@dataclass(frozen=True, slots=True)
class _Seen:
    size: int
    mtime_ns: int
    sha256: str


def find_sources(folder: ClippingsFolder, notes: Iterable[Note]) -> tuple[tuple[Source, ...], tuple[str, ...]]:
    """Group the files of scans/ by content, join their notes and count the pages of content not seen before.

    Returns the sources and a sentence for each note whose file is not there. Raises MachineError where the
    disk refuses.
    """
    listed = list_scans(folder)
    files = [name for name in listed if _is_text(name)]
    digests = _digests(folder, files)
    by_name: dict[str, list[Note]] = {}
    for note in notes:
        by_name.setdefault(note.file, []).append(note)
    spelled = {same_name(file).casefold(): file for file in files}
    lost = []
    notes_of: dict[str, list[Note]] = {}
    for name, found in by_name.items():
        file = spelled.get(name.casefold())
        if file is None:
            lost.append(f"notes.csv: there is no file '{name}' in scans/; its note is kept for when it comes.")
        else:
            notes_of.setdefault(file, []).extend(found)
    groups: dict[str, list[str]] = {}
    bad = [
        Source("", (name.encode(errors="replace").decode(),), (), 0, "has a name that is no text", "rename it")
        for name in listed
        if not _is_text(name)
    ]
    for file in files:
        if digests[file] is None:
            bad.append(Source("", (file,), (), 0, "cannot be opened", "change its permissions or copy it again"))
        else:
            groups.setdefault(str(digests[file]), []).append(file)
    counts = _counts(folder, {sha: group[0] for sha, group in groups.items()})
    sources = []
    for sha, group in groups.items():
        joined = tuple(note for file in group for note in notes_of.get(file, ()))
        sources.append(Source(sha, tuple(group), joined, *counts[sha]))
    return (*sources, *bad), tuple(lost)


def _is_text(name: str) -> bool:
    """Say whether a name can be written down; bytes that are no text come from other systems and broken archives."""
    try:
        name.encode()
    except UnicodeEncodeError:
        return False
    return True


def _digests(folder: ClippingsFolder, files: Iterable[str]) -> dict[str, str | None]:
    """Hash every file, sparing those whose size and time of change are as they were."""
    kept_at = folder.readings / "files.json"
    try:
        kept = {name: _Seen(*seen) for name, seen in json.loads(kept_at.read_text(encoding="utf-8")).items()}
    except (OSError, ValueError, TypeError, AttributeError):
        kept = {}
    now: dict[str, _Seen] = {}
    found: dict[str, str | None] = {}
    for file in files:
        path = folder.scans / file
        try:
            stat = path.stat()
            seen = kept.get(file)
            if seen is None or (seen.size, seen.mtime_ns) != (stat.st_size, stat.st_mtime_ns):
                seen = _Seen(stat.st_size, stat.st_mtime_ns, digest_of(path))
        except OSError:
            found[file] = None
            continue
        now[file], found[file] = seen, seen.sha256
    if now != kept:
        content = {name: [seen.size, seen.mtime_ns, seen.sha256] for name, seen in now.items()}
        try:
            write_whole(kept_at, json.dumps(content, ensure_ascii=False).encode())
        except OSError as fault:
            raise machine_error(fault, kept_at) from None
    return found


def _counts(folder: ClippingsFolder, files: Mapping[str, str]) -> dict[str, _Count]:
    """Count the pages of each content, sparing what earlier runs counted or found unreadable."""
    kept_at = folder.readings / "pages.json"
    try:
        kept: dict[str, _Count] = {
            str(sha): (int(count[0]), count[1], count[2])
            for sha, count in json.loads(kept_at.read_text(encoding="utf-8")).items()
        }
    except (OSError, ValueError, TypeError, AttributeError, IndexError):
        kept = {}
    tasks = [CountTask(str(folder.scans / file), file, sha) for sha, file in files.items() if sha not in kept]
    if not tasks:
        return kept
    counts: dict[str, _Count] = {}
    # in a process of its own: a file made to crash a decoder must not take the run with it
    pool: Pool[CountTask, int] = Pool(count_task, limit_seconds=120)
    for outcome in pool.results(tasks):
        sha = outcome.task.sha256
        if outcome.result is not None:
            kept[sha] = outcome.result, None, None
        elif outcome.fault is not None:
            why = f", because {outcome.fault.why}" if outcome.fault.why else ""
            kept[sha] = 0, outcome.fault.what + why, outcome.fault.remedy
        else:
            counts[sha] = 0, f"cannot be opened: {outcome.crash}", "save it again in another format"
    try:
        write_whole(kept_at, json.dumps(kept, ensure_ascii=False).encode())
    except OSError as fault:
        raise machine_error(fault, kept_at) from None
    return kept | counts

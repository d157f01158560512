"""The journal of a clippings folder: one line an act of a person, appended, flushed and synced, never rewritten.

A line is one JSON object, for instance::

    {"id": "5f0c…", "at": "2026-01-05T10:31:07Z", "who": "M. Hale", "act": "correct", "kind": "offer",
     "clipping_id": "9a41…", "box": [120, 80, 300, 60], "old": {"item": "saucor"}, "new": {"item": "saucer"},
     "seen": {…}, "thread": null, "undoes": null}

`box` is the region the act is about, in pixels of the original scan; `old` and `new` hold the changed
fields only; `seen` is the whole fact as the person saw it, so that it can be shown even when a later
reading no longer finds it. `thread` is the id of the first act on the same fact; `undoes` names the act
that an undo takes back. Taking back an undo brings the act back.
"""

from __future__ import annotations

import fcntl
import json
import os
import uuid
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import asdict, dataclass, field
from datetime import UTC, datetime
from pathlib import Path
from types import TracebackType
from typing import Any, Final, Self

from adminer.errors import FolderError, MachineError
from adminer.records import Box

FILE_NAME: Final = "journal.jsonl"
ACTS: Final = frozenset(
    {
        "confirm", "correct", "reject", "add", "split", "same_advert",
        "note", "name", "evidence", "search", "object", "undo",
    }
)  # fmt: skip
KINDS: Final = frozenset({"offer", "advert", "clipping", "name", "search", "object"})
OF_NO_CLIPPING: Final = frozenset({"note", "name", "search", "object"})  # acts that changed a file of their own

Fields = dict[str, Any]  # a JSON object: the values of a fact by field name


@dataclass(frozen=True, slots=True)
class Act:
    """Hold one line of the journal."""

    id: str
    at: str  # UTC, ISO 8601 with Z
    who: str
    act: str  # one of ACTS
    kind: str  # one of KINDS: what sort of fact the act is about
    clipping_id: str
    box: Box | None = None
    old: Fields = field(default_factory=dict)
    new: Fields = field(default_factory=dict)
    seen: Fields = field(default_factory=dict)
    thread: str | None = None
    undoes: str | None = None
    act_no: int = 0  # place in the file, from 1; not written

    @property
    def thread_id(self) -> str:
        """Return the id of the first act on the same fact."""
        return self.thread or self.id


@dataclass(frozen=True, slots=True)
class JournalResult:
    """Hold the acts of a journal and the lines that could not be understood."""

    acts: tuple[Act, ...]
    problems: tuple[str, ...]


def read_journal(path: Path) -> tuple[Act, ...]:
    """Read the acts of a journal file in order; a missing file is an empty journal, a torn line is passed over."""
    return check_journal(path).acts


def check_journal(path: Path) -> JournalResult:
    """Read a journal and say, with line numbers, which lines could not be understood.

    Raises FolderError when the file is no text file.
    """
    try:
        lines = path.read_bytes().split(b"\n")
    except FileNotFoundError:
        return JournalResult((), ())
    except OSError as error:
        raise FolderError("the journal cannot be read", file=str(path), why=error.strerror) from error
    acts: list[Act] = []
    problems: list[str] = []
    for number, raw in enumerate(lines, 1):
        if not raw.strip():
            continue
        try:
            acts.append(_act_of(json.loads(raw), len(acts) + 1))
        except (ValueError, KeyError, TypeError) as error:
            problems.append(f"{path.name}, line {number}: not an act ({error}); kept in the file, passed over.")
    return JournalResult(tuple(acts), tuple(problems))


def active(acts: Iterable[Act]) -> tuple[Act, ...]:
    """Return the acts that still count, in order: neither taken back nor themselves an undo."""
    listed = tuple(acts)
    taken_back = ids_taken_back(listed)
    return tuple(a for a in listed if a.act != "undo" and a.id not in taken_back)


def ids_taken_back(acts: Sequence[Act]) -> frozenset[str]:
    """Return the ids of acts, undos among them, that an undo which still counts has taken back."""
    taken_back: set[str] = set()
    for act in reversed(acts):
        if act.act == "undo" and act.id not in taken_back and act.undoes:
            taken_back.add(act.undoes)
    return frozenset(taken_back)


def last_to_undo(acts: Iterable[Act], who: str | None = None) -> Act | None:
    """Return the latest act that still counts (of one person where named), or None."""
    standing = [a for a in active(acts) if who is None or a.who == who]
    return standing[-1] if standing else None


class Journal:
    """Append to the journal of one folder; holds the file's lock as long as it is open.

    Raises FolderError when another process has the journal open, MachineError when it cannot be written.
    """

    def __init__(self, path: Path) -> None:
        """Open and lock the file, and end a line that an earlier process left unfinished."""
        self.path = path
        try:
            self._file = path.open("ab", buffering=0)  # what is written is with the system at once
        except OSError as error:
            raise MachineError(
                "the journal cannot be written", file=str(path), why=error.strerror, remedy="make the folder writable"
            ) from error
        try:
            fcntl.flock(self._file, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except OSError as error:
            self._file.close()
            raise FolderError(
                "the journal is open elsewhere",
                file=str(path),
                why="another desk works on this folder",
                remedy="go on at that desk, or close it first",
            ) from error
        self._end_torn_line()
        self._acts = list(read_journal(path))

    @property
    def acts(self) -> tuple[Act, ...]:
        """Return all acts so far, in order."""
        return tuple(self._acts)

    def append(
        self,
        who: str,
        act: str,
        kind: str,
        clipping_id: str,
        *,
        box: Box | None = None,
        old: Mapping[str, Any] | None = None,
        new: Mapping[str, Any] | None = None,
        seen: Mapping[str, Any] | None = None,
        thread: str | None = None,
        undoes: str | None = None,
    ) -> Act:
        """Write one act; when this returns, the line is on the disk.

        Raises MachineError when the disk does not take it; then the act did not happen.
        """
        if act not in ACTS or kind not in KINDS:
            raise ValueError(f"no such act: {act} on {kind}")
        written = Act(
            id=uuid.uuid4().hex[:16],
            at=datetime.now(UTC).strftime("%Y-%m-%dT%H:%M:%SZ"),
            who=who,
            act=act,
            kind=kind,
            clipping_id=clipping_id,
            box=box,
            old=dict(old or {}),
            new=dict(new or {}),
            seen=dict(seen or {}),
            thread=thread,
            undoes=undoes,
            act_no=len(self._acts) + 1,
        )
        line = json.dumps(_line_of(written), ensure_ascii=False, separators=(",", ":")) + "\n"
        start = self._file.seek(0, os.SEEK_END)
        try:
            self._write(line.encode())
        except OSError as error:
            os.ftruncate(self._file.fileno(), start)  # so that the next line begins clean
            raise MachineError(
                "the act was not saved",
                file=str(self.path),
                why=error.strerror,
                remedy="free space on the disk and try again",
            ) from error
        self._acts.append(written)
        return written

    def undo(self, who: str, act: Act) -> Act:
        """Write that an act is taken back."""
        return self.append(who, "undo", act.kind, act.clipping_id, box=act.box, undoes=act.id, thread=act.thread_id)

    def close(self) -> None:
        """Give the lock back."""
        self._file.close()

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self.close()

    def _end_torn_line(self) -> None:
        content = self.path.read_bytes()
        if content and not content.endswith(b"\n"):
            self._write(b"\n")

    def _write(self, line: bytes) -> None:
        left = memoryview(line)
        while left:
            left = left[self._file.write(left) :]
        os.fsync(self._file.fileno())


def _line_of(act: Act) -> Fields:
    line = asdict(act)
    del line["act_no"]
    line["box"] = [act.box.x, act.box.y, act.box.w, act.box.h] if act.box else None
    return {key: value for key, value in line.items() if value not in (None, {})}


def _act_of(line: Any, act_no: int) -> Act:
    if not isinstance(line, dict):
        raise TypeError("not an object")
    if line["act"] not in ACTS or line["kind"] not in KINDS:
        raise ValueError(f"no such act: {line['act']!r} on {line['kind']!r}")
    box = line.get("box")
    return Act(
        id=str(line["id"]),
        at=str(line["at"]),
        who=str(line["who"]),
        act=line["act"],
        kind=line["kind"],
        clipping_id=str(line["clipping_id"]),
        box=Box(*(int(v) for v in box)) if box else None,
        old=_object(line, "old"),
        new=_object(line, "new"),
        seen=_object(line, "seen"),
        thread=line.get("thread"),
        undoes=line.get("undoes"),
        act_no=act_no,
    )


def _object(line: Fields, key: str) -> Fields:
    value = line.get(key, {})
    if not isinstance(value, dict):
        raise TypeError(f"{key} is not an object")
    return value

"""Read in the background: a process of its own, so that pages answer at once while adverts are read.

The child tells of every page through a pipe. It stops when asked (as by Ctrl-C: what is read stays read) and
when the desk is gone.
"""

from __future__ import annotations

import multiprocessing
import os
import signal
import threading
import time
from collections.abc import Callable, Sequence
from contextlib import suppress
from dataclasses import dataclass, field, replace
from multiprocessing.connection import Connection
from pathlib import Path
from typing import Any, Final

from adminer.desk.desk import Progress
from adminer.errors import AdminerError

_KEPT_UNREAD: Final = 500
_SAID_PROBLEMS: Final = 3
_REPORT: Final = "Nothing read is lost; please report it."
_STOPPED: Final = "Stopped. What was read is kept; the reading goes on from there."
_FELL: Final = "The reading ended unexpectedly. Start it again; nothing read is lost."
_QUIET_SECONDS: Final = 10.0  # after an act, before the database is built anew: the next act comes soon


@dataclass(slots=True)
class Background:
    """Run the reading of one folder, at most one run at a time."""

    root: Path
    workers: int | None = None
    work: Callable[[Path, int | None, Connection], None] | None = None  # what the child runs; tests pass their own
    quiet: float = _QUIET_SECONDS
    _progress: Progress = field(default_factory=Progress)
    _lock: threading.Lock = field(default_factory=threading.Lock)
    _process: Any = None
    _wanted: bool = False  # asked for again while a run was going on
    _held: bool = False  # a person paused it: acts wait for a person to let it go on
    _due: threading.Timer | None = None
    _closed: bool = False

    def start(self) -> None:
        """Begin, or go on; where a run goes on already, another follows it."""
        with self._lock:
            if self._closed:
                return
            self._held = False
            if self._process is not None:
                self._wanted = True
                return
            context = multiprocessing.get_context("spawn")
            ours, theirs = context.Pipe(duplex=False)
            process = context.Process(target=self.work or _read, args=(self.root, self.workers, theirs))
            process.start()
            theirs.close()
            self._process = process
            self._progress = replace(self._progress, state="reading", done=0, total=0, words="Looking for what is new.")
            threading.Thread(target=self._listen, args=(ours, process), daemon=True).start()

    def soon(self) -> None:
        """Begin when no one has asked for a moment: for acts that come one after another; not while it is paused."""
        with self._lock:
            if self._due is not None:
                self._due.cancel()
            self._due = threading.Timer(self.quiet, self._begin_due)
            self._due.daemon = True
            self._due.start()

    def _begin_due(self) -> None:
        if not self._held:
            self.start()

    def pause(self) -> None:
        """Stop after the pages in hand are given up; what is read stays read."""
        with self._lock:
            self._wanted = False
            if self._process is not None and self._process.pid:
                self._held = True
                self._progress = replace(self._progress, state="pausing", words="Stopping; what is read is kept.")
                with suppress(ProcessLookupError):
                    os.kill(self._process.pid, signal.SIGINT)

    def progress(self) -> Progress:
        """Say how far the run is."""
        return self._progress

    def close(self) -> None:
        """Stop the run and wait for its end."""
        self._closed = True
        if self._due is not None:
            self._due.cancel()
        self.pause()
        process = self._process
        if process is not None:
            process.join(10)
            if process.is_alive():
                process.kill()
                process.join()

    def _listen(self, pipe: Connection, process: Any) -> None:
        ended: tuple[str, str] | None = None
        with pipe:
            while True:
                try:
                    kind, *values = pipe.recv()
                except (EOFError, OSError):
                    break
                if kind == "end":
                    ended = (values[0], values[1])
                else:
                    self._hear(kind, values)
        process.join()
        with self._lock:
            self._process = None
            # paused while the child was still starting, it ends without a word
            state, words = ended or (("paused", _STOPPED) if self._held else ("failed", _FELL))
            self._progress = replace(self._progress, state=state, words=words, current="")
            again, self._wanted = self._wanted and state == "done", False
        if again:
            self.start()

    def _hear(self, kind: str, values: list[Any]) -> None:
        with self._lock:
            told = self._progress
            if kind == "begin":
                told = replace(told, total=values[0], done=0, unread=(), words="Reading.")
            elif kind == "step":
                name, problem = values
                unread = ((name, problem), *told.unread)[:_KEPT_UNREAD] if problem else told.unread
                told = replace(told, done=told.done + 1, current=name, unread=unread)
            elif kind == "say":
                told = replace(told, state="building" if told.state == "reading" else told.state, words=values[0])
            self._progress = told


class _Teller:
    """Tell of a run through the pipe; where the desk is gone, stop as by Ctrl-C."""

    def __init__(self, pipe: Connection) -> None:
        self._pipe = pipe

    def tell(self, *message: Any) -> None:
        try:
            self._pipe.send(message)
        except OSError:
            raise KeyboardInterrupt from None

    def begin(self, total: int, what: str) -> None:
        self.tell("begin", total)

    def step(self, name: str, problem: str | None) -> None:
        self.tell("step", name, problem)

    def say(self, text: str) -> None:
        self.tell("say", text)

    def end(self) -> None:
        """Say nothing: building follows."""


def _read(root: Path, workers: int | None, pipe: Connection) -> None:
    """Run in the child: read what is new, build the database, say how it ended."""
    from adminer.engine.digitise import digitise  # noqa: PLC0415 - only the child needs the readers

    signal.signal(signal.SIGINT, signal.default_int_handler)
    teller = _Teller(pipe)
    began = time.monotonic()
    try:
        summary = digitise(root, workers=workers, watch=teller)
        counts = summary.counts
        words = f"{summary.pages} pages, {summary.read_now} read now, {len(summary.unread)} not readable"
        words += f", in {time.monotonic() - began:.0f} s."
        if counts is not None:
            words += f" The database has {counts.offers} offers in {counts.adverts} adverts."
        teller.tell("end", "done", " ".join([words, *_some(summary.problems)]))
    except KeyboardInterrupt:
        with suppress(OSError):
            pipe.send(("end", "paused", _STOPPED))
    except AdminerError as error:
        teller.tell("end", "failed", str(error))
    # the boundary between the reading and the desk: whatever goes wrong there, the page says it
    except Exception as error:  # noqa: BLE001
        why = f"{type(error).__name__}: {error}"
        teller.tell("end", "failed", f"A fault of the program stopped the reading ({why}). {_REPORT}")


def _some(problems: Sequence[str]) -> list[str]:
    more = len(problems) - _SAID_PROBLEMS
    return [
        *problems[:_SAID_PROBLEMS],
        *([f"{more} more things to look at: adminer status lists them."] if more > 0 else []),
    ]

"""Progress on stderr: a bar on a terminal, plain lines elsewhere; counts, rate and time left in both."""

from __future__ import annotations

import sys
import time
from typing import Final, Protocol, TextIO

from rich.console import Console
from rich.progress import BarColumn, MofNCompleteColumn, Progress, TaskID, TextColumn

_SECONDS_BETWEEN_LINES: Final = 2.0


class Watcher(Protocol):
    """Be told how far a run is."""

    def begin(self, total: int, what: str) -> None:
        """Hear how many pages are to be read."""

    def step(self, name: str, problem: str | None) -> None:
        """Hear that one page is done, and why it could not be read where it could not."""

    def say(self, text: str) -> None:
        """Hear one sentence meant for the user."""

    def end(self) -> None:
        """Hear that all pages are done."""


class Silence:
    """Watch without a word, for callers that only want the summary."""

    def begin(self, total: int, what: str) -> None:
        """Hear how many pages are to be read."""

    def step(self, name: str, problem: str | None) -> None:
        """Hear that one page is done."""

    def say(self, text: str) -> None:
        """Hear one sentence meant for the user."""

    def end(self) -> None:
        """Hear that all pages are done."""


class _Pace:
    """Count pages and say how fast they come and how long the rest will take."""

    def __init__(self, total: int) -> None:
        self.total, self.done, self.failed = total, 0, 0
        self._began = time.monotonic()

    def count(self, problem: str | None) -> None:
        self.done += 1
        self.failed += problem is not None

    def words(self) -> str:
        seconds = max(time.monotonic() - self._began, 1e-3)
        rate = self.done / seconds
        left = (self.total - self.done) / rate if rate else 0.0
        unread = f", {self.failed} could not be read" if self.failed else ""
        return f"{rate * 60:.1f} a minute, {_duration(left)} left{unread}"


class PlainLines:
    """Print a line for the first page, the last, each failure, and one every few seconds between."""

    def __init__(self, stream: TextIO | None = None) -> None:
        """Take the stream to print on, stderr by default."""
        self._stream = stream or sys.stderr
        self._pace, self._what, self._last = _Pace(0), "", 0.0

    def begin(self, total: int, what: str) -> None:
        """Print how many pages are to be read."""
        self._pace, self._what = _Pace(total), what
        self.say(f"{what}: {total} to do.")

    def step(self, name: str, problem: str | None) -> None:
        """Print how far the run is, where enough time has passed."""
        self._pace.count(problem)
        if problem:
            self.say(f"not read: {name} {problem}")
        now = time.monotonic()
        if self._pace.done in (1, self._pace.total) or now - self._last > _SECONDS_BETWEEN_LINES:
            self._last = now
            self.say(f"{self._what}: {self._pace.done} of {self._pace.total}, {self._pace.words()} ({name})")

    def say(self, text: str) -> None:
        """Print one sentence."""
        print(text, file=self._stream, flush=True)

    def end(self) -> None:
        """Leave the last line as it is."""


class Bar:
    """Draw a bar on a terminal."""

    def __init__(self, console: Console) -> None:
        """Take the console of stderr."""
        self._console = console
        self._pace = _Pace(0)
        self._bar: Progress | None = None
        self._task = TaskID(0)

    def begin(self, total: int, what: str) -> None:
        """Draw the empty bar."""
        self._pace = _Pace(total)
        columns = (TextColumn(what), BarColumn(), MofNCompleteColumn(), TextColumn("{task.fields[pace]}"))
        self._bar = Progress(*columns, console=self._console, transient=True)
        self._task = self._bar.add_task(what, total=total, pace="")
        self._bar.start()

    def step(self, name: str, problem: str | None) -> None:
        """Move the bar on by one page."""
        self._pace.count(problem)
        if problem:
            self.say(f"not read: {name} {problem}")
        if self._bar is not None:
            self._bar.update(self._task, advance=1, pace=self._pace.words())

    def say(self, text: str) -> None:
        """Print one sentence above the bar."""
        self._console.print(text, markup=False, highlight=False, soft_wrap=True)

    def end(self) -> None:
        """Take the bar away."""
        if self._bar is not None:
            self._bar.stop()


def watcher() -> Watcher:
    """Return a bar where stderr is a terminal, plain lines where it is not."""
    console = Console(stderr=True)
    return Bar(console) if console.is_terminal else PlainLines()


def _duration(seconds: float) -> str:
    if seconds < 90:
        return f"{seconds:.0f} s"
    return f"{seconds / 60:.0f} min" if seconds < 5400 else f"{seconds / 3600:.1f} h"

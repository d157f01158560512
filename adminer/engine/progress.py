"""Progress on stderr: a bar on a terminal, plain lines elsewhere; counts, rate and time left in both."""

from __future__ import annotations

import sys
import time
from typing import Final, Protocol, TextIO

from adminer.store.plain import clean

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


class Pace:
    """Count pages and say how fast they come and how long the rest will take."""

    def __init__(self, total: int) -> None:
        """Start the clock."""
        self.total, self.done, self.failed = total, 0, 0
        self._began = time.monotonic()

    def count(self, problem: str | None) -> None:
        """Count one page more."""
        self.done += 1
        self.failed += problem is not None

    def words(self) -> str:
        """Return rate, time left and failures in words."""
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
        self._pace, self._what, self._last = Pace(0), "", 0.0

    def begin(self, total: int, what: str) -> None:
        """Print how many pages are to be read."""
        self._pace, self._what = Pace(total), what
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
        print(clean(text), file=self._stream, flush=True)

    def end(self) -> None:
        """Leave the last line as it is."""


def watcher() -> Watcher:
    """Return a bar where stderr is a terminal, plain lines where it is not."""
    if not sys.stderr.isatty():
        return PlainLines()
    from adminer.engine.progress_bar import Bar  # noqa: PLC0415 - drawn on terminals only

    return Bar()


def _duration(seconds: float) -> str:
    if seconds < 90:
        return f"{seconds:.0f} s"
    return f"{seconds / 60:.0f} min" if seconds < 5400 else f"{seconds / 3600:.1f} h"

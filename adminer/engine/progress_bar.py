"""Progress as a bar on a terminal."""

from __future__ import annotations

from rich.console import Console
from rich.progress import BarColumn, MofNCompleteColumn, Progress, TaskID, TextColumn

from adminer.engine.progress import Pace
from adminer.store.plain import clean


class Bar:
    """Draw a bar on a terminal."""

    def __init__(self, console: Console | None = None) -> None:
        """Take a console, that of stderr by default."""
        self._console = console or Console(stderr=True)
        self._pace = Pace(0)
        self._bar: Progress | None = None
        self._task = TaskID(0)

    def begin(self, total: int, what: str) -> None:
        """Draw the empty bar."""
        self._pace = Pace(total)
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
        self._console.print(clean(text), markup=False, highlight=False, soft_wrap=True)

    def end(self) -> None:
        """Take the bar away."""
        if self._bar is not None:
            self._bar.stop()

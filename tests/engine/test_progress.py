"""Progress: plain lines where stderr is no terminal, a bar where it is; counts, rate and time left in both."""

from __future__ import annotations

import io
import re

import pytest
from rich.console import Console

from adminer.engine import progress
from adminer.engine.progress import PlainLines
from adminer.engine.progress_bar import Bar


def test_plain_lines_have_counts_rate_and_time_left() -> None:
    stream = io.StringIO()
    lines = PlainLines(stream)
    lines.begin(3, "Reading pages")
    lines.step("a.png", None)
    lines.step("b.png", "is empty")
    lines.step("c.png", None)
    lines.end()
    said = stream.getvalue().splitlines()
    assert said[0] == "Reading pages: 3 to do."
    assert re.fullmatch(r"Reading pages: 1 of 3, [\d.]+ a minute, \d+ s left \(a\.png\)", said[1])
    assert said[2] == "not read: b.png is empty"
    assert re.fullmatch(r"Reading pages: 3 of 3, [\d.]+ a minute, 0 s left, 1 could not be read \(c\.png\)", said[-1])


def test_a_long_run_is_told_every_few_seconds_and_no_more(monkeypatch: pytest.MonkeyPatch) -> None:
    now = [0.0]
    monkeypatch.setattr("adminer.engine.progress.time.monotonic", lambda: now[0])
    stream = io.StringIO()
    lines = PlainLines(stream)
    lines.begin(1000, "Reading pages")
    for number in range(1000):
        now[0] += 0.1
        lines.step(f"{number}.png", None)
    said = stream.getvalue().splitlines()
    assert 40 <= len(said) <= 60  # a hundred seconds, a line every two
    half = next(line for line in said if re.search(r": 5[0-4]\d of 1000", line))
    assert "600.0 a minute" in half
    left = re.search(r"(\d+) s left", half)
    assert left is not None
    assert 45 <= int(left[1]) <= 50


def test_a_bar_is_drawn_on_a_terminal() -> None:
    stream = io.StringIO()
    bar = Bar(Console(file=stream, force_terminal=True, width=100))
    bar.begin(2, "Reading pages")
    bar.step("a.png", "is empty")
    bar.step("b.png", None)
    bar.end()
    drawn = stream.getvalue()
    assert "2/2" in drawn
    assert "not read: a.png is empty" in drawn
    assert "a minute" in drawn


def test_stderr_that_is_no_terminal_gets_lines() -> None:
    assert isinstance(progress.watcher(), PlainLines)

"""The reading in the background: one run at a time, paused by a person and gone on with, its end always told."""

from __future__ import annotations

import os
import signal
import time
from collections.abc import Callable, Iterator
from contextlib import suppress
from multiprocessing.connection import Connection
from pathlib import Path

import pytest

from adminer.desk.background import Background


def patient(root: Path, workers: int | None, pipe: Connection) -> None:
    """Read for as long as no one stops it, the first time; after that be done at once."""
    signal.signal(signal.SIGINT, signal.default_int_handler)
    with (root / "runs").open("a") as runs:
        runs.write("run\n")
    if len((root / "runs").read_text().split()) > 1:
        pipe.send(("end", "done", "All is read."))
        return
    pipe.send(("begin", 3))
    pipe.send(("step", "week-1.png", None))
    try:
        time.sleep(60)
    except KeyboardInterrupt:
        pipe.send(("end", "paused", "Stopped."))


def falls(root: Path, workers: int | None, pipe: Connection) -> None:
    os.kill(os.getpid(), signal.SIGKILL)


@pytest.fixture
def opened(tmp_path: Path) -> Iterator[Callable[..., Background]]:
    made: list[Background] = []

    def opening(work: Callable[[Path, int | None, Connection], None]) -> Background:
        made.append(Background(tmp_path, work=work, quiet=0.05))
        return made[-1]

    yield opening
    for each in made:
        each.close()


def until(background: Background, *states: str) -> None:
    for _ in range(600):
        if background.progress().state in states:
            return
        time.sleep(0.05)
    raise AssertionError(f"{background.progress()} never became {states}")


def runs(root: Path) -> int:
    with suppress(FileNotFoundError):
        return len((root / "runs").read_text().split())
    return 0


def test_a_paused_reading_waits_for_a_person_and_then_goes_on(
    opened: Callable[..., Background], tmp_path: Path
) -> None:
    background = opened(patient)
    background.start()
    for _ in range(600):
        if background.progress().done == 1:
            break
        time.sleep(0.05)
    assert (background.progress().state, background.progress().total) == ("reading", 3)
    background.pause()
    until(background, "paused")
    background.soon()  # an act while it is paused
    time.sleep(0.5)
    assert (runs(tmp_path), background.progress().state) == (1, "paused")
    background.start()
    until(background, "done")
    assert runs(tmp_path) == 2


def test_paused_before_it_has_begun_it_is_paused_and_not_failed(
    opened: Callable[..., Background], tmp_path: Path
) -> None:
    background = opened(patient)
    background.start()
    background.pause()  # the child is not even awake
    until(background, "paused")
    assert "kept" in background.progress().words


def test_an_act_begins_a_run_and_one_asked_for_meanwhile_follows(
    opened: Callable[..., Background], tmp_path: Path
) -> None:
    (tmp_path / "runs").write_text("earlier\n")
    background = opened(patient)
    background.pause()  # nothing is being read: nothing is held
    background.soon()
    until(background, "done")
    assert runs(tmp_path) == 2


def test_a_reading_that_is_killed_is_told_and_can_be_begun_again(opened: Callable[..., Background]) -> None:
    background = opened(falls)
    background.start()
    until(background, "failed")
    assert "nothing read is lost" in background.progress().words
    background.start()
    until(background, "failed")

"""Ctrl-C and kill -9 at any moment: nothing is half written, what was read is kept, the next run goes on."""

from __future__ import annotations

import os
import signal
import time
from pathlib import Path

import duckdb
import pytest

from adminer.engine.folder import create_folder
from adminer.store.readings import is_sound
from tests.cli.driver import inside, start
from tests.intake.pictures import card, save

PAGES = 8


@pytest.fixture
def root(tmp_path: Path) -> Path:
    """Return a clippings folder whose pages take a while each."""
    folder = create_folder(tmp_path / "file")
    for number in range(PAGES):
        save(card(words=f"CUP {number}9c"), folder.scans / f"slow-{number}.png")
    return folder.root


def kept(root: Path) -> list[Path]:
    return sorted((root / ".readings").glob("*.reading.json.gz"))


def wait_for_readings(root: Path, least: int) -> None:
    deadline = time.monotonic() + 60
    while len(kept(root)) < least:
        assert time.monotonic() < deadline, "no page was read in a minute"
        time.sleep(0.02)


def check_and_finish(root: Path) -> None:
    """Look that all is whole, then let a run go on to the end."""
    before = kept(root)
    assert all(is_sound(path) for path in before)
    done = inside("digitise", root, "--workers", "2")
    assert done.returncode == 0, done.stderr
    read_now = int(done.stdout.split(" read now")[0].split(": ")[-1])
    assert read_now + len(before) == PAGES
    with duckdb.connect(str(root / "clippings.duckdb"), read_only=True) as connection:
        assert connection.execute("SELECT count(*) FROM clippings").fetchall() == [(PAGES,)]
    assert not [path for path in (root / ".readings").iterdir() if path.name.startswith(".")]
    assert not list(root.glob(".clippings.duckdb*"))


def test_ctrl_c_keeps_what_was_read_and_says_so(root: Path) -> None:
    process = start("digitise", root, "--workers", "2")
    wait_for_readings(root, 2)
    os.killpg(process.pid, signal.SIGINT)  # as a terminal does: to the command and its workers
    _out, err = process.communicate(timeout=30)
    assert process.returncode == 130
    assert "Traceback" not in err
    assert "Stopped. What was read is kept; the same command goes on from here." in err
    assert 2 <= len(kept(root)) < PAGES
    check_and_finish(root)


@pytest.mark.parametrize("moment", [0.05, 0.55])  # seconds after the first reading: in a page, and between two
def test_kill_9_loses_at_most_the_pages_in_hand(root: Path, moment: float) -> None:
    process = start("digitise", root, "--workers", "2")
    wait_for_readings(root, 1)
    time.sleep(moment)
    process.kill()
    process.communicate(timeout=30)
    time.sleep(1.0)  # the workers end when they find nobody to report to
    check_and_finish(root)


@pytest.mark.parametrize("how", [signal.SIGKILL, signal.SIGINT])
def test_a_stop_while_the_database_is_built_leaves_the_old_one(root: Path, how: signal.Signals) -> None:
    assert inside("digitise", root, "--workers", "2").returncode == 0
    old = (root / "clippings.duckdb").read_bytes()
    (root / "notes.csv").write_text("file,city\nslow-0.png,Osterby\n")
    process = start("digitise", root)
    deadline = time.monotonic() + 60
    while not list(root.glob(".clippings.duckdb*")):
        assert time.monotonic() < deadline
        assert process.poll() is None, "the run ended before it could be killed"
        time.sleep(0.001)
    process.send_signal(how)
    process.communicate(timeout=30)
    assert process.returncode == (-9 if how == signal.SIGKILL else 130)
    assert (root / "clippings.duckdb").read_bytes() == old
    check_and_finish(root)


def test_two_runs_do_not_interleave(root: Path) -> None:
    first = start("digitise", root, "--workers", "1")
    wait_for_readings(root, 1)
    second = inside("digitise", root)
    assert second.returncode == 4
    assert f"is being read by another run, because process {first.pid} works on it" in second.stderr
    os.killpg(first.pid, signal.SIGINT)
    first.communicate(timeout=30)

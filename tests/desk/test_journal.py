"""The journal: what is said to be saved is on the disk, whatever happens afterwards."""

from __future__ import annotations

import json
import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from adminer.errors import FolderError, MachineError
from adminer.records import Box
from adminer.store.journal import Journal, active, check_journal, last_to_undo, read_journal


def test_an_act_comes_back_as_it_was_written(tmp_path: Path) -> None:
    path = tmp_path / "journal.jsonl"
    with Journal(path) as journal:
        written = journal.append(
            "M. Hale", "correct", "offer", "c1", box=Box(1, 2, 3, 4), old={"item": "saucor"}, new={"item": "saucer ½"}
        )
    assert read_journal(path) == (written,)
    assert path.read_text("utf-8").count("\n") == 1


def test_an_undo_is_another_line_and_can_be_undone(tmp_path: Path) -> None:
    with Journal(tmp_path / "journal.jsonl") as journal:
        first = journal.append("a", "confirm", "offer", "c1", box=Box(0, 0, 1, 1))
        second = journal.append("a", "reject", "offer", "c1", box=Box(0, 0, 1, 1))
        undo = journal.undo("a", second)
        assert active(journal.acts) == (first,)
        assert last_to_undo(journal.acts) == first
        journal.undo("a", undo)
        assert active(journal.acts) == (first, second)
    assert len((tmp_path / "journal.jsonl").read_text().splitlines()) == 4


def test_a_torn_last_line_is_kept_and_passed_over(tmp_path: Path) -> None:
    path = tmp_path / "journal.jsonl"
    with Journal(path) as journal:
        first = journal.append("a", "confirm", "offer", "c1", box=Box(0, 0, 1, 1))
    whole = path.read_bytes()
    path.write_bytes(whole + whole[: len(whole) // 2])
    with Journal(path) as journal:
        second = journal.append("a", "reject", "offer", "c1", box=Box(0, 0, 1, 1))
        assert journal.acts == (first, second)
    result = check_journal(path)
    assert [a.id for a in result.acts] == [first.id, second.id]
    assert len(result.problems) == 1
    assert "line 2" in result.problems[0]


@pytest.mark.parametrize(
    "line", ["{}", "[]", '{"id":1}', "\x00", '{"id":"x","at":"","who":"","act":"eat","kind":"offer"}']
)
def test_a_line_that_is_no_act_stops_only_itself(tmp_path: Path, line: str) -> None:
    path = tmp_path / "journal.jsonl"
    with Journal(path) as journal:
        journal.append("a", "confirm", "offer", "c1", box=Box(0, 0, 1, 1))
    path.write_text(line + "\n" + path.read_text())
    result = check_journal(path)
    assert len(result.acts) == len(result.problems) == 1


def test_a_second_desk_is_told(tmp_path: Path) -> None:
    with Journal(tmp_path / "journal.jsonl"), pytest.raises(FolderError, match="another desk"):
        Journal(tmp_path / "journal.jsonl")
    Journal(tmp_path / "journal.jsonl").close()


def test_a_refused_write_leaves_the_journal_whole(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "journal.jsonl"
    with Journal(path) as journal:
        first = journal.append("a", "confirm", "offer", "c1", box=Box(0, 0, 1, 1))
        before = path.read_bytes()

        def full(descriptor: int) -> None:
            raise OSError(28, "No space left on device")

        with monkeypatch.context() as patch, pytest.raises(MachineError, match="No space left"):
            patch.setattr(os, "fsync", full)
            journal.append("a", "reject", "offer", "c1", box=Box(0, 0, 1, 1))
        assert path.read_bytes() == before
        assert journal.acts == (first,)
        assert journal.append("a", "reject", "offer", "c1", box=Box(0, 0, 1, 1)) == read_journal(path)[1]


WRITER = """
import sys
from pathlib import Path
from adminer.records import Box
from adminer.store.journal import Journal
with Journal(Path(sys.argv[1])) as journal:
    for n in range(100000):
        journal.append("a", "correct", "offer", "c1", box=Box(n, 0, 1, 1), new={"item": "x" * (n % 700)})
        print(n, flush=True)
"""


@pytest.mark.slow
def test_killed_at_any_moment_nothing_that_was_said_to_be_saved_is_lost(tmp_path: Path) -> None:
    path = tmp_path / "journal.jsonl"
    saved = 0
    for round_no in range(5):
        with subprocess.Popen([sys.executable, "-c", WRITER, str(path)], stdout=subprocess.PIPE, text=True) as process:
            assert process.stdout is not None
            process.stdout.readline()
            time.sleep(0.03 + 0.02 * round_no)
            os.kill(process.pid, signal.SIGKILL)
            saved += 1 + len([line for line in process.stdout.read().splitlines() if line.isdigit()])
        acts = read_journal(path)
        assert saved <= len(acts) <= saved + round_no + 1  # a line may be written and its writer die before saying so
        assert all(json.loads(line) for line in path.read_text().splitlines() if line.endswith("}"))

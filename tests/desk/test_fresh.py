"""Files edited by hand while the desk is open are told on the pages of answers and bring the database up to date."""

from __future__ import annotations

import os
import time
from collections.abc import Iterator
from pathlib import Path

import pytest

from adminer.desk.desk import Progress
from tests.desk.desks import SmallDesk, small_desk
from tests.desk.pages import offer, page

WAIT = "Newer than this page"


@pytest.fixture
def small(tmp_path: Path) -> Iterator[SmallDesk]:
    made = small_desk(tmp_path, [page((offer(1, "cup", "0.69", y=100),))])
    # the files a new folder begins with are older than its database
    for path in made.desk.folder.files_by_hand:
        if path.exists():
            os.utime(path, (1, 1))
    yield made
    made.desk.journal.close()


def edit(path: Path, text: str) -> None:
    path.parent.mkdir(exist_ok=True)
    path.write_text(text, encoding="utf-8")
    os.utime(path, (time.time() + 60, time.time() + 60))


def test_nothing_edited_nothing_said(small: SmallDesk) -> None:
    assert WAIT not in small.client().get("/look/runs").text
    assert small.reader.starts == 0


@pytest.mark.parametrize(
    "name", ["evidence.toml", "names/repairs.toml", "names/lines.toml", "notes.csv", "searches.csv"]
)
def test_an_edited_file_is_told_and_the_database_built_anew_once(small: SmallDesk, name: str) -> None:
    edit(small.desk.folder.root / name, "")
    client = small.client()
    assert (
        f"Newer than this page is {name}; the database is being brought up to date." in client.get("/look/dates").text
    )
    assert small.reader.starts == 1
    small.reader.told = Progress(state="building")
    assert WAIT in client.get("/ask/set-prices").text
    assert small.reader.starts == 1
    # the build found the same content as before and left the database as it was: it is not asked for again
    small.reader.told = Progress(state="done")
    assert WAIT not in client.get("/names").text
    assert small.reader.starts == 1
    os.utime(small.desk.folder.root / name, (time.time() + 90, time.time() + 90))
    assert WAIT in client.get("/names").text
    assert small.reader.starts == 2


def test_a_pause_is_respected(small: SmallDesk) -> None:
    edit(small.desk.folder.root / "evidence.toml", "")
    small.reader.told = Progress(state="paused")
    assert "let the reading go on" in small.client().get("/look/runs").text
    assert small.reader.starts == 0

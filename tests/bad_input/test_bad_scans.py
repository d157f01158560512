"""A bad scan is named with its reason and a remedy, the others are read, and the exit code says so."""

from __future__ import annotations

import subprocess
from pathlib import Path

import duckdb
import pytest

from adminer.engine.folder import create_folder
from tests.bad_input.makers import make_all
from tests.cli.driver import inside

EXPECTED = {
    "empty.png": ("is empty", "it has 0 bytes", "Copy it again"),
    "truncated.jpg": ("is damaged", "end too early", "scan again"),
    "truncated.png": ("is damaged", "end too early", "scan again"),
    "mislabelled.png": ("is not a picture", "its name says PNG but its content is text", "Save it again"),
    "locked.pdf": ("is locked", "asks for a password", "without a password"),
    "broken.pdf": ("is damaged", "cannot be opened", "Save it again"),
    "huge.png": ("is too large (30000 x 30000 pixels)", "do not fit in memory", "lower resolution"),
    "black.png": ("is all black", "nothing on it stands out", "Scan the clipping again"),
    "white.tif": ("is all white", "nothing on it stands out", "Scan the clipping again"),
    "sound.bin": ("is not a picture", "its content is something else", "Save it again"),
    "phone.heic": ("is not a picture", "HEIC picture of a phone", "Save it again"),
}


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return a clippings folder with every bad file and two good ones."""
    made = create_folder(tmp_path_factory.mktemp("bad") / "file")
    make_all(made.scans)
    return made.root


@pytest.fixture(scope="module")
def run(folder: Path) -> subprocess.CompletedProcess[str]:
    """Digitise the folder once."""
    return inside("digitise", folder, "--workers", "2")


@pytest.mark.parametrize("file", sorted(EXPECTED))
def test_a_bad_scan_is_named_with_reason_and_remedy(
    folder: Path, run: subprocess.CompletedProcess[str], file: str
) -> None:
    (line,) = [line for line in run.stdout.splitlines() if line.startswith(f"  {file}: ")]
    for part in EXPECTED[file]:
        assert part in line
    with duckdb.connect(str(folder / "clippings.duckdb"), read_only=True) as connection:
        kept = connection.execute("SELECT reason, remedy FROM unread WHERE file = ?", [file]).fetchall()
    assert len(kept) == 1
    assert EXPECTED[file][0] in kept[0][0]
    assert kept[0][1]


def test_the_good_ones_are_read_and_the_exit_code_is_3(folder: Path, run: subprocess.CompletedProcess[str]) -> None:
    assert run.returncode == 3, run.stderr
    assert "Traceback" not in run.stdout + run.stderr
    with duckdb.connect(str(folder / "clippings.duckdb"), read_only=True) as connection:
        files = connection.execute("SELECT file FROM clippings ORDER BY file").fetchall()
    assert files == [("good.png",), ("zero-dpi.jpg",)]


def test_bad_scans_are_not_tried_again_while_they_stay_the_same(
    folder: Path, run: subprocess.CompletedProcess[str]
) -> None:
    again = inside("digitise", folder)
    assert again.returncode == 3
    assert "0 read now" in again.stdout
    assert "The database was up to date." in again.stdout


def test_status_lists_them_too(folder: Path, run: subprocess.CompletedProcess[str]) -> None:
    found = inside("status", folder)
    assert found.returncode == 0
    for file, (reason, *_rest) in EXPECTED.items():
        assert f"  {file}: {reason}" in found.stdout

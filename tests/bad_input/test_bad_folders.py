"""A folder, note, recipe or disk that is not as expected: a message with file, reason and remedy, and an exit code."""

from __future__ import annotations

import errno
import os
import shutil
import subprocess
from collections.abc import Iterator
from pathlib import Path

import duckdb
import pytest

from adminer.engine.digitise import digitise
from adminer.engine.folder import create_folder
from adminer.errors import MachineError
from adminer.store import readings
from tests.cli.driver import inside
from tests.engine import fakes
from tests.intake.pictures import card, save


@pytest.fixture
def root(tmp_path: Path) -> Path:
    """Return a clippings folder with two scans."""
    folder = create_folder(tmp_path / "file")
    for number in (1, 2):
        save(card(words=f"CUP {number}9c"), folder.scans / f"week-{number}.png")
    return folder.root


@pytest.fixture
def small_disk(tmp_path: Path) -> Iterator[Path]:
    """Return a disk of one megabyte; skips where this user may not mount one."""
    place = tmp_path / "disk"
    place.mkdir()
    mount = shutil.which("mount")
    if mount is None or os.geteuid() != 0:
        pytest.skip("only root may mount a small disk; the same is tested with a stand-in above")
    done = subprocess.run([mount, "-t", "tmpfs", "-o", "size=1m", "tmpfs", place], capture_output=True, check=False)
    if done.returncode != 0:
        pytest.skip("this machine forbids mounting; the same is tested with a stand-in above")
    yield place
    # lazily: a process the test has ended may hold the disk for a moment longer
    subprocess.run(["umount", "--lazy", place], check=True)


def answered(root: Path, *more: str) -> subprocess.CompletedProcess[str]:
    done = inside("digitise", root, *more)
    assert "Traceback" not in done.stdout + done.stderr
    return done


def test_a_folder_that_is_no_clippings_folder(tmp_path: Path) -> None:
    save(card(), tmp_path / "scans" / "week.png")
    done = answered(tmp_path)
    assert done.returncode == 4
    assert f"{tmp_path}: is not a clippings folder, because it has no clippings.toml" in done.stderr
    assert "adminer new" in done.stderr


def test_a_folder_that_does_not_exist(tmp_path: Path) -> None:
    done = answered(tmp_path / "nowhere")
    assert done.returncode == 4
    assert "does not exist" in done.stderr


def test_a_broken_settings_file(root: Path) -> None:
    (root / "clippings.toml").write_text("title = Clippings\n")
    done = answered(root)
    assert done.returncode == 4
    assert "clippings.toml: cannot be understood" in done.stderr
    assert "line 1" in done.stderr


def test_an_unknown_setting(root: Path) -> None:
    (root / "clippings.toml").write_text('titel = "Clippings"\n')
    done = answered(root)
    assert done.returncode == 4
    assert "has a wrong entry 'titel'" in done.stderr


def test_an_unknown_recipe_of_the_folder(root: Path) -> None:
    (root / "clippings.toml").write_text('recipe = "daguerreotype"\n')
    done = answered(root)
    assert done.returncode == 4
    assert "asks for the recipe 'daguerreotype', because there is no such recipe" in done.stderr
    assert "phone_photo" in done.stderr


def test_an_unknown_recipe_of_a_note_stops_nothing(root: Path) -> None:
    (root / "notes.csv").write_text("file,recipe\nweek-1.png,daguerreotype\nweek-2.png,phone\n")
    done = answered(root)
    assert done.returncode == 0
    assert "there is no recipe 'daguerreotype', so the scan is measured; write one of" in done.stdout
    assert "2 read now" in done.stdout


def test_a_note_for_a_file_that_is_not_there(root: Path) -> None:
    (root / "notes.csv").write_text("file,city\nweek-9.png,Osterby\nweek-1.png,Ferncliff\n")
    done = answered(root)
    assert done.returncode == 0
    assert "notes.csv: there is no file 'week-9.png' in scans/" in done.stdout
    assert "there is no file 'week-9.png'" in inside("status", root).stdout


def test_a_broken_row_of_notes(root: Path) -> None:
    (root / "notes.csv").write_text('file,city\nweek-1.png,"Oster"by\nweek-2.png,Ferncliff\n')
    done = answered(root)
    assert done.returncode == 0
    assert "notes.csv, line 2:" in done.stdout
    with duckdb.connect(str(root / "clippings.duckdb"), read_only=True) as connection:
        assert connection.execute("SELECT city FROM clippings ORDER BY file").fetchall() == [(None,), ("Ferncliff",)]


def test_notes_that_are_no_table(root: Path) -> None:
    (root / "notes.csv").write_text("week-1.png is from Osterby\n")
    done = answered(root)
    assert done.returncode == 4
    assert "notes.csv: has no column 'file'" in done.stderr


def test_a_broken_authority_file_loses_no_reading(root: Path) -> None:
    (root / "names" / "lines.toml").write_text("[[line]\n")
    done = answered(root)
    assert done.returncode == 4
    assert "lines.toml" in done.stderr
    (root / "names" / "lines.toml").write_text("")
    assert "0 read now, 2 read before" in answered(root).stdout


def test_a_full_disk_while_pages_are_read(root: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    digitise(root, reader=fakes.read, start=None)
    before = (root / "clippings.duckdb").read_bytes()
    save(card(words="NEW"), root / "scans" / "week-3.png")

    def no_space(path: Path, content: bytes) -> None:
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC), str(path))

    monkeypatch.setattr("adminer.engine.sources.write_whole", no_space)
    with pytest.raises(MachineError, match=r"files\.json: cannot be written, because no space left.*Free some space"):
        digitise(root, reader=fakes.read, start=None)
    assert (root / "clippings.duckdb").read_bytes() == before
    monkeypatch.undo()
    assert digitise(root, reader=fakes.read, start=None).read_now == 1


def test_a_half_written_reading_never_stays(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def no_space(handle: int) -> None:
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    readings.write_whole(tmp_path / "kept", b"old")
    monkeypatch.setattr(os, "fsync", no_space)
    with pytest.raises(OSError, match="No space"):
        readings.write_whole(tmp_path / "kept", b"new and longer")
    assert (tmp_path / "kept").read_bytes() == b"old"
    assert list(tmp_path.iterdir()) == [tmp_path / "kept"]


def test_a_really_full_disk(small_disk: Path) -> None:
    folder = create_folder(small_disk / "file")
    save(card(), folder.scans / "week-1.png")
    ballast = small_disk / "ballast"
    with ballast.open("wb", buffering=0) as stream:
        for size in (65536, 4096):
            try:
                while True:
                    stream.write(bytes(size))
            except OSError:
                continue
    done = answered(folder.root)
    assert done.returncode == 5
    assert "cannot be written, because no space left on device" in done.stderr
    assert "Free some space" in done.stderr
    ballast.unlink()
    os.truncate(folder.root / "notes.csv", 0)
    # the disk has room for the reading now, but not for a database of this size
    done = answered(folder.root)
    assert done.returncode == 5
    assert "no space left" in done.stderr.lower()
    assert not list(folder.root.glob(".clippings*"))


def test_a_read_only_folder(small_disk: Path) -> None:
    folder = create_folder(small_disk / "file")
    save(card(), folder.scans / "week-1.png")
    subprocess.run(["mount", "-o", "remount,ro", small_disk], check=True)
    done = answered(folder.root)
    assert done.returncode == 5
    assert "cannot be written, because read-only file system" in done.stderr
    assert "Copy the folder to a place where you may write" in done.stderr


def test_a_folder_without_the_right_to_write(root: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def forbidden(path: Path, *_arguments: object, **_options: object) -> None:
        raise PermissionError(errno.EACCES, os.strerror(errno.EACCES), str(path))

    monkeypatch.setattr(Path, "mkdir", forbidden)
    with pytest.raises(MachineError, match=r"permission denied.*[Cc]hange its permissions"):
        digitise(root, reader=fakes.read, start=None)


def test_a_database_that_is_none(root: Path) -> None:
    (root / "clippings.duckdb").write_text("not a database")
    done = inside("ask", "set-prices", "--folder", root)
    assert done.returncode == 7
    assert "clippings.duckdb: cannot be opened" in done.stderr
    assert "delete it and run adminer digitise again" in done.stderr.lower()


def test_a_folder_that_was_not_read_yet(root: Path) -> None:
    done = inside("ask", "set-prices", "--folder", root)
    assert done.returncode == 4
    assert "has no database yet" in done.stderr
    assert "adminer digitise" in done.stderr


def test_a_file_whose_name_is_no_text(root: Path) -> None:
    source = os.fsencode(root / "scans" / "week-1.png")
    try:
        shutil.copy(source, os.fsencode(root / "scans") + b"/week-\xff.png")
    except OSError:
        pytest.skip("this file system takes no name that is no text")
    done = answered(root)
    assert done.returncode == 3
    assert "  week-?.png: has a name that is no text. Rename it." in done.stdout
    assert "2 read now" in done.stdout


def test_a_name_that_would_steer_the_terminal(root: Path) -> None:
    (root / "scans" / "week-\x1b[2J.png").write_bytes(b"")
    done = answered(root)
    assert done.returncode == 3
    assert "\x1b" not in done.stdout + done.stderr


def test_a_folder_without_scans(tmp_path: Path) -> None:
    done = answered(create_folder(tmp_path / "file").root)
    assert done.returncode == 0
    assert "There is no scan in the folder scans/ yet." in done.stdout

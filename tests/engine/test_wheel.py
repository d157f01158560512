"""The wheel carries the questions, the recipes, the demo and every data file, and runs away from its sources."""

from __future__ import annotations

import os
import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

from adminer.shipped import shipped

ROOT = Path(__file__).resolve().parents[2]


@pytest.fixture(scope="module")
def unpacked(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return the folder of an unpacked wheel."""
    pytest.importorskip("hatchling", reason="hatchling builds the wheel and is not installed")
    place = tmp_path_factory.mktemp("wheel")
    subprocess.run([sys.executable, "-m", "hatchling", "build", "-t", "wheel", "-d", place], cwd=ROOT, check=True)
    (wheel,) = place.glob("*.whl")
    with zipfile.ZipFile(wheel) as packed:
        packed.extractall(place / "unpacked")
    return place / "unpacked"


def test_what_lies_at_the_top_level_travels_inside(unpacked: Path) -> None:
    inside = unpacked / "adminer" / "_shipped"
    for name in ("queries", "pipelines"):
        assert sorted(p.name for p in (inside / name).iterdir()) == sorted(
            p.name for p in (ROOT / name).iterdir() if p.is_file()
        )
    assert (inside / "corpus_demo" / "clippings.toml").is_file()
    assert any((inside / "corpus_demo" / "scans").iterdir())


def test_no_data_file_of_the_package_stays_behind(unpacked: Path) -> None:
    ignored = {".py", ".pyc"}
    there = {p.relative_to(ROOT).as_posix() for p in (ROOT / "adminer").rglob("*") if p.is_file()}
    listed = subprocess.run(["git", "ls-files", "adminer"], cwd=ROOT, capture_output=True, text=True, check=False)
    kept = set(listed.stdout.split()) & there if listed.returncode == 0 else there
    data = {name for name in kept if Path(name).suffix not in ignored}
    assert data
    assert [name for name in sorted(data) if not (unpacked / name).is_file()] == []


def test_the_command_finds_them_without_the_sources(unpacked: Path, tmp_path: Path) -> None:
    code = "from adminer.shipped import shipped; print(shipped('queries')); from adminer.cli.main import run; run()"
    done = subprocess.run(
        [sys.executable, "-c", code, "ask"],
        cwd=tmp_path,
        env=os.environ | {"PYTHONPATH": str(unpacked)},
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    assert done.stdout.startswith(str(unpacked / "adminer" / "_shipped" / "queries"))
    assert "set-prices" in done.stdout


def test_a_source_tree_finds_them_at_its_top() -> None:
    assert shipped("queries").is_dir()
    assert shipped("pipelines").is_dir()

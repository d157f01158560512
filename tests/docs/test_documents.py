"""Run every command, program and example file of README.md and DEVELOPERS.md."""

from __future__ import annotations

import os
import re
import shlex
import shutil
import subprocess
import sys
import tomllib
from collections.abc import Sequence
from pathlib import Path
from typing import Final

import pytest

from adminer.layout.recipe import load_recipes
from adminer.store.queries import read_question, run_question
from tests.docs.fences import commands, fences
from tests.run_all import STEPS

ROOT: Final = Path(__file__).resolve().parents[2]
README: Final = ROOT / "README.md"
DEVELOPERS: Final = ROOT / "DEVELOPERS.md"
BIN: Final = Path(sys.executable).parent
SECONDS: Final = 300
SCORED: Final = 8  # every so many scans are scored; the floors are held by all of them, in tests/score


@pytest.fixture(scope="session")
def workplace(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return a folder as a reader of the README has it after `make demo`: the demo beside nothing else."""
    digitised = os.environ.get("ADMINER_DEMO_FOLDER")
    if not digitised or not (Path(digitised) / "clippings.duckdb").exists():
        pytest.skip("the digitised demo is missing; make test digitises it first and names it in ADMINER_DEMO_FOLDER")
    place = tmp_path_factory.mktemp("reader")
    shutil.copytree(digitised, place / "demo-clippings")
    keep_some_truth(place / "demo-clippings" / "truth.jsonl")
    for part in ("adminer", "corpus_demo", "pipelines", "queries", "tests", "pyproject.toml"):
        (place / part).symlink_to(ROOT / part)
    return place


def keep_some_truth(path: Path) -> None:
    """Leave the truth of a few scans: each one of it is read anew, twice, for the readers alone beside it."""
    rows = path.read_text(encoding="utf-8").splitlines(keepends=True)
    path.write_text("".join(rows[::SCORED]), encoding="utf-8")


def run(line: str, cwd: Path) -> None:
    """Run one command line of a document with the programs of this environment, and expect it to succeed."""
    words = shlex.split(line)
    if words[0].startswith((".venv-dev/", ".venv-run/")):
        words[0] = Path(words[0]).name
    words[0] = str(BIN / words[0])
    done = subprocess.run(words, cwd=cwd, capture_output=True, text=True, timeout=SECONDS, check=False)
    assert done.returncode == 0, f"{line}\n{done.stdout[-2000:]}\n{done.stderr[-2000:]}"


def is_step(words: Sequence[str]) -> bool:
    """Say whether a command is a step that this very run of all checks goes through."""
    return any(tuple(words) == (Path(step[1]).name, *step[2:]) for _, step in STEPS if step[0] == "-m")


def follow(line: str, cwd: Path) -> None:
    """Do what a document's line says, in the way a test can."""
    words = shlex.split(line)
    words[0] = Path(words[0]).name
    if words[0] == "make":
        follow_make(words[1])
    elif words[:2] == ["adminer", "desk"]:
        open_and_close_the_desk(words, cwd)
    elif words[0] == "pre-commit":
        subprocess.run(["git", "init", "-q", str(cwd / "hooks")], check=True)
        shutil.copy(ROOT / ".pre-commit-config.yaml", cwd / "hooks")
        run(line, cwd / "hooks")
    elif not is_step(words):
        run(line, cwd)


def follow_make(target: str) -> None:
    """Check that a make target exists and ends in the step that this run of all checks takes as well."""
    # inside `make test` the outer make hands its flags down, and the inner one would talk of folders
    bare = {name: value for name, value in os.environ.items() if not name.startswith(("MAKE", "MFLAGS"))}
    command = ["make", "-n", "--no-print-directory", target]
    shown = subprocess.run(command, cwd=ROOT, env=bare, capture_output=True, text=True, check=True).stdout
    last = {"demo": "adminer demo", "test": "tests.run_all", "lock": "pip compile"}[target]
    assert last in shown.strip().splitlines()[-1]
    if target == "demo":
        assert any("demo" in arguments for _, arguments in STEPS)


def open_and_close_the_desk(words: Sequence[str], cwd: Path) -> None:
    """Start the desk, wait for the address it prints, and stop it."""
    command = [str(BIN / words[0]), *words[1:]]
    with subprocess.Popen(command, cwd=cwd, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True) as desk:
        assert desk.stdout is not None
        told = ""
        for text in desk.stdout:
            told += text
            if "http://127.0.0.1" in text:
                break
        desk.terminate()
        desk.stdout.read()
    assert "http://127.0.0.1" in told, told


@pytest.mark.slow
@pytest.mark.parametrize("line", commands(README))
def test_command_of_the_readme_works(line: str, workplace: Path) -> None:
    follow(line, workplace)


@pytest.mark.slow
@pytest.mark.parametrize("line", commands(DEVELOPERS))
def test_command_of_the_contributors_page_works(line: str, workplace: Path) -> None:
    follow(line, workplace)


def test_programs_of_the_contributors_page_run() -> None:
    programs = [fence.body for fence in fences(DEVELOPERS) if fence.kind == "python"]
    assert len(programs) == 2
    for program in programs:
        exec(compile(program, str(DEVELOPERS), "exec"), {})  # noqa: S102 - our own document, that is the test


def test_the_example_recipe_is_a_recipe(tmp_path: Path) -> None:
    (fence,) = [fence for fence in fences(DEVELOPERS) if fence.kind == "toml"]
    assert fence.file is not None
    (tmp_path / Path(fence.file).name).write_text(fence.body, encoding="utf-8")
    assert list(load_recipes(tmp_path)) == [tomllib.loads(fence.body)["name"]]


def test_the_example_question_is_answered(tmp_path: Path, workplace: Path) -> None:
    (fence,) = [fence for fence in fences(DEVELOPERS) if fence.kind == "sql"]
    assert fence.file is not None
    path = tmp_path / Path(fence.file).name
    path.write_text(fence.body, encoding="utf-8")
    question = read_question(path)
    answer = run_question(workplace / "demo-clippings" / "clippings.duckdb", question, {"to_year": "1964"})
    assert answer.column_names == [column.name for column in question.columns]


@pytest.mark.parametrize("document", [README, DEVELOPERS], ids=lambda path: path.name)
def test_every_file_a_document_names_exists(document: Path) -> None:
    text = document.read_text(encoding="utf-8")
    made = {fence.file for fence in fences(document)} | {"names/*.toml"}
    named = set(re.findall(r"`((?:adminer|tests|pipelines|queries|corpus_demo)/[\w./-]+)`", text)) - made
    assert [name for name in sorted(named) if not (ROOT / name).exists()] == []
    pictures = re.findall(r"!\[[^]]*\]\(([^)]+)\)", text)
    assert [name for name in pictures if not (ROOT / name).exists()] == []

"""The commands as a person types them, from an empty folder to an answer, with their exit codes."""

from __future__ import annotations

import json
import os
import shutil
from pathlib import Path

import numpy as np
import pytest
from PIL import Image

from adminer.engine.folder import open_folder
from adminer.errors import INTERRUPTED, AdminerError
from tests.cli.driver import inside
from tests.intake.pictures import card, save


@pytest.fixture(scope="module")
def scans(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return a folder of two scans that belongs to nobody."""
    folder = tmp_path_factory.mktemp("found")
    for number in (1, 2):
        save(card(words=f"CUP {number}9c"), folder / f"week-{number}.png")
    (folder / ".DS_Store").write_bytes(b"leavings")
    (folder / "README.md").write_text("Two scans.")
    return folder


@pytest.fixture(scope="module")
def root(tmp_path_factory: pytest.TempPathFactory, scans: Path) -> Path:
    """Return a digitised clippings folder."""
    root = tmp_path_factory.mktemp("cli") / "my clippings"
    made = inside("new", root, "--title", 'The "Osterby" file', "--scans", scans)
    assert made.returncode == 0, made.stderr
    assert "with 2 scans" in made.stdout
    (root / "notes.csv").write_text("file,publication,published,city\nweek-1.png,Ledger,1952-03-14,Osterby\n")
    done = inside("digitise", root)
    assert done.returncode == 0, done.stderr
    return root


def test_new_makes_what_the_design_promises(root: Path) -> None:
    assert open_folder(root).settings.title == 'The "Osterby" file'
    for part in ("clippings.toml", "scans/week-1.png", "names/lines.toml", "names/makers.toml", "names/retailers.toml"):
        assert (root / part).is_file()
    assert sorted(path.name for path in (root / "scans").iterdir()) == ["week-1.png", "week-2.png"]


def test_new_never_overwrites(root: Path) -> None:
    done = inside("new", root)
    assert done.returncode == 4
    assert "is a clippings folder already" in done.stderr


def test_digitise_reports_counts_on_stdout_and_progress_on_stderr(root: Path) -> None:
    done = inside("digitise", root, "--again", "--workers", "1")
    assert "2 files, 2 pages: 2 read now, 0 read before, 0 not readable" in done.stdout
    assert "week-1.png: magazine_page (fake)" in done.stdout
    assert "The database has 2 clippings" in done.stdout
    assert "Reading pages: 2 to do." in done.stderr
    assert "Reading pages: 2 of 2" in done.stderr
    assert " a minute, 0 s left" in done.stderr


def test_ask_lists_the_questions() -> None:
    done = inside("ask")
    assert done.returncode == 0
    assert "set-prices" in done.stdout
    assert "Which chain offered which set at what price" in done.stdout


def test_the_options_of_a_question_come_from_its_header() -> None:
    done = inside("ask", "set-prices", "--help")
    assert done.returncode == 0
    assert "--retailer" in done.stdout
    assert "--from-year" in done.stdout
    assert "saving_percent" in done.stdout


def test_ask_answers_as_json(root: Path) -> None:
    done = inside("ask", "clipping-facts", "--clipping", "week-1.png", "--folder", root, "--format", "json")
    assert done.returncode == 0, done.stderr
    facts = json.loads(done.stdout)
    assert {"price", "item"} <= {fact["kind"] for fact in facts}


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (("ask", "clipping-facts"), "needs --clipping"),
        (("ask", "clipping-facts", "--clipping", "wek-1.png"), "Near: week-1.png"),
        (("ask", "line-history", "--line", "Tansy Morn"), "this file has no line 'Tansy Morn'"),
        (("ask", "set-prices", "--from-year", "1990"), "ask with fewer"),
        (("ask", "price-per-piece"), "nothing of this kind."),
        (("runs",), "adminer names proposes lines"),
    ],
)
def test_an_answer_without_rows_says_why(root: Path, words: tuple[str, ...], says: str) -> None:
    done = inside(*words, root, "--format", "csv")
    assert done.returncode == 0, done.stderr
    assert says in done.stderr
    assert "No " not in done.stdout


def test_ask_writes_a_file(root: Path, tmp_path: Path) -> None:
    out = tmp_path / "answer.parquet"
    done = inside("ask", "retailer-adverts", "--folder", root, "--format", "parquet", "--out", out)
    assert done.returncode == 0, done.stderr
    assert out.read_bytes().startswith(b"PAR1")


def test_ask_refuses_a_place_it_cannot_write(root: Path, tmp_path: Path) -> None:
    out = tmp_path / "nowhere" / "answer.csv"
    done = inside("ask", "retailer-adverts", "--folder", root, "--format", "csv", "--out", out)
    assert done.returncode == 5
    assert "cannot be written, because no such file or directory" in done.stderr


def test_an_unknown_question_and_a_wrong_value_are_wrong_use(root: Path) -> None:
    assert inside("ask", "what-now", "--folder", root).returncode == 2
    done = inside("ask", "set-prices", "--from-year", "soon", "--folder", root)
    assert done.returncode == 2
    assert "give a whole number" in done.stderr.lower()


def test_sql_answers_and_refuses(root: Path) -> None:
    done = inside("sql", "SELECT count(*) AS n FROM words", "--folder", root, "--format", "csv")
    assert (done.returncode, done.stdout) == (0, "n\r\n8\r\n")
    done = inside("sql", "DROP TABLE words", "--folder", root)
    assert done.returncode == 7
    assert "is no SELECT but DROP" in done.stderr


def test_sql_says_when_there_are_more_rows(root: Path) -> None:
    done = inside("sql", "SELECT text FROM words", "--folder", root, "--rows", "3")
    assert "There are more than 3 rows" in done.stderr


def test_show_gives_words_prices_the_rule_and_the_crop(root: Path, tmp_path: Path) -> None:
    facts = json.loads(
        inside("ask", "clipping-facts", "--clipping", "week-1.png", "--folder", root, "--format", "json").stdout
    )
    offer = next(fact["offer_id"] for fact in facts if fact["kind"] == "price")
    done = inside("show", offer, "--folder", root, "--out", tmp_path / "crop.png")
    assert done.returncode == 0, done.stderr
    assert "price: 1.29 USD" in done.stdout
    assert "  why: " in done.stdout
    assert "$1.29" in done.stdout
    crop = np.asarray(Image.open(tmp_path / "crop.png"))
    assert crop.shape[0] < 240
    assert (crop == (176, 32, 32)).all(axis=2).any()  # the frame around the price


def test_show_takes_the_name_of_a_scan(root: Path, tmp_path: Path) -> None:
    done = inside("show", "week-1.png", "--folder", root, "--out", tmp_path / "whole.png")
    assert done.returncode == 0, done.stderr
    assert "publication: Ledger" in done.stdout
    assert Image.open(tmp_path / "whole.png").size == (360, 240)


def test_show_refuses_what_is_not_there(root: Path) -> None:
    done = inside("show", "week-7.png", "--folder", root)
    assert done.returncode == 2
    assert "there is no clipping, advert or offer 'week-7.png'" in done.stderr


def test_status_says_what_changed(root: Path) -> None:
    assert "Nothing changed since the last run." in inside("status", root).stdout
    save(card(words="NEW"), root / "scans" / "week-3.png")
    done = inside("status", root)
    (root / "scans" / "week-3.png").unlink()
    assert "1 scans are new or changed since the last run: week-3.png" in done.stdout


def test_a_copied_folder_is_not_a_changed_one_but_another_content_is(root: Path, tmp_path: Path) -> None:
    copy = tmp_path / "copy"
    shutil.copytree(root, copy, copy_function=shutil.copy)  # as cp -r does: the contents, with the times of now
    later = (copy / "clippings.duckdb").stat().st_mtime + 60
    for path in copy.rglob("*"):
        if path.suffix in (".png", ".csv", ".toml"):
            os.utime(path, (later, later))
    assert "Nothing changed since the last run." in inside("status", copy).stdout
    save(card(words="OTHER"), copy / "scans" / "week-2.png")
    (copy / "notes.csv").write_text("file,publication\nweek-1.png,Sentinel\n")
    (copy / "names" / "makers.toml").unlink()
    told = inside("status", copy).stdout
    assert "1 scans are new or changed since the last run: week-2.png" in told
    assert "Changed since the last run: notes.csv" in told
    assert "Changed since the last run: names/makers.toml" in told
    assert "lines.toml" not in told


@pytest.mark.parametrize("option", [False, True])
@pytest.mark.parametrize(
    "words",
    [("status",), ("date",), ("runs",), ("ask", "set-prices"), ("names",), ("digitise",), ("show", "week-1.png"),
     ("sql", "SELECT 1 AS one"), ("names", "reject", "Nothing")],
)  # fmt: skip
def test_the_folder_is_named_after_the_command_or_by_the_option(
    root: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, words: tuple[str, ...], *, option: bool
) -> None:
    monkeypatch.chdir(tmp_path)
    done = inside(*words, "--folder", root) if option else inside(*words, root)
    assert done.returncode == 0, done.stderr
    monkeypatch.chdir(root)
    assert inside(*words).returncode == 0


def test_the_folder_may_come_before_the_scan_and_the_query(
    root: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    assert "publication: Ledger" in inside("show", root, "week-1.png").stdout
    assert inside("sql", root, "SELECT 7 AS seven", "--format", "csv").stdout == "seven\r\n7\r\n"


def test_a_folder_named_twice_or_never_is_said(root: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    twice = inside("status", root, "--folder", tmp_path)
    assert (twice.returncode, "two folders are named" in twice.stderr) == (2, True)
    assert inside("show", root).returncode == 2
    assert "what is to be shown" in inside("show", root).stderr
    monkeypatch.chdir(tmp_path)
    never = inside("date", "nofolder")
    assert never.returncode == 4
    assert "'nofolder' is no folder" in never.stderr
    assert "--scans" not in never.stderr


def test_doctor_names_reader_models_and_libraries() -> None:
    done = inside("doctor")
    assert done.returncode == 0, done.stderr
    for part in ("tesseract", "network 'det'", "network 'rec'", "duckdb", "rapidocr", "queries"):
        assert any(line.startswith(part) for line in done.stdout.splitlines()), part


def test_wrong_use_has_exit_code_2() -> None:
    assert inside("digitise", "--pages", "3").returncode == 2
    assert inside("digitize").returncode == 2


def test_the_help_page_tells_the_exit_codes() -> None:
    done = inside("--help")
    assert done.returncode == 0
    words = " ".join(done.stdout.split())
    for code in (*(kind.exit_code for kind in AdminerError.__subclasses__()), INTERRUPTED):
        assert f" {code} " in words.partition("Exit codes:")[2], code

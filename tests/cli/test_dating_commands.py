"""`adminer date`, `adminer runs` and `adminer money`, as their user types them."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path

import duckdb
import pytest

from adminer.dating.edtf import bounds_of
from adminer.engine.folder import create_folder
from adminer.names.authority import load_authorities
from adminer.store.dating_step import dating_step
from adminer.store.load import build_database
from tests.cli.driver import inside
from tests.store.story import story

PAGES = 20


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Path]:
    root = tmp_path_factory.mktemp("dating") / "clippings"
    create_folder(root)
    (root / "clippings.toml").write_text('title = "Story"\nyears = [1940, 1960]\n', encoding="utf-8")
    (root / "searches.csv").write_text(
        "paper,issues,line,found\nThe Osterby Ledger,1952-01-03/1952-02-28,tansy-morn,no\n", encoding="utf-8"
    )
    build(root)
    yield root


def build(root: Path) -> None:
    step = dating_step(root, load_authorities(root / "names"), years=(1940, 1960))
    build_database(root / "clippings.duckdb", story(PAGES), after=(step,))


def test_every_advert_has_an_estimate_and_every_estimate_reads_back(folder: Path) -> None:
    with duckdb.connect(str(folder / "clippings.duckdb"), read_only=True) as connection:
        rows = connection.execute(
            "SELECT edtf_90, earliest_90, latest_90, edtf_50, posterior, advert_id FROM date_estimates"
        ).fetchall()
        adverts = connection.execute("SELECT count(*) FROM adverts").fetchall()
        runs = connection.execute("SELECT start_edtf, end_edtf, first_seen FROM runs").fetchall()
    assert len(rows) == adverts[0][0] == PAGES
    for edtf, earliest, latest, half, posterior, _ in rows:
        assert (bounds_of(edtf).earliest, bounds_of(edtf).latest) == (earliest, latest)
        assert bounds_of(half).earliest is not None
        assert 0.9 < sum(json.loads(posterior).values()) <= 1.001
    assert runs
    for start, end, _ in runs:
        assert all(bounds_of(text) for text in (start, end) if text)


def test_the_list_shows_undated_adverts_or_all(folder: Path) -> None:
    undated = json.loads(inside("date", folder, "--format", "json").stdout)
    every = json.loads(inside("date", folder, "--all", "--format", "json").stdout)
    assert len(undated) == PAGES // 5
    assert len(every) == PAGES
    assert {row["dated_by"] for row in undated} == {"estimate"}


def test_one_scan_is_dated_with_its_reasons_and_the_caution(folder: Path) -> None:
    told = inside("date", folder, "week-004.png")
    assert told.returncode == 0
    assert "90 % set" in told.stdout
    assert "the line's dated adverts" in told.stdout
    assert "no appraisal" in told.stdout


def test_the_posterior_is_drawn(folder: Path, tmp_path: Path) -> None:
    for name, start in (("p.png", b"\x89PNG"), ("p.svg", b"<svg")):
        done = inside("date", folder, "week-004.png", "--picture", tmp_path / name)
        assert done.returncode == 0
        assert (tmp_path / name).read_bytes().startswith(start)


def test_a_person_adds_and_strikes_evidence(folder: Path) -> None:
    added = inside("date", folder, "week-009.png", "--add", "1958", "--reason", "pencilled on the back")
    assert added.returncode == 0
    assert "added by a person" in added.stdout
    struck = inside("date", folder, "week-009.png", "--strike", "added by a person", "--reason", "another's hand")
    assert "added by a person" in struck.stdout
    assert "yes" in struck.stdout
    written = (folder / "evidence.toml").read_text(encoding="utf-8")
    assert written.count("[[add]]") == written.count("[[strike]]") == 1
    build(folder)
    with duckdb.connect(str(folder / "clippings.duckdb"), read_only=True) as connection:
        kinds = connection.execute("SELECT struck FROM evidence WHERE kind = 'added by a person'").fetchall()
    assert kinds == [(True,)]
    (folder / "evidence.toml").unlink()
    build(folder)


def test_a_scan_is_linked_with_its_reverse_and_dated_by_it(folder: Path) -> None:
    done = inside("date", folder, "week-009.png", "--link", "week-004.png", "--reason", "reverse of it")
    assert done.returncode == 0
    assert "other adverts of the scan" in done.stdout
    assert (folder / "evidence.toml").read_text(encoding="utf-8").count("[[link]]") == 1
    (folder / "evidence.toml").unlink()
    unknown = inside("date", folder, "week-009.png", "--link", "nothing.png", "--reason", "reverse of it")
    assert unknown.returncode != 0
    assert not (folder / "evidence.toml").exists()


def test_added_evidence_against_the_rest_is_called_so_and_is_no_surer_than_its_trust(folder: Path) -> None:
    try:
        told = inside("date", folder, "week-005.png", "--add", "1947-02", "--reason", "a guess", "--trust", "0.7")
        assert told.returncode == 0, told.stderr
        assert "CONTRADICTION: 'a guess: 1947-02' against" in told.stdout
        assert "the 70% you trust it" in told.stdout
        (folder / "evidence.toml").unlink()
        agreeing = inside("date", folder, "week-005.png", "--add", "1952-04", "--reason", "a slip", "--trust", "0.7")
        assert "CONTRADICTION" not in agreeing.stdout
    finally:
        (folder / "evidence.toml").unlink(missing_ok=True)


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        (("date", "nothing.png"), "there is no clipping or advert"),
        (("date", "--strike", "x"), "which advert is meant"),
        (("date", "week-004.png", "--add", "1958"), "needs a reason"),
        (("date", "week-004.png", "--add", "10/10/58", "--reason", "x"), "not a date in EDTF"),
        (("date", "week-004.png", "--strike", "nonsense", "--reason", "x"), "Strike one of: calendar"),
        (
            ("date", "week-004.png", "--strike", "the line's dated adverts", "--text", "zzz", "--reason", "x"),
            "has 'zzz'",
        ),
        (("date", "--check", "no.jsonl"), "does not exist"),
        (("runs", "No Such Line"), "no sighting of"),
        (("runs", "Tanzy Morn"), "Near: Tansy Morn."),
        (("runs", "Tansy Morn", "--piece", "tureen"), "with 'tureen'"),
        (("runs", "--retailer", "x"), "which line is meant"),
    ],
)
def test_mistakes_are_answered_with_a_remedy(folder: Path, arguments: tuple[str, ...], says: str) -> None:
    done = inside(arguments[0], folder, *arguments[1:])
    assert done.returncode in (2, 4)
    assert says in done.stderr
    assert "Traceback" not in done.stderr
    assert not (folder / "evidence.toml").exists()


def test_hidden_dates_are_judged(folder: Path, tmp_path: Path) -> None:
    truth = tmp_path / "truth.jsonl"
    truth.write_text(
        "\n".join(json.dumps({"file": f"week-{n:03}.png", "true_date": "1952-03-13"}) for n in range(PAGES)),
        encoding="utf-8",
    )
    done = inside("date", folder, "--check", truth)
    assert f"adverts with hidden dates       {PAGES}" in done.stdout
    truth.write_text("{broken", encoding="utf-8")
    assert inside("date", folder, "--check", truth).returncode == 4


def test_runs_are_listed_and_studied(folder: Path, tmp_path: Path) -> None:
    rows = json.loads(inside("runs", folder, "--format", "json").stdout)
    assert {row["retailer"] for row in rows} == {"all retailers", "Penhallow Stores", "Tidewell Markets"}
    picture = tmp_path / "run.svg"
    told = inside("runs", folder, "Tansy Morn", "--retailer", "penhallow", "--methods", "--picture", picture)
    assert told.returncode == 0
    for words in ("seen", "began", "ended", "two runs", "Look at these issues next", "optimal-linear", "assumes"):
        assert words in told.stdout
    assert picture.read_text(encoding="utf-8").startswith("<svg")


def test_the_run_of_a_set_counts_only_adverts_that_show_it(folder: Path) -> None:
    whole = inside("runs", folder, "Tansy Morn").stdout.splitlines()[0]
    of_set = inside("runs", folder, "Tansy Morn", "--piece", "set:16").stdout.splitlines()[0]
    assert int(of_set.split()[-2]) < int(whole.split()[-2])


def test_the_simulation_prints_every_method(folder: Path) -> None:
    rows = json.loads(inside("runs", "--simulate", "10", "--format", "json").stdout)
    assert {row["method"] for row in rows} == {
        "lattice", "strauss-sadler", "solow", "robson-whitlock", "mcinerny", "optimal-linear", "searched weeks",
    }  # fmt: skip


def test_an_amount_in_later_dollars_names_its_source() -> None:
    told = inside("money", "1.39", "1951-05", "--year", "1980")
    assert "consumer" in told.stdout.lower() or "CPI-U" in told.stdout
    assert "no appraisal" in told.stdout
    for wrong in (("x", "1951"), ("1.39", "soon"), ("1.39", "1950/.."), ("1.39", "1900")):
        assert inside("money", *wrong).returncode == 2


def test_a_rebuilt_database_has_the_same_estimates(folder: Path, tmp_path: Path) -> None:
    def rows(path: Path) -> list[tuple[object, ...]]:
        with duckdb.connect(str(path), read_only=True) as connection:
            return [
                *connection.execute("SELECT * FROM date_estimates").fetchall(),
                *connection.execute("SELECT * FROM evidence").fetchall(),
                *connection.execute("SELECT * FROM runs").fetchall(),
            ]

    before = rows(folder / "clippings.duckdb")
    build(folder)
    assert rows(folder / "clippings.duckdb") == before


def test_inside_the_folder_no_folder_need_be_named(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(folder)
    assert "90 % set" in inside("date", "week-004.png").stdout
    assert "Penhallow Stores" in inside("runs").stdout
    monkeypatch.chdir(folder.parent)
    assert inside("date", "week-004.png").returncode == 4

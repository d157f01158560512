"""The whole way with a stand-in for the reader: what is read, kept, joined, refused and resumed."""

from __future__ import annotations

import shutil
from decimal import Decimal
from pathlib import Path

import duckdb
import pytest

from adminer.engine.digitise import DigitiseSummary, digitise
from adminer.engine.folder import create_folder
from adminer.intake.identity import digest_of
from adminer.names.authority import Authorities
from adminer.parsing import parse_page
from adminer.records import Advert, Note, PageReading
from tests.engine import fakes
from tests.intake.pictures import card, save


@pytest.fixture
def root(tmp_path: Path) -> Path:
    """Return a clippings folder with three scans."""
    folder = create_folder(tmp_path / "file", "A file")
    for number in (1, 2, 3):
        save(card(words=f"CUP {number}9c"), folder.scans / f"week-{number}.png")
    return folder.root


def run(root: Path, **options: object) -> DigitiseSummary:
    return digitise(root, workers=2, reader=fakes.read, start=None, **options)  # type: ignore[arg-type]


def rows(root: Path, sql: str) -> list[tuple[object, ...]]:
    with duckdb.connect(str(root / "clippings.duckdb"), read_only=True) as connection:
        return connection.execute(sql).fetchall()


def everything(root: Path) -> dict[str, list[tuple[object, ...]]]:
    tables = [str(row[0]) for row in rows(root, "SELECT table_name FROM duckdb_tables() ORDER BY 1")]
    return {table: rows(root, f"FROM {table}") for table in tables}


def test_scans_become_a_database_and_a_second_run_reads_nothing(root: Path) -> None:
    first = run(root)
    assert (first.files, first.pages, first.read_now, first.unread) == (3, 3, 3, ())
    assert first.counts is not None
    assert (first.counts.clippings, first.counts.words) == (3, 12)
    assert rows(root, "SELECT count(*), min(amount) FROM prices") == [(3, Decimal("1.29"))]
    second = run(root)
    assert (second.read_now, second.kept, second.counts) == (0, 3, None)


def test_the_same_input_gives_the_same_database_in_the_same_order(root: Path, tmp_path: Path) -> None:
    (root / "notes.csv").write_text("file,published,city\nweek-1.png,1952-03-14,Osterby\nweek-2.png,1952,Ferncliff\n")
    run(root)
    twin = tmp_path / "twin"
    shutil.copytree(root, twin, ignore=shutil.ignore_patterns(".readings", "*.duckdb"))
    run(twin)
    assert everything(twin) == everything(root)
    (root / "clippings.duckdb").unlink()
    again = run(root)
    assert again.read_now == 0
    assert everything(root) == everything(twin)


def test_only_what_is_new_is_read(root: Path) -> None:
    run(root)
    save(card(words="BOWL 15c"), root / "scans" / "new.png")
    assert run(root).read_now == 1
    assert rows(root, "SELECT count(*) FROM clippings") == [(4,)]


def test_an_edited_note_changes_the_database_without_reading(root: Path) -> None:
    run(root)
    (root / "notes.csv").write_text("file,published,city\nweek-1.png,1952-03-14,Osterby\n")
    summary = run(root)
    assert summary.read_now == 0
    assert summary.counts is not None
    assert rows(root, "SELECT city, published, published_from::VARCHAR FROM clippings WHERE file = 'week-1.png'") == [
        ("Osterby", "1952-03-14", "1952-03-14")
    ]


def test_the_same_picture_twice_is_one_clipping_with_two_notes(root: Path) -> None:
    shutil.copy(root / "scans" / "week-1.png", root / "scans" / "again.png")
    (root / "notes.csv").write_text("file,publication,city\nweek-1.png,Courier,Osterby\nagain.png,Ledger,\n")
    summary = run(root)
    assert (summary.files, summary.pages, summary.doubles) == (4, 3, 1)
    assert rows(root, "SELECT file, publication FROM notes ORDER BY note_no") == [
        ("again.png", "Ledger"),
        ("week-1.png", "Courier"),
    ]
    assert rows(root, "SELECT file, publication, city FROM clippings WHERE publication IS NOT NULL") == [
        ("again.png", "Ledger", "Osterby")
    ]


def test_a_removed_scan_leaves_the_database(root: Path) -> None:
    run(root)
    (root / "scans" / "week-2.png").unlink()
    run(root)
    assert rows(root, "SELECT file FROM clippings ORDER BY file") == [("week-1.png",), ("week-3.png",)]


def test_a_page_that_kills_its_worker_loses_only_itself(root: Path) -> None:
    save(card(words="KILL"), root / "scans" / "kill-always.png")
    save(card(words="KILL ONCE"), root / "scans" / "kill-once.png")
    save(card(words="RAISE"), root / "scans" / "raise.png")
    summary = run(root)
    assert [(item.file, item.reason.split(",")[0]) for item in summary.unread] == [
        ("kill-always.png", "its reader was killed twice"),
        ("raise.png", "RuntimeError: a fault of the program"),
    ]
    assert rows(root, "SELECT file FROM clippings WHERE file LIKE 'kill%'") == [("kill-once.png",)]
    assert rows(root, "SELECT count(*) FROM unread") == [(2,)]


def test_an_advert_that_goes_on_elsewhere_has_its_shop_and_dates_there_too(root: Path) -> None:
    (root / "notes.csv").write_text(
        "file,published,city,continues\nweek-1.png,1952-03-14,Osterby,\nweek-2.png,,,week-1.png\n"
    )
    run(root)
    first = rows(root, "SELECT clipping_id FROM clippings WHERE file = 'week-1.png'")[0][0]
    assert rows(root, "SELECT continues FROM clippings WHERE file = 'week-2.png'") == [(first,)]
    dated = rows(
        root, "SELECT valid_from, dated_by, a.city FROM adverts a JOIN clippings USING (clipping_id) ORDER BY file"
    )
    assert dated[0] == dated[1] != dated[2]


def test_again_reads_every_page_afresh(root: Path) -> None:
    run(root)
    assert run(root, again=True).read_now == 3


def test_keep_older_is_content_with_readings_of_another_version(root: Path) -> None:
    run(root)
    for path in (root / ".readings").glob("*.reading.json.gz"):
        clipping, _key, rest = path.name.split(".", 2)
        path.rename(path.with_name(f"{clipping}.0123456789ab.{rest}"))
    assert run(root, keep_older=True).read_now == 0
    assert run(root).read_now == 3


def test_a_damaged_kept_file_is_made_again(root: Path) -> None:
    run(root)
    for path in (root / ".readings").iterdir():
        path.write_bytes(b"damaged")
    summary = run(root)
    assert summary.counts is not None
    assert summary.counts.clippings == 3


def test_several_pages_of_one_file_are_clippings_of_their_own(root: Path) -> None:
    save(card(), root / "scans" / "roll.tif", save_all=True, append_images=[card(words="TWO")])
    run(root)
    assert rows(root, "SELECT leaf FROM clippings WHERE file = 'roll.tif' ORDER BY leaf") == [(1,), (2,)]


def test_parsing_in_workers_gives_the_same_database(
    root: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    twin = tmp_path / "twin"
    shutil.copytree(root, twin)
    run(root)
    monkeypatch.setattr("adminer.engine.parse_ahead.WORTH_WORKERS", 1)
    summary = run(twin)
    assert summary.problems == ()
    assert everything(twin) == everything(root)
    assert len(list((twin / ".readings").glob("*.parsed.json.gz"))) == 3
    (twin / "names" / "lines.toml").write_text('[[line]]\nid = "tansy-morn"\nname = "Tansy Morn"\n')
    run(twin)
    assert len(list((twin / ".readings").glob("*.parsed.json.gz"))) == 3


def test_a_page_that_cannot_be_parsed_keeps_its_words_and_stops_only_itself(
    root: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def parse(reading: PageReading, authorities: Authorities, notes: tuple[Note, ...] = ()) -> tuple[Advert, ...]:
        if reading.clipping_id == digest_of(root / "scans" / "week-2.png")[:16]:
            raise ValueError("a fault of the program")
        return parse_page(reading, authorities, notes)

    monkeypatch.setattr("adminer.engine.assemble.parse_page", parse)
    summary = run(root)
    assert summary.problems == (
        "week-2.png, page 1: its words were read but no offers could be made of them "
        "(ValueError: a fault of the program); please report it.",
    )
    assert rows(root, "SELECT count(DISTINCT clipping_id) FROM words") == [(3,)]
    assert rows(root, "SELECT count(DISTINCT clipping_id) FROM adverts") == [(2,)]
    assert run(root).problems == summary.problems  # still said while it stays so
    monkeypatch.undo()
    (root / "notes.csv").write_text("file\nweek-1.png\n")
    assert run(root).problems == ()


def test_a_page_without_one_word_is_listed_as_not_read_and_stays_a_clipping(root: Path) -> None:
    save(card(words="FOG"), root / "scans" / "fog.png")
    for _again in range(2):
        summary = run(root)
        assert [(item.file, item.reason) for item in summary.unread] == [
            ("fog.png", "shows no type that could be read")
        ]
        assert "by hand at the desk" in str(summary.unread[0].remedy)
    assert (summary.read_now, summary.counts) == (0, None)
    assert rows(root, "SELECT count(*) FROM clippings") == [(4,)]
    assert rows(root, "SELECT file FROM unread") == [("fog.png",)]


def test_edited_evidence_and_repairs_change_the_database_without_reading(root: Path) -> None:
    run(root)
    advert = str(rows(root, "SELECT min(advert_id) FROM adverts")[0][0])
    (root / "evidence.toml").write_text(
        f'[[add]]\nadvert = "{advert}"\ndates = "1951-05"\nreason = "a pencilled date"\n', encoding="utf-8"
    )
    summary = run(root)
    assert summary.read_now == 0
    assert rows(root, f"SELECT edtf_90 FROM date_estimates WHERE advert_id = '{advert}'") == [("1951-05",)]
    assert rows(root, "SELECT DISTINCT item FROM offers") != []
    before = rows(root, "SELECT item FROM offers ORDER BY offer_id")
    (root / "names" / "repairs.toml").write_text(
        '[[repair]]\nread = "saucer"\nis = "bowl"\nseen = 2\n', encoding="utf-8"
    )
    summary = run(root)
    assert summary.read_now == 0
    after = rows(root, "SELECT item FROM offers ORDER BY offer_id")
    assert after != before
    assert all("bowl" in str(item).lower() for (item,) in after)
    (root / "evidence.toml").unlink()
    (root / "names" / "repairs.toml").unlink()
    assert run(root).counts is not None
    assert rows(root, "SELECT item FROM offers ORDER BY offer_id") == before

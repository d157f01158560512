"""What is scored from the database is what is scored straight from the stages."""

from __future__ import annotations

import json
from dataclasses import replace
from datetime import date
from pathlib import Path

import typer
from typer.testing import CliRunner

from adminer.cli.score import register
from adminer.engine.folder import create_folder
from adminer.records import Composition, ConditionText, DateFact, Link, Note, PieceCount
from adminer.score.database import found_in_database
from adminer.score.found import found_in_parsed
from adminer.store.load import DatabaseExtras, build_database
from tests.desk.pages import offer, page


def full_page() -> object:
    made = offer(1, "45-piece set", "29.95", y=100)
    box = made.box
    made = replace(
        made,
        composition=Composition(
            stated=45, listed=(PieceCount("cup", 8, "8 cups"), PieceCount("saucer", 8, "8 saucers"))
        ),
        line=Link("silverthaw", "Silverthaw", "Silverthaw", box, 1.0, "same words"),
        conditions=(ConditionText("limit", "limit one", box, 0.9, "1"),),
        prices=(replace(made.prices[0], condition="cardholder", condition_text="with card"),),
    )
    parsed = page((made, offer(2, "cup", "0.25", y=300)))
    day = date(1956, 3, 1)
    advert = replace(
        parsed.adverts[0],
        retailer=Link("tidewell", "Tidewell Markets", "TIDEWELL", box, 1.0, "same words"),
        valid_from=day,
        valid_to=day,
        dates=(DateFact("validity", "Mar. 1, 1956", "1956-03-01", day, day, box, 0.9),),
    )
    note = Note(parsed.clipping.file, city="Osterby")
    return replace(parsed, adverts=(advert,), clipping=replace(parsed.clipping, notes=(note,)))


def test_database_and_stages_say_the_same(tmp_path: Path) -> None:
    parsed = full_page()
    path = tmp_path / "clippings.duckdb"
    build_database(path, [parsed], DatabaseExtras(), unfinished=tmp_path / "building")  # type: ignore[list-item]
    (stored,) = found_in_database(path)
    straight = found_in_parsed(parsed)  # type: ignore[arg-type]
    assert stored.text == straight.text
    assert sorted(stored.prices, key=str) == sorted(straight.prices, key=str)
    assert set(stored.conditions) == set(straight.conditions)
    assert stored.adverts == straight.adverts
    assert stored.sets == straight.sets
    assert stored.dates == straight.dates
    assert stored.words == straight.words
    assert [line.kind for line in stored.lines] == [line.kind for line in straight.lines]


def test_the_command_scores_a_folder_and_pins_and_checks_floors(tmp_path: Path) -> None:
    parsed = full_page()
    folder = create_folder(tmp_path / "folder")
    file = parsed.clipping.file  # type: ignore[attr-defined]
    (folder.scans / file).write_bytes(b"the picture itself is not opened without baselines")
    build_database(folder.database, [parsed], DatabaseExtras(), unfinished=folder.unfinished_database)  # type: ignore[list-item]
    price = {"text_as_printed": "$29.95", "amount": 29.95, "currency": "USD", "item_text": "45-piece set"}
    truth = {"file": file, "prices": [price, {**price, "amount": 5.0}], "transcript_lines": ["45-piece set"]}
    (folder.root / "truth.jsonl").write_text(json.dumps(truth), encoding="utf-8")
    floors = tmp_path / "floors.toml"

    app = typer.Typer()
    register(app)

    def run(*arguments: str) -> tuple[int, str]:
        done = CliRunner().invoke(app, [str(folder.root), "--no-baselines", *arguments])
        return done.exit_code, done.output + repr(done.exception or "")

    code, said = run("--causes", "--each", "--curve")
    assert code == 0, said
    assert "prices, dollars" in said
    assert "not detected" in said
    assert run("--floors", str(floors))[0] != 0
    assert run("--floors", str(floors), "--pin")[0] == 0
    assert run("--floors", str(floors))[0] == 0
    floors.write_text(floors.read_text().replace('"prices, dollars" = 0', '"prices, dollars" = 1'))
    code, said = run("--floors", str(floors))
    assert code != 0
    assert "prices, dollars: floor 1" in said

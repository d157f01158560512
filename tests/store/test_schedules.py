"""A printed list of weeks goes from the parsed advert through the database to the runs."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import duckdb

from adminer.store.load import build_database, insert_rows
from adminer.store.schedule_rows import kept_schedules, read_schedules, schedule_rows
from tests.store.story import page, price

LIST = ((1, "cup"), (2, "saucer"), (3, "dinner_plate"), (4, "cup"))


def test_a_printed_list_of_weeks_reaches_the_runs(tmp_path: Path) -> None:
    parsed = page(3, (price("0.09", "cardholder"),))
    (advert,) = parsed.adverts
    build_database(tmp_path / "clippings.duckdb", [replace(parsed, adverts=(replace(advert, schedule=LIST),))])
    with duckdb.connect(str(tmp_path / "clippings.duckdb"), read_only=True) as connection:
        facts = read_schedules(connection)
    assert [(fact.advert_id, fact.what, fact.of) for fact in facts if fact.what == "weeks"] == [
        (advert.advert_id, "weeks", 4)
    ]


def test_an_advert_without_a_list_says_nothing_of_weeks(tmp_path: Path) -> None:
    parsed = page(3, (price("0.09", "cardholder"),))
    (advert,) = parsed.adverts
    build_database(tmp_path / "clippings.duckdb", [replace(parsed, adverts=(replace(advert, schedule=()),))])
    with duckdb.connect(str(tmp_path / "clippings.duckdb"), read_only=True) as connection:
        assert read_schedules(connection) == []


def test_what_is_kept_of_the_schedules_is_what_was_read(tmp_path: Path) -> None:
    parsed = page(3, (price("0.09", "cardholder"),))
    (advert,) = parsed.adverts
    build_database(tmp_path / "clippings.duckdb", [replace(parsed, adverts=(replace(advert, schedule=LIST),))])
    with duckdb.connect(str(tmp_path / "clippings.duckdb")) as connection:
        facts = read_schedules(connection)
        insert_rows(connection, "schedule_facts", schedule_rows(facts))
        line = connection.execute("SELECT DISTINCT line FROM sightings").fetchall()[0][0]
        assert facts
        assert kept_schedules(connection) == kept_schedules(connection, line.upper()) == facts
        assert kept_schedules(connection, "a line never seen") == []
        connection.execute("DROP TABLE schedule_facts")
        assert kept_schedules(connection) == facts  # a database built before there was such a table

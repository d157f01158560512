"""The database: same input, same rows; readers undisturbed; dates, half cents and continued adverts right."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from datetime import date
from decimal import Decimal
from pathlib import Path

import duckdb
import pytest

from adminer.records import Note, ParsedPage
from adminer.store.load import DatabaseExtras, build_database
from tests.store.story import build, page, price, story


def rows(path: Path, sql: str) -> list[tuple[object, ...]]:
    with duckdb.connect(str(path), read_only=True) as connection:
        return connection.execute(sql).fetchall()


def everything(path: Path) -> dict[str, list[tuple[object, ...]]]:
    names = [str(row[0]) for row in rows(path, "SELECT table_name FROM duckdb_tables() ORDER BY 1")]
    return {name: rows(path, f"FROM {name}") for name in names}


def test_the_same_pages_give_the_same_rows_in_the_same_order(tmp_path: Path) -> None:
    one, two = build(tmp_path / "one.duckdb"), build(tmp_path / "two.duckdb")
    assert everything(one) == everything(two)
    assert build(one) == one
    assert everything(one) == everything(two)


def test_a_reader_keeps_the_old_database_while_a_new_one_is_put_in_place(tmp_path: Path) -> None:
    path = build(tmp_path / "clippings.duckdb", 10)
    with duckdb.connect(str(path), read_only=True) as reader:
        build(path, 20)
        assert reader.execute("SELECT count(*) FROM clippings").fetchall() == [(10,)]
    assert rows(path, "SELECT count(*) FROM clippings") == [(20,)]


def test_a_fault_half_way_leaves_the_old_database_and_no_leavings(tmp_path: Path) -> None:
    path = build(tmp_path / "clippings.duckdb", 10)

    def broken() -> Iterator[ParsedPage]:
        yield from story(5)
        raise RuntimeError("half way")

    with pytest.raises(RuntimeError, match="half way"):
        build_database(path, broken())
    assert rows(path, "SELECT count(*) FROM clippings") == [(10,)]
    assert [found.name for found in tmp_path.iterdir()] == ["clippings.duckdb"]


def test_half_a_cent_is_kept_beside_the_rounded_amount(tmp_path: Path) -> None:
    path = tmp_path / "c.duckdb"
    build_database(path, [page(0, (price("0.125"),))])
    assert rows(path, "SELECT amount, exact_amount FROM prices") == [(Decimal("0.13"), Decimal("0.125000"))]


def test_amounts_are_decimals_and_dates_are_dates(tmp_path: Path) -> None:
    path = build(tmp_path / "c.duckdb", 3)
    described = rows(path, "SELECT column_name, column_type FROM (DESCRIBE prices)")
    assert {("amount", "DECIMAL(12,2)"), ("exact_amount", "DECIMAL(18,6)")} <= set(described)
    described = rows(path, "SELECT column_name, column_type FROM (DESCRIBE clippings)")
    assert ("published_from", "DATE") in described


def test_an_uncertain_date_stays_edtf_with_bounds(tmp_path: Path) -> None:
    path = tmp_path / "c.duckdb"
    undated = page(0, (), dated=False)
    note = replace(undated.clipping.notes[0], published="1952-03~")
    build_database(path, [replace(undated, clipping=replace(undated.clipping, notes=(note,)))])
    assert rows(path, "SELECT published, published_from, published_to FROM clippings") == [
        ("1952-03~", date(1952, 3, 1), date(1952, 3, 31))
    ]
    assert rows(path, "SELECT seen_from, seen_to, week_start, dated_by FROM sightings") == [
        (date(1952, 3, 1), date(1952, 3, 31), None, "note")
    ]


def test_the_week_of_a_sighting_is_its_iso_week(tmp_path: Path) -> None:
    path = tmp_path / "c.duckdb"
    build_database(path, [page(0, ())])
    # Thursday 13 March 1952 lies in ISO week 11 of 1952, whose Monday is 10 March (checked with date.isocalendar)
    assert date(1952, 3, 13).isocalendar()[:2] == date(1952, 3, 10).isocalendar()[:2]
    assert rows(path, "SELECT week_start FROM sightings") == [(date(1952, 3, 10),)]


def test_a_rejected_offer_is_no_sighting_and_no_price(tmp_path: Path) -> None:
    path = tmp_path / "c.duckdb"
    read = page(0, (price("1.00"),))
    advert = replace(read.adverts[0], offers=(replace(read.adverts[0].offers[0], status="rejected"),))
    build_database(path, [replace(read, adverts=(advert,))])
    assert rows(path, "SELECT count(*) FROM sightings") == [(0,)]
    assert rows(path, "SELECT count(*) FROM priced_offers") == [(0,)]
    assert rows(path, "SELECT count(*) FROM offers") == [(1,)]


def test_a_continued_advert_takes_what_it_lacks_and_keeps_what_it_says(tmp_path: Path) -> None:
    first, second = page(0, ()), page(2, (), dated=False)
    bare = replace(second.adverts[0], retailer=None)
    note = Note("week-002.png", continues="week-000.png")
    second = replace(second, adverts=(bare,), clipping=replace(second.clipping, notes=(note,)))
    path = tmp_path / "c.duckdb"
    build_database(path, [first, second], DatabaseExtras(continues={"week-000.png": first.clipping.clipping_id}))
    found = rows(path, "SELECT retailer, city, valid_from, dated_by FROM adverts ORDER BY advert_id")
    assert found == [("Penhallow Stores", "Osterby", date(1952, 3, 13), "printed")] * 2


def test_an_empty_folder_has_an_empty_database(tmp_path: Path) -> None:
    path = tmp_path / "c.duckdb"
    counts = build_database(path, [])
    assert counts.clippings == 0
    assert rows(path, "SELECT count(*) FROM priced_offers") == [(0,)]


def twins(path: Path, first: ParsedPage, second: ParsedPage) -> list[tuple[object, ...]]:
    build_database(path, [first, second])
    return rows(path, "SELECT shared_prices, likeness FROM likely_copies")


def test_one_advert_in_two_papers_is_seen_to_be_one(tmp_path: Path) -> None:
    prices = (price("0.09", "cardholder"), price("0.19", "without_card"), price("2.98", "former"))
    first, second = page(0, prices), page(6, prices)
    dated = replace(second.adverts[0], valid_from=first.adverts[0].valid_from, valid_to=first.adverts[0].valid_to)
    assert twins(tmp_path / "c.duckdb", first, replace(second, adverts=(dated,))) == [(3, 1.0)]


def test_the_same_prices_in_another_week_are_another_advert(tmp_path: Path) -> None:
    prices = (price("0.09", "cardholder"), price("0.19", "without_card"), price("2.98", "former"))
    assert twins(tmp_path / "c.duckdb", page(0, prices), page(6, prices)) == []


def test_an_undated_copy_needs_three_prices_and_nearly_all_alike(tmp_path: Path) -> None:
    three = (price("0.09", "cardholder"), price("0.19", "without_card"), price("2.98", "former"))
    assert twins(tmp_path / "c.duckdb", page(0, three), page(6, three, dated=False)) == [(3, 1.0)]
    assert twins(tmp_path / "c.duckdb", page(0, three[:2]), page(6, three[:2], dated=False)) == []

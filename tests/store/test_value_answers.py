"""Answers about value and names, on a small invented file whose answers are worked out by hand with plain decimals.

A place setting at $1.39 with the card and $2.50 without: common practice, no source. The arithmetic is the test's own.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta
from decimal import ROUND_HALF_UP, Decimal
from pathlib import Path
from typing import Any

import pytest

from adminer.records import Composition, Link, Offer, ParsedPage, Price
from adminer.store.load import DatabaseExtras, build_database
from adminer.store.queries import load_questions, run_question
from tests.store.story import page, price

QUESTIONS = load_questions()
BEGINS = date(1952, 3, 13)
NAMES: dict[str, list[dict[str, Any]]] = {
    "lines": [
        {"line_id": "tansy-morn", "line": "Tansy Morn", "maker_id": "marrowstone"},
        {"line_id": "copperwheat", "line": "Copperwheat"},
        {"line_id": "silverthaw", "line": "Silverthaw"},
    ],
    "line_names": [
        {"line_id": "tansy-morn", "name": "Tansy Morn", "used_by": "maker", "used_by_id": "marrowstone",
         "from_year": 1949, "source": "factory list of 1949"},
        {"line_id": "tansy-morn", "name": "Morning Bouquet", "used_by": "retailer", "used_by_id": "tidewell",
         "from_year": 1953, "to_year": 1954, "source": "a price list"},
        {"line_id": "copperwheat", "name": "Copperwheat", "from_year": 1951, "source": "owner's notes"},
        {"line_id": "silverthaw", "name": "Silverthaw"},
    ],
    "line_relations": [
        {"line_id": "tansy-morn", "relation": "same_decal", "other_id": "copperwheat", "source": "both in the hand"}
    ],
    "makers": [{"maker_id": "marrowstone", "maker": "Marrowstone Pottery"}],
    "retailers": [{"retailer_id": "tidewell", "retailer": "Tidewell Markets"}],
    "objects": [
        {"object_id": "cup-1", "mark": "MARROWSTONE U.S.A.", "earliest_year": 1951, "maker": "marrowstone",
         "line_id": "tansy-morn", "where_seen": "Wenning Falls"},
        {"object_id": "cup-2", "mark": "MARROWSTONE U.S.A.", "earliest_year": 1950, "maker": "marrowstone",
         "line_id": "tansy-morn", "where_seen": "Wenning Falls"},
    ],
}  # fmt: skip

Sold = tuple[str, str, int, tuple[Price, ...], Composition | None]


def card(with_card: str, without: str) -> tuple[Price, ...]:
    return price(with_card, "cardholder"), price(without, "without_card")


def advert(number: int, *sold: Sold) -> ParsedPage:
    """Return one clipping with an offer for everything sold; even numbers are one chain's, odd ones the other's."""
    made = page(number, (price("1.00"),))
    (one,) = made.adverts
    offers = tuple(_offer(one.offers[0], i, *what) for i, what in enumerate(sold))
    return replace(made, adverts=(replace(one, offers=offers),))


def _offer(
    model: Offer, i: int, item: str, piece: str, pieces: int, prices: tuple[Price, ...], made_of: Composition | None
) -> Offer:
    line = Link("tansy-morn", "Tansy Morn", "TANSY MORN", model.box, 0.96, "printed so")
    return replace(
        model, offer_id=f"{model.advert_id}-o{i}", item=item, piece_or_set=piece, pieces=pieces, prices=prices,
        composition=made_of, line=line,
    )  # fmt: skip


def single(item: str, piece: str, with_card: str, without: str) -> Sold:
    return item, piece, 2 if piece == "cup_and_saucer" else 1, card(with_card, without), None


SETTING: Sold = ("5-pc. place setting", "place_setting", 5, card("1.39", "2.50"), Composition(stated=5))
SERVICE: Sold = ("45-piece service for 8", "set:45", 45, (price("24.95"),), Composition(45, 8))
LARGER: Sold = ("53-piece service for 8", "set:53", 53, (price("29.95"),), Composition(53, 8))
STARTER: Sold = (
    "16-piece starter set", "set:16", 16, (price("4.95", "coupon"), price("7.95", "former")),
    Composition(16, 4, likely="claimed 16, listed 15: pieces are missing from the list, or a figure is misread"),
)  # fmt: skip


@pytest.fixture(scope="module")
def database(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return a database of three weeks of one chain by the card and two adverts of the other."""
    path: Path = tmp_path_factory.mktemp("values") / "clippings.duckdb"
    pages = [
        advert(0, single("Dinner plate", "dinner_plate", "0.39", "0.65"),
               single("Cup and saucer", "cup_and_saucer", "0.40", "0.65"), SETTING),
        advert(2, single("Dinner plate", "dinner_plate", "0.49", "0.75"), single("Cup", "cup", "0.25", "0.39")),
        advert(4, single("Dinner plate", "dinner_plate", "0.45", "0.69"), single("Saucer", "saucer", "0.19", "0.29")),
        advert(1, SERVICE, STARTER),
        advert(3, LARGER),
    ]  # fmt: skip
    build_database(path, iter(pages), DatabaseExtras(NAMES))
    return path


def ask(database: Path, question: str, **given: str) -> list[dict[str, Any]]:
    rows: list[dict[str, Any]] = run_question(database, QUESTIONS[question], given).to_pylist()
    return rows


def parted(amount: str, by: int) -> Decimal:
    return (Decimal(amount) / by).quantize(Decimal("0.001"), ROUND_HALF_UP)


def test_a_service_by_the_card_is_the_median_of_its_weeks_times_the_places(database: Path) -> None:
    (row,) = ask(database, "service-by-the-card", people="8")
    place = Decimal("0.45") + Decimal("0.25") + Decimal("0.19")  # plate: the middle of 39, 45 and 49 cents
    without = Decimal("0.69") + Decimal("0.39") + Decimal("0.29")
    assert (row["retailer"], row["line"]) == ("Penhallow Stores", "Tansy Morn")
    assert row["setting"] == "cup 0.25, dinner_plate 0.45, saucer 0.19"  # cup and saucer were sold singly too
    assert (row["per_place"], row["per_place_without_card"]) == (place, without)
    assert (row["service"], row["service_without_card"]) == (8 * place, 8 * without)
    assert row["weeks"] == 3
    assert (row["boxed_set"], row["boxed_price"]) == ("Tidewell Markets: 45-piece service for 8", Decimal("24.95"))
    assert row["boxed_per_piece"] == parted("24.95", 45)
    assert row["by_the_card_per_piece"] == parted(str(place), 3)


def test_a_larger_table_wants_a_larger_boxed_set(database: Path) -> None:
    (row,) = ask(database, "service-by-the-card", people="16")
    assert row["service"] == 16 * (Decimal("0.45") + Decimal("0.25") + Decimal("0.19"))
    assert (row["boxed_price"], row["boxed_per_piece"]) == (Decimal("29.95"), parted("29.95", 53))


def test_the_price_of_a_piece_and_of_a_place(database: Path) -> None:
    rows = {row["set"]: row for row in ask(database, "price-per-piece")}
    assert set(rows) == {
        "5-pc. place setting",
        "45-piece service for 8",
        "16-piece starter set",
        "53-piece service for 8",
    }
    found = {
        name: tuple(
            row[key] for key in ("price", "price_without_card", "per_piece", "per_piece_without_card", "per_place")
        )
        for name, row in rows.items()
    }
    assert found["5-pc. place setting"] == (
        Decimal("1.39"), Decimal("2.50"), parted("1.39", 5), parted("2.50", 5), parted("1.39", 1))  # fmt: skip
    assert found["45-piece service for 8"] == (
        Decimal("24.95"), None, parted("24.95", 45), None, parted("24.95", 8))  # fmt: skip
    assert found["16-piece starter set"] == (
        Decimal("4.95"), Decimal("7.95"), parted("4.95", 16), parted("7.95", 16), parted("4.95", 4))  # fmt: skip
    assert rows["16-piece starter set"]["check"].startswith("claimed 16, listed 15")
    assert rows["5-pc. place setting"]["seen_from"] == BEGINS
    assert {row["set"] for row in ask(database, "price-per-piece", retailer="penhallow")} == {"5-pc. place setting"}


def test_cash_beside_filled_books_is_no_price_of_a_set(tmp_path: Path) -> None:
    boxed: Sold = ("16-piece starter set", "set:16", 16, (price("9.95"), price("2.50", "stamps")), Composition(16, 4))
    books: Sold = ("45-piece service for 8", "set:45", 45, (price("4.00", "stamps"),), Composition(45, 8))
    path = tmp_path / "clippings.duckdb"
    build_database(path, iter([advert(1, boxed, books)]), DatabaseExtras(NAMES))
    (row,) = ask(path, "price-per-piece")  # the service has no price in money alone
    assert (row["price"], row["per_piece"]) == (Decimal("9.95"), parted("9.95", 16))
    assert {row["pieces"]: row["price"] for row in ask(path, "set-prices")} == {16: Decimal("9.95")}


def test_the_concordance_tells_every_name_with_its_users_years_and_sources(database: Path) -> None:
    rows = ask(database, "concordance", line="tansy-morn")
    keys = ("name", "used_by", "user", "city", "first_used", "last_used", "seen")
    ends = str(BEGINS + timedelta(weeks=4, days=2))
    later = [str(BEGINS + timedelta(weeks=1)), str(BEGINS + timedelta(weeks=3, days=2))]
    assert sorted((tuple(row[key] for key in keys) for row in rows), key=repr) == sorted(
        [
            ("Tansy Morn", "maker", "Marrowstone Pottery", None, "1949", None, None),
            ("Morning Bouquet", "retailer", "Tidewell Markets", None, "1953", "1954", None),
            ("Copperwheat", "same_decal", "Copperwheat", None, "1951", None, None),
            ("MARROWSTONE U.S.A.", "mark", "Marrowstone Pottery", "Wenning Falls", "1950", None, 2),
            ("TANSY MORN", "advert", "Penhallow Stores", "Osterby", str(BEGINS), ends, 3),
            ("TANSY MORN", "advert", "Tidewell Markets", "Ferncliff", *later, 2),
        ],
        key=repr,
    )
    assert {row["line"] for row in rows} == {"Tansy Morn"}
    sources = {row["used_by"]: row["source"] for row in rows}
    assert (sources["maker"], sources["same_decal"], sources["mark"]) == (
        "factory list of 1949",
        "both in the hand",
        "cup-1",
    )
    assert [row["first_used"] for row in rows] == sorted(row["first_used"] for row in rows)
    assert {row["line"] for row in ask(database, "concordance", line="bouquet")} == {"Tansy Morn"}
    assert {row["name"] for row in ask(database, "concordance", line="silver")} == {"Silverthaw"}

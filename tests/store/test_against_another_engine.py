"""The same questions put to the same rows by another engine (polars) and by plain decimals give the same answers."""

from __future__ import annotations

from decimal import ROUND_HALF_UP, Decimal
from pathlib import Path
from typing import Any

import duckdb
import polars as pl
import pytest

from adminer.store.queries import load_questions, run_question
from tests.store.story import build

QUESTIONS = load_questions()


@pytest.fixture(scope="module")
def database(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return a database of 300 adverts."""
    return build(tmp_path_factory.mktemp("store") / "clippings.duckdb", 300)


@pytest.fixture(scope="module")
def tables(database: Path) -> dict[str, Any]:
    """Return the base tables in the other engine."""
    with duckdb.connect(str(database), read_only=True) as connection:
        names = ("clippings", "adverts", "offers", "prices", "sightings")
        return {name: pl.from_arrow(connection.sql(f"FROM {name}").to_arrow_table()) for name in names}


def flat(tables: dict[str, Any]) -> Any:
    """Rebuild the view priced_offers without a database."""

    def lowest(*conditions: str) -> Any:
        return pl.col("amount").filter(pl.col("condition").is_in(conditions)).min()

    prices = (
        tables["prices"]
        .group_by("offer_id")
        .agg(
            price=lowest("everyone"),
            cardholder_price=lowest("cardholder"),
            price_without_card=lowest("without_card"),
            conditional_price=lowest("coupon", "with_purchase"),
            cash_with_stamps=lowest("stamps"),
            former_price=lowest("former", "comparison"),
        )
    )
    joined = tables["offers"].join(tables["adverts"], on="advert_id", suffix="_advert")
    return joined.join(tables["clippings"], on="clipping_id", suffix="_clipping").join(
        prices, on="offer_id", how="left"
    )


def as_rows(table: Any, *columns: str) -> list[tuple[Any, ...]]:
    return sorted((tuple(row[name] for name in columns) for row in table), key=repr)


def test_the_flat_view(database: Path, tables: dict[str, Any]) -> None:
    columns = (
        "offer_id",
        "retailer",
        "line",
        "item",
        "pieces",
        "price",
        "cardholder_price",
        "price_without_card",
        "conditional_price",
        "cash_with_stamps",
        "former_price",
    )
    with duckdb.connect(str(database), read_only=True) as connection:
        view = connection.sql("FROM priced_offers").to_arrow_table().to_pylist()
    assert len(view) == 300
    assert as_rows(view, *columns) == as_rows(flat(tables).to_dicts(), *columns)


def test_which_set_at_what_price(database: Path, tables: dict[str, Any]) -> None:
    answer = run_question(database, QUESTIONS["set-prices"]).to_pylist()
    known = flat(tables).filter(
        pl.any_horizontal(pl.col("price", "cardholder_price", "price_without_card").is_not_null())
    )
    keys = ["retailer", "line", "piece_or_set", "pieces", "price", "cardholder_price", "price_without_card"]
    expected = known.group_by(keys).agg(adverts=pl.col("advert_id").n_unique())
    assert as_rows(answer, *keys, "adverts") == as_rows(expected.to_dicts(), *keys, "adverts")
    assert len(answer) > 100
    for row in answer:
        full = row["price_without_card"] if row["price_without_card"] is not None else row["price"]
        if row["cardholder_price"] is None or full is None:
            assert row["saving_percent"] is None
        else:
            saving = (100 * (full - row["cardholder_price"]) / full).quantize(Decimal("0.1"), ROUND_HALF_UP)
            assert abs(row["saving_percent"] - saving) <= Decimal("0.1")


def test_the_sightings_by_week(database: Path, tables: dict[str, Any]) -> None:
    answer = run_question(database, QUESTIONS["line-sightings"], {"line": "tansy-morn"}).to_pylist()
    dated = tables["adverts"].join(tables["offers"].filter(pl.col("line").is_not_null()), on="advert_id", how="semi")
    expected = (
        dated.with_columns(week_start=pl.col("valid_from").dt.truncate("1w"))
        .group_by("week_start", "city", "retailer")
        .agg(adverts=pl.len())
    )
    found: dict[tuple[Any, ...], int] = {}
    for row in answer:
        key = (row["week_start"], row["city"], row["retailer"])
        found[key] = found.get(key, 0) + row["adverts"]
    assert found == {(r["week_start"], r["city"], r["retailer"]): r["adverts"] for r in expected.to_dicts()}


def test_adverts_of_a_shop(database: Path, tables: dict[str, Any]) -> None:
    answer = run_question(database, QUESTIONS["retailer-adverts"], {"retailer": "tidewell"}).to_pylist()
    expected = tables["adverts"].filter(pl.col("retailer_id") == "tidewell")
    assert sorted(row["advert_id"] for row in answer) == sorted(expected["advert_id"].to_list())
    dates = [row["valid_from"] for row in answer if row["valid_from"]]
    assert dates == sorted(dates)


def test_adverts_without_a_date(database: Path, tables: dict[str, Any]) -> None:
    answer = run_question(database, QUESTIONS["adverts-without-a-date"]).to_pylist()
    expected = tables["adverts"].filter(pl.col("valid_from").is_null())
    assert sorted(row["advert_id"] for row in answer) == sorted(expected["advert_id"].to_list())
    assert len(answer) == 60


def test_the_saving_by_the_card(database: Path, tables: dict[str, Any]) -> None:
    answer = run_question(database, QUESTIONS["card-saving"]).to_pylist()
    both = (
        flat(tables)
        .with_columns(full=pl.coalesce("price_without_card", "price"))
        .filter(pl.col("cardholder_price").is_not_null() & pl.col("full").is_not_null())
    )
    keys = ["retailer", "line", "piece_or_set"]
    expected = both.group_by(keys).agg(offers=pl.len())
    assert as_rows(answer, *keys, "offers") == as_rows(expected.to_dicts(), *keys, "offers")


def test_the_printed_example_of_a_card_saving(tmp_path: Path) -> None:
    # $1.39 with the card and $2.50 without is a saving of 44.4 % (common practice, no source)
    from adminer.store.load import build_database
    from tests.store.story import page, price

    path = tmp_path / "one.duckdb"
    build_database(path, [page(1, (price("1.39", "cardholder"), price("2.50", "without_card")))])
    (row,) = run_question(path, QUESTIONS["card-saving"]).to_pylist()
    assert (row["saving"], row["saving_percent"]) == (Decimal("1.11"), Decimal("44.4"))

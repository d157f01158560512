"""Build the database from parsed pages: in bulk, in one transaction, in a file of its own, put in place at the end."""

from __future__ import annotations

import errno
import os
from collections.abc import Callable, Iterable, Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass, field
from decimal import Decimal
from pathlib import Path
from typing import Any, Final

import duckdb
import pyarrow as pa

from adminer.records import ParsedPage
from adminer.store.rows import Row, Rows, page_rows

SCHEMA: Final = Path(__file__).with_name("schema.sql")
_FLUSH_AT: Final = 20_000  # rows of one table held in memory before they go to the database

_CONTINUED: Final = """
    -- an advert that goes on in another clipping has its shop and dates there; the largest of each clipping is meant
    WITH largest AS (
        SELECT clipping_id, arg_max(advert_id, w::BIGINT * h) AS advert_id FROM adverts GROUP BY clipping_id
    ), pairs AS (
        SELECT later.advert_id AS advert_id, first.advert_id AS first_id
        FROM clippings c
        JOIN clippings before ON before.clipping_id = c.continues AND before.clipping_id <> c.clipping_id
        JOIN largest later ON later.clipping_id = c.clipping_id
        JOIN largest first ON first.clipping_id = before.clipping_id
    )
    UPDATE adverts SET
        retailer_id = CASE WHEN adverts.retailer IS NULL THEN f.retailer_id ELSE adverts.retailer_id END,
        retailer = coalesce(adverts.retailer, f.retailer),
        city = coalesce(adverts.city, f.city),
        valid_from = CASE WHEN adverts.valid_from IS NULL AND adverts.valid_to IS NULL
            THEN f.valid_from ELSE adverts.valid_from END,
        valid_to = CASE WHEN adverts.valid_from IS NULL AND adverts.valid_to IS NULL
            THEN f.valid_to ELSE adverts.valid_to END,
        dated_by = coalesce(adverts.dated_by, f.dated_by)
    FROM pairs JOIN adverts f ON f.advert_id = pairs.first_id
    WHERE adverts.advert_id = pairs.advert_id
"""
_SIGHTINGS: Final = """
    INSERT INTO sightings BY NAME
    WITH seen AS (
        SELECT DISTINCT
            o.line_id, o.line, a.retailer_id, a.retailer, coalesce(a.city, c.city) AS city, a.advert_id, c.clipping_id,
            c.published,
            d.seen_from, d.seen_to,
            coalesce(a.dated_by, CASE WHEN c.published_from IS NOT NULL THEN 'note' END) AS dated_by
        FROM offers o JOIN adverts a USING (advert_id) JOIN clippings c USING (clipping_id)
        JOIN advert_days d USING (advert_id)
        WHERE o.line IS NOT NULL AND o.status <> 'rejected'
    )
    SELECT
        advert_id || '-' || coalesce(line_id, lower(line)) AS sighting_id, *,
        -- the ISO week in which the promotion began; an interval longer than a week names no week
        CASE WHEN seen_to - seen_from <= 6 THEN date_trunc('week', seen_from)::DATE END AS week_start
    FROM seen ORDER BY sighting_id
"""

# Weekly adverts of one shop are alike but for the piece of the week and its dates; so the same shop, the same
# prices for the same things, and dates that do not contradict each other make two adverts one. Undated ones need more.
_LIKELY_COPIES: Final = """
    INSERT INTO likely_copies BY NAME
    WITH priced AS (
        SELECT
            a.advert_id, a.clipping_id, coalesce(a.retailer_id, lower(a.retailer)) AS shop,
            d.seen_from AS first_day, d.seen_to AS last_day,
            list(DISTINCT coalesce(o.piece_or_set, lower(o.item)) || ' ' || p.amount || ' ' || p.condition) AS facts
        FROM adverts a JOIN advert_days d USING (advert_id)
        JOIN offers o USING (advert_id) JOIN prices p USING (offer_id)
        WHERE a.retailer IS NOT NULL AND o.status <> 'rejected'
        GROUP BY ALL
    ), pairs AS (
        SELECT
            a.advert_id, b.advert_id AS other_id, len(list_intersect(a.facts, b.facts)) AS shared_prices,
            shared_prices / (len(a.facts) + len(b.facts) - shared_prices) AS likeness,
            a.first_day <= b.last_day AND b.first_day <= a.last_day AS dates_meet
        FROM priced a JOIN priced b ON a.shop = b.shop AND a.clipping_id < b.clipping_id
    )
    SELECT
        advert_id, other_id, shared_prices, likeness,
        shared_prices || ' prices for the same things, ' || if(dates_meet, 'dates that meet', 'one undated') AS why
    FROM pairs
    WHERE (dates_meet AND likeness >= 0.5 AND shared_prices >= 2)
       OR (dates_meet IS NULL AND likeness >= 0.8 AND shared_prices >= 3)
    ORDER BY advert_id, other_id
"""

_SAME_DAYS: Final = """
    WITH largest AS (
        SELECT clipping_id, arg_max(advert_id, w::BIGINT * h) AS advert_id FROM adverts GROUP BY clipping_id
    ), pairs AS (
        SELECT clipping_id, other_id FROM said_same UNION ALL SELECT other_id, clipping_id FROM said_same
    ), dated AS (
        SELECT mine.advert_id, any_value(a.valid_from) AS valid_from, any_value(a.valid_to) AS valid_to
        FROM pairs JOIN largest mine USING (clipping_id)
        JOIN largest theirs ON theirs.clipping_id = pairs.other_id JOIN adverts a ON a.advert_id = theirs.advert_id
        WHERE a.valid_from IS NOT NULL OR a.valid_to IS NOT NULL GROUP BY ALL
    )
    UPDATE adverts SET valid_from = d.valid_from, valid_to = d.valid_to, dated_by = 'same advert'
    FROM dated d
    WHERE adverts.advert_id = d.advert_id AND adverts.valid_from IS NULL AND adverts.valid_to IS NULL
"""
_SAME_SIGHTINGS: Final = """
    DELETE FROM sightings WHERE sighting_id IN (
        SELECT s.sighting_id FROM sightings s JOIN said_same p USING (clipping_id)
        JOIN sightings k ON k.clipping_id = p.other_id
            AND coalesce(k.line_id, k.line) = coalesce(s.line_id, s.line)
    )
"""

After = Callable[[duckdb.DuckDBPyConnection], None]


@dataclass(frozen=True, slots=True)
class DatabaseExtras:
    """Hold the rows that do not come from pages: authority entries, unread files, corrections and the like."""

    tables: Mapping[str, Sequence[Row]] = field(default_factory=dict)
    continues: Mapping[str, str] = field(default_factory=dict)  # clipping id by file name


@dataclass(frozen=True, slots=True)
class LoadedCounts:
    """Hold how many rows the database has."""

    clippings: int
    adverts: int
    offers: int
    prices: int
    words: int
    sightings: int


def build_database(
    target: Path,
    pages: Iterable[ParsedPage],
    extras: DatabaseExtras | None = None,
    *,
    unfinished: Path | None = None,
    after: Iterable[After] = (),
) -> LoadedCounts:
    """Build the database beside its place and put it there in one step; readers keep the old one until they close it.

    `after` are steps run inside the same transaction when all pages are in (dating, runs). The same input
    gives the same rows in the same order. Raises OSError where the disk refuses; the old database then stays.
    """
    unfinished = unfinished or target.with_name(f".{target.name}.building")
    extras = extras or DatabaseExtras()
    _remove(unfinished)
    try:
        with duckdb.connect(str(unfinished)) as connection:
            connection.execute("SET threads = 2")
            connection.execute("SET preserve_insertion_order = true")
            connection.execute("BEGIN")
            connection.execute(SCHEMA.read_text(encoding="utf-8"))
            _load_pages(connection, pages, extras)
            for table, rows in extras.tables.items():
                insert_rows(connection, table, rows)
            connection.execute(_CONTINUED)
            connection.execute(_SAME_DAYS)
            connection.execute(_SIGHTINGS)
            connection.execute(_SAME_SIGHTINGS)
            connection.execute(_LIKELY_COPIES)
            for step in after:
                step(connection)
            connection.execute("COMMIT")
            connection.execute("CHECKPOINT")
            counts = LoadedCounts(*(_count(connection, name) for name in LoadedCounts.__dataclass_fields__))
        unfinished.replace(target)
        _remove(target.with_name(target.name + ".wal"))
    except (duckdb.IOException, duckdb.FatalException) as fault:
        number = errno.ENOSPC if "No space left" in str(fault) else errno.EIO
        raise OSError(number, os.strerror(number), str(target)) from None
    finally:
        _remove(unfinished)
    return counts


def insert_rows(connection: duckdb.DuckDBPyConnection, table: str, rows: Sequence[Row]) -> None:
    """Append rows to a table by column name through Arrow; columns not named stay empty."""
    if rows:
        connection.from_arrow(to_arrow(connection, table, rows)).insert_into(table)


def to_arrow(connection: duckdb.DuckDBPyConnection, table: str, rows: Sequence[Row]) -> Any:
    """Turn rows into an Arrow table with the very columns and types of a database table."""
    schema = connection.table(table).limit(0).to_arrow_table().schema
    columns = {item.name: [_fit(row.get(item.name), item.type) for row in rows] for item in schema}
    return pa.table(columns, schema=schema)


def _fit(value: Any, kind: Any) -> Any:
    if isinstance(value, Decimal) and pa.types.is_decimal(kind):
        return value.quantize(Decimal(1).scaleb(-kind.scale))
    return value


def _load_pages(connection: duckdb.DuckDBPyConnection, pages: Iterable[ParsedPage], extras: DatabaseExtras) -> None:
    waiting: Rows = {}
    for page in pages:
        for table, rows in page_rows(page).items():
            waiting.setdefault(table, []).extend(rows)
        for row in waiting["clippings"][-1:]:
            row["continues"] = extras.continues.get(row["continues"] or "")
        if max(len(rows) for rows in waiting.values()) >= _FLUSH_AT:
            _flush(connection, waiting)
    _flush(connection, waiting)


def _flush(connection: duckdb.DuckDBPyConnection, waiting: Rows) -> None:
    for table, rows in waiting.items():
        insert_rows(connection, table, rows)
    waiting.clear()


def _count(connection: duckdb.DuckDBPyConnection, table: str) -> int:
    return int(connection.table(table).count("*").fetchall()[0][0])


def _remove(path: Path) -> None:
    for name in (path, path.with_name(path.name + ".wal")):
        with suppress(FileNotFoundError):
            name.unlink()

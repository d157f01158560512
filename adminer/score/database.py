"""What a digitised folder holds, in the shape that scoring compares: read from clippings.duckdb, read-only."""

from __future__ import annotations

from collections import defaultdict
from decimal import Decimal
from pathlib import Path
from typing import Any, Final

import duckdb

from adminer.records import Box
from adminer.score.found import FoundAdvert, FoundPage, FoundPrice, FoundSet, FoundText

# A table per kind of fact, each with the clipping it lies on; rejected offers are not what the folder says.
_PRICES: Final = """
SELECT a.clipping_id, coalesce(p.exact_amount, p.amount) AS amount, p.currency, p.x, p.y, p.w, p.h, p.confidence,
       o.item, p.text, p.form, p.condition, p.role, p.per_quantity, p.per_unit, p.condition_text
FROM prices p JOIN offers o USING (offer_id) JOIN adverts a USING (advert_id)
WHERE o.status <> 'rejected' ORDER BY p.price_id"""
_ADVERTS: Final = """
SELECT a.* REPLACE (coalesce(a.city, c.city) AS city)
FROM adverts a JOIN clippings c USING (clipping_id) ORDER BY a.advert_id"""
_CONDITIONS: Final = """
SELECT DISTINCT a.clipping_id, c.kind, c.text, c.value, c.x, c.y, c.w, c.h
FROM conditions c JOIN adverts a USING (advert_id) ORDER BY ALL"""
_OFFERS: Final = """
SELECT a.clipping_id, o.offer_id, o.line_id, o.line, o.item, o.pieces_stated, o.x, o.y, o.w, o.h
FROM offers o JOIN adverts a USING (advert_id) WHERE o.status <> 'rejected' ORDER BY o.offer_id"""
_DATES: Final = "SELECT d.*, a.clipping_id FROM dates_read d JOIN adverts a USING (advert_id) ORDER BY ALL"
_WORDS: Final = "SELECT clipping_id, text, x, y, w, h, line_no FROM words ORDER BY clipping_id, word_no"

Row = dict[str, Any]


def _rows(connection: duckdb.DuckDBPyConnection, sql: str) -> list[Row]:
    cursor = connection.execute(sql)
    names = [column[0] for column in cursor.description or ()]
    return [dict(zip(names, row, strict=True)) for row in cursor.fetchall()]


def _by_clipping(rows: list[Row]) -> dict[str, list[Row]]:
    grouped: dict[str, list[Row]] = defaultdict(list)
    for row in rows:
        grouped[row["clipping_id"]].append(row)
    return grouped


def _box(row: Row) -> Box:
    return Box(row["x"] or 0, row["y"] or 0, row["w"] or 0, row["h"] or 0)


def found_in_database(path: Path) -> tuple[FoundPage, ...]:
    """Read everything found from a database, a page for every file a clipping goes by (a duplicate has several)."""
    with duckdb.connect(str(path), read_only=True) as connection:
        clippings = _rows(connection, "SELECT clipping_id, file, leaf FROM clippings ORDER BY file, leaf")
        noted = _rows(connection, "SELECT DISTINCT clipping_id, file FROM notes WHERE file IS NOT NULL")
        prices, adverts, conditions, offers, dates, words = (
            _by_clipping(_rows(connection, sql)) for sql in (_PRICES, _ADVERTS, _CONDITIONS, _OFFERS, _DATES, _WORDS)
        )
        pieces: dict[str, list[tuple[str, int]]] = defaultdict(list)
        for row in _rows(connection, "SELECT offer_id, piece, count FROM set_pieces ORDER BY ALL"):
            pieces[row["offer_id"]].append((row["piece"], row["count"]))
    files: dict[str, set[str]] = defaultdict(set)
    for row in (*clippings, *noted):
        files[row["clipping_id"]].add(row["file"])
    return tuple(
        FoundPage(
            file=file,
            leaf=clipping["leaf"],
            text=_text(words[key]),
            prices=tuple(_price(row) for row in prices[key]),
            adverts=tuple(
                FoundAdvert(_box(row), row["retailer"], row["city"], row["valid_from"], row["valid_to"])
                for row in adverts[key]
            ),
            conditions=tuple(FoundText(row["kind"], row["text"], _box(row), row["value"]) for row in conditions[key])
            + tuple(
                FoundText(row["condition"], row["condition_text"], _box(row))
                for row in prices[key]
                if row["condition_text"]
            ),
            lines=tuple(FoundText(row["line_id"] or "", row["line"], _box(row)) for row in offers[key] if row["line"]),
            sets=tuple(
                FoundSet(row["pieces_stated"], tuple(pieces[row["offer_id"]]), row["item"] or "", _box(row))
                for row in offers[key]
                if row["pieces_stated"] is not None or row["offer_id"] in pieces
            ),
            dates=tuple(
                FoundText(row["kind"], row["text"], _box(row), row["edtf"], row["earliest"], row["latest"])
                for row in dates[key]
            ),
            words=tuple((row["text"], _box(row)) for row in words[key]),
        )
        for clipping in clippings
        for key in [clipping["clipping_id"]]
        for file in sorted(files[key])
    )


def _price(row: Row) -> FoundPrice:
    return FoundPrice(
        amount=row["amount"],
        currency=row["currency"],
        box=_box(row),
        confidence=row["confidence"],
        item=row["item"] or "",
        text=row["text"] or "",
        form=row["form"] or "bare",
        condition=row["condition"] or "everyone",
        role=row["role"] or "price",
        per_quantity=row["per_quantity"] or Decimal(1),
        per_unit=row["per_unit"],
    )


def _text(words: list[Row]) -> str:
    parts: list[str] = []
    for before, word in zip((None, *words), words, strict=False):
        if before is not None:
            parts.append(" " if before["line_no"] == word["line_no"] else "\n")
        parts.append(word["text"])
    return "".join(parts)

"""A picture of an answer where one helps: its prices by day, drawn from the columns it has."""

from __future__ import annotations

from datetime import date
from decimal import Decimal
from typing import Any, Final

from adminer.desk.shelf import Row
from adminer.publish.charts_prices import TERMS, prices_picture

LEAST_DAYS: Final = 3
_DAYS: Final = ("week_start", "week", "published_from", "valid_from", "seen_from", "first_seen", "published")


def picture_of(table: Any, title: str) -> bytes | None:
    """Return an answer as SVG, None where its columns make no picture; the table is the head of an answer, in Arrow."""
    rows = dated_prices(table)
    return prices_picture(rows, title) if rows else None


def dated_prices(table: Any) -> list[Row]:
    """Return the rows of an answer that have a day and a price; none where they are too few for a picture."""
    day = next((name for name in _DAYS if name in table.column_names), None)
    prices = [name for name in TERMS if name in table.column_names]
    if day is None or not prices:
        return []
    rows = table.select([day, *prices]).to_pylist()
    dated = [
        {**row, "day": row[day]}
        for row in rows
        if isinstance(row[day], date) and any(isinstance(row[name], Decimal) for name in prices)
    ]
    return dated if len({row["day"] for row in dated}) >= LEAST_DAYS else []

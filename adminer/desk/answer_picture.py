"""A picture of an answer where one helps: its prices by day, drawn from the columns it has."""

from __future__ import annotations

from datetime import date
from decimal import Decimal
from typing import Any, Final

from adminer.desk.look_pictures import TERMS, prices_picture

LEAST_DAYS: Final = 3
MOST_ROWS: Final = 3000
_DAYS: Final = ("week_start", "week", "published_from", "valid_from", "seen_from", "first_seen", "published")


def picture_of(table: Any, title: str) -> bytes | None:
    """Return an answer as SVG, None where its columns make no picture; the table is an Arrow table."""
    rows = table.slice(0, MOST_ROWS).to_pylist()
    day = next((name for name in _DAYS if any(isinstance(row.get(name), date) for row in rows)), None)
    if day is None or not any(isinstance(row.get(name), Decimal) for row in rows for name in TERMS):
        return None
    dated = [{**row, "day": row[day]} for row in rows if isinstance(row.get(day), date)]
    if len({row["day"] for row in dated}) < LEAST_DAYS:
        return None
    return prices_picture(dated, title)

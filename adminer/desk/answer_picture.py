"""A picture of an answer where one helps: prices by day, or counts by name, drawn from the columns it has."""

from __future__ import annotations

from datetime import date
from decimal import Decimal
from typing import Any, Final

import altair as alt

from adminer.publish.look import INK, WITH_CARD, WITHOUT_CARD, svg_of

LEAST_ROWS: Final = 3
MOST_ROWS: Final = 3000
_DAYS: Final = ("week_start", "week", "published_from", "valid_from", "seen_from", "first_seen", "published")
_PRICES: Final = {
    "cardholder_price": "with the card",
    "price_without_card": "without the card",
    "price": "for everyone",
    "former_price": "former price",
}


def picture_of(table: Any, title: str) -> bytes | None:
    """Return an answer as SVG, None where its columns make no picture; the table is an Arrow table."""
    if table.num_rows < LEAST_ROWS:
        return None
    rows = table.slice(0, MOST_ROWS).to_pylist()
    day = next((name for name in _DAYS if any(isinstance(row.get(name), date) for row in rows)), None)
    prices = [name for name in _PRICES if any(isinstance(row.get(name), Decimal) for row in rows)]
    if day is None or not prices:
        return None
    points = [
        {"day": row[day].isoformat(), "dollars": float(row[name]), "terms": _PRICES[name]}
        for row in rows
        for name in prices
        if isinstance(row.get(day), date) and row.get(name) is not None
    ]
    if len({point["day"] for point in points}) < LEAST_ROWS:
        return None
    known = [words for name, words in _PRICES.items() if name in prices]
    chart = (
        alt.Chart(alt.InlineData(values=points))
        .mark_point(size=70, filled=False, strokeWidth=2)
        .encode(
            x=alt.X("day:T", title=None),
            y=alt.Y("dollars:Q", title="dollars", axis=alt.Axis(format="$.2f")),
            color=alt.Color(
                "terms:N", title=None, scale=alt.Scale(domain=known, range=[WITH_CARD, WITHOUT_CARD, INK, "#8a6d12"])
            ),
            shape=alt.Shape("terms:N", title=None, scale=alt.Scale(domain=known)),
        )
        .properties(width=820, height=280, title=title)
    )
    return svg_of(chart).encode()

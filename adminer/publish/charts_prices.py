"""The picture of prices over time, with the card and without."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import date
from typing import Any, Final

import altair as alt

from adminer.publish.look import INK, WITH_CARD, WITHOUT_CARD, svg_of

WIDTH: Final = 840
WIDE_RATIO: Final = 40
_DAYS: Final = alt.Axis(format="%b %Y", tickCount=8, labelOverlap="greedy", labelSeparation=14)
TERMS: Final = {
    "cardholder_price": "with the card",
    "price_without_card": "without the card",
    "price": "for everyone",
    "former_price": "former price",
}


def prices_picture(rows: Sequence[Mapping[str, Any]], title: str) -> bytes:
    """Return dated prices as SVG: one mark a price, its terms by colour and by shape."""
    points = [
        {"day": row["day"].isoformat(), "dollars": float(row[name]), "terms": words}
        for row in rows
        for name, words in TERMS.items()
        if row.get(name) is not None and isinstance(row.get("day"), date)
    ]
    domain = [words for words in TERMS.values() if any(point["terms"] == words for point in points)]
    dollars = [point["dollars"] for point in points if point["dollars"] > 0]
    # cups for cents and services for tens of dollars on one sheet: equal ratios get equal room
    wide = bool(dollars) and max(dollars) / min(dollars) > WIDE_RATIO
    if wide:
        points = [point for point in points if point["dollars"] > 0]
    scale = alt.Scale(type="log" if wide else "linear", nice=True)
    colours = {"with the card": WITH_CARD, "without the card": WITHOUT_CARD, "for everyone": INK}
    chart = (
        alt.Chart(alt.InlineData(values=points))
        .mark_point(size=75, strokeWidth=2)
        .encode(
            x=alt.X("day:T", title=None, axis=_DAYS),
            y=alt.Y("dollars:Q", title=None, axis=alt.Axis(format="$.2f", tickCount=8), scale=scale),
            color=alt.Color(
                "terms:N", title=None, scale=alt.Scale(domain=domain, range=[colours.get(d, "#8a6d12") for d in domain])
            ),
            shape=alt.Shape("terms:N", title=None, scale=alt.Scale(domain=domain)),
        )
        .properties(width=WIDTH, height=300, title=title)
    )
    return svg_of(chart).encode()

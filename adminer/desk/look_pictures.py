"""The pictures of the section Looking: prices over time, the timeline of lines, the posterior of one advert."""

from __future__ import annotations

import json
from collections.abc import Sequence
from datetime import date
from typing import Any, Final

import altair as alt

from adminer.desk.shelf import Row
from adminer.publish.look import FAINT, INK, WITH_CARD, WITHOUT_CARD, svg_of

WIDTH: Final = 840
WIDE_RATIO: Final = 40
_DAYS: Final = alt.Axis(format="%b %Y", tickCount=8, labelOverlap="greedy", labelSeparation=14)
TERMS: Final = {
    "cardholder_price": "with the card",
    "price_without_card": "without the card",
    "price": "for everyone",
    "former_price": "former price",
}


def prices_picture(rows: Sequence[Row], title: str) -> bytes:
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


def timeline_picture(sightings: Sequence[Row], runs: Sequence[Row], title: str) -> bytes:
    """Return a line for each line and chain: ticks are sightings, the bar is first to last, thin ends may be."""
    seen = [{"who": f"{row['line']}, {row['retailer']}", "day": row["seen_from"].isoformat()} for row in sightings]
    spans: dict[str, list[date]] = {}
    for row in sightings:
        spans.setdefault(f"{row['line']}, {row['retailer']}", []).append(row["seen_from"])
    bars = [{"who": who, "from": min(days).isoformat(), "to": max(days).isoformat()} for who, days in spans.items()]
    reach = [
        {
            "who": f"{row['line']}, {row['retailer'] or 'shop not read'}",
            "from": (row["start_earliest"] or row["first_seen"]).isoformat(),
            "to": (row["end_latest"] or row["last_seen"]).isoformat(),
        }
        for row in runs
        if row["first_seen"] and row["last_seen"]
    ]
    y = alt.Y("who:N", title=None, sort=alt.EncodingSortField(field="who"))
    layers = [
        alt.Chart(alt.InlineData(values=reach))
        .mark_rule(color=FAINT, strokeWidth=2, strokeDash=[3, 3])
        .encode(x=alt.X("from:T", title=None, axis=_DAYS), x2="to:T", y=y),
        alt.Chart(alt.InlineData(values=bars))
        .mark_rule(color=WITH_CARD, strokeWidth=5, opacity=0.45)
        .encode(x=alt.X("from:T", title=None, axis=_DAYS), x2="to:T", y=y),
        alt.Chart(alt.InlineData(values=seen))
        .mark_tick(color=INK, thickness=2, size=16)
        .encode(x=alt.X("day:T", title=None, axis=_DAYS), y=y),
    ]
    chart = alt.layer(*layers).properties(width=WIDTH, height=alt.Step(24), title=title)
    return svg_of(chart).encode()


def posterior_picture(posterior: str, title: str) -> bytes | None:
    """Return the chance of each month as SVG; None where the stored posterior cannot be understood.

    The posterior is JSON: {"1951-03": 0.02, …}.
    """
    points = months_of(posterior)
    if not points:
        return None
    chances = dict(points)
    months = _months_between(min(chances), max(chances), beside=4)
    bars = [{"month": f"{month}-01", "chance": chances.get(month, 0.0)} for month in months]
    chart = (
        alt.Chart(alt.InlineData(values=bars))
        .mark_bar(color=WITH_CARD)
        .encode(
            # in universal time, or a month begins on the last day of the one before it
            x=alt.X("utcyearmonth(month):T", title=None, axis=_DAYS, scale=alt.Scale(type="utc")),
            y=alt.Y("chance:Q", title="chance of each month", axis=alt.Axis(format="%", tickCount=5)),
        )
        .properties(width=WIDTH, height=240, title=title)
    )
    return svg_of(chart).encode()


def _months_between(first: str, last: str, beside: int) -> list[str]:
    """Return all months from one to another as 1951-03, and some on each side."""
    start, end = (int(month[:4]) * 12 + int(month[5:7]) - 1 for month in (first, last))
    return [f"{number // 12:04d}-{number % 12 + 1:02d}" for number in range(start - beside, end + beside + 1)]


def months_of(posterior: str | None) -> list[tuple[str, float]]:
    """Return (month, chance) pairs of a stored posterior; nothing where it cannot be understood."""
    try:
        data: Any = json.loads(posterior or "")
    except ValueError:
        return []
    pairs = data.items() if isinstance(data, dict) else data
    try:
        return [(str(month), float(chance)) for month, chance in pairs]
    except (TypeError, ValueError):
        return []

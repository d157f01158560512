"""Pictures of prices and weeks, made from rows of the public tables."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal

import altair as alt

from adminer.publish.look import INK, WITH_CARD, WITHOUT_CARD


@dataclass(frozen=True, slots=True)
class WeekOffer:
    """Hold one piece offered in one week of a promotion."""

    week: date
    piece: str
    cardholder_price: Decimal | None
    file: str


@dataclass(frozen=True, slots=True)
class TwoPrices:
    """Hold what one piece or set cost with the card and without."""

    what: str
    cardholder_price: Decimal
    price_without_card: Decimal


def weeks_of_a_promotion(rows: Sequence[WeekOffer], title: str, subtitle: str) -> alt.LayerChart:
    """Draw one mark a week and piece, with its cardholder price in cents or dollars beside it."""
    values = [
        {
            "week": row.week.isoformat(),
            "piece": row.piece,
            "price": money(row.cardholder_price) if row.cardholder_price is not None else "",
        }
        for row in rows
    ]
    base = alt.Chart(alt.InlineData(values=values)).encode(
        x=alt.X(
            "week:T",
            title="Week of the advert",
            scale=alt.Scale(type="utc"),
            axis=alt.Axis(format="%-d %b %Y", labelAngle=-40, values=sorted({row.week.isoformat() for row in rows})),
        ),
        y=alt.Y("piece:N", title=None, sort=alt.EncodingSortField("week", op="min")),
    )
    marks = base.mark_point(shape="diamond", filled=True, size=90, color=WITH_CARD)
    prices = base.mark_text(dx=9, align="left", color=INK, fontSize=11).encode(text="price:N")
    drawn: alt.LayerChart = (marks + prices).properties(
        title=alt.TitleParams(title, subtitle=subtitle), width=760, height=alt.Step(24)
    )
    return drawn


def two_prices(rows: Sequence[TwoPrices], title: str, subtitle: str) -> alt.LayerChart:
    """Draw each piece's price with the card and without as two marks joined by a line, in dollars."""
    joined = [
        {"what": row.what, "low": float(row.cardholder_price), "high": float(row.price_without_card)} for row in rows
    ]
    points = [
        {"what": row.what, "price": float(price), "terms": terms, "label": money(price)}
        for row in rows
        for price, terms in ((row.cardholder_price, "with the card"), (row.price_without_card, "without the card"))
    ]
    order = [row.what for row in sorted(rows, key=lambda row: row.price_without_card, reverse=True)]
    y = alt.Y("what:N", title=None, sort=order)
    bars = (
        alt.Chart(alt.InlineData(values=joined)).mark_rule(color=INK, strokeWidth=1).encode(y=y, x="low:Q", x2="high:Q")
    )
    marks = (
        alt.Chart(alt.InlineData(values=points))
        .mark_point(filled=True, size=100, opacity=1)
        .encode(
            y=y,
            x=alt.X("price:Q", title="Dollars"),
            color=alt.Color(
                "terms:N",
                title=None,
                scale=alt.Scale(domain=["with the card", "without the card"], range=[WITH_CARD, WITHOUT_CARD]),
            ),
            shape=alt.Shape(
                "terms:N",
                title=None,
                scale=alt.Scale(domain=["with the card", "without the card"], range=["diamond", "circle"]),
            ),
        )
    )
    # each label away from the other price, for those of a cup stand close
    low, high = (
        alt.Chart(alt.InlineData(values=[point for point in points if point["terms"] == terms])).encode(
            y=y, x="price:Q", text="label:N"
        )
        for terms in ("with the card", "without the card")
    )
    labels = low.mark_text(dy=-12, dx=4, align="right", fontSize=11, color=INK) + high.mark_text(
        dy=-12, dx=-4, align="left", fontSize=11, color=INK
    )
    drawn: alt.LayerChart = (bars + marks + labels).properties(
        title=alt.TitleParams(title, subtitle=subtitle), width=760, height=alt.Step(34)
    )
    return drawn


def money(amount: Decimal) -> str:
    """Write an amount of dollars as an advert of the time would: 99¢ below a dollar, $1.39 above."""
    if amount < 1:
        cents = (amount * 100).normalize()
        return f"{cents:f}¢"
    return f"${amount:,.2f}"

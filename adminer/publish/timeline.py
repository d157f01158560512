"""The timeline: one row a run or place; a dot is an advert, the bar its span seen, the pale bar how far it may reach.

One drawing for one run and for all runs of a file.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Any, Final

import altair as alt

from adminer.publish.look import FAINT, INK, WITH_CARD

WIDTH: Final = 760
ROW: Final = 26
_BAR: Final = 14


@dataclass(frozen=True, slots=True)
class Seen:
    """Hold one advert seen: its first and last day, and what it is told apart by (a maker), empty where by nothing."""

    first: date
    last: date
    kind: str = ""


@dataclass(frozen=True, slots=True)
class Track:
    """Hold one row: the span seen, how far it may have reached, and the adverts; what is not known is None."""

    row: str
    first: date | None = None
    last: date | None = None
    earliest: date | None = None
    latest: date | None = None
    seen: tuple[Seen, ...] = ()


def timeline(
    tracks: Sequence[Track], *, within: tuple[date, date] | None = None, more_rows: Sequence[str] = ()
) -> tuple[list[alt.Chart | alt.LayerChart], alt.X, alt.Y]:
    """Return the layers of a timeline and its axes, on which a caller may lay more.

    `within` are the days the axis reaches over; bars that go beyond are cut there. `more_rows` stand after the first.
    """
    rows = [track.row for track in tracks]
    rows[1:1] = more_rows
    domain = [day.isoformat() for day in within] if within else None
    scale = alt.Scale(type="utc", domain=domain, clamp=True) if domain else alt.Scale(type="utc")
    days = (within[1] - within[0]).days if within else 0
    form = "%Y" if days > 8 * 366 else "%b %Y" if days > 400 else "%-d %b %Y"
    angle = 0 if days > 400 else -40
    axis = alt.Axis(format=form, tickCount=10, labelAngle=angle, labelOverlap="greedy", labelSeparation=8)
    x = alt.X("first:T", title=None, scale=scale, axis=axis)
    y = alt.Y("row:N", title=None, sort=rows, scale=alt.Scale(domain=rows))
    reach = [bar(t.row, t.earliest or t.first, t.latest or t.last) for t in tracks if t.first and t.last]
    spans = [bar(t.row, t.first, t.last) for t in tracks if t.first and t.last]
    seen = [bar(t.row, s.first, s.last) | {"kind": s.kind} for t in tracks for s in t.seen]
    points = drawn(seen).mark_point(filled=True, size=70, opacity=1, color=INK)
    kinds = any(each["kind"] for each in seen)
    return (
        [
            drawn(reach).mark_bar(height=_BAR, color=FAINT, opacity=0.55).encode(x=x, x2="last:T", y=y),
            drawn(spans).mark_bar(height=_BAR, color=WITH_CARD, opacity=0.8).encode(x=x, x2="last:T", y=y),
            points.encode(x=x, y=y, shape=alt.Shape("kind:N", title=None)) if kinds else points.encode(x=x, y=y),
        ],
        x,
        y,
    )


def days_around(tracks: Sequence[Track], *, reach: bool) -> tuple[date, date] | None:
    """Return the days an axis reaches over: all spans seen, and how far they may reach where asked, with an edge."""
    first = min((d for t in tracks for d in (t.first, t.earliest if reach else None) if d), default=None)
    last = max((d for t in tracks for d in (t.last, t.latest if reach else None) if d), default=None)
    if first is None or last is None:
        return None
    edge = timedelta(days=max(7, (last - first).days // (30 if reach else 12)))
    return first - edge, last + edge


def drawn(values: Sequence[dict[str, Any]]) -> alt.Chart:
    """Return an empty chart over rows of data."""
    return alt.Chart(alt.InlineData(values=list(values)))


def bar(row: str, first: date | None, last: date | None) -> dict[str, Any]:
    """Return the data of one bar; it ends with its last day, so at the next midnight."""
    end = (last or first or date.min) + timedelta(days=1)
    return {"row": row, "first": (first or date.min).isoformat(), "last": end.isoformat()}

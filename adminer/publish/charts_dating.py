"""Pictures of dating: the posterior of an advert, fresh with its reasons or as the database keeps it."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from datetime import date
from typing import Final

import altair as alt

from adminer.dating.edtf import bounds_of
from adminer.dating.estimate import DateEstimate
from adminer.dating.months import MONTHS, first_day, index_of, last_day
from adminer.publish.look import INK, WITH_CARD, WITHOUT_CARD

_LEAST: Final = 2e-4
_MOST_REASONS: Final = 8
_WIDTH: Final = 760


def posterior_of(estimate: DateEstimate, title: str) -> alt.VConcatChart:
    """Draw the posterior by month with its 50 % and 90 % sets below it, and the reasons ranked by bits."""
    chances = {first_day(m): float(estimate.posterior[m]) for m in range(MONTHS) if estimate.posterior[m] >= _LEAST}
    sets = {name: _days(found.spans) for name, found in (("50 % set", estimate.half), ("90 % set", estimate.ninety))}
    reasons = [
        {"reason": _shortened(w.clue.text), "kind": w.clue.kind, "bits": w.moved_bits, "order": i}
        for i, w in enumerate(w for w in estimate.evidence if not w.struck)
    ][:_MOST_REASONS]
    why = (
        alt.Chart(alt.InlineData(values=reasons or [{"reason": "no evidence", "kind": "", "bits": 0, "order": 0}]))
        .mark_bar(color=WITHOUT_CARD, height=11)
        .encode(
            x=alt.X("bits:Q", title="How far it moved the answer, in bits", axis=alt.Axis(tickCount=5)),
            y=alt.Y("reason:N", title=None, sort=alt.EncodingSortField("order"), axis=alt.Axis(labelLimit=430)),
        )
        .properties(width=_WIDTH - 300, height=alt.Step(20))
    )
    drawn: alt.VConcatChart = alt.vconcat(*posterior_charts(chances, sets), why, spacing=14).properties(
        title=alt.TitleParams(title, subtitle=[estimate.ninety.edtf, estimate.note])
    )
    return drawn


def posterior_charts(
    chances: Mapping[date, float], sets: Mapping[str, Sequence[tuple[date, date]]]
) -> tuple[alt.Chart | alt.LayerChart, alt.Chart]:
    """Draw the chance of each month, named by its first day, and below it the days of each named set."""
    first = min(chances, default=first_day(0))
    last = max(chances, default=first_day(MONTHS - 1))
    months = range(max(0, index_of(first) - 3), min(MONTHS, index_of(last) + 4))
    curve = [{"month": first_day(m).isoformat(), "chance": chances.get(first_day(m), 0.0)} for m in months]
    low, high = first_day(months[0]).isoformat(), last_day(months[-1]).isoformat()
    scale = alt.Scale(type="utc", domain=[low, high])
    years = len(months) / 12
    axis = (
        alt.Axis(format="%b %Y", tickCount=8)
        if years < 5
        else alt.Axis(format="%Y", tickCount={"interval": "year", "step": max(1, round(years / 12))})
    )
    x = alt.X("month:T", title=None, scale=scale, axis=axis)
    area = (
        alt.Chart(alt.InlineData(values=curve))
        .mark_area(interpolate="step-after", color=WITH_CARD, opacity=0.35, line={"color": WITH_CARD, "strokeWidth": 1})
        .encode(x=x, y=alt.Y("chance:Q", title="Chance of the month", axis=alt.Axis(format="%", tickCount=4)))
        .properties(width=_WIDTH, height=190)
    )
    spans = [
        {"set": name, "first": a.isoformat(), "last": b.isoformat()} for name, found in sets.items() for a, b in found
    ]
    bars = (
        alt.Chart(alt.InlineData(values=spans))
        .mark_bar(height=9, color=INK)
        .encode(
            x=alt.X("first:T", title=None, scale=scale, axis=axis),
            x2="last:T",
            y=alt.Y("set:N", title=None),
        )
        .properties(width=_WIDTH, height=44)
    )
    return area, bars


def stored_posterior(posterior: str | None, sets: Mapping[str, str | None], title: str) -> alt.VConcatChart | None:
    """Draw a posterior as the database keeps it, {"1951-03": 0.02, …} and EDTF sets by name; None where it is none."""
    chances = dict(months_of(posterior))
    if not chances:
        return None
    spans = {name: spans_of_months(edtf) for name, edtf in sets.items() if edtf}
    drawn: alt.VConcatChart = alt.vconcat(*posterior_charts(chances, spans), spacing=14).properties(title=title)
    return drawn


def months_of(posterior: str | None) -> list[tuple[date, float]]:
    """Return (first day of the month, chance) pairs of a stored posterior; nothing where it cannot be understood."""
    try:
        return [(_month(month), float(chance)) for month, chance in json.loads(posterior or "").items()]
    except (ValueError, TypeError, AttributeError):
        return []


def spans_of_months(edtf: str) -> list[tuple[date, date]]:
    """Return the days of an EDTF set of months or years, as this program writes them: [1951-03,1952-01..1952-04]."""
    spans = []
    for part in edtf.strip("[]").split(","):
        first, _, last = part.partition("..")
        begun, ended = bounds_of(first).earliest, bounds_of(last or first).latest
        if begun and ended:
            spans.append((begun, ended))
    return spans


def _month(text: str) -> date:
    return date.fromisoformat(f"{text}-01")


def _days(spans: Sequence[tuple[int, int]]) -> list[tuple[date, date]]:
    return [(first_day(a), last_day(b)) for a, b in spans]


def _shortened(text: str) -> str:
    return text if len(text) <= 76 else text[:75] + "…"

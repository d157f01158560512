"""Pictures of dating: the posterior of an advert with its reasons, and the timeline of a run."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, timedelta
from pathlib import Path
from typing import Any, Final

import altair as alt

from adminer.dating.estimate import DateEstimate
from adminer.dating.months import MONTHS, first_day, last_day
from adminer.dating.run_records import RunSighting, RunStudy
from adminer.dating.weeks import monday_of
from adminer.publish.look import FAINT, INK, WITH_CARD, WITHOUT_CARD, png_of, svg_of

_LEAST: Final = 2e-4
_MOST_REASONS: Final = 8
_WIDTH: Final = 760


def write_chart(chart: alt.TopLevelMixin, target: Path) -> None:
    """Write a chart as PNG, or as SVG where the file's name ends so; OSError where the disk refuses."""
    if target.suffix.lower() == ".svg":
        target.write_text(svg_of(chart), encoding="utf-8")
    else:
        target.write_bytes(png_of(chart))


def posterior_of(estimate: DateEstimate, title: str) -> alt.VConcatChart:
    """Draw the posterior by month with its 50 % and 90 % sets below it, and the reasons ranked by bits."""
    shown = [m for m in range(MONTHS) if estimate.posterior[m] >= _LEAST]
    first, last = min(shown, default=0), max(shown, default=MONTHS - 1)
    months = range(max(0, first - 3), min(MONTHS, last + 4))
    curve = [{"month": first_day(m).isoformat(), "chance": float(estimate.posterior[m])} for m in months]
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
        {"set": f"{share} set", "first": first_day(a).isoformat(), "last": last_day(b).isoformat()}
        for share, found in (("50 %", estimate.half), ("90 %", estimate.ninety))
        for a, b in found.spans
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
    drawn: alt.VConcatChart = alt.vconcat(area, bars, why, spacing=14).properties(
        title=alt.TitleParams(title, subtitle=[estimate.ninety.edtf, estimate.note])
    )
    return drawn


def timeline_of(study: RunStudy, sightings: Sequence[RunSighting], title: str) -> alt.LayerChart:
    """Draw sightings by shop and town, the weeks searched, the span seen, and how far the run may have reached."""
    run = study.run
    places = sorted({_place(s) for s in sightings})
    layers: list[alt.Chart | alt.LayerChart] = []
    rows = ["the run", "searched weeks", *places] if study.searched else ["the run", *places]
    first = min([d for d in (run.start_earliest, run.first_seen) if d], default=None)
    last = max([d for d in (run.end_latest, run.last_seen) if d], default=None)
    edge = timedelta(days=max(7, (last - first).days // 30)) if first and last else timedelta(days=7)
    domain = [(first - edge).isoformat(), (last + edge).isoformat()] if first and last else None
    scale = alt.Scale(type="utc", domain=domain, clamp=True) if domain else alt.Scale(type="utc")
    x = alt.X("first:T", title=None, scale=scale, axis=alt.Axis(format="%-d %b %Y", labelAngle=-40))
    y = alt.Y("row:N", title=None, sort=rows, scale=alt.Scale(domain=rows))
    if run.first_seen and run.last_seen:
        reach = [
            _bar("the run", run.start_earliest or run.first_seen, run.end_latest or run.last_seen),
        ]
        layers.append(_drawn(reach).mark_bar(height=16, color=FAINT, opacity=0.55).encode(x=x, x2="last:T", y=y))
        layers.append(
            _drawn([_bar("the run", run.first_seen, run.last_seen)])
            .mark_bar(height=16, color=WITH_CARD, opacity=0.8)
            .encode(x=x, x2="last:T", y=y)
        )
    if study.searched:
        looked = [
            _bar("searched weeks", monday_of(w), monday_of(w) + timedelta(days=6))
            | {"what": "seen" if w in study.found else "searched in vain"}
            for w in sorted(study.searched)
        ]
        layers.append(
            _drawn(looked)
            .mark_bar(height=10, stroke=INK, strokeWidth=0.5)
            .encode(
                x=x,
                x2="last:T",
                y=y,
                color=alt.Color(
                    "what:N",
                    title=None,
                    scale=alt.Scale(domain=["seen", "searched in vain"], range=[WITH_CARD, "#fbf8f1"]),
                ),
            )
        )
    seen = [
        _bar(_place(s), s.seen_from, s.seen_to) | {"maker": s.maker or "maker not named"}
        for s in sightings
        if s.exact and s.seen_from and s.seen_to
    ]
    layers.append(
        _drawn(seen)
        .mark_point(filled=True, size=80, opacity=1, color=INK)
        .encode(x=x, y=y, shape=alt.Shape("maker:N", title=None))
    )
    if study.handovers:
        passed = [{"first": day.isoformat(), "text": f"{after} from here"} for day, _, after in study.handovers]
        layers.append(_drawn(passed).mark_rule(color=WITHOUT_CARD, strokeDash=[4, 3]).encode(x=x))
        layers.append(
            _drawn(passed)
            .mark_text(align="left", dx=4, dy=-6, color=WITHOUT_CARD)
            .encode(x=x, y=alt.value(0), text="text:N")
        )
    subtitle = [f"by {run.method}", *_lines(run.note)]
    drawn: alt.LayerChart = (
        alt.layer(*layers)
        .resolve_scale(color="independent", shape="independent")
        .properties(title=alt.TitleParams(title, subtitle=subtitle), width=_WIDTH, height=alt.Step(30))
    )
    return drawn


def _drawn(values: Sequence[dict[str, Any]]) -> alt.Chart:
    return alt.Chart(alt.InlineData(values=list(values)))


def _bar(row: str, first: date | None, last: date | None) -> dict[str, Any]:
    # a bar ends with its last day, so the next midnight
    end = (last or first or date.min) + timedelta(days=1)
    return {"row": row, "first": (first or date.min).isoformat(), "last": end.isoformat()}


def _place(s: RunSighting) -> str:
    return ", ".join(part for part in (s.retailer or "shop not named", s.city) if part)


def _lines(note: str, longest: int = 120) -> list[str]:
    # the parts of a note, as many on a line as fit
    lines: list[str] = []
    for part in filter(None, note.split("; ")):
        if lines and len(lines[-1]) + len(part) + 2 <= longest:
            lines[-1] += f"; {part}"
        else:
            lines.append(part)
    return lines


def _shortened(text: str) -> str:
    return text if len(text) <= 76 else text[:75] + "…"

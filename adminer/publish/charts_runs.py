"""Pictures of runs: the timeline of one run with the weeks searched, and that of all lines of a file."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import date, timedelta
from typing import Any

import altair as alt

from adminer.dating.run_records import RunSighting, RunStudy
from adminer.dating.weeks import monday_of
from adminer.publish.look import INK, PAPER, WITH_CARD, WITHOUT_CARD
from adminer.publish.timeline import ROW, WIDTH, Seen, Track, bar, days_around, drawn, timeline

ALL_SHOPS = "all shops"
Row = Mapping[str, Any]


def timeline_of(study: RunStudy, sightings: Sequence[RunSighting], title: str) -> alt.LayerChart:
    """Draw sightings by shop and town, the weeks searched, the span seen, and how far the run may have reached."""
    run = study.run
    whole = Track("the run", run.first_seen, run.last_seen, run.start_earliest, run.end_latest)
    places = [Track(place, seen=_seen_at(place, sightings)) for place in sorted({_place(s) for s in sightings})]
    searched = ["searched weeks"] if study.searched else []
    layers, x, y = timeline([whole, *places], within=days_around([whole], reach=True), more_rows=searched)
    if study.searched:
        layers.insert(2, _searched(study, x, y))
    if study.handovers:
        passed = [{"first": day.isoformat(), "text": f"{after} from here"} for day, _, after in study.handovers]
        layers += [
            drawn(passed).mark_rule(color=WITHOUT_CARD, strokeDash=[4, 3]).encode(x=x),
            drawn(passed)
            .mark_text(align="left", dx=4, dy=-6, color=WITHOUT_CARD)
            .encode(x=x, y=alt.value(0), text="text:N"),
        ]
    subtitle = [f"by {run.method}", *_lines(run.note)]
    picture: alt.LayerChart = (
        alt.layer(*layers)
        .resolve_scale(color="independent", shape="independent")
        .properties(title=alt.TitleParams(title, subtitle=subtitle), width=WIDTH, height=alt.Step(ROW))
    )
    return picture


def timeline_of_all(runs: Sequence[Row], sightings: Sequence[Row], title: str) -> alt.LayerChart | None:
    """Draw every line with the shops that had it, from rows of the tables runs and sightings; None without any.

    A line that one shop alone had is one row. The axis reaches over what was seen; the table beside says how far a run
    may have gone on.
    """
    tracks = [_track(run, sightings) for run in _shown(runs)]
    within = days_around(tracks, reach=False)
    if within is None:
        return None
    layers, _, _ = timeline(tracks, within=within)
    drawing: alt.LayerChart = (
        alt.layer(*layers)
        .resolve_scale(shape="independent")
        .properties(title=alt.TitleParams(title), width=WIDTH, height=alt.Step(ROW))
    )
    return drawing


def _shown(runs: Sequence[Row]) -> list[Row]:
    """Return the runs of whole towns left out: each line over all shops, and by shop where it has several."""
    dated = [run for run in runs if run["city"] is None and run["first_seen"] and run["last_seen"]]
    shops: dict[str, list[Row]] = {}
    for run in sorted(dated, key=lambda run: (run["line"], run["retailer"] or "")):
        shops.setdefault(run["line"], []).append(run)
    return [run for group in shops.values() for run in (group[-1:] if len(group) == 2 else group)]


def _track(run: Row, sightings: Sequence[Row]) -> Track:
    seen = tuple(
        Seen(row["seen_from"], row["seen_to"] or row["seen_from"])
        for row in sightings
        if row["line"] == run["line"]
        and run["retailer"] in (None, row["retailer"])
        # an advert of which only the year is known is no dot
        and (row["seen_to"] or row["seen_from"]) - row["seen_from"] <= timedelta(days=31)
    )
    name = f"{run['line']}, {run['retailer'] or ALL_SHOPS}"
    return Track(name, run["first_seen"], run["last_seen"], run["start_earliest"], run["end_latest"], seen)


def _searched(study: RunStudy, x: alt.X, y: alt.Y) -> alt.Chart:
    looked = [
        bar("searched weeks", monday_of(week), monday_of(week) + timedelta(days=6))
        | {"what": "seen" if week in study.found else "searched in vain"}
        for week in sorted(study.searched)
    ]
    kinds = alt.Scale(domain=["seen", "searched in vain"], range=[WITH_CARD, PAPER])
    marks = drawn(looked).mark_bar(height=10, stroke=INK, strokeWidth=0.5)
    chart: alt.Chart = marks.encode(x=x, x2="last:T", y=y, color=alt.Color("what:N", title=None, scale=kinds))
    return chart


def _seen_at(place: str, sightings: Sequence[RunSighting]) -> tuple[Seen, ...]:
    dated: list[tuple[date, date, str]] = [
        (s.seen_from, s.seen_to, s.maker or "maker not named")
        for s in sightings
        if _place(s) == place and s.exact and s.seen_from and s.seen_to
    ]
    return tuple(Seen(*each) for each in dated)


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

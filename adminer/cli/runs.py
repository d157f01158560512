"""`adminer runs`: how long a line was sold, how sure that is, and which issue to look at next."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import Annotated

import pyarrow as pa
import typer
from rich.console import Console

from adminer.cli.place import FolderOption, FolderWord, folder_and_name
from adminer.dating.estimators import ASSUMPTIONS, TooFewSightingsError
from adminer.dating.run_records import RunSighting, RunStudy
from adminer.dating.simulate import METHODS, SimulationRow, simulate_ends, simulate_searched
from adminer.dating.weeks import monday_of, sunday_of
from adminer.errors import UsageError, machine_error
from adminer.store.dating_answers import LineChoice, list_runs, study
from adminer.store.output import as_table, wide_console, write_answer
from adminer.store.plain import clean
from adminer.store.queries import open_readonly

_FARTHEST_WEEK = 20_000


def register(app: typer.Typer) -> None:
    """Add the command."""
    app.command("runs")(runs)


def runs(
    folder: FolderWord = None,
    line: Annotated[str | None, typer.Argument(help="A line by id or name; without it, all runs are listed.")] = None,
    retailer: Annotated[str | None, typer.Option(help="Only at this retailer (id or name).")] = None,
    city: Annotated[str | None, typer.Option(help="Only in this town.")] = None,
    piece: Annotated[str | None, typer.Option(help="Only adverts with this piece or set, for instance set:45.")] = None,
    methods: Annotated[bool, typer.Option("--methods", help="Every method's bounds, with what it assumes.")] = False,
    picture: Annotated[Path | None, typer.Option(help="Draw the timeline into this file (.png or .svg).")] = None,
    kind: Annotated[str, typer.Option("--format", help="table, csv, json, parquet or markdown.")] = "table",
    out: Annotated[Path | None, typer.Option(help="A file to write the list to.")] = None,
    simulate: Annotated[
        int | None,
        typer.Option(help="Simulate so many runs and print how often each method's 95 % bound held.", min=10),
    ] = None,
    option: FolderOption = None,
) -> None:
    """List runs, or study one: bounds, gaps, one run or two, and the issues whose search would tell most."""
    if simulate is not None:
        rows = [*simulate_ends(simulate), *simulate_searched(simulate)]
        write_answer(_simulated(rows), kind, out)
        return
    opened, line = folder_and_name(folder, line, option)
    with open_readonly(opened.existing_database()) as connection:
        if line is None:
            if retailer or city or piece or picture or methods:
                raise UsageError("which line is meant?", remedy="name a line before the options")
            listed = list_runs(connection)
            write_answer(listed, kind, out)
            if listed.num_rows == 0:
                typer.echo("No line of names/lines.toml was seen in an advert; adminer names proposes lines.", err=True)
            return
        found, sightings = study(connection, opened.root, LineChoice(line, retailer, city, piece))
    console = wide_console()
    _tell(console, found)
    if methods:
        console.print(as_table(_by_method(found)))
    if picture is not None:
        _draw(found, sightings, line, picture)


def _tell(console: Console, found: RunStudy) -> None:
    run = found.run
    place = ", ".join(part for part in (run.retailer or "all retailers", run.city) if part)
    console.print(f"{clean(run.line)}, {clean(place)}: {run.sightings} sightings", style="bold", highlight=False)
    lines = [
        f"seen        {run.first_seen or '?'} to {run.last_seen or '?'}",
        f"began       {run.start_edtf or 'not bounded'}",
        f"ended       {run.end_edtf or 'not bounded'}",
        f"by          {run.method}" + (f", {run.confidence:.0%} each bound" if run.confidence else ""),
        f"            {run.note}",
    ]
    if found.comparison is not None:
        two = found.comparison
        pause = f", pausing {monday_of(two.pause[0])} to {sunday_of(two.pause[1])}" if two.pause else ""
        lines.append(f"two runs    chance {two.chance_of_two:.0%} against one{pause}")
    lines += [
        f"gap         {gap.first} to {gap.last}, {gap.weeks} week{'' if gap.weeks == 1 else 's'}: "
        + (_in_vain(gap.issues_searched) if gap.issues_searched else "never looked at")
        for gap in found.gaps
    ]
    lines += [f"handover    {day}: from {before} to {after}" for day, before, after in found.handovers]
    for text in lines:
        console.print(f"  {clean(text)}", highlight=False, markup=False)
    if found.next:
        console.print("  Look at these issues next:", highlight=False)
        for number, search in enumerate(found.next, start=1):
            console.print(
                f"    {number}. week of {monday_of(search.week)}: narrows the {search.side} by {search.bits:.2f} bits "
                f"(on sale then with chance {search.chance_on:.0%})",
                highlight=False,
            )


def _in_vain(issues: int) -> str:
    return f"{issues} search{'' if issues == 1 else 'es'} in vain"


def _by_method(found: RunStudy) -> pa.Table:
    weeks = list(found.weeks)
    rows: list[dict[str, str]] = []
    for name, beyond in METHODS.items():
        try:
            after, before = beyond(weeks), beyond([-w for w in weeks])
        except TooFewSightingsError as fault:
            rows.append({"method": name, "began_after": fault.what, "ended_before": "", "assumes": ASSUMPTIONS[name]})
            continue
        rows.append(
            {
                "method": name,
                "began_after": _day(min(weeks) - before, first=True),
                "ended_before": _day(max(weeks) + after, first=False),
                "assumes": ASSUMPTIONS[name],
            }
        )
    if found.posterior is not None:
        rows.append(
            {
                "method": "searched weeks",
                "began_after": str(monday_of(found.posterior.start_bound())),
                "ended_before": str(sunday_of(found.posterior.end_bound())),
                "assumes": "weeks are on or off; searches and finds have unknown chances; even priors",
            }
        )
    return pa.Table.from_pylist(rows)


def _day(week: float, *, first: bool) -> str:
    # beyond some centuries a method has nothing to say
    if abs(week) > _FARTHEST_WEEK:
        return "not bounded"
    return str(monday_of(int(week)) if first else sunday_of(int(week)))


def _simulated(rows: Sequence[SimulationRow]) -> pa.Table:
    return pa.Table.from_pylist(
        [
            {
                "weeks": row.weeks,
                "found": row.found,
                "method": row.method,
                "runs": row.runs,
                "held": f"{row.coverage:.1%}",
                "median_weeks": round(row.median_weeks, 1),
            }
            for row in rows
        ]
    )


def _draw(found: RunStudy, sightings: Sequence[RunSighting], line: str, target: Path) -> None:
    from adminer.publish.charts_runs import timeline_of  # noqa: PLC0415 - drawing takes long to load
    from adminer.publish.look import write_chart  # noqa: PLC0415

    place = found.run.retailer or "all retailers"
    try:
        write_chart(timeline_of(found, sightings, f"{found.run.line or line}, {place}"), target)
    except OSError as fault:
        raise machine_error(fault, target) from None
    typer.echo(f"Picture: {target}")

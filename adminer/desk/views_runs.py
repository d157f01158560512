"""Runs: when each line was seen, and all there is to say about one run, with the issues worth a look next."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from urllib.parse import urlencode

from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from adminer.dating.run_records import RunSighting, RunStudy
from adminer.dating.searches import FILE_NAME as SEARCH_LOG
from adminer.dating.weeks import monday_of, sunday_of
from adminer.desk import look_data
from adminer.desk.desk import Desk
from adminer.desk.fresh import newer_than_answers
from adminer.desk.rendering import page
from adminer.errors import UsageError
from adminer.publish.charts_runs import ALL_SHOPS, timeline_of, timeline_of_all
from adminer.publish.look import svg_of
from adminer.store.dating_answers import LineChoice, study

Studied = tuple[RunStudy, Sequence[RunSighting]]


def routes(desk: Desk) -> list[Route]:
    """Return the addresses of runs."""

    def studied(choice: LineChoice) -> Studied:
        def make() -> Studied:
            with desk.shelf.cursor() as cursor:
                return study(cursor, desk.folder.root, choice)

        # a search written down counts at once, before the database is built anew
        return desk.shelf.kept(("study", choice, _written(desk.folder.root / SEARCH_LOG)), make)

    def runs(request: Request) -> Response:
        found = look_data.runs(desk) if desk.shelf.exists else []
        for run in found:
            named = {"line": run["line_id"] or run["line"], "retailer": run["retailer"], "city": run["city"]}
            run["address"] = "/look/run?" + urlencode({name: value for name, value in named.items() if value})
        context = {"here": "Looking", "newer": newer_than_answers(desk), "runs": found, "all_shops": ALL_SHOPS}
        return page(request, desk, "runs.html", context)

    def runs_drawn(_: Request) -> Response:
        return Response(desk.shelf.kept(("runs drawn",), drawn), media_type="image/svg+xml")

    def drawn() -> str:
        picture = timeline_of_all(look_data.runs(desk), look_data.sightings(desk), "When each line was seen")
        if picture is None:
            raise UsageError("no line was seen on a known day yet", remedy="fill in dates on the page In")
        return svg_of(picture)

    def run(request: Request) -> Response:
        choice = _choice(request)
        found, sightings = studied(choice)
        context = {
            "here": "Looking",
            "newer": newer_than_answers(desk),
            "run": found.run,
            "study": found,
            "shop": found.run.retailer or ALL_SHOPS,
            "city": choice.city,
            "query": request.url.query,
            "write_down": urlencode(_sought(found, f"/look/run?{request.url.query}")),
            "said": desk.take_said(),
            "scans": look_data.places_of(desk, [s.advert_id for s in sightings]),
            "searches": [(monday_of(s.week), sunday_of(s.week), s) for s in found.next],
        }
        return page(request, desk, "run.html", context)

    def run_drawn(request: Request) -> Response:
        choice = _choice(request)
        found, sightings = studied(choice)
        place = ", ".join(part for part in (found.run.retailer or ALL_SHOPS, choice.city) if part)
        key = ("run drawn", choice, _written(desk.folder.root / SEARCH_LOG))
        svg = desk.shelf.kept(key, lambda: svg_of(timeline_of(found, sightings, f"{found.run.line}, {place}")))
        return Response(svg, media_type="image/svg+xml")

    return [
        Route("/look/runs", runs),
        Route("/look/runs.svg", runs_drawn),
        Route("/look/run", run),
        Route("/look/run.svg", run_drawn),
    ]


def _sought(found: RunStudy, back: str) -> dict[str, str]:
    """Return what a search for a run is filled in with, and the address to come back to."""
    run = found.run
    sought = {"line": run.line_id or run.line, "retailer": run.retailer_id or run.retailer, "back": back}
    return {name: value for name, value in sought.items() if value}


def _written(path: Path) -> tuple[int, int]:
    """Return what changes with every new version of a file; zeros where there is none."""
    try:
        status = path.stat()
    except FileNotFoundError:
        return (0, 0)
    return (status.st_mtime_ns, status.st_size)


def _choice(request: Request) -> LineChoice:
    """Return which run an address names. Raises UsageError where it names no line."""
    line, retailer, city = (request.query_params.get(name) or None for name in ("line", "retailer", "city"))
    if line is None:
        raise UsageError("which line is meant?", remedy="choose a run on the page Runs")
    return LineChoice(line, retailer, city)

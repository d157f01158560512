"""The step of a build that dates the adverts and computes the runs, inside the build's own transaction."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import duckdb

from adminer.dating.estimate import estimate_adverts
from adminer.dating.personal import load_personal
from adminer.dating.runs import compute_runs
from adminer.dating.searches import read_searches
from adminer.names.authority import Authorities
from adminer.names.objects import read_objects
from adminer.store.dating_rows import (
    consumer_price_rows,
    estimate_rows,
    known_years,
    read_cases,
    read_context,
    read_sightings,
    run_rows,
)
from adminer.store.load import insert_rows
from adminer.store.schedule_rows import read_schedules, schedule_rows


def dating_step(
    folder: Path,
    authorities: Authorities,
    *,
    region: str | None = None,
    years: tuple[int, int] | None = None,
    problems: list[str] | None = None,
) -> Callable[[duckdb.DuckDBPyConnection], None]:
    """Return the step that fills date_estimates, evidence, runs and consumer_prices from the tables loaded before it.

    `folder` is the clippings folder, whose objects.csv, searches.csv and evidence.toml are read now; sentences about
    their broken rows are appended to `problems`. Raises FolderError where one of them cannot be understood.
    """
    objects = read_objects(folder / "objects.csv")
    searches = read_searches(folder)
    personal = load_personal(folder)
    if problems is not None:
        problems += [*objects.problems, *searches.problems]

    def step(connection: duckdb.DuckDBPyConnection) -> None:
        schedules = read_schedules(connection)
        insert_rows(connection, "schedule_facts", schedule_rows(schedules))
        runs = compute_runs(read_sightings(connection), searches.searches, schedules, known_years(authorities))
        insert_rows(connection, "runs", run_rows(runs))
        cases = read_cases(connection)
        context = read_context(connection, cases, authorities, objects.objects, region=region, runs=runs)
        answers, evidence = estimate_rows(estimate_adverts(cases, context, years=years, personal=personal))
        insert_rows(connection, "date_estimates", answers)
        insert_rows(connection, "evidence", evidence)
        insert_rows(connection, "consumer_prices", consumer_price_rows())

    return step

"""Answers of the commands that date: estimates of chosen adverts computed afresh, and the study of one run."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import duckdb
import pyarrow as pa

from adminer.dating.estimate import DateEstimate, estimate_adverts
from adminer.dating.personal import load_personal
from adminer.dating.run_records import RunSighting, RunStudy
from adminer.dating.runs import compute_runs, study_run
from adminer.dating.searches import read_searches
from adminer.errors import UsageError
from adminer.names.authority import load_authorities
from adminer.names.objects import read_objects
from adminer.store.dating_rows import known_years, read_cases, read_context, read_sightings
from adminer.store.no_rows import nearest
from adminer.store.schedule_rows import kept_schedules

_LIST = """
    SELECT c.file, e.advert_id, a.retailer, e.edtf_90, e.edtf_50, e.median, e.probability_peak AS peak,
        coalesce(a.dated_by, 'estimate') AS dated_by,
        (SELECT arg_max(v.kind || ': ' || v.text, v.moved_bits) FROM evidence v
            WHERE v.advert_id = e.advert_id AND NOT v.struck) AS strongest_reason,
        e.note
    FROM date_estimates e JOIN adverts a USING (advert_id) JOIN clippings c USING (clipping_id)
    WHERE $every OR a.dated_by IS NULL ORDER BY c.file, e.advert_id
"""
_MEANT = """
    SELECT a.advert_id FROM adverts a JOIN clippings c USING (clipping_id)
    WHERE a.advert_id = $what OR a.clipping_id = $what OR c.file = $what ORDER BY a.advert_id
"""
_RUNS = """
    SELECT line, coalesce(retailer, 'all retailers') AS retailer, coalesce(city, 'all towns') AS city, sightings,
        first_seen, last_seen, start_earliest, end_latest, method, confidence, note
    FROM runs ORDER BY line, retailer NULLS FIRST, city NULLS FIRST
"""


@dataclass(frozen=True, slots=True)
class LineChoice:
    """Hold which run is meant: a line by id or name, and a retailer, town and piece where given."""

    line: str
    retailer: str | None = None
    city: str | None = None
    piece: str | None = None  # a piece or set, as in the column piece_or_set

    def holds(self, sighting: RunSighting) -> bool:
        """Say whether a sighting belongs to the run."""
        return (
            _is(self.line, sighting.line_id, sighting.line)
            and (self.retailer is None or _is(self.retailer, sighting.retailer_id, sighting.retailer))
            and (self.city is None or _is(self.city, sighting.city))
        )


def list_estimates(connection: duckdb.DuckDBPyConnection, *, every: bool) -> Any:
    """Return the estimates in the database as an Arrow table: of adverts without a date, or of all."""
    return connection.sql(_LIST, params={"every": every}).to_arrow_table()


def list_runs(connection: duckdb.DuckDBPyConnection) -> Any:
    """Return the runs in the database as an Arrow table."""
    return connection.sql(_RUNS).to_arrow_table()


def fresh_estimates(
    connection: duckdb.DuckDBPyConnection,
    folder: Path,
    what: str,
    *,
    region: str | None = None,
    years: tuple[int, int] | None = None,
) -> list[DateEstimate]:
    """Return the estimates of one advert or of all adverts of a clipping, with evidence.toml as it is now.

    Raises UsageError where there is no such clipping.
    """
    meant = [row[0] for row in connection.execute(_MEANT, {"what": what}).fetchall()]
    if not meant:
        raise UsageError(
            f"there is no clipping or advert '{what}'", remedy="take a file name, or an id from adminer date"
        )
    authorities = load_authorities(folder / "names")
    searches = read_searches(folder).searches
    personal = load_personal(folder)
    runs = compute_runs(read_sightings(connection), searches, kept_schedules(connection), known_years(authorities))
    cases = read_cases(connection)
    objects = read_objects(folder / "objects.csv").objects
    context = read_context(connection, cases, authorities, objects, region=region, runs=runs)
    clippings = {case.clipping_id for case in cases if case.advert_id in meant}
    wanted = {case.advert_id for case in cases if case.clipping_id in clippings}
    everyone = [case.advert_id for case in cases]
    wanted |= {other for advert in meant for other in personal.linked(advert, everyone)}
    chosen = [case for case in cases if case.advert_id in wanted]
    found = estimate_adverts(chosen, context, years=years, personal=personal)
    return [estimate for estimate in found if estimate.advert_id in meant]


def study(
    connection: duckdb.DuckDBPyConnection, folder: Path, choice: LineChoice
) -> tuple[RunStudy, Sequence[RunSighting]]:
    """Return the study of one run and its sightings; UsageError where the line was never seen."""
    sightings = [s for s in read_sightings(connection, choice.line) if choice.holds(s)]
    if choice.piece is not None:
        with_it = connection.execute(
            "SELECT DISTINCT advert_id FROM offers WHERE lower(piece_or_set) = lower($piece) AND status <> 'rejected'",
            {"piece": choice.piece},
        ).fetchall()
        showing = {row[0] for row in with_it}
        sightings = [s for s in sightings if s.advert_id in showing]
    if not sightings:
        raise UsageError(
            f"no sighting of '{choice.line}'"
            + (f" at '{choice.retailer}'" if choice.retailer else "")
            + (f" with '{choice.piece}'" if choice.piece else ""),
            remedy=nearest(choice.line, _lines_seen(connection)).strip() or "list the runs with: adminer runs",
        )
    searches, schedules = read_searches(folder).searches, kept_schedules(connection, choice.line)
    known = known_years(load_authorities(folder / "names"))
    return study_run(sightings, searches, schedules, known), sightings


def _lines_seen(connection: duckdb.DuckDBPyConnection) -> list[str]:
    return [row[0] for row in connection.execute("SELECT DISTINCT line FROM sightings ORDER BY line").fetchall()]


def evidence_table(estimate: DateEstimate) -> Any:
    """Return the ranked evidence of one advert as an Arrow table."""
    return pa.table(
        {
            "moved_bits": pa.array([round(w.moved_bits, 2) for w in estimate.evidence], pa.float64()),
            "kind": pa.array([w.clue.kind for w in estimate.evidence], pa.string()),
            "what": pa.array([w.clue.text for w in estimate.evidence], pa.string()),
            "source": pa.array([w.clue.source for w in estimate.evidence], pa.string()),
            "box": pa.array(
                [f"{b.x},{b.y},{b.w},{b.h}" if (b := w.clue.box) else None for w in estimate.evidence], pa.string()
            ),
            "struck": pa.array([w.struck for w in estimate.evidence], pa.bool_()),
        }
    )


def _is(wanted: str, *names: str | None) -> bool:
    return any(name is not None and name.casefold() == wanted.casefold() for name in names)

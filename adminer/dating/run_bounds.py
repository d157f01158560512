"""How far a run may reach beyond its sightings: by the weeks searched, else by the bound on the lattice of weeks."""

from __future__ import annotations

import random
from collections.abc import Iterable, Sequence
from datetime import date
from typing import Final

from adminer.dating.bayes_run import WeekRecord, fit_run
from adminer.dating.lattice import weeks_beyond
from adminer.dating.run_records import RunSighting
from adminer.dating.searches import Search
from adminer.dating.weeks import monday_of, sunday_of, week_of

CONFIDENCE: Final = 0.95
SEARCHED, LATTICE, NONE = "searched weeks", "lattice of weeks", "seen once"
_DRAWS: Final = 400


def weeks_seen(group: Sequence[RunSighting]) -> list[int]:
    """Return the distinct weeks in which a run was seen, in order."""
    return sorted({week_of(s.seen_from) for s in group if s.exact and s.seen_from})


def reliabilities(group: Sequence[RunSighting]) -> dict[int, float]:
    """Return how sure it is, by week, that one of its sightings is right."""
    best: dict[int, float] = {}
    for s in group:
        if s.exact and s.seen_from:
            week = week_of(s.seen_from)
            # several independent adverts of a week make it surer that one is right
            best[week] = 1 - (1 - best.get(week, 0.0)) * (1 - min(s.reliability, 1.0))
    return best


def searched_weeks(searches: Iterable[Search], group: Sequence[RunSighting]) -> tuple[dict[int, int], dict[int, int]]:
    """Return how many papers were looked through by week, and in how many of them the line was seen.

    A sighting whose paper is not known counts as seen in the paper searched.
    """
    shown: dict[int, set[str]] = {}
    for s in group:
        if s.exact and s.seen_from:
            shown.setdefault(week_of(s.seen_from), set()).add((s.publication or "").casefold())
    papers: dict[int, set[str]] = {}
    for search in searches:
        for week in range(week_of(search.first), week_of(search.last) + 1):
            papers.setdefault(week, set()).add(search.paper.casefold())
    found = {
        week: len({p for p in looked if p in shown.get(week, ()) or "" in shown.get(week, ())})
        for week, looked in papers.items()
    }
    return {week: len(looked) for week, looked in papers.items()}, {week: n for week, n in found.items() if n}


def statistical_bounds(
    weeks: Sequence[int],
    vague: Sequence[RunSighting],
    searches: Sequence[Search],
    group: Sequence[RunSighting],
    seed: str,
) -> tuple[date | None, date | None, str, float | None, list[str]]:
    """Return start, end, method, confidence and the words said of them, from sightings and searches alone."""
    searched, found = searched_weeks(searches, group)
    vain = sum(1 for week in searched if week not in found)
    if vain:
        run = fit_run(WeekRecord(reliabilities(group), searched, found))
        said = [
            f"{len(searched)} week{'' if len(searched) == 1 else 's'} searched, {vain} in vain; "
            f"a search of a week that has it shows it with chance {run.detection:.2f}"
        ]
        return monday_of(run.start_bound()), sunday_of(run.end_bound()), SEARCHED, CONFIDENCE, said
    after, before = _lattice(weeks, vague, seed)
    if after is None or before is None:
        few = "one week does not bound a run" if len(weeks) < 2 else "so few weeks, so far apart, bound no run"
        return None, None, NONE, None, [few]
    return (
        monday_of(min(weeks) - before),
        sunday_of(max(weeks) + after),
        LATTICE,
        CONFIDENCE,
        [f"each bound holds with {CONFIDENCE:.0%} if every week was equally likely to be found"],
    )


def _lattice(weeks: Sequence[int], vague: Sequence[RunSighting], seed: str) -> tuple[int | None, int | None]:
    if not vague:
        return weeks_beyond(list(weeks)), weeks_beyond([-w for w in weeks])
    # sightings known within a span are drawn anew many times, and the bound is taken over all draws
    chance = random.Random(seed)  # noqa: S311 - seeded by the run, so that every rebuild gives the same
    spans = [(week_of(s.seen_from), week_of(s.seen_to)) for s in vague if s.seen_from and s.seen_to]
    ends: list[float] = []
    starts: list[float] = []
    for _ in range(_DRAWS):
        drawn = [*weeks, *(chance.randint(a, b) for a, b in spans)]
        after, before = weeks_beyond(drawn), weeks_beyond([-w for w in drawn])
        ends.append(float("inf") if after is None else max(drawn) + after - max(weeks))
        starts.append(float("inf") if before is None else min(weeks) - (min(drawn) - before))
    at = int(CONFIDENCE * _DRAWS) - 1
    end, start = sorted(ends)[at], sorted(starts)[at]
    return None if end == float("inf") else int(end), None if start == float("inf") else int(start)

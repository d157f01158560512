"""The run of a line at a chain, in a town and over all: how long it was seen, and how much longer it may have run."""

from __future__ import annotations

import random
from collections.abc import Iterable, Iterator, Sequence
from datetime import date, timedelta
from itertools import pairwise
from typing import Final

from adminer.dating.bayes_run import WeekRecord, compare_runs, fit_run
from adminer.dating.lattice import weeks_beyond
from adminer.dating.next_searches import Side, next_searches
from adminer.dating.run_records import Gap, Run, RunSighting, RunStudy
from adminer.dating.schedules import ScheduleFact
from adminer.dating.searches import Search
from adminer.dating.weeks import monday_of, sunday_of, week_of

CONFIDENCE: Final = 0.95
SCHEDULE, FINAL_WEEK, PROGRAMME, SEARCHED, LATTICE, NONE = (
    "printed schedule", "final week printed", "printed list of weeks", "searched weeks", "lattice of weeks", "seen once"
)  # fmt: skip
_SCHEDULE_CONFIDENCE: Final = 0.98  # printed schedules were broken now and then; judgement, no source
_DRAWS: Final = 400
_ONE_WEEK: Final = timedelta(days=7)


def compute_runs(
    sightings: Iterable[RunSighting], searches: Sequence[Search] = (), schedules: Iterable[ScheduleFact] = ()
) -> list[Run]:
    """Return the runs of every line: by retailer, by retailer and town where it has several, and over all retailers.

    Rows come in a fixed order and depend on nothing but the input.
    """
    facts = _by_advert(schedules)
    return [
        _run(key, group, _relevant(searches, group), facts) for key, group in _groups(sorted(sightings, key=_order))
    ]


def study_run(
    sightings: Sequence[RunSighting], searches: Sequence[Search] = (), schedules: Iterable[ScheduleFact] = ()
) -> RunStudy:
    """Return all there is to say about the sightings of one run."""
    group = sorted(sightings, key=_order)
    relevant = _relevant(searches, group)
    one = group[0]
    same_retailer = len({s.retailer_id or s.retailer for s in group}) == 1
    key = (one.line_id or one.line, (one.retailer_id or one.retailer) if same_retailer else None, None)
    run = _run(key, group, relevant, _by_advert(schedules))
    weeks = _weeks(group)
    searched, found = searched_weeks(relevant, group)
    if not weeks:
        return RunStudy(run, (), searched, None, None, (), ())
    record = WeekRecord(_reliabilities(group), searched, found)
    posterior = fit_run(record)
    return RunStudy(
        run,
        tuple(weeks),
        searched,
        posterior,
        compare_runs(record) if len(weeks) > 2 else None,
        tuple(_gaps(weeks, searched)),
        next_searches(posterior, weeks, searched, sides=_open_sides(run)),
        found,
        tuple(_handovers(group)),
    )


def _open_sides(run: Run) -> tuple[Side, ...]:
    # what is printed needs no search
    if run.method == SCHEDULE:
        return () if run.scheduled_start else ("start",)
    return ("start",) if run.method == FINAL_WEEK else ("start", "end")


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


def _groups(
    ordered: Sequence[RunSighting],
) -> Iterator[tuple[tuple[str, str | None, str | None], list[RunSighting]]]:
    lines: dict[str, list[RunSighting]] = {}
    for sighting in ordered:
        lines.setdefault(sighting.line_id or sighting.line.casefold(), []).append(sighting)
    for line, group in lines.items():
        shops: dict[str | None, list[RunSighting]] = {}
        for sighting in group:
            shops.setdefault(sighting.retailer_id or sighting.retailer, []).append(sighting)
        if len(shops) > 1 or None in shops:
            yield (line, None, None), group
        for shop, of_shop in shops.items():
            if shop is None:
                continue
            yield (line, shop, None), of_shop
            towns: dict[str, list[RunSighting]] = {}
            for sighting in of_shop:
                if sighting.city:
                    towns.setdefault(sighting.city, []).append(sighting)
            if len(towns) > 1:
                for town, of_town in towns.items():
                    yield (line, shop, town), of_town


def _run(
    key: tuple[str, str | None, str | None],
    group: Sequence[RunSighting],
    searches: Sequence[Search],
    facts: dict[str, list[ScheduleFact]],
) -> Run:
    line, shop, town = key
    exact = [s for s in group if s.exact]
    weeks = _weeks(group)
    vague = [s for s in group if not s.exact and s.dated_by != "estimate" and s.seen_from and s.seen_to]
    notes = [f"{len(weeks)} distinct weeks"] if weeks else []
    left_out = len(group) - len(exact) - len(vague)
    notes += [f"{len(vague)} sightings only known within a span"] if vague else []
    notes += [f"{left_out} undated or estimated adverts left out"] if left_out else []
    # what is certain: it had begun by the earliest last day, and went on to the latest first day
    first_seen = min(
        [s.seen_from for s in exact if s.seen_from] + [s.seen_to for s in vague if s.seen_to], default=None
    )
    last_seen = max([s.seen_to for s in exact if s.seen_to] + [s.seen_from for s in vague if s.seen_from], default=None)
    start, end, method, confidence = None, None, NONE, None
    if weeks:
        start, end, method, confidence, said = _bounds(weeks, vague, searches, group, "|".join(map(str, key)))
        notes += said
    printed = _printed(exact, facts)
    scheduled: date | None = None
    if printed is not None:
        statistic = notes[-1] if method == LATTICE else None
        begun, ended, method_printed, said_printed = printed
        # a schedule that later sightings outlast was not kept
        kept_end = ended is not None and last_seen is not None and ended + _ONE_WEEK > last_seen
        kept_start = begun is not None and first_seen is not None and begun <= first_seen
        start = begun if kept_start else start
        scheduled = begun if kept_start and method_printed == SCHEDULE else None
        end = ended if kept_end else end
        if kept_end or kept_start:
            method, confidence = method_printed, _SCHEDULE_CONFIDENCE
            if kept_start and kept_end and statistic is not None:
                notes.remove(statistic)
            notes.append(said_printed)
        elif ended is not None:
            notes.append(f"{said_printed}, but it was seen later, so the schedule was not kept")
    if (whole := _programme(group, facts, first_seen, last_seen)) is not None:
        # the whole programme has so many weeks: neither end lies further from the other end's last sighting
        earliest, latest, said_whole = whole
        start = max(start, earliest) if start else earliest
        end = min(end, latest) if end else latest
        method, confidence = (PROGRAMME, _SCHEDULE_CONFIDENCE) if method == NONE else (method, confidence)
        notes.append(said_whole)
    one = group[0]
    return Run(
        "|".join(part or "*" for part in (line, shop, town)),
        one.line_id,
        one.line,
        one.retailer_id if shop else None,
        one.retailer if shop else None,
        town,
        len(group),
        first_seen,
        last_seen,
        min(start, first_seen) if start and first_seen else start,
        max(end, last_seen) if end and last_seen else end,
        method,
        confidence,
        "; ".join(notes),
        scheduled,
    )


def _bounds(
    weeks: Sequence[int],
    vague: Sequence[RunSighting],
    searches: Sequence[Search],
    group: Sequence[RunSighting],
    seed: str,
) -> tuple[date | None, date | None, str, float | None, list[str]]:
    searched, found = searched_weeks(searches, group)
    vain = sum(1 for week in searched if week not in found)
    if vain:
        run = fit_run(WeekRecord(_reliabilities(group), searched, found))
        said = [
            f"{len(searched)} weeks searched, {vain} in vain; a search of a week that has it shows it with chance "
            f"{run.detection:.2f}"
        ]
        return monday_of(run.start_bound()), sunday_of(run.end_bound()), SEARCHED, CONFIDENCE, said
    after, before = _lattice(weeks, vague, seed)
    if after is None or before is None:
        return None, None, NONE, None, ["one week does not bound a run"]
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


def _printed(
    exact: Sequence[RunSighting], facts: dict[str, list[ScheduleFact]]
) -> tuple[date | None, date | None, str, str] | None:
    begun: date | None = None
    ended: date | None = None
    said: list[str] = []
    method = SCHEDULE
    extended_at = [s.seen_from for s in exact if any(f.what == "extended" for f in facts.get(s.advert_id, ()))]
    for sighting in exact:
        if sighting.seen_from is None or sighting.seen_to is None:
            continue
        for fact in facts.get(sighting.advert_id, ()):
            if fact.what == "week_of" and fact.week and fact.of:
                start = sighting.seen_from - (fact.week - 1) * _ONE_WEEK
                stop = sighting.seen_from + (fact.of - fact.week) * _ONE_WEEK + timedelta(days=6)
                begun = min(begun, start) if begun else start
                ended = max(ended, stop) if ended else stop
            elif fact.what == "final" and ended is None:
                ended, method = sighting.seen_to, FINAL_WEEK
            elif fact.what == "first" and begun is None:
                begun = sighting.seen_from
            else:
                continue
            said.append(f"'{fact.text}' in the advert of {sighting.seen_from}")
    if not said:
        return None
    if any(day is not None for day in extended_at):
        ended = None
        said.append("printed as extended, so its planned end is not used")
    return begun, ended, method, "; ".join(said[:2])


def _programme(
    group: Sequence[RunSighting],
    facts: dict[str, list[ScheduleFact]],
    first_seen: date | None,
    last_seen: date | None,
) -> tuple[date, date, str] | None:
    """Return the widest bounds that a printed list of weeks leaves; None where none is printed or it was not kept."""
    told = [fact for s in group for fact in facts.get(s.advert_id, ()) if fact.of and fact.what == "weeks"]
    if not told or first_seen is None or last_seen is None:
        return None
    fact = max(told, key=lambda f: f.of or 0)
    weeks = fact.of or 0
    if week_of(last_seen) - week_of(first_seen) >= weeks:
        return None
    earliest, latest = monday_of(week_of(last_seen) - weeks + 1), sunday_of(week_of(first_seen) + weeks - 1)
    return earliest, latest, f"{fact.text} bounds the run"


def _gaps(weeks: Sequence[int], searched: dict[int, int]) -> Iterator[Gap]:
    for before, after in pairwise(weeks):
        if after - before > 1:
            issues = sum(searched.get(w, 0) for w in range(before + 1, after))
            yield Gap(monday_of(before + 1), sunday_of(after - 1), after - before - 1, issues)


def _handovers(group: Sequence[RunSighting]) -> Iterator[tuple[date, str, str]]:
    dated = sorted((s.seen_from, s.maker) for s in group if s.exact and s.maker and s.seen_from)
    for (_, before), (day, after) in pairwise(dated):
        if before != after:
            yield day, before, after


def _weeks(group: Sequence[RunSighting]) -> list[int]:
    return sorted({week_of(s.seen_from) for s in group if s.exact and s.seen_from})


def _reliabilities(group: Sequence[RunSighting]) -> dict[int, float]:
    best: dict[int, float] = {}
    for s in group:
        if s.exact and s.seen_from:
            week = week_of(s.seen_from)
            # several independent adverts of a week make it surer that one is right
            best[week] = 1 - (1 - best.get(week, 0.0)) * (1 - min(s.reliability, 1.0))
    return best


def _relevant(searches: Sequence[Search], group: Sequence[RunSighting]) -> list[Search]:
    lines = {s.line_id for s in group} | {s.line for s in group}
    shops = {s.retailer_id for s in group} | {s.retailer for s in group}
    return [s for s in searches if s.concerns(lines, shops)]


def _by_advert(schedules: Iterable[ScheduleFact]) -> dict[str, list[ScheduleFact]]:
    found: dict[str, list[ScheduleFact]] = {}
    for fact in schedules:
        found.setdefault(fact.advert_id, []).append(fact)
    return found


def _order(s: RunSighting) -> tuple[str, str, str, date, str]:
    return (s.line_id or s.line, s.retailer_id or s.retailer or "", s.city or "", s.seen_from or date.max, s.advert_id)

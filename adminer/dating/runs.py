"""The run of a line at a chain, in a town and over all: how long it was seen, and how much longer it may have run."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from datetime import date
from itertools import pairwise

from adminer.dating.bayes_run import WeekRecord, compare_runs, fit_run
from adminer.dating.next_searches import Side, next_searches
from adminer.dating.printed_runs import (
    FINAL_WEEK,
    ONE_WEEK,
    PROGRAMME,
    SCHEDULE,
    SCHEDULE_CONFIDENCE,
    facts_by_advert,
    printed_bounds,
    programme_bounds,
    programmes_of_shops,
)
from adminer.dating.run_bounds import LATTICE, NONE, reliabilities, searched_weeks, statistical_bounds, weeks_seen
from adminer.dating.run_limits import NOTHING_KNOWN, KnownYears, within_years
from adminer.dating.run_records import Gap, Run, RunSighting, RunStudy
from adminer.dating.schedules import ScheduleFact
from adminer.dating.searches import Search
from adminer.dating.weeks import monday_of, sunday_of


def compute_runs(
    sightings: Iterable[RunSighting],
    searches: Sequence[Search] = (),
    schedules: Iterable[ScheduleFact] = (),
    known: KnownYears = NOTHING_KNOWN,
) -> list[Run]:
    """Return the runs of every line: by retailer, by retailer and town where it has several, and over all retailers.

    Rows come in a fixed order and depend on nothing but the input. A bound beyond the `known` years is none.
    """
    facts = facts_by_advert(schedules)
    return [
        within_years(_run(key, group, _relevant(searches, group), facts), known)
        for key, group in _groups(sorted(sightings, key=_order))
    ]


def study_run(
    sightings: Sequence[RunSighting],
    searches: Sequence[Search] = (),
    schedules: Iterable[ScheduleFact] = (),
    known: KnownYears = NOTHING_KNOWN,
) -> RunStudy:
    """Return all there is to say about the sightings of one run."""
    group = sorted(sightings, key=_order)
    relevant = _relevant(searches, group)
    one = group[0]
    same_retailer = len({s.retailer_id or s.retailer for s in group}) == 1
    key = (one.line_id or one.line, (one.retailer_id or one.retailer) if same_retailer else None, None)
    run = within_years(_run(key, group, relevant, facts_by_advert(schedules)), known)
    weeks = weeks_seen(group)
    searched, found = searched_weeks(relevant, group)
    if not weeks:
        return RunStudy(run, (), searched, None, None, (), ())
    record = WeekRecord(reliabilities(group), searched, found)
    posterior = fit_run(record)
    return RunStudy(
        run,
        tuple(weeks),
        searched,
        posterior,
        compare_runs(record, posterior) if len(weeks) > 2 else None,
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


def _counted(count: int, what: str) -> str:
    return f"{count} {what}" if count == 1 else f"{count} {what}s"


def _run(
    key: tuple[str, str | None, str | None],
    group: Sequence[RunSighting],
    searches: Sequence[Search],
    facts: dict[str, list[ScheduleFact]],
) -> Run:
    line, shop, town = key
    exact = [s for s in group if s.exact]
    weeks = weeks_seen(group)
    vague = [s for s in group if not s.exact and s.dated_by != "estimate" and s.seen_from and s.seen_to]
    notes = [_counted(len(weeks), "distinct week")] if weeks else []
    left_out = len(group) - len(exact) - len(vague)
    notes += [_within(vague)] if vague else []
    notes += [f"{_counted(left_out, 'undated or estimated advert')} left out"] if left_out else []
    # what is certain: it had begun by the earliest last day, and went on to the latest first day
    begun_by = min([s.seen_from for s in exact if s.seen_from] + [s.seen_to for s in vague if s.seen_to], default=None)
    still_on = max([s.seen_to for s in exact if s.seen_to] + [s.seen_from for s in vague if s.seen_from], default=None)
    start, end, method, confidence = None, None, NONE, None
    if weeks:
        start, end, method, confidence, said = statistical_bounds(
            weeks, vague, searches, group, "|".join(map(str, key))
        )
        notes += said
        if start and begun_by and start > begun_by:
            start = None
            notes.append("the start is not bounded: an early sighting does not fit one run with these searches")
        if end and still_on and end < still_on:
            end = None
            notes.append("the end is not bounded: a late sighting does not fit one run with these searches")
    # what one shop prints of its programme bounds no other shop
    printed = printed_bounds(exact, facts) if shop else None
    scheduled: date | None = None
    if printed is not None:
        statistic = notes[-1] if method == LATTICE else None
        begun, ended, method_printed, said_printed = printed
        # a schedule that later sightings outlast was not kept, or was that of an earlier programme
        kept_end = ended is not None and still_on is not None and ended + ONE_WEEK > still_on
        kept_start = begun is not None and begun_by is not None and begun <= begun_by
        start = begun if kept_start else start
        scheduled = begun if kept_start and method_printed == SCHEDULE else None
        end = ended if kept_end else end
        if kept_end or kept_start:
            both = (kept_end or end is None) and (kept_start or start is None)
            method, confidence = method_printed, SCHEDULE_CONFIDENCE if both else confidence
            if kept_start and kept_end and statistic is not None:
                notes.remove(statistic)
            notes.append(said_printed)
        if ended is not None and not kept_end:
            notes.append(f"{said_printed}, but it was seen after {ended}, so that schedule does not bound its end")
    if shop and (whole := programme_bounds(group, facts, begun_by, still_on)) is not None:
        # the whole programme has so many weeks: neither end lies further from the other end's last sighting
        earliest, latest, said_whole = whole
        start = max(start, earliest) if start else earliest
        end = min(end, latest) if end else latest
        method, confidence = (PROGRAMME, SCHEDULE_CONFIDENCE) if method == NONE else (method, confidence)
        notes.append(said_whole)
    notes += [] if shop else programmes_of_shops(exact, facts)
    start = min(start, begun_by) if start and begun_by else start
    end = max(end, still_on) if end and still_on else end
    first_day = min((s.seen_from for s in (*exact, *vague) if s.seen_from), default=None)
    last_day = max((s.seen_to for s in (*exact, *vague) if s.seen_to), default=None)
    one = group[0]
    return Run(
        "|".join(part or "*" for part in (line, shop, town)),
        one.line_id,
        one.line,
        one.retailer_id if shop else None,
        one.retailer if shop else None,
        town,
        len(group),
        max(first_day, start) if first_day and start else first_day,
        min(last_day, end) if last_day and end else last_day,
        start,
        end,
        method,
        confidence,
        "; ".join(notes),
        scheduled,
        begun_by,
        still_on,
    )


def _within(vague: Sequence[RunSighting]) -> str:
    first = min(s.seen_from for s in vague if s.seen_from)
    last = max(s.seen_to for s in vague if s.seen_to)
    return f"{_counted(len(vague), 'sighting')} only known to lie within {first} to {last}"


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


def _relevant(searches: Sequence[Search], group: Sequence[RunSighting]) -> list[Search]:
    lines = {s.line_id for s in group} | {s.line for s in group}
    shops = {s.retailer_id for s in group} | {s.retailer for s in group}
    # a search for one shop's adverts says nothing on the end of all
    over_all = len({s.retailer_id or s.retailer for s in group}) > 1
    return [s for s in searches if s.concerns(lines, shops) and not (over_all and s.retailer)]


def _order(s: RunSighting) -> tuple[str, str, str, date, str]:
    return (s.line_id or s.line, s.retailer_id or s.retailer or "", s.city or "", s.seen_from or date.max, s.advert_id)

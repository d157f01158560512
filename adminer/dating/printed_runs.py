"""What adverts print of a run: its schedule ("week 7 of 15"), its last week, a list of its weeks."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import date, timedelta
from typing import Final

from adminer.dating.run_records import RunSighting
from adminer.dating.schedules import ScheduleFact
from adminer.dating.weeks import monday_of, sunday_of, week_of

SCHEDULE, FINAL_WEEK, PROGRAMME = "printed schedule", "final week printed", "printed list of weeks"
SCHEDULE_CONFIDENCE: Final = 0.98  # printed schedules were broken now and then; judgement, no source
ONE_WEEK: Final = timedelta(days=7)


def facts_by_advert(schedules: Iterable[ScheduleFact]) -> dict[str, list[ScheduleFact]]:
    """Gather what is printed of schedules by the advert that prints it."""
    found: dict[str, list[ScheduleFact]] = {}
    for fact in schedules:
        found.setdefault(fact.advert_id, []).append(fact)
    return found


def printed_bounds(
    exact: Sequence[RunSighting], facts: dict[str, list[ScheduleFact]]
) -> tuple[date | None, date | None, str, str] | None:
    """Return start, end, method and words of what dated adverts print of their week; None where nothing is printed."""
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
                start = sighting.seen_from - (fact.week - 1) * ONE_WEEK
                stop = sighting.seen_from + (fact.of - fact.week) * ONE_WEEK + timedelta(days=6)
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


def programme_bounds(
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


def programmes_of_shops(exact: Sequence[RunSighting], facts: dict[str, list[ScheduleFact]]) -> list[str]:
    """Return a sentence for each shop whose adverts print a schedule: it bounds that shop's programme and no other."""
    shops: dict[str, list[RunSighting]] = {}
    for sighting in exact:
        if sighting.retailer:
            shops.setdefault(sighting.retailer, []).append(sighting)
    told = []
    for shop, group in shops.items():
        if (printed := printed_bounds(group, facts)) is None:
            continue
        begun, ended, _, said = printed
        days = " ".join(part for part in (f"from {begun}" if begun else "", f"until {ended}" if ended else "") if part)
        told.append(f"the programme of {shop} {days or 'without an end'} ({said}) bounds no other shop")
    return told

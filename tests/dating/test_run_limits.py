"""What a run may not say: one shop's schedule over all shops, a first day after the last, bounds beyond known years."""

from __future__ import annotations

from datetime import date, timedelta

from hypothesis import given
from hypothesis import strategies as some

from adminer.dating.evidence.base import YearSpan
from adminer.dating.printed_runs import FINAL_WEEK, PROGRAMME, SCHEDULE
from adminer.dating.run_bounds import SEARCHED
from adminer.dating.run_limits import KnownYears
from adminer.dating.run_records import RunSighting
from adminer.dating.runs import compute_runs, study_run
from adminer.dating.schedules import ScheduleFact, read_schedule
from adminer.dating.searches import parse_searches

FIRST = date(1953, 1, 15)
WEEK = timedelta(days=7)
OWN = ("penhallow", "Penhallow Stores", "Ferncliff")
ELSEWHERE = ("quillfeather", "Quillfeather's", "Osterby")


def seen(first: date, days: int = 2, shop: tuple[str, str, str] = OWN) -> RunSighting:
    shop_id, name, town = shop
    last = first + timedelta(days=days)
    return RunSighting("tansy-morn", "Tansy Morn", shop_id, name, town, f"{shop_id}-{first}", first, last, "printed")


def test_a_schedule_bounds_the_programme_of_its_shop_and_no_other() -> None:
    sightings = [seen(FIRST), seen(FIRST + 6 * WEEK), seen(date(1958, 8, 11), shop=ELSEWHERE)]
    facts = read_schedule("WEEK 7 of 15", sightings[1].advert_id)
    runs = {run.retailer_id: run for run in compute_runs(sightings, schedules=facts)}
    own, every = runs["penhallow"], runs[None]
    assert (own.method, own.start_earliest, own.end_latest) == (SCHEDULE, FIRST, FIRST + 14 * WEEK + timedelta(days=6))
    assert every.method not in (SCHEDULE, FINAL_WEEK, PROGRAMME)
    assert (every.first_seen, every.last_seen) == (FIRST, date(1958, 8, 13))
    assert every.start_earliest is None or every.start_earliest < FIRST
    assert every.end_latest is None or every.end_latest > date(1958, 8, 13)
    assert "the programme of Penhallow Stores from 1953-01-15 until 1953-04-29" in every.note
    assert "bounds no other shop" in every.note
    assert study_run(sightings, schedules=facts).run == every


def test_a_list_of_weeks_and_a_final_week_bound_no_other_shop_either() -> None:
    sightings = [seen(FIRST), seen(FIRST + WEEK), seen(FIRST + WEEK, shop=ELSEWHERE)]
    for facts in (
        [ScheduleFact(sightings[0].advert_id, "weeks", "a printed list of 6 weeks", None, 6)],
        read_schedule("Final week!", sightings[1].advert_id),
    ):
        every, *_ = compute_runs(sightings, schedules=facts)
        assert every.retailer_id is None
        assert every.method not in (SCHEDULE, FINAL_WEEK, PROGRAMME)


def test_a_schedule_outlasted_by_years_bounds_the_start_alone_and_no_surer_than_the_other_bound() -> None:
    sightings = [seen(FIRST), seen(FIRST + 6 * WEEK), seen(FIRST + 8 * WEEK), seen(date(1955, 8, 11))]
    (run,) = compute_runs(sightings, schedules=read_schedule("WEEK 7 of 15", sightings[1].advert_id))
    assert (run.method, run.start_earliest, run.confidence) == (SCHEDULE, FIRST, 0.95)
    assert run.end_latest is not None
    assert run.end_latest > date(1955, 8, 13)
    assert "it was seen after 1953-04-29" in run.note


def test_an_advert_good_for_ten_days_is_first_seen_on_the_first_of_them() -> None:
    (run,) = compute_runs([seen(date(1954, 9, 30), 9)])
    assert (run.first_seen, run.last_seen) == (date(1954, 9, 30), date(1954, 10, 9))


_DAYS = some.dates(date(1930, 1, 1), date(1965, 1, 1))
_SPANS = some.tuples(_DAYS, some.sampled_from((0, 2, 6, 9, 30, 365, 3650)))


@given(some.lists(_SPANS, min_size=1, max_size=5), some.sampled_from(("", "WEEK 2 of 8", "Final week", "First week")))
def test_no_run_ends_before_it_begins(spans: list[tuple[date, int]], printed: str) -> None:
    sightings = [seen(first, days) for first, days in spans]
    (run,) = compute_runs(sightings, schedules=read_schedule(printed, sightings[0].advert_id))
    assert run.first_seen is not None
    assert run.last_seen is not None
    assert run.first_seen <= run.last_seen
    assert run.start_earliest is None or run.start_earliest <= run.first_seen
    assert run.end_latest is None or run.last_seen <= run.end_latest


def test_a_bound_beyond_the_known_years_is_none_and_the_note_says_why() -> None:
    sightings = [seen(date(1938, 9, 19)), seen(date(1941, 2, 3)), seen(date(1958, 8, 11))]
    (free,) = compute_runs(sightings)
    assert free.start_earliest is None  # the bound of three weeks in twenty years lies before any date is sought
    assert free.end_latest is None
    assert free.confidence is None
    assert "no date is sought before 1890" in free.note
    close = [seen(FIRST + n * WEEK) for n in (0, 5, 9, 20, 30)]
    assert compute_runs(close)[0].start_earliest is not None
    line = KnownYears({"tansy-morn": YearSpan(1953, 1953, "Tansy Morn")})
    shop = KnownYears({}, {"penhallow": YearSpan(1953, None, "Penhallow Stores")})
    assert compute_runs(close, known=line)[0].start_edtf is None
    assert "Tansy Morn began in 1953" in compute_runs(close, known=line)[0].note
    (at_shop,) = compute_runs(close, known=shop)
    assert at_shop.start_earliest is None
    assert at_shop.end_latest is not None
    assert study_run(close, known=line).run.start_earliest is None


def test_years_that_the_sightings_contradict_bound_nothing() -> None:
    close = [seen(FIRST + n * WEEK) for n in (0, 5, 9)]
    wrong = KnownYears({"tansy-morn": YearSpan(1956, 1950, "Tansy Morn")})
    assert compute_runs(close, known=wrong) == compute_runs(close)
    wide = [seen(date(1938, 9, 19)), seen(date(1941, 2, 3)), seen(date(1958, 8, 11))]
    (run,) = compute_runs(wide, known=KnownYears({"tansy-morn": YearSpan(1937, 1941, "Tansy Morn")}))
    assert run.end_latest is None  # the sighting of 1958 outlasts the line's years, and no date is sought that late
    assert "no date is sought after 1980" in run.note


def test_searches_for_one_shop_say_nothing_over_all_shops() -> None:
    sightings = [seen(FIRST), seen(FIRST + WEEK), seen(date(1958, 8, 11), shop=ELSEWHERE)]
    days = [(FIRST + n * WEEK).isoformat() for n in range(-6, 20)]
    for shop, searched in (("penhallow", False), ("", True)):
        table = "paper,issues,line,retailer,found\n" + "".join(
            f"The Ledger,{day},tansy-morn,{shop},no\n" for day in days
        )
        every, *_ = compute_runs(sightings, parse_searches(table).searches)
        assert (every.method == SEARCHED) is searched
        # a run of weeks that stops before the last sighting is no bound on it
        assert every.end_latest is None or every.end_latest > date(1958, 8, 13)
    assert "does not fit one run" in every.note

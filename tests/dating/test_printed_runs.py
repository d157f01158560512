"""Runs bounded by what adverts print: schedules, last weeks, lists of weeks; and the wordings that tell of them."""

from __future__ import annotations

import re
from datetime import timedelta

import pytest

from adminer.dating.printed_runs import FINAL_WEEK, PROGRAMME, SCHEDULE
from adminer.dating.runs import compute_runs
from adminer.dating.schedules import MAY_TELL, ScheduleFact, facts_of_table, read_schedule
from adminer.dating.weeks import monday_of, sunday_of, week_of
from tests.dating.test_runs import THURSDAY, WEEK, seen


def test_a_printed_schedule_comes_before_any_statistic() -> None:
    facts = read_schedule("WEEK 7 of 15: dinner plate", "a6-0")
    (run,) = compute_runs([seen(w) for w in (0, 2, 6)], schedules=facts)
    assert run.method == SCHEDULE
    assert run.start_earliest == THURSDAY
    assert run.end_latest == THURSDAY + 14 * WEEK + timedelta(days=6)


def test_a_final_week_ends_the_run() -> None:
    (run,) = compute_runs([seen(w) for w in (0, 2, 6)], schedules=read_schedule("Final week!", "a6-0"))
    assert (run.method, run.end_latest) == (FINAL_WEEK, THURSDAY + 6 * WEEK + timedelta(days=2))
    assert run.start_earliest is not None
    assert run.start_earliest < THURSDAY


def test_a_schedule_that_was_not_kept_is_not_used() -> None:
    (run,) = compute_runs([seen(w) for w in (0, 2, 9)], schedules=read_schedule("week 3 of 4", "a2-0"))
    assert run.method == SCHEDULE  # its start is used
    assert run.end_latest is not None
    assert run.end_latest > THURSDAY + 9 * WEEK
    assert "week 3 of 4" in run.note


def test_an_extended_promotion_loses_its_planned_end() -> None:
    facts = [*read_schedule("week 3 of 4", "a2-0"), *read_schedule("Extended by popular demand!", "a3-0")]
    (run,) = compute_runs([seen(w) for w in (0, 2, 3)], schedules=facts)
    assert run.end_latest is not None
    assert run.end_latest > THURSDAY + 4 * WEEK
    assert "extended" in run.note


@pytest.mark.parametrize(
    ("text", "what", "week", "of"),
    [
        ("Week 7 of 15", "week_of", 7, 15),
        ("WEEK NO. 3 OF 12 WEEKS", "week_of", 3, 12),
        ("4th week of our 14 week plan", "week_of", 4, 14),
        ("Third week of fifteen", "week_of", 3, 15),
        ("LAST CHANCE to complete your set", "final", None, None),
        ("Held over by popular demand", "extended", None, None),
        ("First week: dinner plate 29c", "first", None, None),
    ],
)
def test_schedules_are_read(text: str, what: str, week: int | None, of: int | None) -> None:
    (fact,) = read_schedule(text)
    assert (fact.what, fact.week, fact.of) == (what, week, of)


@pytest.mark.parametrize("text", ["week of Nov. 9", "2 weeks of 1951", "week 16 of 15", "this week only"])
def test_no_schedule_is_read_where_none_is(text: str) -> None:
    assert all(fact.what != "week_of" for fact in read_schedule(text))


def test_a_schedule_fact_without_numbers_changes_no_start() -> None:
    (run,) = compute_runs([seen(0), seen(3)], schedules=[ScheduleFact("a0-0", "first", "first week")])
    assert run.start_earliest == THURSDAY


def test_a_printed_list_of_weeks_bounds_both_ends() -> None:
    rows = [(1, "cup"), (2, "saucer"), (3, "dinner_plate"), (4, "cup"), (5, "saucer"), (6, "dinner_plate")]
    facts = facts_of_table("a2-0", rows, {"cup"})
    assert [fact.what for fact in facts] == ["weeks"]  # a cup is the feature of two weeks
    (run,) = compute_runs([seen(2), seen(4)], schedules=facts)
    assert run.end_latest == sunday_of(week_of(THURSDAY) + 2 + 5)
    assert run.start_earliest == monday_of(week_of(THURSDAY) + 4 - 5)
    assert "printed list of 6 weeks" in run.note
    (once,) = compute_runs([seen(2)], schedules=facts)
    assert (once.method, once.start_earliest) == (PROGRAMME, monday_of(week_of(THURSDAY) + 2 - 5))


def test_a_list_of_weeks_that_was_not_kept_bounds_nothing() -> None:
    facts = facts_of_table("a2-0", [(1, "cup"), (2, "saucer"), (3, "dinner_plate")], ())
    plain = compute_runs([seen(0), seen(5)])
    assert compute_runs([seen(0), seen(5)], schedules=facts) == plain


def test_the_featured_piece_tells_the_week_of_the_list() -> None:
    rows = [(1, "cup"), (2, "saucer"), (3, "dinner_plate")]
    facts = facts_of_table("a2-0", rows, {"saucer", "platter"})
    assert [(f.week, f.of) for f in facts if f.what == "week_of"] == [(2, 3)]
    (run,) = compute_runs([seen(2)], schedules=facts)
    assert (run.method, run.start_earliest) == (SCHEDULE, THURSDAY + WEEK)
    assert facts_of_table("a2-0", rows[:2], {"saucer"}) == []  # two weeks are no programme


@pytest.mark.parametrize(
    "text",
    [
        "WEEK 7 of 15",
        "Fourth Week of Fifteen",
        "Final days",
        "LAST CHANCE",
        "ends this Saturday",
        "opening week",
        "Extended",
        "held over",
        "by popular demand",
    ],
)
def test_one_word_tells_that_a_text_may_speak_of_a_schedule(text: str) -> None:
    assert read_schedule(text)
    assert any(re.search(MAY_TELL, word, re.IGNORECASE) for word in text.split())

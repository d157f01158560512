"""Schedules of weeks: which piece is sold in which, in a ruled table or a list. All invented."""

from __future__ import annotations

import pytest

from adminer.parsing.tables.schedule import find_schedule
from tests.parsing.pages import advert_text, parse

PIECES = {p.lower(): i for i, p in (("dinner_plate", "Dinner plate"), ("saucer", "Saucer"), ("cup", "Cup"))}


def test_a_ruled_table_of_weeks_is_one_condition_and_fills_the_schedule() -> None:
    advert = parse(
        (40, 40, 30, "7TH WEEK OF 15"),
        (40, 100, 14, "Ist, 4th, 7th week"),
        (300, 100, 14, "Dinner plate"),
        (40, 125, 14, "2nd, 5th, 8th week"),
        (300, 125, 14, "Saucer"),
        (40, 150, 14, "3rd. 6th, 9th week"),
        (300, 150, 14, "Cup"),
    )
    assert advert.schedule == tuple((week, ("dinner_plate", "saucer", "cup")[(week - 1) % 3]) for week in range(1, 10))
    schedules = [c for c in advert.conditions if c.kind == "schedule"]
    assert [c.value for c in schedules if "Saucer" in c.text] == ["9"]
    assert len(schedules) == 2  # the head and the table


@pytest.mark.parametrize(
    "lines",
    [
        ("Week 1: Dinner plate", "Week 2: Saucer", "Week 3: Cup"),
        ("First week Dinner plate", "Second week Saucer", "Third week Cup"),
        ("Jan. 22 Dinner plate", "Jan. 29 Saucer", "Feb. 5 Cup"),
    ],
)
def test_a_list_of_weeks_is_a_schedule(lines: tuple[str, ...]) -> None:
    found = find_schedule(advert_text(*((40, 40 + 30 * i, 14, line) for i, line in enumerate(lines))), PIECES)
    assert found is not None
    assert found.weeks == ((1, "dinner_plate"), (2, "saucer"), (3, "cup"))


@pytest.mark.parametrize(
    "lines",
    [
        ("7th week of 15", "Saucer 9c"),
        ("This week: Saucer", "Next week: Cup"),
        ("Jan. 22 Dinner plate", "Jan. 25 Saucer", "Feb. 5 Cup"),
    ],
)
def test_what_is_no_list_of_weeks_is_no_schedule(lines: tuple[str, ...]) -> None:
    assert find_schedule(advert_text(*((40, 40 + 30 * i, 14, line) for i, line in enumerate(lines))), PIECES) is None

"""Dates printed in full, read by the dateparser package; the days are those of the Gregorian calendar."""

from __future__ import annotations

from datetime import date

import pytest
import time_machine
from hypothesis import given
from hypothesis import strategies as st

from adminer.dating.calendar import YEARS, parse_printed_dates
from adminer.dating.calendar_words import MONTHS, words_of_dates
from adminer.dating.full_dates import full_date, year_meant


def read(text: str, years: range = YEARS) -> date | None:
    (group,) = words_of_dates(text)
    return full_date(group, years)


@pytest.mark.parametrize(
    "text",
    [
        "March 12, 1953",
        "Mar. 12 1953",
        "MAR.12, 1953",
        "Thurs., Mar. 12, 1953",
        "12th March 1953",
        "Mar. l2, 1953",
        "Marçh 12, '53",
        "3/12/53",
        "3-12-1953",
        "3/12 1953",
    ],
)
def test_a_day_in_full_is_read_however_it_is_printed(text: str) -> None:
    assert read(text) == date(1953, 3, 12)


@pytest.mark.parametrize("name", sorted(MONTHS))
def test_the_package_knows_every_name_of_a_month_that_we_find(name: str) -> None:
    assert read(f"{name.title()}. 5, 1950") == date(1950, MONTHS[name], 5)


@pytest.mark.parametrize(
    "text", ["March 12", "March 12-13-14, 1953", "March 1953", "Mar. 30 to Apr. 4, 1953", "3/12/53 - 3/14/53", "3/14"]
)
def test_what_is_not_one_day_in_full_is_left_to_the_calendar(text: str) -> None:
    assert read(text) is None


@pytest.mark.parametrize("text", ["June 31, 1950", "Feb. 29, 1951", "4/31/52", "2/29/51", "0/12/52", "13/13/52"])
def test_a_day_that_does_not_exist_is_no_day(text: str) -> None:
    assert read(text) is None
    assert all(found.edtf is None for found in parse_printed_dates(text))


def test_two_figures_of_a_year_are_settled_by_the_years_thought_possible() -> None:
    assert read("6/1/53", range(1930, 1970)) == date(1953, 6, 1)
    assert read("6/1/53", range(1840, 1880)) == date(1853, 6, 1)
    assert read("6/1/85", range(1930, 1970)) is None
    assert [year_meant(printed, range(1890, 1981)) for printed in (95, 5, 1948)] == [1895, 1905, 1948]


def test_an_order_of_month_and_day_that_cannot_be_gives_way() -> None:
    assert read("25/12/51") == read("12/25/51") == date(1951, 12, 25)


@pytest.mark.parametrize("today", ["1950-01-31", "2024-02-29", "2060-12-31"])
def test_a_reading_does_not_hang_on_the_day_it_is_made(today: str) -> None:
    with time_machine.travel(today):
        assert read("Nov. 9, '50") == date(1950, 11, 9)
        assert read("2/28/37") == date(1937, 2, 28)


@given(st.dates(date(1890, 1, 1), date(1980, 12, 31)))
def test_every_day_comes_back_from_every_way_to_print_it(day: date) -> None:
    name = day.strftime("%B")
    for text in (f"{name} {day.day}, {day.year}", f"{day.day} {name[:3].upper()}. {day.year}", f"{day:%m/%d/%Y}"):
        assert read(text) == day
        (found,) = parse_printed_dates(text)
        assert (found.earliest, found.latest) == (day, day)

"""Holidays and their moved dates against the `holidays` package, `dateutil`, and published proclamations."""

from __future__ import annotations

from datetime import date

import holidays
import pytest
from dateutil.easter import easter as easter_of_library

from adminer.dating.holidays_us import (
    columbus_day,
    easter,
    labor_day,
    memorial_day,
    thanksgivings,
    veterans_day,
    washingtons_birthday,
)

YEARS = range(1935, 1981)


def federal(year: int, *names: str) -> set[date]:
    return {day for day, name in holidays.country_holidays("US", years=year).items() if any(n in name for n in names)}


@pytest.mark.parametrize("year", YEARS)
def test_the_nations_thanksgiving_is_that_of_the_library(year: int) -> None:
    assert thanksgivings(year)[0] in federal(year, "Thanksgiving")


@pytest.mark.parametrize(
    ("year", "day"),
    # proclamations of 1939 to 1941, and the Thursdays that states kept instead
    [(1939, 23), (1940, 21), (1941, 20), (1939, 30), (1940, 28), (1941, 27), (1938, 24), (1942, 26)],
)
def test_the_proclaimed_and_the_other_thanksgivings(year: int, day: int) -> None:
    assert date(year, 11, day) in thanksgivings(year)


@pytest.mark.parametrize("year", YEARS)
def test_other_holidays_are_those_of_the_library(year: int) -> None:
    assert labor_day(year) in federal(year, "Labor Day")
    assert washingtons_birthday(year) in federal(year, "Washington")
    # the library knows Memorial Day from 1888, Armistice/Veterans Day from 1938, Columbus Day from 1971
    assert memorial_day(year) in federal(year, "Memorial", "Decoration")
    if year >= 1938:
        assert veterans_day(year) in federal(year, "Veterans", "Armistice")
    if year >= 1971:
        assert columbus_day(year) in federal(year, "Columbus")


@pytest.mark.parametrize("year", range(1890, 1981))
def test_easter_is_that_of_dateutil(year: int) -> None:
    assert easter(year) == easter_of_library(year)


def test_armistice_day_is_renamed_in_1954() -> None:
    # the first Veterans Day was 11 November 1954
    assert federal(1953, "Armistice") == {date(1953, 11, 11)}
    assert federal(1954, "Veterans") == {date(1954, 11, 11)}

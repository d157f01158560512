"""Weekdays of dated facts, and the years a weekday allows, against published tables and the `holidays` package."""

from __future__ import annotations

from datetime import date

import pytest

from adminer.dating.calendar import candidate_years, parse_printed_dates

MON, TUE, WED, THU, FRI, SAT, SUN = range(7)


@pytest.mark.parametrize(
    ("weekday", "common", "leap"),
    # Years by the weekday of 1 January, as perpetual calendars print them. The common years of Monday 1 January, say,
    # are those of dominical letter G (Book of Common Prayer tables); the list was computed independently of this code.
    [
        (MON, "1934 45 51 62 73 79", "1940 68"),
        (TUE, "1935 46 57 63 74", "1952"),
        (WED, "1930 41 47 58 69 75", "1936 64"),
        (THU, "1931 42 53 59 70", "1948 76"),
        (FRI, "1937 43 54 65 71", "1932 60"),
        (SAT, "1938 49 55 66 77", "1944 72"),
        (SUN, "1933 39 50 61 67 78", "1956"),
    ],
)
def test_year_classes_of_the_perpetual_calendar(weekday: int, common: str, leap: str) -> None:
    expected = sorted(1900 + int(y) % 100 for y in (common + " " + leap).split())
    assert list(candidate_years(weekday, 1, 1, range(1930, 1980))) == expected


@pytest.mark.parametrize(
    ("weekday", "month", "day", "years"),
    # computed once with another calendar routine for the project's notes, window 1935-1975
    [
        (THU, 1, 7, "37 43 54 60 65 71"),
        (WED, 4, 29, "36 42 53 59 64 70"),
        (THU, 10, 2, "41 47 52 58 69 75"),
        (THU, 11, 9, "39 44 50 61 67 72"),
        (FRI, 7, 4, "41 47 52 58 69 75"),
        (THU, 2, 29, "40 68"),
        (SAT, 2, 29, "36 64"),
    ],
)
def test_candidate_years_of_a_weekday_and_day(weekday: int, month: int, day: int, years: str) -> None:
    assert candidate_years(weekday, month, day, range(1935, 1976)) == tuple(1900 + int(y) for y in years.split())


@pytest.mark.parametrize(
    ("text", "day"),
    [
        # coffee rationing began "Sunday, November 29" 1942 (report of 23 Nov 1942, therationcard.blogspot.com)
        ("Sunday, November 29, 1942", date(1942, 11, 29)),
        # butter went to 24 points on "Tuesday" 26 Dec 1944 (report of 25 Dec 1944, same)
        ("Tuesday, December 26, 1944", date(1944, 12, 26)),
        # a grocery advert with a receipt plan, Thursday 7 Jan 1954, see danielebrady.blogspot.com 2024/01
        ("Thursday, January 7, 1954", date(1954, 1, 7)),
        # a grocery advert with a punched card, 29 Apr 1964, a Wednesday (danielebrady.blogspot.com 2024/04)
        ("Wednesday, April 29, 1964", date(1964, 4, 29)),
        # a flatware advert in a daily of Thursday 1 Apr 1954 (newspapers.library.in.gov DCDD19540401)
        ("Thursday, April 1, 1954", date(1954, 4, 1)),
    ],
)
def test_published_dated_facts_pass_the_weekday_checksum(text: str, day: date) -> None:
    (found,) = parse_printed_dates(text)
    assert (found.earliest, found.problem) == (day, None)

"""Seasons of catalogue covers; their numbers are those of ISO 8601-2:2019 (21 spring, 22 summer, 23 autumn)."""

from __future__ import annotations

from datetime import date

import pytest

from adminer.dating.calendar import parse_printed_dates


@pytest.mark.parametrize(
    ("text", "edtf", "earliest", "latest"),
    [
        ("Catalogue Fall 1961", "1961-23", date(1961, 9, 1), date(1961, 11, 30)),
        ("SPRING AND SUMMER, 1948", "1948-21/1948-22", date(1948, 3, 1), date(1948, 8, 31)),
        ("Spring-Summer 1948", "1948-21/1948-22", date(1948, 3, 1), date(1948, 8, 31)),
    ],
)
def test_a_season_with_its_year_is_a_date(text: str, edtf: str, earliest: date, latest: date) -> None:
    (found,) = parse_printed_dates(text)
    assert (found.edtf, found.earliest, found.latest, found.kind) == (edtf, earliest, latest, "printed")


@pytest.mark.parametrize("text", ["Fall dishes 19.61", "Winter 1961", "Fall 1961-62", "Fall and Spring 1961"])
def test_what_is_no_single_season_of_a_year_is_left_alone(text: str) -> None:
    assert [one for one in parse_printed_dates(text) if one.edtf and "-2" in one.edtf] == []

"""Seasons and issues of covers; numbers are those of ISO 8601-2:2019 (21 spring, 22 summer, 23 autumn, 24 winter).

Which months a selling season has is common practice of the trade, no source; Easter days are those of `dateutil`.
"""

from __future__ import annotations

from datetime import date

import pytest
from dateutil.easter import easter

from adminer.dating.calendar import parse_printed_dates
from adminer.dating.edtf import bounds_of


@pytest.mark.parametrize(
    ("text", "edtf", "earliest", "latest"),
    [
        ("Catalogue Fall 1961", "1961-23", date(1961, 9, 1), date(1961, 11, 30)),
        ("SPRING AND SUMMER, 1948", "1948-21/1948-22", date(1948, 3, 1), date(1948, 8, 31)),
        ("Spring-Summer 1948", "1948-21/1948-22", date(1948, 3, 1), date(1948, 8, 31)),
        ("Fall and Winter 1949", "1949-23/1949-24", date(1949, 9, 1), date(1950, 2, 28)),
        ("FALL & WINTER 1949-50", "1949-23/1949-24", date(1949, 9, 1), date(1950, 2, 28)),
        ("Falland Winter l949", "1949-23/1949-24", date(1949, 9, 1), date(1950, 2, 28)),
        ("Winter Sale 1952", "1952-24", date(1951, 12, 1), date(1953, 2, 28)),  # either end of its year
        ("Winter 1951-52", "1951-12/1952-02", date(1951, 12, 1), date(1952, 2, 29)),
        ("Midwinter 1935", "1935-01/1935-02", date(1935, 1, 1), date(1935, 2, 28)),
        ("Holiday 1950", "1950-11/1950-12", date(1950, 11, 1), date(1950, 12, 31)),
        ("Christmas Gift Book 1948", "1948-11/1948-12", date(1948, 11, 1), date(1948, 12, 31)),
        ("Sprlng, 1951", "1951-21", date(1951, 3, 1), date(1951, 5, 31)),
        ("January and February 1915", "1915-01/1915-02", date(1915, 1, 1), date(1915, 2, 28)),
    ],
)
def test_a_season_with_its_year_is_a_date(text: str, edtf: str, earliest: date, latest: date) -> None:
    (found,) = parse_printed_dates(text)
    assert (found.edtf, found.earliest, found.latest, found.kind) == (edtf, earliest, latest, "printed")
    back = bounds_of(edtf)
    assert (back.earliest, back.latest) == (earliest, latest)


def test_easter_goods_sell_in_the_month_of_easter_and_the_one_before() -> None:
    (found,) = parse_printed_dates("Easter 1950")
    assert found.edtf is not None
    first, last = found.edtf.split("/")
    assert last == f"{easter(1950):%Y-%m}" and first < last


@pytest.mark.parametrize(
    "text",
    [
        "Fall dishes 19.61",
        "in the fall of 1961",
        "Fall 1961-62",
        "Fall and Spring 1961",
        "Christmas 1948-49",
        "Winter 1951-53",
    ],
)
def test_what_is_no_single_season_of_a_year_is_left_alone(text: str) -> None:
    assert [one for one in parse_printed_dates(text) if one.edtf] == []

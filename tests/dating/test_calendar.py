"""Printed dates as period adverts give them, read with and without the date of the paper."""

from __future__ import annotations

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from adminer.dating.calendar import candidate_years, parse_printed_dates

WEDNESDAY = date(1953, 3, 11)
PAPER = (WEDNESDAY, WEDNESDAY)


@pytest.mark.parametrize(
    ("text", "kind", "edtf"),
    [
        ("Thurs., Fri., Sat., Mar. 12-13-14", "validity", "1953-03-12/1953-03-14"),
        ("Thurs.,Fri.,Sat.,Mar.l2-13-14", "validity", "1953-03-12/1953-03-14"),
        ("THURS. - FRI. - SAT., MARCH 12, 13 & 14", "validity", "1953-03-12/1953-03-14"),
        ("Thursday, March 12 thru Wednesday, March 18", "validity", "1953-03-12/1953-03-18"),
        ("Prices effective Thurs. thru Wed., Mar. 12-18", "validity", "1953-03-12/1953-03-18"),
        ("Thursday, March 12, thru Saturday", "validity", "1953-03-12/1953-03-14"),
        ("Fri. & Sat. March 13-14", "validity", "1953-03-13/1953-03-14"),
        ("Mar. 30 thru Apr. 4", "validity", "1953-03-30/1953-04-04"),
        ("week of Mar. 9", "validity", "1953-03-09/1953-03-15"),
        ("week ending Mar. 14", "validity", "1953-03-08/1953-03-14"),
        ("now thru Sat.", "validity", "1953-03-11/1953-03-14"),
        ("NOW THRU MARCH 14", "validity", "1953-03-11/1953-03-14"),
        ("this coming Monday", "validity", "1953-03-16"),
        ("this coming Wednesday", "validity", "1953-03-18"),
        ("Friday only!", "validity", "1953-03-13"),
        ("Tomorrow only", "validity", "1953-03-12"),
        ("PRICES EFFECTIVE THURSDAY, FRIDAY AND SATURDAY", "validity", "1953-03-12/1953-03-14"),
        ("Offer expires Sat., Mar. 14", "expiry", "1953-03-14"),
        ("Coupon void after 3/31/53", "expiry", "1953-03-31"),
        ("coupon good until April 15", "expiry", "1953-04-15"),
        ("Marçh 12 thru Marçh 14", "validity", "1953-03-12/1953-03-14"),
        ("Thurs., Fri., Sat., Mar. 12-13-14 5 lbs.", "validity", "1953-03-12/1953-03-14"),
        ("Thurs., Fri., Sat., Mar. 12 13 14", "validity", "1953-03-12/1953-03-14"),
        ("Fi1 . Fri. Sat. March 12.13-14", "validity", "1953-03-12/1953-03-14"),
        ("Thurs. Fri. March 12-13-14", "validity", "1953-03-12/1953-03-14"),
        ("Thurs. thru Sat., March 12 thru March 14¢", "validity", "1953-03-12/1953-03-14"),
        ("Sat., March 14.28", "validity", "1953-03-14"),
        ("Sat. thru Tues., March 14, 15, 16, 17", "validity", "1953-03-14/1953-03-17"),
        ("MAR.12-13-14", "validity", "1953-03-12/1953-03-14"),
        ("10/10/49", "printed", "1949-10-10"),
        ("Nov. 9, '50", "printed", "1950-11-09"),
        ("12th March 1924", "printed", "1924-03-12"),
        ("January, 1954", "printed", "1954-01"),
        ("Dec. 29 to Jan. 3, 1953", "validity", "1952-12-29/1953-01-03"),
        ("FERNCLIFF, THURSDAY, MARCH 3, 1921", "dateline", "1921-03-03"),
    ],
)
def test_period_forms_are_read_from_the_date_of_the_paper(text: str, kind: str, edtf: str) -> None:
    (found,) = parse_printed_dates(text, reference=PAPER)
    assert (found.kind, found.edtf) == (kind, edtf)
    assert found.problem is None


@pytest.mark.parametrize(
    "text",
    [
        "Open Friday nights till 9",
        "Store hours: Mon. thru Fri. 9 to 6",
        "you may 3 for 25c",
        "May 3 for 25c",
        "size 10-12, 2-3 lb",
        "tel. 3-12-53",
        "1 1/2 lb. 39c, 10-12 in. plate",
        "Sunday 12 to 5",
        "white sun shade $1.29",
        "March on to savings",
        "45-piece set 9.95",
        "Deliveries Mon., Thurs. Phone",
        "10 payments of £2-11-12",
    ],
)
def test_what_is_no_date_is_left_alone(text: str) -> None:
    assert parse_printed_dates(text, reference=PAPER) == ()


def test_a_speck_within_a_year_is_none_of_it() -> None:
    (found,) = parse_printed_dates("OSTERBY LEDGER, THURSDAY, MARCH 15, 19.34")
    assert found.edtf == "1934-03-15"
    (day,) = parse_printed_dates("on sale March 15, 19.34", reference=PAPER)
    assert day.edtf == "1953-03-15"  # a price behind it


def test_the_weekday_recovers_the_years_when_nothing_else_is_known() -> None:
    (found,) = parse_printed_dates("Thurs., March 12", years=range(1935, 1976))
    assert found.edtf == "XXXX-03-12"
    assert found.earliest is None
    assert found.years == (1936, 1942, 1953, 1959, 1964, 1970)


@pytest.mark.parametrize(
    ("text", "edtf"),
    [
        ("Sale closes Fri., Feb. 20", "XXXX-02-20"),
        ("June 2 to 11", "XXXX-06-02/XXXX-06-11"),
        ("Dec. 29 to Jan. 4", "XXXX-12-29/XXXX-01-04"),
        ("Week|of Nov. 9", "XXXX-11-09/XXXX-11-15"),
        ("until Friday the 17th", "XXXX-XX-17"),
        ("Nov. 9 thru Saturday", None),  # as many days as the year makes it
    ],
)
def test_days_without_a_year_are_told_without_it(text: str, edtf: str | None) -> None:
    (found,) = parse_printed_dates(text)
    assert (found.edtf, found.earliest, found.latest) == (edtf, None, None)


@pytest.mark.parametrize(
    ("text", "edtf"),
    [
        ("Saturday, 21st inst.", "1953-03-21"),
        ("Friday and Saturday, 20th and 21st", "1953-03-20/1953-03-21"),
        ("Friday the 21st", "XXXX-XX-21"),  # a Saturday
        ("SALE OPENS TOMORROW FRIDAY, 8:30 A.M.", "1953-03-13"),
        ("Thursday, March 9", "1953-03-19"),  # a figure lost: only the 19th is a Thursday
        ("Thurs., Fri. & Sat., March 12, I3 & 14 - 3 stores", "1953-03-12/1953-03-14"),
        ("Prices for Saturday and Monday", "1953-03-14/1953-03-16"),
        ("order by April 4", "1953-04-04"),
    ],
)
def test_days_are_found_by_the_day_of_the_paper(text: str, edtf: str) -> None:
    (found,) = parse_printed_dates(text, reference=PAPER)
    assert found.edtf == edtf


def test_a_leap_day_with_its_weekday_leaves_one_year_in_a_generation() -> None:
    (found,) = parse_printed_dates("Thursday, Feb. 29", years=range(1935, 1963))
    assert found.edtf == "1940-02-29"


def test_days_that_no_year_has_on_those_weekdays_are_reported_as_misread() -> None:
    (found,) = parse_printed_dates("Thurs., Fri., Sat., Mar. 2-3-5", reference=PAPER)
    assert found.edtf is None
    assert found.problem is not None
    assert "misread" in found.problem


def test_a_weekday_against_the_papers_date_is_a_stated_disagreement() -> None:
    (found,) = parse_printed_dates("Friday, March 12", reference=PAPER)
    assert found.edtf is None
    assert found.problem is not None
    assert "contradicts" in found.problem


def test_a_printed_year_that_its_weekday_denies_keeps_the_year_and_says_so() -> None:
    (found,) = parse_printed_dates("Thursday, March 12, 1954")
    assert found.edtf == "1954-03-12"
    assert found.problem is not None


def test_the_sale_week_holds_the_paper_or_follows_it() -> None:
    monday = date(1953, 3, 9)
    (found,) = parse_printed_dates("Prices effective Thurs. thru Wed.", reference=(monday, monday))
    assert (found.earliest, found.latest) == (date(1953, 3, 12), date(1953, 3, 18))
    saturday = date(1953, 3, 14)
    (late,) = parse_printed_dates("Prices effective Thurs. thru Wed.", reference=(saturday, saturday))
    assert (late.earliest, late.latest) == (date(1953, 3, 12), date(1953, 3, 18))


def test_two_dates_of_one_text_keep_their_places() -> None:
    text = "Prices effective Mar. 12-14. Coupon expires Mar. 31."
    sale, coupon = parse_printed_dates(text, reference=PAPER)
    assert text[slice(*sale.span)] == "Mar. 12-14"
    assert (sale.kind, coupon.kind) == ("validity", "expiry")
    assert coupon.latest == date(1953, 3, 31)


def test_a_figure_before_a_comma_is_no_day_of_the_month_after_it() -> None:
    (found,) = parse_printed_dates("Bulletin 31, October 1940")
    assert found.edtf == "1940-10"
    (day,) = parse_printed_dates("31 October 1940")
    assert day.edtf == "1940-10-31"


def test_impossible_days_are_no_dates() -> None:
    assert parse_printed_dates("Feb. 30, 1953") == ()
    assert parse_printed_dates("13/13/49") == ()


DAYS = st.dates(min_value=date(1890, 3, 1), max_value=date(1979, 12, 31))


@given(DAYS)
def test_any_day_printed_in_full_comes_back(day: date) -> None:
    for text in (
        f"{day:%A, %B} {day.day}, {day.year}",
        f"{day:%a}., {day:%b}. {day.day}, {day.year}",
        f"{day.month}/{day.day}/{day.year}",
    ):
        (found,) = parse_printed_dates(text)
        assert (found.earliest, found.latest, found.problem) == (day, day, None)


@given(DAYS, st.integers(min_value=-4, max_value=2))
def test_a_weekday_and_day_without_year_come_back_from_the_paper(day: date, shift: int) -> None:
    paper = day + timedelta(days=shift)
    (found,) = parse_printed_dates(f"{day:%A, %B} {day.day}", reference=(paper, paper))
    assert found.earliest == day


@given(DAYS)
def test_candidate_years_hold_the_true_year_and_agree_with_the_calendar(day: date) -> None:
    years = candidate_years(day.weekday(), day.month, day.day)
    assert day.year in years
    assert all(date(y, day.month, day.day).weekday() == day.weekday() for y in years)


@given(st.text(max_size=80))
def test_no_text_breaks_the_reading_of_dates(text: str) -> None:
    parse_printed_dates(text, reference=PAPER)

"""Dates and years printed on an advert or its page as evidence: what binds, what is softer, and what counts once."""

from __future__ import annotations

from datetime import date

from adminer.dating.estimate import NEIGHBOUR, estimate_adverts
from adminer.dating.evidence import calendar_days, printed_years
from adminer.dating.evidence.base import Case, Context, ReadDate, YearSpan
from adminer.records import Box
from tests.dating.test_evidence import NOTHING, case, chance, clues


def test_a_day_without_year_names_the_years_of_its_weekday() -> None:
    (clue,) = clues(calendar_days.find, "Prices effective Thurs., Fri., Sat., March 12-13-14")
    assert chance(clue, 1953, 3) == 1
    assert chance(clue, 1952, 3) < 0.1
    assert chance(clue, 1953, 8) < 0.01


def test_dates_read_with_their_year_bind_and_an_expiry_reaches_back() -> None:
    read = ReadDate("expiry", "expires Dec. 31, 1950", date(1950, 12, 31), date(1950, 12, 31), None, 0.95)
    (clue,) = calendar_days.find(case(dates=(read,)), NOTHING)
    assert chance(clue, 1950, 12) > chance(clue, 1950, 10) > chance(clue, 1950, 6) > chance(clue, 1951, 2)


def test_a_note_binds_and_an_approximate_one_is_softer() -> None:
    (sure,) = calendar_days.find(case(published="1951"), NOTHING)
    (about,) = calendar_days.find(case(published="1951~"), NOTHING)
    assert chance(sure, 1950) < 0.01 < chance(about, 1950)
    assert sure.kind == "owner's note"


def test_an_anniversary_counts_from_the_retailers_first_year() -> None:
    context = Context(retailers={"tidewell": YearSpan(1926, None, "Tidewell Markets")})
    (clue,) = printed_years.find(case("Our 25th Anniversary Sale", retailer_id="tidewell"), context)
    assert chance(clue, 1951) == 1
    assert chance(clue, 1946) < 0.2


def test_a_catalogue_goes_out_before_its_season_and_a_day_does_not() -> None:
    season = ReadDate("printed", "Fall and Winter 1949", date(1949, 9, 1), date(1950, 2, 28), None, 0.9)
    (clue,) = calendar_days.find(case(dates=(season,)), Context())
    assert chance(clue, 1949, 7) > 0.5 and chance(clue, 1950, 2) == 1 and chance(clue, 1950, 7) < 0.05
    month = ReadDate("printed", "October 1949", date(1949, 10, 1), date(1949, 10, 31), None, 0.9)
    (clue,) = calendar_days.find(case(dates=(month,)), Context())
    assert chance(clue, 1949, 8) < 0.05


def test_a_winter_is_of_either_end_of_its_year_and_not_of_its_summer() -> None:
    winter = ReadDate("printed", "Winter Sale 1952", date(1951, 12, 1), date(1953, 2, 28), None, 0.9)
    (clue,) = calendar_days.find(case(dates=(winter,)), Context())
    assert chance(clue, 1952, 1) > chance(clue, 1952, 12) > chance(clue, 1953, 2) > 20 * chance(clue, 1952, 7)


def test_a_copyright_is_named_as_one_and_a_patent_is_no_year_of_issue() -> None:
    (clue,) = clues(printed_years.find, "Copyright, 1949, by the makers")
    assert "Copyright, 1949" in clue.text and chance(clue, 1949) > chance(clue, 1950) > chance(clue, 1944)
    assert clues(printed_years.find, "Patented Apr. 9, 1902") == []


def test_a_page_s_date_line_held_by_two_adverts_counts_once() -> None:
    line = ReadDate("dateline", "March 12, 1953", date(1953, 3, 12), date(1953, 3, 12), Box(1, 2, 30, 4), 0.9)
    one, other = (Case(f"c-a{n}", "c", "Plates", dates=(line,)) for n in (1, 2))
    found = estimate_adverts([one, other], Context())[0]
    assert [w.clue.kind for w in found.evidence] == [calendar_days.PAGE]
    assert found.evidence[0].clue.box == Box(1, 2, 30, 4)
    assert found.ninety.edtf == "1953-03"
    alone = estimate_adverts([one, Case("c-a2", "c", "Cups")], Context())[1]
    assert [w.clue.kind for w in alone.evidence] == [NEIGHBOUR]

"""Dates of adverts: what readers make of them, first days without a last one, coupons, dates over two lines.

Days by the Gregorian calendar of the standard library; the ways of printing are common practice, no source.
"""

from __future__ import annotations

from datetime import date

import pytest

from adminer.dating.calendar import parse_printed_dates
from adminer.parsing.conditions.dates import find_dates, validity_of
from adminer.records import Note
from tests.parsing.pages import Line, advert_text, parse

PAPER = (date(1953, 3, 12), date(1953, 3, 12))


@pytest.mark.parametrize(
    ("text", "edtf"),
    [
        ("Week of Mar. li", "1953-03-11/1953-03-17"),
        ("MAR.12,1953", "1953-03-12"),
        ("Mar. 12.1953", "1953-03-12"),
        ("Thursday. Maich 12, 1953", "1953-03-12"),
        ("Satuiday, March 14, 1953", "1953-03-14"),
        ("March l2-13-14", "1953-03-12/1953-03-14"),
        ("Mar. I2 thiu Mar. 1S", "1953-03-12/1953-03-15"),
        ("Mar. 12 thru Mar. 2O", "1953-03-12/1953-03-20"),
        ("Thur. Frl. Sat. March 12, 13, 14", "1953-03-12/1953-03-14"),
    ],
)
def test_letters_read_for_figures_and_wrong_letters_in_names_are_mended(text: str, edtf: str) -> None:
    (found,) = parse_printed_dates(text, reference=PAPER)
    assert found.edtf == edtf


@pytest.mark.parametrize(
    ("text", "edtf", "opens"),
    [
        ("Now thru Sat., Mar. 14", "1953-03-12/1953-03-14", False),
        ("Today and Saturday", "1953-03-12/1953-03-14", False),
        ("today only", "1953-03-12", False),
        ("Prices good until Saturday night", "1953-03-14", False),
        ("Sale starts Monday", "1953-03-16", True),
        ("Prices good 3/12 thru 3/14", "1953-03-12/1953-03-14", False),
    ],
)
def test_days_seen_from_the_paper_s_own(text: str, edtf: str, opens: bool) -> None:
    (found,) = parse_printed_dates(text, reference=PAPER)
    assert (found.edtf, found.opens) == (edtf, opens)


@pytest.mark.parametrize(
    "text",
    [
        "Patented Apr. 9, 1902",
        "today's low prices",
        "open until Saturday night 9 p.m.",
        "Sat. 9-10-11",  # three days of a month that was not read
        "1/2 to 3/4 off",
    ],
)
def test_what_is_no_date_of_the_advert_is_left(text: str) -> None:
    assert [found for found in parse_printed_dates(text, reference=PAPER) if found.earliest] == []


@pytest.mark.parametrize("text", ["May I send it", "Mar is one", "Sept oil 19c", "Decor 12 in.", "March IS here"])
def test_words_after_the_name_of_a_month_are_no_days(text: str) -> None:
    assert [f for f in parse_printed_dates(text, reference=PAPER) if f.month_days] == []


def _validity(*lines: Line, reference: tuple[date, date] | None = None) -> tuple[date | None, date | None, str | None]:
    return validity_of([fact for fact, _ in find_dates(advert_text(*lines), reference)], reference)


def test_thru_is_known_when_a_letter_of_it_is_wrong() -> None:
    said = _validity((40, 40, 14, "Prices Effective Thiu Saturday, March 14"), reference=PAPER)
    assert said == (date(1953, 3, 12), date(1953, 3, 14), "printed")


def test_a_first_day_alone_leaves_the_end_open() -> None:
    said = _validity((40, 40, 14, "Begins Monday, January 11, 1926"))
    assert said == (date(1926, 1, 11), None, "printed")


def test_an_offer_that_only_ends_has_no_first_day() -> None:
    assert _validity((40, 40, 14, "Offer ends August 31, 1962")) == (None, date(1962, 8, 31), "printed")


COUPON = (
    (40, 40, 14, "Thurs., Fri., Sat., April 13-14-15"), (40, 90, 20, "Dinner plate"), (40, 120, 60, "39¢"),
    (40, 190, 14, "with this coupon"), (40, 400, 14, "Coupon expires April 29, 1950"),
)  # fmt: skip


def test_an_advert_that_is_a_coupon_holds_to_the_coupon_s_day() -> None:
    advert = parse(*COUPON, notes=(Note("a.png", published="1950-04-13"),))
    assert (advert.valid_from, advert.valid_to) == (date(1950, 4, 13), date(1950, 4, 29))


def test_a_coupon_in_an_advert_of_other_prices_leaves_the_sale_its_days() -> None:
    more = ((40, 500, 14, "Cup 19¢"), (40, 530, 14, "Saucer 9¢"))
    advert = parse(*COUPON, *more, notes=(Note("a.png", published="1950-04-13"),))
    assert (advert.valid_from, advert.valid_to) == (date(1950, 4, 13), date(1950, 4, 15))


def test_the_last_day_of_ration_stamps_is_none_of_the_sale() -> None:
    said = _validity(
        (40, 40, 14, "Prices effective Sept. 16, 17, 18, 1943"), (40, 90, 14, "Blue Stamps U, V, W good thru Oct. 20"),
        reference=(date(1943, 9, 16), date(1943, 9, 16)),
    )  # fmt: skip
    assert said == (date(1943, 9, 16), date(1943, 9, 18), "printed")


def test_a_date_that_goes_on_in_the_next_line_is_one() -> None:
    advert = advert_text((40, 40, 14, "Every Monday, beginning Monday, October"), (240, 60, 14, "3, 1938"))
    assert [fact.edtf for fact, _ in find_dates(advert, None) if fact.month_days] == ["1938-10-03"]
    closed = advert_text((40, 40, 14, "Offer good by mail only: expires Dec."), (40, 60, 14, "31.1949.)"))
    assert [fact.edtf for fact, _ in find_dates(closed, None)] == ["1949-12-31"]


def dates_of(*lines: Line) -> list[tuple[str, str | None]]:
    return [(fact.kind, fact.edtf) for fact, _ in find_dates(advert_text(*lines), None)]


WEEKS: list[Line] = [(300, 60 + 40 * i, 16, f"Sept. {day}") for i, day in enumerate((16, 23, 30))]


def test_days_in_a_column_are_weeks_of_a_table_in_the_year_printed_elsewhere() -> None:
    starts: Line = (40, 400, 16, "Program starts Monday, September 16, 1957")
    assert dates_of(*WEEKS, starts) == [
        ("printed", "1957-09-16"), ("printed", "1957-09-23"), ("printed", "1957-09-30"), ("validity", "1957-09-16"),
    ]  # fmt: skip
    assert [edtf for _, edtf in dates_of(*WEEKS)] == ["XXXX-09-16", "XXXX-09-23", "XXXX-09-30"]  # no year is printed
    assert [kind for kind, _ in dates_of(*WEEKS[:2])] == ["validity", "validity"]  # two are no table


def test_the_last_day_of_a_coupon_does_not_end_the_programme_it_stands_in() -> None:
    starts: Line = (40, 400, 16, "Program starts Monday, September 16, 1957")
    coupon: Line = (40, 500, 16, "Coupon expires September 21, 1957")
    advert = parse((40, 20, 16, "Dinner plate 29c"), (40, 50, 16, "Cup 19c"), starts, coupon)
    assert (advert.valid_from, advert.valid_to) == (date(1957, 9, 16), None)
    offer: Line = (40, 500, 16, "Offer expires September 21, 1957")
    advert = parse((40, 20, 16, "Dinner plate 29c"), (40, 50, 16, "Cup 19c"), starts, offer)
    assert (advert.valid_from, advert.valid_to) == (date(1957, 9, 16), date(1957, 9, 21))
    advert = parse((40, 20, 16, "Dinner plate 29c"), (40, 50, 16, "Cup 19c"), coupon)
    assert (advert.valid_from, advert.valid_to) == (None, date(1957, 9, 21))


def test_before_a_day_is_an_end_and_no_beginning() -> None:
    advert = parse((40, 20, 16, "Dinner plate 29c"), (40, 50, 16, "Bring this page before March 31, 1954"))
    assert (advert.valid_from, advert.valid_to) == (None, date(1954, 3, 31))


def test_the_date_of_a_price_list_says_no_end() -> None:
    for head in ("Net Price List to the Trade - January 1, 1926", "Price Sheet January 1, 1926"):
        advert = parse((40, 20, 16, head), (40, 60, 16, "Goblet 29c"))
        assert (advert.valid_from, advert.valid_to) == (date(1926, 1, 1), None)
    advert = parse((40, 20, 16, "January 1, 1926"), (40, 60, 16, "Goblet 29c"))
    assert (advert.valid_from, advert.valid_to) == (date(1926, 1, 1), date(1926, 1, 1))

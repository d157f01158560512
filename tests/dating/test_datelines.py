"""The date line of a page, whole and worn. Weekdays by the Gregorian calendar of the standard library."""

from __future__ import annotations

from datetime import date

import pytest

from adminer.dating.datelines import datelines_in


@pytest.mark.parametrize(
    ("text", "edtf"),
    [
        ("OSTERBY SENTINEL, Thursday, March 12, 1953 Page 7", "1953-03-12"),
        ("THE OSTERBY SENTINEL MARCH 12, 1953 PAGE SEVEN", "1953-03-12"),
        ("Ferncliff Thursday. Mas 13. 1948 Page 7", "1948-05-13"),  # May or March: only in May a Thursday
        ("2 THE OSTERBY MERCURY Tuiesday, 14 May, 1907", "1907-05-14"),
        ("Ferncliff, Saturday, Mas 13, 1948", "1948-03-13"),
        ("Wenning Falls, SATURDAY. MAY 2. 1938", "1938-05"),  # a Monday: a figure of the day was lost, 21 or 28
    ],
)
def test_a_date_line_is_read(text: str, edtf: str) -> None:
    (found,) = datelines_in(text)
    assert (found.edtf, found.kind) == (edtf, "dateline")
    assert found.earliest is not None and found.latest is not None
    assert found.earliest <= date.fromisoformat(edtf if len(edtf) > 7 else f"{edtf}-11") <= found.latest


@pytest.mark.parametrize(
    "text",
    [
        "Thurs., Fri., Sat., Mar. 12-13-14, 1953",  # days of a sale
        "Established 1888",
        "Thursday, Mas 14, 1948",  # a Thursday in neither month
        "Thursday, March 12",
    ],
)
def test_what_is_no_date_line_is_left(text: str) -> None:
    assert datelines_in(text) == ()


@pytest.mark.parametrize(
    ("text", "edtf"),
    [
        ("OSTERBY, WEDNESDAY. MAY 1. 1938", "1938-05-11"),  # 1 May was a Sunday; 11 is 1 twice, set close
        ("OSTERBY, FRIDAY, MAY 7, 1938", "1938-05-27"),  # 27 alone has a 7 and is a Friday
        ("OSTERBY, WEDNESDAY, MAY 12, 1938", "1938-05"),  # a day of two figures has lost none
    ],
)
def test_a_weekday_tells_which_figure_of_a_day_was_lost(text: str, edtf: str) -> None:
    """Weekdays of May 1938 from the Gregorian calendar of the standard library."""
    (found,) = datelines_in(text)
    assert found.edtf == edtf

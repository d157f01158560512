"""The short way for plain dates gives what the package gives, for every length, qualifier and leap year."""

from __future__ import annotations

from datetime import date
from typing import Any

import pytest
from edtf import parse_edtf

from adminer.dating.edtf import bounds_of
from adminer.errors import FolderError

PLAIN = [
    f"{year}{rest}{mark}"
    for year in ("1896", "1900", "1904", "1952", "2000")
    for rest in ("", "-02", "-11", "-12-31", "-02-28")
    for mark in ("", "?", "~", "%")
]


@pytest.mark.parametrize("text", PLAIN)
def test_the_short_way_agrees_with_the_package(text: str) -> None:
    parsed: Any = parse_edtf(text)
    lower, upper = parsed.lower_strict(), parsed.upper_strict()
    found = bounds_of(text)
    assert found.earliest == date(lower.tm_year, lower.tm_mon, lower.tm_mday)
    assert found.latest == date(upper.tm_year, upper.tm_mon, upper.tm_mday)


@pytest.mark.parametrize("text", ["1900-02-29", "1952-04-31", "1952-01-00", "1952-13-01", "0000"])
def test_days_that_never_were_are_refused(text: str) -> None:
    with pytest.raises(FolderError):
        assert bounds_of(text).earliest is None


def test_a_leap_day_is_a_day() -> None:
    assert bounds_of("1904-02-29").earliest == date(1904, 2, 29)

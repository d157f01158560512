"""EDTF examples with their bounds: Library of Congress EDTF specification of 4 Feb 2019 (ISO 8601-2:2019), levels 0-2.

The strings and their meanings are those of the specification's examples as commented in the `edtf` package's own
tests; the bounds follow from the meanings.
"""

from __future__ import annotations

from datetime import date

import pytest

from adminer.dating.edtf import bounds_of, day_or_interval, one_of_days, one_of_months
from adminer.errors import FolderError


@pytest.mark.parametrize(
    ("text", "earliest", "latest"),
    [
        ("1985-04-12", date(1985, 4, 12), date(1985, 4, 12)),
        ("2004-06/2006-08", date(2004, 6, 1), date(2006, 8, 31)),
        ("1984?", date(1984, 1, 1), date(1984, 12, 31)),
        ("1984~", date(1984, 1, 1), date(1984, 12, 31)),
        ("1984%", date(1984, 1, 1), date(1984, 12, 31)),
        ("199X", date(1990, 1, 1), date(1999, 12, 31)),
        ("1999-01-XX", date(1999, 1, 1), date(1999, 1, 31)),
        ("156X-12-25", date(1560, 12, 25), date(1569, 12, 25)),
        ("[1667,1668,1670..1672]", date(1667, 1, 1), date(1672, 12, 31)),
        ("{1960,1961-12}", date(1960, 1, 1), date(1961, 12, 31)),
        ("2004-01-01/..", date(2004, 1, 1), None),
        # the library gives ten years to an unknown end; the specification gives it none
        ("2004-06-01/", date(2004, 6, 1), None),
        ("../1985-04-12", None, date(1985, 4, 12)),
        ("2004-06-~11", date(2004, 6, 11), date(2004, 6, 11)),
        # "some year between 1900 and 1999, estimated to be 1950"; the library's strict bounds forget the century
        ("1950S2", date(1900, 1, 1), date(1999, 12, 31)),
    ],
)
def test_the_specifications_examples_have_their_strict_bounds(text: str, earliest: date, latest: date | None) -> None:
    bounds = bounds_of(text)
    assert (bounds.earliest, bounds.latest) == (earliest, latest)


@pytest.mark.parametrize("text", ["1954-13", "last spring", "1953/1950", "", "/", "10/10/49"])
def test_what_is_no_edtf_is_refused_with_a_remedy(text: str) -> None:
    with pytest.raises(FolderError) as caught:
        bounds_of(text)
    assert caught.value.remedy


def test_what_we_write_is_read_back() -> None:
    first, last = date(1953, 11, 1), date(1954, 1, 7)
    for text in (one_of_days(first, last), day_or_interval(first, last)):
        assert (bounds_of(text).earliest, bounds_of(text).latest) == (first, last)
    months = one_of_months([(date(1947, 1, 1), date(1948, 12, 31)), (date(1951, 3, 1), date(1953, 2, 28))])
    assert months == "[1947..1948,1951-03..1953-02]"
    assert (bounds_of(months).earliest, bounds_of(months).latest) == (date(1947, 1, 1), date(1953, 2, 28))
    assert one_of_months([(date(1954, 3, 1), date(1954, 3, 31))]) == "1954-03"
    assert day_or_interval(None, last) == "../1954-01-07"

"""Dates are taken as people type them; what is no date stays as it is, for the form to refuse."""

from __future__ import annotations

import pytest

from adminer.dating.edtf import bounds_of
from adminer.desk.typed_dates import edtf_of


@pytest.mark.parametrize(
    ("typed", "edtf"),
    [
        ("March 3, 1921", "1921-03-03"),
        ("Mar. 3 1921", "1921-03-03"),
        ("3rd March 1921", "1921-03-03"),
        ("Sept 1951", "1951-09"),
        ("May 1951?", "1951-05?"),
        ("about 1905", "1905~"),
        ("c. June 1951", "1951-06~"),
        ("1953-01-08 to 1953-02-28", "1953-01-08/1953-02-28"),
        ("1953–1955", "1953/1955"),
        ("Jan 8, 1953 to Feb 28, 1953", "1953-01-08/1953-02-28"),
        ("1953-01-08", "1953-01-08"),
        ("1950/1955", "1950/1955"),
        ("[1951-03,1952-01..1952-04]", "[1951-03,1952-01..1952-04]"),
        ("../1955", "../1955"),
    ],
)
def test_the_usual_ways_to_write_a_date_become_edtf(typed: str, edtf: str) -> None:
    assert edtf_of(typed) == edtf
    assert bounds_of(edtf)


@pytest.mark.parametrize("typed", ["last spring", "3/7/1921", "Mar 1921 or so", "about then", "march", "", "1/6"])
def test_what_may_be_read_in_two_ways_or_none_is_left_alone(typed: str) -> None:
    assert edtf_of(typed) == typed

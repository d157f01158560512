"""Which prices are one offer's. All invented."""

from __future__ import annotations

from tests.parsing.pages import parse


def test_a_grade_in_spaced_capitals_between_two_prices_of_a_row_parts_them() -> None:
    advert = parse(
        (20, 20, 24, "Old Fenwick Brandy"),
        (20, 80, 16, "plain 35/- a case"), (260, 80, 16, "V O 53/- a case"),
        (20, 104, 16, "aged 41/- a case"), (260, 104, 16, "V S O 60/- a case"),
    )  # fmt: skip
    assert {p.text: o.item for o in advert.offers for p in o.prices}["53/-"] == "VO"
    assert {p.text: o.item for o in advert.offers for p in o.prices}["60/-"] == "VSO"

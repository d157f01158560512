"""Pieces of a line set out to the width of its column, and the white between columns. All invented."""

from __future__ import annotations

import pytest

from adminer.layout.rules import Rect
from adminer.reading.justified import join_justified

WORDS = frozenset(range(8))


def row(number: int, *spans: tuple[float, float], high: float = 10.0) -> list[Rect]:
    """Return the pieces of a row of print, rows 14 pixels apart."""
    return [(left, 100 + 14.0 * number, right, 100 + 14.0 * number + high) for left, right in spans]


def joined(*pieces: list[Rect], worded: frozenset[int] = WORDS, rules: tuple[Rect, ...] = ()) -> list[int]:
    """Return for every piece the number of the one it was joined to."""
    rects = dict(enumerate(rect for row in pieces for rect in row))
    owner = join_justified(rects, worded & frozenset(rects), rules)
    return [owner[n] for n in rects]


WHOLE = (20.0, 200.0)
APART = ((20.0, 80.0), (110.0, 200.0))


def test_pieces_are_one_line_where_the_line_over_or_under_runs_across_their_gap() -> None:
    assert joined(row(0, WHOLE), row(1, *APART), row(2, WHOLE)) == [0, 1, 1, 3]
    assert joined(row(0, WHOLE), row(1, *APART)) == [0, 1, 1]
    assert joined(row(0, *APART), row(1, WHOLE)) == [0, 0, 2]


def test_each_of_three_pieces_goes_to_the_first() -> None:
    assert joined(row(0, WHOLE), row(1, (20.0, 60.0), (85.0, 120.0), (150.0, 200.0))) == [0, 1, 1, 1]


def test_a_gap_that_both_neighbours_show_is_a_gutter() -> None:
    assert joined(row(0, *APART), row(1, *APART), row(2, *APART)) == list(range(6))


def test_a_gap_that_goes_on_at_one_side_is_a_gutter_though_a_line_at_the_other_runs_across() -> None:
    assert joined(row(0, WHOLE), row(1, *APART), row(2, *APART)) == list(range(5))


def test_a_gap_without_a_line_over_or_under_it_stays() -> None:
    assert joined(row(0, *APART), row(9, WHOLE)) == [0, 1, 2]


@pytest.mark.parametrize(
    ("rule", "owners"),
    [
        ((94.0, 90.0, 96.0, 160.0), [0, 1, 2, 3]),  # upright, in the gap
        ((94.0, 20.0, 96.0, 90.0), [0, 1, 1, 3]),  # over these rows
        ((210.0, 90.0, 212.0, 160.0), [0, 1, 1, 3]),  # beside both pieces
        ((60.0, 118.0, 130.0, 120.0), [0, 1, 1, 3]),  # lies level
    ],
)
def test_across_an_upright_rule_nothing_is_joined(rule: Rect, owners: list[int]) -> None:
    assert joined(row(0, WHOLE), row(1, *APART), row(2, WHOLE), rules=(rule,)) == owners


@pytest.mark.parametrize("figures", [1, 2])
def test_figures_stay_apart_from_words(figures: int) -> None:
    assert joined(row(0, WHOLE), row(1, *APART), row(2, WHOLE), worded=WORDS - {figures}) == [0, 1, 2, 3]


def test_a_heading_over_two_columns_does_not_join_them() -> None:
    assert joined(row(0, WHOLE, high=30.0), row(3, *APART)) == [0, 1, 2]


def test_a_line_that_reaches_further_than_the_one_over_it_stays_apart() -> None:
    assert joined(row(0, (20.0, 150.0)), row(1, *APART)) == [0, 1, 2]

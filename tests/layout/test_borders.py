"""Borders told by where their rules end, whatever touches them, and the border around two adverts told from one's."""

from __future__ import annotations

from adminer.layout.borders import borders, without_common
from adminer.layout.rules import Rect

LONGER = 1000.0
TOP, FOOT = (100.0, 200.0, 500.0, 204.0), (100.0, 600.0, 500.0, 604.0)
LEFT, RIGHT = (100.0, 200.0, 104.0, 604.0), (496.0, 200.0, 500.0, 604.0)
BORDER: Rect = (100, 200, 500, 604)


def test_four_rules_that_end_at_each_other_are_a_border() -> None:
    assert borders([TOP, FOOT, LEFT, RIGHT], LONGER) == [BORDER]
    assert borders([TOP, FOOT, LEFT], LONGER) == []


def test_a_rule_worn_away_for_a_little_and_one_that_goes_on_to_the_next_border_are_sides_all_the_same() -> None:
    worn = [(100.0, 200.0, 104.0, 380.0), (100.0, 400.0, 104.0, 604.0)]
    joined: Rect = (496, 200, 500, 950)
    assert borders([TOP, FOOT, *worn, joined], LONGER) == [BORDER]


def test_cut_off_rules_between_the_rules_of_columns_are_no_border() -> None:
    columns: list[Rect] = [(100, 20, 104, 980), (496, 20, 500, 980)]
    assert borders([TOP, FOOT, *columns], LONGER) == []


def test_a_frame_around_two_frames_with_white_between_them_is_neither_ones() -> None:
    left, right = (100.0, 200.0, 290.0, 604.0), (305.0, 200.0, 500.0, 604.0)
    assert without_common([BORDER, left, right], LONGER) == [left, right]
    over, under = (102.0, 202.0, 498.0, 390.0), (102.0, 405.0, 498.0, 602.0)
    assert without_common([BORDER, over, under], LONGER) == [over, under]


def test_a_frame_whose_panels_share_a_rule_or_leave_room_for_a_head_is_an_adverts() -> None:
    over, under = (102.0, 202.0, 498.0, 400.0), (102.0, 402.0, 498.0, 602.0)
    assert BORDER in without_common([BORDER, over, under], LONGER)
    low, lower = (102.0, 300.0, 498.0, 440.0), (102.0, 455.0, 498.0, 602.0)
    assert BORDER in without_common([BORDER, low, lower], LONGER)


def test_rules_that_lean_end_anywhere_in_the_room_they_take() -> None:
    top, foot = (100.0, 190.0, 500.0, 212.0), (100.0, 590.0, 500.0, 612.0)
    left, right = (100.0, 212.0, 110.0, 612.0), (490.0, 190.0, 500.0, 590.0)
    assert borders([top, foot, left, right], LONGER) == []
    assert borders([top, foot, left, right], LONGER, leaning=True) == [(100, 190, 500, 612)]


def test_tiers_of_frames_that_fill_a_frame_without_a_border_of_its_own_are_adverts() -> None:
    over, left, right = (101.0, 201.0, 499.0, 390.0), (101.0, 400.0, 290.0, 603.0), (300.0, 400.0, 499.0, 603.0)
    assert without_common([BORDER, over, left, right], LONGER) == [over, left, right]
    inset = [(110.0, 210.0, 490.0, 390.0), (110.0, 400.0, 290.0, 594.0), (300.0, 400.0, 490.0, 594.0)]
    assert BORDER in without_common([BORDER, *inset], LONGER)
    gap = [over, left]
    assert BORDER in without_common([BORDER, *gap], LONGER)

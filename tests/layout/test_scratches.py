"""Scratches of the film told from the rules of a page."""

from __future__ import annotations

from adminer.layout.rules import Rect
from adminer.layout.scratches import scratches
from adminer.layout.type_lines import TypeLine

COLUMNS = [
    TypeLine((left, 100 + 14 * n, left + 180, 110 + 14 * n), 10, "words of a report")
    for left in (40, 260, 480)
    for n in range(20)
]


def test_a_stroke_through_the_lines_of_several_columns_is_a_scratch() -> None:
    through, between = (20.0, 174.0, 700.0, 176.0), (20.0, 181.0, 700.0, 183.0)
    assert scratches([through, between], COLUMNS) == [through]


def test_a_rule_under_the_words_of_one_column_is_none() -> None:
    under: Rect = (40, 174, 220, 176)
    assert scratches([under], COLUMNS) == []


def test_an_upright_stroke_through_a_column_is_a_scratch_and_one_between_columns_is_none() -> None:
    through, between = (120.0, 90.0, 123.0, 400.0), (238.0, 90.0, 241.0, 400.0)
    assert scratches([through, between], COLUMNS) == [through]
    assert scratches([through], []) == []


def test_the_dark_ground_of_heads_side_by_side_is_no_scratch() -> None:
    ground: Rect = (20, 166, 700, 183)
    assert scratches([ground], COLUMNS) == []

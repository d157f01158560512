"""Columns that lean because the page lay askew on the film."""

from __future__ import annotations

from adminer.layout.lean import as_printed, lean_of, upright_lines, upright_rules
from adminer.layout.type_lines import TypeLine


def columns(lean: float) -> list[TypeLine]:
    return [
        TypeLine((left + lean * y, y - 5, left + 200 + lean * y, y + 5), 10, "words of a report")
        for left in (30, 260, 490)
        for y in range(60, 960, 14)
    ]


def test_the_lean_of_columns_is_that_at_which_their_lines_align() -> None:
    assert abs(lean_of(columns(0.012)) - 0.012) < 0.003
    assert lean_of(columns(0.0)) == 0.0
    assert lean_of([]) == 0.0


def test_leaning_lines_stand_upright_and_go_back_to_their_place() -> None:
    lines = columns(0.012)
    upright = upright_lines(lines, 0.012)
    assert {round(line.rect[0]) for line in upright} == {30, 260, 490}
    assert as_printed(upright[40].rect, 0.012) == lines[40].rect


def test_a_leaning_column_rule_becomes_no_wider_than_its_stroke() -> None:
    ((left, _, right, _),) = upright_rules([(240, 50, 253, 950)], 0.012)
    assert right - left < 4

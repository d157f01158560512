"""Pieces of a row beside a gutter as narrow as papers have it: two lines of two columns, not one."""

from __future__ import annotations

from collections.abc import Sequence

from adminer.layout.rules import Rect
from adminer.reading.join import join_lines

HIGH = 11.0
LEADING = 12.0


def _column(left: float, rights: list[float]) -> list[Rect]:
    return [(left, k * LEADING, right, k * LEADING + HIGH) for k, right in enumerate(rights)]


def _joined(rows: Sequence[Rect]) -> int:
    return sum(n != m for n, m in join_lines(dict(enumerate(rows))).items())


def test_lines_of_two_columns_stay_two_though_the_white_between_them_is_narrow() -> None:
    one, two = _column(10, [150] * 8), _column(154, [290] * 8)
    assert _joined([*one, *two]) == 0


def test_lines_of_two_columns_stay_two_where_one_was_read_across_the_gutter() -> None:
    one, two = _column(10, [150] * 8), _column(154, [290] * 8)
    assert _joined([*one[:-1], *two[:-1], (10, one[-1][1], 290, one[-1][3])]) == 0


def test_pieces_of_one_line_are_joined_wherever_they_break() -> None:
    breaks = [60 + 23 * (k % 5) for k in range(8)]
    pieces = [
        r for k, at in enumerate(breaks) for r in ((10, k * 12, at, k * 12 + 11), (at + 4, k * 12, 290, k * 12 + 11))
    ]
    assert _joined(pieces) == 8


def test_dollars_and_cents_in_two_columns_of_figures_are_joined() -> None:
    dollars, cents = _column(200, [212] * 8), _column(215, [229] * 8)
    assert _joined([*dollars, *cents]) == 8

"""Which part of a page a line belongs to, where parts overlap."""

from __future__ import annotations

import numpy as np

from adminer.layout import Layout
from adminer.layout.adverts import FRAMED
from adminer.layout.clean import WayBack
from adminer.layout.rules import RuleWork
from adminer.layout.type_lines import Part
from adminer.reading.compose import compose, of_text, part_of
from adminer.reading.placed import PlacedWord
from adminer.records import Box


def test_a_line_in_a_frame_belongs_to_it_and_not_to_the_smaller_column_that_reaches_into_it() -> None:
    column = Part((250.0, 400.0, 650.0, 600.0), "editorial", 0.7)
    framed = Part((100.0, 400.0, 650.0, 600.0), "advert", FRAMED)
    assert part_of((300.0, 450.0, 400.0, 470.0), [column, framed]) == 1


def test_of_parts_without_a_frame_the_smaller_holds_the_line_and_the_nearest_one_outside_all() -> None:
    page = Part((0.0, 0.0, 800.0, 900.0), "editorial", 0.7)
    notice = Part((100.0, 400.0, 300.0, 500.0), "advert", 0.6)
    assert part_of((120.0, 420.0, 200.0, 440.0), [page, notice]) == 1
    assert part_of((820.0, 420.0, 900.0, 440.0), [page, notice]) == 0


def test_the_sides_of_a_dark_panel_are_among_the_rules_of_a_page() -> None:
    work = RuleWork(((10.0, 10.0, 300.0, 13.0),), (), ((40.0, 40.0, 200.0, 160.0),))
    layout = Layout(np.full((200, 320), 255, np.uint8), WayBack(np.eye(3), 320, 200), work)
    rules = compose(layout, [], "newspaper", "0123456789abcdef", None).rules
    assert Box(10, 10, 290, 3) in rules
    assert {(r.x, r.y) for r in rules if r.h >= 119} == {(40, 40), (200, 40)}
    assert {(r.x, r.y) for r in rules if r.w == 160} == {(40, 40), (40, 160)}


def test_lines_of_figures_and_rows_with_leaders_are_no_pieces_of_running_text() -> None:
    lines = ("Plum Conserve", "1.40 2.15", "Pink Beans . .", "2 for 54c")
    words = [
        PlacedWord(text, 20 * k, 10, 20 * k + 15, 20, 10, 0.9, number, ())
        for number, line in enumerate(lines)
        for k, text in enumerate(line.split())
    ]
    assert of_text(words) == {0, 3}

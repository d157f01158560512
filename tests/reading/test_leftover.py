"""Prices in ink that no line of type covers: found where they stand free, left alone where they do not; drawn here."""

from __future__ import annotations

import numpy as np
import pytest

from adminer.layout.clean import ground_of
from adminer.reading import sight
from adminer.reading.detect import Line
from adminer.reading.leftover import free_numerals, is_price
from adminer.reading.letters import Letter, ReadLine
from tests.reading.drawing import Setting, draw


def covering(left: float, top: float, right: float, bottom: float) -> Line:
    return Line(np.array([[left, top], [right, top], [right, bottom], [left, bottom]], np.float32), 0.9)


PAGE = draw(600, 400, Setting("Garden hose", 30, 100, 24), Setting("37c", 480, 100, 24))


def test_a_price_that_no_line_covers_is_found_and_a_covered_word_is_not() -> None:
    (found,) = free_numerals(ground_of(PAGE), [covering(20, 70, 200, 110)])
    left, top, right, bottom = found.line.bounds
    assert 470 < left < 486 and 515 < right < 545
    assert 70 < top < 86 and 98 < bottom < 112


def test_a_free_numeral_is_read_only_where_a_look_saw_a_hint_of_type(monkeypatch: pytest.MonkeyPatch) -> None:
    read = ReadLine(tuple(Letter(c, 0.2 + 0.3 * k, 0.99) for k, c in enumerate("37¢")))
    monkeypatch.setattr(sight, "read_first", lambda strips, *_: [read] * len(strips))
    marked = np.zeros((200, 300), bool)  # the page at half its size
    look = sight.Look(PAGE, (), ground_of(PAGE), np.ones(2, np.float32), (np.zeros((9, 9), bool), marked))
    lines = [covering(20, 70, 200, 110)]
    marked[45, 60] = True  # elsewhere
    assert sight._missed(look, lines, 1) == []
    marked[45, 250] = True
    assert [one.read.text for one in sight._missed(look, lines, 1)] == ["37¢"]


def test_white_figures_on_a_panel_are_found() -> None:
    page = draw(600, 400, Setting("98", 300, 200, 60))
    page = page.copy()
    page[120:240, 250:450] = 255 - page[120:240, 250:450]
    found = [one.line.bounds for one in free_numerals(ground_of(page), [])]
    assert any(280 < left < 310 and 330 < right < 400 for left, _, right, _ in found)


def test_spots_of_a_halftone_are_no_numerals() -> None:
    page = np.full((400, 600), 245, np.uint8)
    for y in range(100, 300, 16):
        for x in range(100, 400, 14):
            page[y : y + 12, x : x + 8] = 10
    assert free_numerals(ground_of(page), []) == []


def test_a_lone_figure_is_found_where_its_raised_cents_stand_beside_it() -> None:
    raised = draw(600, 400, Setting("6", 300, 200, 60), Setting("99", 340, 185, 32))
    (found,) = free_numerals(ground_of(raised), [covering(325, 155, 380, 192)])
    left, _, right, _ = found.line.bounds
    assert found.raised
    assert 285 < left < 305 and 330 < right < 350
    level = draw(600, 400, Setting("6", 300, 200, 60), Setting("ink", 340, 200, 32))
    assert free_numerals(ground_of(level), [covering(325, 170, 400, 210)]) == []


def test_a_line_of_type_close_by_does_not_hide_a_price() -> None:
    around = Setting("WWMMWWMMWW", 230, 154, 24), Setting("WWMMWWMMWW", 230, 222, 24)
    page = draw(600, 400, Setting("5c", 300, 200, 60), *around)
    found = free_numerals(ground_of(page), [covering(225, 133, 480, 157), covering(225, 202, 480, 225)])
    assert any(290 < one.line.bounds[0] < 306 for one in found)


@pytest.mark.parametrize(
    ("text", "figures", "wide", "meant"),
    [
        ("37C", [0.99, 0.98], True, True),
        ("4/$1", [0.99, 0.98, 0.99], True, True),
        ("$466", [0.99, 0.97, 0.9, 0.9], True, True),
        ("37C", [0.99, 0.6], True, False),
        ("lb", [], True, False),
        ("O4B", [0.99], True, False),
        ("4", [0.99], False, False),
        ("4", [0.99], True, True),
    ],
)
def test_only_a_sure_price_is_taken(text: str, figures: list[float], wide: bool, meant: bool) -> None:
    assert is_price(text, figures, wide) is meant

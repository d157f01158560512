"""How type slopes over a page that curls, and rows made level. All invented."""

from __future__ import annotations

import random
from collections.abc import Callable
from dataclasses import replace

import pytest

from adminer.parsing.text.slope import LEVEL, Slope, flattened, slope_of
from adminer.records import Word
from tests.parsing.pages import Line, words_of

TEXTS = ("Copper kettles with wooden grips", "Heavy iron skillets", "Bread tins, nested", "Enamel basins, white")
COLUMNS = (20, 320, 620, 920)


def page(fall: Callable[[float], float], *, chance: random.Random | None = None) -> tuple[Word, ...]:
    """Return four columns of nine rows, each word as far down as its middle falls, give or take a pixel of chance."""
    lines: list[Line] = [
        (x, 60 + 40 * row, 14, TEXTS[(row + column) % len(TEXTS)])
        for row in range(9)
        for column, x in enumerate(COLUMNS)
    ]
    bent = []
    for word in words_of(lines):
        off = fall(word.box.centre[0]) + (chance.choice((-1, 0, 1)) if chance else 0)
        bent.append(replace(word, box=replace(word.box, y=word.box.y + round(off))))
    return tuple(bent)


def most_apart(words: tuple[Word, ...]) -> float:
    """Return how far apart, in pixels, the middles of the words of one row come to stand once made level."""
    slope = slope_of(words)
    rows: dict[int, list[float]] = {}
    for word in words:
        rows.setdefault(word.line // len(COLUMNS), []).append(flattened(word.box, slope).centre[1])
    return max(max(row) - min(row) for row in rows.values())


@pytest.mark.parametrize(
    "fall",
    [
        lambda x: 0.00003 * x * x,  # turns evenly from left to right
        lambda x: 0.00000004 * x**3,  # bends down only at its right edge
        lambda x: 0.01 * x + 0.00002 * x * x,
    ],
)
def test_rows_of_a_page_that_curls_are_made_level(fall: Callable[[float], float]) -> None:
    words = page(fall)
    assert max(fall(word.box.centre[0]) for word in words) > 30  # two rows would run into each other
    assert most_apart(words) < 5


def test_the_fall_of_a_curl_is_told_apart_from_that_of_a_turn() -> None:
    turned = slope_of(page(lambda x: 0.00003 * x * x))
    assert turned.turn == pytest.approx(0.00006, rel=0.1)
    assert turned.curl == 0
    assert slope_of(page(lambda x: 0.00000004 * x**3)).curl > 0


def test_a_page_that_is_level_or_leans_evenly_has_no_curl() -> None:
    assert slope_of(page(lambda _: 0.0)) == LEVEL
    leaning = slope_of(page(lambda x: 0.02 * x))
    assert leaning.at_top == pytest.approx(0.02, abs=0.002)
    assert leaning == Slope(leaning.at_top)


@pytest.mark.parametrize("seed", range(12))
def test_a_change_across_the_page_that_may_be_chance_is_none(seed: int) -> None:
    slope = slope_of(page(lambda _: 0.0, chance=random.Random(seed)))
    assert (slope.turn, slope.curl) == (0, 0)

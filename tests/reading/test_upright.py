"""A scan that lies on its side or stands on its head is told from one that stands upright."""

from __future__ import annotations

import numpy as np
import pytest

from adminer.layout.recipe import Recipe
from adminer.reading import quarter_turns, read_page
from tests.reading.drawing import Setting, draw

PLAIN = Recipe(name="plain", about="test")
PAGE = draw(
    640,
    420,
    Setting("Every Thursday a piece of Tansy Morn", 30, 90, 26),
    Setting("Dinner plates of the first quality 25¢", 30, 150, 24),
    Setting("with each purchase of five dollars or more", 30, 210, 22),
    Setting("while quantities last at all our stores", 30, 270, 22),
)


@pytest.mark.parametrize("turns", [0, 1, 2, 3])
def test_the_turns_that_set_a_scan_upright_are_told(turns: int) -> None:
    lying = np.ascontiguousarray(np.rot90(PAGE, -turns))
    assert quarter_turns(lying, read_page(lying, PLAIN)) == turns


def test_what_no_turn_makes_readable_stays_as_it_is() -> None:
    grain = np.random.default_rng(7).integers(0, 256, (300, 400), np.uint8)
    assert quarter_turns(grain, read_page(grain, PLAIN)) == 0

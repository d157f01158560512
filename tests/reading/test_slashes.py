"""Slashes between figures that were read as something else; numerals drawn here."""

from __future__ import annotations

import numpy as np
import pytest
from numpy.typing import NDArray

from adminer.reading.placed import PlacedWord
from adminer.reading.slashes import with_slash
from tests.reading.drawing import Setting, draw, width_of

FOOT, LEFT = 60.0, 40.0


def placed(text: str, printed: str, size: float) -> tuple[NDArray[np.uint8], PlacedWord]:
    """Return a page with a numeral as printed and the word as it was read."""
    page = draw(300, 100, Setting(printed, LEFT, FOOT, size))
    places = tuple(LEFT + width_of(printed[:k], size) + width_of(c, size) / 2 for k, c in enumerate(printed))
    high = 0.72 * size
    right = LEFT + width_of(printed, size)
    return page, PlacedWord(text, LEFT, FOOT - high - 1, right, FOOT + 1, high, 0.8, 0, places)


@pytest.mark.parametrize("size", [18.0, 26.0, 44.0])
@pytest.mark.parametrize(("text", "printed"), [("216", "2/6"), ("6916", "69/6"), ("8l4d", "8/4d")])
def test_a_leaning_stroke_between_figures_is_a_slash(text: str, printed: str, size: float) -> None:
    page, word = placed(text, printed, size)
    assert with_slash(page, word).text == printed


@pytest.mark.parametrize("size", [18.0, 26.0, 44.0])
@pytest.mark.parametrize("text", ["216", "6919", "1114", "2/11"])
def test_an_upright_one_stays_a_figure(text: str, size: float) -> None:
    page, word = placed(text, text, size)
    assert with_slash(page, word) is word


def test_a_bracket_between_figures_is_a_slash_and_one_beside_them_is_none() -> None:
    page, word = placed("18[11", "18/11", 26.0)
    assert with_slash(page, word).text == "18/11"
    page, word = placed("[1911]", "[1911]", 26.0)
    assert with_slash(page, word) is word

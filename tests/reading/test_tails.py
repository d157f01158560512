"""Fractions that were read as figures or letters, found again in the ink; numerals drawn here in another face."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from numpy.typing import NDArray

from adminer.reading import tails
from adminer.reading.placed import PlacedWord
from adminer.reading.tails import settle_tail
from tests.reading.drawing import Setting, draw, width_of

FOOT, LEFT = 60.0, 40.0


def set_numeral(figures: str, fraction: tuple[str, str] | None, after: str, size: float) -> NDArray[np.uint8]:
    """Return a page with a numeral whose fraction is set of small figures and a slash."""
    x = LEFT + width_of(figures, size)
    settings = [Setting(figures, LEFT, FOOT, size)]
    if fraction:
        above, below = fraction
        small = 0.55 * size
        settings += [Setting(above, x, FOOT - 0.33 * size, small)]
        x += 0.8 * width_of(above, small)
        settings += [Setting("/", x, FOOT, size)]
        x += 0.7 * width_of("/", size)
        settings += [Setting(below, x, FOOT, small)]
        x += width_of(below, small)
    return draw(300, 100, *settings, Setting(after, x, FOOT, size))


def read_as(text: str, figures: str, size: float, sure: float = 0.8, after: str = "") -> PlacedWord:
    """Return a word as the network would give it: the letters of `figures` in their places, the others behind them."""
    high = 0.72 * size
    places = [LEFT + width_of(figures[:k], size) + width_of(figures[k], size) / 2 for k in range(len(figures))]
    last = LEFT + width_of(figures, size) + 0.9 * high
    rest = len(text) - len(figures)
    places += [last - 0.6 * high + 0.5 * high * k for k in range(rest)]
    right = last + width_of(after, size)
    return PlacedWord(text, LEFT, FOOT - high, right, FOOT, high, sure, 0, tuple(places))


@pytest.mark.parametrize("size", [16.0, 22.0, 34.0])
@pytest.mark.parametrize(
    ("text", "figures", "fraction", "after", "meant"),
    [
        ("712", "7", ("1", "2"), "", "7½"),
        ("17V", "17", ("1", "2"), "", "17½"),
        ("2/111", "2/11", ("1", "2"), "", "2/11½"),
        ("812d.", "8", ("1", "2"), "d.", "8½d."),
        ("6%", "6", ("3", "4"), "", "6¾"),
        ("914c", "9", ("1", "4"), "c", "9¼¢"),
    ],
)
def test_a_fraction_read_as_something_else_is_found(
    text: str, figures: str, fraction: tuple[str, str], after: str, meant: str, size: float
) -> None:
    page = set_numeral(figures, fraction, after, size)
    assert settle_tail(page, read_as(text, figures, size, after=after)).text == meant


@pytest.mark.parametrize("size", [16.0, 22.0, 34.0])
@pytest.mark.parametrize("text", ["715", "112", "49c", "84d.", "1/11", "35/-", "216"])
def test_figures_stay_figures(text: str, size: float) -> None:
    page = set_numeral(text, None, "", size)
    word = read_as(text, text, size)
    assert settle_tail(page, word) is word


def test_figures_read_beyond_doubt_are_not_looked_at() -> None:
    page = set_numeral("7", ("1", "2"), "", 22.0)
    assert settle_tail(page, read_as("712", "7", 22.0, sure=0.99)).text == "712"


def test_a_percentage_is_no_price() -> None:
    page = set_numeral("33", ("1", "2"), "%", 22.0)
    assert settle_tail(page, read_as("3312%", "33", 22.0, after="%")).text == "3312%"


def test_a_fraction_that_was_read_keeps_the_places_of_its_letters() -> None:
    page = set_numeral("12", ("1", "2"), "c", 22.0)
    word = read_as("12½", "12", 22.0, after="c")
    assert settle_tail(page, word) is word
    found = settle_tail(page, read_as("1212", "12", 22.0, after="c"))
    assert found.text == "12½" and len(found.centres) == 3


@pytest.mark.parametrize(("text", "meant"), [("7152", "7½"), ("7154", "7¼"), ("715", "7¼")])
def test_between_two_fractions_the_last_figure_read_decides(
    text: str, meant: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    chances = np.array([0.0, 0.45, 0.55, 0.0], np.float32)
    monkeypatch.setattr(tails, "answer", lambda windows: np.tile(chances, (len(windows), 1)))
    page = set_numeral("7", ("1", "2"), "", 22.0)
    assert settle_tail(page, read_as(text, "7", 22.0)).text == meant


def fractions_everywhere(windows: NDArray[np.float32]) -> NDArray[np.float32]:
    """Answer as the learned reader would if it took every window for a quarter or three of them."""
    return np.tile(np.array([0.01, 0.09, 0.5, 0.4], np.float32), (len(windows), 1))


@pytest.mark.parametrize("text", ["29c", "58c", "4/95c", "109", "$14"])
def test_figures_that_no_fraction_is_taken_for_stay(monkeypatch: pytest.MonkeyPatch, text: str) -> None:
    monkeypatch.setattr(tails, "answer", fractions_everywhere)
    page = set_numeral(text, None, "", 22.0)
    word = replace(read_as(text, text, 22.0), right=LEFT + width_of(text, 22.0))
    assert settle_tail(page, word).text == text


def test_what_follows_a_stroke_is_pence_on_a_page_in_sterling(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(tails, "answer", fractions_everywhere)
    page = set_numeral("5/4", None, "", 22.0)
    word = replace(read_as("5/4", "5/4", 22.0), right=LEFT + width_of("5/4", 22.0))
    assert settle_tail(page, word).text == "5¼"
    assert settle_tail(page, word, sterling=True).text == "5/4"


def test_a_three_that_was_read_makes_it_three_quarters(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(tails, "answer", fractions_everywhere)
    page = set_numeral("2", ("3", "4"), "", 22.0)
    assert settle_tail(page, read_as("23/4", "2", 22.0)).text == "2¾"


@pytest.mark.parametrize(("fraction", "meant"), [(("1", "2"), "6½"), (("3", "4"), "6¾")])
def test_a_fraction_of_which_nothing_was_read_is_found_in_the_ink(fraction: tuple[str, str], meant: str) -> None:
    page = set_numeral("6", fraction, "", 22.0)
    assert settle_tail(page, read_as("6", "6", 22.0, sure=0.99)).text == meant


def test_a_figure_with_nothing_behind_it_is_not_looked_at() -> None:
    page = set_numeral("6", None, "", 22.0)
    word = read_as("6", "6", 22.0, sure=0.99)
    assert settle_tail(page, replace(word, right=LEFT + width_of("6", 22.0))).text == "6"

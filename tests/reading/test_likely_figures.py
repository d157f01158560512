"""Letters among figures give way to the figures half seen in their places; letters of units, names and sums do not."""

from __future__ import annotations

import pytest

from adminer.reading.likely_figures import with_likely_figures
from tests.reading.test_likely_words import Doubts, answered


def settled(text: str, doubts: Doubts) -> str:
    greedy, answers, width = answered(text, doubts)
    assert greedy.text == text
    return with_likely_figures(greedy, answers, width).text


@pytest.mark.parametrize(
    ("text", "figures", "wanted"),
    [
        ("P.T. 2O.", "0", "P.T. 20."),
        ("$8O,O00", "00", "$80,000"),
        ("Rugs, 9x1z,", "2", "Rugs, 9x12,"),
        ("sx12 ft.", "9", "9x12 ft."),
        ("l2 forks", "1", "12 forks"),
        ("boys' $1.0S", "8", "boys' $1.08"),
        ("16o-page book", "0", "160-page book"),
    ],
)
def test_a_letter_among_figures_is_the_figure_half_seen_there(text: str, figures: str, wanted: str) -> None:
    places = [k for k, (a, b) in enumerate(zip(text, wanted, strict=True)) if a != b]
    doubts = {k: (figure, 0.2, 0.6) for k, figure in zip(places, figures, strict=True)}
    assert settled(text, doubts) == wanted


def test_a_letter_in_whose_place_no_figure_was_seen_stays() -> None:
    assert settled("size 6l", {6: ("1", 0.01, 0.9)}) == "size 6l"


def test_a_figure_put_in_is_as_sure_as_it_was_seen() -> None:
    greedy, answers, width = answered("2O", {1: ("0", 0.2, 0.6)})
    last = with_likely_figures(greedy, answers, width).letters[-1]
    assert (last.text, last.at) == ("0", greedy.letters[-1].at)
    assert last.confidence == pytest.approx(0.2)


@pytest.mark.parametrize("text", ["24s", "S5", "5s.", "No. V8O", "Box Z", "46-0z.", "is so"])
def test_pence_signs_counts_and_words_stay(text: str) -> None:
    place = next(k for k, c in enumerate(text) if c in "sSOZz")
    assert settled(text, {place: ("5", 0.3, 0.6)}) == text

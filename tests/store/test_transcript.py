"""The words of a page as a person copies them out: no leaders before figures, every other point as printed."""

from __future__ import annotations

import pytest

from adminer.records import Box, Word
from adminer.store.transcript import transcript


def words_of(text: str, line: int = 0) -> list[Word]:
    return [Word(part, Box(20 * i, 0, 18, 10), 10.0, 0.9, "display", line=line) for i, part in enumerate(text.split())]


def copied(words: list[Word]) -> str:
    return " ".join(word.text for _, word in transcript(words))


@pytest.mark.parametrize(
    ("printed", "text"),
    [
        ("Figs, layer .... 11d. pkt.", "Figs, layer 11d. pkt."),
        ("Figs, layer ....11d. pkt.", "Figs, layer 11d. pkt."),
        ("Herrings, fresh.... .. 8d. tin", "Herrings, fresh 8d. tin"),
        ("Oleo, colored ..... lb. 21c", "Oleo, colored lb. 21c"),
        ("Butter ··· $.89", "Butter $.89"),
        ("Candles . . . ½d.", "Candles ½d."),
    ],
)
def test_leaders_before_figures_are_left_out(printed: str, text: str) -> None:
    assert copied(words_of(printed)) == text


@pytest.mark.parametrize(
    "printed", ["every day ... won't chip", "Come early ...", "per lb. 39c", "Cups .39", "Wait..."]
)
def test_other_points_stay(printed: str) -> None:
    assert copied(words_of(printed)) == printed


def test_figures_of_another_line_are_led_to_by_none_and_numbers_are_those_of_the_reading() -> None:
    assert copied([*words_of("and more ...."), *words_of("39c a pound", line=1)]) == "and more .... 39c a pound"
    assert [number for number, _ in transcript(words_of("Figs .... 11d."))] == [0, 2]

"""The second reading of what was read badly: which lines, which part of them, and how the two are joined."""

from __future__ import annotations

import numpy as np
import pytest

from adminer.layout.clean import Gray
from adminer.reading import again
from adminer.reading.detect import Line
from adminer.reading.letters import Letter, ReadLine
from adminer.reading.seen import Seen

WIDTH, HEIGHT = 600, 20
WORDS = ("Garden", "hose", "25", "feet", "of", "rubber", "now")


def line_with(sure: dict[str, float], words: tuple[str, ...] = WORDS, width: int = WIDTH) -> Seen:
    """Return a line of words of one width each, drawn as bars; all letters .99 sure but those of `sure`."""
    step = width / len(words)
    strip = np.full((HEIGHT, width), 240, np.uint8)
    letters: list[Letter] = []
    for k, word in enumerate(words):
        left, right = k * step + 0.1 * step, (k + 1) * step - 0.1 * step
        strip[3:17, int(left) : int(right)] = 10
        letters += [Letter(" ", k * step / width, 0.9)] if k else []
        places = np.linspace(left + 2, right - 2, len(word)) / width
        letters += [Letter(c, float(at), sure.get(word, 0.99)) for c, at in zip(word, places, strict=True)]
    corners = np.array([[50, 100], [50 + width, 100], [50 + width, 100 + HEIGHT], [50, 100 + HEIGHT]], np.float32)
    return Seen(Line(corners, 0.9), strip, ReadLine(tuple(letters)))


def texts(one: Seen) -> list[str]:
    return [ReadLine(one.read.letters[part.first : part.end]).text for part in again.unsure_parts(one)]


def test_only_the_unsure_word_of_a_long_line_is_read_again() -> None:
    one = line_with({"25": 0.6})
    assert texts(one) == ["25"]
    (part,) = again.unsure_parts(one)
    assert 2 / 7 * WIDTH - 15 < part.left < 2 / 7 * WIDTH + 15
    assert 3 / 7 * WIDTH - 15 < part.right < 3 / 7 * WIDTH + 15


def test_a_sure_word_between_two_unsure_ones_is_read_with_them() -> None:
    assert texts(line_with({"hose": 0.6, "feet": 0.5})) == ["hose 25 feet"]


def test_two_unsure_words_far_from_each_other_are_read_each_by_itself() -> None:
    assert texts(line_with({"Garden": 0.6, "rubber": 0.5})) == ["Garden", "rubber"]


def test_a_line_that_is_mostly_unsure_and_a_short_one_are_read_again_as_a_whole() -> None:
    assert texts(line_with({"Garden": 0.6, "25": 0.6, "of": 0.6, "rubber": 0.5})) == [" ".join(WORDS)]
    assert texts(line_with({"25": 0.6}, ("hose", "25", "feet"), width=200)) == ["hose 25 feet"]


def test_a_long_blur_is_not_read_again_but_a_short_one_is() -> None:
    blur = dict.fromkeys(WORDS, 0.5)
    assert not again.is_asked(line_with(blur, WORDS * 2).read.letters)
    assert again.is_asked(line_with(blur, WORDS[:3]).read.letters)
    assert not again.is_asked(line_with({}).read.letters)


@pytest.mark.parametrize(
    ("words", "lines", "asked"),
    [
        (("Garden", "hose", "of", "rubber"), again.CROWD, 0),
        (("Garden", "hose", "of", "rubber"), again.CROWD - 1, 1),
        (("Garden", "hose", "25", "feet", "of"), again.CROWD, 1),
        (("Garden", "hose"), again.CROWD, 1),
    ],
)
def test_in_a_crowd_of_lines_only_what_may_hold_a_price_is_read_again(
    words: tuple[str, ...], lines: int, asked: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    strips: list[Gray] = []

    def answer(asked_for: list[Gray], _: int, *, room: bool) -> list[ReadLine]:
        strips.extend(asked_for)
        return [ReadLine(()) for _ in asked_for]

    monkeypatch.setattr(again, "read_strips", answer)
    page = np.full((200, 700), 240, np.uint8)
    unsure = line_with(dict.fromkeys(words, 0.7), words, width=250)
    again.second_try(page, [unsure, *[line_with({}, ("Cups",), width=100)] * (lines - 1)], 1)
    assert len(strips) == asked


@pytest.mark.parametrize(
    ("sure", "text"), [(0.95, "Garden hose 35 feet of rubber now"), (0.6, "Garden hose 25 feet of rubber now")]
)
def test_the_surer_reading_of_a_part_takes_its_place_in_the_line(
    sure: float, text: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    def answer(strips: list[Gray], threads: int = 1, *, room: bool) -> list[ReadLine]:
        assert [round(strip.shape[1] / 10) for strip in strips] == [9]  # a seventh of the line and room at both ends
        return [ReadLine((Letter("3", 0.3, sure), Letter("5", 0.7, sure)))]

    monkeypatch.setattr(again, "read_strips", answer)
    page = np.full((200, 700), 240, np.uint8)
    (result,) = again.second_try(page, [line_with({"25": 0.6})], 1)
    assert result.read.text == text
    places = [letter.at for letter in result.read.letters if letter.text != " "]
    assert places == sorted(places)
    assert result.strip.shape == (HEIGHT, WIDTH)

"""A line says the same alone and beside others of its width: work is shared out by width, never mixed."""

from __future__ import annotations

import numpy as np
import pytest
from numpy.typing import NDArray

from adminer.reading import recognise
from adminer.reading.letters import STEP
from adminer.reading.models import alphabet
from adminer.reading.recognise import padded, read_strips
from tests.reading.drawing import Setting, draw


def test_lines_of_one_width_say_alone_what_they_say_together() -> None:
    texts = ("Saucers 15¢", "Creamer 98¢", "Platter $1.29")
    strips = [draw(150, 30, Setting(text, 6, 22, 18)) for text in texts]
    together = read_strips(strips)
    assert [line.text[:4] for line in together] == ["Sauc", "Crea", "Plat"]
    for line, strip in zip(together, strips, strict=True):
        alone = read_strips([strip])[0]
        assert alone.text == line.text
        assert alone.confidence == pytest.approx(line.confidence, abs=1e-4)


def test_what_a_line_says_does_not_hang_on_the_lines_read_with_it() -> None:
    short, long = draw(40, 30, Setting("39¢", 6, 22, 18)), draw(600, 30, Setting("Covered vegetable dish", 6, 22, 18))
    assert read_strips([short], room=True)[0] == read_strips([short, long], room=True)[0]
    assert padded(40, "rec") == padded(80, "rec") > padded(40, "quick") >= 40
    assert padded(1000, "quick") < padded(1000, "rec") < 1050


def test_a_strip_whose_letters_are_lost_in_the_padding_is_read_by_itself(monkeypatch: pytest.MonkeyPatch) -> None:
    """Stand in for the network: beside a longer strip it sees the figures of a short one behind its end."""
    letters = alphabet().characters
    own = recognise.prepare(draw(60, 24, Setting("6.50", 4, 18, 16))).shape[1]

    def answers_of(_: str, plane: NDArray[np.float32], __: int) -> NDArray[np.float32]:
        padded = plane.shape[3] > own
        answers = np.zeros((1, plane.shape[3] // STEP + 1, len(letters)), np.float32)
        answers[0, :, 0] = 0.9
        start = own // STEP + 1 if padded else 0
        for k, c in enumerate("66.50" if padded else "6.50"):
            answers[0, start + 2 * k, letters.index(c)] = 0.95
        return answers

    monkeypatch.setattr(recognise, "answers_of", answers_of)
    monkeypatch.setattr(recognise, "columns_of", lambda _: np.arange(len(letters)))
    strips = [draw(60, 24, Setting("6.50", 4, 18, 16)), draw(120, 24, Setting("Saucers", 4, 18, 16))]
    assert read_strips(strips, room=True)[0].text == "6.50"

"""A line says the same alone and beside others of its width: work is shared out by width, never mixed."""

from __future__ import annotations

import pytest

from adminer.reading.recognise import read_strips
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

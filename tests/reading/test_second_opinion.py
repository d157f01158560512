"""Two readers merged by a rule: the same figures in both, and the cent sign of the one that saw it."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from numpy.typing import NDArray

from adminer.errors import MachineError
from adminer.reading import tesseract
from adminer.reading.opinion import is_doubtful, merged, second_opinion
from adminer.reading.placed import PlacedWord
from tests.reading.drawing import Setting, draw, width_of

SIZE = 26.0


def word(text: str, confidence: float = 0.8, size: float = 18.0) -> PlacedWord:
    return PlacedWord(text, 30, 22, 30 + width_of("29¢", SIZE), 41, size, confidence, 0, ())


@pytest.mark.parametrize(
    ("display", "second", "sure", "meant"),
    [
        ("29c", "29¢", 0.9, "29¢"),
        ("194", "19¢", 0.9, "19¢"),
        ("2/25c", "2/25¢", 0.9, "2/25¢"),
        ("656,", "65¢", 0.9, "65¢,"),
        ("29c", "28¢", 0.95, "29c"),  # other figures: neither reader is believed against the other
        ("2/25c", "25¢", 0.95, "2/25c"),
        ("29c", "29c", 0.95, "29c"),
        ("194", "194", 0.95, "194"),
        ("29c", "29¢", 0.5, "29c"),
        ("29c", "", 0.0, "29c"),
    ],
)
def test_only_the_sign_is_taken_and_only_after_the_same_figures(
    display: str, second: str, sure: float, meant: str
) -> None:
    asked = word(display)
    got = merged(asked, second, sure)
    assert got.text == meant
    assert got.reader == ("display" if meant == display else "tesseract")
    assert (got.left, got.top, got.right, got.bottom) == (asked.left, asked.top, asked.right, asked.bottom)


@pytest.mark.parametrize("text", ["16", "29¢", "$1.98", "cups", "1953", "5½¢"])
def test_what_cannot_be_a_misread_cent_sign_is_not_asked_about(text: str) -> None:
    assert not is_doubtful(word(text))


def test_display_type_and_sure_words_are_not_asked_about() -> None:
    assert is_doubtful(word("29c"))
    assert not is_doubtful(word("29c", confidence=0.99))
    assert not is_doubtful(word("29c", size=90.0))
    assert not is_doubtful(replace(word("29c"), form="raised_cents"))


def printed(text: str) -> NDArray[np.uint8]:
    """Draw a word; the face that Pillow carries has no cent sign, so that one is drawn as a "c" with a stroke."""
    pieces = [Setting(text.replace("¢", "c"), 30, 40, SIZE)]
    if text.endswith("¢"):
        middle = 30 + width_of(text[:-1], SIZE) + width_of("c", SIZE) / 2
        pieces.append(Setting("|", middle - width_of("|", 0.8 * SIZE) / 2, 41, 0.8 * SIZE))
    return draw(140, 60, *pieces)


@pytest.mark.parametrize(
    ("text", "read", "meant"),
    [("29¢", "29c", "29¢"), ("29¢", "294", "29¢"), ("294", "294", "294"), ("29c", "29c", "29c")],
)
@pytest.mark.parametrize("light", [False, True])
def test_tesseract_sees_what_is_printed(text: str, read: str, meant: str, light: bool) -> None:
    page = printed(text)
    words, remark = second_opinion(np.asarray(255 - page, np.uint8) if light else page, [word("cups"), word(read)])
    assert [w.text for w in words] == ["cups", meant]
    assert remark is None


def test_without_tesseract_the_words_stay_and_the_page_says_so(monkeypatch: pytest.MonkeyPatch) -> None:
    def missing() -> tuple[str, str]:
        raise MachineError("Tesseract is missing", why="no program", remedy="install it")

    monkeypatch.setattr(tesseract, "tesseract_command", missing)
    words, remark = second_opinion(draw(140, 60), [word("29c")])
    assert [w.text for w in words] == ["29c"]
    assert remark and "no program" in remark


def test_a_tesseract_that_fails_is_no_reason_to_lose_the_page(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(tesseract, "tesseract_command", lambda: ("/bin/false", "PATH"))
    words, remark = second_opinion(draw(140, 60), [word("29c")])
    assert [w.text for w in words] == ["29c"]
    assert remark and "failed" in remark

"""The weights of what speaks for a text as an item: that what is right where rivals are wrong weighs more. Invented."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from adminer.parsing import parse_page
from adminer.records import Clipping, ParsedPage
from adminer.score.truth import TruePage
from adminer.score.weigh import Judged, fit, judge, recorder, write
from tests.parsing.pages import NO_NAMES, Line, reading_of
from tests.score.pages import true_price, truth


def choices(count: int) -> list[Judged]:
    """Return choices between a text in large type, which is right, and one on the row, which is wrong."""
    return [Judged(({"large": 1, "on row": 0}, {"large": 0, "on row": 1}), (1.0, 0.0), 1.0) for _ in range(count)]


def test_a_trait_of_right_texts_weighs_more_than_one_of_wrong_texts() -> None:
    weights = fit(choices(40))
    assert weights["large"] > 0 > weights["on row"]
    assert weights["large"] == pytest.approx(-weights["on row"], abs=2e-3)


def test_a_trait_seen_seldom_says_nothing() -> None:
    assert fit(choices(20)) == {}


def test_choices_of_which_none_is_right_teach_nothing() -> None:
    hopeless = [Judged(({"small": 1}, {"small": 0}), (0.0, 0.0), 1.0)] * 30
    assert "small" not in fit([*choices(40), *hopeless])


def judged(lines: list[Line], true: TruePage) -> list[Judged]:
    reading = reading_of(lines)
    clipping = Clipping(reading.clipping_id, "a.png", "", 1, reading.width, reading.height, "newspaper")
    seen: list[Any] = []
    with recorder(seen):
        return judge([ParsedPage(clipping, reading, parse_page(reading, NO_NAMES))], [true], seen)


PANEL: list[Line] = [
    (20, 20, 20, "Reading Lamp"),
    (20, 60, 12, "Brass base, silk shade"),
    (20, 80, 30, "$4.95"),
    (20, 120, 12, "Open until nine"),
]


def test_the_texts_about_a_true_price_are_judged_by_its_true_item() -> None:
    (one,) = judged(PANEL, truth(true_price(4.95, "Reading Lamp")))
    right = [traits for traits, share in zip(one.traits, one.right, strict=True) if share]
    assert right
    assert all(traits["stands above"] and traits["goods"] for traits in right)
    assert 0.0 in one.right


def test_prices_without_a_true_item_teach_nothing() -> None:
    assert judged(PANEL, truth(true_price(4.95))) == []
    assert judged(PANEL, truth(true_price(7.95, "Reading Lamp"))) == []


def test_weights_are_written_as_toml(tmp_path: Path) -> None:
    write({"set in capitals": 0.5, "goods": -0.25}, tmp_path / "weights.toml", 7)
    lines = (tmp_path / "weights.toml").read_text(encoding="utf-8").splitlines()
    assert lines[1:] == ["[weights]", '"goods" = -0.25', '"set in capitals" = 0.5']

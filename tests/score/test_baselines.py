"""The naive pattern that the readers alone are given, and the cache of what they read."""

from __future__ import annotations

from decimal import Decimal
from pathlib import Path

import numpy as np
import pytest

from adminer.records import Box
from adminer.score import baselines
from adminer.score.baselines import TextLine, cached_baseline, naive_prices

BOX = Box(0, 0, 200, 20)


@pytest.mark.parametrize(
    ("text", "amounts"),
    [
        ("Cup $1.39", ["1.39"]),
        ("Cup $ 5", ["5"]),
        ("Set $1,298.50", ["1298.50"]),
        ("Saucer 9¢ Plate 19c. Dish 29 cts", ["0.09", "0.19", "0.29"]),
        ("Rice 1.50", ["1.50"]),
        ("March 12, 1949 call 5512", []),
    ],
)
def test_the_pattern_finds_what_anyone_would_try_first(text: str, amounts: list[str]) -> None:
    found = naive_prices([TextLine(text, BOX, 0.9)])
    assert [price.amount for price in found] == [Decimal(amount) for amount in amounts]


def test_the_item_is_the_rest_of_the_line_else_the_nearest_line() -> None:
    lines = [
        TextLine("Dinner plate 39¢", BOX, 0.9),
        TextLine("49¢", Box(0, 100, 40, 20), 0.9),
        TextLine("Soup tureen", Box(0, 130, 90, 20), 0.9),
    ]
    assert [price.item for price in naive_prices(lines)] == ["Dinner plate", "Soup tureen"]


def test_the_box_of_a_price_is_its_share_of_the_line() -> None:
    (price,) = naive_prices([TextLine("Cups 19¢ each", Box(100, 50, 130, 20), 0.9)])
    assert price.box == Box(150, 50, 30, 20)


def test_a_kept_reading_serves_until_fresh_is_asked(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    reads: list[str] = []

    def read(reader: str, _pixels: object) -> tuple[TextLine, ...]:
        reads.append(reader)
        return (TextLine("Saucer 9¢", BOX, 0.5),)

    monkeypatch.setattr(baselines, "read_baseline", read)
    pixels = np.zeros((4, 4), np.uint8)
    first = cached_baseline("display", pixels, "abc", tmp_path)
    assert cached_baseline("display", pixels, "abc", tmp_path) == first
    assert reads == ["display"]
    assert cached_baseline("display", pixels, "abc", tmp_path, fresh=True) == first
    assert reads == ["display", "display"]

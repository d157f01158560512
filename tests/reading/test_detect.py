"""Lines cut out of what the detecting network says: shapes with something hanging on them."""

from __future__ import annotations

import numpy as np
import pytest
from numpy.typing import NDArray

from adminer.reading import detect


def lines_of(likely: NDArray[np.float32], monkeypatch: pytest.MonkeyPatch) -> list[tuple[int, ...]]:
    monkeypatch.setattr(detect, "_probability", lambda *_: likely)
    found = detect.find_lines(np.zeros(likely.shape, np.uint8), 1.0).lines
    return sorted(tuple(round(edge) for edge in line.bounds) for line in found)


def test_a_line_under_the_tails_of_a_larger_one_is_found(monkeypatch: pytest.MonkeyPatch) -> None:
    likely = np.zeros((96, 320), np.float32)
    likely[60:67, 40:240] = 0.98
    likely[40:60, 55:90] = 0.6  # the tails of two letters of the line over it
    ((left, top, right, bottom),) = lines_of(likely, monkeypatch)
    assert left < 40
    assert right > 238
    assert 50 < top < 60
    assert 67 < bottom < 78


def test_a_smear_that_is_no_line_is_none(monkeypatch: pytest.MonkeyPatch) -> None:
    likely = np.zeros((96, 320), np.float32)
    likely[60:67, 40:240] = 0.4
    likely[40:60, 55:90] = 0.4
    assert lines_of(likely, monkeypatch) == []

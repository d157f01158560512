"""Pages of more pixels than one look may take."""

from __future__ import annotations

import numpy as np
import pytest

from adminer.reading import sight
from adminer.reading.detect import Line, Sighting


def test_a_page_a_hair_too_large_is_looked_at_once_and_its_lines_come_back_in_its_pixels(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    corners = np.array([[10, 10], [90, 10], [90, 30], [10, 30]], np.float32)
    monkeypatch.setattr(sight, "MOST_PIXELS", 9999.0)
    monkeypatch.setattr(sight, "find_lines", lambda *_: Sighting([Line(corners, 0.9)], np.zeros((9, 9), bool)))
    found = sight.look_at(np.full((100, 100), 255, np.uint8)).seen
    assert [one.line.corners.tolist() for one in found] == [corners.tolist()]

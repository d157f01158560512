"""Softening a two-tone copy: lone specks go, the point of a price stays."""

from __future__ import annotations

import numpy as np

from adminer.layout.clean import soften


def test_a_lone_speck_goes_and_a_point_beside_figures_stays() -> None:
    page = np.full((60, 120), 255, np.uint8)
    page[10:12, 10:12] = 0
    page[20:40, 60:66] = 0
    page[38:40, 69:71] = 0
    page[20:40, 74:80] = 0
    clean = soften(page)
    assert clean[10, 10] > 240
    assert clean[39, 70] < 160

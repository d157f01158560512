"""Pages that are bent: the way there and back, what is bent back, and that a flat page stays as it is."""

from __future__ import annotations

import numpy as np
import pytest
from numpy.typing import NDArray

from adminer.layout.bend import Bend, bend_of, flatten
from adminer.layout.clean import WayBack
from adminer.layout.page import Layout, flattened
from adminer.layout.rules import RuleWork

WIDTH, HEIGHT = 800, 1000


def lines_of(bend: Bend, noise: float = 0.0) -> NDArray[np.float64]:
    """Return lines (x, y, slope, length) as they run on a picture with a bend."""
    chance = np.random.default_rng(11)
    a, b, c, e, f = bend.slope
    x, y = (values.ravel() for values in np.meshgrid(np.linspace(100, 700, 5), np.linspace(60, 940, 12)))
    u, v = (x - WIDTH / 2) / WIDTH, (y - HEIGHT / 2) / WIDTH
    slope = a + b * v + c * u + e * u * v + f * u**2 + chance.normal(0, noise, len(x))
    return np.column_stack([x, y, slope, np.full(len(x), 200.0)])


def ruled_page(bend: Bend) -> NDArray[np.uint8]:
    """Draw level lines on flat paper and bend it: each column is moved to where the bend puts it."""
    x, y = np.meshgrid(np.arange(WIDTH, dtype=float), np.arange(HEIGHT, dtype=float))
    rows = bend.flat_rows(x, y)
    return np.where((rows % 50) < 5, 10, 245).astype(np.uint8)


@pytest.mark.parametrize("slope", [(0.0, 0.2, 0.0, 0.0, 0.0), (0.02, 0.0, 0.25, 0.0, 0.0), (0.0, 0.1, 0.1, 0.1, -0.3)])
def test_there_and_back_is_where_one_was(slope: tuple[float, float, float, float, float]) -> None:
    bend = Bend(slope, WIDTH, HEIGHT, -12.0)
    x, y = np.array([0.0, 130.0, 400.0, 799.0]), np.array([3.0, 500.0, 730.0, 990.0])
    np.testing.assert_allclose(bend.bent_rows(x, bend.flat_rows(x, y)), y, atol=1e-6)


@pytest.mark.parametrize("slope", [(0.0, 0.25, 0.0, 0.0, 0.0), (0.01, 0.05, 0.3, 0.0, 0.0)])
def test_lines_that_converge_or_curl_are_made_level(slope: tuple[float, float, float, float, float]) -> None:
    bend = Bend(slope, WIDTH, HEIGHT)
    page = ruled_page(bend)
    found = bend_of(lines_of(bend, 0.004), 20.0, WIDTH, HEIGHT)
    assert found is not None
    flat = flatten(page, found)
    assert flat.shape[0] >= HEIGHT
    # rows that are a line from side to side, or none, differ most
    assert (flat[200:800, 50:750] < 128).mean(axis=1).std() > 1.5 * (page[200:800, 50:750] < 128).mean(axis=1).std()


@pytest.mark.parametrize("slope", [(0.0, 0.0, 0.0, 0.0, 0.0), (0.05, 0.0, 0.0, 0.0, 0.0), (0.0, 0.01, 0.0, 0.0, 0.0)])
def test_a_flat_page_has_no_bend(slope: tuple[float, float, float, float, float]) -> None:
    assert bend_of(lines_of(Bend(slope, WIDTH, HEIGHT), 0.004), 20.0, WIDTH, HEIGHT) is None


def test_lines_that_do_not_agree_bend_nothing() -> None:
    rows = lines_of(Bend((0.0, 0.0, 0.0, 0.0, 0.0), WIDTH, HEIGHT), 0.1)
    assert bend_of(rows, 20.0, WIDTH, HEIGHT) is None
    assert bend_of(rows[:5], 20.0, WIDTH, HEIGHT) is None


def test_boxes_of_a_flattened_page_are_pixels_of_the_scan() -> None:
    bend = Bend((0.0, 0.25, 0.0, 0.0, 0.0), WIDTH, HEIGHT, -40.0)
    page = np.full((HEIGHT, WIDTH), 245, np.uint8)
    page[300:320, 650:700] = 10
    layout = flattened(Layout(page, WayBack(np.eye(3), WIDTH, HEIGHT), RuleWork((), (), ())), bend)
    ys, xs = np.nonzero(layout.gray < 100)
    box = layout.way_back.box(float(xs.min()), float(ys.min()), float(xs.max()) + 1, float(ys.max()) + 1)
    assert abs(box.x - 650) <= 2
    assert abs(box.y - 300) <= 6
    assert abs(box.bottom - 320) <= 6
    assert layout.remarks == ("lines that converge or curl made level",)

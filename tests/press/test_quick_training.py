"""How the quick network is made: ranges, weights in whole numbers, and a small one from start to end."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import onnx
import pytest

from adminer.reading.models import QUICK
from corpus_demo.press import quick_training
from corpus_demo.press.quick_strips import planes

SCANS = Path(__file__).parents[2] / "corpus_demo/scans"


def test_a_lone_outlier_among_many_values_is_cut_off_and_nought_stays_in_the_range() -> None:
    draw = np.random.default_rng(1)
    low, high = quick_training._range(np.append(draw.uniform(0, 1, 1_000_000), 3.0))
    assert low == 0
    assert 0.9 < high < 2
    low, high = quick_training._range(draw.uniform(-1, 1, 20_000))
    assert (low, high) == pytest.approx((-1, 1), abs=0.01)


def test_fitted_weights_lose_less_than_weights_rounded_one_by_one() -> None:
    draw = np.random.default_rng(2)
    mixed = draw.normal(size=(24, 24))
    whole = mixed @ draw.normal(size=(24, 4_000))
    rounded = np.round(whole / 0.05) * 0.05
    weights = draw.normal(size=(8, 24))
    figures, scale = quick_training._weights(weights, whole, rounded)
    assert np.array_equal(figures, np.round(figures))
    assert np.abs(figures).max() <= quick_training.TOP
    step = np.abs(weights).max(axis=1, keepdims=True) / quick_training.TOP
    plain = np.round(weights / step) * step

    def loss(used: np.ndarray[tuple[int, ...], np.dtype[np.float64]]) -> float:
        return float(np.var(used @ rounded - weights @ whole))

    assert loss(scale[:, None] * figures) < 0.7 * loss(plain)


def test_the_same_seed_takes_and_wears_the_same_lines(tmp_path: Path) -> None:
    (tmp_path / "a.png").symlink_to(SCANS / "quillfeather-1941-january.png")
    one, two, other = (planes(tmp_path, seed, 6) for seed in (1, 1, 2))
    assert all(np.array_equal(a, b) for a, b in zip(one, two, strict=True))
    assert any(a.shape != b.shape or not np.array_equal(a, b) for a, b in zip(one, other, strict=True))
    assert all(plane.shape[:3] == (1, 3, 48) and np.abs(plane).max() <= 1 for plane in one)


def test_a_network_made_on_few_lines_has_the_layers_and_names_of_the_one_that_reads(tmp_path: Path) -> None:
    (tmp_path / "scans").mkdir()
    (tmp_path / "scans/a.png").symlink_to(SCANS / "quillfeather-1941-january.png")
    quick_training.train(tmp_path / "scans", 1, 6, tmp_path / "quick.onnx")
    made, kept = onnx.load(tmp_path / "quick.onnx"), onnx.load(QUICK)
    assert [node.op_type for node in made.graph.node] == [node.op_type for node in kept.graph.node]
    assert {p.key: p.value for p in made.metadata_props} == {p.key: p.value for p in kept.metadata_props}

"""Precision, recall, F1 and calibration against scikit-learn (registry)."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from sklearn.calibration import calibration_curve
from sklearn.metrics import f1_score, precision_score, recall_score

from adminer.score.calibration import calibration_error, reliability_curve
from adminer.score.tally import Tally, one_to_one

COUNT = st.integers(0, 40)


@given(COUNT, COUNT, COUNT)
def test_one_to_one_tallies_agree_with_scikit_learn(right: int, extra: int, missed: int) -> None:
    true = [1] * right + [0] * extra + [1] * missed
    found = [1] * right + [1] * extra + [0] * missed
    tally = one_to_one(right, right + extra, right + missed)
    if right + extra:
        assert tally.precision == pytest.approx(precision_score(true, found))
    if right + missed:
        assert tally.recall == pytest.approx(recall_score(true, found))
        assert tally.f1 == pytest.approx(f1_score(true, found))


def test_a_worked_example_by_hand() -> None:
    # 78 of 82 found dollar prices right, 92 true ones: 2*78 / (82 + 92).
    assert one_to_one(78, 82, 92).f1 == pytest.approx(156 / 174)


def test_nothing_true_has_no_f1_and_nothing_found_has_f1_zero() -> None:
    assert one_to_one(0, 3, 0).f1 is None
    assert one_to_one(0, 0, 3).f1 == 0.0
    assert one_to_one(0, 0, 3).precision is None


def test_tallies_of_pages_add_up_by_counts_not_by_shares() -> None:
    assert one_to_one(1, 1, 1) + one_to_one(0, 3, 1) == Tally(1, 4, 1, 2)


@given(st.lists(st.tuples(st.floats(0, 1), st.booleans()), min_size=1, max_size=200))
def test_reliability_curve_agrees_with_scikit_learn(judged: list[tuple[float, bool]]) -> None:
    # scikit-learn puts a confidence that lies exactly on the border of two bins in the lower one; we in the upper.
    judged = [(c, ok) for c, ok in judged if c in (0.0, 1.0) or (c * 10) % 1 > 1e-9]
    if not judged:
        return
    right, mean = calibration_curve([ok for _, ok in judged], [c for c, _ in judged], n_bins=10)
    curve = reliability_curve(judged)
    assert [one.right for one in curve] == pytest.approx(list(right))
    assert [one.confidence for one in curve] == pytest.approx(list(mean))


def test_calibration_error_by_hand() -> None:
    # Two bins: 4 facts at 0.9, half of them right (gap 0.4), and 1 fact at 0.25 that is wrong (gap 0.25).
    judged = [(0.9, True), (0.9, True), (0.9, False), (0.9, False), (0.25, False)]
    assert calibration_error(reliability_curve(judged)) == pytest.approx((4 * 0.4 + 0.25) / 5)
    assert calibration_error(()) is None

"""The fit of price confidence against scikit-learn (registry), and what the parser makes of it."""

from __future__ import annotations

import random

import numpy as np
import pytest
from sklearn.linear_model import LogisticRegression

from adminer.parsing.prices import confidence
from adminer.parsing.prices.confidence import RAW, log_odds, price_confidence
from adminer.score.calibrate import fit, judge
from adminer.score.found import FoundPage
from tests.score.pages import page, price, true_price, truth


def made_up(count: int = 400) -> list[tuple[float, str, bool]]:
    chance = random.Random(7)
    rows = []
    for _ in range(count):
        raw, form = chance.uniform(0.05, 0.95), chance.choice(["cents_sign", "bare"])
        rows.append((raw, form, chance.random() < (raw if form == "bare" else 0.5 + raw / 2)))
    return rows


def test_the_fit_is_the_ridge_logistic_regression_of_scikit_learn() -> None:
    rows = made_up()
    features = np.array([[log_odds(raw), form == "bare", form == "cents_sign"] for raw, form, _ in rows], dtype=float)
    model = LogisticRegression(C=1.0, tol=1e-8, max_iter=1000).fit(features, [right for _, _, right in rows])
    fitted = fit(rows)
    assert fitted.intercept == pytest.approx(model.intercept_[0], abs=2e-3)
    assert fitted.weight == pytest.approx(model.coef_[0][0], abs=2e-3)
    assert fitted.forms["bare"] == pytest.approx(model.coef_[0][1], abs=2e-3)
    assert fitted.forms["cents_sign"] == pytest.approx(model.coef_[0][2], abs=2e-3)


def test_raw_coefficients_leave_a_confidence_as_it_is(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(confidence, "coefficients", lambda: RAW)
    assert [price_confidence(raw, "bare") for raw in (0.0, 0.25, 0.9, 1.0)] == [0.01, 0.25, 0.9, 0.99]


@pytest.mark.parametrize("form", ["cents_sign", "raised_cents", "sterling"])
def test_the_surer_the_reader_the_surer_the_price(form: str) -> None:
    chances = [price_confidence(raw, form) for raw in (0.1, 0.5, 0.9, 0.99)]
    assert chances == sorted(chances)
    assert 0 < chances[0] < chances[-1] < 1


def test_pages_without_a_complete_truth_do_not_teach() -> None:
    found = page(price("1.00"), price("7.00"))
    assert [right for _, _, right in judge([found], [truth(true_price(1))])] == [True, False]
    assert judge([found], [truth(true_price(1), prices_complete=False)]) == []
    assert judge([FoundPage("b.png", 1, "")], [truth(true_price(1))]) == []

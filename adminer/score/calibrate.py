"""Fit the chance that a price is right on the digitised demo: `python -m adminer.score.calibrate FOLDER TRUTH`.

Never run it on real scans: what they are measured by must not come from them. The fit is a logistic regression with
an offset for each typographic form and a ridge penalty, so that forms seen seldom stay near the mean.
"""

from __future__ import annotations

import sys
from collections.abc import Iterable, Sequence
from pathlib import Path
from unittest import mock

import numpy as np
from scipy.optimize import minimize

from adminer.engine.folder import open_folder
from adminer.parsing.prices import confidence
from adminer.parsing.prices.confidence import COEFFICIENTS, Coefficients, log_odds, price_confidence
from adminer.score.calibration import calibration_error, reliability_curve
from adminer.score.confirmed import kept_readings
from adminer.score.found import FoundPage, found_in_parsed
from adminer.score.prices import MONIES, match_prices
from adminer.score.run import notes_by_file
from adminer.score.straight import parse_all
from adminer.score.truth import TruePage, read_truth

Judged = tuple[float, str, bool]  # raw confidence, form, right


def judge(pages: Iterable[FoundPage], truth: Iterable[TruePage]) -> list[Judged]:
    """Say of every found price of pages with a complete truth whether it is right."""
    by_page = {(page.file, page.leaf): page for page in pages}
    judged: list[Judged] = []
    for true in truth:
        page = by_page.get((true.file, true.leaf))
        if page is None or not true.prices_complete or not true.readable:
            continue
        for money in MONIES:
            matched = match_prices(true, page.prices, money)
            judged += [(pair.found.confidence, pair.found.form, True) for pair in matched.pairs]
            judged += [(extra.confidence, extra.form, False) for extra in matched.extra]
    return judged


def fit(judged: Sequence[Judged], ridge: float = 1.0) -> Coefficients:
    """Fit the coefficients by maximum likelihood with a penalty of ridge/2 x the squares of weight and offsets."""
    forms = sorted({form for _, form, _ in judged})
    features = np.array([[log_odds(raw), *(form == one for one in forms)] for raw, form, _ in judged], dtype=float)
    sign = np.array([1.0 if right else -1.0 for _, _, right in judged])

    def loss(parameters: np.ndarray[tuple[int], np.dtype[np.float64]]) -> float:
        odds = parameters[0] + features @ parameters[1:]
        return float(np.logaddexp(0, -sign * odds).sum() + ridge / 2 * (parameters[1:] ** 2).sum())

    best = minimize(loss, np.zeros(1 + features.shape[1]), method="BFGS").x
    return Coefficients(
        round(float(best[0]), 3),
        round(float(best[1]), 3),
        {form: round(float(offset), 3) for form, offset in zip(forms, best[2:], strict=True)},
    )


def write(fitted: Coefficients, path: Path, prices: int) -> None:
    """Write the coefficients as TOML."""
    lines = [
        f"# Written by python -m adminer.score.calibrate from {prices} demo prices; read by confidence.py",
        f"intercept = {fitted.intercept}",
        f"weight = {fitted.weight}",
        "",
        "[forms]",
        *(f"{form} = {offset}" for form, offset in fitted.forms.items()),
    ]
    path.write_text("\n".join(lines) + "\n", encoding="utf-8")


def main(folder: Path, truth: Path) -> None:
    """Fit on the kept readings of a digitised folder, write the coefficients, print the error before and after."""
    home = open_folder(folder)
    readings = kept_readings(home.readings, home.scans)
    with mock.patch.object(confidence, "coefficients", lambda: confidence.RAW):
        found = [found_in_parsed(page) for page in parse_all(readings, home.names, notes_by_file(home.notes))]
    judged = judge(found, read_truth(truth))
    fitted = fit(judged)
    write(fitted, COEFFICIENTS, len(judged))
    with mock.patch.object(confidence, "coefficients", lambda: fitted):
        after = [(price_confidence(raw, form), right) for raw, form, right in judged]
    before = [(raw, right) for raw, _, right in judged]
    for name, pairs in (("before", before), ("after", after)):
        error = calibration_error(reliability_curve(pairs))
        sys.stdout.write(f"{name}: calibration error {error:.3f} over {len(pairs)} prices\n")


if __name__ == "__main__":
    main(Path(sys.argv[1]), Path(sys.argv[2]))

"""Turn "how sure the reader and the grammar are" into the chance that a price is right."""

from __future__ import annotations

import math
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path
from typing import Final

COEFFICIENTS: Final = Path(__file__).parent.with_name("data") / "price_confidence.toml"
_EDGE: Final = 0.01  # raw confidences nearer to 0 or 1 say no more than this


@dataclass(frozen=True, slots=True)
class Coefficients:
    """Hold a logistic model: log odds of being right = intercept + weight x log odds of the raw confidence + form."""

    intercept: float
    weight: float
    forms: Mapping[str, float]


RAW: Final = Coefficients(0.0, 1.0, {})  # leaves a confidence as it is


@lru_cache(maxsize=1)
def coefficients() -> Coefficients:
    """Read the coefficients that `python -m adminer.score.calibrate` fitted on the demo press's prints."""
    table = tomllib.loads(COEFFICIENTS.read_text(encoding="utf-8"))
    return Coefficients(table["intercept"], table["weight"], table["forms"])


def log_odds(chance: float) -> float:
    """Return the log odds of a chance, which is first kept a hundredth away from 0 and 1."""
    chance = min(max(chance, _EDGE), 1 - _EDGE)
    return math.log(chance / (1 - chance))


def price_confidence(raw: float, form: str) -> float:
    """Return the chance that a price is right (amount and place), given its raw confidence and typographic form.

    A form that the press does not print (shillings, piastres) has the mean of the others. J. C. Platt, "Probabilistic
    outputs for support vector machines", Advances in Large Margin Classifiers, 1999, with an offset for each form.
    """
    known = coefficients()
    odds = known.intercept + known.weight * log_odds(raw) + known.forms.get(form, 0.0)
    return round(1 / (1 + math.exp(-odds)), 3)

"""The months a date is sought in: January 1890 to December 1980, numbered from 0."""

from __future__ import annotations

from datetime import date, timedelta
from typing import Final

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]

FIRST_YEAR: Final = 1890
LAST_YEAR: Final = 1980
MONTHS: Final = (LAST_YEAR - FIRST_YEAR + 1) * 12
_EVERYWHERE: Final = 0.01


def index_of_year(year: int) -> int:
    """Return the number of a year's January; may lie outside the study."""
    return (year - FIRST_YEAR) * 12


def index_of(day: date) -> int:
    """Return the number of a day's month; may lie outside the study."""
    return index_of_year(day.year) + day.month - 1


def first_day(index: int) -> date:
    """Return the first day of a month by its number."""
    return date(FIRST_YEAR + index // 12, index % 12 + 1, 1)


def last_day(index: int) -> date:
    """Return the last day of a month by its number."""
    return first_day(index + 1) - timedelta(days=1)


def log_prior(years: tuple[int, int] | None = None) -> Floats:
    """Return the logarithm of the stated prior: even over all months, or 99 % even over the folder's years.

    `years` are the first and last year the owner expects; 1 % stays spread over the whole study, so that evidence
    can overrule the expectation.
    """
    even = np.full(MONTHS, 1.0 / MONTHS)
    if years is None:
        return _log(even)
    first, last = max(years[0], FIRST_YEAR), min(years[1], LAST_YEAR)
    inside = np.zeros(MONTHS)
    inside[index_of_year(first) : index_of_year(last) + 12] = 1.0
    if not inside.any():
        return _log(even)
    return _log((1 - _EVERYWHERE) * inside / inside.sum() + _EVERYWHERE * even)


def _log(values: Floats) -> Floats:
    return np.asarray(np.log(values), dtype=np.float64)

"""Weeks of adverts, numbered from Monday 31 December 1888, so that runs can be counted on a lattice."""

from __future__ import annotations

from datetime import date, timedelta
from typing import Final

_ORIGIN: Final = date(1888, 12, 31)


def week_of(day: date) -> int:
    """Return the number of the week (Monday to Sunday) of a day."""
    return (day - _ORIGIN).days // 7


def monday_of(week: int) -> date:
    """Return the Monday of a week by its number."""
    return _ORIGIN + timedelta(days=7 * week)


def sunday_of(week: int) -> date:
    """Return the Sunday of a week by its number."""
    return _ORIGIN + timedelta(days=7 * week + 6)

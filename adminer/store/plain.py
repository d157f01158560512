"""Values and words of a scan as plain text for a reader."""

from __future__ import annotations

from decimal import Decimal
from typing import Any


def shown(value: Any) -> str:
    """Return a value as a reader writes it: nothing for empty, probabilities with two places, ISO dates."""
    if value is None:
        return ""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, float):
        return f"{value:.2f}"
    if isinstance(value, Decimal):
        return f"{value.normalize():f}" if value.as_tuple().exponent == -3 else f"{value:f}"
    if isinstance(value, (list, tuple)):
        return ", ".join(shown(item) for item in value)
    return str(value)


def clean(text: str) -> str:
    """Return text without control characters: what a scan says must not steer a terminal."""
    return "".join(c if c.isprintable() else " " for c in text)

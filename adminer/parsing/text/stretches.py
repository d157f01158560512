"""Stretches of a text: whether what stands between two characters is taken by any of those already found."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Protocol


class Stretch(Protocol):
    """Hold the first character of something found in a text and the one after its last."""

    @property
    def start(self) -> int:
        """Return the first character."""

    @property
    def end(self) -> int:
        """Return the character after the last."""


def is_taken(start: int, end: int, by: Iterable[Stretch]) -> bool:
    """Say whether any of the stretches shares a character with those from `start` up to `end`."""
    return any(one.start < end and start < one.end for one in by)

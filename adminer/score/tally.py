"""Counting right, found and true; precision, recall and F1 from the counts."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Tally:
    """Hold counts of one field: found facts that are right, all found, true facts that were found, all true.

    The two "right" counts differ only where one found fact may answer several true ones.
    """

    right: int = 0
    found: int = 0
    met: int = 0
    true: int = 0

    def __add__(self, other: Tally) -> Tally:
        return Tally(self.right + other.right, self.found + other.found, self.met + other.met, self.true + other.true)

    @property
    def precision(self) -> float | None:
        """Return the share of found facts that are right; None when nothing was found."""
        return self.right / self.found if self.found else None

    @property
    def recall(self) -> float | None:
        """Return the share of true facts that were found; None when there are none."""
        return self.met / self.true if self.true else None

    @property
    def f1(self) -> float | None:
        """Return the harmonic mean of precision and recall; None where the truth holds nothing.

        C. J. van Rijsbergen, Information Retrieval, 2nd ed. 1979, chapter 7, with beta = 1.
        """
        if not self.true:
            return None
        p, r = self.precision or 0.0, self.recall or 0.0
        return 2 * p * r / (p + r) if p + r else 0.0


def one_to_one(right: int, found: int, true: int) -> Tally:
    """Return the tally of a field where each found fact answers at most one true fact."""
    return Tally(right, found, right, true)

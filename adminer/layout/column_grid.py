"""The columns of a paper's page, as one measure that repeats: adverts begin and end at them, panels in adverts do not.

Papers sell and set adverts by the column, one or several wide. Where articles run over two columns, adverts may begin
between, so half a measure counts too.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final, Self

import numpy as np

from adminer.layout.paper import Paper
from adminer.layout.rules import centre
from adminer.layout.type_lines import TypeLine

NARROW: Final = 0.4  # of the picture: a line so wide runs over several columns
_FEWEST: Final = 12  # lines of running text that show the columns
_ALIKE: Final = 0.2  # of the usual width: lines that fill their column
_WIDEST: Final = 1.25  # times the width of its lines: a column with its white
_STEPS: Final = 60  # measures tried
_CLEAR: Final = 0.5  # of lines centred on columns, nought to one: less shows none


@dataclass(frozen=True, slots=True)
class ColumnGrid:
    """Hold where the columns of a page begin: every `measure` pixels from `start`."""

    measure: float
    start: float

    @classmethod
    def of(cls, lines: Sequence[TypeLine], paper: Paper, width: float) -> Self | None:
        """Find the columns on which the lines of running text are centred, None where none are clear."""
        text = [n.rect for n in lines if id(n) in paper.running and n.rect[2] - n.rect[0] < NARROW * width]
        if len(text) < _FEWEST:
            return None
        usual = float(np.median([r[2] - r[0] for r in text]))
        full = [r for r in text if abs(r[2] - r[0] - usual) < _ALIKE * usual]
        if not full:  # two widths, and the usual one between them
            return None
        centres = np.array([centre(r)[0] for r in full])
        best, clear = None, _CLEAR
        for measure in np.linspace(usual, _WIDEST * usual, _STEPS):
            turn = np.exp(2j * np.pi * centres / measure).mean()
            if abs(turn) > clear:
                best, clear = (
                    cls(float(measure), float(np.angle(turn) / (2 * np.pi) * measure + measure / 2)),
                    abs(turn),
                )
        return best

    def off(self, at: float) -> float:
        """Return how far from the end of a column, or from its middle, a place is, in measures."""
        half = self.measure / 2
        return abs((at - self.start + half / 2) % half - half / 2) / self.measure

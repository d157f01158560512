"""Where evidence a person added contradicts all the rest, the answer says so and is no surer than the trust given."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

import numpy as np
from numpy.typing import NDArray

from adminer.dating.edtf import bounds_of
from adminer.dating.evidence.base import Clue
from adminer.dating.months import MONTHS, first_day, index_of
from adminer.dating.personal import KIND, Added, told_by
from adminer.dating.posterior import combine

Floats = NDArray[np.float64]
_AGAINST: Final = 20.0  # another month is so many times likelier by the rest than any added one (judgement, no source)


def held_to_trust(log_prior: Floats, clues: Sequence[Clue], added: Sequence[Added]) -> tuple[Floats, tuple[str, ...]]:
    """Return the posterior over months, and a sentence for each added evidence that the rest contradicts.

    Contradicted dates get at most the trust of their entry; the rest is shared out as the other evidence says.
    """
    posterior = combine(log_prior, clues)
    told = []
    for entry in added:
        others = [clue for clue in clues if (clue.kind, clue.text) != (KIND, told_by(entry))]
        if len(others) == len(clues):
            continue  # struck out
        inside = _months(entry)
        without = combine(log_prior, others)
        rival = int(np.argmax(without))
        if without[rival] < _AGAINST * without[inside].max(initial=0.0):
            continue
        against = max(others, key=lambda clue: clue.log_likelihood[rival] - clue.log_likelihood[inside].max())
        told.append(
            f"CONTRADICTION: '{told_by(entry)}' against {against.kind} '{against.text}', by which it is "
            f"{first_day(rival):%Y-%m}; so no surer than the {entry.trust:.0%} you trust it"
        )
        if posterior[inside].sum() > entry.trust:
            posterior = np.where(
                inside,
                posterior * entry.trust / posterior[inside].sum(),
                without * (1 - entry.trust) / without[~inside].sum(),
            )
    return posterior, tuple(told)


def _months(entry: Added) -> NDArray[np.bool_]:
    bounds = bounds_of(entry.dates)
    first = index_of(bounds.earliest) if bounds.earliest else 0
    last = index_of(bounds.latest) if bounds.latest else MONTHS - 1
    months = np.arange(MONTHS)
    return np.asarray((months >= first) & (months <= last))

"""The choices that the weights of items are learned from, kept in one file without a word of the adverts they are of.

Each row is a text that might have named what some prices are for: its traits by number, and the share of those prices
that it is right for. What is kept so can be learned from again by anyone; the pages cannot be told from it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

import numpy as np

from adminer.parsing.items.traits import Traits


@dataclass(frozen=True, slots=True)
class Judged:
    """Hold the texts among which a group of prices chose, the share of its prices each is right for, and its weight.

    `hand` numbers who printed the advert: weights are tried on hands they were not learned from.
    """

    traits: tuple[Traits, ...]
    right: tuple[float, ...]
    weight: float
    hand: int = 0


def save_choices(judged: Sequence[Judged], path: Path) -> None:
    """Write choices as one compressed file of arrays."""
    rows = [{name: value for name, value in traits.items() if value} for one in judged for traits in one.traits]
    names = sorted({name for row in rows for name in row})
    number = {name: i for i, name in enumerate(names)}
    np.savez_compressed(
        path,
        names=np.array(names),
        texts=np.array([len(one.traits) for one in judged], np.uint8),
        weight=np.array([one.weight for one in judged], np.float32),
        hand=np.array([one.hand for one in judged], np.uint8),
        right=np.array([share for one in judged for share in one.right], np.float16),
        held=np.array([len(row) for row in rows], np.uint8),
        trait=np.array([number[name] for row in rows for name in row], np.uint16),
        value=np.array([value for row in rows for value in row.values()], np.float16),
    )


def load_choices(path: Path) -> list[Judged]:
    """Read choices back, their values to the three figures that were kept."""
    with np.load(path) as kept:
        names = [str(name) for name in kept["names"]]
        told = [(names[t], float(v)) for t, v in zip(kept["trait"], kept["value"], strict=True)]
        ends = np.cumsum(kept["held"], dtype=np.int64)
        rows = [dict(told[end - held : end]) for end, held in zip(ends, kept["held"].astype(int), strict=True)]
        right = [float(share) for share in kept["right"]]
        lasts = np.cumsum(kept["texts"], dtype=np.int64)
        counts = kept["texts"].astype(int)
        return [
            Judged(tuple(rows[last - count : last]), tuple(right[last - count : last]), float(weight), int(hand))
            for last, count, weight, hand in zip(lasts, counts, kept["weight"], kept["hand"], strict=True)
        ]

"""Prices of the same line and piece in dated adverts of the file, and the file's own level of tableware prices.

A promotion keeps its price for weeks or months; over years prices of a line follow the consumer price level with a
spread that grows. So each dated price speaks for the months near it, its weight fading with a half-life of a year.
Where no dated advert has the line, the same piece of any line gives a broad level. Spreads are judgement, no source.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import lgamma, log, pi
from typing import Final

import numpy as np
from numpy.typing import NDArray

from adminer.dating.evidence.base import Case, Clue, Context, DatedPrice, ReadPrice
from adminer.dating.evidence.shapes import faded
from adminer.dating.months import MONTHS
from adminer.dating.price_tables import log_index

Floats = NDArray[np.float64]

KIND: Final = "same line's prices"
LEVEL_KIND: Final = "price level of tableware"
_SOURCE: Final = "dated adverts of this file, moved by the consumer price index (all items)"
_LEAST_FOR_LEVEL: Final = 6
_MONTHS: Final = np.arange(MONTHS)


def key_of(line_id: str, piece: str, condition: str) -> str:
    """Return the key under which dated prices of one line, piece and kind of price are gathered."""
    return (
        f"{line_id}|{piece}|{'card' if condition in ('cardholder', 'coupon', 'stamps', 'with_purchase') else condition}"
    )


def find(case: Case, context: Context) -> Iterator[Clue]:
    """Yield a clue for each line with dated prices elsewhere in the file, else one of the general level."""
    compared: dict[str, dict[str, tuple[ReadPrice, Sequence[DatedPrice]]]] = {}
    for price in case.prices:
        if price.line_id is None or price.piece is None or price.role != "price" or price.amount <= 0:
            continue
        key = key_of(price.line_id, price.piece, price.condition)
        dated = [d for d in context.dated.get(key, ()) if d.clipping_id != case.clipping_id]
        if dated:
            compared.setdefault(price.line_id, {}).setdefault(key, (price, dated))
    for pieces in compared.values():
        yield _of_line(list(pieces.values()))
    if not compared:
        yield from _level(case, context)


def _of_line(pieces: Sequence[tuple[ReadPrice, Sequence[DatedPrice]]]) -> Clue:
    # prices of one line move together: its pieces are one witness, whose words are their mean
    together = np.mean([_following(log(price.amount), dated) for price, dated in pieces], axis=0)
    boxes = [price.box for price, _ in pieces if price.box is not None]
    box = boxes[0] if boxes else None
    for other in boxes[1:]:
        box = box.joined(other) if box else other
    shown = ", ".join(f"'{price.item.strip()}' at {price.amount:.2f}" for price, _ in pieces[:4])
    count = sum(len(dated) for _, dated in pieces)
    text = f"{shown} against {count} dated price{'s' if count > 1 else ''} of the same line and piece"
    return Clue(KIND, text, _SOURCE, faded(np.asarray(together), 0.9), box)


def _following(log_amount: float, dated: Sequence[DatedPrice]) -> Floats:
    level = log_index("all_items")
    at = np.array([d.month for d in dated])
    expected = np.array([d.log_amount for d in dated])
    apart = np.abs(_MONTHS[:, None] - at[None, :]) / 12
    mean = expected[None, :] + 0.7 * (level[:, None] - level[np.clip(at, 0, MONTHS - 1)][None, :])
    # an odd ending or another shop of the chain moves a price of 39 cents by four
    spread = np.hypot(0.10, 0.06 * apart)
    z = (log_amount - mean) / spread
    chance = np.exp(_student(z, 3.0) - np.log(spread))
    weights = 0.5**apart + 1e-6
    return np.asarray(np.log((weights * chance).sum(axis=1) / weights.sum(axis=1)))


def _level(case: Case, context: Context) -> Iterator[Clue]:
    best: tuple[ReadPrice, Sequence[DatedPrice]] | None = None
    for price in case.prices:
        if price.piece is None or price.role != "price" or price.condition not in ("everyone", "without_card"):
            continue
        known = [d for d in context.levels.get(price.piece, ()) if d.clipping_id != case.clipping_id]
        if price.amount > 0 and len(known) >= _LEAST_FOR_LEVEL and (best is None or len(known) > len(best[1])):
            best = price, known
    if best is None:
        return
    price, others = best
    level = log_index("all_items")
    real = np.array([d.log_amount - level[min(max(d.month, 0), MONTHS - 1)] for d in others])
    spread = max(0.35, float(real.std()) * 1.3)
    z = (log(price.amount) - level - float(np.median(real))) / spread
    yield Clue(
        LEVEL_KIND,
        f"'{price.item.strip()}' at {price.amount:.2f} against {len(others)} dated prices of that piece of any line",
        _SOURCE,
        faded(np.asarray(_student(z, 4.0)), 0.85),
        price.box,
    )


def _student(z: Floats, degrees: float) -> Floats:
    norm = lgamma((degrees + 1) / 2) - lgamma(degrees / 2) - 0.5 * log(degrees * pi)
    return np.asarray(norm - (degrees + 1) / 2 * np.log1p(z * z / degrees))

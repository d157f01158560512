"""Match found prices with true ones: amount right, and in the right place where the truth has places."""

from __future__ import annotations

import re
from dataclasses import dataclass
from decimal import Decimal
from typing import Final, Literal

import numpy as np
from scipy.optimize import linear_sum_assignment

from adminer.records import Box
from adminer.score.alike import ALIKE, similarity, strict_similarity
from adminer.score.found import FoundPrice
from adminer.score.said import goods_said
from adminer.score.tally import Tally, one_to_one
from adminer.score.truth import TruePage, TruePrice

Money = Literal["dollars", "sterling", "piastres"]
MONIES: Final[tuple[Money, ...]] = ("dollars", "sterling", "piastres")
_MONEY_OF: Final[dict[str, Money]] = {
    "USD": "dollars",
    "CAD": "dollars",  # the same dollars and cents; the advert alone does not say whose
    "GBP": "sterling",
    "AUP": "sterling",  # likewise the same shillings and pence
    "EGP-piastre": "piastres",
}
_WITHOUT_OTHER: Final = re.compile(
    r"\b(?:without|w/o|no)\b.*\b(?:coupons?|tapes?|purchases?|orders?|stamps?)\b", re.IGNORECASE
)
_PLACE: Final = Decimal("0.0001")  # a penny is 0.0041666...: compare to the fourth place
_SHARED: Final = 0.25  # of the smaller box: a figure box and a figure-with-sign box still meet, neighbours do not


@dataclass(frozen=True, slots=True)
class Pair:
    """Hold a true price and the found one that answers it."""

    true: TruePrice
    found: FoundPrice

    @property
    def item_alike(self) -> bool:
        """Say whether the item text is right, too, words that our role and unit answer aside."""
        return item_similarity(self.true, self.found) >= ALIKE

    @property
    def item_strictly_alike(self) -> bool:
        """Say whether the item text is right word for word."""
        return strict_similarity(self.true.item_text, self.found.item) >= ALIKE


@dataclass(frozen=True, slots=True)
class Matched:
    """Hold the outcome of one page in one money."""

    pairs: tuple[Pair, ...]
    missed: tuple[TruePrice, ...]
    extra: tuple[FoundPrice, ...]
    complete: bool

    @property
    def _judged(self) -> int:
        return len(self.pairs) + (len(self.extra) if self.complete else 0)

    def prices(self) -> Tally:
        """Count prices with the right amount and place; extra ones are no error where the truth is incomplete."""
        return one_to_one(len(self.pairs), self._judged, len(self.pairs) + len(self.missed))

    def items(self, *, strict: bool = False) -> Tally:
        """Count prices with the right amount, place and item text."""
        right = sum(pair.item_strictly_alike if strict else pair.item_alike for pair in self.pairs)
        return one_to_one(right, self._judged, len(self.pairs) + len(self.missed))

    def terms(self) -> Tally:
        """Count prices printed under a condition whose condition was found (cardholder, coupon, former ...).

        The price without a coupon, tapes or a purchase is everybody's, as "without card" is not where cards are given:
        a truth that calls it without_card asks for none of our conditions.
        """
        right = sum(condition_of(p.true) == p.found.condition != "everyone" for p in self.pairs)
        true = [price for price in (*(p.true for p in self.pairs), *self.missed) if price.condition]
        judged = [*(p.found for p in self.pairs), *(self.extra if self.complete else ())]
        return one_to_one(
            right,
            sum(price.condition != "everyone" for price in judged),
            sum(condition_of(price) != "everyone" for price in true),
        )


def item_similarity(true: TruePrice, found: FoundPrice) -> float:
    """Return how alike the item texts of two prices are, 0 to 1, with or without what the true one says of its sum."""
    said = goods_said(true.item_text, found)
    return max(similarity(text, found.item) for text in {true.item_text, said})


def condition_of(price: TruePrice) -> str:
    """Return the condition of a true price in our names: "without coupon" binds nobody."""
    if price.condition == "without_card" and _WITHOUT_OTHER.search(price.condition_text or ""):
        return "everyone"
    return price.condition or "everyone"


def money_of(currency: str) -> Money | None:
    """Return which money a currency code counts as; None for one that is not scored."""
    return _MONEY_OF.get(currency)


def same_amount(one: Decimal, other: Decimal) -> bool:
    """Say whether two amounts agree to the fourth decimal place, rounded or cut off there."""
    return abs(one - other) < _PLACE


def same_place(one: Box | None, other: Box) -> bool:
    """Say whether two boxes share a quarter of the smaller; true where the truth has no box."""
    if one is None:
        return True
    return one.overlap(other) >= _SHARED * max(min(one.area, other.area), 1)


def match_prices(page: TruePage, found: tuple[FoundPrice, ...], money: Money) -> Matched:
    """Pair true and found prices of one page one to one, as many as can be, then with the most alike items."""
    true = [price for price in page.prices if money_of(price.currency) == money]
    mine = [price for price in found if money_of(price.currency) == money]
    worth = np.zeros((len(true), len(mine)))
    for i, wanted in enumerate(true):
        for j, got in enumerate(mine):
            if same_amount(wanted.amount, got.amount) and same_place(wanted.box, got.box):
                worth[i, j] = 10 + item_similarity(wanted, got)
    rows, columns = linear_sum_assignment(worth, maximize=True)
    chosen = {int(i): int(j) for i, j in zip(rows, columns, strict=True) if worth[i, j] > 0}
    taken = set(chosen.values())
    return Matched(
        pairs=tuple(Pair(true[i], mine[j]) for i, j in chosen.items()),
        missed=tuple(price for i, price in enumerate(true) if i not in chosen),
        extra=tuple(price for j, price in enumerate(mine) if j not in taken),
        complete=page.prices_complete,
    )

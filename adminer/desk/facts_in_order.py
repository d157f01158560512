"""The facts of a clipping in the order in which a look is worth most.

Worth of a look = how unsure the reading is, times how much hangs on the fact. Weights are our own
choice, no source: who advertised and when bears on every offer of the advert; a named line, a set or a
price with terms is what this file is kept for; a loaf of bread is read along with it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final, Literal

from adminer.desk.desk import mark_of
from adminer.records import Advert, Box, Offer
from adminer.store.overlay import Overlaid

ADVERT_WEIGHT: Final = 4.0
LINE_WEIGHT: Final = 3.0
TERMS_WEIGHT: Final = 2.0
PIECE_WEIGHT: Final = 2.0
PLAIN_WEIGHT: Final = 1.0
NEVER_SURE: Final = 0.03  # even a certain reading is worth a little look

# the same order in SQL, for the list of clippings; kept beside its twin so that they change together
WORTH_SQL: Final = f"""
    (1 - coalesce(o.confidence, 0) + {NEVER_SURE}) * greatest(
        CASE WHEN o.line IS NOT NULL OR o.pieces > 1 THEN {LINE_WEIGHT} ELSE {PLAIN_WEIGHT} END,
        CASE WHEN o.piece_or_set IS NOT NULL THEN {PIECE_WEIGHT} ELSE {PLAIN_WEIGHT} END)
"""


@dataclass(frozen=True, slots=True)
class Fact:
    """Hold one fact as the page shows it: an offer, or the head of an advert."""

    kind: Literal["offer", "advert"]
    id: str
    box: Box
    status: str
    mark: str
    worth: float
    advert_no: int
    offer: Offer | None = None
    advert: Advert | None = None

    @property
    def open(self) -> bool:
        """Say whether no person has looked at it yet."""
        return self.status == "read"


def facts_of(laid: Overlaid) -> list[Fact]:
    """Return all facts of a clipping: first those no person has looked at, by worth, then the others by place."""
    facts: list[Fact] = []
    for number, advert in enumerate(laid.page.adverts, 1):
        status = "confirmed" if advert.advert_id in laid.checked else "read"
        unsure = _unsure(advert)
        facts.append(
            Fact("advert", advert.advert_id, advert.box, status, mark_of(advert), unsure, number, advert=advert)
        )
        facts.extend(
            Fact("offer", offer.offer_id, offer.box, offer.status, mark_of(offer), worth_of(offer), number, offer=offer)
            for offer in advert.offers
        )
    return sorted(facts, key=lambda f: (not f.open, -f.worth if f.open else 0.0, f.box.y, f.box.x, f.id))


def worth_of(offer: Offer) -> float:
    """Return how much a look at an offer is worth, 0 to about 3."""
    weight = PLAIN_WEIGHT
    if offer.piece_or_set:
        weight = max(weight, PIECE_WEIGHT)
    if any(price.condition != "everyone" for price in offer.prices):
        weight = max(weight, TERMS_WEIGHT)
    if offer.line or (offer.pieces or 0) > 1:
        weight = max(weight, LINE_WEIGHT)
    return (1 - offer.confidence + NEVER_SURE) * weight


def next_open(facts: Sequence[Fact], after: str | None = None) -> Fact | None:
    """Return the open fact most worth a look, other than the one just left."""
    return next((fact for fact in facts if fact.open and fact.id != after), None)


def _unsure(advert: Advert) -> float:
    sure = advert.confidence * (advert.retailer.score if advert.retailer else 0.3)
    if advert.valid_from is None:
        sure *= 0.8
    return (1 - sure + NEVER_SURE) * (ADVERT_WEIGHT if advert.offers else PLAIN_WEIGHT)

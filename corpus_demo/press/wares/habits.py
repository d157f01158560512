"""The habits of one printer: where he sets the name of a thing, what is told of it and its price, in which type."""

from __future__ import annotations

from dataclasses import dataclass
from random import Random
from typing import Literal

Arrangement = Literal["run_in", "leading", "row", "over", "under", "left", "right", "ends", "caption", "table"]
ARRANGEMENTS: tuple[tuple[Arrangement, int], ...] = (
    ("run_in", 8), ("leading", 3), ("row", 4), ("over", 7), ("under", 3), ("left", 2), ("right", 3), ("ends", 4), ("caption", 3), ("table", 2),
)  # fmt: skip

NARROWEST = 9.0  # em of a card


@dataclass(frozen=True, slots=True)
class Habits:
    """Hold how one printer sets the offers of an advert; sizes in em of body type."""

    arrangement: Arrangement
    case: Literal["as is", "capitals", "words"]
    bold: bool
    name: float
    detail: float
    price: float
    between: str  # what parts the name from what is told of it
    align: Literal["left", "center"]
    across: int  # columns
    frame: Literal["none", "box", "over"]  # what is ruled around an offer
    told: float  # chance of each further detail
    former: float  # chance of a former price
    former_first: bool  # before the price asked
    talk: float  # chance of words that name nothing, before an offer
    pictures: float
    loose: float  # em between offers

    @property
    def ruled(self) -> bool:
        """Say whether a table has rules between its rows."""
        # by the coin of another habit: one more throw would change all sheets that the weights of items were learned from
        return self.former_first


def draw_habits(rng: Random, measure: float) -> Habits:
    """Draw the habits of a printer for a sheet of a measure in em: runs of words stand small, names alone often larger."""
    arrangement = rng.choices([a for a, _ in ARRANGEMENTS], [weight for _, weight in ARRANGEMENTS])[0]
    alone = arrangement not in ("run_in", "leading", "row", "table")
    big = arrangement in ("under", "left", "right", "caption") or (arrangement == "over" and rng.random() < 0.5)
    widest = max(1, int(measure / (NARROWEST if alone else 2 * NARROWEST)))
    return Habits(
        arrangement=arrangement, case=rng.choice(("as is", "as is", "capitals", "words")), bold=rng.random() < 0.6,
        name=rng.choice((1.0, 1.2, 1.45, 1.8, 2.3)) if alone else rng.choice((1.0, 1.0, 1.0, 1.15)), detail=rng.choice((0.85, 1.0, 1.0)), price=rng.uniform(1.6, 4.2) if big else rng.choice((1.0, 1.0, 1.25, 1.6)),
        between=rng.choice((", ", ". ", " — ", "; ", " ")), align=rng.choice(("left", "center")) if alone else "left", across=min(rng.choices((1, 2, 3, 4), (4, 6, 4, 2 if alone else 0))[0], widest), frame=rng.choices(("none", "box", "over"), (6, 3, 2) if alone else (1, 0, 0))[0],
        told=rng.choice((0.2, 0.5, 0.7, 0.8)), former=rng.choice((0.0, 0.0, 0.15, 0.6)), former_first=rng.random() < 0.5, talk=rng.choice((0.0, 0.1, 0.3)),
        pictures=rng.choice((0.0, 0.1, 0.4)), loose=rng.choice((0.1, 0.35, 0.8)),
    )  # fmt: skip

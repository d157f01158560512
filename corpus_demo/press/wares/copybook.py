"""Draws what an advert of many wares says: names, descriptions, prices, and talk that names no goods on offer."""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from decimal import Decimal
from functools import cache
from pathlib import Path
from random import Random
from typing import Any

from ..facts import Item, Tag
from ..offers import charm

DATA = Path(__file__).parents[1] / "data" / "wares.toml"
SYLLABLES = (
    "bar",
    "cor",
    "del",
    "fen",
    "gal",
    "hol",
    "jas",
    "kel",
    "lor",
    "mar",
    "nor",
    "os",
    "pel",
    "quin",
    "ros",
    "sal",
    "tor",
    "ul",
    "ver",
    "wes",
    "yar",
    "zel",
)
ENDS = ("a", "co", "dale", "den", "ex", "ine", "mont", "o", "ton", "vane", "wick", "y")  # fmt: skip
SLOGANS = (
    "Bargains in the Basement", "Great Removal Sale", "Values You Cannot Match", "Friday and Saturday Only", "Save While You Can", "Everything Must Go",
    "Our Buyers Have Been to Market", "Prices Cut Again", "Month-End Clearance", "Hundreds of Other Items Not Listed", "A Sale of Needed Things", "Early Birds Choose First",
    "Goods of Quality at a Price", "Down Come the Prices", "See Our Windows", "Something for Every Home",
)  # fmt: skip
NOTES = (
    "Mail orders filled.", "Second floor.", "While they last.", "None sent on approval.", "Charge accounts invited.", "Bring this advertisement with you.", "Free delivery within ten miles.",
    "Quantities limited.", "No telephone orders.", "Ask our salespeople.", "Doors open at nine.", "Not all sizes in every color.", "Money back if not satisfied.",
)  # fmt: skip
TALK = (
    "We bought the whole stock of a maker who needed cash, and the saving is yours.", "It is no trouble for us to show goods, so come and look.", "The crowds of last week have left many odd lots.",
    "Thrifty people know this store.", "You have never bought better for so little.", "Every customer is a friend here.", "The weather has been against us and we must sell.",
    "Compare them with what you see elsewhere at twice as much.", "There is no need to go to the city.", "Such offers come but once a season.", "Honest goods at honest prices have built this business.",
    "A postal card brings our large book with pictures of all we sell.", "Think what that means to your purse.", "The reason is simple.", "We ask you to be the judge.",
)  # fmt: skip
BEFORE = (
    "sale price",
    "special",
    "our price",
    "now",
    "only",
    "at",
    "choice",
    "this week",
    "to close",
    "your choice for",
    "price",
)
FORMER = ("Reg.", "Regularly", "Was", "Worth", "Value", "Formerly", "Usual price", "Always sold at")
SIZES = (
    ("small", "large"), ("2-qt.", "3-qt.", "4-qt."), ("plain", "fancy"), ("pint", "quart"), ("single", "double"), ("boys'", "men's"),
    ("9 x 12", "11 x 12"), ("in oak", "in walnut"), ("No. 7", "No. 8", "No. 9"), ("cotton", "silk"), ("white", "colors"),
)  # fmt: skip
UNITS = (None, None, None, None, None, "each", "pair", "set", "doz", "lb")


@dataclass(frozen=True, slots=True)
class Ware:
    """Hold one thing on offer: its name as a reader would say it, what is told of it, its prices."""

    item: Item
    details: tuple[str, ...]
    before: str  # words of selling that lead to the price, often none


@cache
def trades() -> dict[str, dict[str, Any]]:
    """Read what each trade sells."""
    return tomllib.loads(DATA.read_text(encoding="utf-8"))


def brand(rng: Random) -> str:
    """Make up a name that no list knows."""
    return (rng.choice(SYLLABLES) + rng.choice(("", rng.choice(SYLLABLES))) + rng.choice(ENDS)).capitalize()


def ware(rng: Random, trade: str, *, told: float, former: float, sized: float = 0.0) -> Ware:
    """Draw a thing on offer; `told` is the chance of each further detail, among which talk that sells may stand.

    `former` is the chance of a former price, `sized` that of sizes at prices of their own.
    """
    words = trades()[trade]
    kind, name = rng.choice(words["kinds"]), rng.choice(words["names"])
    forms = (
        (f"{kind} {name}", 8), (name, 4), (f"{brand(rng)} {name}", 4), (f"{kind} {rng.choice(words['kinds']).lower()} {name}", 2),
        (rng.choice(words["titles"]), 2), (f"{brand(rng)} {rng.choice(('No. 4', 'Special', 'Junior', 'De Luxe', 'Outfit', 'Combination'))}", 1), (f"{name} and {rng.choice(words['names'])}", 1),
    )  # fmt: skip
    text = rng.choices([form for form, _ in forms], [weight for _, weight in forms])[0]
    details: list[str] = []
    while len(details) < 5 and rng.random() < told:
        details.append(rng.choice([d for d in words["details"] if d not in details]))
    if details and rng.random() < 0.25:
        details.insert(
            0,
            rng.choice((f"{kind.lower()} {name}", f"these {name}", f"a {name}"))
            + f" {rng.choice(('of great merit', 'for every day', 'you will like', 'at a saving'))}",
        )
    if details and rng.random() < told / 4:
        details.insert(rng.randint(0, len(details)), rng.choice(TALK).rstrip("."))
    return Ware(
        _priced(rng, words, text[0].upper() + text[1:], former, sized),
        tuple(details),
        rng.choice(BEFORE) if rng.random() < 0.25 else "",
    )


def _priced(rng: Random, words: dict[str, Any], text: str, former: float, sized: float) -> Item:
    cents = words["low"] * (words["high"] / words["low"]) ** rng.random()
    now = charm(cents, rng) if cents < 1500 or rng.random() < 0.6 else Decimal(round(cents / 100))
    if rng.random() < sized:
        sizes = rng.choice(SIZES)
        steps = [charm(float(now) * 100 * (1 + 0.4 * k), rng) for k in range(len(sizes))]
        return Item(text, tuple(Tag(a, label=s, item=f"{text} {s}") for a, s in zip(steps, sizes, strict=True)))
    tag = Tag(now, 1, rng.choice(UNITS))
    if rng.random() < 1 / 16:
        count = rng.choice((2, 3, 4, 6))
        tag = Tag(charm(float(now) * 80 * count, rng), count)
    if rng.random() >= former:
        return Item(text, (tag,))
    was = charm(float(now) * 100 * rng.uniform(1.3, 1.9), rng)
    return Item(text, (tag, Tag(was, 1, None, "former", rng.choice(FORMER), "reference")))

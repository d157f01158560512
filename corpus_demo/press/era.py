"""What the time of an advert leaves in its words: address, telephone, rations, taxes, holidays, wares of the day.

Boundaries of postal zones, ZIP codes, telephone style, rationing, price ceilings and the tax on silver plate are historical;
how often a press prints them is this press's own choice. From memory where no year is given in a comment.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, timedelta
from random import Random

from dateutil.easter import easter

from .facts import Term

STREETS = (
    "Main Street",
    "Mill Lane",
    "Harbor Street",
    "Elm Street",
    "Station Road",
    "Front Street",
    "Depot Avenue",
    "Market Square",
)
EXCHANGES = ("HArbor", "ORchard", "MIdway", "GArden", "RIver", "UNion")
ZONES_FROM = date(1943, 5, 1)
ZIP_FROM = date(1963, 7, 1)


@dataclass(frozen=True, slots=True)
class Town:
    """Hold an invented town; only a large one has postal zones."""

    name: str
    large: bool
    zip_code: str


def addresses(town: Town, day: date, rng: Random) -> tuple[str, ...]:
    """Write the address and, often, the telephone number as they looked on a day."""
    street = f"{rng.randint(2, 480)} {rng.choice(STREETS)}"
    place = town.name
    if day >= ZIP_FROM and rng.random() < 0.3 + 0.4 * (day.year > 1963):
        place += f" {town.zip_code}"
    elif town.large and day >= ZONES_FROM and rng.random() < 0.45:
        place += f" {rng.randint(2, 19)}"
    lines = [f"{street}, {place}"]
    if rng.random() < 0.55:
        lines.append(f"Phone {_telephone(town, day, rng)}")
    return tuple(lines)


def _telephone(town: Town, day: date, rng: Random) -> str:
    last = rng.randint(1000, 9999)
    if not town.large and day.year < 1955:
        return str(rng.randint(12, 999)) if day.year < 1948 else f"{rng.randint(2, 9)}-{last}"
    if day.year >= 1959 and rng.random() < (day.year - 1957) * 0.12:
        return f"{rng.randint(222, 998)}-{last}"
    exchange = rng.choice(EXCHANGES)
    if day.year >= 1948 or (day.year > 1936 and rng.random() < 0.2):
        name = exchange if rng.random() < 0.5 else exchange[:2]
        return f"{name} {rng.randint(2, 9)}-{last}"
    return f"{exchange} {last}"


def holiday(day: date, rng: Random) -> str | None:
    """Name a holiday that the head of an advert in the weeks before it would mention."""
    year = day.year
    november = date(year, 11, 1)
    first_thursday = november + timedelta((3 - november.weekday()) % 7)
    thanksgiving = first_thursday + timedelta(21)
    feasts = (
        (easter(year), "Easter Values"), (thanksgiving, "Thanksgiving Feast"), (date(year, 12, 25), "Christmas Savings"),
        (date(year, 7, 4), "Fourth of July Picnic"), (date(year, 2, 22), "Washington's Birthday Sale"), (date(year, 5, 30), "Decoration Day Foods"),
    )  # fmt: skip
    for feast, words in feasts:
        if 0 <= (feast - day).days <= 12 and rng.random() < 0.5:
            return words
    return None


def remarks(day: date, rng: Random, *, food: bool, plate: bool) -> tuple[Term, ...]:
    """Write the notices of the day: ration points, ceilings, bonds, taxes."""
    found: list[Term] = []
    if food and date(1943, 3, 29) <= day <= date(1945, 11, 23) and rng.random() < 0.5:
        found.append(
            Term(
                "guarantee",
                rng.choice(
                    ("Bring your red points", "No points needed for fresh vegetables", "Point values subject to change")
                ),
            )
        )
    if food and date(1942, 5, 18) <= day <= date(1946, 11, 9) and rng.random() < 0.4:
        found.append(
            Term("notice", rng.choice(("All prices at or below OPA ceiling", "Ceiling prices posted in our store")))
        )
    if date(1942, 1, 1) <= day <= date(1945, 10, 1) and rng.random() < 0.45:
        found.append(Term("notice", rng.choice(("Buy War Bonds and Stamps", "Buy more War Stamps"))))
    if plate and date(1941, 10, 1) <= day <= date(1954, 3, 31):
        rate = "20%" if day >= date(1944, 4, 1) else "10%"
        found.append(Term("tax", f"plus {rate} Federal tax"))
    if day.year >= 1957 and rng.random() < 0.25:
        found.append(Term("notice", rng.choice(("Detergent-proof decoration", "Safe in the automatic dishwasher"))))
    if food and day.year >= 1954 and rng.random() < 0.3:
        found.append(Term("stamps", rng.choice(("Trading stamps with every purchase", "Double stamps Wednesday"))))
    return tuple(found)

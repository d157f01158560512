"""What the time of an advert leaves in its words: address, telephone, rations, taxes, holidays, wares of the day.

Boundaries of postal zones, ZIP codes, telephone style, rationing, price ceilings and the tax on silver plate are historical;
how often a press prints them is this press's own choice. From memory where no year is given in a comment. What real shops
did to those who date their adverts is done here too: old slugs stood for years, towns changed their telephones when they
could, and a wording had no first day.
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


# A slug with address and telephone was cut once and set for years. trade.md A.1 names a stamp three years out of date
# and zones still printed two years after ZIP codes; how many shops kept one, and for how long, is common practice.
STANDING, STANDING_YEARS = 0.4, 4


@dataclass(frozen=True, slots=True)
class Town:
    """Hold an invented town; only a large one has postal zones; its telephones change when its exchange does."""

    name: str
    large: bool
    zip_code: str
    dial_year: int = (
        1948  # two letters and five figures: New York 1930, the nation from 1947; else local (trade.md A.1)
    )
    figures_year: int = 1960  # all figures: some towns from 1958, most by the late 1960s (trade.md A.1)


def addresses(town: Town, day: date, rng: Random) -> tuple[str, ...]:
    """Write the address and, often, the telephone number as the shop's slug has them, set that day or years before."""
    if rng.random() < STANDING:
        day -= timedelta(rng.randint(0, 365 * STANDING_YEARS))
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
    if day.year >= town.figures_year:
        return f"{rng.randint(222, 998)}-{last}"
    exchange = rng.choice(EXCHANGES)
    if day.year >= town.dial_year:
        name = exchange if rng.random() < 0.5 else exchange[:2]
        return f"{name} {rng.randint(2, 9)}-{last}"
    if town.large:
        return f"{exchange} {last}"
    return str(rng.randint(12, 999)) if day.year < town.dial_year - 7 else f"{rng.randint(2, 9)}-{last}"


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
        # Christmas sells from Thanksgiving on, other feasts for less than two weeks; common practice
        if 0 <= (feast - day).days <= (30 if feast.month == 12 else 12) and rng.random() < 0.5:
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
    # the second control, 26 January 1951 to March 1953 (trade.md A.2), bound grocers less visibly
    if food and date(1951, 1, 26) <= day <= date(1953, 3, 31) and rng.random() < 0.15:
        found.append(
            Term("notice", rng.choice(("All prices at or below OPS ceiling", "Ceiling prices posted in our store")))
        )
    # such claims came in about the mid-1950s (trade.md E.2), with no first day
    if rng.random() < min(0.25, max(0.0, (day.year - 1951) * 0.05)):
        found.append(Term("notice", rng.choice(("Detergent-proof decoration", "Safe in the automatic dishwasher"))))
    # stamps were given since the 1890s and came back in the 1950s (trade.md A.2)
    if food and rng.random() < (0.3 if day.year >= 1955 else 0.15 if day.year >= 1951 else 0.05):
        found.append(Term("stamps", rng.choice(("Trading stamps with every purchase", "Double stamps Wednesday"))))
    return tuple(found)

"""Food prices of a year: published averages with the press's own spread of brand, region and special offer."""

from __future__ import annotations

import csv
import math
from dataclasses import dataclass
from decimal import Decimal
from functools import cache
from pathlib import Path
from random import Random

from .facts import Item, Tag

SPECIAL = -0.06  # a grocer advertises what is cheap this week
STORE_SPREAD = 0.06
ITEM_SPREAD = 0.10
ENDINGS = (9, 9, 9, 5, 3, 7, 8)


@dataclass(frozen=True, slots=True)
class Staple:
    """Hold how a food of the published table is offered: the words, the size, and its share of the table's unit."""

    key: str
    words: tuple[str, ...]
    size: str
    share: float
    unit: str | None
    department: str


STAPLES = (
    Staple("bread", ("White Bread", "Sandwich Loaf", "Homestyle Bread"), "1-lb. loaf", 1.0, None, "grocery"),
    Staple("bread", ("Large White Loaf", "Big Loaf Bread"), "1½-lb. loaf", 1.5, None, "grocery"),
    Staple("bacon", ("Sliced Bacon", "Lean Breakfast Bacon", "Hickory Bacon"), "", 1.0, "lb", "meats"),
    Staple("beef", ("Round Steak", "Tender Round Steak"), "", 1.0, "lb", "meats"),
    Staple("butter", ("Creamery Butter", "Sweet Cream Butter", "Fresh Butter"), "", 1.0, "lb", "dairy"),
    Staple("milk", ("Fresh Milk", "Homogenized Milk"), "½ gal.", 1.0, None, "dairy"),
    Staple("eggs", ("Large Eggs", "Grade A Eggs", "Fresh Eggs"), "", 1.0, "doz", "dairy"),
    Staple(
        "coffee", ("Valley Roast Coffee", "Percolator Coffee", "Morning Lamp Coffee"), "1-lb. tin", 1.0, None, "grocery"
    ),
    Staple("potatoes", ("Potatoes", "New Potatoes", "Baking Potatoes"), "10-lb. bag", 1.0, None, "produce"),
    Staple("oranges", ("Juice Oranges", "Navel Oranges", "Sweet Oranges"), "", 1.0, "doz", "produce"),
    Staple("sugar", ("Cane Sugar", "Granulated Sugar", "Pure Cane Sugar"), "5-lb. bag", 1.0, None, "grocery"),
)
# Other foods at a price of about 1950, in cents; invented, moved with the level of the staples.
SUNDRIES: tuple[tuple[str, str, float, str | None, str], ...] = (
    ("Pork Chops", "", 75, "lb", "meats"), ("Ground Beef", "", 58, "lb", "meats"), ("Frankfurters", "", 52, "lb", "meats"),
    ("Fryers, Pan Ready", "", 55, "lb", "meats"), ("Smoked Hams", "half or whole", 59, "lb", "meats"),
    ("Chuck Roast", "", 66, "lb", "meats"), ("Pork Sausage", "", 47, "lb", "meats"), ("Haddock Fillets", "", 43, "lb", "meats"),
    ("Liver", "sliced", 62, "lb", "meats"), ("Bologna", "", 49, "lb", "meats"), ("Stewing Hens", "", 45, "lb", "meats"),
    ("Bananas", "", 15, "lb", "produce"), ("Lettuce", "large head", 15, None, "produce"), ("Cabbage", "", 5, "lb", "produce"),
    ("Carrots", "bunch", 9, None, "produce"), ("Celery", "stalk", 13, None, "produce"), ("Yellow Onions", "3 lbs.", 17, None, "produce"),
    ("Cooking Apples", "4 lbs.", 29, None, "produce"), ("Tomatoes", "carton", 23, None, "produce"), ("Grapefruit", "", 8, "each", "produce"),
    ("Green Beans", "", 19, "lb", "produce"), ("Lemons", "", 39, "doz", "produce"), ("Sweet Potatoes", "", 9, "lb", "produce"),
    ("Cottage Cheese", "pint", 25, None, "dairy"), ("Sharp Cheddar", "", 62, "lb", "dairy"), ("Oleomargarine", "", 29, "lb", "dairy"),
    ("Whipping Cream", "½ pint", 33, None, "dairy"), ("Ice Cream", "quart", 55, None, "dairy"), ("Buttermilk", "quart", 17, None, "dairy"),
    ("Early June Peas", "No. 303 can", 15, None, "grocery"), ("Cream Style Corn", "No. 303 can", 14, None, "grocery"),
    ("Tomato Soup", "can", 11, None, "grocery"), ("Pink Salmon", "tall can", 49, None, "grocery"), ("Tuna Fish", "flat can", 33, None, "grocery"),
    ("Peanut Butter", "12-oz. jar", 35, None, "grocery"), ("Strawberry Preserves", "1-lb. jar", 33, None, "grocery"),
    ("Cake Flour", "large pkg.", 39, None, "grocery"), ("Family Flour", "10 lbs.", 89, None, "grocery"), ("Shortening", "3-lb. tin", 87, None, "grocery"),
    ("Laundry Soap", "bar", 8, None, "grocery"), ("Soap Flakes", "large box", 27, None, "grocery"), ("Toilet Tissue", "roll", 12, None, "grocery"),
    ("Paper Napkins", "box of 80", 13, None, "grocery"), ("Cut Macaroni", "1-lb. pkg.", 17, None, "grocery"), ("Pork & Beans", "can", 12, None, "grocery"),
    ("Catsup", "14-oz. bottle", 21, None, "grocery"), ("Salad Dressing", "pint jar", 31, None, "grocery"), ("Tea Bags", "box of 48", 53, None, "grocery"),
    ("Evaporated Milk", "tall can", 13, None, "grocery"), ("Sliced Peaches", "No. 2½ can", 29, None, "grocery"), ("Apple Sauce", "can", 16, None, "grocery"),
    ("Seedless Raisins", "15-oz. pkg.", 21, None, "grocery"), ("Soda Crackers", "1-lb. box", 25, None, "grocery"), ("Rolled Oats", "large pkg.", 35, None, "grocery"),
)  # fmt: skip


@cache
def averages() -> dict[int, dict[str, float]]:
    """Read the published table: year to food to cents."""
    path = Path(__file__).parent / "data" / "staples.csv"
    lines = [line for line in path.read_text().splitlines() if not line.startswith("#")]
    return {
        int(row["year"]): {key: float(value) for key, value in row.items() if key != "year"}
        for row in csv.DictReader(lines)
    }


def level(year: int) -> float:
    """Return the level of staple prices against 1950."""
    now, base = averages()[year], averages()[1950]
    return math.exp(sum(math.log(now[key] / base[key]) for key in base) / len(base))


def _charm(cents: float, rng: Random) -> int:
    """Round to a figure a grocer would print."""
    if cents < 20:
        return max(2, round(cents))
    ten = round(cents / 10) * 10
    choices = [ten + shift for end in ENDINGS for shift in (end - 10, end)]
    return min(choices, key=lambda value: (abs(value - cents) - rng.random() * 1.5, value))


def _tags(cents: int, unit: str | None, rng: Random) -> tuple[Tag, ...]:
    if unit is None and cents <= 34 and rng.random() < 0.4:
        count = rng.choice((2, 3)) if cents > 12 else rng.choice((2, 3, 4, 6))
        total = round(cents * count * 0.97)
        return (Tag(Decimal(total) / 100, count),)
    if cents <= 20 and unit is None and rng.random() < 0.15:
        return (Tag(Decimal(cents) / 100 + Decimal("0.005")),)
    return (Tag(Decimal(cents) / 100, 1, unit),)


def basket(year: int, rng: Random, staples: int, sundries: int) -> tuple[Item, ...]:
    """Draw the foods of one advert: staples at the published level, others along with it."""
    store = rng.gauss(SPECIAL, STORE_SPREAD)
    table = averages()[year]
    items = []
    kinds: set[str] = set()
    for staple in rng.sample(STAPLES, min(staples + 1, len(STAPLES))):
        if staple.key in kinds or len(kinds) >= staples:
            continue
        kinds.add(staple.key)
        cents = _charm(table[staple.key] * staple.share * math.exp(store + rng.gauss(0, ITEM_SPREAD)), rng)
        tag = Tag(Decimal(cents) / 100, 1, staple.unit)
        items.append(Item(rng.choice(staple.words), (tag,), size=staple.size, department=staple.department))
    moved = level(year) * math.exp(store)
    for words, size, cents_1950, unit, department in rng.sample(SUNDRIES, min(sundries, len(SUNDRIES))):
        cents = _charm(cents_1950 * moved * math.exp(rng.gauss(0, ITEM_SPREAD)), rng)
        items.append(Item(words, _tags(cents, unit, rng), size=size, department=department))
    return tuple(items)

"""A generator of invented grocery adverts with hidden dates, apart from the dating code and its tables.

Prices come from annual averages typed here (the project's notes on the trade, B.3), with brand, region and
special-offer spreads of its own; other signs appear by rates of its own.
"""

from __future__ import annotations

import random
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Final

from adminer.dating.evidence.base import Case, ReadPrice

_TABLE: Final = """
1940 8.0 27.3 36.0 21.2 23.9 33.1 26.0 36.4
1941 8.1 34.7 41.3 23.9 23.4 39.6 28.5 39.0
1942 8.7 40.2 47.6 29.1 34.2 48.2 33.8 43.2
1943 8.8 42.2 52.5 29.9 46.1 57.2 33.8 43.3
1944 8.7 40.5 50.0 30.0 46.6 54.4 33.5 41.0
1945 8.8 41.1 50.7 30.5 49.3 58.1 33.4 40.6
1946 10.4 53.6 71.4 34.5 47.2 59.5 38.3 51.9
1947 12.5 77.9 80.9 46.9 50.8 70.5 48.1 74.0
1948 13.9 77.1 87.0 51.4 56.4 73.1 46.7 90.1
1949 14.0 66.6 72.6 55.4 54.9 70.2 47.6 84.5
1950 14.3 63.7 72.9 79.4 46.1 60.4 48.7 93.6
1951 15.6 67.1 81.7 86.7 50.3 73.3 50.2 111.6
1952 16.1 64.7 85.3 86.9 74.8 66.8 50.3 113.0
1953 16.5 78.8 79.1 89.1 54.4 70.5 50.6 91.1
1954 17.2 81.6 72.4 110.7 52.5 58.9 51.3 89.4
1955 17.7 65.9 70.9 93.0 56.4 60.6 52.1 90.3
1956 18.1 58.0 72.4 100.2 67.3 60.3 51.2 87.9
1957 18.9 74.4 74.5 99.2 56.9 57.6 53.1 93.4
1958 19.4 79.6 74.4 89.2 62.5 60.6 55.9 107.5
1959 19.7 66.6 75.3 75.9 63.0 53.1 57.5 109.4
1960 20.3 65.5 74.9 75.3 71.8 57.3 58.2 105.5
1961 20.7 70.9 76.1 73.5 62.6 57.2 56.1 103.9
1962 20.8 69.6 74.7 70.6 62.2 54.0 55.3 107.6
1963 21.0 67.2 74.2 68.9 63.3 54.7 59.1 106.4
1964 20.9 67.1 74.6 82.0 76.8 54.1 61.0 103.4
"""
_ITEMS: Final = (
    ("white bread", "loaf", 1.0), ("sliced bacon", "lb", 1.0), ("creamery butter", "lb", 1.0),
    ("coffee, drip or regular", "lb", 1.0), ("potatoes 10 lbs.", None, 1.0), ("grade A large eggs", "doz", 1.0),
    ("cane sugar 5 lb. bag", None, 1.0), ("round steak", "lb", 1.0),
)  # fmt: skip
AVERAGES: Final = {int(row.split()[0]): [float(v) for v in row.split()[1:]] for row in _TABLE.strip().splitlines()}
_WEEKDAYS: Final = ("Mon.", "Tues.", "Wed.", "Thurs.", "Fri.", "Sat.", "Sun.")
_SHORT: Final = ("Jan.", "Feb.", "Mar.", "Apr.", "May", "June", "July", "Aug.", "Sept.", "Oct.", "Nov.", "Dec.")
_HOLIDAYS: Final = {1: "January White Sale", 4: "for your Easter table", 6: "Father's Day treats", 8: "Back to School",
                    10: "Halloween treats", 11: "Thanksgiving feast", 12: "Christmas baking"}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Invented:
    """Hold an invented advert and its true day."""

    case: Case
    day: date


def invented_adverts(seed: int, count: int) -> list[Invented]:
    """Return adverts of 1940 to 1964 whose printed signs fit their hidden day."""
    chance = random.Random(seed)
    return [_advert(chance, number) for number in range(count)]


def _advert(chance: random.Random, number: int) -> Invented:
    day = date(1940, 1, 1) + timedelta(days=chance.randrange(365 * 25))
    lines = ["TIDEWELL MARKETS", "Prices good this week at all stores"]
    if chance.random() < 0.35:
        shown = f"{_WEEKDAYS[day.weekday()]}, " if chance.random() < 0.6 else ""
        lines.append(f"Effective {shown}{_SHORT[day.month - 1]} {day.day}")
    if chance.random() < 0.25 and day.month in _HOLIDAYS:
        lines.append(_HOLIDAYS[day.month])
    if chance.random() < 0.4:
        zone = f" {chance.randrange(1, 30)}" if date(1943, 9, 1) < day < date(1963, 7, 1) else ""
        lines.append(f"114 Water St., Ferncliff{zone}, Ohio")
    if chance.random() < 0.4:
        lines.append(_telephone(chance, day))
    if date(1943, 4, 1) <= day <= date(1945, 9, 30) and chance.random() < 0.6:
        lines.append(f"({chance.randrange(2, 12)} red points)")
    if date(1942, 6, 1) <= day <= date(1946, 6, 30) and chance.random() < 0.3:
        lines.append("At or below ceiling prices")
    if chance.random() < 0.1:
        lines.append(f"Copyright {day.year}")
    return Invented(Case(f"{number:016x}-a1", f"{number:016x}", "\n".join(lines), prices=_prices(chance, day)), day)


def _prices(chance: random.Random, day: date) -> tuple[ReadPrice, ...]:
    if chance.random() < 0.2:
        return ()
    region = chance.gauss(-0.05, 0.10)
    picked = chance.sample(range(len(_ITEMS)), chance.randrange(1, 8))
    prices = []
    after = AVERAGES.get(day.year + 1, AVERAGES[day.year])
    part = (day.timetuple().tm_yday - 183) / 365
    for i in picked:
        item, unit, _ = _ITEMS[i]
        average = AVERAGES[day.year][i] * (after[i] / AVERAGES[day.year][i]) ** max(0.0, part)
        special = -abs(chance.gauss(0, 0.2)) if chance.random() < 0.3 else 0.0
        cents = round(average * 2.718281828 ** (region + special + chance.gauss(0, 0.09)))
        if chance.random() < 0.02:
            cents = chance.randrange(5, 150)  # misread
        prices.append(ReadPrice(item, cents / 100, 1.0, unit, "everyone", "price", None))
    return tuple(prices)


def _telephone(chance: random.Random, day: date) -> str:
    number = f"{chance.randrange(2000, 9999)}"
    if day.year >= 1959 and chance.random() < (day.year - 1957) / 12:
        return f"Phone {chance.randrange(222, 999)}-{number}"
    if day.year >= 1946 and chance.random() < 0.6:
        return f"Phone CHelsea {chance.randrange(2, 9)}-{number}"
    return f"Phone MAin {number}"

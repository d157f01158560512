"""Food prices of the press stay within their declared spread of the published averages."""

from __future__ import annotations

import math
from random import Random

import pytest

from corpus_demo.press.staples import ITEM_SPREAD, SPECIAL, STAPLES, STORE_SPREAD, averages, basket

# Historical Statistics of the United States (Bicentennial ed.), series E 187-202, cents, as quoted in
# factmonster.com/ipka/A0873707.html: bread lb, bacon lb, butter lb, milk half gallon, eggs doz, oranges doz,
# potatoes 10 lb, coffee lb, and round steak lb.
PUBLISHED = {
    1940: {"bread": 8.0, "bacon": 27.3, "butter": 36.0, "milk": 25.6, "eggs": 33.1, "coffee": 21.2, "beef": 36.4},
    1950: {"bread": 14.3, "bacon": 63.7, "butter": 72.9, "milk": 41.2, "eggs": 60.4, "coffee": 79.4, "beef": 93.6},
    1960: {"bread": 20.3, "bacon": 65.5, "butter": 74.9, "milk": 52.0, "eggs": 57.3, "coffee": 75.3, "beef": 105.5},
}
WORDS = {words: staple for staple in STAPLES for words in staple.words}


@pytest.mark.parametrize("year", PUBLISHED)
def test_the_table_holds_the_published_averages(year: int) -> None:
    assert {key: averages()[year][key] for key in PUBLISHED[year]} == PUBLISHED[year]


def test_drawn_prices_centre_on_the_average_less_the_special_and_spread_as_declared() -> None:
    logs = []
    for seed in range(400):
        year = 1940 + seed % 25
        for item in basket(year, Random(f"test {seed}"), 9, 0):
            staple = WORDS[item.text]
            cents = float(item.tags[0].amount) * 100
            logs.append(math.log(cents / (averages()[year][staple.key] * staple.share)))
    mean = sum(logs) / len(logs)
    spread = math.sqrt(sum((x - mean) ** 2 for x in logs) / len(logs))
    declared = math.hypot(STORE_SPREAD, ITEM_SPREAD)
    assert abs(mean - SPECIAL) < 0.02
    assert declared * 0.85 < spread < declared * 1.25  # rounding to figures a grocer prints adds a little

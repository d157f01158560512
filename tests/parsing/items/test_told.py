"""Clauses between a name and its price that tell which goods are meant. Texts invented."""

from __future__ import annotations

import pytest

from adminer.parsing.items.told import clause_at_price
from adminer.parsing.prices.prices import find_prices
from adminer.parsing.segments.items import cut_segments
from tests.parsing.pages import advert_text


@pytest.mark.parametrize(
    ("heading", "told", "clause"),
    [
        ("RUBBER STAMPS", "Name on a self-inking stamp", "Name on a self-inking stamp"),
        ("POST CARDS", "Twelve views of Ferncliff harbor, colored", "Twelve views of Ferncliff harbor"),
        ("POST CARDS", "large ones", ""),  # leans on what was named before
        ("POST CARDS", "You get twelve views", ""),  # talk
        ("POST CARDS", "Views of the harbor at dawn and of the lighthouse", ""),  # longer than a name
        ("CARDS", "Twelve views of Ferncliff harbor", ""),  # of one word: the clause after it tells more
    ],
)
def test_the_clause_at_the_price_tells_which_goods_of_a_headed_paragraph_it_is_for(
    heading: str, told: str, clause: str
) -> None:
    advert = advert_text((20, 20, 16, heading), (20, 60, 11, f"{told}, 25c."))
    prices = find_prices(advert, [])
    segments = cut_segments(advert, [(p.start, p.end) for p in prices], prices)
    assert clause_at_price(segments[0], prices[0], segments) == clause

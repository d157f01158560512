"""Columns of prices before their texts, and prices that only stand left of another column. All invented."""

from __future__ import annotations

import pytest

from adminer.parsing.prices.prices import find_prices
from adminer.parsing.segments.line_runs import rows_behind_prices
from tests.parsing.pages import advert_text

ROWS = (("25¢", "Plum Conserve"), ("19¢", "Pink Beans"), ("33¢", "Corn Syrup"))


@pytest.mark.parametrize(("apart", "found"), [(30, 3), (300, 0)])
def test_a_text_is_behind_its_price_only_where_it_stands_near_it(apart: int, found: int) -> None:
    text = advert_text(
        *((20, 40 + 24 * i, 14, price) for i, (price, _) in enumerate(ROWS)),
        *((60 + apart, 40 + 24 * i, 14, name) for i, (_, name) in enumerate(ROWS)),
    )
    assert len(rows_behind_prices(text, find_prices(text, []))) == found

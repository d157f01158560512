"""Which terms head a column of prices, and which are a piece of running text over it. Texts invented."""

from __future__ import annotations

import pytest

from adminer.parsing.prices.column_heads import column_heads
from adminer.parsing.prices.prices import find_prices
from adminer.parsing.terms.terms import find_terms
from tests.parsing.pages import Line, advert_text


def headed(over: str) -> int:
    """Return how many prices of a column the terms in a line over it head."""
    lines: list[Line] = [(20, 20, 12, over), *((40, 50 + 22 * i, 12, f"$1.{i}5") for i in range(3))]
    advert = advert_text(*lines)
    terms = find_terms(advert.text)
    assert terms
    boxes = {t: advert.flat(advert.box_of(term.start, term.end)) for t, term in enumerate(terms)}
    return sum(map(len, column_heads(advert, find_prices(advert, []), terms, boxes).values()))


@pytest.mark.parametrize(
    ("over", "count"),
    [
        ("Compare with", 3),
        ("Compare with others of this make", 3),
        ("Compare with all that you have ever paid, for none is of seconds", 0),
    ],
)
def test_a_term_in_a_long_line_of_running_text_heads_no_column(over: str, count: int) -> None:
    assert headed(over) == count

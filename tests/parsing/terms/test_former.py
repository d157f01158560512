"""Words that say what was asked before. Texts invented."""

from __future__ import annotations

import pytest

from adminer.parsing.terms.terms import find_terms
from tests.parsing.pages import parse


@pytest.mark.parametrize("words", ["Last year", "Last winter at", "Last spring:", "Last month"])
def test_a_sum_of_last_year_or_season_is_a_former_price(words: str) -> None:
    advert = parse((20, 20, 16, "Oak rocker"), (20, 44, 14, f"{words} $31.40"), (20, 70, 30, "$22.75"))
    assert {p.text: p.condition for o in advert.offers for p in o.prices} == {"$31.40": "former", "$22.75": "everyone"}


def test_last_year_without_a_sum_after_it_is_no_term_of_a_price() -> None:
    assert not [term for term in find_terms("Last year we sold many, and $22.75 buys one.") if term.kind == "former"]

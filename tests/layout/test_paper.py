"""What tells a price on a page before anything is parsed."""

from __future__ import annotations

import pytest

from adminer.layout.paper import PRICE


@pytest.mark.parametrize("line", ["Catsup 19¢", "Fryers 29¢ lb.", "Tea Bags 59c", "Oat Flakes, large .39"])
def test_cents_tell_a_price_with_the_sign_or_the_letter(line: str) -> None:
    assert PRICE.search(line)


@pytest.mark.parametrize("line", ["19 cars", "In 1952", "35 Court Square"])
def test_other_figures_tell_none(line: str) -> None:
    assert not PRICE.search(line)

"""What tells a price on a page before anything is parsed."""

from __future__ import annotations

import pytest

from adminer.layout.paper import PRICE, Paper
from adminer.layout.type_lines import TypeLine


@pytest.mark.parametrize("line", ["Catsup 19¢", "Fryers 29¢ lb.", "Tea Bags 59c", "Oat Flakes, large .39"])
def test_cents_tell_a_price_with_the_sign_or_the_letter(line: str) -> None:
    assert PRICE.search(line)


@pytest.mark.parametrize("line", ["19 cars", "In 1952", "35 Court Square"])
def test_other_figures_tell_none(line: str) -> None:
    assert not PRICE.search(line)


def test_names_at_the_end_of_whose_rows_prices_stand_are_a_list_and_no_paragraph() -> None:
    names = [TypeLine((20, 20 + 14 * n, 220, 30 + 14 * n), 10, "Bowls of blue glass, large") for n in range(8)]
    prices = [TypeLine((300, 20 + 14 * n, 330, 30 + 14 * n), 10, f"{n}9c") for n in range(8)]
    told = [TypeLine((240, 20 + 14 * n, 440, 30 + 14 * n), 10, "words of a report, told") for n in range(8)]
    assert Paper.of(names, 10, []).is_text(names)
    assert not Paper.of([*names, *prices], 10, []).is_text(names)
    beyond = [TypeLine((450, n.rect[1], 480, n.rect[3]), 10, n.text) for n in prices]
    assert Paper.of([*names, *told, *beyond], 10, []).is_text(names)

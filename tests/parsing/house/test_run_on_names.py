"""Names that sign an advert within its last lines of text; invented names, common practice, no source."""

from __future__ import annotations

import pytest

from tests.parsing.house.test_signatures import retailer_of
from tests.parsing.pages import Line


def signed(*closing: str) -> str | None:
    text = ("Grow your own in cellar or", "shed. Full directions with", "every order, postpaid 65c.")
    lines: list[Line] = [(20, 20 + 20 * i, 15, line) for i, line in enumerate((*text, *closing))]
    return retailer_of(lines)


@pytest.mark.parametrize(
    ("closing", "name"),
    [
        (("Agents wanted. THE BRACKEN MOP", "COMPANY, Box 17, Osterby, Ohio."), "THE BRACKEN MOP COMPANY"),
        (("Book free. NEMORA HIDE & ROBE TANNERY,", "Route 4, Osterby, Kans."), "NEMORA HIDE & ROBE TANNERY"),
        (("Book of 48 pages. Wendover Poultry", "Works, Dept. K, Osterby, Ind."), "Wendover Poultry Works"),
    ],
)
def test_a_name_after_the_last_sentence_goes_on_to_its_address(closing: tuple[str, ...], name: str) -> None:
    assert signed(*closing) == name


def test_a_sentence_with_no_address_behind_it_signs_nothing() -> None:
    assert signed("Agents wanted. Best Brass Works", "Inside, and a bell that rings.") is None

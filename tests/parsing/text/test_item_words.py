"""The words of an item text. All invented."""

from __future__ import annotations

import pytest

from adminer.parsing.text.item_words import closed_up


@pytest.mark.parametrize(
    ("printed", "word"),
    [
        ("S A L E of linens", "SALE of linens"),
        ("V S OP", "VSOP"),
        ("V O", "VO"),
        ("Grade A or B", "Grade A or B"),
        ("size A B", "size A B"),
        ("J. B. C. Crisps", "J. B. C. Crisps"),
    ],
)
def test_letterspaced_capitals_are_one_word(printed: str, word: str) -> None:
    assert closed_up(printed) == word

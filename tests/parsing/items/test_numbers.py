"""Catalogues by number: the number that heads an entry, and the same number alone beside a price under a picture."""

from __future__ import annotations

import pytest

from adminer.parsing import parse_page
from adminer.parsing.text.item_words import clean_item
from tests.parsing.pages import NO_NAMES, Line, reading_of

ENTRIES: list[Line] = [
    (60, 20, 16, "31-610"),
    (65, 42, 20, "$2.39"),
    (300, 20, 16, "31-618"),
    (305, 42, 20, "$4.95"),
    (20, 100, 19, "31-610—Voile Waist"),
    (20, 124, 15, "Front of fine cotton voile with seven rows of pin"),
    (20, 145, 15, "tucking. Sizes 34 to 44 bust. White only. Price,"),
    (20, 166, 15, "delivered, $2.39."),
    (20, 200, 19, "31-618—Skirt of Wool"),
    (20, 224, 15, "Five gores, gathered back, with a broad belt and"),
    (20, 245, 15, "two slash pockets. Navy or black. Price $4.95."),
]


def test_the_name_after_its_number_names_the_entry_and_the_price_under_the_picture() -> None:
    (advert,) = parse_page(reading_of(ENTRIES), NO_NAMES)
    assert [(p.text, o.item) for o in advert.offers for p in o.prices] == [
        ("$2.39", "Voile Waist"), ("$4.95", "Skirt of Wool"), ("$2.39", "Voile Waist"), ("$4.95", "Skirt of Wool")
    ]  # fmt: skip


@pytest.mark.parametrize(("text", "name"), [("Loin, Grade A", "Loin, Grade A"), ("Loin at a", "Loin")])
def test_a_grade_is_no_article_of_grammar(text: str, name: str) -> None:
    assert clean_item(text) == name

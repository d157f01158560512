"""Boxes of characters inside a word that took leaders in; invented wording."""

from __future__ import annotations

from adminer.parsing.text.text import text_of
from adminer.records import Box, Word


def test_the_figures_of_a_word_with_leaders_stand_at_its_right() -> None:
    advert = text_of((Word("barley.19c", Box(100, 40, 300, 16), 16.0, 0.9, "display", line=0),))
    box = advert.box_of(advert.text.index(".19c"), len(advert.text))
    assert box.right == 400
    assert box.x > 350


def test_the_figures_of_a_word_in_close_type_stand_where_its_letters_say() -> None:
    advert = text_of((Word("barley.19c", Box(100, 40, 100, 16), 16.0, 0.9, "display", line=0),))
    assert advert.box_of(7, 9) == Box(170, 40, 20, 16)

"""Boxes of characters inside a word that took leaders in, and the slope of type; invented wording."""

from __future__ import annotations

from adminer.parsing.text.slope import Slope, slope_of
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


def test_short_lines_a_pixel_off_show_no_change_of_slope() -> None:
    long = [
        Word(text, Box(x, 40 + 8 * i, 60, 20), 20.0, 0.9, "display", line=i)
        for i in (0, 1)
        for x, text in ((20, "Osterby"), (700, "Ledger"))
    ]
    short = [
        Word(text, Box(x, 300 + 40 * i + (k * off), 40, 20), 20.0, 0.9, "display", line=2 + i)
        for i, off in enumerate((1, 2, 1, 2))
        for k, (x, text) in enumerate(((20, "Sugar"), (110, "large")))
    ]
    assert slope_of((*long, *short)) == Slope()

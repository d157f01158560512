"""Captions with a number of the catalogue, and rows that leaders run through, under a heading. Texts invented."""

from __future__ import annotations

from tests.parsing.items.test_entries import items, paragraph
from tests.parsing.pages import parse


def test_the_text_after_a_number_of_the_catalogue_names_all_that_its_caption_asks() -> None:
    captions = [
        *paragraph(
            "No. 7K118. Hall Stand.", "Oak, with four hooks and a", "mirror 12 x 20 in. Price only", "$9.80", y=60
        ),
        *paragraph(
            "No. C-44. Pantry Safe. Pine,", "four shelves, two drawers,", "with lock and key. Price $6.35", x=420, y=64
        ),
    ]
    heading = (40, 20, 26, "Furniture for a Little Down and a Little a Month")
    assert items(parse(heading, *captions)) == {"$9.80": "Hall Stand", "$6.35": "Pantry Safe"}


def test_a_price_that_leaders_run_to_is_for_the_goods_before_them_not_for_the_heading() -> None:
    lines = [(107, 20, 23, "SUGAR and FLOUR."), (54, 50, 20, "Sugar, 1 A. 70-lb. bag ...... 2.25")]
    lines += [(54, 76, 20, "Flour, Roller, 50 lb. ....... 1.10 cwt.")]
    found = items(parse(*lines))
    assert found["2.25"].startswith("Sugar, 1 A.")


def test_parts_told_of_a_numbered_article_are_not_its_name() -> None:
    caption = paragraph(
        "No. C-44. Wendell lawn rest",
        "of oak, made to last for ever, comes",
        "with four chains. Price only $2.95",
    )
    assert items(parse(*caption)) == {"$2.95": "Wendell lawn rest of oak"}

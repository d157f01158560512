"""Words of a line that was read across two columns of a page."""

from __future__ import annotations

from dataclasses import replace

from adminer.parsing.text.regions import words_by_region
from adminer.records import Box, Region
from tests.parsing.pages import Line, reading_of, words_of

LEFT, RIGHT = Region(Box(0, 0, 300, 400), "advert", 0.9), Region(Box(310, 0, 300, 400), "editorial", 0.7)


def parted(*lines: tuple[int, Line]) -> dict[int, str]:
    words = words_of([line for _, line in lines])
    words = tuple(replace(word, region=lines[word.line][0]) for word in words)
    reading = replace(reading_of([]), regions=(LEFT, RIGHT), words=words)
    return {n: " ".join(word.text for word in held) for n, held in words_by_region(reading).items()}


def test_words_of_a_joined_line_go_to_the_columns_they_stand_in() -> None:
    price, report = (280, 40, 10, "15c notice is hereby"), (320, 80, 10, "given that")
    found = parted((0, (10, 40, 10, "Lard")), (0, (10, 80, 10, "Meal")), (1, price), (1, report))
    assert found == {0: "Lard 15c Meal", 1: "notice is hereby given that"}


def test_a_word_outside_all_parts_stays_with_its_line() -> None:
    assert parted((0, (10, 40, 10, "Lard")), (0, (10, 600, 10, "Closed Mondays"))) == {0: "Lard Closed Mondays"}

"""The whole way from pixels to words: text, boxes, numerals, order, on pages drawn here."""

from __future__ import annotations

import cv2
import numpy as np
import pytest
from numpy.typing import NDArray

from adminer.layout.recipe import Recipe
from adminer.reading import read_page
from adminer.records import Box, PageReading
from tests.reading.drawing import Setting, draw, width_of

PLAIN = Recipe(name="plain", about="test")


def text_of(reading: PageReading) -> list[str]:
    lines: dict[int, list[str]] = {}
    for word in reading.words:
        lines.setdefault(word.line, []).append(word.text)
    return [" ".join(words) for words in lines.values()]


def page_of_lines() -> NDArray[np.uint8]:
    return draw(
        600,
        400,
        Setting("Tansy Morn dinner plate", 60, 100, 26),
        Setting("with each $5.00 purchase", 60, 150, 20),
        Setting("While quantities last", 60, 200, 20),
    )


@pytest.fixture(scope="module")
def plain() -> PageReading:
    return read_page(page_of_lines(), PLAIN, clipping_id="0123456789abcdef", dpi=150.0)


def test_lines_are_read_as_printed_and_in_order(plain: PageReading) -> None:
    assert text_of(plain) == ["Tansy Morn dinner plate", "with each $5.00 purchase", "While quantities last"]


def test_the_reading_knows_its_scan(plain: PageReading) -> None:
    assert (plain.clipping_id, plain.width, plain.height, plain.recipe, plain.dpi) == (
        "0123456789abcdef",
        600,
        400,
        "plain",
        150.0,
    )


def test_every_word_has_the_box_of_its_own_ink(plain: PageReading) -> None:
    word = next(w for w in plain.words if w.text == "dinner")
    left = 60 + width_of("Tansy Morn ", 26)
    expected = Box(round(left), 80, round(width_of("dinner", 26)), 20)
    assert word.box.iou(expected) > 0.75
    assert word.type_px == pytest.approx(0.72 * 26, rel=0.2)


def test_words_point_into_regions_and_blocks(plain: PageReading) -> None:
    for word in plain.words:
        assert plain.regions[word.region].kind == "advert"
        assert plain.blocks[word.block].box.overlap(word.box) > 0.9 * word.box.area


@pytest.mark.parametrize("turn", [cv2.ROTATE_90_CLOCKWISE, None])
def test_an_empty_page_has_no_words(turn: int | None) -> None:
    page = np.full((300, 200), 240, np.uint8)
    picture = page if turn is None else np.asarray(cv2.rotate(page, turn), np.uint8)
    assert read_page(picture, PLAIN).words == ()


def test_boxes_are_pixels_of_a_skewed_scan() -> None:
    turn = cv2.getRotationMatrix2D((300, 200), -2.5, 1.0)
    skewed = np.asarray(cv2.warpAffine(page_of_lines(), turn, (600, 400), borderValue=245), np.uint8)
    reading = read_page(skewed, PLAIN)
    word = next(w for w in reading.words if w.text == "purchase")
    middle = np.array([60 + width_of("with each $5.00 ", 20) + width_of("purchase", 20) / 2, 145.0, 1.0])
    x, y = turn @ middle
    assert word.box.holds(float(x), float(y))


@pytest.mark.parametrize(("dollars", "cents"), [("$1", "29"), ("$4", "95"), ("$12", "50")])
def test_raised_cents_become_cents(dollars: str, cents: str) -> None:
    size = 90
    after = 80 + width_of(dollars, size) + 4
    page = draw(
        500,
        300,
        Setting("Soup plate", 80, 70, 30),
        Setting(dollars, 80, 200, size),
        Setting(cents, after, 200 - 0.33 * size, 0.55 * size),
    )
    found = [w for w in read_page(page, PLAIN).words if w.form == "raised_cents"]
    assert [w.text for w in found] == [f"{dollars}.{cents}"]
    assert found[0].box.right > after + width_of(cents, 0.55 * size) - 8


def test_figures_of_one_size_are_no_raised_cents() -> None:
    page = draw(500, 300, Setting("Model", 80, 90, 40), Setting("$129", 80, 200, 90))
    assert all(w.form is None for w in read_page(page, PLAIN).words)


def test_white_type_on_a_dark_panel_is_read() -> None:
    page = draw(600, 400, Setting("Plain words above", 60, 80, 24))
    page = page.copy()
    page[140:260, 40:560] = 12
    white = draw(600, 400, Setting("SAUCER 19 CENTS", 70, 215, 44, ink=250), paper=12)
    page[140:260, 40:560] = white[140:260, 40:560]
    reading = read_page(page, PLAIN)
    words = [w for w in reading.words if w.text == "SAUCER"]
    assert len(words) == 1
    assert reading.blocks[words[0].block].kind == "reversed"


def test_two_columns_are_read_one_after_the_other() -> None:
    left = [
        Setting(text, 40, 80 + 34 * k, 20) for k, text in enumerate(("Cup and saucer", "Bread plate", "Fruit dish"))
    ]
    right = [Setting(text, 380, 80 + 34 * k, 20) for k, text in enumerate(("Coffee pot", "Cream jug", "Sugar bowl"))]
    lines = text_of(read_page(draw(640, 300, *left, *right), PLAIN))
    assert lines == ["Cup and saucer", "Bread plate", "Fruit dish", "Coffee pot", "Cream jug", "Sugar bowl"]


def test_the_same_picture_gives_the_same_reading(plain: PageReading) -> None:
    again = read_page(page_of_lines(), PLAIN, clipping_id="0123456789abcdef", dpi=150.0)
    assert again == plain

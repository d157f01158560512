"""Numbers whose fraction, point or figure was taken for something else, put right from the ink; drawn here."""

from __future__ import annotations

from dataclasses import replace

import cv2
import numpy as np
import pytest
from numpy.typing import NDArray

from adminer.reading.glyphs import Glyph
from adminer.reading.lost import with_each_figure, with_second_figure, with_sign_of_small_type
from adminer.reading.models import alphabet
from adminer.reading.placed import PlacedWord
from adminer.reading.points import with_point
from adminer.reading.raised import read_raised
from adminer.reading.recognise import _decode
from adminer.reading.worn_fractions import settle_worn_fraction
from tests.reading.drawing import Setting, draw, width_of

SIZE = 40.0
FOOT = 90.0


def set_in(text: str, drawn: str, parts: list[str]) -> tuple[NDArray[np.uint8], PlacedWord]:
    """Draw a number and return the page with the word a reader makes of it; `parts` is what is drawn, by letters."""
    page = draw(400, 140, Setting(drawn, 60, FOOT, SIZE))
    x, centres = 60.0, []
    for part in parts:
        centres.append(x + width_of(part, SIZE) / 2)
        x += width_of(part, SIZE)
    return page, PlacedWord(text, 60, FOOT - 0.75 * SIZE, x, FOOT + 2, 0.72 * SIZE, 0.9, 0, tuple(centres))


@pytest.mark.parametrize(
    ("read", "drawn", "parts", "meant"),
    [
        ("1/62", "1/6½", ["1", "/", "6", "½"], "1/6½"),
        (".06%", ".06½", [".", "0", "6", "½"], ".06½"),
        ("1212c", "12½c", ["1", "2", "", "½", "c"], "12½c"),
        ("91d.", "9½d.", ["9", "½", "d", "."], "9½d."),
        ("1/514", "1/5¼", ["1", "/", "5", "", "¼"], "1/5¼"),
        ("$5.12/2", "$5.12½", ["$", "5", ".", "1", "2", "", "½"], "$5.12½"),
    ],
)
def test_a_figure_that_cannot_be_is_a_fraction(read: str, drawn: str, parts: list[str], meant: str) -> None:
    page, word = set_in(read, drawn, parts)
    assert settle_worn_fraction(page, word, sterling=True).text == meant


@pytest.mark.parametrize(
    "read", ["1/11", "10d.", "2½d.", ".12", "3/6", "72c", "1/-", "112", ".129", "12/6", "..2/11", ".49/6", "..11d."]
)
def test_a_number_that_can_be_stays(read: str) -> None:
    page, word = set_in(read, read, list(read))
    assert settle_worn_fraction(page, word, sterling=True).text == read


def small(text: str, drawn: str) -> tuple[NDArray[np.uint8], PlacedWord]:
    """Draw a number eight pixels high and return the page with the word a line made of it."""
    page, word = set_in(text, drawn, list(text))
    part = 8 / (0.72 * SIZE)
    right = word.left + width_of(drawn, SIZE)
    edges = (word.left * part, word.top * part, right * part, word.bottom * part, word.type_px * part)
    reduced = cv2.resize(page, None, fx=part, fy=part, interpolation=cv2.INTER_AREA)
    return np.asarray(reduced, np.uint8), PlacedWord(text, *edges, 0.99, 0, ())


@pytest.mark.parametrize(
    ("read", "drawn", "meant"),
    [
        ("654", "65c", "65¢"),
        ("45", "45c", "45¢"),
        ("3/474", "3/47c", "3/47¢"),
        ("654", "654", "654"),
        ("303", "303", "303"),
        ("20", "20", "20"),
        ("40", "4c", "4¢"),
    ],
)
def test_a_cent_sign_of_small_type_is_seen_in_the_word_alone(read: str, drawn: str, meant: str) -> None:
    page, word = small(read, drawn)
    assert with_sign_of_small_type(page, word, 1).text == meant


def test_two_for_some_cents_is_no_shillings_on_a_page_in_dollars() -> None:
    page, word = set_in("2/17", "2/17", list("2/17"))
    assert settle_worn_fraction(page, word).text == "2/17"


def test_a_point_half_seen_after_a_dollar_sign_is_one() -> None:
    page, word = set_in("$198", "$198", list("$198"))
    seen = replace(word, point=0.2)
    pointed = with_point(page, seen, (), [seen])
    assert pointed is not None and pointed.text == "$1.98"
    assert with_point(page, replace(word, point=0.01), (), [word]) is None


def test_a_half_seen_point_is_kept_with_the_letter_after_it() -> None:
    letters = alphabet().characters
    answers = np.zeros((6, len(letters)), np.float32)
    for step, (seen, sure) in enumerate([("1", 0.9), (".", 0.3), ("9", 0.9), ("", 0.9), ("8", 0.9), ("", 0.9)]):
        answers[step, letters.index(seen)] = sure
        answers[step, 0] = max(answers[step, 0], 0.5 if seen == "." else 0.0)
    read = _decode(answers, 48)
    assert read.text == "198"
    assert [round(letter.point, 1) for letter in read.letters] == [0.0, 0.3, 0.0]


def test_a_letter_in_a_display_numeral_is_read_alone_as_a_figure() -> None:
    page, word = set_in("q99", "199", list("199"))
    assert with_each_figure(page, word, 1).text == "199"


def test_a_wide_raised_c_is_a_cent_sign() -> None:
    page = draw(200, 140, Setting("c", 60, FOOT, SIZE))
    rows, columns = np.nonzero(page < 128)
    box = Glyph(float(columns.min()), float(rows.min()), float(columns.max() + 1), float(rows.max() + 1))
    wide = replace(box, right=box.left + 1.12 * box.height)
    found = read_raised(page, wide, 1)
    assert found is not None and found.text == "¢"


def test_a_lone_figure_of_cents_gets_back_the_one_beside_it() -> None:
    page, word = set_in("4c", "45c", list("45c"))
    assert with_second_figure(page, replace(word, centres=()), 1).text == "45c"
    assert with_second_figure(page, replace(word, text="(5c", centres=()), 1).text == "45c"
    page, word = set_in("5c", "5c", list("5c"))
    assert with_second_figure(page, word, 1).text == "5c"

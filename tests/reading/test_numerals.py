"""Numerals by their glyphs: raised cents among neighbours, fractions, signs and points that were lost; drawn here."""

from __future__ import annotations

from dataclasses import replace

import cv2
import numpy as np
import pytest
from numpy.typing import NDArray

from adminer.reading import numerals
from adminer.reading.fractions import settle_fraction
from adminer.reading.glyphs import Glyph, glyphs_of
from adminer.reading.lost import with_cent
from adminer.reading.numerals import settle_numerals
from adminer.reading.placed import PlacedWord
from adminer.reading.raised import Raised
from tests.reading.drawing import Setting, draw, width_of

SIZE = 80.0
FOOT = 140.0


def read_as(text: str, left: float, pieces: list[tuple[str, float]], *, top: float, bottom: float) -> PlacedWord:
    """Return a word as a reader gives it; pieces are its letters with the size each is set in."""
    x, centres = left, []
    for letter, size in pieces:
        centres.append(x + width_of(letter, size) / 2)
        x += width_of(letter, size)
    return PlacedWord(text, left, top, x, bottom, 0.72 * SIZE, 0.97, 0, tuple(centres))


def price(dollars: str, cents: str, small: float, lift: float, *more: Setting) -> tuple[NDArray[np.uint8], PlacedWord]:
    """Draw a price with raised cents; the reader gives its figures as one number."""
    after = 80 + width_of(dollars, SIZE) + 3
    page = draw(420, 220, Setting(dollars, 80, FOOT, SIZE), Setting(cents, after, FOOT - lift, small), *more)
    pieces = [(c, SIZE) for c in dollars] + [(c, small) for c in cents]
    return page, read_as(dollars + cents, 80, pieces, top=FOOT - 0.8 * SIZE, bottom=FOOT + 0.1 * SIZE)


def test_a_glyph_for_each_letter_though_the_line_above_reaches_into_the_box() -> None:
    page, word = price("$3", "75", 0.5 * SIZE, 0.36 * SIZE, Setting("Copper plate", 78, FOOT - 0.72 * SIZE, 30))
    glyphs = glyphs_of(page, word)
    assert len(glyphs) == 4
    assert all(glyph.top > FOOT - 0.85 * SIZE for glyph in glyphs[1:])
    assert [w.text for w in settle_numerals(page, [word])] == ["$3.75"]


def test_raised_cents_are_told_in_figures_eight_pixels_high() -> None:
    page, word = price("$3", "75", 0.5 * SIZE, 0.36 * SIZE)
    part = 8 / (0.72 * SIZE)
    small = cv2.resize(page, None, fx=part, fy=part, interpolation=cv2.INTER_AREA)
    edges = (word.left * part, word.top * part, word.right * part, word.bottom * part, word.type_px * part)
    seen = PlacedWord(word.text, *edges, 0.97, 0, tuple(x * part for x in word.centres))
    assert [w.text for w in settle_numerals(np.asarray(small, np.uint8), [seen])] == ["$3.75"]


def test_the_sides_of_a_frame_are_no_glyphs_of_a_price() -> None:
    page, word = price("$3", "75", 0.5 * SIZE, 0.36 * SIZE)
    page = page.copy()
    page[40:190, 60:66] = page[40:190, 250:256] = 10
    wide = PlacedWord(word.text, 58, 56, 256, 166, 100, 0.97, 0, word.centres)
    (settled,) = settle_numerals(page, [wide])
    assert (settled.text, settled.form) == ("$3.75", "raised_cents")
    assert settled.left > 70  # the box is that of the price, not of the frame


def test_figures_that_touch_are_told_apart_by_their_places() -> None:
    page, word = price("$8", "50", 0.5 * SIZE, 0.36 * SIZE)
    page = page.copy()
    join = round(80 + width_of("$", SIZE))
    page[110:114, join - 10 : join + 10] = 10
    assert [w.text for w in settle_numerals(page, [word])] == ["$8.50"]


def test_a_raised_figure_that_hangs_low_is_not_counted_with_the_dollars_and_with_the_cents(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    page, word = price("$4", "45", 0.5 * SIZE, 0.36 * SIZE)
    page = page.copy()
    low = round(80 + width_of("$4", SIZE) + 3 + 0.6 * width_of("4", 0.5 * SIZE))
    page[round(FOOT - 0.4 * SIZE) : round(FOOT), low : low + 4] = (
        10  # a stroke from the first raised figure to the foot
    )
    numeral = numerals._take_apart(word, glyphs_of(page, word))
    assert numeral is not None
    assert numeral.large == 2
    raised = Raised(numeral.glyphs[-1], "45", 0.9)
    monkeypatch.setattr(numerals, "raised_beside", lambda *_: (raised, set()))
    assert [w.text for w in settle_numerals(page, [word])] == ["$4.45"]


def test_noughts_raised_beside_noughts_are_cents_of_the_whole_number(monkeypatch: pytest.MonkeyPatch) -> None:
    page, word = price("$2500", "00", 0.5 * SIZE, 0.36 * SIZE)
    pieces = [(c, SIZE) for c in "$2500"]
    read = read_as("$2500", 80, pieces, top=word.top, bottom=word.bottom)
    raised = Raised(glyphs_of(page, word)[-1], "00", 0.9)
    monkeypatch.setattr(numerals, "raised_beside", lambda *_: (raised, set()))
    assert [w.text for w in settle_numerals(page, [read])] == ["$2500.00"]


def test_a_number_of_one_size_stays_what_it_is() -> None:
    page = draw(420, 220, Setting("$129", 80, FOOT, SIZE))
    word = read_as("$129", 80, [(c, SIZE) for c in "$129"], top=FOOT - 0.8 * SIZE, bottom=FOOT + 0.1 * SIZE)
    assert [w.text for w in settle_numerals(page, [word])] == ["$129"]


def test_a_second_reading_of_the_cents_goes_with_them() -> None:
    page, word = price("$1", "39", 0.5 * SIZE, 0.36 * SIZE)
    left = 80 + width_of("$1", SIZE) + 3
    again = PlacedWord("39", left, 82, left + 44, 112, 28, 0.9, 1, ())
    assert [w.text for w in settle_numerals(page, [word, again])] == ["$1.39"]


@pytest.mark.parametrize(
    ("read", "parts", "meant"),
    [
        ("17/2c", (("1", "high"), ("/", "full"), ("2", "low")), "17½¢"),
        ("171/2c", (("1", "high"), ("/", "full"), ("2", "low")), "17½¢"),
        ("173/4c", (("3", "high"), ("/", "full"), ("4", "low")), "17¾¢"),
    ],
)
def test_a_small_figure_on_the_foot_makes_a_fraction(read: str, parts: tuple[tuple[str, str], ...], meant: str) -> None:
    settings, x = [Setting("17", 80, FOOT, SIZE)], 80 + width_of("17", SIZE) + 2
    centres = [80 + width_of("1", SIZE) / 2, 80 + width_of("1", SIZE) + width_of("7", SIZE) / 2]
    for text, place in (*parts, ("c", "full")):
        size = SIZE if place == "full" else 0.5 * SIZE
        settings.append(Setting(text, x, FOOT - (0.36 * SIZE if place == "high" else 0), size))
        if text in read[2:]:
            centres.append(x + width_of(text, size) / 2)
        x += width_of(text, size) + 2
    word = PlacedWord(read, 80, FOOT - 0.8 * SIZE, x, FOOT + 0.1 * SIZE, 0.72 * SIZE, 0.97, 0, tuple(centres))
    assert settle_fraction(draw(420, 220, *settings), word).text == meant


def test_a_measure_with_a_fraction_is_no_price() -> None:
    small = 0.5 * SIZE
    x = 80 + width_of("9", SIZE) + 2
    places = [80 + width_of("9", SIZE) / 2, x + width_of("1", small) / 2]
    settings = [Setting("9", 80, FOOT, SIZE), Setting("1", x, FOOT - 0.36 * SIZE, small)]
    for text, size in (("/", SIZE), ("4", small)):
        x += width_of("1" if text == "/" else "/", small if text == "/" else SIZE) + 2
        settings.append(Setting(text, x, FOOT, size))
        places.append(x + width_of(text, size) / 2)
    x += width_of("4", small)
    word = PlacedWord("91/4", 80, FOOT - 0.8 * SIZE, x, FOOT + 0.1 * SIZE, 0.72 * SIZE, 0.97, 0, tuple(places))
    settled = settle_fraction(draw(420, 220, *settings), word)
    assert (settled.text, settled.form) == ("9¼", None)


def test_two_for_a_full_size_figure_is_no_fraction() -> None:
    page = draw(420, 220, Setting("3/25c", 80, FOOT, SIZE))
    word = read_as("3/25c", 80, [(c, SIZE) for c in "3/25c"], top=FOOT - 0.8 * SIZE, bottom=FOOT + 0.1 * SIZE)
    assert settle_fraction(page, word).text == "3/25c"


def test_a_cent_sign_that_was_not_read_is_seen_beside_its_figures() -> None:
    page = draw(420, 220, Setting("19", 80, FOOT, SIZE), Setting("c", 86 + width_of("19", SIZE), FOOT, SIZE))
    right = 90 + width_of("19c", SIZE)
    word = read_as("19", 80, [("1", SIZE), ("9", SIZE)], top=FOOT - 0.8 * SIZE, bottom=FOOT + 0.1 * SIZE)
    wide = PlacedWord("19", 80, word.top, right, word.bottom, 58, 0.99, 0, word.centres)
    assert with_cent(page, wide, 1).text == "19¢"
    bare = draw(420, 220, Setting("19", 80, FOOT, SIZE))
    assert with_cent(bare, wide, 1).text == "19"


def test_a_point_lost_in_a_column_of_amounts_is_given_back() -> None:
    size, rows = 40.0, ("12.50", "18.75", "44.25")
    settings = [Setting(text, 300 - width_of(text, size), 60 + 60 * k, size) for k, text in enumerate(rows)]
    left = 300 - width_of("32.00", size)
    settings += [Setting("32", left, 240, size), Setting("00", left + width_of("32.", size) + 2, 240, size)]
    page = draw(420, 300, *settings)

    def word(text: str, foot: float) -> PlacedWord:
        pieces = [(c, size) for c in text]
        start = 300 - width_of("32.00", size)
        placed = read_as(text, start, pieces, top=foot - 0.75 * size, bottom=foot + 2)
        return PlacedWord(text, start, placed.top, 302, placed.bottom, 0.72 * size, 0.99, 0, placed.centres)

    column = [word(text, 60 + 60 * k) for k, text in enumerate(rows)]
    page_below = draw(420, 360, *settings, Setting("65", 300 - width_of("65", size), 300, size))
    left = 300 - width_of("65", size)
    below = read_as("65", left, [("6", size), ("5", size)], top=300 - 0.75 * size, bottom=302)
    below = PlacedWord("65", left, below.top, 302, below.bottom, 0.72 * size, 0.99, 0, below.centres)
    assert settle_numerals(page_below, [*column, below])[-1].text == ".65"
    assert settle_numerals(page_below, [below])[-1].text == "65"
    assert settle_numerals(page, [*column, word("3200", 240)])[-1].text == "32.00"
    assert settle_numerals(page, [word("3200", 240)])[-1].text == "3200"


def test_small_raised_figures_are_cents_in_a_column_of_amounts_though_a_leader_was_read_with_them() -> None:
    size, small, foot = 16.0, 9.0, 120.0
    left = 200 - width_of("1", size) - 1 - width_of("29", small)
    rows = [("1.79", 40.0), (".99", 80.0), ("1.59", 160.0)]
    settings = [Setting(text, 200 - width_of(text, size), at, size) for text, at in rows]
    page = draw(
        300, 200, *settings, Setting("1", left, foot, size), Setting("29", 200 - width_of("29", small), foot - 5, small)
    )
    pieces = [(".", size), ("1", size), ("2", small), ("9", small)]
    word = replace(read_as(".129", left - width_of(".", size), pieces, top=foot - 13, bottom=foot + 2), type_px=12.0)
    column = [
        PlacedWord(text, 200 - width_of(text, size), at - 13, 200, at + 2, 12.0, 0.99, 0, ()) for text, at in rows
    ]
    assert settle_numerals(page, [*column, word])[-1].text == "1.29"
    assert settle_numerals(page, [word])[-1].text == "129"


def test_points_alone_have_no_glyphs() -> None:
    page = draw(420, 220, Setting(". . .", 80, FOOT, SIZE))
    assert glyphs_of(page, PlacedWord("...", 80, 120, 180, 150, 20, 0.6, 0, (90.0, 120.0, 150.0))) == []


def test_a_letter_among_display_figures_is_the_figure_it_looks_like() -> None:
    size = 0.5 * SIZE
    page = draw(420, 220, Setting("68", 80, FOOT, SIZE), Setting("c", 84 + width_of("68", SIZE), FOOT - 32, size))
    word = read_as("6Sc", 80, [("6", SIZE), ("8", SIZE), ("c", size)], top=FOOT - 0.8 * SIZE, bottom=FOOT + 2)
    assert [w.text for w in settle_numerals(page, [word])] == ["68¢"]


def test_raised_figures_whose_places_both_lie_on_the_first_are_read_by_their_ink() -> None:
    page, word = price("$1", "39", 0.5 * SIZE, 0.36 * SIZE)
    first = word.centres[2] - 6
    misread = replace(word, text="$130", confidence=0.83, centres=(*word.centres[:2], first - 8, first + 8))
    assert [w.text for w in settle_numerals(page, [misread])] == ["$1.39"]


def test_a_quote_among_display_figures_is_a_raised_figure() -> None:
    page, word = price("$4", "99", 0.5 * SIZE, 0.36 * SIZE)
    assert [w.text for w in settle_numerals(page, [replace(word, text="$4”9")])] == ["$4.99"]


def test_a_bracket_among_display_figures_is_a_one() -> None:
    page, word = price("$1", "19", 0.5 * SIZE, 0.36 * SIZE)
    assert [w.text for w in settle_numerals(page, [replace(word, text="$]19")])] == ["$1.19"]


@pytest.mark.parametrize("hangs", [16, 18])
def test_a_numeral_is_looked_at_with_room_where_the_line_above_was_taken_for_a_figure(hangs: int) -> None:
    """Draw "$1 19", its first two letters touching, a stroke of the line above hanging into its box."""
    one = 80 + width_of("$", SIZE) - 6
    after = one + width_of("1", SIZE) + 2
    cents = Setting("19", after, FOOT - 0.36 * SIZE, 0.5 * SIZE)
    page = draw(420, 220, Setting("$", 80, FOOT, SIZE), Setting("1", one, FOOT, SIZE), cents).copy()
    end, top, rule = after + width_of("19", 0.5 * SIZE), FOOT - 0.9 * SIZE, int(FOOT - 0.36 * SIZE)
    page[int(top) - 20 : int(top) + hangs, int(one) + 28 : int(one) + 34] = page.min()
    page[rule - 2 : rule + 4, int(after) : int(end)] = page.min()  # a rule under the cents, of one piece with them
    centres = (80 + width_of("$", SIZE) / 2, one + width_of("1", SIZE) / 2, end - 12)
    word = PlacedWord("$19", 72, top, end + 8, FOOT + 0.1 * SIZE, 0.72 * SIZE, 0.8, 0, centres)
    assert [w.text for w in settle_numerals(page, [word])] == ["$1.19"]


@pytest.mark.parametrize(("across", "said"), [(30, ["8¢"]), (70, [])])
def test_a_plate_beside_a_cup_is_no_sum(across: int, said: list[str], monkeypatch: pytest.MonkeyPatch) -> None:
    page = np.full((220, 420), 230, np.uint8)
    cv2.ellipse(page, (150, 110), (across, 40), 0, 0, 360, 20, 6)
    cv2.ellipse(page, (250, 90), (16, 18), 0, 0, 360, 20, 5)
    word = PlacedWord("8", 150.0 - across - 4, 66.0, 154.0 + across, 154.0, 84.0, 0.6, 0, (150.0,))
    cup = Raised(Glyph(232.0, 70.0, 268.0, 110.0), "¢", 0.6)
    monkeypatch.setattr(numerals, "raised_beside", lambda *_: (cup, set()))
    text = [PlacedWord("plates", 10.0 + 60 * i, 4.0, 60.0 + 60 * i, 14.0, 8.0, 0.9, 1, ()) for i in range(3)]
    assert [w.text for w in settle_numerals(page, [word, *text])][:-3] == said

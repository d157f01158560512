"""Signs given back, prices joined, order of reading: on words written here, no network needed."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from adminer.reading.compose import _once
from adminer.reading.join import join_lines, join_prices
from adminer.reading.letters import Letter, ReadLine
from adminer.reading.order import reading_order
from adminer.reading.placed import PlacedWord
from adminer.reading.signs import restore_signs
from adminer.reading.words import capital_height, split_words


def word(text: str, left: float = 0.0, *, cent: float = 0.0, dollar: float = 0.0, size: float = 12.0) -> PlacedWord:
    right = left + 0.6 * size * len(text)
    return PlacedWord(text, left, 0, right, size, size, 0.95, 0, (), cent=cent, dollar=dollar)


def texts(words: list[PlacedWord]) -> list[str]:
    return [w.text for w in words]


# Misreadings of these kinds: trade.md E.3 ("always 39° for a raised cent sign") and the table of causes of issue 3.
@pytest.mark.parametrize(
    ("read", "cent", "dollar", "meant"),
    [
        ("35e", 0.0, 0.0, "35¢"),
        ("39°", 0.0, 0.0, "39¢"),
        ("294", 0.02, 0.0, "29¢"),
        ("2/33<", 0.0, 0.0, "2/33¢"),
        ("S3.25", 0.0, 0.0, "$3.25"),
        ("81.49", 0.0, 0.05, "$1.49"),
        ("3oe", 0.0, 0.0, "30¢"),
        ("Si.oo", 0.0, 0.0, "$1.00"),
        ("$r.8g,", 0.0, 0.0, "$1.89,"),
        ("§z.75", 0.0, 0.0, "$2.75"),
        ("$S2.15", 0.0, 0.0, "$2.15"),
        ("(toc", 0.0, 0.0, "(10c"),
        ("3ßc", 0.0, 0.0, "38c"),
        ("zc.", 0.0, 0.0, "2c."),
        ("17½/2c", 0.9, 0.0, "17½c"),
        ("171½c", 0.9, 0.0, "17½c"),
        ("171/2C", 0.0, 0.0, "17½¢"),
        ("52%c", 0.9, 0.0, "52½c"),
        ("14$", 0.0, 0.0, "14¢"),
        ("3/S1", 0.0, 0.0, "3/$1"),
        ("10/S1", 0.0, 0.0, "10/$1"),
        ("45ce", 0.0, 0.0, "45c"),
        ("794.", 0.02, 0.0, "79¢."),
        ("S.33", 0.0, 0.0, "$.33"),
        (".2.95", 0.0, 0.0, "2.95"),
    ],
)
def test_a_sign_that_was_half_seen_is_given_back(read: str, cent: float, dollar: float, meant: str) -> None:
    assert texts(restore_signs([word(read, cent=cent, dollar=dollar)])) == [meant]


@pytest.mark.parametrize(
    "text", ["294", "1954", "24lbs", "303", "81.49", "dinner", "S", "8", "5-piece", "30/-", "Sir.gi", "zoo", "roc"]
)
def test_what_shows_no_sign_is_left_alone(text: str) -> None:
    assert texts(restore_signs([word(text)])) == [text]


def test_pence_above_eleven_are_halves_among_sterling_only() -> None:
    read = [word("9/-"), word("1d."), word("91d."), word("112d"), word("32d"), word("18d"), word("12d")]
    assert texts(restore_signs(read)) == ["9/-", "1d.", "9½d.", "11½d", "3½d", "18d", "12d"]
    assert texts(restore_signs([word("32d")])) == ["32d"]


def test_shillings_get_their_slash_back_among_shillings() -> None:
    read = [
        word("35/-"),
        word("471-"),
        word("80)-"),
        word("60-"),
        word("42/"),
        word("24-piece"),
        word("31-"),
        word("6j-"),
    ]
    assert texts(restore_signs(read)) == ["35/-", "47/-", "80/-", "60/-", "42/-", "24-piece", "3/-", "6/-"]
    assert texts(restore_signs([word("471-"), word("dinner")])) == ["471-", "dinner"]


def test_the_page_decides_which_cent_sign_is_meant() -> None:
    assert texts(restore_signs([word("15c"), word("20c"), word("25e")])) == ["15c", "20c", "25c"]


@pytest.mark.parametrize(("gap", "meant"), [(3.0, ["$3.75"]), (14.0, ["$3", "75"])])
def test_dollars_and_cents_are_one_price_only_when_they_stand_close(gap: float, meant: list[str]) -> None:
    left = word("$3")
    assert texts(join_prices([left, word("75", left.right + gap)])) == meant


@pytest.mark.parametrize(("cents", "meant"), [("50,", ["$3.50,"]), ("50", ["$3", "50", "sheets"])])
def test_a_lost_point_leaves_dollars_and_cents_further_apart(cents: str, meant: list[str]) -> None:
    left = word("$3")
    right = word(cents, left.right + 0.7 * left.type_px)
    after = word("sheets", right.right + 5)
    assert texts(join_prices([left, right])) == [f"$3.{cents}"]
    assert texts(join_prices([left, right, after]))[: len(meant)] == meant


@pytest.mark.parametrize(("apart", "meant"), [(9.0, ["29c"]), (16.0, ["2", "9c"])])
def test_figures_of_one_number_that_was_taken_apart_are_put_together(apart: float, meant: list[str]) -> None:
    first, rest = replace(word("2"), centres=(5.0,)), replace(word("9c", apart), centres=(5.0 + apart, 12.0 + apart))
    assert texts(join_prices([first, rest])) == meant


def test_a_comma_in_the_place_of_the_point_is_a_point() -> None:
    assert texts(join_prices([word("$1:49"), word("$25,000"), word("$3,25,")])) == ["$1.49", "$25,000", "$3.25,"]


def test_pieces_of_a_line_are_one_line_and_columns_are_not() -> None:
    owner = join_lines({0: (0, 0, 100, 20), 1: (104, 1, 200, 21), 2: (240, 0, 300, 20), 3: (0, 24, 100, 44)})
    assert owner == {0: 0, 1: 0, 2: 2, 3: 3}


@given(
    st.lists(st.tuples(st.integers(0, 500), st.integers(0, 500), st.integers(1, 200), st.integers(1, 60)), max_size=25)
)
def test_reading_order_names_every_line_once(boxes: list[tuple[int, int, int, int]]) -> None:
    bounds = [(float(x), float(y), float(x + w), float(y + h)) for x, y, w, h in boxes]
    assert sorted(reading_order(bounds)) == list(range(len(bounds)))


def test_a_headline_is_read_before_the_columns_under_it() -> None:
    boxes = [(300.0, 60.0, 500.0, 80.0), (0.0, 0.0, 500.0, 40.0), (0.0, 60.0, 200.0, 80.0), (0.0, 85.0, 200.0, 105.0)]
    assert reading_order(boxes) == [1, 2, 3, 0]


def test_words_take_their_own_ink_and_leave_the_line_above_alone() -> None:
    strip = np.full((40, 200), 255, np.uint8)
    strip[12:30, 20:60] = 0
    strip[12:30, 120:180] = 0
    strip[0:4, 20:180] = 0
    letters = (Letter("A", 0.15, 1.0), Letter("B", 0.25, 0.8), Letter(" ", 0.45, 1.0), Letter("C", 0.75, 1.0))
    first, second = split_words(strip, ReadLine(letters))
    assert (first.text, first.left, first.right, first.top, first.bottom) == ("AB", 20, 60, 12, 30)
    assert (second.text, second.left, second.right) == ("C", 120, 180)
    assert first.confidence == pytest.approx(0.9)


def test_a_cent_sign_half_seen_before_a_stop_belongs_to_its_word() -> None:
    strip = np.full((40, 200), 255, np.uint8)
    strip[10:30, 10:150] = 0
    letters = [
        Letter(c, (20 + 30 * k) / 200, 0.9, cent) for k, (c, cent) in enumerate([("7", 0), ("4", 0.1), (".", 0)])
    ]
    (found,) = split_words(strip, ReadLine(tuple(letters)))
    assert found.cent == 0.1


def test_capital_height_allows_for_tails_and_small_letters() -> None:
    assert capital_height("Hat", 20, 30) == 20
    assert capital_height("gap", 19, 30) == pytest.approx(20, abs=0.1)
    assert capital_height("sun", 14, 30) == pytest.approx(20, abs=0.1)


def placed(text: str, left: float, top: float, right: float, bottom: float, line: int) -> PlacedWord:
    return PlacedWord(text, left, top, right, bottom, bottom - top, 0.99, line, ())


def test_cents_whose_box_reaches_over_the_dollars_beside_them_leave_them_there() -> None:
    dollars, cents = placed("6", 157, 345, 192, 385, 0), placed("99", 166, 342, 219, 374, 1)
    assert _once([cents, dollars]) == [cents, dollars]


def test_cents_read_once_more_within_the_whole_price_are_dropped() -> None:
    whole, cents = placed("$6.99", 140, 345, 219, 385, 0), placed("99", 190, 342, 219, 374, 1)
    assert _once([whole, cents]) == [whole]


@pytest.mark.parametrize(
    ("read", "meant"),
    [("WITH$3 order", ["WITH", "$3", "order"]), ("US$3 order", ["US$3", "order"]), ("Plates$", ["Plates$"])],
)
def test_a_sum_right_behind_a_word_is_a_word_of_its_own(read: str, meant: list[str]) -> None:
    strip = np.full((20, 12 * len(read)), 240, np.uint8)
    strip[4:16, ::2] = 10
    letters = tuple(Letter(c, (k + 0.5) / len(read), 0.99) for k, c in enumerate(read))
    assert [w.text for w in split_words(strip, ReadLine(letters))] == meant

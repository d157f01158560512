"""Texts that name nothing by themselves and lean on what was named before. Wordings invented."""

from __future__ import annotations

from dataclasses import replace

import pytest

from adminer.parsing import parse_page
from adminer.parsing.items.assign import Pairing
from adminer.parsing.items.leaning import leans, with_goods_before
from adminer.parsing.prices.prices import find_prices
from adminer.parsing.segments.items import cut_segments
from tests.parsing.items.test_entries import items, whys
from tests.parsing.pages import NO_NAMES, Line, advert_text, parse, reading_of


@pytest.mark.parametrize(
    ("text", "alone"),
    [
        ("men's", True),
        ("3 pairs", True),
        ("The odd ones", True),
        ("Slightly imperfect", True),
        ("elsewhere", True),
        ("Panorama", False),
        ("“panorama”", False),
        ("Brown teapots", False),
        ("17", False),
    ],
)
def test_a_measure_a_grade_or_whom_it_is_for_leans(text: str, *, alone: bool) -> None:
    assert leans(text) is alone


def row(y: int, label: str, price: str, x: int = 40) -> list[Line]:
    return [(x, y, 14, label), (420, y, 14, price)]


def test_rows_of_a_list_that_name_only_a_kind_are_of_the_row_that_names_goods() -> None:
    advert = parse(
        *row(100, "Vinegar, bulk, gal.", "27c"),
        *row(124, "Oatmeal Bowls, best", "69c"),
        *row(148, "Seconds", "49c", x=60),
        *row(172, "Others", "39c", x=60),
        *row(196, "Laundry Soap", "10c"),
    )
    found = items(advert)
    assert found["49c"] == "Oatmeal Bowls, best Seconds"
    assert found["39c"] == "Oatmeal Bowls, best Others"
    assert found["10c"] == "Laundry Soap"
    assert "named before" in whys(advert)["39c"]


def test_a_label_leans_on_the_row_over_it_where_the_prices_are_read_after_all_labels() -> None:
    labels = ["Vinegar, bulk, gal.", "Oatmeal Bowls, best", "Seconds", "Laundry Soap"]
    advert = parse(
        *((40, 100 + 24 * i, 14, label) for i, label in enumerate(labels)),
        *((420, 100 + 24 * i, 14, price) for i, price in enumerate(["27c", "69c", "49c", "10c"])),
    )
    assert items(advert)["49c"] == "Oatmeal Bowls, best Seconds"


def test_a_label_of_a_list_leans_on_no_sentence_over_it() -> None:
    advert = parse(
        (40, 40, 14, "Our buyers look at the glaze, the foot and the kettles"),
        (40, 62, 14, "before they take a crate of them from the kiln."),
        *row(86, "Seconds", "49c"),
        *row(110, "Others", "39c"),
    )
    assert items(advert)["39c"] == "Others"


def test_words_within_a_line_lean_on_goods_of_their_own_text_alone() -> None:
    lines: list[Line] = [(40, 40, 14, "We show kettles of all shapes here"), (40, 62, 14, "Zanzo, 35c, others 50c")]
    reading = reading_of(lines)
    parted = replace(reading, words=tuple(replace(w, block=w.line) for w in reading.words))
    assert items(parse_page(reading, NO_NAMES)[0])["50c"] == "show kettles others"
    assert items(parse_page(parted, NO_NAMES)[0])["50c"] == "others"


def test_a_measure_leans_on_the_goods_before_its_own_prices() -> None:
    advert = advert_text((20, 20, 14, "Long Beet 5c."), (20, 40, 14, "Barn Onion, 6c; oz., 22c."))
    beet, *onion = find_prices(advert, [])
    segments = cut_segments(advert, [(p.start, p.end) for p in (beet, *onion)], [beet, *onion])
    told = [next(s for s in segments if s.text == text) for text in ("Long Beet", "oz")]
    pairings = with_goods_before(advert, [[beet], onion], [Pairing(s, 0.0, "") for s in told], segments, ())
    assert [p.heading and p.heading.text for p in pairings] == [None, "Barn Onion"]

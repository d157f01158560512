"""Strokes that are printed rules and strokes that are type. All invented."""

from __future__ import annotations

from adminer.parsing import parse_page
from adminer.parsing.text.printed_rules import printed_rules
from adminer.records import Box
from tests.parsing.pages import NO_NAMES, Line, reading_of

LINES: list[Line] = [
    (40, 40, 20, "CANNED PEARS"),
    (40, 80, 12, "Sweet halves in syrup"),
    (40, 100, 12, "packed on the hillside"),
    (40, 120, 12, "from ripe fruit only"),
    (40, 160, 60, "89¢"),
]


def kept(*rules: Box) -> tuple[Box, ...]:
    return printed_rules(reading_of(LINES, rules=rules))


def test_rules_over_between_and_beside_type_stay() -> None:
    rules = (Box(20, 66, 300, 3), Box(20, 30, 3, 200), Box(300, 30, 3, 200), Box(20, 230, 300, 4))
    assert kept(*rules) == rules


def test_a_stroke_of_letters_or_of_a_numeral_is_no_rule() -> None:
    assert kept(Box(40, 46, 120, 8)) == ()
    assert kept(Box(42, 160, 60, 5)) == ()
    assert kept(Box(50, 165, 6, 50)) == ()


def test_a_stroke_that_leans_out_of_a_numeral_is_a_rule() -> None:
    rule = Box(120, 100, 12, 160)
    assert kept(rule) == (rule,)


def test_a_scratch_through_the_lines_is_no_rule() -> None:
    assert kept(Box(50, 70, 2, 75)) == ()


def test_a_stroke_of_its_letters_parts_no_name_from_its_price() -> None:
    stroke = Box(39, 46, 135, 8)  # longer than the word by a pixel
    (advert,) = parse_page(reading_of(LINES, rules=(stroke,)), NO_NAMES)
    assert [o.item for o in advert.offers] == ["CANNED PEARS"]

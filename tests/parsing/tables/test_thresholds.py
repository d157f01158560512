"""Sums under a head of tapes are what must be bought first, no prices."""

from __future__ import annotations

from adminer.parsing import parse_page
from tests.parsing.pages import NO_NAMES, Line, reading_of

PLAN = (
    ("Tea cup", "$5", ".19", ".45"),
    ("Saucer", "$5", ".15", ".29"),
    ("Dessert dish", "$7.50", ".22", ".39"),
    ("Dinner plate", "$15", ".49", ".75"),
)


def plan(head: str) -> list[Line]:
    lines: list[Line] = [(290, 100, 16, head), (420, 100, 16, "WITH TAPES"), (600, 100, 16, "WITHOUT TAPES")]
    for i, (piece, *sums) in enumerate(PLAN):
        lines += [(20, 130 + 26 * i, 16, piece)]
        lines += [(x, 130 + 26 * i, 16, text) for x, text in zip((300, 460, 640), sums, strict=True)]
    return lines


def prices_under(head: str) -> list[tuple[str, list[str]]]:
    (advert,) = parse_page(reading_of(plan(head)), NO_NAMES)
    return [(o.item, [p.text for p in o.prices]) for o in advert.offers]


def test_what_must_be_saved_in_tapes_is_no_price() -> None:
    for head in ("TAPES", "Register receipts", "In tapes"):
        assert prices_under(head) == [(piece, sums[1:]) for piece, *sums in PLAN]


def test_a_head_of_two_lines_that_says_with_or_without_heads_prices() -> None:
    lines = [line for line in plan("Tapes") if line[3] != "WITHOUT TAPES"]
    lines += [(600, 75, 16, "without"), (600, 100, 16, "purchase")]
    (advert,) = parse_page(reading_of(lines), NO_NAMES)
    assert [[p.text for p in o.prices] for o in advert.offers] == [sums[1:] for _, *sums in PLAN]


def test_a_head_that_says_with_how_much_in_tapes_heads_prices() -> None:
    lines = [line for line in plan("SUGGESTED") if not line[3].startswith("WITH")]
    heads = [
        (x, 75 + 25 * i, 16, t)
        for x, head in ((420, "WITH $15"), (600, "with each $5"))
        for i, t in enumerate((head, "in tapes"))
    ]
    (advert,) = parse_page(reading_of([*lines, *heads]), NO_NAMES)
    assert [[p.text for p in o.prices] for o in advert.offers] == [list(sums) for _, *sums in PLAN]


def test_under_another_head_the_same_sums_are_prices() -> None:
    assert ("Dinner plate", ["$15", ".49", ".75"]) in prices_under("Value")


def test_a_head_over_free_pieces_still_heads_the_prices_under_them() -> None:
    lines: list[Line] = [(420, 100, 16, "WITH TAPES"), (600, 100, 16, "WITHOUT TAPES")]
    rows = [("Fruit dish", "FREE", ".35"), ("Soup plate", "FREE", ".45"), ("Butter plate", "FREE", ".29")]
    for i, row in enumerate([*rows, *((piece, *sums[1:]) for piece, *sums in PLAN)]):
        lines += [(x, 130 + 26 * i, 16, text) for x, text in zip((20, 460, 640), row, strict=True)]
    (advert,) = parse_page(reading_of(lines), NO_NAMES)
    found = {(o.item, p.text): p.condition for o in advert.offers for p in o.prices}
    assert found["Dinner plate", ".49"] == "with_purchase"
    assert found["Dinner plate", ".75"] == found["Soup plate", ".45"] == "everyone"

"""Lists of open stock: each row is an offer of its own, whatever sets are told of around it. Texts invented."""

from __future__ import annotations

from adminer.records import Advert
from tests.parsing.pages import Line, parse

ROWS = (
    ("5-pc. Place Setting", "2.45"),
    ("Platter, 12-inch", "1.85"),
    ("Sugar and Creamer", "3.10"),
    ("Teapot", "3.75"),
)


def items(advert: Advert) -> dict[str, str]:
    return {p.text: o.item for o in advert.offers for p in o.prices}


def stock(y: int = 20) -> list[Line]:
    names: list[Line] = [(20, y + 26 * i, 16, piece) for i, (piece, _) in enumerate(ROWS)]
    return [*names, *((420, y + 26 * i, 16, sum_) for i, (_, sum_) in enumerate(ROWS))]


def test_a_set_with_a_price_on_its_row_is_no_title_of_the_rows_under_it() -> None:
    assert items(parse(*stock())) == {sum_: piece for piece, sum_ in ROWS}


def test_a_gift_with_a_set_told_under_the_last_row_is_not_what_the_row_offers() -> None:
    gift: Line = (20, 20 + 26 * len(ROWS), 16, "Free with any 45-piece set: 8 crystal goblets")
    assert items(parse(*stock(), gift))["3.75"] == "Teapot"


def test_prices_on_one_row_with_goods_between_them_are_of_two_lists() -> None:
    lines: list[Line] = [(20, 20, 16, "For your register slips and the small sum named with any $10 order:")]
    for i, (left, low, right, high) in enumerate(
        (("Dinner Plates", "25c", "Platter", "49c"), ("Tea Cup", "15c", "Cake Plate", "29c"))
    ):
        y = 46 + 22 * i
        lines += [(20, y, 14, left), (230, y, 14, low), (280, y, 14, right), (480, y, 14, high)]
    lines[2] = (230, 46, 14, "25c with slips")
    assert items(parse(*lines))["49c"] == "Platter"


def test_a_row_of_a_table_under_a_note_about_its_sets_is_named_by_its_own_cell() -> None:
    rows = (("Dinner Plates", ".65", ".75", "1.10"), ("Tea Cups", ".70", ".85", "1.25"), ("Soups", ".55", ".65", ".90"))
    sets = (("4-pc. Place Setting", "1.95", "2.35", "3.40"), ("5-pc. Place Setting", "2.45", "2.95", "4.25"))
    lines: list[Line] = [(20, 104, 16, "Place settings: plate, bread and butter, cup, saucer; with soup")]
    for i, row in enumerate((*rows, None, *sets)):
        if row is not None:
            lines += [(x, 20 + 28 * i, 16, cell) for x, cell in zip((20, 300, 400, 500), row, strict=True)]
    found = items(parse(*lines))
    assert found["1.95"] == found["3.40"] == "4-pc. Place Setting"

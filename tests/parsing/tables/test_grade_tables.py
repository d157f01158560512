"""Tables of sizes against grades, and of goods against packages: what each price is for."""

from __future__ import annotations

from adminer.parsing import parse_page
from adminer.records import Advert
from tests.parsing.pages import NO_NAMES, Line, reading_of

COLUMNS = (20, 260, 380, 520, 640, 800)


def table(*rows: tuple[str, ...], below: str = "") -> Advert:
    lines: list[Line] = [(100, 20, 30, "Thornapple Carpet Works")]
    for i, row in enumerate(rows):
        lines += [(x, 120 + 28 * i, 16, cell) for x, cell in zip(COLUMNS, row, strict=False) if cell]
    if below:
        lines.append((20, 120 + 28 * len(rows), 16, below))
    (advert,) = parse_page(reading_of(lines), NO_NAMES)
    return advert


def items(advert: Advert) -> list[tuple[str, list[str]]]:
    return [(o.item, [str(p.amount) for p in o.prices]) for o in advert.offers]


def test_a_price_under_a_grade_is_for_the_grade_in_the_size_of_its_row() -> None:
    advert = table(
        ("Size", "Ingrain", "Chenille"),
        ("5 x 7 ft.", "$3.25", "6.40"),
        ("6 x 8 ft.", "4.10", "8.15"),
        ("8 x 11 ft.", "6.95", "12.60"),
    )
    assert sorted(items(advert)) == [
        ("Chenille 5 x 7 ft", ["6.40"]),
        ("Chenille 6 x 8 ft", ["8.15"]),
        ("Chenille 8 x 11 ft", ["12.60"]),
        ("Ingrain 5 x 7 ft", ["3.25"]),
        ("Ingrain 6 x 8 ft", ["4.10"]),
        ("Ingrain 8 x 11 ft", ["6.95"]),
    ]


def test_a_stop_in_the_label_of_a_row_ends_no_sentence() -> None:
    advert = table(
        ("", "Pkt.", "Oz.", "Lb."),
        ("Parsnip. Long Smooth", "5c", "9c", "$0.85"),
        ("Spinach. Thick Leaf", "5c", "8c", "0.65"),
        ("Celery. Silver Plume", "10c", "25c", "2.75"),
    )
    assert items(advert) == [
        ("Parsnip, Long Smooth", ["0.05", "0.09", "0.85"]),
        ("Spinach, Thick Leaf", ["0.05", "0.08", "0.65"]),
        ("Celery, Silver Plume", ["0.1", "0.25", "2.75"]),
    ]


def test_a_list_with_names_between_its_columns_of_prices_is_no_table_of_grades() -> None:
    advert = table(
        ("Chalk", "5c", "Ruler", "9c", "Ink well", "8c"),
        ("Slate", "12c", "Primer", "25c", "Pen holder", "3c"),
        ("Sponge", "4c", "Satchel", "65c", "Blotters", "7c"),
    )
    assert {("Ruler", ("0.09",)), ("Satchel", ("0.65",)), ("Pen holder", ("0.03",))} <= {
        (item, tuple(amounts)) for item, amounts in items(advert)
    }


def test_a_price_under_a_pattern_is_for_the_piece_of_its_row_in_that_pattern() -> None:
    advert = table(
        ("", "Winterlea", "Old Mill", "Heatherby"),
        ("", "stoneware", "fine ware", "bone ware"),
        ("Dinner plate. large", "$1.85", "2.60", "4.75"),
        ("Teacup", "1.50", "2.10", "3.60"),
        ("Sauce boat", "6.25", "9.00", "16.50"),
    )
    assert ("Winterlea Dinner plate, large", ["1.85"]) in items(advert)
    assert ("Heatherby Sauce boat", ["16.50"]) in items(advert)


def test_a_table_of_sizes_takes_its_goods_from_the_heading_and_both_lines_of_a_grade() -> None:
    lines: list[Line] = [(20, 20, 22, "Camp Tents"), (20, 66, 14, "Size"), (180, 66, 14, "Wall")]
    for x, weight in ((300, "8-oz."), (420, "10-oz.")):
        lines += [(x, 58, 13, weight), (x, 74, 13, "Duck")]
    rows = (
        ("7 x 7 ft.", "2½ ft.", "7.15", "8.40"),
        ("7 x 9 ft.", "3", "8.85", "9.30"),
        ("9 x 12 ft.", "3", "9.20", "9.95"),
    )
    for i, row in enumerate(rows):
        lines += [(x, 100 + 26 * i, 14, text) for x, text in zip((20, 180, 300, 420), row, strict=True)]
    (advert,) = parse_page(reading_of(lines), NO_NAMES)
    found = {p.text: o.item for o in advert.offers for p in o.prices}
    assert found["8.85"] == "Camp Tents, 8-oz. Duck 7 x 9 ft"
    assert found["9.95"] == "Camp Tents, 10-oz. Duck 9 x 12 ft"

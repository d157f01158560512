"""Rows of lists that tell only a size or a ditto mark go on with the goods above them."""

from __future__ import annotations

from adminer.parsing import parse_page
from adminer.parsing.prices.prices import find_prices
from adminer.parsing.tables.size_rows import size_rows
from adminer.parsing.text.cells import cells_of
from tests.parsing.pages import NO_NAMES, Line, advert_text, reading_of


def items(*lines: Line) -> list[str]:
    adverts = parse_page(reading_of(list(lines)), NO_NAMES)
    return [offer.item for advert in adverts for offer in advert.offers]


def rows(*labels: str) -> list[Line]:
    lines: list[Line] = []
    for number, label in enumerate(labels):
        y = 60 + 22 * number
        lines += [(20, y, 14, label), (330, y, 14, f"$1.{number + 1}0")]
    return lines


HEAD: Line = (90, 30, 18, "PIPE WRENCHES")


def test_bare_sizes_are_sizes_of_the_goods_in_the_heading() -> None:
    assert items(HEAD, *rows("8 in.", "10", "14")) == [
        "PIPE WRENCHES, 8 in",
        "PIPE WRENCHES, 10 in",
        "PIPE WRENCHES, 14 in",
    ]


def test_ditto_and_a_qualifier_go_on_with_the_heading() -> None:
    assert items(HEAD, *rows("Light, 8 in.", "do. 10 in.", "Heavy, 8 in.", "do. 10 in.")) == [
        "PIPE WRENCHES, Light, 8 in",
        "PIPE WRENCHES, Light 10 in",
        "PIPE WRENCHES, Heavy, 8 in",
        "PIPE WRENCHES, Heavy 10 in",
    ]


def test_a_size_goes_on_with_the_goods_of_the_row_above() -> None:
    assert items(*rows("Dish pan, 10 qt.", "14 qt.", "Kettle, 6 qt.", "8 qt."))[1::2] == [
        "Dish pan, 14 qt",
        "Kettle, 8 qt",
    ]


def test_rows_of_figures_without_goods_are_kinds_of_the_goods_in_the_heading() -> None:
    assert items((90, 30, 18, "NAILS, per pound"), *rows("8d and up", "6d bright", "3d fine")) == [
        "NAILS, 8d and up",
        "NAILS, 6d bright",
        "NAILS, 3d fine",
    ]


def test_a_second_price_beside_the_first_is_for_the_same_size() -> None:
    beside: list[Line] = [(420, 60 + 22 * n, 14, f"$9.{n + 1}0") for n in range(3)]
    advert = advert_text(HEAD, *rows("8 in.", "10", "14"), *beside)
    made, _ = size_rows(advert, cells_of(advert), find_prices(advert, []))
    assert [len(starts) for _, starts in made] == [2, 2, 2]


def test_a_ditto_goes_on_with_the_row_over_it_though_its_price_stands_apart() -> None:
    lines: list[Line] = [
        (60, 20, 20, "HAMS and FISH"),
        (20, 50, 16, "Bacon, sides"),
        (300, 50, 16, "19c"),
        (20, 76, 16, "Ditto, rashers"),
        (420, 76, 16, "27c"),
        (20, 102, 16, "Ditto, smoked"),
        (420, 102, 16, "31c"),
        (20, 128, 16, "Ditto, ends"),
        (420, 128, 16, "12c"),
    ]
    (advert,) = parse_page(reading_of(lines), NO_NAMES)
    found = {p.text: o.item for o in advert.offers for p in o.prices}
    assert found["27c"] == "Bacon rashers"
    assert found["12c"] == "Bacon ends"


def test_a_section_of_two_kinds_is_no_name_of_the_sizes_under_it() -> None:
    lines: list[Line] = [(60, 20, 20, "NAILS and SCREWS")]
    for i, (name, sum_) in enumerate((("8d", "4c"), ("6d", "5c"), ("3d fine", "7c"))):
        lines += [(20, 50 + 26 * i, 16, name), (420, 50 + 26 * i, 16, sum_)]
    (advert,) = parse_page(reading_of(lines), NO_NAMES)
    assert not any(o.item.startswith("NAILS and SCREWS, ") for o in advert.offers)


TITLE: Line = (60, 20, 30, "Quorlee Rugs, $3.60")
SIZES: tuple[Line, ...] = (
    (20, 200, 14, "Sizes and Prices"),
    *((20, 230 + 22 * i, 14, size) for i, size in enumerate(("6 x 9 ft.", "9 x 9 f.", "9 x 10 1 ft", "9 x 12 ft."))),
    *((330, 230 + 22 * i, 14, price) for i, price in enumerate(("$3.60", "5.20", "6.10", "6.90"))),
)


def test_a_list_of_nothing_but_sizes_is_of_the_goods_in_the_title_however_ill_its_fractions_are_read() -> None:
    found = items(TITLE, (40, 62, 18, "Both sides alike"), *SIZES)
    assert found[-4:] == [f"Quorlee Rugs, {size}" for size in ("6 x 9 ft", "9 x 9 f", "9 x 10 1 ft", "9 x 12 ft")]


def test_a_title_without_goods_names_no_sizes() -> None:
    text = advert_text((60, 20, 30, "Quorlee Days"), *SIZES)
    assert size_rows(text, cells_of(text), find_prices(text, [])) == ([], [])

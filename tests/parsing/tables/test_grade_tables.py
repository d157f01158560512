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


def by_amount(advert: Advert) -> dict[str, str]:
    return {p.text: o.item for o in advert.offers for p in o.prices}


def test_a_price_under_a_size_is_for_the_goods_of_its_row_in_that_size() -> None:
    advert = table(
        ("Size", "34 in.", "36 in.", "38 in."),
        ("Canvas apron, bibbed", "65c", "72c", "79c"),
        ("Denim overall", "$1.15", "1.25", "1.40"),
    )
    assert by_amount(advert)["72c"] == "Canvas apron, bibbed, 36 in"
    assert by_amount(advert)["1.40"] == "Denim overall, 38 in"


def test_sizes_told_by_bare_figures_take_the_word_at_their_left_and_their_goods_from_the_heading() -> None:
    lines: list[Line] = [(100, 20, 30, "Thornapple Outfitters"), (40, 90, 20, "COATS"), (20, 130, 16, "To fit chest")]
    lines += [(x, 130, 16, size) for x, size in zip((260, 340, 420), ("34", "36", "38"), strict=True)]
    rows = (('The "Moor," brown', "18/6", "19/6", "21/-"), ('The "Fell," grey', "22/-", "23/6", "25/-"))
    for i, row in enumerate(rows):
        lines += [(x, 160 + 28 * i, 16, cell) for x, cell in zip((20, 260, 340, 420), row, strict=True)]
    (advert,) = parse_page(reading_of(lines), NO_NAMES)
    assert by_amount(advert)["19/6"] == 'COATS, The "Moor," brown, chest 36'
    assert by_amount(advert)["25/-"] == 'COATS, The "Fell," grey, chest 38'


def test_each_of_two_heads_set_close_is_over_its_own_column() -> None:
    lines: list[Line] = [(20, 20, 22, "Garden Hose"), (20, 60, 14, "Length"), (200, 60, 14, "3-ply 5-ply Coupling")]
    rows = (("25 feet", "$2.10", "2.85", "25c"), ("50 feet", "3.90", "5.15", "27c"), ("75 feet", "5.40", "7.25", "29c"))
    for i, row in enumerate(rows):
        lines += [(x, 86 + 24 * i, 14, cell) for x, cell in zip((20, 200, 246, 300), row, strict=True)]
    (advert,) = parse_page(reading_of(lines), NO_NAMES)
    assert by_amount(advert)["5.15"] == "Garden Hose, 5-ply 50 feet"
    assert by_amount(advert)["29c"] == "Garden Hose, Coupling 75 feet"


def test_words_of_a_panel_beside_a_table_of_sizes_are_no_part_of_its_rows() -> None:
    lines: list[Line] = [(260, 60, 14, "Size"), (360, 60, 14, "Woven"), (440, 60, 14, "Tufted")]
    beside = ("Mats that outlast", "the winter and", "cost less")
    rows = (("2 x 3 ft.", "$1.10", "1.85"), ("3 x 4 ft.", "1.90", "2.75"), ("4 x 6 ft.", "3.40", "5.15"))
    for i, (text, row) in enumerate(zip(beside, rows, strict=True)):
        lines.append((20 + 34 * i, 86 + 24 * i, 14, text))
        lines += [(x, 86 + 24 * i, 14, cell) for x, cell in zip((260, 360, 440), row, strict=True)]
    (advert,) = parse_page(reading_of(lines), NO_NAMES)
    assert by_amount(advert)["2.75"] == "Tufted 3 x 4 ft"


def test_a_sum_over_a_column_in_other_type_takes_no_price_from_it() -> None:
    lines: list[Line] = [(20, 20, 22, "Floor Rugs"), (150, 52, 21, "50c down")]
    rows = (("Wool, 9x12", "$16.50", "$11.75"), ("Grass, 9x12", "28.00", "21.50"), ("Rag, 6x9", "24.00", "17.25"))
    for i, row in enumerate((*rows, ("Fibre, 9x12", "42.50", "33.00"))):
        lines += [(x, 90 + 20 * i, 12, cell) for x, cell in zip((20, 152, 220), row, strict=True)]
    (advert,) = parse_page(reading_of(lines), NO_NAMES)
    assert by_amount(advert)["$16.50"].endswith("Wool, 9x12")
    assert by_amount(advert)["21.50"].endswith("Grass, 9x12")


def test_heads_of_short_words_in_two_lines_set_flush_right_name_their_columns() -> None:
    rows = (
        ("4 x 6 ft.", "$2.10", "$2.95", "$3.60"),
        ("6 x 9 ft.", "3.40", "4.75", "6.15"),
        ("9 x 9 ft.", "4.85", "6.90", "8.85"),
    )
    lines: list[Line] = [(20, 40, 16, "SIZE")]
    for right, over, under in (
        (320, "PENHURST", "Art Rug"),
        (480, "OAKLAND", "Tapestry"),
        (640, "ROYAL", "VELMONTAINE"),
    ):
        lines += [(right - round(8.8 * len(text)), y, 16, text) for y, text in ((30, over), (48, under))]
    for i, (size, *prices) in enumerate(rows):
        lines.append((20, 80 + 28 * i, 16, size))
        lines += [(right - 45, 80 + 28 * i, 16, p) for right, p in zip((320, 480, 640), prices, strict=True)]
    (advert,) = parse_page(reading_of(lines), NO_NAMES)
    found = dict(items(advert))
    assert found["PENHURST Art Rug 6 x 9 ft"] == ["3.40"]
    assert found["ROYAL VELMONTAINE 9 x 9 ft"] == ["8.85"]


def stoves(title: str) -> Advert:
    heads = ("Number", "Lids", "Weight", "Plain", "With Closet", "Tea Kettle")
    rows = (
        ("8-16", "6", "340", "$21.40", "$26.85", "$1.05"),
        ("8-18", "6", "385", "23.90", "29.60", "1.15"),
        ("9-20", "6", "441", "27.90", "33.95", "1.30"),
        ("9-22", "8", "520", "", "41.45", "1.45"),
    )
    lines: list[Line] = [(100, 10, 40, title)]
    lines += [
        (20, 70 + 20 * i, 16, f"the oven walls are packed to keep the heat, and more of the same {i}") for i in range(9)
    ]
    for i, row in enumerate((heads, *rows)):
        lines += [
            (x, 300 + 28 * i, 16, cell) for x, cell in zip((20, 120, 200, 320, 440, 620), row, strict=True) if cell
        ]
    (advert,) = parse_page(reading_of(lines), NO_NAMES)
    return advert


def test_a_table_of_numbers_is_of_the_goods_in_the_title_far_over_it() -> None:
    found = dict(items(stoves("The Six-Hole Steel Range")))
    assert found["The Six-Hole Steel Range, Plain 8-16"] == ["21.4"]
    assert found["The Six-Hole Steel Range, With Closet 9-22"] == ["41.45"]  # though its first column is blank
    assert found["Tea Kettle 9-20"] == ["1.30"]  # goods themselves


def test_the_name_of_a_works_over_a_table_is_no_name_of_its_goods() -> None:
    assert dict(items(stoves("Thornapple Steel Range Works")))["Plain 8-16"] == ["21.4"]


def test_the_head_of_a_column_stands_over_it_though_its_first_row_is_blank() -> None:
    advert = table(
        ("Size", "Woven", "Tufted", "Braided"),
        ("2 x 3 ft.", "$1.10", "1.85", ""),
        ("3 x 4 ft.", "1.90", "2.75", ""),
        ("4 x 6 ft.", "3.40", "5.15", "$5.95"),
        ("5 x 7 ft.", "4.60", "6.35", "7.45"),
        ("6 x 9 ft.", "6.80", "8.95", "9.90"),
    )
    assert by_amount(advert)["$5.95"] == "Braided 4 x 6 ft"
    assert by_amount(advert)["8.95"] == "Tufted 6 x 9 ft"


def test_the_sizes_of_beds_and_garments_in_heads_are_sizes_of_the_goods_of_a_row() -> None:
    for sizes in (("Twin", "Full", "Queen"), ("Small", "Medium", "Large")):
        advert = table(("", *sizes), ("Cotton quilt", "$12.50", "15.75", "18.40"), ("Robe", "21.00", "26.50", "31.25"))
        assert by_amount(advert)["15.75"] == f"Cotton quilt, {sizes[1]}"
        assert by_amount(advert)["31.25"] == f"Robe, {sizes[2]}"

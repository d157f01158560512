"""Tables that no heads explain: the cells left of the first price of a row name it."""

from __future__ import annotations

from adminer.parsing import parse_page
from adminer.parsing.prices.prices import find_prices
from adminer.parsing.tables.plain_tables import plain_rows
from adminer.parsing.text.cells import cells_of
from tests.parsing.pages import NO_NAMES, Line, advert_text, reading_of

GIFTS = (
    ("4-pc. place setting", "$4.95", "FREE", "FREE", "$7.95"),
    ("Vegetable bowl", "$8.95", "$5.95", "FREE", "$10.95"),
    ("14-in. platter", "$11.95", "$8.95", "$4.95", "$13.95"),
    ("Sugar & creamer", "$9.95", "$6.95", "$2.95", "$11.95"),
    ("Gravy boat", "$8.50", "$5.50", "$2.50", "$9.95"),
)


def gift_lines() -> list[Line]:
    lines: list[Line] = []
    for i, (name, *cells) in enumerate(GIFTS):
        lines.append((20, 160 + 26 * i, 16, name))
        for x, cell in zip((330, 430, 530, 660), cells, strict=True):
            lines.append((x, 160 + 26 * i, 16, cell))
    return lines


def test_the_name_at_the_left_goes_with_all_prices_of_its_row() -> None:
    heads: list[Line] = [(20, 130, 16, "Fine china"), (640, 130, 16, "Added pieces")]
    (advert,) = parse_page(reading_of(heads + gift_lines()), NO_NAMES)
    got = [(o.item, [p.text for p in o.prices]) for o in advert.offers]
    assert got == [(name, [c for c in cells if c != "FREE"]) for name, *cells in GIFTS]


def test_a_row_that_tells_a_size_goes_on_with_the_name_above_and_a_term_is_no_part_of_it() -> None:
    rows = (
        ("Mixing bowl", "1 qt.", "reg. 89¢", "59¢"),
        ("", "2 qt.", "reg. $1.19", "79¢"),
        ("Pie plate", "9 in.", "reg. $2.79", "$1.99"),
        ("", "10 in.", "reg. $4.29", "$3.17"),
    )
    lines: list[Line] = []
    for i, row in enumerate(rows):
        lines += [(x, 100 + 26 * i, 16, c) for x, c in zip((20, 200, 380, 520), row, strict=True) if c]
    text = advert_text(*lines)
    found, _ = plain_rows(text, cells_of(text), find_prices(text, []), frozenset())
    assert [segment.text for segment, _ in found] == [
        "Mixing bowl 1 qt", "Mixing bowl 2 qt", "Pie plate 9 in", "Pie plate 10 in"
    ]  # fmt: skip
    assert {len(starts) for _, starts in found} == {2}


def test_dates_before_the_names_of_a_schedule_are_no_names() -> None:
    rows = (("Mar. 14", "Dinner plate"), ("Mar. 21", "Salad plate"), ("Mar. 28", "Tea cup"), ("Apr. 4", "Saucer"))
    lines: list[Line] = []
    for i, (day, piece) in enumerate(rows):
        lines += [(20, 100 + 26 * i, 16, day), (160, 100 + 26 * i, 16, piece)]
        lines += [(400, 100 + 26 * i, 16, "19¢"), (520, 100 + 26 * i, 16, "49¢")]
    text = advert_text(*lines)
    found, _ = plain_rows(text, cells_of(text), find_prices(text, []), frozenset())
    assert [segment.text for segment, _ in found] == [piece for _, piece in rows]


def test_rows_without_goods_and_a_single_column_are_no_such_table() -> None:
    for names, columns in ((("Ward 1", "Ward 2", "Ward 3"), (400, 520)), (("Cup", "Saucer", "Bowl"), (400,))):
        lines: list[Line] = []
        for i, name in enumerate(names):
            lines.append((20, 100 + 26 * i, 16, name))
            lines += [(x, 100 + 26 * i, 16, f"$1.{20 + i}") for x in columns]
        text = advert_text(*lines)
        assert plain_rows(text, cells_of(text), find_prices(text, []), frozenset())[0] == []


def test_the_sizes_of_tyres_are_no_prices() -> None:
    text = advert_text((20, 100, 16, "6.50x13"), (200, 100, 16, "19.95"), (20, 130, 16, "7.35 x 14"))
    assert [p.text for p in find_prices(text, [])] == ["19.95"]


def test_patterns_over_columns_of_prices_go_with_the_piece_and_its_size() -> None:
    rows = (
        ("Dinner plates", "9 in.", "$5.40", "$6.75", "$9.60"),
        ("Breakfast plates", "8 in.", "4.30", "5.40", "7.80"),
        ("Soup plates", "", "4.80", "6.00", "8.40"),
        ("Fruit saucers", "5 in.", "2.15", "2.70", "4.10"),
    )
    lines: list[Line] = [(x, 100, 16, head) for x, head in ((340, "Alderney"), (480, "Quillon"), (620, "Tresco"))]
    for i, row in enumerate(rows):
        places = zip((20, 240, 352, 492, 632), row, strict=True)
        lines += [(x, 130 + 26 * i, 16, cell) for x, cell in places if cell]
    (advert,) = parse_page(reading_of(lines), NO_NAMES)
    items = {p.text: o.item for o in advert.offers for p in o.prices}
    assert items["$6.75"] == "Quillon Dinner plates 9 in"
    assert items["8.40"] == "Tresco Soup plates"
    assert items["2.15"] == "Alderney Fruit saucers 5 in"


def test_rows_that_tell_only_numbers_and_sizes_are_the_article_of_the_heading_over_them() -> None:
    lines: list[Line] = [
        (20, 60, 20, "NAIL HAMMERS"),
        (20, 90, 16, "Drop forged and polished, with a neck of eight sides."),
        (20, 130, 16, "No."), (160, 130, 16, "Length"), (320, 130, 16, "Each"), (460, 130, 16, "Per Doz."),
    ]  # fmt: skip
    for i, row in enumerate((("H11", "16 in.", "$1.35", "$14.40"), ("H12", "13 in.", "1.25", "13.20"),
                             ("H13", "7 in.", "1.05", "11.00"))):  # fmt: skip
        lines += [(x, 156 + 26 * i, 16, cell) for x, cell in zip((20, 160, 324, 470), row, strict=True)]
    (advert,) = parse_page(reading_of(lines), NO_NAMES)
    assert [o.item for o in advert.offers] == [f"NAIL HAMMERS, {size} in" for size in (16, 13, 7)]
    assert [[str(p.amount) for p in o.prices] for o in advert.offers][1] == ["1.25", "13.20"]


def test_former_prices_with_reg_before_them_and_what_stands_left_of_the_table_are_no_part_of_its_names() -> None:
    rows = (
        ("Dish Drainer", "2.37", "1.66"),
        ("Cook Set, seven pieces", "13.97", "9.99"),
        ("Kitchen Towels, terry", "3.78", "2.00"),
        ("Vinyl Tablecloth", "1.97", "1.27"),
    )
    lines: list[Line] = [(20, 124, 14, "Starter set"), (60, 172, 14, "platter, creamer")]
    for i, (name, former, now) in enumerate(rows):
        y = 100 + 24 * i
        lines += [(300, y, 14, name), (520, y, 14, "reg."), (570, y, 14, former), (660, y, 14, now)]
    (advert,) = parse_page(reading_of(lines), NO_NAMES)
    found = {o.item: [p.text for p in o.prices] for o in advert.offers}
    assert found["Vinyl Tablecloth"] == ["1.97", "1.27"]
    assert found["Cook Set, seven pieces"] == ["13.97", "9.99"]


def test_each_section_of_a_table_is_named_by_its_own_heading_though_its_goods_are_not_known() -> None:
    lines: list[Line] = [(80, 40, 20, "SHERRIES."), (300, 70, 12, "Per bott."), (400, 70, 12, "Per doz.")]
    tables = (
        (96, (("Pale or gold", "1/6", "17/-"), ("Fellside, dry", "2/3", "26/-"), ("Old Amber", "3/-", "35/-"))),
        (212, (("Sound Tawny", "2/-", "23/-"), ("Ruby, in wood", "2/9", "32/-"), ("White", "2/6", "29/6"))),
    )
    lines += [(90, 156, 20, "FENNISHES."), (300, 186, 12, "Per bott."), (400, 186, 12, "Per doz.")]
    for top, rows in tables:
        for i, row in enumerate(rows):
            lines += [(x, top + 18 * i, 14, cell) for x, cell in zip((20, 300, 400), row, strict=True)]
    (advert,) = parse_page(reading_of(lines), NO_NAMES)
    found = {p.text: o.item for o in advert.offers for p in o.prices}
    assert found["2/3"] == "SHERRIES, Fellside, dry"
    assert found["2/9"] == "FENNISHES, Ruby, in wood"


def test_a_row_of_a_page_that_curls_takes_no_name_of_the_row_over_it() -> None:
    rows = (("Mixing bowl", "1/6", "17/-"), ("Pie plate", "2/3", "26/-"), ("Sauce boat", "3/-", "35/-"))
    lines: list[Line] = []
    for i, row in enumerate(rows):
        lines += [(20, 100 + 14 * i, 16, row[0]), (300, 94 + 14 * i, 16, row[1]), (400, 94 + 14 * i, 16, row[2])]
    text = advert_text(*lines)
    found, _ = plain_rows(text, cells_of(text), find_prices(text, []), frozenset())
    assert [segment.text for segment, _ in found] == ["Mixing bowl", "Pie plate", "Sauce boat"]


def rows_of(lines: list[Line]) -> list[tuple[str, int]]:
    text = advert_text(*lines)
    found, _ = plain_rows(text, cells_of(text), find_prices(text, []), frozenset())
    return [(segment.text, len(starts)) for segment, starts in found]


def test_three_columns_make_a_table_of_two_rows_and_a_row_of_heads_is_none() -> None:
    heads: list[Line] = [
        (200, 60, 16, "PEARS."),
        (400, 90, 14, "Each."),
        (500, 90, 14, "Per $10"),
        (620, 90, 14, "Per 100"),
    ]
    rows = (("Standard, first class", ".50", "4.50", "40.00"), ("Standard, medium", ".40", "3.50", "30.00"))
    lines = [
        (x, 120 + 26 * i, 16, c) for i, row in enumerate(rows) for x, c in zip((20, 400, 500, 620), row, strict=True)
    ]
    assert rows_of(heads + lines) == [("PEARS, Standard, first class", 3), ("PEARS, Standard, medium", 3)]
    narrow = [line for line in lines if line[0] < 600]
    assert rows_of(heads[:1] + narrow) == []


def test_the_number_of_an_order_begins_a_row_of_another_table() -> None:
    lines: list[Line] = []
    for i, price in enumerate(("$5.98", "$9.95", "$19.45")):
        lines += [(20, 100 + 26 * i, 14, "Dinner plate"), (200, 100 + 26 * i, 14, price)]
        lines += [(300, 100 + 26 * i, 14, f"35 T 042{i}"), (500, 100 + 26 * i, 14, f"$2.{i}9")]
    assert rows_of(lines) == []
    assert len(rows_of([line for line in lines if line[0] != 300])) == 3


VINES = (("Early Red", "6c", "60c"), ("Dwarf Amber", "8c", "80c"), ("Mixed", "4c", "35c"))


def vine_items(heading: str) -> set[str]:
    lines: list[Line] = [
        (60, 40, 20, "BULBS AND ROOTS"), (20, 66, 14, "Tall or dwarf, true to name"), (170, 100, 14, heading),
        (250, 124, 14, "Each"), (330, 124, 14, "Doz."),
    ]  # fmt: skip
    for i, (name, *cells) in enumerate(VINES):
        lines.append((20, 148 + 24 * i, 14, name))
        lines += [(x, 148 + 24 * i, 14, cell) for x, cell in zip((250, 330), cells, strict=True)]
    (advert,) = parse_page(reading_of(lines), NO_NAMES)
    return {o.item for o in advert.offers}


def test_the_heading_right_over_the_heads_of_the_columns_names_what_kinds_stand_under_it() -> None:
    assert "TULIPS, POSTPAID, Dwarf Amber" in vine_items("TULIPS, POSTPAID")


def test_a_heading_of_two_goods_names_no_kind_under_it() -> None:
    assert "Dwarf Amber" in vine_items("TULIPS AND LILIES")


def cells(*rows: tuple[str, ...], top: int, columns: tuple[int, ...]) -> list[Line]:
    return [
        (x, top + 28 * i, 16, cell) for i, row in enumerate(rows) for x, cell in zip(columns, row, strict=True) if cell
    ]


def test_numbers_of_stock_stand_under_the_heading_of_two_goods() -> None:
    lines: list[Line] = [(20, 40, 26, "Jam and Jelly Kettles"), (20, 76, 16, "Tinned steel with a bail handle.")]
    rows = (
        ("3 gal.", "K-33", "$3.95", "$22.50"),
        ("5 gal.", "K-35", "4.60", "26.40"),
        ("8 gal.", "K-38", "5.25", "30.00"),
    )
    (advert,) = parse_page(reading_of([*lines, *cells(*rows, top=110, columns=(20, 160, 330, 480))]), NO_NAMES)
    assert {o.item for o in advert.offers} == {f"Jam and Jelly Kettles, {row[0].strip('.')} {row[1]}" for row in rows}


def test_the_head_of_a_column_is_no_heading_of_the_table() -> None:
    lines: list[Line] = [(20, 30, 30, "Linen Tray Cloths"), (20, 80, 16, "hemmed by hand and ready for use.")]
    lines += [(20, 120, 14, "SIZE IN INCHES"), (250, 120, 14, "REGULAR"), (420, 120, 14, "SALE")]
    rows = (("14 x 20", "$1.95", "$1.49"), ("16 x 22", "2.25", "1.69"), ("18 x 27", "2.95", "2.10"))
    (advert,) = parse_page(reading_of([*lines, *cells(*rows, top=150, columns=(20, 250, 420))]), NO_NAMES)
    assert {o.item for o in advert.offers} == {f"Linen Tray Cloths, {row[0]}" for row in rows}

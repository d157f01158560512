"""Price lists of the trade: rows named by their name cell and size, quantities from the heads of the columns."""

from __future__ import annotations

from adminer.parsing import parse_page
from adminer.parsing.text.column_words import kind_of_head
from adminer.records import Advert
from tests.parsing.pages import NO_NAMES, Line, reading_of

COLUMNS = (20, 120, 380, 560, 680)


def table(heads: tuple[str, ...], *rows: tuple[str, ...], over: str = "", slope: float = 0.0) -> Advert:
    lines: list[Line] = [(200, 20, 30, "Undine China Works"), (240, 60, 16, over)] if over else []
    for i, row in enumerate((heads, *rows)):
        lines += [(x, 120 + 28 * i, 16, cell) for x, cell in zip(COLUMNS, row, strict=True) if cell]
    (advert,) = parse_page(reading_of(lines, slope=slope), NO_NAMES)
    return advert


def items(advert: Advert) -> list[tuple[str, list[str]]]:
    return [(o.item, [str(p.amount) for p in o.prices]) for o in advert.offers]


def test_a_row_is_named_by_its_name_and_size_not_by_its_number_or_its_neighbours() -> None:
    advert = table(
        ("No.", "Article", "Size", "White", "Decorated"),
        ("101", "Dinner plate", "10 in.", "4.32", "6.84"),
        ("102", "Salad plate", "71/4 in.", "2.88", "4.56"),
        ("110", "Tea cup", "8.02", "3.00", "4.44"),
        ("130", "Platter", "13 in.", "11.40", "17.25"),
        over="Esplanade Shape: Net Prices per Dozen",
        slope=0.02,
    )
    assert items(advert) == [
        ("Dinner plate 10 in", ["4.32", "6.84"]),
        ("Salad plate 7¼ in", ["2.88", "4.56"]),
        ("Tea cup 8 oz", ["3.00", "4.44"]),
        ("Platter 13 in", ["11.40", "17.25"]),
    ]
    assert {p.per_unit for o in advert.offers for p in o.prices} == {"doz"}
    assert [o.piece_or_set for o in advert.offers] == ["dinner_plate", "salad_plate", "cup", "platter"]


def test_heads_give_quantities_and_a_row_without_a_name_goes_on_with_the_one_above() -> None:
    advert = table(
        ("No.", "Design", "Size", "Per 100", "Per 1,000"),
        ("7104", "Alpine Aster", "3-inch spray", "2.40", "21.00"),
        ("7104", "", "1-inch sprig", ".95", "8.25"),
        ("7111", "Dutch Tulip", "4-inch spray", "3.10", "27.50"),
        ("7111", "do.", "2-inch sprig", "1.05", "9.40"),
    )
    assert [item for item, _ in items(advert)] == [
        "Alpine Aster 3-inch spray", "Alpine Aster 1-inch sprig", "Dutch Tulip 4-inch spray", "Dutch Tulip 2-inch sprig"
    ]  # fmt: skip
    assert [int(p.per_quantity) for p in advert.offers[1].prices] == [100, 1000]


def test_a_figure_that_lost_its_point_gets_it_back_from_its_column() -> None:
    advert = table(
        ("No.", "Item", "Size", "Wholesale", "Retail"),
        ("1", "Dinner plate", "10 in.", "4.20", "36.50"),
        ("2", "Salad plate", "8 in.", "3 75", "3200"),
        ("3", "Tea cup", "", ".2.95", "39.75"),
        ("4", "Saucer", "", "65", "16.25"),
        ("5", "Fruit", "5 in.", "1.90", "18.00"),
    )
    assert [prices for _, prices in items(advert)] == [
        ["4.20", "36.50"], ["3.75", "32.00"], ["2.95", "39.75"], ["0.65", "16.25"], ["1.90", "18.00"]
    ]  # fmt: skip


def test_what_stands_under_the_table_is_none_of_its_rows() -> None:
    lines: list[Line] = [(x, 40, 16, head) for x, head in zip(COLUMNS[1:4], ("Item", "Size", "each"), strict=True)]
    for i, (name, size, price) in enumerate(
        [("Cup", "8 oz.", ".25"), ("Saucer", "6 in.", ".20"), ("Fruit", "5 in.", ".30")]
    ):
        lines += [(x, 68 + 28 * i, 16, cell) for x, cell in zip(COLUMNS[1:4], (name, size, price), strict=True)]
    lines += [(120, 300, 16, "16-pc. Starter Set"), (500, 300, 16, "16"), (560, 300, 16, "12.95")]
    (advert,) = parse_page(reading_of(lines), NO_NAMES)
    assert [item for item, _ in items(advert)] == ["Cup 8 oz", "Saucer 6 in", "Fruit 5 in", "16-pc. Starter Set"]
    assert [o.prices[0].per_unit for o in advert.offers] == ["each", "each", "each", None]


def test_names_at_the_left_of_a_wide_column_stand_under_a_head_in_its_middle() -> None:
    lines: list[Line] = [(20, 100, 16, "Number"), (300, 100, 16, "Article"), (600, 100, 16, "Per Dozen")]
    for i, (number, name, price) in enumerate(
        (("1402", "Low goblet", "2.40"), ("1403", "Tall sherbet", "2.25"), ("1404", "Ditto, cut star", "2.10"))
    ):
        lines += [(20, 130 + 28 * i, 16, number), (110, 130 + 28 * i, 16, name), (620, 130 + 28 * i, 16, price)]
    (advert,) = parse_page(reading_of(lines), NO_NAMES)
    assert [item for item, _ in items(advert)] == ["Low goblet", "Tall sherbet", "Tall sherbet, cut star"]


POINTS = (
    ("Whole corn, No. 2 can", "14 Points", "14¢"),
    ("Cooked prunes, jar", "10 Ponts", "19¢"),
    ("Navy beans, 2-lb. bag", "8 Points", "17¢"),
    ("Tomato juice, 47-oz.", "32 Points", "21¢"),
)


def test_a_column_of_points_between_name_and_price_is_no_name() -> None:
    lines: list[Line] = []
    for i, (name, points, price) in enumerate(POINTS):
        lines += [(20, 100 + 30 * i, 16, name), (400, 100 + 30 * i, 16, points), (560, 98 + 30 * i, 20, price)]
    (advert,) = parse_page(reading_of(lines, slope=0.02), NO_NAMES)
    assert [item for item, _ in items(advert)] == [name.strip(".") for name, _, _ in POINTS]


def test_pieces_of_a_service_keep_the_size_or_count_in_the_column_beside_them() -> None:
    lines: list[Line] = []
    rows = (
        ("Cereal Bowls", "set of 4", "$1.99"),
        ("Round Vegetable", "9-inch", "1.49"),
        ("Covered Sugar", "2 pieces", "1.79"),
    )
    for i, (name, size, price) in enumerate((*rows, ("Tea Server", "8-cup", "3.49"))):
        lines += [(20, 100 + 30 * i, 16, name), (400, 100 + 30 * i, 16, size), (560, 98 + 30 * i, 16, price)]
    (advert,) = parse_page(reading_of(lines), NO_NAMES)
    found = [item for item, _ in items(advert)]
    assert found == [
        "Cereal Bowls set of 4",
        "Round Vegetable 9-inch",
        "Covered Sugar 2 pieces",
        "Tea Server 8-cup",
    ]
    assert not any("mended" in offer.why for offer in advert.offers)


def test_a_column_of_counted_things_beside_prices_is_their_names() -> None:
    lines: list[Line] = []
    for i, (left, name, price) in enumerate(
        (("Kitchen", "2 Towels", "$1.29"), ("Bath", "4 Goblets", "$1.98"), ("Table", "6 Napkins", "$2.49"))
    ):
        lines += [(20, 100 + 30 * i, 16, left), (300, 100 + 30 * i, 16, name), (560, 98 + 30 * i, 16, price)]
    (advert,) = parse_page(reading_of(lines), NO_NAMES)
    assert all(name in item for (item, _), name in zip(items(advert), ("Towels", "Goblets", "Napkins"), strict=True))


def test_packages_set_close_before_the_prices_say_the_size_of_the_names_far_at_the_left() -> None:
    rows = (
        ("Valley coffee", "lb. tin 85¢"),
        ("Bartlett pears", "No. 2½ can 37¢"),
        ("Paper towels", "roll 2/37¢"),
        ("Grape jelly", "12-oz. jar 21¢"),
    )
    lines: list[Line] = [(20, 20, 60, "TIDEWELL")]
    for i, (name, price) in enumerate(rows):
        lines += [(20, 140 + 32 * i, 16, name), (560 - 8 * len(price), 140 + 32 * i, 16, price)]
    (advert,) = parse_page(reading_of(lines), NO_NAMES)
    assert [item.split()[0] for item, _ in items(advert)] == ["Valley", "Bartlett", "Paper", "Grape"]


def test_pails_and_packages_of_so_many_are_sizes_and_leaders_are_nothing() -> None:
    rows = (("Clover honey", "4-lb. pail 98¢"), ("Paper napkins", "pkg. of 60 25¢"), ("Apple juice", "48-oz. 29¢"))
    lines: list[Line] = [(20, 20, 60, "TIDEWELL")]
    for i, (name, price) in enumerate((*rows, ("Soda crackers", ".. 19¢"), ("Ginger snaps", ".. 17¢"))):
        lines += [(20, 140 + 32 * i, 16, name), (560 - 8 * len(price), 140 + 32 * i, 16, price)]
    (advert,) = parse_page(reading_of(lines), NO_NAMES)
    assert [item for item, _ in items(advert)] == [
        "Clover honey 4-lb. pail",
        "Paper napkins pkg. of 60",
        "Apple juice 48-oz",
        "Soda crackers",
        "Ginger snaps",
    ]


def test_an_order_form_names_its_articles_under_the_name_of_article() -> None:
    lines: list[Line] = [(20, 100, 16, "Cat. No."), (300, 100, 16, "Name of Article"), (600, 100, 16, "Price Each")]
    rows = (
        ("A110", "Breakfast set, 20 pieces", "5.98"),
        ("A114", "Sugar and creamer", "1.75"),
        ("A118", "Cake plate", ".98"),
    )
    for i, (number, name, price) in enumerate(rows):
        lines += [(20, 130 + 28 * i, 16, number), (140, 130 + 28 * i, 16, name), (640, 130 + 28 * i, 16, price)]
    (advert,) = parse_page(reading_of(lines), NO_NAMES)
    assert [item for item, _ in items(advert)] == [name for _, name, _ in rows]


def test_prices_tell_their_columns_whatever_the_heads_say() -> None:
    advert = table(
        ("No.", "Item", "Doz.", "Less", "Carton"),
        ("R-9", "Dinner plate", "2", "10.75", "9.60"),
        ("R-7", "Salad plate", "3", "7.80", "6.95"),
        ("R-5", "Butter plate", "3", "5.40", "4.85"),
    )
    assert items(advert) == [
        ("Dinner plate", ["10.75", "9.60"]),
        ("Salad plate", ["7.80", "6.95"]),
        ("Butter plate", ["5.40", "4.85"]),
    ]


def test_two_tables_side_by_side_are_read_each_under_its_own_heads() -> None:
    left = (("Dinner plate", ".28", "3.20"), ("Tea plate", ".19", "2.15"), ("Fruit", ".11", "1.20"))
    right = (("Platter, 10 in.", ".55"), ("Covered dish", "1.45"), ("Sauce boat", ".60"))
    lines: list[Line] = []
    for x, head in zip((80, 300, 380, 560, 760), ("Piece", "Each", "Dozen", "Piece", "Each"), strict=True):
        lines.append((x, 100, 16, head))
    for i, (one, other) in enumerate(zip(left, right, strict=True)):
        cells = zip((20, 300, 384, 480, 764), (*one, *other), strict=True)
        lines += [(x, 130 + 28 * i, 16, cell) for x, cell in cells]
    (advert,) = parse_page(reading_of(lines), NO_NAMES)
    got = {o.item: [p.text for p in o.prices] for o in advert.offers}
    assert got == {name.strip("."): prices for name, *prices in (*left, *right)}


def test_a_second_table_further_down_has_heads_of_its_own() -> None:
    lines: list[Line] = []
    for top, heads, rows in (
        (100, ("No.", "Item", "Size", "Less", "Lots"), (("R1", "Tea cup", "7 oz.", "7.15", "6.40"),
         ("R2", "Saucer", "6 in.", "4.65", "4.15"), ("R4", "Bouillon", "8 oz.", "7.30", "6.55"))),
        (300, ("No.", "Item", "Cap.", "Less", "Lots"), (("540", "Tumbler", "9 oz.", "1.32", "1.18"),
         ("548", "Juice glass", "5 oz.", ".96", ".84"), ("550", "Goblet", "10 oz.", "4.20", "3.72"))),
    ):  # fmt: skip
        for i, row in enumerate((heads, *rows)):
            lines += [(x, top + 28 * i, 16, cell) for x, cell in zip(COLUMNS, row, strict=True)]
    (advert,) = parse_page(reading_of(lines), NO_NAMES)
    assert [item for item, _ in items(advert)] == [
        "Tea cup 7 oz", "Saucer 6 in", "Bouillon 8 oz", "Tumbler 9 oz", "Juice glass 5 oz", "Goblet 10 oz"
    ]  # fmt: skip


def test_a_row_with_prices_is_no_row_of_heads_however_its_name_is_spelt() -> None:
    advert = table(
        ("No.", "Article", "Size", "White", "Decorated"),
        ("101", "Dinner plate", "10 in.", "4.32", "6.84"),
        ("120", "Platter", "13 in.", "11.40", "17.25"),
        ("131", "Baker", "9 in.", "8.70", "13.20"),
        ("132", "Creamer", "", "6.60", "9.90"),
    )
    assert [item for item, _ in items(advert)] == ["Dinner plate 10 in", "Platter 13 in", "Baker 9 in", "Creamer"]


def test_cents_under_a_head_of_prices_and_a_price_left_of_the_table() -> None:
    lines: list[Line] = [(20, 148, 16, "Jug to match $1.59")]
    rows = (
        ("Article", "Size", "Each", "6 for"),
        ("Oatmeal", "6 in.", "12c", "0.69"),
        ("Platter", "11 in.", "35c", "1.98"),
        ("Baker", "8 in.", "33c", "1.85"),
        ("Nappy", "9 in.", "38c", "2.15"),
    )
    for i, row in enumerate(rows):
        lines += [(x, 120 + 28 * i, 16, cell) for x, cell in zip((300, 420, 540, 660), row, strict=True)]
    (advert,) = parse_page(reading_of(lines), NO_NAMES)
    found = dict(items(advert))
    assert found["Oatmeal 6 in"] == ["0.12", "0.69"]
    assert found["Nappy 9 in"] == ["0.38", "2.15"]
    assert ["1.59"] in found.values()


def test_points_are_no_prices_and_a_list_ends_behind_its_last_column() -> None:
    lines: list[Line] = [(20, 100, 16, "Article"), (250, 100, 16, "Points"), (360, 100, 16, "Price")]
    for i, row in enumerate((("Peas", "16", "15c"), ("Corn", "14", "13c"), ("Spinach", "17", "18c"))):
        lines += [(x, 130 + 24 * i, 16, cell) for x, cell in zip((20, 260, 365), row, strict=True)]
    for i, meat in enumerate((("Sirloin", "43c"), ("Chuck roast", "30c"), ("Leg of lamb", "40c"))):
        lines += [(520, 130 + 24 * i, 16, meat[0]), (700, 130 + 24 * i, 16, meat[1])]
    (advert,) = parse_page(reading_of(lines), NO_NAMES)
    assert sorted(items(advert)) == [
        ("Chuck roast", ["0.3"]),
        ("Corn", ["0.13"]),
        ("Leg of lamb", ["0.4"]),
        ("Peas", ["0.15"]),
        ("Sirloin", ["0.43"]),
        ("Spinach", ["0.18"]),
    ]


def test_a_head_that_is_only_like_a_word_of_the_trade_is_none() -> None:
    assert kind_of_head("Closet") is None
    assert kind_of_head("Wholesae") == "price"
    assert kind_of_head("Points") == "other"

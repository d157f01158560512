"""Rows of tables and price lists: which lines of type are cells of one row, and in which order they are read."""

from __future__ import annotations

from itertools import count

from adminer.layout.recipe import Recipe
from adminer.layout.rules import Rect
from adminer.reading import read_page
from adminer.reading.rows import Cell, find_rows
from tests.reading.drawing import Setting, draw

SIZE, PITCH, LETTER = 14.0, 30.0, 9.0


def column(left: float, texts: list[str], top: float = 100.0, *, flush_right: bool = False) -> list[tuple[Rect, str]]:
    """Return lines of type under each other, empty ones left out, set from an edge or up to it."""
    placed = []
    for row, text in enumerate(texts):
        width, y = LETTER * len(text), top + PITCH * row
        x = left - width if flush_right else left
        placed += [((x, y, x + width, y + SIZE), text)] if text else []
    return placed


def rows_of(*columns: list[tuple[Rect, str]], rules: tuple[Rect, ...] = ()) -> set[str]:
    """Return the rows of more than one cell, their cells parted by a bar."""
    number = count()
    cells = [Cell(next(number), rect, SIZE, text) for placed in columns for rect, text in placed]
    return {" | ".join(cells[n].text for n in row) for row in find_rows(cells, rules) if len(row) > 1}


PIECES = ["Dinner plate", "Cup", "Covered sugar"]
EACH, DOZEN = [".98", ".79", "1.98"], ["9.75", "7.98", "19.50"]


def test_goods_and_their_columns_of_figures_are_rows() -> None:
    table = (column(50, PIECES), column(500, EACH, flush_right=True), column(620, DOZEN, flush_right=True))
    assert rows_of(*table) == {"Dinner plate | .98 | 9.75", "Cup | .79 | 7.98", "Covered sugar | 1.98 | 19.50"}


def test_a_place_of_a_table_may_be_empty_and_its_head_is_no_row() -> None:
    heads = [*column(50, ["Piece"], 70), *column(470, ["Each"], 70)]
    sparse = ["Dinner plate", "Cup", "Saucer", "Covered sugar", "Creamer"]
    figures = column(500, [".98", ".79", "", "1.98", "1.49"], flush_right=True)
    rows = rows_of(heads, column(50, sparse), figures)
    assert rows == {"Dinner plate | .98", "Cup | .79", "Covered sugar | 1.98", "Creamer | 1.49"}


def test_prices_over_and_between_the_rows_belong_to_them_only_where_most_stand_beside_goods() -> None:
    figures = column(500, ["2.50", "1.39", *EACH], top=40, flush_right=True)
    assert len(rows_of(column(50, PIECES), figures)) == 3
    gaps = ["Dinner plate", "", "Cup", "", "Covered sugar"]
    assert rows_of(column(50, gaps), column(500, [".98", "1.10", ".79", "2.20", "1.98"], flush_right=True)) == set()


def test_what_is_no_column_of_figures_makes_no_rows() -> None:
    ragged = [placed for x, row in ((500, 0), (560, 1), (530, 2)) for placed in column(x, [EACH[row]], 100 + 30 * row)]
    assert rows_of(column(50, PIECES), ragged) == set()
    apart = [placed for row in range(3) for placed in column(470, [EACH[row]], 100 + 150 * row)]
    assert rows_of([c for row in range(3) for c in column(50, [PIECES[row]], 100 + 150 * row)], apart) == set()
    assert rows_of(column(50, PIECES), column(500, EACH, top=109, flush_right=True)) == set()
    assert rows_of(column(50, PIECES), column(400, ["9 x 12 Rugs", "3 x 5 Rugs", "6 x 9 Rugs"])) == set()
    assert (
        rows_of(column(50, PIECES), column(400, ["2 for each of your family", "1 to a customer, please", "3"])) == set()
    )


def test_sizes_stand_behind_their_goods_and_open_the_rows_of_a_table_beside_another() -> None:
    sizes, rules = column(300, ["10 in.", "4 oz.", "9 oz."]), ((280.0, 80.0, 282.0, 200.0),)
    rows = rows_of(column(50, PIECES), sizes, column(500, EACH, flush_right=True), rules=rules)
    assert rows == {"Dinner plate | 10 in. | .98", "Cup | 4 oz. | .79", "Covered sugar | 9 oz. | 1.98"}
    tents = (column(50, ["7 x 9 ft.", "8 x 9 ft.", "9 x 9 ft."]), column(250, EACH, flush_right=True), sizes)
    assert "8 x 9 ft. | .79" in rows_of(*tents, column(500, DOZEN, flush_right=True))
    assert "4 oz. | 7.98" in rows_of(*tents, column(500, DOZEN, flush_right=True))


def test_two_prices_beside_two_lines_make_no_table_and_leaders_make_a_row() -> None:
    assert rows_of(column(50, PIECES[:2]), column(500, EACH[:2], flush_right=True)) == set()
    led = rows_of(column(50, ["Dinner plate ......", "Cup"]), column(500, EACH[:2], flush_right=True))
    assert led == {"Dinner plate ...... | .98"}
    worn = rows_of(column(50, ["Dinner plate .", "Cup."]), column(500, EACH[:2], flush_right=True))
    assert worn == {"Dinner plate . | .98"}


def test_numbers_of_a_catalogue_open_the_rows_of_their_table() -> None:
    numbers = column(50, ["35 K 110", "35 K 111", "35 K 112"])
    rows = rows_of(numbers, column(200, PIECES), column(500, EACH, flush_right=True))
    assert "35 K 111 | Cup | .79" in rows
    assert len(rows) == 3


def test_a_word_in_one_row_alone_stands_between_its_goods_and_its_price() -> None:
    rows = rows_of(column(50, PIECES), column(300, ["from"]), column(500, EACH, flush_right=True))
    assert rows == {"Dinner plate | from | .98", "Cup | .79", "Covered sugar | 1.98"}


def test_running_text_beside_a_price_list_is_no_part_of_its_rows() -> None:
    text = ["Never before have", "we been able to", "offer so handsome", "a table at so small", "a price as this."]
    prices = (column(400, PIECES), column(700, EACH, flush_right=True))
    alone = {"Dinner plate | .98", "Cup | .79", "Covered sugar | 1.98"}
    assert rows_of(column(50, text), *prices) == alone
    assert rows_of(column(50, text[:3]), *prices, rules=((370.0, 80.0, 372.0, 200.0),)) == alone
    centred = [placed for x, row in ((50, 0), (90, 1), (70, 2)) for placed in column(x, [text[row]], 100 + 30 * row)]
    assert rows_of(centred, *prices) == alone


def test_goods_that_lead_to_their_figures_are_none_for_the_text_of_a_panel_at_their_left() -> None:
    text, rules = column(50, ["eight plates", "eight cups", "a platter"]), ((330.0, 80.0, 332.0, 200.0),)
    led = column(350, ["36-pc. ware ......", "16-pc. set ......", "8-pc. set ......"])
    assert rows_of(text, led, column(700, EACH, flush_right=True), rules=rules) == {
        "36-pc. ware ...... | .98",
        "16-pc. set ...... | .79",
        "8-pc. set ...... | 1.98",
    }


def test_a_line_is_in_one_row_where_two_figures_stand_beside_it() -> None:
    columns = (column(50, PIECES), column(500, EACH, 95), column(520, DOZEN, 106))
    number = count()
    cells = [Cell(next(number), rect, SIZE, text) for placed in columns for rect, text in placed]
    assert sorted(n for row in find_rows(cells) for n in row) == list(range(9))


def test_two_price_lists_side_by_side_stay_two() -> None:
    left = (column(50, PIECES), column(300, EACH, flush_right=True), column(400, DOZEN, flush_right=True))
    right = (column(420, ["Skillet", "Dust pan", "Kettle"]), column(700, DOZEN, flush_right=True))
    whole = column(50, ["Dinner plate .98", "Cup .79", "Covered sugar 1.98"])
    assert {"Cup | .79 | 7.98", "Dust pan | 7.98"} <= rows_of(*left, *right)
    assert len(rows_of(*left, *right)) == 6
    assert rows_of(whole, *right) == {"Skillet | 9.75", "Dust pan | 7.98", "Kettle | 19.50"}
    numbers = (column(50, PIECES), column(270, ["35", "68", "21"]), right[0], column(700, ["42", "80", "27"]))
    assert {"Cup | 68", "Dust pan | 80"} <= rows_of(*numbers)


def test_prices_set_before_their_goods_do_not_close_the_rows_of_a_list_at_their_left() -> None:
    listed = (column(50, PIECES), column(400, EACH, flush_right=True))
    before = (column(520, ["67c", "3/$1", "1.44"], flush_right=True), column(530, ["Filler paper", "Socks", "Paint"]))
    assert rows_of(*listed, *before) == {"Dinner plate | .98", "Cup | .79", "Covered sugar | 1.98"}


def test_a_table_is_read_row_by_row_each_row_a_line_and_each_cell_a_block() -> None:
    settings = [
        Setting(text, x, 120 + 60 * row, 24)
        for row, texts in enumerate(
            (("Plate", "98c", "$1.35"), ("Saucer", "49c", "$1.10"), ("Creamer", "79c", "$2.45"))
        )
        for x, text in zip((60, 420, 660), texts, strict=True)
    ]
    reading = read_page(draw(900, 360, *settings), Recipe(name="plain", about="test"))
    assert [w.text.replace("¢", "c") for w in reading.words] == [setting.text for setting in settings]
    assert [w.line for w in reading.words] == [0, 0, 0, 1, 1, 1, 2, 2, 2]
    assert len({w.block for w in reading.words}) == 9


def test_figures_that_lines_of_a_column_of_text_end_with_make_no_table_beside_another() -> None:
    text = ["Caracul jackets, six", "inches long; these cost", "the maker as much again", "and muffs to match them"]
    prices = ["1/11¾.", "Cream delaine and", "printed do. at", "10½d.", "Odd sizes, from", "some makes, half", "5/3."]
    assert rows_of(column(50, [*text, *text[:3]]), column(400, prices)) == set()
    assert len(rows_of(column(50, text[:3]), column(400, ["1/11¾.", "10½d.", "5/3."]))) == 3

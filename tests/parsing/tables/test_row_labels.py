"""Which cells left of the prices of a row are its label, and which are of another panel. All invented."""

from __future__ import annotations

from adminer.parsing.prices.prices import find_prices
from adminer.parsing.tables.plain_tables import plain_rows
from adminer.parsing.text.cells import cells_of
from adminer.parsing.text.text import text_of
from adminer.records import Box
from tests.parsing.pages import Line, words_of

PRICES = (("$1.20", "$2.10"), ("1.45", "2.55"), ("1.75", "3.05"), ("2.30", "3.90"))


def items(beside: tuple[str, ...], labels: tuple[str, ...], *rules: Box, step: int = 0) -> list[str]:
    """Return the items of a table whose labels stand right of a panel with a text on each of its rows.

    Each text begins a `step` further right than the one over it, as round a picture.
    """
    lines: list[Line] = [(260, 60, 20, "Preserving Kettles")]
    for i, (text, label, prices) in enumerate(zip(beside, labels, PRICES, strict=True)):
        row = zip((20 + step * i, 260, 470, 580), (text, label, *prices), strict=True)
        lines += [(x, 100 + 26 * i, 14, cell) for x, cell in row]
    advert = text_of(words_of(lines), rules)
    made, _ = plain_rows(advert, cells_of(advert), find_prices(advert, []), frozenset())
    return [segment.text for segment, _ in made]


PANEL = ("Copper kettle", "Flour sieve", "Bread knife", "Nut cracker")
NAMES = ("Mixing bowl", "Pie plate", "Sauce boat", "Cake tin")
UPRIGHT = Box(225, 80, 2, 140)


def test_names_behind_an_upright_rule_are_the_labels_of_a_table() -> None:
    assert items(PANEL, NAMES, UPRIGHT) == list(NAMES)


def test_names_that_no_upright_rule_beside_them_parts_begin_the_labels() -> None:
    over, flat = Box(225, 20, 2, 60), Box(205, 90, 40, 30)
    for rules in ((), (over,), (flat,), (Box(10, 80, 2, 140),)):
        assert items(PANEL, NAMES, *rules) == list(PANEL)


def test_what_stands_left_of_the_sizes_is_no_part_of_a_label_in_a_table_that_tells_only_sizes() -> None:
    told = ("Tinned within", "and without, so", "that no brine", "will harm it")
    sizes = ("1 gal.", "2 gal.", "3 gal.", "5 gal.")
    assert items(told, sizes, step=34) == [f"Preserving Kettles, {size.strip('.')}" for size in sizes]

"""Cells of a table of prices that lost their points."""

from __future__ import annotations

from tests.parsing.pages import Line, parse

_NAMES = ("Cup", "Saucer", "Fruit dish", "Soup plate", "Oval platter", "Creamer")


def _prices(cells: tuple[str, ...], second: tuple[str, ...] = ()) -> list[str]:
    lines: list[Line] = [(40, 40 + 24 * k, 12, name) for k, name in enumerate(_NAMES)]
    lines += [(300, 40 + 24 * k, 12, text) for k, text in enumerate(cells)]
    lines += [(400, 40 + 24 * k, 12, text) for k, text in enumerate(second)]
    return sorted(f"{p.amount:.2f}" for o in parse(*lines).offers for p in o.prices)


def test_cells_without_a_point_are_read_as_those_of_their_column() -> None:
    assert _prices((".33", "45", ".69", ".88", "2.49", "179")) == ["0.33", "0.45", "0.69", "0.88", "1.79", "2.49"]


def test_points_read_as_other_marks_and_figures_read_as_letters_are_put_right() -> None:
    found = _prices(("1.33", "2-45", "L69", "3 88", "2.49", "1.79"))
    assert found == ["1.33", "1.69", "1.79", "2.45", "2.49", "3.88"]


def test_a_column_without_points_is_read_as_the_one_beside_it() -> None:
    found = _prices(("33", "33", "33", "33", "69", "69"), (".69", ".69", ".88", ".79", "1.49", "1.19"))
    assert found.count("0.33") == 4
    assert found.count("0.69") == 4


def test_figures_are_no_prices_where_no_cell_kept_its_point() -> None:
    assert _prices(("33", "45", "69", "88", "249", "179")) == []


def test_a_sum_far_from_all_others_is_left_alone() -> None:
    assert "89.00" not in _prices((".33", "45", ".69", ".88", "2.49", "8900"))


def test_figures_under_a_head_that_counts_are_no_prices() -> None:
    """Common practice, no source: a sale tells how many pieces are left of each kind beside what each is."""
    counted: list[Line] = [(380, 16, 12, "Pieces left"), (300, 16, 12, "Now"), (220, 16, 12, "Was")]
    for k, (name, was, now, left) in enumerate(
        zip(_NAMES, ("1.35", ".90", "1.95", "1.05", "2.25", "1.65"), (".90", ".60", "1.30", ".70", "1.50", "1.10"),
            ("96", "210", "75", "38", "140", "11"), strict=True)
    ):  # fmt: skip
        y = 40 + 24 * k
        counted += [(40, y, 12, name), (220, y, 12, was), (300, y, 12, now), (400, y, 12, left)]
    found = {f"{p.amount:.2f}" for o in parse(*counted).offers for p in o.prices}
    assert found == {"1.35", "0.90", "1.95", "1.05", "2.25", "1.65", "0.60", "1.30", "0.70", "1.50", "1.10"}

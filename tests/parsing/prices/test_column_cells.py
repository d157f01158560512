"""Cells of a column of prices whose sign or stroke was misread."""

from __future__ import annotations

from tests.parsing.pages import Line, parse

_NAMES = ("Kettle", "Basin", "Ladle", "Skillet", "Dipper", "Funnel", "Grater")


def _prices(*cells: str, names: tuple[str, ...] = _NAMES) -> list[str]:
    lines: list[Line] = [(40, 40 + 24 * k, 12, name) for k, name in enumerate(names[: len(cells)])]
    lines += [(400 - round(6.6 * len(text)), 40 + 24 * k, 12, text) for k, text in enumerate(cells)]
    return [f"{p.per_quantity}/{p.amount:.3f}" for o in parse(*lines).offers for p in o.prices]


def test_a_cell_without_its_sign_is_read_as_its_column_allows() -> None:
    found = _prices("$1.19", "42", "3 for 50c", "$i", "$1.10", "2/55", "$2.05")
    assert found == ["1/1.190", "1/0.420", "3/0.500", "1/1.000", "1/1.100", "2/0.550", "1/2.050"]


def test_leaders_and_a_worn_half_are_no_part_of_the_figures() -> None:
    found = _prices(".18", "...8", ".25", ". J1", ".45", ".1.27%", ".85")
    assert found == ["1/0.180", "1/0.080", "1/0.250", "1/0.110", "1/0.450", "1/1.275", "1/0.850"]


def test_a_stroke_read_as_a_one_or_a_point_and_an_eleven_read_as_a_letter_are_shillings() -> None:
    found = _prices("13/6", "2719", "12/9", "4/u", "6/3", "4.6", "8/11")
    assert found == ["1/0.675", "1/1.388", "1/0.638", "1/0.246", "1/0.312", "1/0.225", "1/0.446"]


def test_a_lot_and_a_sum_without_its_point_stand_among_their_like_alone() -> None:
    assert _prices("29¢", "5/28", "35¢", "45¢") == ["1/0.290", "1/0.350", "1/0.450"]
    assert _prices("$1.29", "35¢", "149", "45¢") == ["1/1.290", "1/0.350", "1/0.450"]
    assert _prices("$1.29", "$2.35", "149", "45¢")[2] == "1/1.490"


def test_a_figure_far_from_its_column_or_with_no_name_on_its_row_is_no_price() -> None:
    assert _prices(".11", ".22", "5000", ".18", ".14") == ["1/0.110", "1/0.220", "1/0.180", "1/0.140"]
    assert _prices("$1.19", "$1.05", "$2.65", "$1.40", "22", names=_NAMES[:4]) == [
        "1/1.190",
        "1/1.050",
        "1/2.650",
        "1/1.400",
    ]


def test_a_figure_far_below_a_column_is_no_part_of_it() -> None:
    lines: list[Line] = [(40, 300, 12, "Page"), (387, 300, 12, "22")]
    lines += [(40, 40 + 24 * k, 12, name) for k, name in enumerate(_NAMES[:5])]
    lines += [(367, 40 + 24 * k, 12, f"$1.{20 + k}") for k in range(5)]
    assert len([p for o in parse(*lines).offers for p in o.prices]) == 5


def test_the_head_of_one_column_is_no_unit_of_the_first_price_of_another() -> None:
    advert = parse(
        (20, 64, 14, "Fellside, dry"), (20, 88, 14, "Old Amber"),
        (300, 40, 14, "Per bott."), (400, 40, 14, "Per doz."),
        (300, 64, 14, "1/6"), (400, 64, 14, "17/-"), (300, 88, 14, "2/3"), (400, 88, 14, "26/-"),
    )  # fmt: skip
    units = {p.text: p.per_unit for o in advert.offers for p in o.prices}
    assert units["1/6"] is None


def test_a_unit_over_a_display_price_is_its_own() -> None:
    advert = parse((40, 40, 18, "CHUCK ROAST"), (40, 70, 24, "lb."), (40, 100, 80, "39¢"))
    assert [p.per_unit for o in advert.offers for p in o.prices] == ["lb"]

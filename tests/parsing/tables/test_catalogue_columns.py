"""Columns of a catalogue's table that name nothing: what a set weighs, what is paid down and by the month."""

from __future__ import annotations

from adminer.records import Advert
from tests.parsing.pages import Line, parse

_SETS = (
    ("20-piece set", "14 lbs.", "$2.39", "$0.50", "$0.60"),
    ("32-piece set", "24 lbs.", "$3.98", "$0.75", "$0.80"),
    ("53-piece set", "41 lbs.", "$7.45", "$1.00", "$1.25"),
)
_PLACES = (140, 340, 415, 490, 570)


def _table(*heads: str) -> Advert:
    lines: list[Line] = [(140, 10, 20, "“Starling” Dishes"), (140, 40, 12, "Cream body with green lines.")]
    lines += [(40, 70, 12, "No."), *((40, 95 + 22 * k, 12, f"11 H 61{k}") for k in range(len(_SETS)))]
    for column, (x, head) in enumerate(zip(_PLACES, heads, strict=True)):
        lines += [(x, 70, 12, head), *((x, 95 + 22 * k, 12, row[column]) for k, row in enumerate(_SETS))]
    return parse(*lines)


def test_what_a_set_weighs_is_no_part_of_its_name() -> None:
    items = {o.item for o in _table("Set", "Wt.", "Cash", "Down", "Month").offers}
    assert not any("lbs" in item for item in items)
    assert {"20-piece set", "32-piece set", "53-piece set"} <= items


def test_columns_under_heads_of_payments_hold_payments() -> None:
    roles = {p.text: p.role for o in _table("Set", "Wt.", "Cash", "Down", "Month").offers for p in o.prices}
    assert [roles[text] for text in ("$2.39", "$3.98", "$7.45")] == ["price"] * 3
    assert [roles[text] for text in ("$0.50", "$0.75", "$1.00")] == ["down_payment"] * 3
    assert [roles[text] for text in ("$0.60", "$0.80", "$1.25")] == ["instalment"] * 3


def test_a_weight_in_running_text_is_no_part_of_a_name() -> None:
    advert = parse((40, 30, 14, "Oval Roaster, wt. 6 lbs. 11 H 4070 — $1.49"))
    assert [o.item for o in advert.offers] == ["Oval Roaster"]


def test_an_order_number_with_hyphens_is_no_name_and_its_size_goes_with_the_head_of_the_list() -> None:
    lines: list[Line] = [
        (20, 40, 12, "Two coats on heavy steel, white with blue edge. Return what chips"),
        (20, 58, 12, "in ordinary use within the year."),
        (20, 82, 12, "D. Stew Pots, covered"),
    ]
    for i, (number, size, price) in enumerate((("401", "1½", ".89"), ("402", "2", "1.05"), ("403", "3", "1.29"))):
        lines.append((20, 100 + 18 * i, 12, f"14-K-{number}. {size} qt. ........ {price}"))
    advert = parse(*lines)
    assert {p.text: o.item for o in advert.offers for p in o.prices}["1.05"] == "D. Stew Pots 2"

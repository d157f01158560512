"""Names of patterns over their pieces. All invented."""

from __future__ import annotations

from adminer.records import Advert
from tests.parsing.pages import Line, parse


def items(advert: Advert) -> dict[str, str]:
    return {p.text: o.item for o in advert.offers for p in o.prices}


def under(*named: tuple[str, tuple[tuple[str, str], ...]]) -> Advert:
    lines: list[Line] = [(20, 10, 40, "Fenmarket Jewelers")]
    y = 90
    for name, rows in named:
        lines += [(60, y, 26, name), (64, y + 34, 11, "by Ellerdale")]
        y += 54
        for label, price in rows:
            lines.append((50, y, 16, f"{label} {price}"))
            y += 26
        y += 14
    return parse(*lines)


def test_a_piece_under_the_name_of_a_pattern_is_of_that_pattern() -> None:
    advert = under(
        ("Winterlea", (("place setting", "$21.95"),)),
        ("Moorgate", (("teaspoon", "$5.50"), ("place fork", "$11.25"))),
        ("Silver Fen", (("goblet", "$4.75"), ("wine", "$3.95"))),
    )
    assert items(advert) == {
        "$21.95": "Winterlea place setting",
        "$5.50": "Moorgate teaspoon",
        "$11.25": "Moorgate place fork",
        "$4.75": "Silver Fen goblet",
        "$3.95": "Silver Fen wine",
    }


def test_names_over_other_goods_head_sections_and_name_none_of_them() -> None:
    advert = under(
        ("Winterlea", (("hammer", "$2.95"),)),
        ("Moorgate", (("garden rake", "$5.50"),)),
        ("Fen", (("ladder", "$4.75"),)),
    )
    assert items(advert)["$5.50"] == "garden rake"


def test_two_names_are_too_few_for_a_list_of_patterns() -> None:
    advert = under(("Winterlea", (("place setting", "$21.95"),)), ("Moorgate", (("teaspoon", "$5.50"),)))
    assert items(advert)["$5.50"] == "teaspoon"


def test_a_piece_under_a_name_that_is_goods_as_well_is_of_no_other_pattern() -> None:
    advert = under(
        ("Winterlea", (("place setting", "$21.95"),)),
        ("Moorgate", (("teaspoon", "$5.50"),)),
        ("Silver Fen", (("goblet", "$4.75"),)),
        ("Smoke Lamp", (("wine", "$1.95"),)),
    )
    assert "Silver Fen" not in items(advert)["$1.95"]

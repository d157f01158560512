"""Lists whose prices stand in a column before their texts. Wares invented."""

from __future__ import annotations

from tests.parsing.pages import Line, parse

NOTE: tuple[Line, ...] = tuple((20, 600 + 18 * n, 14, "Open every evening until nine") for n in range(3))


def items(*rows: tuple[str, str]) -> dict[str, str]:
    """Return what each price is for in a list of prices set in a column before their texts."""
    prices: list[Line] = [(20, 100 + 20 * i, 14, price) for i, (price, _) in enumerate(rows) if price]
    texts: list[Line] = [(90, 100 + 20 * i, 14, text) for i, (_, text) in enumerate(rows)]
    return {p.text: o.item for o in parse(*prices, *texts, *NOTE).offers for p in o.prices}


def test_a_text_behind_a_price_does_not_run_on_into_the_next_row() -> None:
    got = items(
        ("25c", "Garden peas, sifted, No. 2"), ("19c", "pilchards, flat tin"), ("9c", "macaroni, long or cut"),
        ("31c", "apple butter, stone jar"),
    )  # fmt: skip
    assert got["19c"] == "pilchards, flat tin"
    assert got["9c"].startswith("macaroni")


def test_a_title_the_trade_does_not_list_is_named_whole_behind_its_price() -> None:
    got = items(
        ("$1.50", "The Farm Surgeon, 412 pages, cloth, with colored plates of"), ("", "the hoof."),
        (".85", "A Hundred Knots, by a Sailmaker."), (".65", "Jams for Winter, board covers."),
    )  # fmt: skip
    assert got["$1.50"] == "Farm Surgeon"
    assert got[".85"].startswith("Hundred Knots")

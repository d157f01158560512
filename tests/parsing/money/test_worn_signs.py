"""Shillings and piastres whose signs wore off, told by the prices around them. Wordings invented."""

from __future__ import annotations

from decimal import Decimal

import pytest

from adminer.parsing.money.foreign import find_foreign
from tests.parsing.pages import parse


def pounds(text: str) -> list[str]:
    return [str(round(a.amount * 20)) for a in find_foreign(text, sterling=True) if a.form == "sterling"]


def test_a_worn_stroke_is_believed_beside_whole_ones_and_trusted_less() -> None:
    text = "Brandy 35/- Sherry 53/- Port 471- Rum 80)- Gin 60- Cider 42/"
    found = find_foreign(text, sterling=True)
    assert pounds(text) == ["35", "53", "47", "80", "60", "42"]
    assert all(worn.trust < found[0].trust for worn in found[2:])


def test_a_hyphen_after_a_figure_is_no_shilling_sign_where_few_are_printed() -> None:
    assert pounds("Brandy 35/- Design 471- size 60-") == ["35"]
    assert pounds("Brandy 35/- Sherry 53/- sizes 60-65") == ["35", "53"]


@pytest.mark.parametrize(
    ("text", "pence"),
    [
        ("Quilts £4/41- Lamps 59/11", ["1008", "719"]),
        ("Sets £2/51. Cups 1/6", ["540", "18"]),
        ("Bottles bought at Id. each, jars 4d.", ["1", "4"]),
        ("under that lf3 is charged, boots 9/6", ["15", "114"]),
        ("Jacket 17/11V: vest 5/3", ["215.5", "63"]),
        ("Tea at 3/2l. and 2/10", ["38.5", "34"]),
    ],
)
def test_strokes_and_halves_in_worn_type_are_mended(text: str, pence: list[str]) -> None:
    found = find_foreign(text, sterling=True)
    assert [round(a.amount * 240, 1) for a in found] == [Decimal(p) for p in pence]


def test_no_pound_has_ninety_shillings() -> None:
    assert [a.amount for a in find_foreign("Spreads £3/97 Cups 1/6", sterling=True)] == [Decimal("0.075")]


def test_a_gap_inside_thirty_shillings_is_closed() -> None:
    assert pounds("Rings, any initial, 3 0/- each, brooches 20/-") == ["30", "20"]


def test_a_worn_piastre_sign_is_believed_beside_a_whole_one() -> None:
    whole = find_foreign("P.T. 258.5 or 2.T. 170.5", sterling=False)
    assert [a.amount for a in whole] == [Decimal("258.5"), Decimal("170.5")]
    assert find_foreign("2. T. 170", sterling=False) == []


def test_figures_under_a_price_in_piastres_on_rows_of_other_prices_are_piastres() -> None:
    advert = parse(
        (20, 20, 20, "Old brandy, 35/- or P.T. 170.5"),
        (20, 48, 20, "Pale brandy, 40/6"), (296, 48, 20, "197.5"),
        (20, 76, 20, "Rare brandy, 47/-"), (318, 76, 20, "229"),
        (318, 200, 20, "230"),
    )  # fmt: skip
    piastres = [str(p.amount) for o in advert.offers for p in o.prices if p.currency == "EGP-piastre"]
    assert sorted(piastres) == ["170.5", "197.5", "229"]


def test_figures_under_the_only_sign_of_a_column_on_rows_of_names_are_piastres() -> None:
    advert = parse(
        (20, 20, 16, "Fresh cheese"), (300, 20, 16, "P.T. 24"),
        (20, 50, 16, "Smoked tongue"), (342, 50, 16, "19½"),
        (20, 80, 16, "Dates"), (350, 80, 16, "9"),
        (350, 180, 16, "7"), (20, 220, 16, "Telephone"), (350, 220, 16, "614"),
    )  # fmt: skip
    piastres = [(o.item, str(p.amount)) for o in advert.offers for p in o.prices]
    assert piastres == [("Fresh cheese", "24"), ("Smoked tongue", "19.5"), ("Dates", "9")]


def test_worn_figures_before_or_after_a_piastre_sign_are_mended() -> None:
    found = find_foreign("Siphon P.T. 3O. Shades 14V and 26 P.T.", sterling=False)
    assert [a.amount for a in found] == [Decimal(30), Decimal("14.5"), Decimal(26)]

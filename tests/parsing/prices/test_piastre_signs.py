"""The signs of piastres as the trade set them and as readers leave them; invented adverts."""

from __future__ import annotations

from decimal import Decimal

import pytest

from adminer.parsing.money.foreign import find_foreign
from adminer.parsing.prices.prices import find_prices
from tests.parsing.pages import advert_text


@pytest.mark.parametrize(
    ("text", "sums"),
    [
        ("Rug P. Tr. 112 1/2, mat .......P.Tr. 27 1/2", ["112.5", "27.5"]),
        ("Hats P.T . 19 with veil", ["19"]),
        ("Rug, wool. P. 112 1/2, mats P.T. 19", ["112.5", "19"]),
        ("Meal, 7 lb. 11 .P.T., lamps... .18 -P.T.", ["11", "18"]),
        ("Caps, felt, from P.T: 22.", ["22"]),
        ("Prints at P.T. 4, 5½ and 7; silk P.T. 16", ["4", "5.5", "7", "16"]),
        ("Launch hire thirty piastres; by the dozen P.T. 9", ["30", "9"]),
        ("A service in porcelain, L.E. 4.750.", ["475"]),
        ("Rug Pt. 45, mats Pts. 12½", ["45", "12.5"]),
        ("Cream 2 PT. BOTTLE 19c, 1 Pt. 11c", []),
        ("PT 7\nPT 11\nP.T. 28\nP.T . 42", ["7", "11", "28", "42"]),
        ("Sandals, 18\nP.T. the pair", ["18"]),
    ],
)
def test_piastres_are_told_by_their_sign(text: str, sums: list[str]) -> None:
    assert [a.amount for a in find_foreign(text, sterling=False)] == [Decimal(s) for s in sums]


def test_the_sign_of_a_sum_is_not_said_again() -> None:
    found = find_prices(advert_text((40, 100, 16, "Caps, linen, 35 P.T., small boys 27. Open 9 to 12.")), [])
    assert [(p.amount.amount, p.amount.currency) for p in found] == [
        (Decimal(35), "EGP-piastre"),
        (Decimal(27), "EGP-piastre"),
    ]


@pytest.mark.parametrize(
    ("text", "second"),
    [
        ("Veils P.T. 18. formerly 30.", 30),
        ("Models. P.T. 120 to 200* each", 200),
        ("Socks at P.T. 9 the pair or 50 the half-dozen", 50),
    ],
)
def test_a_second_sum_of_a_thing_needs_no_sign(text: str, second: int) -> None:
    found = find_prices(advert_text((40, 100, 16, text)), [])
    assert [p.amount.amount for p in found][1:] == [Decimal(second)]


def test_a_figure_with_a_point_is_no_dollars_among_piastres() -> None:
    text = "Lamps 18 P.T., plates 9 P.T., brushes .73 and trams at 7.30"
    assert {p.amount.currency for p in find_prices(advert_text((40, 100, 16, text)), [])} == {"EGP-piastre"}


def test_a_sum_from_which_carriage_is_free_is_no_price() -> None:
    found = find_prices(advert_text((40, 100, 16, "Bowls 9 P.T. Rail paid on P.T. 200, free above P.T. 90.")), [])
    assert [p.amount.amount for p in found] == [Decimal(9)]


def test_figures_under_a_sign_alone_on_rows_of_names_are_piastres() -> None:
    rows = [("Rugs", "112 1/2"), ("Mats", "27½"), ("Trays", "9")]
    lines = [(x, 130 + 28 * i, 16, cell) for i, row in enumerate(rows) for x, cell in zip((40, 400), row, strict=True)]
    found = find_prices(advert_text((400, 100, 16, "P.Tr."), *lines), [])
    assert [p.amount.amount for p in found] == [Decimal("112.5"), Decimal("27.5"), Decimal(9)]
    assert find_prices(advert_text((400, 100, 16, "Size"), *lines), []) == []


def test_two_columns_under_signs_of_their_own_keep_all_their_cells() -> None:
    heads = (380, 100, 12, "P.T."), (500, 100, 12, "P.T.")
    rows = [("Corned beef", "4", "44"), ("Salmon, tall tin", "6½", "74"), ("Pilchards", "", "33"), ("Jam", "5", "54")]
    lines = [
        (x, 130 + 28 * i, 17 if "½" in cell else 12, cell)
        for i, row in enumerate(rows)
        for x, cell in zip((40, 385, 505), row, strict=True)
        if cell
    ]
    found = find_prices(advert_text(*heads, *lines), [])
    assert [p.amount.amount for p in found] == [Decimal(n) for n in ("4", "44", "6.5", "74", "33", "5", "54")]


def test_cells_of_piastres_lose_their_specks_and_worn_fractions() -> None:
    rows = [("Hams", "P.T. 19"), ("Tea", ":22½"), ("Coffee", "17½"), ("Sugar", "812"), ("Ale", ". 38")]
    lines = [
        (x, 100 + 28 * i, 16, cell)
        for i, row in enumerate(rows)
        for x, cell in zip((40, 400 - 9 * (len(row[1]) - 3)), row, strict=True)
    ]
    found = find_prices(advert_text(*lines), [])
    assert [p.amount.amount for p in found] == [Decimal(n) for n in ("19", "22.5", "17.5", "8.5", "38")]

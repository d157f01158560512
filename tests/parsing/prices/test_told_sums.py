"""Bare figures are cents or piastres where the list says once that its prices are; invented adverts."""

from __future__ import annotations

from decimal import Decimal

from adminer.parsing.prices.prices import find_prices
from tests.parsing.pages import Line, advert_text

TOLD: Line = (40, 60, 16, "Prices in ceuts unless the dollar is shown")
SIZES: list[Line] = [
    (40, 100, 16, "Tinware"),
    (300, 100, 16, "1 qt."),
    (400, 100, 16, "2 qts."),
    (500, 100, 16, "3 qts."),
]


def row(y: int, name: str, *cells: str) -> list[Line]:
    return [(40, y, 16, name), *((310 + 100 * i, y, 16, cell) for i, cell in enumerate(cells))]


GRID: list[Line] = [*SIZES, *row(130, "Kettles", "14", "17", "21"), *row(160, "Buckets", "9", "12½", "$1.15")]


def prices(*lines: Line) -> list[Decimal]:
    return [p.amount.amount for p in find_prices(advert_text(*lines), [])]


def test_the_figures_of_a_grid_are_cents_where_the_list_says_so() -> None:
    told = sorted(prices(TOLD, *GRID))
    assert told == [Decimal(n) for n in ("0.09", "0.125", "0.14", "0.17", "0.21", "1.15")]
    assert prices(*GRID) == [Decimal("1.15")]


def test_two_rows_of_two_are_a_grid_too() -> None:
    assert prices(TOLD, *row(130, "Pails", "39", "48"), *row(160, "Tubs", "44", "52")) == [
        Decimal(n) / 100 for n in (39, 48, 44, 52)
    ]


def test_a_figure_outside_the_grid_or_close_to_a_word_is_none() -> None:
    stray: list[Line] = [
        (40, 400, 16, "Lids"),
        (700, 400, 16, "44"),
        (40, 430, 16, "Page 7"),
        (40, 460, 16, "Sizes 10 12 15"),
    ]
    assert sorted(prices(TOLD, *GRID, *stray)) == sorted(prices(TOLD, *GRID))


def test_figures_after_leaders_are_piastres_where_the_list_says_so() -> None:
    rows = ("Whisky, old .25", "Gin, dry …18", "Port, tawny… 22½", "Vermouth, doz.… 116")
    lines: list[Line] = [(400 - round(8.8 * len(text)), 100 + 24 * i, 16, text) for i, text in enumerate(rows)]
    found = find_prices(advert_text(*lines, (40, 220, 16, "Prices tn plastres tariff, per bottle")), [])
    assert [(p.amount.amount, p.amount.currency) for p in found] == [
        (Decimal(sum_), "EGP-piastre") for sum_ in ("25", "18", "22.5", "116")
    ]

"""Figures without their cent sign become prices only where the prices around them say so; invented adverts."""

from __future__ import annotations

from decimal import Decimal

import pytest

from adminer.parsing.prices.prices import find_prices
from adminer.parsing.terms.terms import find_terms
from tests.parsing.pages import Line, advert_text, parse


def prices(*lines: Line) -> list[Decimal]:
    text = advert_text(*lines)
    return [p.amount.amount for p in find_prices(text, find_terms(text.joined))]


def cents(*figures: int) -> list[Decimal]:
    return [Decimal(n) / 100 for n in figures]


def column(*cells: str) -> list[Line]:
    names = ("Cup", "Saucer", "Fruit dish", "Soup plate", "Creamer")
    rows = [[(40, 100 + 30 * i, 16, names[i]), (400, 100 + 30 * i, 16, cell)] for i, cell in enumerate(cells)]
    return [line for row in rows for line in row]


def test_a_sign_read_as_a_figure_is_a_sign_again_in_a_column_of_cents() -> None:
    assert prices(*column("29¢", "194", "35¢", "656")) == cents(29, 19, 35, 65)


def test_a_five_that_ends_a_cell_under_dollars_is_a_figure_and_no_sign() -> None:
    assert prices(*column("29¢", "35¢", "$2.19", "$1.39", "155"))[-1] == Decimal("1.55")
    assert prices(*column("29¢", "35¢", "39¢", "25¢", "155"))[-1] == Decimal("0.15")


def test_a_sign_that_was_not_read_is_there_in_a_longer_column() -> None:
    assert prices(*column("29¢", "19", "35¢", "65¢")) == cents(29, 19, 35, 65)


def test_a_label_of_a_price_speaks_for_the_figures_after_it() -> None:
    lines = [(40, 100, 60, "29¢"), (40, 200, 16, "without card 494"), (400, 100, 60, "35¢")]
    assert Decimal("0.49") in prices(*lines)


def test_a_large_numeral_among_others_is_a_price() -> None:
    body = [(40, 300 + 20 * i, 14, "Marrowstone plates and dishes for every day") for i in range(3)]
    assert prices((40, 100, 60, "29¢"), (300, 100, 60, "39¢"), (560, 100, 60, "58"), *body) == cents(29, 39, 58)
    assert prices((40, 100, 60, "29¢"), (300, 100, 60, "39¢"), (560, 100, 60, "129"), *body) == cents(29, 39, 129)
    stamps = [(650, 95, 14, "EXTRA"), (650, 115, 14, "RED ROSE STAMPS")]
    assert prices((40, 100, 60, "29¢"), (300, 100, 60, "39¢"), (560, 100, 60, "50"), *stamps, *body) == cents(29, 39)


@pytest.mark.parametrize(
    "lines",
    [
        column("29¢", "194", "101", "656"),  # one cell with a sign is too few
        column("1.94", "194", "656"),  # no column of cents
        [*column("29¢", "35¢", "19¢"), (40, 400, 16, "Harbor Street 194")],  # not in the column
        [*column("29¢", "35¢", "19¢"), (40, 400, 16, "New dishes every week"), (40, 430, 60, "50")],  # no such numeral
    ],
)
def test_figures_stay_figures_where_nothing_speaks_for_a_price(lines: list[Line]) -> None:
    signed = [Decimal(line[3].rstrip("¢")) / 100 for line in lines if line[3].endswith("¢")]
    pointed = [Decimal(line[3]) for line in lines if "." in line[3]]
    assert prices(*lines) == signed + pointed


@pytest.mark.parametrize("text", ["Jan. 15 thru Sat., Jan. 17¢", "June 16.17", "Mixing bowls, nest of 3¢"])
def test_days_and_counts_are_no_prices(text: str) -> None:
    assert prices((40, 100, 16, text)) == []


@pytest.mark.parametrize(
    "text",
    [
        "Void without a purchase of $2.50 or more",
        "We deliver any order of $2 or more",
        "Free delivery on orders over $5",
        "One with $5, two with $10",
        "No. 38C of our list",
        "Goods carriage paid on $5 and over",
        "No C. O. D. under one dollar",
        "Every lot of $5 value carriage free",
        "When you have traded $10.00",
        "A stamp for 10c spent",
        "The carter was fined $5",
        "a new fund for the ward stands at $612",
        "Bonds of $455,000 for the school",
    ],
)
def test_what_must_be_bought_first_is_no_price(text: str) -> None:
    assert prices((40, 100, 16, text)) == []


def test_a_price_with_an_order_or_after_a_number_stays_one() -> None:
    assert prices((40, 100, 16, "Mail order, $2.50")) == [Decimal("2.50")]
    assert prices((40, 100, 16, "Set of two with tray, $10.00")) == [Decimal("10.00")]


def test_a_slash_read_as_a_one_is_a_slash() -> None:
    (found,) = find_prices(advert_text((40, 100, 16, "Tomato soup 3138¢")), [])
    assert (found.amount.quantity, found.amount.amount) == (Decimal(3), Decimal("0.38"))


def test_a_label_speaks_for_a_figure_that_ends_its_clause_and_a_raised_sign_may_leave_a_point() -> None:
    lines = [(40, 100, 60, "29¢"), (40, 200, 16, "Without coupon 79. One to a family"), (400, 100, 60, "35¢")]
    assert Decimal("0.79") in prices(*lines)
    assert Decimal("0.59") in prices(*lines, (700, 100, 60, "59."))
    assert Decimal("0.59") in prices(*lines, (700, 100, 60, "59:"))


def test_a_sign_read_as_a_nought_needs_a_label() -> None:
    lines = [(40, 100, 60, "29¢"), (40, 200, 16, "Our Reg. 890"), (400, 100, 60, "35¢")]
    assert Decimal("0.89") in prices(*lines)
    assert prices(*column("29¢", "150", "35¢", "65¢")) == cents(29, 35, 65)


def test_the_days_of_a_month_are_no_cents() -> None:
    lines = [*column("29¢", "19¢", "35¢"), (235, 250, 16, "Good Mar. 12, 13 and 14")]
    assert prices(*lines) == cents(29, 19, 35)


def test_leaders_that_swallow_a_point_carry_cents_where_the_column_has_points() -> None:
    rows = [(40, 100, 16, "Sheets"), (400, 100, 16, "1.09"), (40, 130, 16, "Cloths"), (409, 130, 16, ".69")]
    assert prices(*rows, (40, 160, 16, "Cases"), (347, 160, 16, "........27"))[-1] == Decimal("0.27")
    assert len(prices(*rows, (40, 160, 16, "Cases"), (540, 160, 16, "27"))) == 2


def test_sizes_under_their_head_are_no_prices() -> None:
    head = [(40, 60, 16, "Article"), (300, 60, 16, "Size"), (500, 60, 16, "White"), (650, 60, 16, "Decorated")]
    row = [(40, 100, 16, "Tea cup"), (296, 100, 16, "8.02"), (500, 100, 16, "3.00"), (660, 100, 16, "4.20")]
    advert = parse(*head, *row)
    assert {p.amount for o in advert.offers for p in o.prices} == {Decimal("3.00"), Decimal("4.20")}


def test_a_worn_sign_after_a_slash_before_a_unit_or_read_as_a_letter_is_told_by_the_column() -> None:
    advert = parse(
        (20, 20, 14, "Tomatoes"), (300, 20, 14, "23¢"),
        (20, 44, 14, "Rice"), (300, 44, 14, "19¢"),
        (20, 68, 14, "Lemons"), (300, 68, 14, "324 doz"),
        (20, 92, 14, "Peas"), (284, 92, 14, "2/176"),
        (20, 116, 14, "Oats"), (300, 116, 14, "27 o"),
    )  # fmt: skip
    found = {o.item: (str(o.prices[0].amount), str(o.prices[0].per_quantity)) for o in advert.offers}
    assert found == {
        "Tomatoes": ("0.23", "1"), "Rice": ("0.19", "1"), "Lemons": ("0.32", "1"), "Peas": ("0.17", "2"),
        "Oats": ("0.27", "1"),
    }  # fmt: skip


def test_a_count_that_opens_a_line_is_no_price() -> None:
    advert = parse((300, 20, 14, "23¢"), (300, 44, 14, "19¢"), (300, 68, 14, "24¢"), (300, 92, 14, "12 doz"))
    assert [str(p.amount) for o in advert.offers for p in o.prices] == ["0.23", "0.19", "0.24"]


def test_a_cell_read_as_one_word_with_its_leaders_is_told_by_the_right_edge_of_its_column() -> None:
    cells = (".......29¢", ".....2 for 75¢", ".....97e", ".......39", "...34sc")
    rows = [
        (400 - round(0.55 * 16 * len(c)) - (10 if " " in c else 0), 100 + 30 * i, 16, c) for i, c in enumerate(cells)
    ]
    assert sorted(prices((380, 70, 16, "15¢"), *rows)) == cents(15, 29, 34, 39, 75, 97)


def test_a_lot_for_a_dollar_is_told_among_prices_as_large() -> None:
    body = [(40, 300 + 20 * i, 14, "Marrowstone plates and dishes for every day") for i in range(3)]
    large = [(40, 100, 60, "29¢"), (300, 100, 60, "39¢")]
    found = find_prices(advert_text(*large, (560, 100, 60, "7/1"), *body), [])
    assert (found[-1].amount.quantity, found[-1].amount.amount) == (Decimal(7), Decimal(1))
    assert prices(*large, (560, 100, 14, "7/1"), *body) == cents(29, 39)  # in small type a date
    assert prices((560, 100, 60, "7/1"), *body) == []


def test_a_count_of_pairs_by_itself_belongs_to_the_price() -> None:
    (found,) = find_prices(advert_text((40, 100, 40, "3 prs. $1.97")), [])
    assert (found.amount.quantity, found.amount.unit) == (Decimal(3), "pair")


def test_a_lot_alone_on_its_row_lost_the_sign_that_the_others_kept() -> None:
    assert prices(*column("3/29¢", "19¢", "4/95", "35¢")) == cents(29, 19, 95, 35)


def test_what_may_be_a_day_or_a_half_is_no_lot() -> None:
    assert prices(*column("29¢", "19¢", "5/28", "35¢")) == cents(29, 19, 35)


def test_the_mark_of_pounds_before_a_price_is_no_number_of_a_style() -> None:
    assert prices((40, 40, 16, "White Spuds, 10# 35¢"), (40, 70, 16, "Style #14c, plain")) == cents(35)

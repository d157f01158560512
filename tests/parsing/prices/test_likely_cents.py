"""Worn figures that are prices in cents by their shape, their place and the prices around. Wordings invented."""

from __future__ import annotations

from decimal import Decimal

import pytest

from adminer.parsing.prices.prices import Found, find_prices
from tests.parsing.pages import advert_text

LIST = ("Lima beans 9c", "Barley 6c", "Brooms 39c")


def prices(*texts: str) -> list[Found]:
    lines = [(20, 20 + 40 * i, 16, text) for i, text in enumerate(texts)]
    return find_prices(advert_text(*lines), [])


def last_cents(*texts: str) -> Decimal | None:
    found = prices(*LIST, *texts)[len(LIST) :]
    return found[-1].amount.amount / found[-1].amount.quantity * 100 if found else None


@pytest.mark.parametrize(
    ("printed", "worth"),
    [
        ("Hominy 12ke", "12.5"),
        ("Hominy 1212°", "12.5"),
        ("Hominy 1212C", "12.5"),
        ("Hominy 171hc", "17.5"),
        ("Matting 421/hc", "42.5"),
        ("Hominy 6ze.", "6.5"),
        ("Hominy .22%½c", "22.5"),
        ("Hominy 914c", "9.25"),
        ("Fencing 2434c", "24.75"),
        ("Muslin, yard, 199c.", "19.5"),
        ("Ticking 222ac", "22.5"),
        ("Steak, lb. 29154", "29.5"),
    ],
)
def test_a_worn_fraction_is_told_by_the_cents_around_it(printed: str, worth: str) -> None:
    assert last_cents(printed) == Decimal(worth)


@pytest.mark.parametrize(
    ("printed", "worth"),
    [
        ("Radishes Sc", "5"),
        ("Soap, 3 for Sc.", "5"),
        ("A dish is sold at se", "5"),
        ("Scouring brush, Se", "8"),
        ("Roasting fowl ggc", "99"),
        ("Plate and cup, 34; bowls to match", "34"),
        ("Odd cups 15c to 40p.", "40"),
        ("Catfish, 3 lbs. 254", "25"),
        ("Prunes, 2 for 301;", "30"),
        ("Lids alone 2 dz. for 35s.", "35"),
        ("2/27q", "27"),
        ("Soup plates, with stands, were 85c\n59.", "59"),
        ('Pitcher with six glasses"49e', "49"),
        ("Ground chuck\n59lb.", "59"),
        ("Frying chickens\n33Cb.", "33"),
        ("Socks 19 the pair", "19"),
        ("Rulers, doz. 33", "33"),
        ("Corn, home grown 33k", "33"),
        ("Plate boil 29ch", "29"),
    ],
)
def test_a_worn_figure_is_a_price_where_place_and_prices_agree(printed: str, worth: str) -> None:
    found = prices(*LIST, *printed.split("\n"))[-1]
    assert found.amount.amount * 100 == Decimal(worth)
    assert found.amount.trust < prices("Lima beans 9c")[0].amount.trust


@pytest.mark.parametrize(
    "printed",
    [
        "High 61, low 40; fair",
        "Grapefruit, 80s, from the South",
        "Lawn food 20 lb.",
        "Be at the store at noon",
        "Corn flakes, lge. box",
        "Prunes 1 lb.\n14",
        "Oct. 12 and 13; come early",
        "No. 34; red",
        "Chicks, 4 for 100",
        "Trays, now S5e.",
        "Trays, size\n30q",
        "2/14",
        "Pendants, 14k gold",
        "Rugs, 9 x 12x",
    ],
)
def test_a_count_a_date_or_a_word_is_no_price(printed: str) -> None:
    assert last_cents(*printed.split("\n")) is None


@pytest.mark.parametrize("printed", ["12ke", "1212°", "Sc", "34;"])
def test_without_other_cents_nothing_is_mended(printed: str) -> None:
    assert all(p.amount.trust != 0.5 for p in prices(f"Hominy, {printed}"))


@pytest.mark.parametrize("printed", ["43ke", "1sc"])
def test_sums_the_trade_printed_no_fraction_with_are_left(printed: str) -> None:
    cents = last_cents(f"Hominy {printed}")
    assert cents is None or cents == int(cents)


def test_a_worn_lot_keeps_how_many_it_is_for() -> None:
    found = prices(*LIST, "Peas 2/25c", "Hominy 2/27q")[-1]
    assert (found.amount.amount, found.amount.quantity) == (Decimal("0.27"), Decimal(2))

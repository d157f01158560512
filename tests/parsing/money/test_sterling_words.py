"""Shillings and pence in words, in worn type and without any sign of their own. Wordings invented."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest

from adminer.parsing import parse_page
from adminer.parsing.money.foreign import find_foreign, speaks_sterling
from adminer.parsing.prices.prices import find_prices
from adminer.records import Block, Box, PageReading, Region
from tests.parsing.pages import NO_NAMES, advert_text, words_of


def pence(text: str) -> list[Fraction]:
    return [Fraction(a.amount).limit_denominator(480) * 240 for a in find_foreign(text, sterling=True)]


@pytest.mark.parametrize(
    ("text", "worth"),
    [
        ("Tape by the card, Sixpence", 6),
        ("a hank at twopence halfpenny", Fraction(5, 2)),
        ("Caps for one and ninepence", 21),
        ("the ream is ten shillings and sixpence", 126),
        ("six, without saucers, for five shillings\nand ninepence", 69),
        ("a muffin dish with its cover for six-and-six", 78),
        ("pans at half-a-crown", 30),
        ("Hairpins, penny each", 1),
        ("sold at a guinea and a half", 378),
        ("Overmantels, 14 gns.", 14 * 252),
        ("bags, 2½ guineas", 630),
    ],
)
def test_sums_in_words_are_pence(text: str, worth: int) -> None:
    # 12 pence to the shilling, 60 to the crown, 252 to the guinea: coinage before 1971, common knowledge
    assert speaks_sterling(text)
    assert pence(text) == [worth]


@pytest.mark.parametrize("text", ["Threepence in the £ off", "the sixpenny box", "a crown of roses"])
def test_other_words_of_money_are_no_price(text: str) -> None:
    assert [a for a in find_foreign(text, sterling=True) if a.form == "words"] == []


@pytest.mark.parametrize(
    ("text", "worth"),
    [
        ("Was 14[10 now 9/-", [14 * 12 + 10, 108]),
        ("Usually 4213, now 35/-", [42 * 12 + 3, 420]),
        ("Suet 612d. lb.", [Fraction(13, 2)]),
        ("Tapioca 3véd. lb.", [Fraction(7, 2)]),
        ("Gloves 1/11% pair", [Fraction(47, 2)]),
        ("Collars 3/111", [Fraction(95, 2)]),
        ("Serge......21/- Hose...3/9", [252, 45]),
    ],
)
def test_worn_sums_and_sums_after_leaders_are_read(text: str, worth: list[Fraction]) -> None:
    assert sorted(pence(text)) == sorted(worth)


@pytest.mark.parametrize("text", ["Design 6916, 35/-", "Usually 6960, 35/-", "sizes 12 13d 35/-"])
def test_other_figures_are_no_worn_sums(text: str) -> None:
    assert pence(text) == [420]


def test_slashes_alone_are_shillings_where_they_are_many_or_the_page_counts_in_them() -> None:
    assert speaks_sterling("Locks 2/4 Bolts 5/3 Latches 11/6")
    assert not speaks_sterling("Locks 2/4 Bolts 5/3")
    assert speaks_sterling("Locks 2/9", page_does=True)
    assert not speaks_sterling("cut in 3/4, 1/2 and 5/8 inch", page_does=True)
    assert not speaks_sterling("Locks 2/4 Bolts 5/3 Latches 11/6, handles .25")
    (price,) = find_prices(advert_text((20, 20, 16, "Locks 2/9")), [], sterling_page=True)
    assert price.amount.amount == Decimal("0.1375")


def test_an_advert_without_a_sign_counts_as_the_others_of_its_page_do() -> None:
    left, right = Box(0, 0, 390, 1000), Box(400, 0, 390, 1000)
    words = words_of([(20, 20, 16, "Serge Coats, lined, 35/-"), (420, 300, 16, "Rim Locks, brass, 2/9")])
    page = PageReading(
        "0123456789abcdef",
        800,
        1000,
        "newspaper",
        (Region(left, "advert", 0.9), Region(right, "advert", 0.9)),
        (Block(left, "text", 14.0, 0), Block(right, "text", 14.0, 1)),
        tuple(words),
    )
    adverts = parse_page(page, NO_NAMES)
    assert [p.amount for a in adverts for o in a.offers for p in o.prices] == [Decimal("1.75"), Decimal("0.1375")]

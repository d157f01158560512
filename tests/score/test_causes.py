"""What became of a missed price is told apart by what was read in its place."""

from __future__ import annotations

import pytest

from adminer.records import Box
from adminer.score.causes import find_causes, form_of, table_of
from adminer.score.found import FoundPage, FoundPrice
from adminer.score.prices import match_prices
from adminer.score.truth import TruePrice
from tests.score.pages import HERE, page, price, true_price, truth


def causes(true: dict[str, object], found: FoundPage) -> list[tuple[str, str]]:
    whole = truth(true)
    return [(m.form, m.cause) for m in find_causes(whole, found, match_prices(whole, found.prices, "dollars"))]


def raised(*found: FoundPrice, text: str = "", words: tuple[tuple[str, Box], ...] = ()) -> list[tuple[str, str]]:
    true = true_price(1.39, "cup", "$1 39", box=[10, 10, 40, 20], form="raised_cents")
    return causes(true, page(*found, text=text, words=words))


def test_by_place() -> None:
    assert raised(price("1.39", item="cup")) == [("raised_cents", "right")]
    assert raised(price("1.39", item="soup")) == [("raised_cents", "wrong item")]
    assert raised(price("139")) == [("raised_cents", "wrong cents")]
    assert raised(price("1")) == [("raised_cents", "wrong cents")]
    assert raised(price("7.39")) == [("raised_cents", "misread")]
    assert raised() == [("raised_cents", "not detected")]
    assert raised(words=(("$139", HERE),)) == [("raised_cents", "read, no price made")]
    assert raised(words=(("$189", HERE),)) == [("raised_cents", "misread")]


def test_by_text_where_the_truth_has_no_places() -> None:
    true = true_price(0.09, "saucer", "9¢ each")
    assert causes(true, page(text="Saucer 9¢ each")) == [("cents_sign", "read, no price made")]
    assert causes(true, page(text="Saucer 9e each")) == [("cents_sign", "misread")]
    assert causes(true, page(text="Fruit dish")) == [("cents_sign", "not detected")]
    assert causes(true, page(price("9"), text="Saucer 9")) == [("cents_sign", "wrong cents")]


def test_a_price_that_stands_nowhere_is_extra_and_is_counted_once() -> None:
    found = page(price("0.09", item="saucer"), price("48"))
    assert causes(true_price(0.09, "saucer", "9c"), found) == [
        ("cents_sign", "right"),
        ("bare", "extra: no such price"),
    ]


@pytest.mark.parametrize(
    ("printed", "form"),
    [
        ("$1.39", "dollars_point"),
        ("$5", "dollars_whole"),
        ("69¢", "cents_sign"),
        ("35 cents", "cents_sign"),
        ("2 for 25¢", "multiple"),
        ("2/25¢", "multiple"),
        ("$1 39", "raised_cents"),
        ("12½¢", "fraction"),
        ("1.50", "bare"),
        ("seventy cents", "words"),
    ],
)
def test_form_by_its_printed_text(printed: str, form: str) -> None:
    assert form_of(TruePrice.model_validate(true_price(1, "", printed))) == form


def test_the_table_counts_every_price_once() -> None:
    whole = truth(true_price(1, "cup"), true_price(2, "plate"))
    found = page(price("1.00", item="cup"))
    table = table_of(tuple(find_causes(whole, found, match_prices(whole, found.prices, "dollars"))))
    assert {form: dict(row) for form, row in table.items()} == {"dollars_point": {"right": 1, "not detected": 1}}

"""Payments told in pairs after the price they pay, and labels under a price that are no sentences."""

from __future__ import annotations

from adminer.records import Advert
from tests.parsing.pages import parse


def roles(advert: Advert) -> list[tuple[str, str]]:
    return [(p.text, p.role) for o in advert.offers for p in o.prices]


def test_a_payment_whose_word_is_ill_read_is_told_by_the_one_beside_it() -> None:
    advert = parse(
        (20, 20, 14, "Oak Hall Rack, bevel mirror, our price"),
        (20, 42, 14, "$7.40, pay 60c casl and 60c monthly."),
        (20, 64, 14, "Fern Stand, reeded legs, our price $5.20,"),
        (20, 86, 14, "pay 45c cash and 45c mcnthlv. Free crating."),
    )
    assert roles(advert) == [
        ("$7.40", "price"), ("60c", "down_payment"), ("60c", "instalment"),
        ("$5.20", "price"), ("45c", "down_payment"), ("45c", "instalment"),
    ]  # fmt: skip


def test_two_prices_joined_by_and_after_no_larger_one_are_no_payments() -> None:
    advert = parse((20, 20, 14, "Kitchen Chairs 85c and $1.10 a month ago, today less."))
    assert ("85c", "price") in roles(advert)


def test_a_sentence_under_a_price_is_no_label_of_it() -> None:
    advert = parse(
        (20, 20, 14, "Both Hall Pieces, $9.80."),
        (20, 44, 14, "If not suited a month on trial ends the matter."),
    )
    assert roles(advert) == [("$9.80", "price")]


def test_the_whole_sum_in_cash_is_no_payment() -> None:
    advert = parse((20, 20, 14, "Oak Hall Rack $7.40. Terms: 60c cash, 60c monthly, or $6.90 cash in full."))
    assert {("60c", "down_payment"), ("$6.90", "price")} <= set(roles(advert))


def test_nothing_down_is_no_price() -> None:
    advert = parse(
        (20, 20, 14, "Oak Hall Rack, bevel mirror, $7.40."),
        (20, 42, 14, "Pay $0 down and 60c monthly."),
    )
    assert roles(advert) == [("$7.40", "price"), ("60c", "instalment")]


def test_the_numbers_of_an_address_that_ran_together_are_no_price() -> None:
    advert = parse(
        (20, 20, 14, "Oak Hall Rack, bevel mirror, 7.40"),
        (20, 60, 14, "Write to Orrin Vale Co., Desk 118.36th Street, Norwick"),
        (20, 82, 14, "or call at 21.45th Avenue"),
    )
    assert [text for text, _ in roles(advert)] == ["7.40"]

"""When item texts, names and terms say the same; invented examples, no check values."""

from __future__ import annotations

import pytest

from adminer.score.alike import ALIKE, same_name, same_terms, similarity, strict_similarity


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("No. 3008 Gent’s Thin Model", "Gent's Thin Model"),
        ("best Rice, per lb.", "Rice best per lb"),
        ("Dinner plate", "DINNER PLATES"),
        ("Saucer", "saucer, Tansy Morn"),
    ],
)
def test_alike_whatever_order_case_and_punctuation(one: str, other: str) -> None:
    assert similarity(one, other) >= ALIKE
    assert similarity(other, one) >= ALIKE


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("saucer", "soup tureen"),
        ("saucer", "fruit dish saucer dinner plate bread and butter with the card this week"),
        ("", ""),
        ("cup", ""),
    ],
)
def test_not_alike_and_the_whole_advert_is_no_item(one: str, other: str) -> None:
    assert similarity(one, other) < ALIKE


def test_strict_similarity_counts_every_word_too_many() -> None:
    assert strict_similarity("saucer", "saucer, Tansy Morn") < ALIKE <= strict_similarity("a cup", "cup a")


def test_names_agree_after_house_words_and_by_their_second_name() -> None:
    assert same_name("PENHALLOW STORES", "Penhallow Stores, Inc.")
    assert same_name("The Osterby Supply", "Quillfeather & Sons (The Osterby Supply Stores)")
    assert not same_name("Penhallow", "Tidewell Markets")
    assert not same_name("", "Tidewell Markets")


def test_terms_agree_when_one_stands_in_the_other() -> None:
    assert same_terms("with each $5.00 purchase", "Saucer 9¢ with each $5.00 purchase or more")
    assert not same_terms("limit", "limit one to a customer, coupon expires Saturday")

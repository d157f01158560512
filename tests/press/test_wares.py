"""Adverts of many wares: drawn the same for the same seed, and fit to teach the weights that choose items again."""

from __future__ import annotations

from random import Random

import pytest

from adminer.score.weigh import fit
from corpus_demo.press import fonts
from corpus_demo.press.browser import CHROMIUM
from corpus_demo.press.item_training import choices
from corpus_demo.press.pressroom import compose
from corpus_demo.press.wares.copybook import brand, trades, ware
from corpus_demo.press.wares.sheets import make_wares
from tests.benchmarks.items_again import other_hands, shares

UNSEEN = 991  # no seed of the training


def test_the_same_seed_draws_the_same_sheets() -> None:
    first, again = (make_wares(UNSEEN, 6) for _ in range(2))
    assert first == again
    assert [compose(spec)[1] for spec in first] == [compose(spec)[1] for spec in again]
    assert make_wares(UNSEEN + 1, 6) != first


def test_every_price_of_a_sheet_has_the_words_of_its_ware() -> None:
    for spec in make_wares(UNSEEN, 20):
        prices = [row for fact, row in compose(spec)[0].facts.items() if fact[0] == "p"]
        assert prices
        assert all(row["item_text"] for row in prices)


def test_wares_of_every_trade_can_be_drawn_with_what_is_told_of_them() -> None:
    rng = Random(UNSEEN)
    for trade in trades():
        drawn = [ware(rng, trade, told=0.8, former=0.5) for _ in range(60)]
        assert all(one.item.tags[0].amount > 0 for one in drawn)
        assert max(len(one.details) for one in drawn) > 2
        assert {len(one.item.tags) for one in drawn} == {1, 2}
    assert len({brand(rng) for _ in range(100)}) > 60


def test_the_weights_name_more_prices_of_other_hands_than_the_rules_do() -> None:
    hands = other_hands()
    named = [shares(judged) for judged in hands.values()]
    assert sum(again - rules for rules, again in named) > 0
    assert sum(again > rules for rules, again in named) > len(hands) / 2


@pytest.mark.slow
@pytest.mark.skipif(
    bool(fonts.missing()) or not CHROMIUM.exists(),
    reason="needs the faces of the press and a browser (python -m corpus_demo.press fonts); a development tool",
)
def test_sheets_are_printed_read_and_judged() -> None:
    judged = choices(UNSEEN, 6, workers=1)
    assert len(judged) > 10
    assert any(one.right[0] == 1.0 for one in judged)
    assert any(max(one.right) > one.right[0] for one in judged)
    assert fit(judged)

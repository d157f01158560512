"""The choices kept beside the weights: they come back as they were, and the weights shipped are those they teach."""

from __future__ import annotations

from pathlib import Path
from typing import Final

import pytest

from adminer.parsing.items.reconsider import best_of, item_weights
from adminer.score.choices import Judged, load_choices, save_choices
from adminer.score.weigh import fit

KEPT: Final = Path(__file__).resolve().parents[2] / "corpus_demo" / "item_choices.npz"


def test_choices_come_back_as_they_were_kept(tmp_path: Path) -> None:
    choices = [
        Judged(({"goods": 1, "cost": 0.25}, {"large": 1}), (1.0, 0.0), 2.0),
        Judged(({"large": 1, "goods": 0},), (0.5,), 1.0, hand=3),
    ]
    save_choices(choices, tmp_path / "kept.npz")
    assert load_choices(tmp_path / "kept.npz") == [choices[0], Judged(({"large": 1},), (0.5,), 1.0, hand=3)]


@pytest.mark.slow
def test_the_weights_shipped_are_those_that_the_kept_choices_teach() -> None:
    judged = load_choices(KEPT)
    weights, learned = item_weights(), fit(judged)
    alike = [best_of(one.traits, weights) == best_of(one.traits, learned) for one in judged]
    assert sum(alike) > 0.99 * len(alike)  # the last figure of a weight differs by machine


@pytest.mark.slow
def test_weights_name_more_than_the_rules_where_they_were_not_learned() -> None:
    judged = load_choices(KEPT)
    hands = sorted({one.hand for one in judged})
    for half in (hands[::2], hands[1::2]):
        weights = fit([one for one in judged if one.hand in half])
        others = [one for one in judged if one.hand not in half]
        rules = sum(one.right[0] for one in others)
        assert sum(one.right[best_of(one.traits, weights)] for one in others) > rules

"""Strikes of numerals: the same for the same seed, and fit for what the reader of fractions was taught."""

from __future__ import annotations

from itertools import islice

import numpy as np
import pytest

from adminer.reading.fraction_model.answer import answer
from adminer.reading.fraction_model.window import CLASSES, SIDE, window_of
from corpus_demo.press import fonts
from corpus_demo.press.strikes import strikes

pytestmark = pytest.mark.skipif(
    bool(fonts.missing()), reason="needs the faces of the press (python -m corpus_demo.press fonts); a development tool"
)
UNSEEN = 990_001  # no seed of the training


def test_the_same_seed_strikes_the_same() -> None:
    first, again = (list(islice(strikes(UNSEEN, 12), 12)) for _ in range(2))
    assert all(np.array_equal(a.picture, b.picture) and a.label == b.label for a, b in zip(first, again, strict=True))
    assert {one.label for one in strikes(UNSEEN, 200)} == set(CLASSES)


def test_the_reader_knows_most_strikes_it_has_not_seen() -> None:
    struck = list(strikes(UNSEEN, 600))
    windows = np.stack([window_of(one.picture, one.left, one.top, one.foot) for one in struck])
    assert windows.shape[1:] == (SIDE, SIDE)
    chances = answer(windows)
    right = [CLASSES[int(row.argmax())] == one.label for row, one in zip(chances, struck, strict=True)]
    assert np.mean(right) > 0.8  # many are worn past reading
    sure = [one.label == "" for row, one in zip(chances, struck, strict=True) if row[1:].sum() > 0.95]
    assert np.mean(sure) < 0.05

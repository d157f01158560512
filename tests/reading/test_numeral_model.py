"""The numeral reader: its alphabet, its likelihood, what it may change in a word and what it may not."""

from __future__ import annotations

import itertools

import cv2
import numpy as np
import pytest
from numpy.typing import NDArray

from adminer.reading.numeral_model.alphabet import CLASSES, PLAIN, RAISED, decode, encode
from adminer.reading.numeral_model.prepare import prepare, stack
from adminer.reading.numeral_model.read import MODEL, NumeralReading, _log_likelihood, read_numerals
from adminer.reading.numeral_model.settle import look_again, settle, take_second_look
from adminer.reading.placed import PlacedWord

Gray = NDArray[np.uint8]


def word(
    text: str, *, px: float = 20.0, confidence: float = 0.8, box: tuple[float, ...] = (0, 0, 60, 24)
) -> PlacedWord:
    return PlacedWord(text, box[0], box[1], box[2], box[3], px, confidence, 0, text, ())


def drawn(text: str, scale: float = 1.0) -> Gray:
    """Draw text in a stroke font that no face of the press resembles."""
    canvas = np.full((80, 60 + int(45 * len(text) * scale)), 255, np.uint8)
    cv2.putText(canvas, text, (20, 55), cv2.FONT_HERSHEY_COMPLEX, 1.2 * scale, 0, 3, cv2.LINE_AA)
    rows, cols = np.nonzero(canvas < 128)
    return canvas[rows.min() - 5 : rows.max() + 5, cols.min() - 6 : cols.max() + 6]


@pytest.mark.parametrize("label", ["$1^39", "69^¢", "2/25¢", "12½c", "$1,250.00", "30/-", "11d", "6f$1", "?", ""])
def test_a_label_comes_back_as_it_went_in(label: str) -> None:
    assert decode(encode(label)) == label
    assert all(0 < c < CLASSES for c in encode(label))


def test_an_unknown_character_is_refused() -> None:
    with pytest.raises(ValueError, match="substring"):
        encode("3€")


def test_the_likelihood_of_a_text_is_the_sum_over_its_alignments() -> None:
    """Against counting every path by hand: the definition of the sum in Graves et al. 2006, equation 3."""
    rng = np.random.default_rng(3)
    raw = rng.random((5, 4))
    answers = np.log(raw / raw.sum(axis=1, keepdims=True)).astype(np.float32)
    for wanted in ([1, 2], [1, 1], [3], []):
        total = 0.0
        for path in itertools.product(range(4), repeat=5):
            said = [c for k, c in enumerate(path) if c and (k == 0 or c != path[k - 1])]
            if said == wanted:
                total += float(np.exp(sum(answers[k, c] for k, c in enumerate(path))))
        assert np.exp(_log_likelihood(answers, wanted)) == pytest.approx(total, rel=1e-4)


def test_crops_of_any_size_and_tone_become_one_batch() -> None:
    crops = [np.full((5, 3), 90, np.uint8), np.zeros((300, 4000), np.uint8), drawn("69")]
    planes = [prepare(crop) for crop in crops]
    batch = stack(planes)
    assert batch.shape[2] == 32
    assert batch.shape[3] % 2 == 0
    assert np.abs(batch).max() <= 1


def test_the_network_in_the_repository_is_small() -> None:
    assert MODEL.stat().st_size < 1_500_000


@pytest.mark.parametrize("text", ["$1.39", "$27.50", "49", "138", "1958"])
def test_plain_numerals_in_a_face_it_never_saw_are_read(text: str) -> None:
    (reading,) = read_numerals([drawn(text)])
    assert reading.text == text
    assert reading.confidence > 0.5


def test_white_on_black_reads_as_black_on_white() -> None:
    (reading,) = read_numerals([np.asarray(255 - drawn("$4.95"), np.uint8)])
    assert reading.text == "$4.95"


def test_no_figures_are_read_into_words() -> None:
    words = ["saucer", "Tansy", "PLATES", "cup", "Dinner", "each"]
    for reading in read_numerals([drawn(w) for w in words]):
        assert reading.text in ("?", "")


def test_order_of_crops_is_kept() -> None:
    texts = ["$1.39", "4", "$12.75", "66"]
    assert [r.text for r in read_numerals([drawn(t) for t in texts])] == texts
    assert read_numerals([]) == []


@pytest.mark.parametrize(
    ("read", "said", "settled"),
    [
        ("554", "55¢", "55¢"),
        ("81.49", "$1.49", "$1.49"),
        ("5c", "50c", "50c"),
        ("(S7", "$7", "($7"),
        ("$179", "$1^79", "$1.79"),
        ("694", "69^¢", "69¢"),
        ("471-", "47/-", "47/-"),
    ],
)
def test_a_sure_second_look_settles_a_price(read: str, said: str, settled: str) -> None:
    result = settle(word(read), NumeralReading(said, 0.99))
    assert result.text == settled
    assert result.reader == "numeral"
    assert result.confidence <= 0.95


@pytest.mark.parametrize(
    ("read", "said", "sure"),
    [
        ("554", "55¢", 0.3),  # unsure
        ("24lbs", "24?", 0.99),  # letters
        ("1958", "1953", 0.99),  # bare figures never overrule
        ("139", "1.39", 0.99),  # no sign: a point alone makes no price
        ("$1.39", "$4.95", 0.99),  # another number altogether
        ("39c", "39¢", 0.99),  # the same price
    ],
)
def test_what_is_no_better_changes_nothing(read: str, said: str, sure: float) -> None:
    before = word(read)
    assert settle(before, NumeralReading(said, sure)) is before


def test_small_type_without_a_sign_gets_no_raised_cents() -> None:
    before = word("229", px=10.0)
    assert settle(before, NumeralReading("2^29", 0.99)) is before
    assert settle(word("229", px=30.0), NumeralReading("2^29", 0.99)).form == "raised_cents_bare"


def test_forms_of_raised_parts_are_told() -> None:
    assert settle(word("$139"), NumeralReading("$1^39", 0.99)).form == "raised_cents"
    assert settle(word("394"), NumeralReading("39^c", 0.99)).form == "raised_cent_sign"
    assert PLAIN.isascii() is False
    assert set(RAISED) <= set(PLAIN)


def test_only_words_that_might_be_prices_are_looked_at() -> None:
    gray = np.full((200, 400), 255, np.uint8)
    crop = drawn("$4.95")
    gray[50 : 50 + crop.shape[0], 40 : 40 + crop.shape[1]] = crop
    box = (46.0, 55.0, 34.0 + crop.shape[1], 45.0 + crop.shape[0])
    words = [word("saucer"), word("S4.95", box=box, px=30), word("serves")]
    assert [look.index for look in look_again(gray, words)] == [1]
    assert [w.text for w in take_second_look(gray, words)] == ["saucer", "$4.95", "serves"]

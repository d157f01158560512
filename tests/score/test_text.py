"""Character error rates against jiwer 4 (registry), and the two rules on lines whose outcome is plain to see."""

from __future__ import annotations

import jiwer
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from adminer.score.text import best_stretch, error_rate, plain, window_stretch

PAGE = "Penhallow Stores\nSaucer 9¢ with card Dinner plate\n$1.39 each this week only\nFerncliff"
WORDS = st.text(alphabet="abcde 19¢", min_size=1, max_size=30)

AS_PRINTED = jiwer.Compose([jiwer.ReduceToListOfListOfChars()])  # jiwer's default strips white space at the ends


def counted(line: str, stretch: str) -> int:
    out = jiwer.process_characters(line, stretch, AS_PRINTED, AS_PRINTED)
    return int(out.substitutions + out.deletions + out.insertions)


@pytest.mark.parametrize("rule", [window_stretch, best_stretch])
@pytest.mark.parametrize(
    "line", ["Saucer 9¢ with card", "Dinner plato $1.39 each", "this weekonly", "Wenning Falls, Friday"]
)
def test_edits_are_those_that_jiwer_counts_between_line_and_stretch(rule: object, line: str) -> None:
    score = rule(line, PAGE)  # type: ignore[operator]
    assert score.stretch in plain(PAGE)
    if score.stretch:
        assert score.edits == counted(line, score.stretch)


def test_error_rate_over_lines_is_that_of_jiwer_over_the_same_pairs() -> None:
    scores = [best_stretch(line, PAGE) for line in ("Penhallow Stores", "Sauser 9c with card", "$1.39 each thisweek")]
    pairs = jiwer.cer([s.line for s in scores], [s.stretch for s in scores])
    assert error_rate(scores) == pytest.approx(pairs)
    assert sum(s.edits for s in scores) == 3


@settings(max_examples=150, deadline=None)
@given(WORDS, WORDS)
def test_no_stretch_of_the_text_fits_better_than_the_best_stretch(line: str, text: str) -> None:
    line, text = plain(line), plain(text)
    if not line:
        return
    stretches = {text[i:j] for i in range(len(text)) for j in range(i + 1, len(text) + 1)}
    fewest = min((counted(line, stretch) for stretch in stretches), default=len(line))
    assert best_stretch(line, text).edits == min(fewest, len(line))


@settings(max_examples=150, deadline=None)
@given(WORDS, WORDS)
def test_the_window_rule_never_flatters(line: str, text: str) -> None:
    if plain(line):
        assert best_stretch(line, text).edits <= window_stretch(line, text).edits <= len(plain(line))


def test_a_line_on_an_unread_page_costs_its_length_and_no_lines_have_no_rate() -> None:
    assert window_stretch("Saucer 9¢", "").edits == best_stretch("Saucer 9¢", "").edits == len("Saucer 9¢")
    assert error_rate(()) is None


def test_case_and_punctuation_count_and_white_space_does_not() -> None:
    assert best_stretch("Silverthaw, the set", "SILVERTHAW  the\nset").edits == len("ilverthaw,")
    assert best_stretch("Tansy  Morn", "Tansy\nMorn").edits == 0

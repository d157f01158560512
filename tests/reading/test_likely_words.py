"""A word of no dictionary gives way to a likelier one; what is sure, figures, fragments and names do not."""

from __future__ import annotations

from math import log

import numpy as np
import pytest
from numpy.typing import NDArray
from rapidfuzz.distance.Levenshtein import distance

from adminer.errors import MachineError
from adminer.reading import lexicon, recognise
from adminer.reading.letters import STEP, ReadLine
from adminer.reading.likely_words import SAID, _at_best, _best_path, with_likely_words, words_said
from adminer.reading.models import alphabet
from adminer.reading.recognise import _decode, read_strips
from tests.reading.drawing import Setting, draw

Doubts = dict[int, tuple[str, float, float]]  # place of a letter -> another, its probability, that of the one read


def answered(text: str, doubts: Doubts, sure: float = 0.97) -> tuple[ReadLine, NDArray[np.float32], int]:
    """Make up the answer of the network for a line, a step a letter and a blank after each; read it greedily."""
    letters = alphabet().characters
    answers = np.zeros((2 * len(text) + 1, len(letters)), np.float32)
    answers[0::2, 0] = 0.999
    for k, c in enumerate(text):
        other, half, chosen = doubts.get(k, ("", 0.0, sure))
        answers[2 * k + 1, 0] = 1 - half - chosen
        answers[2 * k + 1, letters.index(c)] = chosen
        if other:
            answers[2 * k + 1, letters.index(other)] = half
    width = STEP * len(answers)
    return _decode(answers, width), answers, width


def settled(text: str, doubts: Doubts, sure: float = 0.97) -> str:
    greedy, answers, width = answered(text, doubts, sure)
    assert greedy.text == text
    return with_likely_words(greedy, answers, width).text


def test_a_letter_half_seen_makes_the_word_that_is_printed() -> None:
    greedy, answers, width = answered("is juat so", {5: ("s", 0.3, 0.6)})
    read = with_likely_words(greedy, answers, width)
    assert read.text == "is just so"
    assert read.letters[:5] == greedy.letters[:5] and read.letters[6:] == greedy.letters[6:]
    put_in = read.letters[5]
    assert put_in.at == greedy.letters[5].at
    assert put_in.confidence == pytest.approx(0.3)  # a word that reads better is no surer


def test_letters_that_stay_keep_what_else_was_half_seen_in_them() -> None:
    greedy, answers, width = answered("a cuat", {3: ("o", 0.38, 0.6)})
    read = with_likely_words(greedy, answers, width)
    assert read.text == "a coat"
    assert read.letters[2] == greedy.letters[2] and read.letters[2].cent > 0.9


@pytest.mark.parametrize(("text", "wanted"), [("Juat so", "Just so"), ("JUAT SO", "JUST SO"), ("(juat,)", "(just,)")])
def test_a_word_keeps_its_capitals_and_the_marks_around_it(text: str, wanted: str) -> None:
    place = text.lower().index("a")
    other = "S" if text[place].isupper() else "s"
    assert settled(text, {place: (other, 0.3, 0.6)}) == wanted


def test_a_letter_can_be_put_in_or_taken_out() -> None:
    greedy, answers, width = answered("prce 5", {})
    answers[4, alphabet().characters.index("i")] = 0.2  # half seen between two letters, where the blank was surer
    assert with_likely_words(greedy, answers, width).text == "price 5"
    greedy, answers, width = answered("priice 5", {3: ("", 0.0, 0.6)})
    assert with_likely_words(greedy, answers, width).text == "price 5"


def test_a_letter_seen_at_length_is_not_two() -> None:
    greedy, answers, width = answered("setle", {0: ("", 0.0, 0.9)}, sure=0.999)
    answers[6] = answers[5]  # the "t" once more, and no blank between
    assert with_likely_words(greedy, answers, width).text == "setle"


def test_a_possessive_is_weighed_without_its_s() -> None:
    assert settled("womcn's", {3: ("e", 0.3, 0.6)}) == "women's"


def test_a_sure_word_stays_though_no_dictionary_has_it() -> None:
    assert settled("is juat so", {5: ("s", 0.02, 0.97)}, sure=0.999) == "is juat so"


def test_a_blur_is_no_word_however_near_one_is() -> None:
    assert settled("tbe so", {1: ("h", 0.3, 0.5)}, sure=0.9) == "the so"
    assert settled("tbe so", {1: ("h", 0.3, 0.5)}, sure=0.6) == "tbe so"


def test_a_long_word_is_known_by_its_length_though_it_is_a_blur() -> None:
    doubts = {2: ("r", 0.3, 0.4), 8: ("h", 0.3, 0.4)}
    assert settled("thxoughoat", doubts | {7: ("u", 0.3, 0.4)}, sure=0.55) == "thxoughoat"
    assert settled("thxoughout", {2: ("r", 0.3, 0.4)}, sure=0.55) == "throughout"


def test_three_letters_of_a_long_word_may_be_wrong_unless_it_is_a_blur() -> None:
    doubts = {2: ("s", 0.3, 0.4), 3: ("s", 0.3, 0.4), 5: ("o", 0.3, 0.4)}
    assert settled("mierien", doubts, sure=0.9) == "mission"
    assert settled("mierien", doubts, sure=0.65) == "mierien"


def test_a_known_word_gives_way_to_a_far_likelier_one_only() -> None:
    assert settled("is tor men", {3: ("f", 0.4, 0.5)}, sure=0.95) == "is for men"
    assert settled("is hot tea", {3: ("n", 0.3, 0.6)}, sure=0.95) == "is hot tea"
    assert settled("is tor men", {3: ("f", 0.3, 0.4)}, sure=0.7) == "is tor men"  # a blur may be anything
    assert settled("tor men", {0: ("f", 0.4, 0.5)}, sure=0.95) == "tor men"  # it may end a word of the line above


def test_two_letters_are_no_word_where_another_is_far_likelier() -> None:
    assert settled("a ef tea", {2: ("o", 0.4, 0.5)}, sure=0.95) == "a of tea"
    assert settled("So tea", {0: ("T", 0.4, 0.5)}, sure=0.95) == "So tea"  # it may be 50
    assert settled("5 ib of", {2: ("l", 0.4, 0.5)}, sure=0.95) == "5 lb of"
    assert settled("5 Ib of", {2: ("l", 0.4, 0.5)}, sure=0.95) == "5 lb of"


def test_titles_stay() -> None:
    assert settled("Mr. Dale", {1: ("e", 0.3, 0.6)}, sure=0.95) == "Mr. Dale"


def test_a_name_stays_where_a_small_word_as_well_seen_would_not() -> None:
    assert settled("by salmont", {}) == "by salmon"
    assert settled("by Salmont", {}) == "by Salmont"


def test_what_a_figure_measures_is_weighed_behind_its_hyphen() -> None:
    assert settled("25-ib. bag", {3: ("l", 0.4, 0.5)}, sure=0.95) == "25-lb. bag"
    assert settled("20-oz fl oz", {6: ("f", 0.4, 0.5), 7: ("t", 0.3, 0.5)}, sure=0.95) == "20-oz fl oz"


def test_each_word_that_hyphens_join_is_weighed() -> None:
    assert settled("all-wooi, 5c", {7: ("l", 0.3, 0.6)}) == "all-wool, 5c"
    assert settled("sclf-made", {1: ("e", 0.3, 0.6)}) == "self-made"


@pytest.mark.parametrize("text", ["juat5", "5juat", "a-juat", "juat-", "juat-so"])
def test_figures_and_what_may_be_part_of_a_word_are_never_touched(text: str) -> None:
    assert settled(text, {text.index("a", 1): ("s", 0.3, 0.6)}) == text


def test_the_end_of_a_word_that_the_line_above_began_stays() -> None:
    assert settled("ment and", {0: ("w", 0.4, 0.5)}) == "ment and"
    assert settled("he ment", {3: ("w", 0.4, 0.5)}) == "he went"


@pytest.mark.parametrize(
    ("word", "other"), [("colors", "colours"), ("jewelry", "jewellery"), ("aluminum", "aluminium")]
)
def test_american_spelling_stays(word: str, other: str) -> None:
    assert lexicon.is_word(word)
    greedy, answers, width = answered(word, {}, sure=0.7)
    place = next(k for k, (a, b) in enumerate(zip(word, other, strict=False)) if a != b)
    answers[2 * place, alphabet().characters.index(other[place])] = 0.3
    assert with_likely_words(greedy, answers, width).text == word


def test_of_two_words_equally_well_seen_the_usual_one_is_read() -> None:
    assert settled("tbe", {1: ("h", 0.2, 0.5)}) == "the"
    near = [word for word, _ in lexicon.words_near("tbe", 1)]
    assert near[0] == "the" and "tie" in near


@pytest.mark.parametrize(("word", "most"), [("tbe", 1), ("coffce", 2), ("sugcr", 2), ("bannanna", 3), ("zwieback", 3)])
def test_no_word_near_is_passed_over_by_its_letters(word: str, most: int) -> None:
    known = [other for words in lexicon.lexicon().by_length.values() for other in words]
    assert {near for near, _ in lexicon.words_near(word, most)} == {w for w in known if distance(word, w) <= most}


def test_no_word_is_passed_over_that_a_path_makes_likelier() -> None:
    draw_lots = np.random.default_rng(7)
    for word in ("soap", "coffee", "Tea", "LARD"):
        logs = np.log(draw_lots.dirichlet(np.full(len(alphabet().characters), 0.1), 12) + 1e-6).astype(np.float32)
        assert _best_path(logs, word)[0] <= _at_best(logs, word) < 0


def test_a_plural_of_a_known_word_is_known() -> None:
    assert lexicon.is_word("axminsters")
    assert not lexicon.is_word("axminsterz")


def test_trade_abbreviations_and_rare_words_are_known_but_nothing_is_taken_for_a_rare_one() -> None:
    assert lexicon.is_word("doz") and lexicon.is_word("lbs") and lexicon.is_word("chifforobe")
    assert "chifforobe" not in [word for word, _ in lexicon.words_near("chifforob", 2)]


def test_strips_read_for_some_characters_alone_are_not_weighed(monkeypatch: pytest.MonkeyPatch) -> None:
    weighed: list[str] = []

    def note(read: ReadLine) -> bool:
        weighed.append(read.text)
        return False

    monkeypatch.setattr(recognise, "is_doubtful", note)
    strip = draw(150, 30, Setting("Saucers", 6, 22, 18))
    read_strips([strip], only="0123456789")
    assert not weighed
    read_strips([strip])
    assert weighed == ["Saucers"]


def test_a_word_is_likelier_where_the_page_has_said_it_surely() -> None:
    doubts = {2: ("i", 0.3, 0.6)}
    greedy, answers, width = answered("Quolva brush", doubts)
    assert with_likely_words(greedy, answers, width).text == "Quolva brush"
    said = words_said([answered("Quilva brush", {}, sure=0.999)[0]])
    assert with_likely_words(greedy, answers, width, said).text == "Quilva brush"
    unsure = words_said([answered("Quilva brush", {}, sure=0.9)[0]])
    assert with_likely_words(greedy, answers, width, unsure).text == "Quolva brush"


def test_the_share_of_a_word_is_counted_over_the_page() -> None:
    lines = [answered(text, {}, sure=0.999)[0] for text in ("Quilva brush", "Quilva and tea", "brush 5c")]
    said = words_said(lines)
    assert set(said) == {"quilva", "brush"}  # short words are no more likely for it
    assert said["quilva"] == pytest.approx(log(SAID / 2))


def test_strips_read_together_are_of_one_page(monkeypatch: pytest.MonkeyPatch) -> None:
    seen: list[dict[str, float]] = []

    def note(read: ReadLine, _: object, __: int, said: dict[str, float]) -> ReadLine:
        seen.append(said)
        return read

    monkeypatch.setattr(recognise, "with_likely_words", note)
    monkeypatch.setattr(recognise, "is_doubtful", lambda read: read.text == "Plates")
    read_strips([draw(150, 30, Setting(text, 6, 22, 18)) for text in ("Saucers", "Plates")])
    assert len(seen) == 1 and "saucers" in seen[0]


@pytest.mark.parametrize("place", [("no_such_package", "words.txt"), (lexicon.BOOKS[0], "no_such_list.txt")])
def test_a_missing_list_says_what_to_install(monkeypatch: pytest.MonkeyPatch, place: tuple[str, str]) -> None:
    monkeypatch.setattr(lexicon, "BOOKS", place)
    with pytest.raises(MachineError, match="cannot start"):
        lexicon.lexicon.__wrapped__()


def test_measures_are_read_as_adverts_shorten_them() -> None:
    assert settled("sugar 5 ibs.", {8: ("l", 0.3, 0.6)}) == "sugar 5 lbs."
    assert settled("3 yds", {3: ("e", 0.3, 0.6)}, sure=0.9) == "3 yds"

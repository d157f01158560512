"""Unsure words weighed against those near them: what the network saw, times how often a word is printed.

A noisy channel: the printed word w is the one with the highest P(answer | w) P(w). K. W. Church and W. A. Gale,
"Probability scoring for spelling correction", Statistics and Computing 1 (1991), 93-103. Here the channel is the
network itself: its answer over the steps of a word says how probable each spelling is, read on its likeliest path.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from math import log
from types import MappingProxyType

import numpy as np
from rapidfuzz.distance import Levenshtein

from adminer.reading.letters import Answers, Letter, ReadLine, place_of, step_of
from adminer.reading.lexicon import ends_a_word, is_word, lexicon, words_near
from adminer.reading.models import number_of

# Logarithm of the share of print of one word that no list has, in small letters and with a capital, as names have that
# no list has: chosen on lines of the press, tests/benchmarks/likely_words.py.
UNKNOWN = -16.0
NAME = -14.0
SURE = 0.985  # mean probability of its letters from which a word stays as it was read
BLURRED = 0.6  # and below which a short word is no spelling at all: what is put in its place is as often wrong as right
SHORT = 5  # letters from which a word may be two letters away from what was read, one below
LONG = 7  # and from which its length tells it from others: it may be a blur, or three letters away if it is none
LEAST = 1e-6  # probability below which the network's answers mean nothing
SHORTEST = 3  # letters of a word that can be told to be none
CLEAR = 0.7  # mean probability of its letters from which a known word may be another
SURER = 3.0  # and how much likelier that must be, as a logarithm
SAID = 0.1  # of a word's share among the words of a page that are sure: what it counts among all of print
LONGER = 4  # letters from which a word said on the page is likelier for it
MARGIN = 4  # steps around a word, to its neighbours at most
IMPOSSIBLE = -1e9
ROUNDED = 1e-3  # more than what two sums of one path's steps may differ by
_WORD = re.compile(
    r"(?:(?<!\S)(?:[\d½¼¾/.]+-|[^\w\s]*)|(?<=[A-Za-z]{3}-))([A-Za-z]{2,})"
    r"(?:(?:['’][sS])?(?:(?!-)[^\w\s])*(?!\S)|(?=-[A-Za-z]{3}))"
)
_FIGURES = re.compile("[OoQlISsZzBgq]+")  # letters that figures are taken for


def words_said(lines: Iterable[ReadLine]) -> dict[str, float]:
    """Return how often lines of one page say each word they say surely, as natural logarithms of its share.

    A page says its names and goods again and again: a word said before is likelier than print at large has it. R. Kuhn
    and R. De Mori, "A cache-based natural language model for speech recognition", IEEE PAMI 12 (1990), 570-583.
    """
    counts: Counter[str] = Counter()
    for line in lines:
        for found in _WORD.finditer(line.text):
            word = found[1].lower()
            if len(word) >= LONGER and ReadLine(line.letters[slice(*found.span(1))]).confidence >= SURE:
                counts[word] += 1
    every = sum(counts.values())
    return {word: log(SAID * count / every) for word, count in counts.items()}


def is_doubtful(read: ReadLine) -> bool:
    """Say whether a line holds a word that may be another."""
    return next(_doubtful(read), None) is not None


def with_likely_words(
    read: ReadLine, answers: Answers, width: int, said: Mapping[str, float] = MappingProxyType({})
) -> ReadLine:
    """Return a line with each unsure word as the likeliest word near it, where one is likelier.

    One that the dictionary has, or of two letters, gives way only to a far likelier one, and only where it is no blur.
    A letter put in has the probability that the network gave it: the word reads better, it is no surer. `width` is that
    of the strip as the network read it, in pixels; `said` are words of the same page (`words_said`).
    """
    letters = list(read.letters)
    for first, end in reversed(list(_doubtful(read))):
        start, stop = _steps_around(letters, first, end, width, len(answers))
        word = ReadLine(tuple(letters[first:end]))
        logs = np.log(np.maximum(answers[start:stop], LEAST))
        better = _likelier(word.text, logs, _most_wrong(word), said) if len(logs) else None
        if better is not None:
            spelled, path = better
            there = {(letter.text, step_of(letter, width)): letter for letter in word.letters}
            letters[first:end] = [
                there.get((c, start + k))
                or Letter(c, place_of(start + k, width), float(answers[start + k, number_of(c)]))
                for c, k in zip(spelled, path, strict=True)
            ]
    return ReadLine(tuple(letters))


def _doubtful(read: ReadLine) -> Iterator[tuple[int, int]]:
    """Find the words (first letter, and the one after the last) that were not surely read.

    Left alone are figures, what is joined to them without a hyphen, the end of a word that the line above began, and
    what is a blur.
    """
    for found in _WORD.finditer(read.text):
        first, end = found.span(1)
        word, mean = found[1], ReadLine(read.letters[first:end]).confidence
        if mean >= SURE or (first == 0 and word.islower() and ends_a_word(word)):
            continue
        if _is_taken(word):
            if mean >= CLEAR and not _FIGURES.fullmatch(word):
                yield first, end
        elif mean >= BLURRED or len(word) >= LONG:
            yield first, end


def _is_taken(word: str) -> bool:
    """Say whether a word stays unless another is far likelier: it is known, or so short that it may be anything."""
    return len(word) < SHORTEST or is_word(word.lower())


def _most_wrong(word: ReadLine) -> int:
    """Return how many letters of a word may be put in, left out or changed."""
    if len(word.letters) < SHORT:
        return 1
    return 3 if len(word.letters) >= LONG and word.confidence >= BLURRED else 2


def _likelier(word: str, logs: Answers, most: int, said: Mapping[str, float]) -> tuple[str, list[int]] | None:
    """Return the word near one that is likelier than it and the steps of its letters; None where it stays."""
    own = word.lower()
    near = dict(words_near(own, most))
    for other, frequency in said.items():
        if Levenshtein.distance(own, other, score_cutoff=most) <= most:
            near[other] = max(near.get(other, frequency), frequency)
    near.pop(own, None)
    least = _best_path(logs, word)[0] + max(_frequency(word), said.get(own, IMPOSSIBLE))
    if _is_taken(word):
        least += SURER
    best = None
    for other, frequency in sorted(near.items(), key=lambda one: -one[1]):
        if frequency <= least:
            break  # the rest are rarer, and no answer of the network says more than "surely"
        for spelled in _spellings(word, other):
            if _at_best(logs, spelled) + frequency <= least:
                continue
            score, path = _best_path(logs, spelled)
            if score + frequency > least:
                least, best = score + frequency, (spelled, path)
    return best


def _frequency(word: str) -> float:
    return lexicon().frequency.get(word.lower(), UNKNOWN if word.islower() else NAME)


def _at_best(logs: Answers, word: str) -> float:
    """Return a log probability that no path of a word is over: that of its likeliest letter or none at each step."""
    return float(logs[:, [0, *(number_of(c) for c in word)]].max(axis=1).sum(dtype=np.float64)) + ROUNDED


def _best_path(logs: Answers, word: str) -> tuple[float, list[int]]:
    """Return the log probability of a word on its likeliest path through the steps, and the surest step of each letter.

    The search of A. J. Viterbi (1967) over blanks and letters in turn, as connectionist temporal classification reads:
    a blank may be passed over between two letters that differ.
    """
    signs = np.zeros(2 * len(word) + 1, np.int64)
    signs[1::2] = [number_of(c) for c in word]
    if len(logs) < len(word):
        return IMPOSSIBLE, []
    passes = np.zeros(len(signs), bool)
    passes[3::2] = signs[3::2] != signs[1:-2:2]
    seen = logs[:, signs]
    came = np.zeros(seen.shape, np.int64)
    ways = np.full((3, len(signs)), IMPOSSIBLE)
    row = np.full(len(signs), IMPOSSIBLE)
    row[:2] = seen[0, :2]
    for step in range(1, len(seen)):
        ways[0], ways[1, 1:] = row, row[:-1]
        ways[2, 2:] = np.where(passes[2:], row[:-2], IMPOSSIBLE)
        came[step] = ways.argmax(axis=0)
        row = ways.max(axis=0) + seen[step]
    at = len(row) - 1 if row[-1] > row[-2] else len(row) - 2
    score, steps = float(row[at]), [-1] * len(word)
    for step in range(len(seen) - 1, -1, -1):
        if at % 2 and (steps[at // 2] < 0 or seen[step, at] > seen[steps[at // 2], at]):
            steps[at // 2] = step
        at -= int(came[step, at])
    return score, steps


def _steps_around(letters: Sequence[Letter], first: int, end: int, width: int, count: int) -> tuple[int, int]:
    """Return the steps of a word with a little room on both sides, short of the letters beside it."""
    start, stop = step_of(letters[first], width) - MARGIN, step_of(letters[end - 1], width) + MARGIN + 1
    if first:
        start = max(start, step_of(letters[first - 1], width) + 1)
    if end < len(letters):
        stop = min(stop, step_of(letters[end], width))
    return max(0, start), min(count, stop)


def _spellings(word: str, other: str) -> tuple[str, ...]:
    """Write a word in capitals, with one, or small, as another is mostly written; "I" in front may be a small "l"."""
    if sum(c.isupper() for c in word) > len(word) / 2:
        return (other.upper(),)
    if word.startswith("I"):
        return other.capitalize(), other
    return (other.capitalize() if word[0].isupper() else other,)

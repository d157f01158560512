"""The words of English and how often each is printed: two lists, found by their path in wheels, never fetched."""

from __future__ import annotations

import gzip
import importlib.util
import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache, lru_cache
from math import log
from pathlib import Path

import numpy as np
from numpy.typing import NDArray
from rapidfuzz import process
from rapidfuzz.distance import Levenshtein

from adminer.errors import MachineError

# Counts of printed books, but British spelling; and what the first lacks, mostly American forms and rare goods.
# Both packages are under the MIT licence.
BOOKS = ("symspellpy", "frequency_dictionary_en_82_765.txt")
MORE = ("spellchecker", "resources/en.json.gz")
RARE = -16.0  # natural logarithm of its share of print below which a word is known, but nothing is taken for it
# Measures and packages as adverts shorten them, and titles of names: books seldom do. Common practice, no source.
SHORTENED = (
    *("lb", "oz", "yd", "qt", "pt", "ft", "ea", "pr", "pc", "pk", "lbs", "ozs", "yds", "pkg", "pkgs", "doz", "qts"),
    *("pts", "fl", "gal", "gals", "sq", "dz", "bbl", "cwt", "btl", "btls", "pcs", "prs"),
    *("mr", "mrs", "dr", "mme", "mlle", "jr", "bros", "mfg"),
)
USUAL = -5.5  # natural logarithm of the share of each among the words of a grocery advert; judgement, no source


@dataclass(frozen=True, slots=True)
class Lexicon:
    """Hold the natural logarithm of each word's share of print, the less rare words by length, and all in one text.

    `letters` says of each of the less rare words which letters it has, as bits.
    """

    frequency: dict[str, float]
    by_length: dict[int, NDArray[np.object_]]
    letters: dict[int, NDArray[np.uint32]]
    text: str


@cache
def lexicon() -> Lexicon:
    """Load both lists; the words are in lower case.

    Raises MachineError when a list is not installed.
    """
    books = dict(line.split() for line in _file(*BOOKS).read_text(encoding="utf-8-sig").splitlines())
    more = json.loads(gzip.decompress(_file(*MORE).read_bytes()))
    frequency = _shares(more) | _shares(books) | dict.fromkeys(SHORTENED, USUAL)
    by_length: dict[int, list[str]] = {}
    for word, share in frequency.items():
        if share > RARE:
            by_length.setdefault(len(word), []).append(word)
    letters = {length: _letters(words) for length, words in by_length.items()}
    lists = {length: np.array(words, np.object_) for length, words in by_length.items()}
    return Lexicon(frequency, lists, letters, "\n".join(frequency) + "\n")


def is_word(word: str) -> bool:
    """Say whether a word in lower case is known, as it is or without the "s" of a plural."""
    known = lexicon().frequency
    return word in known or word.removesuffix("s") in known


def share_of(word: str) -> float:
    """Return the natural logarithm of a word's share of print, in lower case; minus infinity for one not known."""
    return lexicon().frequency.get(word, float("-inf"))


@lru_cache(maxsize=1 << 12)
def ends_a_word(piece: str) -> bool:
    """Say whether a known word ends with these letters: what a line may begin with that goes on from the one above."""
    return f"{piece}\n" in lexicon().text


@lru_cache(maxsize=1 << 14)
def words_near(word: str, most: int) -> tuple[tuple[str, float], ...]:
    """Return the words up to so many letters away (put in, left out, changed) with their frequency, usual first."""
    known = lexicon()
    near: list[tuple[str, float]] = []
    mine = _letters([word])
    for length in range(len(word) - most, len(word) + most + 1):
        if length not in known.by_length:
            continue
        theirs = known.letters[length]
        # a letter more or less each way for each that is put in, left out or changed
        alike = (np.bitwise_count(theirs & ~mine) <= most) & (np.bitwise_count(mine & ~theirs) <= most)
        others = known.by_length[length][alike]
        away = process.cdist([word], others, scorer=Levenshtein.distance, score_cutoff=most, dtype=np.uint8)[0]
        near += [(others[k], known.frequency[others[k]]) for k in np.flatnonzero(away <= most)]
    return tuple(sorted(near, key=lambda one: -one[1]))


def _letters(words: Sequence[str]) -> NDArray[np.uint32]:
    """Return which letters each of some words of one length has, as bits: "a" is the lowest."""
    numbers = np.frombuffer("".join(words).encode("ascii"), np.uint8).reshape(len(words), -1) - ord("a")
    return np.asarray(np.bitwise_or.reduce(np.uint32(1) << numbers, axis=1), np.uint32)


def _shares(counts: Mapping[str, str | int]) -> dict[str, float]:
    plain = {word: int(count) for word, count in counts.items() if word.isascii() and word.isalpha()}
    every = sum(plain.values())
    return {word: log(count / every) for word, count in plain.items()}


def _file(package: str, name: str) -> Path:
    found = importlib.util.find_spec(package)
    folders = found.submodule_search_locations if found else None
    path = Path(next(iter(folders))) / name if folders else None
    if path is None or not path.is_file():
        raise MachineError(
            "the display reader cannot start",
            file=name,
            why=f"the package {package} with its list of words is not installed",
            remedy="install adminer again with all its dependencies",
        )
    return path

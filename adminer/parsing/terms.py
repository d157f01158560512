"""The terms of trade of an advert: every printed condition found with its kind, its words and its value.

The wordings are data (data/terms.toml). Two kinds of finding come out:
terms that colour one price ("with card", "reg.") and terms of an offer or the whole advert ("limit two").
"""

from __future__ import annotations

import re
import tomllib
from dataclasses import dataclass
from functools import cache, lru_cache
from importlib.resources import files
from typing import Final, Literal

from rapidfuzz import fuzz, process
from rapidfuzz.distance import Levenshtein

Scope = Literal["price", "offer"]

_STANDS_FOR: Final = {
    "{money}": r"(?:\$ ?\d+(?:[.,]\d\d)?|\d+\.\d\d|\d+ ?(?:¢|cents?|c\b|dollars?)|(?:one|two|three|five|ten|"
    r"twenty) dollars?)",
    "{number}": r"(?:\d{1,4}|one|two|three|four|five|six|seven|eight|ten|twelve|dozen)",
    "{q}": r"['’]",
    "{card}": r"(?:(?:[\w'’&.-]+ ){0,4}?)(?:card|cand|eard|caid|oard)(?! (?:table|game|party))",
}


_LONG_WORD: Final = re.compile(r"[A-Za-z]{5,}")
_TERM_WORDS: Final = (
    "without", "regular", "coupon", "coupons", "purchase", "purchases", "cardholder", "cardholders", "stamps",
    "customer",
    "limited", "quantities", "punches", "punched", "filled", "checks", "formerly", "comparable", "postage", "shipping",
    "guarantee", "guaranteed", "satisfaction", "refunded", "deposit", "included", "federal", "expires", "reserve",
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Term:
    """Hold one term found: characters start to end, kind, scope, and its value where it has one."""

    start: int
    end: int
    kind: str
    scope: Scope
    value: str | None = None


@dataclass(frozen=True, slots=True)
class _Rule:
    kind: str
    scope: Scope
    pattern: re.Pattern[str]


@cache
def _rules() -> tuple[_Rule, ...]:
    """Read the shipped wordings; order matters, an earlier rule takes its words from a later one."""
    text = files("adminer.parsing").joinpath("data", "terms.toml").read_text(encoding="utf-8")
    made = []
    for row in tomllib.loads(text)["term"]:
        wordings = "|".join(row["wordings"])
        for name, pattern in _STANDS_FOR.items():
            wordings = wordings.replace(name, pattern)
        made.append(_Rule(row["kind"], row["scope"], re.compile(rf"(?<![A-Za-z])(?:{wordings})", re.IGNORECASE)))
    return tuple(made)


_AMOUNT_IN: Final = re.compile(r"\$? ?(\d+(?:[.,]\d\d)?)")


def find_terms(text: str) -> list[Term]:
    """Return the terms found in a text, left to right, earlier rules first where they overlap."""
    found: list[Term] = []
    repaired, places = repair_words(text)
    for rule in _rules():
        for m in rule.pattern.finditer(repaired):
            start, end = places[m.start()], places[m.end()]
            if (cut := min((f.start for f in found if start < f.start < end), default=None)) is not None:
                # the words after this belong to an earlier term; what stands before may be a term all the same
                short = rule.pattern.match(repaired, m.start(), places.index(cut))
                end = places[short.end()] if short else start
            if end == start or any(start < f.end and f.start < end for f in found):
                continue
            words = text[start:end].rstrip()
            found.append(Term(start, start + len(words), rule.kind, rule.scope, _value(rule.kind, words)))
    return sorted(found, key=lambda t: t.start)


def repair_words(text: str) -> tuple[str, list[int]]:
    """Put right the words of the terms that a reader got wrong by a letter ("withut", "purchasc").

    Only words of six letters and more. Return the text and, for each of its characters and its end, the place in the
    given text.
    """
    parts: list[str] = []
    places: list[int] = []
    at = 0
    for m in _LONG_WORD.finditer(text):
        word = m[0].lower()
        right = word if word in _TERM_WORDS else _nearest_word(word)
        if right is None or right == word:
            continue
        parts += [text[at : m.start()], right]
        places += range(at, m.start())
        places += [m.start() + i * len(word) // len(right) for i in range(len(right))]
        at = m.end()
    parts.append(text[at:])
    places += range(at, len(text) + 1)
    return "".join(parts), places


@lru_cache(maxsize=4096)
def _nearest_word(word: str) -> str | None:
    limit = 1 if len(word) < 8 else 2
    near = process.extractOne(word, _TERM_WORDS, scorer=Levenshtein.distance, score_cutoff=limit)
    return near[0] if near is not None else None


def _value(kind: str, text: str) -> str | None:
    """Return the minimum purchase, the limit or the number of stamps as a plain figure."""
    if kind in {"with_purchase", "stamps", "limit", "punch_card", "deposit"} and (m := _AMOUNT_IN.search(text)):
        return m[1].replace(",", ".")
    words = {"one": "1", "two": "2", "three": "3", "four": "4", "five": "5", "six": "6", "ten": "10", "twelve": "12"}
    if kind in {"limit", "punch_card", "stamps", "with_purchase"}:
        for word in text.lower().split():
            if word in words:
                return words[word]
    return None


# Short labels as they stand alone under or over a price; compared whole, so that a misread letter does no harm.
_LABELS: Final[dict[str, str]] = {
    "with card": "cardholder",
    "to card holders": "cardholder",
    "to others": "without_card",
    "without coupon": "everyone",
    "or in cash": "everyone",
    "with your card": "cardholder",
    "with filled card": "cardholder",
    "with punched card": "cardholder",
    "with punch card": "cardholder",
    "cardholder price": "cardholder",
    "card price": "cardholder",
    "without card": "without_card",
    "without your card": "without_card",
    "regular price": "former",
    "reg. price": "former",
    "with coupon": "coupon",
    "with this coupon": "coupon",
    "comparable value": "comparison",
}
_ALIKE: Final = 82  # rapidfuzz ratio; common practice, no source


def find_labels(lines: list[tuple[int, int, str]], found: list[Term]) -> list[Term]:
    """Return the labels misread by a letter or two among short lines (start, end, text) that hold no term yet."""
    made: list[Term] = []
    for start, end, text in lines:
        words = text.split()
        if not 2 <= len(words) <= 7 or any(t.start < end and start < t.end for t in [*found, *made]):
            continue
        if (kind := _label(text)) is not None:
            made.append(Term(start, end, kind, "price"))
            continue
        for cut in range(2, len(words) - 1):  # two labels side by side
            left, right = " ".join(words[:cut]), " ".join(words[cut:])
            one, two = _label(left), _label(right)
            if one is not None and two is not None and end - start == len(text):
                made.append(Term(start, start + len(left), one, "price"))
                made.append(Term(end - len(right), end, two, "price"))
                break
    return made


@lru_cache(maxsize=8192)
def _label(text: str) -> str | None:
    near = process.extractOne(text.lower().strip(" .,"), list(_LABELS), scorer=fuzz.ratio, score_cutoff=_ALIKE)
    return _LABELS[near[0]] if near is not None else None

"""The terms of trade of an advert: every printed condition found with its kind, its words and its value.

The wordings are data (data/terms.toml). Two kinds of finding come out:
terms that colour one price ("with card", "reg.") and terms of an offer or the whole advert ("limit two").
"""

from __future__ import annotations

import re
import tomllib
from dataclasses import dataclass
from decimal import Decimal
from functools import cache, lru_cache
from importlib.resources import files
from typing import Any, Final, Literal

from rapidfuzz import fuzz, process

from adminer.dating.calendar_words import words_of_dates
from adminer.parsing.money.amounts import fraction_of
from adminer.parsing.terms.term_words import mend
from adminer.parsing.text.stretches import is_taken

Scope = Literal["price", "offer"]

_WEEKDAY: Final = r"(?:(?:mon|tues?|wed(?:nes)?|thu(?:r|rs)?|fri|sat(?:ur)?|sun)(?:day)?(?![a-z])\.?)"
_STANDS_FOR: Final = {
    "{money}": r"(?:\$ ?\d+(?:[.,]\d\d)?|\d+\.\d\d|\d+ ?(?:¢|cents?|c\b|dollars?)|(?:one|two|three|five|ten|"
    r"twenty) dollars?)",
    "{sum}": r"(?:\$ ?\d+(?:[.,]\d\d)?|\.?\d+(?:\.\d\d)?(?: ?(?:¢|cents?|c\b|dollars?))?|£ ?\d+(?:[:.,/ -]+\d+)*|"
    r"\d{1,2}/(?:\d{1,2}½?|-)|\d{1,3}s\.|P\. ?T\. ?\d|"
    r"(?:a|one|two|three|five|ten) (?:dollars?|guineas?|pounds?|shillings?))",
    "{sellers}": r"(?:(?:stores?|shops?|dealers?|retailers?|merchants?|agents?|jewell?ers?|druggists?|tailors?|"
    r"drapers?|grocers?|peddlers?|mail[- ]order houses?|competitors|catalog(?:ue)?s)(?![a-z]))",
    "{number}": r"(?:\d{1,4}|one|two|three|four|five|six|seven|eight|ten|twelve|dozen)",
    "{q}": r"['’]",
    "{weekday}": _WEEKDAY,
    "{date}": rf"(?:{_WEEKDAY},? )?(?:jan|feb|mar|apr|may|june?|july?|aug|sept?|oct|nov|dec)[a-z]*\.? \d{{1,2}}"
    r"(?:st|nd|rd|th)?(?!\d)(?:,? (?:18|19)\d\d)?",
    "{card}": r"(?:(?:[\w'’&.-]+ ){0,4}?)(?:card|cand|eard|caid|oard)(?! (?:table|game|party))",
}


@dataclass(frozen=True, slots=True)
class Term:
    """Hold one term found: characters start to end, kind, scope, and its value where it has one."""

    start: int
    end: int
    kind: str
    scope: Scope
    words: str  # as printed, slips of the reader mended
    value: str | None = None


@dataclass(frozen=True, slots=True)
class _Rule:
    kind: str
    scope: Scope
    pattern: re.Pattern[str]
    cased: bool  # it tells capitals from small letters; any other is matched with the text in small letters


@cache
def _data() -> dict[str, Any]:
    return tomllib.loads(files("adminer.parsing").joinpath("data", "terms.toml").read_text(encoding="utf-8"))


@cache
def _rules() -> tuple[_Rule, ...]:
    """Read the shipped wordings; order matters, an earlier rule takes its words from a later one."""
    made = []
    for row in _data()["term"]:
        wordings = "|".join(row["wordings"])
        for name, pattern in _STANDS_FOR.items():
            wordings = wordings.replace(name, pattern)
        cased = "(?-i:" in wordings
        if not cased:  # small letters are found in half the time that letters of any case are
            wordings = _CAPITAL.sub(lambda found: found[0].lower(), wordings)
        flags = re.IGNORECASE if cased else re.NOFLAG
        made.append(_Rule(row["kind"], row["scope"], re.compile(rf"(?<![A-Za-z])(?:{wordings})", flags), cased))
    return tuple(made)


_CAPITAL: Final = re.compile(r"(?<!\\)[A-Z]")  # behind a stroke it is no letter but a class of them
_DAYS: Final = frozenset({"weekday", "numeric", "tomorrow", "today"})
_DAY_TAIL: Final = re.compile(
    r"(?:[.,]? ?(?:1[89]\d\d|midnight|noon|night|only|at \d+ ?[ap]\.?m\.?|inclusive))*\.?", re.IGNORECASE
)
_AMOUNT_IN: Final = re.compile(r"\$? ?(\d+(?:[.,]\d\d)?)")
_BOOKS_IN: Final = re.compile(r"(?P<whole>\d{1,2})? ?(?P<part>[½¼¾⅓⅔])")


def find_terms(text: str) -> list[Term]:
    """Return the terms found in a text, left to right, earlier rules first where they overlap."""
    found: list[Term] = []
    mended, places = mend(text)
    small = "".join(c if len(c.lower()) > 1 else c.lower() for c in mended)
    for rule in _rules():
        said = mended if rule.cased else small
        for m in rule.pattern.finditer(said):
            start, end, stop = places[m.start()], places[m.end()], m.end()
            if (cut := min((f.start for f in found if start < f.start < end), default=None)) is not None:
                # the words after this belong to an earlier term; what stands before may be a term all the same
                short = rule.pattern.match(said, m.start(), places.index(cut))
                stop = short.end() if short else m.start()
                end = places[stop]
            if end == start or is_taken(start, end, found):
                continue
            if rule.kind == "expiry":
                end, stop = _to_its_day(text, mended, places, (m.start(), stop))
            end = start + len(text[start:end].rstrip())
            words = " ".join(mended[m.start() : stop].split())
            found.append(Term(start, end, rule.kind, rule.scope, words, _value(rule.kind, words)))
    return sorted(found, key=lambda t: t.start)


def _to_its_day(text: str, mended: str, places: list[int], span: tuple[int, int]) -> tuple[int, int]:
    """Return where an expiry ends in the text and the mended one: after its day, not in the next item's words."""
    start, stop = span
    first = next((g for g in words_of_dates(mended[start:stop]) if len(g) > 1 or g[0].kind in _DAYS), None)
    if first is not None:
        stop = start + first[-1].end
        tail = _DAY_TAIL.match(mended, stop)
        stop = tail.end() if tail else stop
    return places[stop], stop


def _value(kind: str, text: str) -> str | None:
    """Return the minimum purchase, the limit or the number of stamps or of their books as a plain figure."""
    if kind == "stamps" and (m := _BOOKS_IN.search(text)):
        return f"{round(Decimal(m['whole'] or 0) + fraction_of(m['part']), 2).normalize():f}"
    if kind in {"with_purchase", "stamps", "limit", "punch_card", "deposit"} and (m := _AMOUNT_IN.search(text)):
        return m[1].replace(",", ".")
    words = {"one": "1", "two": "2", "three": "3", "four": "4", "five": "5", "six": "6", "ten": "10", "twelve": "12"}
    if kind in {"limit", "punch_card", "stamps", "with_purchase"}:
        for word in text.lower().split():
            if word in words:
                return words[word]
    return None


_ALIKE: Final = 82  # rapidfuzz ratio; common practice, no source
_LONGEST: Final = 9  # words of a label or stock sentence


@cache
def _whole(table: str) -> dict[str, str]:
    """Return the labels or sentences of the data by their words, each with its kind."""
    return {words: kind for kind, all_words in _data()[table].items() for words in all_words}


def head_words() -> dict[str, str]:
    """Return the kind of every bare head of a column of prices, by its words in lower case."""
    return _whole("heads")


def find_labels(lines: list[tuple[int, int, str]], found: list[Term]) -> list[Term]:
    """Return labels and stock sentences misread by a letter or two in lines (start, end, text) without a term."""
    made: list[Term] = []
    for start, end, text in lines:
        words = text.split()
        if not 2 <= len(words) <= _LONGEST or is_taken(start, end, [*found, *made]):
            continue
        if (label := _nearest(text, "labels")) is not None:
            made.append(_made(start, end, label))
            continue
        if len(words) > 2 and (sentence := _nearest(text, "sentences")) is not None:
            kind = sentence[0]
            scope: Scope = "price" if kind == "cardholder" else "offer"
            made.append(Term(start, end, kind, scope, text, _value(kind, text)))  # its figures are as they were read
            continue
        for cut in range(2, len(words) - 1):  # two labels side by side
            left, right = " ".join(words[:cut]), " ".join(words[cut:])
            one, two = _nearest(left, "labels"), _nearest(right, "labels")
            if one is not None and two is not None and end - start == len(text):
                made.append(_made(start, start + len(left), one))
                made.append(_made(end - len(right), end, two))
                break
    return made


def _made(start: int, end: int, label: tuple[str, str]) -> Term:
    kind, words = label
    return Term(start, end, kind, "price", words)


@lru_cache(maxsize=16384)
def _nearest(text: str, table: str) -> tuple[str, str] | None:
    """Return the kind and the right words of the label or sentence that a text is, letter for letter or nearly."""
    known = _whole(table)
    near = process.extractOne(text.lower().strip(" .,"), list(known), scorer=fuzz.ratio, score_cutoff=_ALIKE)
    return (known[near[0]], near[0]) if near is not None else None

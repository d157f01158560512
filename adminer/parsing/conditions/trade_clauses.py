"""Clauses that state a term of trade in words that no wording foresees: "Accounts settled monthly", "Sales tax extra".

A clause is a term where it names a matter of trade, says of it what is done or what binds it, and says little else:
its words are counted by the lists they stand in (data/trade_clauses.toml).
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cache, lru_cache
from importlib.resources import files
from typing import Final

from adminer.parsing.prices.prices import Found
from adminer.parsing.terms.term_words import mend
from adminer.parsing.terms.terms import Term
from adminer.parsing.text.stretches import is_taken
from adminer.parsing.text.text import AdvertText

_END: Final = re.compile(
    r"(?<!\b[A-Z])(?<!\b(?:St|Co|Ex|No|yr|pr|ft|lb))(?<!\b(?:Fed|Mon|Wed|Thu|Fri|Sat|Sun|Jan|Feb|Mar|Apr|Aug|Oct|Nov|"
    r"Dec|min|doz|lbs|inc))(?<!\b(?:Tues|Sept|incl))(?<!\bThurs)[.](?=\s|$)|[!?;:](?=\s|$)|\s?[—–•*·|]\s?|\n|\s-\s"
)
_WORD: Final = re.compile(r"[A-Za-z](?:[A-Za-z'’.-]*[A-Za-z])?")
_LEADS_TO: Final = re.compile(r"[\s,.:…–—-]{0,9}")
_LONGEST: Final = 16  # words
_ASIDE: Final = frozenset({"postage", "saving", "reference"})  # roles of sums that are said in terms of trade


@dataclass(frozen=True, slots=True)
class _Group:
    kind: str
    about: frozenset[str]
    said: frozenset[str]


@cache
def _lists() -> tuple[tuple[_Group, ...], frozenset[str], frozenset[str]]:
    data = tomllib.loads(files("adminer.parsing").joinpath("data", "trade_clauses.toml").read_text(encoding="utf-8"))
    groups = tuple(
        _Group(g["kind"], frozenset(g["about"].split()), frozenset(g["said"].split())) for g in data["group"]
    )
    return groups, frozenset(data["words"]["bounds"].split()), frozenset(data["words"]["neutral"].split())


def find_clauses(advert: AdvertText, terms: Sequence[Term], prices: Sequence[Found]) -> list[Term]:
    """Return the clauses that state a term of trade and hold neither a term found already nor a price of goods."""
    found = []
    for start, end in _clauses(advert.joined):
        if is_taken(start, end, terms):
            continue
        if any(p.start < end and start < p.end and p.role not in _ASIDE for p in prices):
            continue
        words = " ".join(advert.text[start:end].split())
        if (kind := _kind_of(words)) is not None:
            found.append(Term(start, end, kind, "offer", words))
    return found


def without_sums(text: str, clauses: Sequence[Term], prices: Sequence[Found]) -> list[Term]:
    """Return the clauses that hold no sum and lead to none ("packing on small orders, 75c"): they name no item."""
    return [
        clause
        for clause in clauses
        if not any(
            clause.start < price.end
            and (price.start < clause.end or _LEADS_TO.fullmatch(text, clause.end, price.start))
            for price in prices
        )
    ]


def _clauses(text: str) -> Iterator[tuple[int, int]]:
    edges = [(m.start(), m.end()) for m in _END.finditer(text)]
    for (_, start), (end, _) in zip([(0, 0), *edges], [*edges, (len(text), 0)], strict=True):
        bare = text[start:end]
        yield start + len(bare) - len(bare.lstrip(" (,\"“'")), start + len(bare.rstrip(" ),\"”'"))


@lru_cache(maxsize=8192)
def _kind_of(clause: str) -> str | None:
    """Return the kind of term a clause states, or None."""
    words = [word.lower().replace("’", "'") for word in _WORD.findall(mend(clause)[0])]
    if not 2 <= len(words) <= _LONGEST:
        return None
    groups, bounds, neutral = _lists()
    for group in groups:
        about = [i for i, word in enumerate(words) if word in group.about]
        said = [i for i, word in enumerate(words) if word in group.said and about != [i]]
        bound = [i for i, word in enumerate(words) if word in bounds]
        if not about or not (said or _forbids(words)):
            continue
        told = {*about, *said, *bound}
        others = sum(word not in neutral for i, word in enumerate(words) if i not in told)
        if others <= len(told):
            return group.kind
    return None


def _forbids(words: list[str]) -> bool:
    return any(word in {"no", "not", "none", "never", "without", "if"} for word in words)

"""Printed conditions as whole statements: the clause around a term, in the words of the advert."""

from __future__ import annotations

import re
from typing import Final

from adminer.parsing.terms import Term
from adminer.parsing.text import AdvertText
from adminer.records import ConditionText

_CLAUSE_END: Final = re.compile(r"[.!?;:](?=\s|$)|\s[—–•*]\s?|[—•]|…|\.\.+")
_AMOUNT: Final = re.compile(r"\$ ?\d|\d ?(?:¢|c\b|cents)")
_LONGEST: Final = 16  # words of a statement


def condition_texts(advert: AdvertText, terms: list[Term], used: set[int]) -> list[ConditionText]:
    """Return the terms that colour no price as conditions with the clause they stand in, one a clause and kind."""
    found: list[ConditionText] = []
    seen: set[tuple[str, int, int]] = set()
    for i, term in enumerate(terms):
        if term.scope == "price" and advert.text[term.start : term.end].lower().startswith(("for ", "card")):
            continue  # a headline to card holders, no condition of its own
        if i in used or term.kind in {"former", "comparison", "everyone"}:
            continue
        start, end = clause_around(advert, term.start, term.end)
        words = _words(advert.text[start:end])
        if (term.kind, start, end) in seen or len(words.split()) < 2 or _is_only_money(advert, term):
            continue
        seen.add((term.kind, start, end))
        found.append(
            ConditionText(
                kind=term.kind,
                text=words,
                box=advert.box_of(start, end),
                confidence=round(0.9 * advert.confidence_of(term.start, term.end), 3),
                value=term.value,
            )
        )
    return found


def _is_only_money(advert: AdvertText, term: Term) -> bool:
    """Say whether a term of payment is already told by its prices ("$1 down, $1 a week")."""
    return term.kind == "instalments" and len(_AMOUNT.findall(advert.text, term.start, term.end)) == 1


def clause_around(advert: AdvertText, start: int, end: int) -> tuple[int, int]:
    """Return the characters of the clause a term stands in: its line, or as far as the sentence runs on."""
    text = advert.text
    first, last = advert.line_at(start), advert.line_at(max(end - 1, start))
    left, right = first.start, last.end
    for m in _CLAUSE_END.finditer(text, left, start):
        left = m.end()
    if stop := _CLAUSE_END.search(text, max(end - 1, start), right):
        right = stop.end()
    if left == first.start and first.number > 0:
        above = advert.lines[first.number - 1]
        if (
            text[start:end][:1].islower()
            and above.block == first.block
            and not _CLAUSE_END.search(text, above.end - 1, above.end)
        ):
            left = above.start
            for m in _CLAUSE_END.finditer(text, left, above.end):
                left = m.end()
    if right == last.end and last.number + 1 < len(advert.lines):
        below = advert.lines[last.number + 1]
        runs_on = text[below.start : below.start + 1].islower() and below.block == last.block
        if runs_on:
            stop = _CLAUSE_END.search(text, below.start, below.end)
            right = stop.end() if stop else below.end
    while left < start and text[left].isspace():
        left += 1
    if len(text[left:right].split()) > _LONGEST:
        left, right = max(left, first.start), min(right, last.end)
    return left, max(right, end)


def _words(text: str) -> str:
    return " ".join(re.sub(r"(?<=[a-z])-\n(?=[a-z])", "", text).split()).strip(" ,;—–•*")

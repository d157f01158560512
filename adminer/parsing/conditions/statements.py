"""Printed conditions as whole statements: the clause around a term, in the words of the advert."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final

from adminer.parsing.conditions.dates import RATION
from adminer.parsing.prices.prices import Found
from adminer.parsing.segments.items import Segment
from adminer.parsing.terms.terms import Term
from adminer.parsing.text.text import AdvertText
from adminer.records import ConditionText

_CLAUSE_END: Final = re.compile(r"[.!?;:](?=\s|$)|\s[—–•*]\s?|[—•]|…|\.\.+")
_COUPON_HEAD: Final = re.compile(r"(?:(?:valuable|special|free|bonus|money[- ]saving) )*coupon", re.IGNORECASE)
_CLAIMS: Final = frozenset({"free", "guarantee", "cash", "open_stock", "stamps"})
_PAYMENTS: Final = frozenset({"down_payment", "instalment"})
_TOLD: Final = {"deposit": _PAYMENTS, "instalments": _PAYMENTS, "postage": frozenset({"postage"})}
_WORD: Final = re.compile(r"(?!and\b)[A-Za-z]{2,}", re.IGNORECASE)
_DISPLAY: Final = 1.4  # times the body type
_BARE: Final = 5  # words of a payment and nothing else ("only $1 down", "$1 a week")
_MOSTLY: Final = 0.7  # of the letters of a text
_LONGEST: Final = 16  # words of a statement


def condition_texts(advert: AdvertText, terms: list[Term], used: set[int], prices: list[Found]) -> list[ConditionText]:
    """Return the terms that colour no price as conditions with the clause they stand in, one a clause and kind.

    A claim repeated in the same words ("positively free") is one condition of the advert.
    """
    found: list[ConditionText] = []
    seen: set[tuple[str, int, int] | tuple[str, str]] = set()
    told = _told(advert, terms, prices)
    for i, term in enumerate(terms):
        if i in used or term.kind in {"former", "comparison", "everyone"} or i in told:
            continue
        start, end = clause_around(advert, term.start, term.end)
        before, after = advert.text[start : term.start], advert.text[term.end : end]
        if term.words.lower() == "without":
            continue  # the label of a price that was not found, or prose
        if term.kind == "coupon" and _COUPON_HEAD.fullmatch(term.words):
            continue  # the heading of a coupon, no condition of it
        if term.kind == "expiry" and RATION.search(before.replace("\n", " ")):
            continue  # the last day of ration stamps binds no offer
        words = _words(f"{before}{term.words}{after}")
        claim = (term.kind, term.words.lower())
        if len(words.split()) < 2 or (term.kind, start, end) in seen or (term.kind in _CLAIMS and claim in seen):
            continue
        seen |= {(term.kind, start, end), claim}
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


def without_terms(segments: Sequence[Segment], terms: Sequence[Term]) -> list[Segment]:
    """Return the texts but those that only say a term of trade ("No rain checks"), which name nothing sold."""
    return [
        s
        for s in segments
        if s.goods
        or sum(max(min(t.end, s.end) - max(t.start, s.start), 0) for t in terms) < _MOSTLY * (s.end - s.start)
    ]


def _told(advert: AdvertText, terms: list[Term], prices: list[Found]) -> set[int]:
    """Return the numbers of the terms that the prices in them tell already ("$1 down"; "50c cash and 50c a month").

    Both payments in display type head the advert and are a condition of it, and so are the only ones it has. A line
    of payments only, set off from the text ("$1 DOWN — 50c A WEEK"), is the label of an offer's terms.
    """
    told: dict[int, str] = {}
    bare: set[int] = set()
    for i, term in enumerate(terms):
        inside = [p for p in prices if term.start <= p.start and p.end <= term.end]
        if not inside or not all(p.role in _TOLD.get(term.kind, ()) for p in inside):
            continue
        whole = _payments_around(advert, terms, i)
        if len(inside) == 1 and len(term.words.split()) <= _BARE and len(whole) == 1:
            if not _is_label(advert, term, terms):
                bare.add(i)
        elif advert.type_px_of(term.start, term.end) < _DISPLAY * advert.body_px and not _is_label(advert, term, terms):
            told[i] = " ".join(terms[n].words.lower() for n in whole)
    return bare | (set(told) if len(set(told.values())) > 1 else set())


def _payments_around(advert: AdvertText, terms: list[Term], at: int) -> list[int]:
    """Return the numbers of the terms that one payment plan is said in: "$1.75 down and 90c monthly"."""
    whole = [at]
    for i in (at - 1, at + 1):
        if 0 <= i < len(terms) and {terms[i].kind, terms[at].kind} == {"deposit", "instalments"}:
            first, last = sorted((i, at))
            if not _WORD.search(advert.text[terms[first].end : terms[last].start]):
                whole = sorted([*whole, i])
    return whole


def _is_label(advert: AdvertText, term: Term, terms: list[Term]) -> bool:
    """Say whether a line says payments and nothing else, and ends without the stop of a sentence."""
    line = advert.line_at(term.start)
    paid = [t for t in terms if t.kind in _TOLD and line.start <= t.start and t.end <= line.end]
    rest = "".join(
        advert.text[at] for at in range(line.start, line.end) if not any(t.start <= at < t.end for t in paid)
    )
    return not _WORD.search(rest) and not rest.rstrip().endswith(".")


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

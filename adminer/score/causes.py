"""Why a price was missed: not detected, misread, wrong cents, not taken for a price, or given the wrong item."""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import dataclass
from decimal import Decimal
from typing import Final, Literal

from adminer.records import Box
from adminer.score.found import FoundPage, FoundPrice
from adminer.score.prices import Matched, same_place
from adminer.score.text import best_stretch, plain
from adminer.score.truth import TruePage, TruePrice

Cause = Literal[
    "right", "not detected", "misread", "wrong cents", "read, no price made", "wrong item", "extra: no such price"
]
CAUSES: Final[tuple[Cause, ...]] = (
    "right", "not detected", "misread", "wrong cents", "read, no price made", "wrong item", "extra: no such price"
)  # fmt: skip
_FACTORS: Final = tuple(Decimal(10) ** power for power in (-3, -2, -1, 1, 2, 3))
_DIGIT: Final = re.compile(r"\d")
_FORMS: Final[tuple[tuple[str, re.Pattern[str]], ...]] = (
    ("multiple", re.compile(r"\d+\s?(?:/|for|@)\s?\$?\d", re.IGNORECASE)),
    ("fraction", re.compile(r"[½¼¾⅓⅔⅛]")),
    ("raised_cents", re.compile(r"\$\d+ \d\d$")),
    ("dollars_point", re.compile(r"\$\s?\d[\d,]*\.\d\d")),
    ("dollars_whole", re.compile(r"\$\s?\d")),
    ("cents_sign", re.compile(r"\d\s?(?:¢|c)", re.IGNORECASE)),
    ("words", re.compile(r"[a-z]{3,} (?:cents|dollars)", re.IGNORECASE)),
)


@dataclass(frozen=True, slots=True)
class Miss:
    """Hold what became of one price: its page, its typographic form, the cause, and both texts as evidence."""

    file: str
    form: str
    cause: Cause
    printed: str
    found: str
    box: Box | None
    item: str = ""
    item_found: str = ""


def form_of(price: TruePrice) -> str:
    """Return the typographic form of a true price: as stated, else by the pattern of its printed text."""
    if price.form:
        return price.form
    if price.currency != "USD":
        return "piastres" if price.currency == "EGP-piastre" else "sterling"
    return next((form for form, pattern in _FORMS if pattern.search(price.text_as_printed)), "bare")


def find_causes(true: TruePage, page: FoundPage, matched: Matched) -> list[Miss]:
    """Say of every true price of a page (in one money) what became of it, and of every extra one that it is extra."""
    free = list(matched.extra)
    outcome = []
    for pair in matched.pairs:
        cause: Cause = "right" if pair.item_alike else "wrong item"
        outcome.append(
            Miss(true.file, form_of(pair.true), cause, pair.true.text_as_printed, pair.found.text, pair.found.box,
                 pair.true.item_text, pair.found.item)
        )  # fmt: skip
    for price in matched.missed:
        rival = _rival(price, free)
        cause, text = _cause(price, rival, page)
        if rival is not None and cause in ("misread", "wrong cents"):
            free.remove(rival)
        place = price.box or (rival.box if rival else None)
        outcome.append(Miss(true.file, form_of(price), cause, price.text_as_printed, text, place, price.item_text))
    if matched.complete:
        outcome += [
            Miss(true.file, extra.form, "extra: no such price", "", extra.text, extra.box, "", extra.item)
            for extra in free
        ]
    return outcome


def _rival(price: TruePrice, extras: list[FoundPrice]) -> FoundPrice | None:
    """Return the extra price that most likely stands for a missed one."""
    shifted = [extra for extra in extras if _shifted(price.amount, extra.amount)]
    if price.box is not None:
        there = [extra for extra in extras if same_place(price.box, extra.box)]
        return next(iter([extra for extra in there if extra in shifted] or there), None)
    return next(iter(shifted), None)


def _shifted(true: Decimal, found: Decimal) -> bool:
    whole_only = found == true.to_integral_value(rounding="ROUND_FLOOR") and found > 0
    return whole_only or any(true * factor == found for factor in _FACTORS)


def _cause(price: TruePrice, rival: FoundPrice | None, page: FoundPage) -> tuple[Cause, str]:
    if rival is not None:
        return ("wrong cents" if _shifted(price.amount, rival.amount) else "misread"), rival.text
    printed = plain(price.text_as_printed)
    if price.box is not None:
        there = " ".join(text for text, box in page.words if same_place(price.box, box))
        if not _DIGIT.search(there):
            return "not detected", there
        return ("read, no price made" if _figures(printed) == _figures(there) else "misread"), there
    score = best_stretch(printed, page.text)
    if score.edits == 0:
        return "read, no price made", score.stretch
    if score.edits <= max(1, len(printed) // 3):
        return "misread", score.stretch
    return "not detected", score.stretch


def _figures(text: str) -> str:
    return "".join(_DIGIT.findall(text))


def table_of(misses: tuple[Miss, ...]) -> dict[str, Counter[Cause]]:
    """Count causes by typographic form, the most frequent form first."""
    table: dict[str, Counter[Cause]] = {}
    for miss in misses:
        table.setdefault(miss.form, Counter())[miss.cause] += 1
    return dict(sorted(table.items(), key=lambda row: -row[1].total()))

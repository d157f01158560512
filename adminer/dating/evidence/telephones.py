"""The style of printed telephone numbers; local habits differ, so every style stays possible for decades."""

from __future__ import annotations

import re
from collections.abc import Iterator
from datetime import date
from typing import Final

from adminer.dating.evidence.base import Case, Clue, Context, Sign, find_signs
from adminer.dating.evidence.shapes import steps

KIND: Final = "telephone"
_NUMBERS = "history of all-number calling (en.wikipedia.org/wiki/All-number_calling; liquisearch.com)"
_CODES = "first customer-dialled call with area code, 10 November 1951 (wikizero Original_North_American_area_codes)"
_STYLE = (
    "order of styles in directories (liquisearch.com telephone_exchange_names); local dates are judgement, no source"
)
_PHONE = r"(?:(?i:tel(?:ephone)?|phone|call|dial)\W{0,6}(?:\w+\W+)?)"

SIGNS: Final = (
    Sign(
        "an exchange name of two letters and five figures was rare before 1930 and went out in the 1960s",
        re.compile(r"\b[A-Z]{2}(?:[a-z]{2,10})?\.?\s*[2-9]-\d{4}(?!\d)"),
        steps(((1929, 0.02), (1931, 0.2), (1946, 0.4), (1948, 1.0), (1961, 1.0), (1970, 0.08))),
        _NUMBERS,
        date(1930, 12, 1),
    ),
    Sign(
        "an exchange name and four figures belongs to the years before the seven-place numbers",
        re.compile(rf"{_PHONE}(?:[A-Z]{{2,3}}[a-z]{{0,9}}|[A-Z][a-z]{{3,10}})\.?\s+\d{{4}}(?!\d)"),
        steps(((1900, 0.6), (1915, 1.0), (1947, 1.0), (1960, 0.1), (1970, 0.03))),
        _STYLE,
    ),
    Sign(
        "seven figures without letters were introduced in 1958",
        re.compile(r"(?<![\d-])[2-9]\d{2}-\d{4}(?![\d-])"),
        steps(((1957, 0.03), (1959, 0.3), (1964, 1.0))),
        _NUMBERS,
        date(1958, 1, 1),
    ),
    Sign(
        "area codes were dialled from November 1951 and printed in adverts mostly from the 1960s",
        re.compile(r"\(\s*[2-9][01]\d\s*\)\s*(?:\d{3}|[A-Z]{2}\s?\d)-\d{4}|(?i:area code)\s*[2-9][01]\d"),
        steps(((1951, 0.01), (1952, 0.1), (1959, 0.2), (1965, 1.0))),
        _CODES,
        date(1951, 11, 10),
    ),
    Sign(
        "a number of three or four figures alone suits small towns, seldom after about 1960",
        re.compile(r"(?i:tel(?:ephone)?|phone|call|dial)\W{1,6}(?:no\.?\s*)?\d{3,4}(?![\d-])"),
        steps(((1950, 1.0), (1965, 0.3))),
        _STYLE,
    ),
)


def find(case: Case, _context: Context) -> Iterator[Clue]:
    """Yield the clues of an advert's telephone numbers."""
    return find_signs(case, KIND, SIGNS)

"""Taxes, fair trade, trading stamps, marks of origin and of registration."""

from __future__ import annotations

import re
from collections.abc import Iterator
from datetime import date
from typing import Final

from adminer.dating.evidence.base import Case, Clue, Context, Sign, find_signs
from adminer.dating.evidence.shapes import spell, steps

KIND: Final = "taxes, stamps and laws"
_REVENUE = "Revenue Act of 20 September 1941, sec. 552 (Stat. 55:743); IRC 1954 sec. 4001 (Stat. 68A:513)"
_MADE_IN = "marks of origin (weandnek.com; thetownhouseantiques.com)"
_FEDERAL = r"\bfed(?:eral|\.)?\s+(?:excise\s+)?tax\b"

SIGNS: Final = (
    Sign(
        "a federal retail tax on silver plate, jewelry and the like was levied from October 1941 to mid-1965",
        re.compile(rf"(?i){_FEDERAL}"),
        spell(date(1941, 10, 1), date(1965, 6, 30), half_life=6),
        _REVENUE + "; the first month of levying is from memory",
        date(1941, 9, 20),
        date(1965, 6, 30),
        "fed",
    ),
    Sign(
        "the federal retail tax stood at 20 % from April 1944 to March 1954",
        re.compile(rf"(?i)\b20\s?%\s*{_FEDERAL}"),
        spell(date(1944, 4, 1), date(1954, 3, 31), half_life=6),
        _REVENUE + "; paininthepurse.blogspot.com",
        date(1944, 4, 1),
        date(1954, 3, 31),
        "20",
    ),
    Sign(
        "fair-trade prices were lawful from 1931 (California) and 1937 (nation) to 1976",
        re.compile(r"(?i)\bfair[\s-]trade[d]?\b"),
        steps(((1930, 0.01), (1932, 0.2), (1937, 0.5), (1938, 1.0), (1965, 0.8), (1976, 0.3), (1977, 0.02))),
        "Miller-Tydings Act 1937, McGuire Act 1952, repeal December 1975 (encyclopediahub.com; law.jrank.org)",
        date(1931, 1, 1),
        date(1976, 3, 11),
        "trade",
    ),
    Sign(
        "trading stamps peaked twice, before 1920 and from 1951 to 1969",
        re.compile(r"(?i)\btrading\s+stamps?\b|\bdouble\s+stamps?\b|\bstamps?\s+(?:with|given)\b"),
        steps(((1891, 0.2), (1900, 0.5), (1915, 0.5), (1930, 0.2), (1950, 0.2), (1955, 1.0), (1970, 1.0), (1978, 0.3))),
        "history of trading stamps (iiab.me Trading_stamps; onoalmanac); the shares between are judgement",
        hint="stamp",
    ),
    Sign(
        "the sign ® came with the trade-mark act of 1946, in force July 1947",
        re.compile("®"),
        spell(date(1947, 7, 5), misread=0.15),  # readers see ® in smudges
        "Lanham Act 1946 (justprotected.com); the day it came in force is from memory",
        date(1947, 7, 5),
    ),
    Sign(
        "'Occupied Japan' was marked from about August 1947 to April 1952",
        re.compile(r"(?i)\boccupied\s+japan\b"),
        spell(date(1947, 8, 1), date(1952, 4, 28), half_life=8),
        _MADE_IN,
        date(1947, 8, 1),
        date(1952, 4, 28),
        "occupied",
    ),
    Sign(
        "'Nippon' as a mark of origin ran from 1891 to 1921",
        re.compile(r"(?i)\bnippon\s+(?:china|porcelain|ware)\b"),
        spell(date(1891, 1, 1), date(1921, 8, 31), half_life=36, floor=0.1),
        _MADE_IN,
        date(1891, 1, 1),
        date(1921, 8, 31),
        "nippon",
    ),
    Sign(
        "safe in a dishwasher or from detergents was claimed from about the mid-1950s",
        re.compile(r"(?i)\b(?:detergent|dish\s?washer)[\s-]*(?:proof|safe|resistant)\b"),
        steps(((1950, 0.02), (1956, 0.6), (1960, 1.0))),
        "from memory",
        date(1950, 1, 1),
    ),
    Sign(
        "melamine tableware was sold from about 1949",
        re.compile(r"(?i)\bmelamine\b|\bmelmac\b"),
        steps(((1945, 0.01), (1949, 0.3), (1953, 1.0), (1970, 0.8), (1978, 0.4))),
        "from memory",
        date(1945, 1, 1),
        hint="mel",
    ),
)

# first year of a lasting state sales tax
_SALES_TAX: Final = {
    "MS": 1930, "CA": 1933, "IL": 1933, "MI": 1933, "OH": 1935, "MD": 1947, "TN": 1947, "FL": 1949, "GA": 1951,
    "SC": 1951, "ME": 1951, "PA": 1953, "KY": 1960, "TX": 1961, "WI": 1961, "IN": 1963, "NY": 1965, "NJ": 1966,
    "MA": 1966, "VA": 1966, "MN": 1967, "NE": 1967, "VT": 1969,
}  # fmt: skip
_TAX_SOURCE: Final = "state sales taxes (taxfoundation.org; sales-tax.us; liquisearch); single years partly from memory"
_TAX_WORDS: Final = re.compile(r"(?i)\b(?:state\s+)?sales\s+tax\b|\bplus\s+(?:state\s+)?sales\s+tax\b")


def find(case: Case, context: Context) -> Iterator[Clue]:
    """Yield the clues of taxes, stamps and laws; a state sales tax counts from its first year in the advert's state."""
    yield from find_signs(case, KIND, SIGNS)
    found = _TAX_WORDS.search(case.text)
    if found:
        state = (case.state or context.region or "").strip().upper()
        year = _SALES_TAX.get(state, 1930)
        place = state if state in _SALES_TAX else "the first state"
        yield Clue(
            KIND,
            f"'{found[0]}': {place} taxed sales from {year}",
            _TAX_SOURCE,
            spell(date(year, 1, 1), misread=0.03),
            case.box_of(found.start(), found.end()),
            date(year, 1, 1),
        )

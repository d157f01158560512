"""Rationing, ceiling prices and war-time words."""

from __future__ import annotations

import re
from collections.abc import Iterator
from datetime import date
from typing import Final

import numpy as np

from adminer.dating.evidence.base import Case, Clue, Context, Sign, find_signs
from adminer.dating.evidence.shapes import spell

KIND: Final = "rationing and controls"
_MISREAD: Final = 0.003  # such words were in every grocery advert of their years and hardly in any other
_DIARY = "contemporary reports gathered at therationcard.blogspot.com"


def _sign(name: str, pattern: str, first: date, last: date, source: str, *, half_life: float = 4.0) -> Sign:
    return Sign(
        name,
        re.compile(pattern, re.I),
        spell(first, last, misread=_MISREAD, half_life=half_life, floor=_MISREAD),
        source,
        first,
        last,
    )


SIGNS: Final = (
    _sign(
        "red points rationed meat, butter and fats from 29 March 1943 to 23 November 1945",
        r"\bred\s+(?:points?|stamps?|tokens?)\b",
        date(1943, 3, 29),
        date(1945, 11, 23),
        f"{_DIARY}; amemoirfromthehomefront.com; burnpit.us; the first day is from memory",
    ),
    _sign(
        "blue points rationed canned and dried food from 1 March 1943 to August 1945",
        r"\bblue\s+(?:points?|stamps?|tokens?)\b",
        date(1943, 3, 1),
        date(1945, 8, 31),
        f"{_DIARY}, 3 February and 1 March 1943; ncpedia.org; the last month is from memory",
    ),
    _sign(
        "prices in ration points belong to March 1943 to November 1945",
        r"\b(?:no|low|\d{1,2})[\s-]+points?\s+(?:per|a|each|lb|value|free)|\bpoint[\s-]free\b|\bration(?:ed|ing)?\s+(?:points?|stamps?|books?|tokens?)",
        date(1942, 5, 1),
        date(1945, 11, 30),
        f"{_DIARY}; kancoll.org 0597ratn",
    ),
    _sign(
        "sugar stamps ran from May 1942 to June 1947",
        r"\bsugar\s+(?:ration\s+)?(?:stamps?|ration)\b",
        date(1942, 5, 1),
        date(1947, 6, 30),
        "blog.heartlanddiary.com; kancoll.org 0597ratn",
    ),
    _sign(
        "coffee stamps ran from 29 November 1942 to July 1943",
        r"\bcoffee\s+(?:ration\s+)?(?:stamps?|ration)\b",
        date(1942, 11, 29),
        date(1943, 7, 31),
        f"{_DIARY}, 23 November 1942; kancoll.org",
    ),
    _sign(
        "the price office of 1942 was abolished on 29 May 1947",
        r"\bO\.?\s?P\.?\s?A\.?\b(?=\W+(?:ceil|price|order|reg|approved|rul))|\bceiling\s+prices?\s+of\s+the\s+OPA",
        date(1942, 4, 28),
        date(1947, 5, 29),
        "encyclopedia2.thefreedictionary.com; en.nuremberg.media, 26 July",
    ),
    _sign(
        "the second price control ran from 26 January 1951 to March 1953",
        r"\bO\.?\s?P\.?\s?S\.?\b(?=\W+(?:ceil|price|order|reg|approved|rul))",
        date(1951, 1, 26),
        date(1953, 3, 31),
        "abstract on the General Ceiling Price Regulation (discovery.researcher.life)",
    ),
    _sign(
        "war time was kept from 9 February 1942 to 30 September 1945",
        r"\b(?:eastern|central|mountain|pacific)\s+war\s+time\b|\b[ECMP]\.?W\.?T\.(?=\W|$)",
        date(1942, 2, 9),
        date(1945, 9, 30),
        "nps.gov on war time; historicalside.blogspot.com",
    ),
    _sign(
        "war bonds and stamps were sold from 1942 to the end of 1945",
        r"\bbuy\s+(?:more\s+)?(?:u\.?\s?s\.?\s+)?war\s+(?:savings\s+)?(?:bonds|stamps)|\bwar\s+bonds\b",
        date(1942, 3, 1),
        date(1945, 12, 31),
        "from memory",
        half_life=8,
    ),
    _sign(
        "defense bonds and stamps were sold from May 1941 until they were renamed in 1942",
        r"\bdefense\s+(?:savings\s+)?(?:bonds|stamps)\b",
        date(1941, 5, 1),
        date(1942, 6, 30),
        "from memory",
        half_life=8,
    ),
)


CEILING: Final = Sign(
    "ceiling prices were posted from May 1942 to November 1946 and again from January 1951 to March 1953",
    re.compile(r"\bceiling\s+prices?\b|\b(?:at|below|under)\s+ceilings?\b", re.I),
    np.maximum(
        spell(date(1942, 5, 1), date(1946, 11, 30), misread=_MISREAD, half_life=3, floor=_MISREAD),
        # the second control bound grocers less visibly; judgement, no source
        spell(date(1951, 1, 26), date(1953, 3, 31), misread=_MISREAD, half_life=3, floor=_MISREAD) + np.log(0.5),
    ),
    "General Maximum Price Regulation, April 1942 (fraser bulletin 879); General Ceiling Price Regulation, Jan. 1951",
    date(1942, 4, 28),
    date(1953, 3, 31),
    "ceiling",
)


def find(case: Case, _context: Context) -> Iterator[Clue]:
    """Yield the clues of rationing, price control and war-time wording; 'ceiling price' alone has two periods."""
    yield from find_signs(case, KIND, SIGNS)
    yield from find_signs(case, KIND, (CEILING,))

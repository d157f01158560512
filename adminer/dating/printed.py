"""A printed date as it was read, and the words before it that say what it is a date of."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import date
from typing import Final, Literal

from adminer.dating.calendar_words import THRU

PrintedKind = Literal["validity", "expiry", "dateline", "printed"]

EXPIRES: Final = re.compile(
    r"(?:expir\w*|void\s+after|not\s+good\s+after|(?:good|valid|redeemable|offer\s+good)\s+(?:only\s+)?(?:until|"
    + THRU
    + r"|till?|to)"
    r"|(?:offer|sale|coupon)\s+(?:ends|closes|expires)|ends|closes|before|(?:not|no)\s+later\s+than|(?:redeem|received|postmarked|order|orders?\s+in)\s+by|last\s+day)\W*(?:on\s+|midnight\s+)?$",
    re.IGNORECASE,
)
FOR_PRICES: Final = re.compile(
    rf"\b(?:effective|prices?\s+good|good|sale|special\w*|on\s+sale|starts?|starting|beginning|begins|from|week|days?|only|"
    rf"{THRU}|until|now|this|for)\W*(?:on\s+|of\s+|the\s+)?$",
    re.IGNORECASE,
)
UNTIL: Final = re.compile(rf"\b(?:{THRU}|until|till?)\W*(?:the\s+|midnight\s+)?$", re.IGNORECASE)
OPENS: Final = re.compile(
    r"\b(?:begin\w*|start\w*|commenc\w*|opens|opening|effective|in\s+effect|on\s+and\s+after)\W*(?:on\s+|from\s+)?$",
    re.IGNORECASE,
)
WEEK_FROM: Final = re.compile(r"week[\s|]+(?:of|beginning|starting|commencing)\W*$", re.IGNORECASE)
WEEK_TO: Final = re.compile(r"week\s+ending\W*$", re.IGNORECASE)
NO_DATE: Final = re.compile(r"(?:tel\w*|phone|dial|call|no|model|size|lot|form)\W*$", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class PrintedDate:
    """Hold one date or span of days as printed; without its year it has XXXX for it in edtf, and no bounds."""

    span: tuple[int, int]  # characters of the text
    text: str
    kind: PrintedKind
    edtf: str | None
    earliest: date | None
    latest: date | None
    weekdays: tuple[int, ...] = ()  # Monday is 0, as printed
    month_days: tuple[tuple[int, int], ...] = ()  # (month, day) as printed
    years: tuple[int, ...] = ()  # years of the first day that fit weekday and day, when they leave a choice
    problem: str | None = None  # why the parts of this date contradict each other
    opens: bool = False  # a first day, with no last one printed ("beginning Monday, October 3")

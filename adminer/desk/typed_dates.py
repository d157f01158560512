"""Dates as people type them, in the form the files keep (EDTF): March 3, 1921 as 1921-03-03, about 1905 as 1905~."""

from __future__ import annotations

import calendar
import re
from typing import Final

_MONTHS: Final = {name.lower()[:3]: number for number, name in enumerate(calendar.month_name) if name}
_MONTH: Final = (
    r"(?P<month>jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|sept?(?:ember)?|"
    r"oct(?:ober)?|nov(?:ember)?|dec(?:ember)?)\.?"
)
_DAY: Final = r"(?P<day>\d{1,2})(?:st|nd|rd|th)?"
_YEAR: Final = r"(?P<year>\d{4})(?P<doubt>\?)?"
_WAYS: Final = tuple(
    re.compile(rf"^{way}$", re.IGNORECASE)
    for way in (rf"{_MONTH} {_DAY},? {_YEAR}", rf"{_DAY} {_MONTH},? {_YEAR}", rf"{_MONTH},? {_YEAR}")
)
_ABOUT: Final = re.compile(r"^(?:about|around|circa|ca\.?|c\.?) ?(?P<rest>\S.*)$", re.IGNORECASE)
_TO: Final = re.compile(r" (?:to|until|through|-|–|—) |(?<=[\w?~%])[–—](?=\w)", re.IGNORECASE)
_LEVEL_1: Final = re.compile(r"^\d{4}(-\d\d){0,2}$")


def edtf_of(typed: str) -> str:
    """Return what was typed as EDTF where it is one of the usual ways to write a date or span; else as it is."""
    parts = _TO.split(" ".join(typed.split()), maxsplit=1)
    return "/".join(_one(part.strip()) for part in parts)


def _one(text: str) -> str:
    about = _ABOUT.match(text)
    if about:
        found = _one(about["rest"])
        return f"{found}~" if _LEVEL_1.match(found) else text
    for way in _WAYS:
        found_way = way.match(text)
        if found_way:
            told = found_way.groupdict()
            day = f"-{int(told['day']):02}" if told.get("day") else ""
            return f"{told['year']}-{_MONTHS[told['month'][:3].lower()]:02}{day}{told['doubt'] or ''}"
    return text

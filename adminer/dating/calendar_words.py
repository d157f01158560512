"""Cut text into the words of dates and gather neighbouring ones into groups, as period adverts print them."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final, Literal

WordKind = Literal["month", "weekday", "number", "year", "numeric", "now", "coming", "today", "tomorrow"]
Link = Literal["list", "dash", "to"]

MONTHS: Final = {
    name: number
    for number, names in enumerate(
        (
            "january jan", "february feb", "march mar", "april apr", "may", "june jun", "july jul", "august aug",
            "september sept sep", "october oct 0ct", "november nov", "december dec",
        ),
        start=1,
    )
    for name in names.split()
}  # fmt: skip
WEEKDAYS: Final = {
    name: number
    for number, names in enumerate(
        (
            "monday mon", "tuesday tues tue", "wednesday wednes wed weds", "thursday thurs thur thu",
            "friday fri", "saturday satur sat", "sunday sun",
        )
    )
    for name in names.split()
}  # fmt: skip

_UNITS = (
    r"(?:¢|°|%|c\b|cts?\b|cents?\b|lbs?\b|oz\b|pcs?\b|piece|for\b|in\.|inch|qt\b|pt\b|doz|ft\b|p\.?m|a\.?m|o'clock)"
)
_END = r"(?![\w/]|[.,](?!1[89]\d\d(?!\d))\d)"  # "12,1953" is a day and its year
_DAY = r"(?<![\w$¢/.,])(?:[0-3]?\d|[lI][0-9]|[0-3][oOlI])"
THRU: Final = r"(?:[tr][hb][rif][uon]|thr[o0]ugh|throngh)"  # as printed and as readers slip in it ("Thiu", "thrn")
_TOKEN: Final = re.compile(
    rf"""(?P<numeric>(?<![\w$£/.-])\d{{1,2}}(?P<cut>[/-])\d{{1,2}}(?:(?P=cut)(?:1[89])?\d\d)?(?![\w/]|[-.]\d|\s*{_UNITS}))
    |(?P<year>(?:(?<![\w$/.])|(?<=\d[.]))1[89]\d\d(?![\w%¢])|(?<!\w)['’‘]\d\d(?![\w%¢]))
    |(?P<month>(?<![^\W\d_])(?:{"|".join(sorted(MONTHS, key=len, reverse=True))})(?![^\W\d_]))
    |(?P<weekday>(?<!\w)(?:{"|".join(sorted(WEEKDAYS, key=len, reverse=True))})(?!\w|'s))
    |(?P<number>(?<=[^\W\d_])(?:\d{{1,2}}|[lI]\d){_END}|(?<=[^\W\d_]\.)[lI\d]\d?{_END}|{_DAY}(?:st|nd|rd|th)?(?!¢|\s*{_UNITS}){_END})
    |(?P<now>(?<!\w)now(?=\s+(?:{THRU}|until|till?|to)\b))
    |(?P<coming>(?<!\w)(?:this\s+coming|coming|next|this)(?=\s+(?:{"|".join(WEEKDAYS)})(?!\w)))
    |(?P<today>(?<!\w)today(?=\W{{1,3}}only\b|\W+(?:(?:and|{THRU}|to|until)\W+)?(?:tomorrow|{"|".join(WEEKDAYS)})(?!\w)))
    |(?P<tomorrow>(?<!\w)tomorrow(?!\w))""",
    re.VERBOSE | re.IGNORECASE,
)
_JOINER = re.compile(
    rf"^(?:[\s,.;:&()*•·\-–—/]|and\b|to\b|{THRU}\b|until\b|till?\b|of\b|the\b|inclusive\b|only\b)*$", re.I
)
_TO = re.compile(rf"\b(?:to|{THRU}|until|till?)\b", re.IGNORECASE)
_DASH = re.compile(r"[-–—]")
_SET_OFF = re.compile(r"\s+[-–—]\s+")
_KINDS: Final[tuple[WordKind, ...]] = (
    "numeric", "year", "month", "weekday", "number", "now", "coming", "today", "tomorrow",
)  # fmt: skip
_NAMES = "|".join(sorted(MONTHS, key=len, reverse=True))
_POINTED = re.compile(  # "June 16.17-18": readers see a hyphen as a point
    rf"(?i)((?<![^\W\d_])(?:{_NAMES})\.?\s*\d{{1,2}})((?:[.-]\d{{1,2}})+)(?![\d¢])"
)
_SPECK = re.compile(rf"(?i)((?<![^\W\d_])(?:{_NAMES})\.?\s*[0-3]?\d)[¢°](?!\w)")  # no day costs cents
_DAY_NAMES = "|".join(sorted(WEEKDAYS, key=len, reverse=True))
_SPLIT_YEAR = re.compile(  # "Thursday, March 15, 19.34": a speck in a year, of which the last two figures are no day
    rf"(?i)(\b(?:{_DAY_NAMES})[\s.,]{{1,3}}(?:{_NAMES})\.?\s*\d{{1,2}},\s?)(1[89])[.,]((?:3[2-9]|[4-9]\d)(?![\d¢]))"
)
_NAME = re.compile(r"(?<![^\W\d_])[A-Z][A-Za-z]{4,8}(?![^\W\d_])")  # long enough to be known with one letter wrong
_DAY_NEXT = re.compile(r"\.?\s*[0-3lI]?[\dlI](?!\w)")
_LETTERED = re.compile(  # a day of which letters were made: two of them, or one beside a figure
    rf"((?<![^\W\d_])(?i:{_NAMES})(?:\.\s{{0,2}}|\s{{1,2}}))((?:[lIi|1][lIi|1oO]|[lIi|Z]\d|[0-3][OolIiSBZ])(?!\w))"
)
_WORN_DAY = re.compile(  # a short weekday with a letter wrong, in a row of days: the one before it says which it is
    rf"(?i)\b((?:{'|'.join(sorted(WEEKDAYS, key=len, reverse=True))})[\s.,&]{{1,4}})([a-z1]{{3,5}})"
    rf"(?=[\s.,&]{{1,4}}(?:{'|'.join(sorted((*WEEKDAYS, *MONTHS), key=len, reverse=True))})\b)"
)
_FIGURES = str.maketrans("lIi|oOSBZ", "111100582")
_SPACE = re.compile(r"^[\s.,&\-–—]*$")
_VERBS = {"may", "march", "mar", "sat", "sun", "mon", "wed", "fri", "jan", "dec"}
_LONGEST_GAP = 30


@dataclass(frozen=True, slots=True)
class DateWord:
    """Hold one word of a date with its place in the text and how it hangs on the word before it."""

    kind: WordKind
    text: str
    value: int
    start: int
    end: int
    link: Link = "list"


def words_of_dates(text: str) -> Iterator[list[DateWord]]:
    """Yield groups of neighbouring date words; each group names at most one date, list of days or span."""
    group: list[DateWord] = []
    for word in _words(text):
        if group:
            gap = text[group[-1].end : word.start]
            joined = len(gap) <= _LONGEST_GAP and bool(_JOINER.match(gap))
            link: Link = "to" if _TO.search(gap) else "dash" if _DASH.search(gap) else "list"
            if joined and not _starts_anew(group, word, gap, link):
                group.append(DateWord(word.kind, word.text, word.value, word.start, word.end, link))
                continue
            yield group
        group = [word]
    if group:
        yield group


def _words(text: str) -> Iterator[DateWord]:
    text = _SPECK.sub(lambda found: found[1] + " ", mended_dates(text))
    text = _SPLIT_YEAR.sub(lambda found: f"{found[1]}{found[2]}{found[3]} ", text)
    text = _POINTED.sub(_hyphenated, text)
    after_month = -1  # where a month or a day of a month ended
    for found in _TOKEN.finditer(text):
        kind: WordKind = next(k for k in _KINDS if found[k] is not None)
        raw = found[0]
        if kind == "number" and _touches_a_word(text, found.start(), after_month):
            continue
        if after_month >= 0 and kind == "numeric" and _SPACE.match(text[after_month : found.start()]):
            # "Mar. 12-13-14" are days of March
            for part in re.finditer(r"\d+", raw):
                if 1 <= int(part[0]) <= 31:
                    at = found.start() + part.start()
                    yield DateWord("number", part[0], int(part[0]), at, at + len(part[0]))
            after_month = found.end()
            continue
        lower = raw.lower()
        if lower in _VERBS and not raw[0].isupper():
            continue
        if kind == "month":
            value = MONTHS[lower]
        elif kind == "weekday":
            value = WEEKDAYS[lower]
        elif kind == "year":
            value = int(raw) if raw.isdigit() else 1900 + int(raw[1:])
        elif kind == "number":
            digits = re.sub(r"(?i)(st|nd|rd|th)$", "", raw)
            value = int(digits.translate(str.maketrans("lLIioO", "111100")))
            if not 1 <= value <= 31:
                continue
        else:
            value = 0
        if kind == "month" or (kind == "number" and _SPACE.match(text[after_month : found.start()])):
            after_month = found.end() if kind == "month" or after_month >= 0 else -1
        else:
            after_month = -1
        yield DateWord(kind, raw, value, found.start(), found.end())


def _hyphenated(found: re.Match[str]) -> str:
    """Return days with hyphens for points; figures after a point that are no next day are taken off, length kept."""
    parts = re.split(r"([.-])", found[2])[1:]
    made, last = found[1], int(re.findall(r"\d+", found[1])[-1])
    for mark, figures in zip(parts[::2], parts[1::2], strict=True):
        if mark == "." and int(figures) != last + 1:
            return made + " " * (len(found[0]) - len(made))
        made, last = f"{made}-{figures}", int(figures)
    return made


def _touches_a_word(text: str, start: int, after_month: int) -> bool:
    # a figure that hangs on letters is a day only where these are the month's: "Mar.12", but not "Fi1"
    before = text[:start].rstrip(".")
    return bool(before) and len(text[:start].rstrip()) == start and before[-1].isalpha() and len(before) != after_month


def mended_dates(text: str) -> str:
    """Put right what readers make of dates, letter for letter: the length stays, as places in the text matter.

    Letters read for the figures of a day after a month ("Aug li" is Aug 11), and a month or weekday with one wrong
    letter ("Apnil 8", "Satuiday").
    """
    text = _NAME.sub(_right_name, _without_accents(text))
    text = _WORN_DAY.sub(_next_day, text)
    return _LETTERED.sub(lambda found: found[1] + found[2].translate(_FIGURES), text)


def _next_day(found: re.Match[str]) -> str:
    word = found[2].lower()
    before = re.match(r"[a-z]+", found[1].lower())
    if before is None or word in WEEKDAYS or word in MONTHS:
        return found[0]
    following = (WEEKDAYS[before[0]] + 1) % 7
    near = [
        name
        for name, number in WEEKDAYS.items()
        if number == following and len(name) == len(word) and sum(a != b for a, b in zip(name, word, strict=True)) == 1
    ]
    return found[1] + near[0].title() if near else found[0]


def _right_name(found: re.Match[str]) -> str:
    word = found[0].lower()
    known = MONTHS if found.end() < len(found.string) and _DAY_NEXT.match(found.string, found.end()) else WEEKDAYS
    if word in MONTHS or word in WEEKDAYS:
        return found[0]
    near = [
        name for name in known if len(name) == len(word) and sum(a != b for a, b in zip(name, word, strict=True)) == 1
    ]
    return near[0].title() if len(near) == 1 else found[0]


def _without_accents(text: str) -> str:
    # readers see specks as accents ("Marçh"); the length stays, as places in the text matter
    return text if text.isascii() else "".join(unicodedata.normalize("NFD", c)[0] for c in text)


def _starts_anew(group: list[DateWord], word: DateWord, gap: str, link: Link) -> bool:
    last = group[-1]
    if link == "list" and (last.kind == "year" or (last.kind == "numeric" and word.kind != "year")):
        return True
    if last.kind == word.kind == "number" and not gap.strip():
        # "Mar. 12-13-14 5": with nothing between them only the next day goes on
        return word.value != last.value + 1
    if last.kind == word.kind == "number" and word.value < last.value and _SET_OFF.match(gap):
        return True  # "March 14, 15 & 16 — 3 stores"
    kinds = [w.kind for w in group]
    if word.kind == "month" and last.kind == "number" and "," in gap and "month" not in kinds:
        return True  # "Bulletin 31, October 1940": a comma after the figure makes it no day of October
    return word.kind == "number" and "month" not in kinds and "number" in kinds and link == "list" and len(group) > 3

"""Cut an advert's text into the segments that can name what a price is for.

A segment is a run of text of one block and about one type size, ended by a price, a leader, a sentence end or
a change of type; it may go over several lines ("Pure Parched and / Ground Coffee").
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from typing import Final

from adminer.parsing.prices.prices import Found
from adminer.parsing.segments.line_runs import indent_of, indents_starts, rows_behind_prices, running_lines
from adminer.parsing.text.columns import TITLE, is_head, row_end
from adminer.parsing.text.goods import has_goods, praise, talk
from adminer.parsing.text.item_words import FUNCTION_WORDS, PROSE, WORD, clean_item, closed_up, unbroken, without_tail
from adminer.parsing.text.lexicon import word_list
from adminer.parsing.text.notices import notices
from adminer.parsing.text.slips import mend_text
from adminer.parsing.text.text import AdvertText, TextLine
from adminer.records import Box

_SENTENCE_END: Final = re.compile(
    r"(?<=[a-z0-9)\]”\"’'][.!?;:])\s+(?=[A-Z“\"‘'(\d$])|(?<=[A-Z]{3}[.!?])\s+(?=[A-Z][a-z])|"
    r"[;!?]\s|\bas follows:?\s|\s?[—•·*]\s?|\s[-–]\s|\.{2,}|…|"
    r"(?:[._] ){2,}|"
    r"\s[-–]{2,}\s"
)
_ABBREVIATION: Final = re.compile(
    r"(?:\b(?:No|Nos|ct|kt|oz|lb|lbs|in|ft|doz|pkg|pc|pcs|St|Co|Mfg|Dr|Mr|Mrs|Reg|qt|pt|gal|cov|ea|pr|sq|yd|yds|size|"
    r"Ltd|vs|approx|incl|cir|diam|B)|\b[A-Z])\.$",
    re.IGNORECASE,
)
_CATALOGUE_NUMBER: Final = re.compile(
    r"\s*(?:No|Ne|Design|Style|Model)s?\. ?(?:[A-Z]{1,2}-? ?)?\d+(?![\d½]*[\s,]*(?:cans?|tins?|pails?|size|jars?)\b)"
    r"(?:[A-Z]{1,2}\d*|-[A-Z]?-?\d+)*(?!\w)\.?\s*",
)
# "12-610—Voile Waist": in a list by numbers the number stands before a dash at the head of its entry
_DASHED_NUMBER: Final = re.compile(r"\d{1,3}-\d{2,5}(?: (?:and|to) \d{1,3}-\d{2,5})? ?[—–-] ?(?=[A-Z])")
_SET: Final = re.compile(
    r"\b\d+[- ]?(?:piece|pc)|\bservice for\b|\bplace[- ]setting|"
    r"\b(?!(?:a|the|per|each|this|that|complete|whole|entire|one|full|of|in|our|your|every)\b)[a-z]{3,} sets?$",
    re.IGNORECASE,
)
_OPENS_WITH_SIZE: Final = re.compile(r"[\d½¼¾]|No\. ?\d|half |pint\b|quart\b|gallon\b", re.IGNORECASE)
_SIZE_WORDS: Final = word_list("size")


_BROKEN: Final = re.compile(r"[a-z]-$")  # a word goes on in the next line
_LABEL_SIZES: Final = 2.5
_DISPLAY: Final = 1.8  # body types
_COLUMN_WORDS: Final = 3  # a cell of a table holds fewer


@dataclass(frozen=True, slots=True)
class Segment:
    """Hold a stretch of text that may name an item, with the boxes of its first and last printed line."""

    start: int
    end: int
    text: str
    box: Box  # in pixels of the scan
    flat: Box  # this and the next two with the slope of the type taken out
    first: Box
    last: Box
    first_line: int
    last_line: int
    type_px: float
    block: int
    content: int  # words that mean something
    prose: int  # words of a sentence rather than of a name: "you", "is", "will"
    running: bool  # a line of a column of running text, not the label of a row
    bare: bool  # only figures, sizes and units: needs a heading to be understood
    goods: bool  # names something the trade sold
    talks: bool  # holds a verb, a pronoun or mere praise, and no goods
    numbered: bool = False  # stands right after its number in a catalogue
    whole: bool = False  # its text is a name as it is, put together from the cells of a table
    title: Box | None = None  # the last printed line of a set's title, where the list of its pieces follows


def cut_segments(
    advert: AdvertText, taken: list[tuple[int, int]], prices: list[Found], names: frozenset[str] = frozenset()
) -> list[Segment]:
    """Return the segments of an advert outside the characters already taken by prices and terms.

    A line with a price of its own further right on its row ends a segment: it is a row of a table. Words of `names`
    (lower case) are never taken for misread words of the trade.
    """
    inside = {price.line for price in prices}
    rows = {
        line.number
        for line in advert.lines
        if line.number in inside or any(right_on_row(advert, line, price) for price in prices)
    }
    opened = frozenset(rows_behind_prices(advert, prices).values()) | notices(advert)
    indented = indents_starts(advert, taken)
    running = running_lines(advert, rows)
    segments: list[Segment] = []
    run: list[tuple[int, int]] = []

    def close() -> None:
        if run:
            segments.extend(_segments_of(advert, run[0][0], run[-1][1], running, names))
            run.clear()

    previous: TextLine | None = None
    for line in advert.lines:
        pieces = _free(line, taken)
        on = bool(previous is not None and run and pieces) and line.number not in opened
        if on and previous is not None and previous.number in rows:
            on = WORD.search(advert.text, previous.start, run[-1][0]) is not None  # a price in the middle of a line
        broken = previous is not None and _BROKEN.search(advert.printed(previous)) is not None
        if on and previous is not None and line.number in rows and not broken:
            # small print under the row before, or what is said over a list, is not the first line of this row
            on = _one_size(previous, line) and not _opens_list(advert, previous, line, rows)
        if run and not (
            on and previous is not None and _flows_on(advert, previous, line, run[-1], pieces[0], indented)
        ):
            close()
        for i, piece in enumerate(pieces):
            if i:
                close()
            run.append(piece)
        if not pieces or pieces[-1][1] < line.end:
            close()
        previous = line
    close()
    return segments


def _opens_list(advert: AdvertText, over: TextLine, row: TextLine, rows: set[int]) -> bool:
    """Say whether a list begins with a row: another is set from its edge, and the line over it reaches on past both."""
    if over.number in rows or row.number + 1 not in rows:
        return False
    below = advert.lines[row.number + 1]
    beyond = over.flat.right > max(row_end(advert, row), row_end(advert, below)) + row.type_px
    aligned = abs(below.flat.x - row.flat.x) < 0.5 * row.type_px and below.block == row.block
    return beyond and aligned and _one_size(row, below)


def right_on_row(advert: AdvertText, line: TextLine, price: Found) -> bool:
    """Say whether a price stands right of a line on its row, with no text of another column between."""
    box, place = line.flat, price.place
    tall = price.type_px > _LABEL_SIZES * line.type_px  # beside a display price stands no label of its row
    if tall or not box.same_row(place) or place.x < box.right - 0.3 * place.h:
        return False
    if WORD.search(advert.text, advert.lines[price.line].start, price.start) is not None:
        return False
    return not any(
        other.flat.x >= box.right
        and other.flat.right <= place.x
        and len(WORD.findall(advert.printed(other))) >= _COLUMN_WORDS
        for other in advert.lines
        if other.flat.same_row(place)
    )


def _free(line: TextLine, taken: list[tuple[int, int]]) -> list[tuple[int, int]]:
    """Return the stretches of a line that no price or term has taken."""
    at, free = line.start, []
    for start, end in taken:
        if end <= at or start >= line.end:
            continue
        if start > at:
            free.append((at, start))
        at = max(at, end)
    if at < line.end:
        free.append((at, line.end))
    return free


def _flows_on(
    advert: AdvertText,
    above: TextLine,
    below: TextLine,
    tail: tuple[int, int],
    head: tuple[int, int],
    indented: bool,
) -> bool:
    """Say whether the text runs on from one line into the next."""
    if tail[1] != above.end or head[0] != below.start or above.block != below.block:
        return False
    ratio = above.type_px / max(below.type_px, 1.0)
    if not 0.7 <= ratio <= 1.42:
        return False
    gap = below.flat.y - above.flat.bottom
    size = max(above.type_px, below.type_px)
    if gap > 0.9 * size or below.flat.y < above.flat.y:
        return False
    if above.flat.across(below.flat) <= 0:
        return False
    if _stands_under_number(advert, above) and TITLE.fullmatch(advert.printed(above)):
        return False
    sized = _OPENS_WITH_SIZE.match(advert.text, below.start) is not None  # "Saltines" over "1-lb. box"
    if (indented and indent_of(advert, below)) or (is_head(advert, above, below) and not sized):
        return False
    first, second = advert.text[tail[0] : tail[1]], advert.text[head[0] : head[1]]
    return not (first.isupper() and not second.isupper() and len(first) > 3)


def _one_size(one: TextLine, other: TextLine) -> bool:
    return 0.85 < one.type_px / max(other.type_px, 1.0) < 1.18


def _segments_of(
    advert: AdvertText, start: int, end: int, running: frozenset[int], names: frozenset[str]
) -> list[Segment]:
    """Cut a run at sentence ends and dashes and keep what can name something."""
    text = advert.text
    opens = end - len(text[start:end].lstrip(" \n.,;:"))  # after what ended the price before
    dashed = _DASHED_NUMBER.match(text, opens, end) if advert.line_at(opens).start == opens else None
    start = dashed.end() if dashed else start
    cuts = [start]
    for m in _SENTENCE_END.finditer(text, start, end):
        if not _ABBREVIATION.search(text, max(start, m.start() - 8), m.start()):
            cuts += [m.start(), m.end()]
    cuts.append(end)
    made = []
    for left, right in zip(cuts[::2], cuts[1::2], strict=True):
        named = _after_number(text, left, right)
        if (segment := _segment(advert, named, right, running, names)) is not None:
            line = advert.line_at(left)
            number = _CATALOGUE_NUMBER.fullmatch(text, line.start, segment.start)
            under = segment.start == line.start and _stands_under_number(advert, line)
            after_dash = dashed is not None and left == start
            made.append(replace(segment, numbered=named > left or number is not None or under or after_dash))
    return made


def _stands_under_number(advert: AdvertText, line: TextLine) -> bool:
    """Say whether the line right over a line is nothing but the number of its article in the catalogue."""
    if line.number == 0:
        return False
    over = advert.lines[line.number - 1]
    numbered = _CATALOGUE_NUMBER.fullmatch(advert.text, over.start, over.end) is not None
    return numbered and over.flat.across(line.flat) > 0.5 * min(over.flat.w, line.flat.w)


def _after_number(text: str, start: int, end: int) -> int:
    """Return where a text starts after the number it has in the catalogue ("No. C-106. Porch swing")."""
    m = _CATALOGUE_NUMBER.match(text, start, end)
    return m.end() if m else start


def segment_of(advert: AdvertText, start: int, end: int) -> Segment | None:
    """Return a stretch of text as a segment, None where it holds no words."""
    return _segment(advert, start, end, frozenset(), frozenset())


def _segment(
    advert: AdvertText, start: int, end: int, running: frozenset[int], names: frozenset[str]
) -> Segment | None:
    raw = advert.text[start:end]
    start += len(raw) - len(raw.lstrip())
    end -= len(raw) - len(raw.rstrip())
    end = without_tail(advert.text, start, end)
    if end <= start:
        return None
    clean = clean_item(mend_text(closed_up(unbroken(advert.text[start:end])), names))
    words = [w for w in WORD.findall(clean) if w.lower() not in FUNCTION_WORDS]
    if not clean or (not words and not re.search(r"\d", clean)):
        return None
    if clean.isdigit() and advert.type_px_of(start, end) > _DISPLAY * advert.body_px:
        return None  # part of a price, or a stroke taken for a figure
    goods = bool(_SET.search(clean)) or has_goods(clean)
    first, last = advert.line_at(start), advert.line_at(max(end - 1, start))
    first_box = advert.flat(advert.box_of(start, min(end, first.end)))
    last_box = advert.flat(advert.box_of(max(start, last.start), end))
    box = advert.box_of(start, end)
    return Segment(
        start,
        end,
        clean,
        box,
        first_box.joined(last_box),
        first_box,
        last_box,
        first.number,
        last.number,
        advert.usual_type_px_of(start, end),
        first.block,
        len(words),
        sum(w.lower() in PROSE for w in WORD.findall(clean)),
        last.number in running,
        not [w for w in words if w.lower() not in _SIZE_WORDS],
        goods,
        not goods and any(w.lower() in talk() | praise() for w in WORD.findall(clean)),
    )

"""What stands over a line in its column of type: the lines of its paragraph, and the heading they are set under."""

from __future__ import annotations

import math
import re
from dataclasses import dataclass
from typing import Final

from adminer.parsing.text.text import AdvertText, TextLine
from adminer.records import Box

_STEP: Final = 1.3  # type sizes of white between two lines of one column
_NO_RULE: Final = 0.8  # type sizes of white below which no rule has room between two lines
_ACROSS: Final = 0.3  # of the narrower of two lines that must stand over the other
_LARGER: Final = 1.12  # times the type under it: the head of an entry is often bold of the next size only
_CAPITALS: Final = 0.8  # the same in capitals over small letters: worn type is measured no better than that
_DISPLAY: Final = 1.3  # times the type under it: a heading wherever it stands
_TITLED: Final = 1.2  # the same where the words, too, are set as a name over a sentence
_ONE_TYPE: Final = 0.85  # type of the size of the line under it, as well as it is measured
_AXIS: Final = 1.5  # type sizes between the white at both ends of a line set on the axis of its column
_ONE_TEXT: Final = 1.6  # between lines of sizes further apart one text ends and another begins
_HALF_LINE: Final = 0.5  # type sizes from the middle of a line to that of the next, at least
_PICTURE: Final = 14.0  # type sizes that a picture between a name and its description may take up
_LONGEST: Final = 80  # lines looked at upwards
_SAME_EDGE: Final = 0.6  # type sizes between the beginnings of lines set from one edge
_COLUMN_LINES: Final = 6  # lines over and under one that tell how wide its column is
_WORD_SPACE: Final = 0.5  # type sizes
_HEAD_WORDS: Final = 8
_INDENT, _DEEP = 0.6, 4.0  # type sizes that the first line of a paragraph is set in
_PRICE: Final = re.compile(r"(?:(?:our|sale|special|net|cash) )?prices?\b", re.IGNORECASE)  # closes its paragraph
# "Bridge Lamps" over "Wrought iron base": every word of a name has its capital, in what tells of it only the first
TITLE: Final = re.compile(r"[A-Z][\w'’.-]*(?: (?:[A-Z][\w'’.-]*|&|and|or|of|with|for|in|de|la|du))*")
_SENTENCE: Final = re.compile(r"(?=.*[,.;]|(?:\S+ ){3})[A-Z][\w'’-]*[,.]? [a-z]")
_NUMBERED: Final = re.compile(r"(?:No|Cat)[.,] ?\w*\d\w*[.,:]? (?=\W?[A-Z])")
_WHOLE: Final = re.compile(r"[“\"]?[\dA-Z'’&“”\"., -]{4,}[.:]?")
_QUOTES: Final = re.compile('["“”„]')
_SMALL_WORDS: Final = re.compile(r"\b(?:and|or|of|for|the|in|to|with)\b")
_FIGURES: Final = re.compile(r"[\d\s.,/$£¢½¼¾+_·…*-]*\d[\d\s.,/$£¢½¼¾+_·…*-]*(?:[cds]\.?)?")
_RUN_IN: Final = re.compile(r"[A-Z][A-Z&'’ ]{2,}[A-Z](?: ?[—–-] ?|[.,:] )(?=[\w\"“])")  # "FOR SALE—Oak table"
_PARAGRAPH: Final = 4  # lines from which an indent says anything


@dataclass(frozen=True, slots=True)
class Column:
    """Hold the lines of a column down to a line, the lowest last, and the lines of the heading over them."""

    lines: tuple[TextLine, ...]
    head: tuple[TextLine, ...]


def column_over(
    advert: AdvertText, line: TextLine, rules: tuple[Box, ...], priced: frozenset[int], *, alone: bool
) -> Column:
    """Return the column of type over a line up to its heading, a rule or a gap; no line of `priced` is a heading.

    A price that is `alone` in its line may be of any size beside the text over it.
    """
    lines = [line]
    while len(lines) < _LONGEST:
        above = _next_up(advert, lines[-1], rules)
        if above is None:
            above = _over_picture(advert, lines[-1], rules) if alone else None
            named = above is not None and above.number not in priced
            return Column(tuple(reversed(lines)), (above,) if above is not None and named else ())
        if above.number not in priced and is_head(advert, above, lines[-1]):
            return Column(tuple(reversed(lines)), _whole_head(advert, above, rules, priced))
        if (
            not (alone and len(lines) == 1)
            and not 1 / _ONE_TEXT < above.type_px / max(lines[-1].type_px, 1.0) < _ONE_TEXT
        ):
            break
        lines.append(above)
    return Column(tuple(reversed(lines)), ())


def _whole_head(
    advert: AdvertText, foot: TextLine, rules: tuple[Box, ...], priced: frozenset[int]
) -> tuple[TextLine, ...]:
    """Return a heading with the line over it where it is set in two lines of one size."""
    above = _next_up(advert, foot, rules)
    alike = above is not None and 0.85 < above.type_px / max(foot.type_px, 1.0) < 1.18
    if above is None or not alike or above.number in priced or above.block != foot.block:
        return (foot,)
    return above, foot


def paragraph_start(advert: AdvertText, column: Column) -> int:
    """Return the first character of the paragraph that the lowest line of a column stands in, by its indent.

    A word in capitals that runs into its line opens one wherever it stands ("FOR SALE—Oak table"), as in notices. An
    indented line opens a paragraph where most lines are set at the edge and the line over it ends a sentence.
    """
    lines = column.lines
    for at in range(len(lines) - 1, 0, -1):
        text, over = advert.printed(lines[at]), advert.printed(lines[at - 1]).rstrip()
        if _RUN_IN.match(text) and not _in_capitals(text) and over[-1:] in {".", "!", "?"}:
            return lines[at].start
    edge = sorted(line.flat.x for line in lines)[len(lines) // 4]
    inside = [_INDENT * line.type_px < line.flat.x - edge < _DEEP * line.type_px for line in lines]
    if len(lines) < _PARAGRAPH or sum(inside) > len(lines) / 2:
        return lines[0].start
    for at in range(len(lines) - 1, 0, -1):
        text = advert.printed(lines[at])
        ended = advert.printed(lines[at - 1]).rstrip("\"'”’) ")[-1:] in {".", "!", "?"}
        if inside[at] and ended and text[:1].isupper() and not _PRICE.match(text):
            return lines[at].start
    return lines[0].start


def is_head(advert: AdvertText, line: TextLine, below: TextLine) -> bool:
    """Say whether a line heads the one under it: larger, or in capitals over lower case, and no sentence runs on."""
    text, under = advert.printed(line), advert.printed(below)
    if len(text.split()) > _HEAD_WORDS or not any(c.isalpha() for c in text) or text.rstrip()[-1:] in ",;-–":
        return False
    if under[:1].islower():
        return False
    number = _NUMBERED.match(text)
    if number and TITLE.fullmatch(_QUOTES.sub("", text[number.end() :]).strip(" .")) and _SENTENCE.match(under):
        return True  # the name of a catalogue's article, over what tells of it
    ratio = line.type_px / max(below.type_px, 1.0)
    if ratio >= _DISPLAY or (ratio >= _TITLED and TITLE.fullmatch(text) and _SENTENCE.match(under)):
        return True
    closed = text.rstrip()[-1:] in ".!?"  # a sentence of its own, which its mark parts from the next
    if ratio > _ONE_TYPE and not closed and _SENTENCE.match(under) and _ends_early(advert, line, below):
        return True  # had the text run on, the next word would stand on the line
    named = ratio > _ONE_TYPE and TITLE.fullmatch(text) is not None and _SENTENCE.match(under) is not None
    capitals = _in_capitals(text) and len(text) > 3 and not _in_capitals(under)
    larger = ratio >= _LARGER or (capitals and ratio > _CAPITALS)
    if capitals and ratio > _ONE_TYPE and len(text.split()) > 1 and _WHOLE.fullmatch(text):
        before, after = line.flat.x - below.flat.x, line.flat.right - below.flat.right
        flush = abs(before) < below.type_px  # over a text that a picture or a price leaves half a column
        inside = flush or (before > 0 and after < _DEEP * below.type_px)
        if inside and row_end(advert, line) == line.flat.right:
            return True  # over its column, and no row of a list
    if not (named or larger):
        return False
    white, before = row_end(advert, below) - row_end(advert, line), line.flat.x - below.flat.x
    centred = min(white, before) > below.type_px  # white at both ends
    if named and centred and abs(white - before) < _AXIS * below.type_px:
        return True  # a name in the type of the paragraph that it stands over
    return larger and (white > 2 * below.type_px or centred)


def row_end(advert: AdvertText, line: TextLine) -> int:
    """Return where the row of a line ends: behind the figures right of it, before words of another column."""
    place, end = line.flat, line.flat.right
    row = [
        other
        for other in advert.lines
        if other.flat.x >= place.right and abs(other.flat.centre[1] - place.centre[1]) < _HALF_LINE * line.type_px
    ]
    for other in sorted(row, key=lambda other: other.flat.x):
        if not _FIGURES.fullmatch(advert.printed(other)):
            break
        end = max(end, other.flat.right)
    return end


def _ends_early(advert: AdvertText, line: TextLine, below: TextLine) -> bool:
    """Say whether the first word of the line below would have had room behind a line that begins at the same edge."""
    size = below.type_px
    if abs(line.flat.x - below.flat.x) > _SAME_EDGE * size:
        return False
    edge = max(
        other.flat.right
        for other in advert.lines[max(line.number - _COLUMN_LINES, 0) : line.number + _COLUMN_LINES + 1]
        if other.block == line.block and abs(other.flat.x - line.flat.x) <= _SAME_EDGE * size
    )
    return edge - line.flat.right > below.words[0].box.w + _WORD_SPACE * size


def _in_capitals(text: str) -> bool:
    """Say whether a line is set in capitals, its small words aside: "TEA and COFFEE"."""
    return _SMALL_WORDS.sub(" ", text).isupper()


def _is_close(line: TextLine, over: TextLine) -> bool:
    return line.flat.y - over.flat.bottom <= _STEP * max(line.type_px, over.type_px)


def _is_over(over: TextLine, line: TextLine) -> bool:
    return line.flat.centre[1] - over.flat.centre[1] > _HALF_LINE * line.type_px


def _nearest_over(advert: AdvertText, line: TextLine, *, under: bool = True) -> TextLine | None:
    """Return the nearest line that stands over a line (or under it, where not `under`) and shares its place across.

    Lines are told apart by their middles: boxes of sloping or worn type reach into the next line.
    """
    sign, best = (1 if under else -1), None
    place, least, nearest = line.flat, _HALF_LINE * line.type_px, math.inf
    middle, left, right = place.centre[1], place.x, place.right
    for other in advert.lines:
        at = other.flat
        step = sign * (middle - (at.y + at.h / 2))
        if least < step < nearest and min(at.x + at.w, right) - max(at.x, left) >= _ACROSS * min(at.w, place.w):
            best, nearest = other, step
    return best


def _over_picture(advert: AdvertText, line: TextLine, rules: tuple[Box, ...]) -> TextLine | None:
    """Return the larger line that stands over a line and the picture between them, on one axis with it."""
    best = _nearest_over(advert, line)
    if best is None or not best.type_px / max(line.type_px, 1.0) > _DISPLAY or not is_head(advert, best, line):
        return None
    gap, aside = line.flat.y - best.flat.bottom, abs(line.flat.centre[0] - best.flat.centre[0])
    near = gap < _PICTURE * line.type_px and aside < 0.25 * max(line.flat.w, best.flat.w)
    return best if near and not _parted(best, line, rules) else None


def _next_up(advert: AdvertText, line: TextLine, rules: tuple[Box, ...]) -> TextLine | None:
    """Return the line right over a line in its column, None where a gap or a rule parts them."""
    best = _nearest_over(advert, line)
    if best is not None and not _is_close(line, best):
        between = _nearest_over(advert, best, under=False)  # "Service for eight." at the edge over a line set in
        best = between if between is not None and _is_over(between, line) and _is_close(line, between) else None
    if best is None:
        return None
    if line.flat.y - best.flat.bottom < _NO_RULE * min(line.type_px, best.type_px):
        return best  # lines set close leave no room for a rule: what was taken for one is a stroke of a letter
    return None if _parted(best, line, rules) else best


def _parted(over: TextLine, line: TextLine, rules: tuple[Box, ...]) -> bool:
    """Say whether a rule runs in the white between two lines."""
    left, right = max(over.box.x, line.box.x), min(over.box.right, line.box.right)
    return any(
        r.w > max(3 * r.h, 2 * line.type_px)
        and min(r.right, right) - max(r.x, left) > 0.5 * (right - left)
        and over.box.bottom - 2 <= r.centre[1] <= line.box.y + 2
        for r in rules
    )

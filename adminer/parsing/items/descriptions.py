"""The small type under a name: which texts only tell more of the article named right over them, and how far they reach.

"Rotary Mower" over "Three-horse engine, recoil starter. Leaf mulcher included." names the article; whatever goods the
small type speaks of are parts of it. Its size, pack or brand ("2-lb. can") belongs to the name all the same.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Final

from adminer.parsing.items.panels import ends_line, opens_line, over_each_other
from adminer.parsing.money.amounts import NUMBER_WORDS
from adminer.parsing.prices.prices import Found
from adminer.parsing.segments.items import Segment, right_on_row
from adminer.parsing.sets.sets import states_set
from adminer.parsing.text.goods import find_nouns, talk
from adminer.parsing.text.item_words import PROSE, WORD
from adminer.parsing.text.lexicon import word_list
from adminer.parsing.text.text import AdvertText, TextLine
from adminer.records import Box

_SMALLER: Final = 0.87  # of the type of the name
_BODY: Final = 1.25  # of the body type; what is larger is no small type
_LARGEST: Final = 4.0  # times the small type: what is larger heads the advert
NAME_WORDS: Final = 6  # of a name, at most
_CLOSE: Final = 1.5  # type sizes of white between a name and what is set under it
_STEP: Final = 2.2  # type sizes from line to line of the small type
_ONE_SIZE: Final = (0.85, 1.18)  # between two lines of the small type under one name
_NEXT_SIZE: Final = 1.3  # times that small type: as large may the small type under the next name be
_EDGE: Final = 1.5  # type sizes between left edges that count as one
_LONGEST: Final = 8  # lines of small type
_SIZE_LINES: Final = 3  # of them
_SIZE_WORDS: Final = 9  # of a brand, size or pack, at most
_PACKED: Final = word_list("size") | frozenset(NUMBER_WORDS) | {"in", "per", "the", "each", "full", "cloth", "paper"}
CLAUSE: Final = re.compile(r"[,;] |(?<=[a-z]{4})\. ")  # a comma may be read as a point
_SIZED: Final = re.compile(r"^(?!.*(?:\bsizes\b|\d to \d))(?:.*[\d½¼¾]|(?:tall|large|giant)\b)", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Described:
    """Hold a name with the small type under it: its lines and the texts they hold."""

    name: Segment
    lines: tuple[TextLine, ...]
    texts: tuple[Segment, ...]


def descriptions(advert: AdvertText, segments: Sequence[Segment], prices: Sequence[Found]) -> tuple[Described, ...]:
    """Return the names of an advert that small type without a price of its own tells more of."""
    priced = frozenset(price.line for price in prices)
    found = []
    for name in segments:
        line = advert.lines[name.last_line]
        alone = opens_line(advert, name) and ends_line(advert, name)
        if not _may_name(name) or name.last_line in priced or not alone:
            continue
        lines = _small_type(advert, line, prices, priced)
        numbers = {n.number for n in lines}
        texts = tuple(s for s in segments if s.first_line in numbers and s.last_line in numbers)
        if not lines or not texts or any(states_set(s.text) for s in texts):
            continue
        if not _heads_several(name, texts[0], segments, prices):
            found.append(Described(name, lines, texts))
    return tuple(found)


def ends_of(segment: Segment, foot: Box | None) -> Iterator[Segment]:
    """Yield a text as it stands, with its title for its end, and with the foot of its small type."""
    yield segment
    if segment.title is not None:
        yield replace(segment, last=segment.title)
    if foot is not None:
        yield replace(segment, last=foot, flat=segment.flat.joined(foot))


def size_under(
    advert: AdvertText, name: Segment, own: Found, segments: Sequence[Segment], prices: Sequence[Found]
) -> str:
    """Return the brand, size or pack set in small type under a name ("tall can"), empty where none is.

    Before the pack of a name of several words no long description is told. `own` is the price of the name, beside which
    the small type may stand. What stands after a price or a term in that line is no part of it.
    """
    line = advert.lines[name.last_line]
    if not _may_name(name) or states_set(name.text) or not ends_line(advert, name):
        return ""
    others = [p for p in prices if p is not own]
    lines: list[TextLine] = []
    below = _right_under(advert, line)
    while below is not None and len(lines) < _SIZE_LINES and _goes_on(advert, line, lines, below):
        if any(right_on_row(advert, below, p) and not right_on_row(advert, line, p) for p in others):
            break  # a row of a list, with a price of its own
        lines.append(below)
        below = _right_under(advert, below)
    if below is not None and len(lines) == _SIZE_LINES and _goes_on(advert, line, lines, below):
        lines = lines[:1]  # of a description
    if not lines:
        return ""
    numbers = {n.number for n in lines}
    first = min((p.start for p in prices if p.line in numbers), default=lines[-1].end)
    texts = [s for s in segments if s.first_line in numbers and s.last_line in numbers and s.start < first]
    if not texts or texts[0].start > lines[0].start + 1:
        return ""
    if texts[0].text.isupper() and not name.text.isupper() and not any(c.isdigit() for c in texts[0].text):
        return ""  # "SERVING PIECES" heads the rows under it
    clauses = [c for s in texts for c in CLAUSE.split(s.text)]
    packed = [i for i, clause in enumerate(clauses) if _is_pack(clause)]
    sized = [i for i, clause in enumerate(clauses) if _SIZED.search(clause)]
    end = packed[-1] if packed else sized[0] if sized else -1
    told = ", ".join(clauses[: end + 1])
    if len(name.text.split()) > 1 and outgrows(told, name.text):
        told = clauses[end] if not outgrows(clauses[end], name.text) else ""
    speaks = any(word.lower() in (PROSE | talk()) - {"can"} for word in WORD.findall(told))
    return told if len(told.split()) <= _SIZE_WORDS and not speaks else ""


def outgrows(told: str, name: str) -> bool:
    """Say whether what is told of an article is a description: longer than twice its name."""
    return len(told.split()) > 2 * len(name.split())


def _is_pack(clause: str) -> bool:
    """Say whether a clause tells how goods are packed: "tall can", "in cartons"; a "platinum head" is a part."""
    nouns = [n for n in find_nouns(clause) if n.kind == "measures"]
    if not nouns:
        return False
    pack = clause[nouns[-1].start : nouns[-1].end].lower()
    beside = [w for w in map(str.lower, WORD.findall(clause)) if w not in pack]
    return not beside or any(c.isdigit() for c in clause) or not _PACKED.isdisjoint(beside)


def _goes_on(advert: AdvertText, name: TextLine, lines: Sequence[TextLine], below: TextLine) -> bool:
    """Say whether a line is the first of the small type close under a name, or goes on with that type."""
    if not lines:
        return _is_small(advert, name, below) and below.flat.y - name.flat.bottom <= _CLOSE * name.type_px
    above = lines[-1]
    alike = _ONE_SIZE[0] < below.type_px / max(above.type_px, 1.0) < _ONE_SIZE[1]
    return alike and below.flat.centre[1] - above.flat.centre[1] <= _STEP * below.type_px


def _is_small(advert: AdvertText, name: TextLine, below: TextLine) -> bool:
    small = below.type_px <= min(_SMALLER * name.type_px, _BODY * advert.body_px)
    return small and name.type_px <= _LARGEST * below.type_px


def _heads_several(name: Segment, first: Segment, segments: Sequence[Segment], prices: Sequence[Found]) -> bool:
    """Say whether a name heads a section ("Dairy Case"): goods in its small type stand beside, or after a price."""
    column = [
        other
        for other in segments
        if other.start != first.start and over_each_other(name.flat.joined(first.flat), other.flat)
    ]
    if any(
        other.first_line != first.first_line and other.first.same_row(first.first) and other.start != name.start
        for other in column
    ):
        return True
    below = [other for other in column if other.first.centre[1] > first.last.bottom]
    stop = min((o.first.y for o in below if o.type_px > _SMALLER * name.type_px and o.content > 0), default=None)
    for other in below:
        alike = _ONE_SIZE[0] < other.type_px / max(first.type_px, 1.0) < _NEXT_SIZE
        if not other.goods or not alike or (stop is not None and other.first.y >= stop):
            continue
        under = [p.place for p in prices if p.place.centre[1] > first.last.bottom]
        before = any(p.centre[1] < other.first.y and over_each_other(first.flat, p) for p in under)
        own = any(
            p.centre[1] > other.first.y and (over_each_other(other.flat, p) or other.flat.same_row(p)) for p in under
        )
        if before and own:
            return True
    return False


def _may_name(segment: Segment) -> bool:
    few = len(WORD.findall(segment.text)) <= NAME_WORDS
    return few and segment.content > 0 and not segment.bare and not segment.talks


def _small_type(
    advert: AdvertText, name: TextLine, prices: Sequence[Found], priced: frozenset[int]
) -> tuple[TextLine, ...]:
    """Return the lines of small type set close under a name; none where a price stands among them."""
    lines: list[TextLine] = []
    above = name
    while len(lines) < _LONGEST:
        below = _right_under(advert, above)
        if below is None or (lines and not _ONE_SIZE[0] < below.type_px / max(above.type_px, 1.0) < _ONE_SIZE[1]):
            break
        size = below.type_px
        if not lines and not _is_small(advert, name, below):
            return ()
        step = below.flat.centre[1] - above.flat.centre[1]
        white = below.flat.y - above.flat.bottom
        if (step > _STEP * size) if lines else (white > _CLOSE * name.type_px):
            break
        lines.append(below)
        above = below
    rows = any(line.number in priced or any(right_on_row(advert, line, p) for p in prices) for line in lines)
    return () if rows else tuple(lines)


def _right_under(advert: AdvertText, line: TextLine) -> TextLine | None:
    """Return the nearest line under a line that begins at its left edge or stands on its axis."""
    best = None
    for other in advert.lines:
        step = other.flat.centre[1] - line.flat.centre[1]
        across = other.flat.across(line.flat)
        if across > 0 and step > 0.5 * line.type_px and (best is None or step < best[0]):
            best = (step, other)
    if best is None:
        return None
    below, reach = best[1], _EDGE * max(line.type_px, best[1].type_px)
    edge = abs(below.flat.x - line.flat.x) < reach
    return below if edge or abs(below.flat.centre[0] - line.flat.centre[0]) < reach else None

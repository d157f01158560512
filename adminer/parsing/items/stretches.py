"""Where a price stands in running text: its column of type, the texts since the price before, the heading over them.

Running text is read from price to price; the label of a row and a price in a column of its own are told apart from it.
Common practice, no source.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

from adminer.parsing.items.flow import after_colon
from adminer.parsing.prices.prices import Found
from adminer.parsing.segments.items import Segment, right_on_row
from adminer.parsing.text.columns import Column, column_over, paragraph_start
from adminer.parsing.text.item_words import WORD
from adminer.parsing.text.text import AdvertText, TextLine
from adminer.records import Box

_PRICE_WORD: Final = re.compile(
    r"\W*(?:(?:(?:our|sale|special) )?prices?|reg(?:ular(?:ly)?)?|special|sale|values?|worth|usually|was|were|each|"
    r"complete|for|now|only|per (?:pair|set|doz(?:en)?|yard|yd)|the (?:pair|set|lot))\b"
    r"[\s,:.–—-]*(?:only|is|now|each|complete|per \w+)?\W*",
    re.IGNORECASE,
)
_BULLETS: Final = frozenset("•·●▪■*")
_ROW_GAP: Final = 3.0  # type sizes of white or leaders before a price that stands in a column of its own
_LIST_ROWS: Final = 3  # that make a list
_LIST_SHARE: Final = 0.75  # of the priced lines of a block, which end with their prices
_RUN_ON: Final = 1.34  # type sizes apart within which a line goes on with the one over it


@dataclass(frozen=True, slots=True)
class Stretch:
    """Hold where a group of prices stands: its column, the texts since the price before, and whether they run on."""

    column: Column
    texts: tuple[Segment, ...]
    head: Segment | None
    follows: int | None  # the group before it in the same column of running text
    bulleted: bool  # lines of the column begin with bullets: what they say is told of what stands over them
    line: int  # that the first price stands in
    inline: bool  # the price stands in a line of text or begins one that goes on
    label: bool  # the one text of its line, the only price of which it is


def stretch_of(
    advert: AdvertText,
    g: int,
    groups: Sequence[Sequence[Found]],
    segments: Sequence[Segment],
    rules: tuple[Box, ...],
    priced: frozenset[int],
) -> Stretch:
    """Return the stretch of text that a group of prices closes."""
    first = min(groups[g], key=lambda found: found.start)
    own = any(s.first_line <= first.line <= s.last_line and s.end <= first.start for s in segments)
    line = advert.lines[first.line]
    if not own and not _goes_on(advert, line, first):
        line = _label_line(advert, first, priced, rules)
    stop = first.start if line.number == first.line else line.end
    others = [(found.end, o) for o, group in enumerate(groups) if o != g for found in group if found.end <= stop]
    foot = _reaching_up(line, groups[g])
    column = column_over(advert, foot, rules, priced, alone=line.number == first.line and not own)
    numbers = {n.number for n in column.lines}
    before = max(((end, o) for end, o in others if advert.line_at(end - 1).number in numbers), default=None)
    start = max(before[0] if before is not None else 0, paragraph_start(advert, column))
    rows = [n.end for n in column.lines if n.number != line.number and _is_row_of(advert, n, g, groups)]
    start = max([start, *rows])  # the label of another price's row, whatever block that price stands in
    texts = tuple(s for s in segments if start <= s.start and s.end <= stop and {s.first_line, s.last_line} <= numbers)
    texts = after_colon(advert, texts)
    labelled = any(s.last_line == line.number for s in texts) and first.type_px < _RUN_ON * line.type_px
    shared = sum(found.line == first.line for group in groups for found in group) > len(groups[g])
    label = _is_label(advert, line, first, texts, labelled=labelled, shared=shared)
    after_price = before is not None and before[0] > line.start  # in the same line
    mine = tuple(s for s in texts if s.last_line == line.number)
    if any(s.goods and s.start < line.start + 8 for s in mine) and _is_list(advert, line, groups):
        texts = mine  # a row above whose price was not read names nothing here
    bulleted = any(advert.printed(n)[:1] in _BULLETS for n in column.lines)
    closes = _PRICE_WORD.fullmatch(advert.text, advert.lines[first.line].start, first.start) is not None
    told = WORD.search(advert.text, advert.lines[first.line].start, first.start) is not None and not own
    inline = labelled or after_price or closes or told or _goes_on(advert, line, first)
    head, follows = _head_segment(column, segments), before[1] if before else None
    return Stretch(column, texts, head, follows, bulleted, first.line, inline, label)


def _is_label(
    advert: AdvertText, line: TextLine, first: Found, texts: Sequence[Segment], *, labelled: bool, shared: bool
) -> bool:
    """Say whether the texts of a stretch are the label of a row: one text alone, or goods apart from a price.

    `labelled` says that a text ends in the line, `shared` that it holds the prices of several groups.
    """
    row = [s for s in texts if s.first_line == line.number]
    if (line.number != first.line or _stands_apart(advert, line, first)) and any(s.goods for s in row):
        return labelled or len(row) == len(texts)
    if not labelled or shared or len(texts) != 1:
        return False
    (text,) = texts
    return text.first_line == line.number and not text.bare and not (text.goods and line.number == first.line)


def _is_list(advert: AdvertText, line: TextLine, groups: Sequence[Sequence[Found]]) -> bool:
    """Say whether the priced lines of a block mostly end with their prices, as the rows of a list do."""
    ends: dict[int, int] = {}
    for found in (found for group in groups for found in group):
        if advert.lines[found.line].block == line.block:
            ends[found.line] = max(ends.get(found.line, 0), found.end)
    rows = sum(end >= advert.lines[n].end - 2 for n, end in ends.items())
    return line.number in ends and rows >= _LIST_ROWS and rows >= _LIST_SHARE * len(ends)


def _reaching_up(line: TextLine, group: Sequence[Found]) -> TextLine:
    """Return a line as high as the tallest price of a group on its row: small type beside it stands on its foot."""
    tops = [f.place.y for f in group if line.flat.same_row(f.place)]
    top = min([line.flat.y, *tops])
    return replace(line, flat=Box(line.flat.x, top, line.flat.w, line.flat.bottom - top))


def _stands_apart(advert: AdvertText, line: TextLine, found: Found) -> bool:
    """Say whether a price stands away from the words before it in its line, or after leaders."""
    before = advert.words_of(line.start, max(found.start - 1, line.start + 1))[-1]
    gap = found.place.x - before.box.right
    return gap > _ROW_GAP * line.type_px or not any(c.isalnum() for c in before.text)


def _label_line(advert: AdvertText, found: Found, priced: frozenset[int], rules: tuple[Box, ...]) -> TextLine:
    """Return the nearest line left of a price that stands alone on its row, else the line of the price."""
    left = [n for n in advert.lines if n.number != found.line and right_on_row(advert, n, found)]
    nearest = max(left, key=lambda n: n.flat.right, default=None)
    if nearest is None or nearest.number in priced:
        return advert.lines[found.line]
    crossed = any(
        r.h > max(3 * r.w, found.box.h)
        and nearest.box.right - 2 <= r.centre[0] <= found.box.x + 2
        and r.y <= found.box.centre[1] <= r.bottom
        for r in rules
    )
    return advert.lines[found.line] if crossed else nearest


def _is_row_of(advert: AdvertText, line: TextLine, g: int, groups: Sequence[Sequence[Found]]) -> bool:
    """Say whether a line is the label of a price of another group that stands alone right of it on its row."""
    return any(
        found.line != line.number and right_on_row(advert, line, found)
        for o, group in enumerate(groups)
        if o != g
        for found in group
    )


def _goes_on(advert: AdvertText, line: TextLine, first: Found) -> bool:
    """Say whether a price that begins a line goes on with the text of the line before, as words in a sentence do."""
    if line.number == 0 or first.start > line.start + 2:
        return False
    above = advert.lines[line.number - 1]
    ratio = above.type_px / max(first.type_px, 1.0)
    step = line.flat.centre[1] - above.flat.centre[1]
    full = above.flat.right >= line.flat.right - 3 * above.type_px and above.flat.x <= line.flat.x + 2 * above.type_px
    return (
        above.block == line.block
        and 1 / _RUN_ON < ratio < _RUN_ON
        and 0 < step < 2 * max(above.type_px, line.type_px)
        and full
        and len(WORD.findall(advert.printed(above))) > 2
    )


def _head_segment(column: Column, segments: Sequence[Segment]) -> Segment | None:
    """Return the text of a heading; of one in two lines the lower, where they are two texts."""
    numbers = {n.number for n in column.head}
    found = [s for s in segments if s.content > 0 and s.last_line in numbers]
    return max(found, key=lambda s: (s.goods, s.start), default=None)

"""How far a text stands from a price in reading order: right before it, at its paragraph's head, right after it."""

from __future__ import annotations

import re
from typing import Final

from adminer.parsing.items.catalogue import without_order_marks
from adminer.parsing.items.panels import DISPLAY, NOWHERE, is_cell, over_each_other
from adminer.parsing.prices.prices import Found
from adminer.parsing.segments.items import Segment
from adminer.parsing.text.text import AdvertText, TextLine

_PRICE_WORD: Final = re.compile(r"\b(?:our |sale |special )?prices?\b[ ,:.]*(?:only|is|now|,)?", re.IGNORECASE)
_FIGURE_END: Final = re.compile(r"(?:\d|¢|\bup|\bc|\bcents)[ .,]*$")
_FOR: Final = re.compile(r"\s*for\s", re.IGNORECASE)
# "17/6. A tin of ...": after a price in shillings a point is no end of "c." or "lb."
_NEXT_SENTENCE: Final = re.compile(r"[!?.] (?:A|An|The|Our|We|It|This|These|Your?|For|In|Send|Write|Every|All)\b")
BEFORE: Final = "the words right before the price"
_LEADERS: Final = re.compile(r"(?:[._·…] ?){2}")
CLOSES: Final = "paragraph that the price closes"
HEADS: Final = f"the head of the {CLOSES}"
AFTER: Final = "the words right after the price"
_BLOCK_STEPS: Final = 30  # lines that the step into another block of type counts as


def flow_cost(
    advert: AdvertText, group: list[Found], segment: Segment, prices: list[Found], segments: list[Segment]
) -> tuple[float, str]:
    """Return the cost by reading order.

    The words right before a price are what it is for, or the head of the paragraph that the price closes
    ("Cloth Brush. Fine solid silver back ... Price, $4.50"), or the words right after it on its line.
    """
    start, end = group[0].start, group[-1].end
    if segment.end <= start:
        if any(segment.end <= p.start and p.end <= start for p in prices):
            return NOWHERE, ""
        steps = _steps_down(advert, segment.last_line, group[0].line)
        if steps is None:
            return NOWHERE, ""
        between, numbered = without_order_marks(advert.text[segment.end : start])
        words = _PRICE_WORD.sub("", between).strip(" \n-–—.:").split()
        heads = _starts_paragraph(advert, segment)
        if len(words) <= 2 and between.count("\n") <= 1 and not (numbered and heads):
            named = 0.3 if _PRICE_WORD.search(between) else 0.0
            size = 0.3 if segment.bare and "\n" in between else 0.0
            return 0.2 + named + size + 0.2 * between.count("\n"), BEFORE
        in_text = group[0].type_px < DISPLAY * advert.body_px  # a display price closes no paragraph
        if in_text and _is_led_to(advert, group[0], segment, segments):
            return NOWHERE, ""
        if in_text and heads:
            larger = 0.25 if _is_heading(advert, segment) else 0.0
            if not segment.goods and any(s.goods and segment.end <= s.start and s.end <= start for s in segments):
                larger -= 0.6  # a head of the column over texts that name goods themselves
            return 0.45 - larger + 0.012 * steps, HEADS
        if in_text and segment.goods and _closes_text(advert, group[0], segment, prices, segments):
            return 0.3 + 0.012 * steps, "the first goods named in the " + CLOSES
    elif segment.start >= end:
        between = advert.text[end : segment.start]
        if segment.goods and not between.strip() and _FOR.match(advert.text, end):
            return 0.3, AFTER
        if len(between.split()) <= 2 and "\n" not in between and not _NEXT_SENTENCE.match(advert.text, end):
            return 0.75 + 0.4 * segment.bare, AFTER
    return NOWHERE, ""


def _is_led_to(advert: AdvertText, found: Found, segment: Segment, segments: list[Segment]) -> bool:
    """Say whether leaders run to a price from goods named in its own line, which no text over the line may name."""
    return any(
        segment.last_line < other.first_line == found.line
        and other.goods
        and _LEADERS.search(advert.text, other.end, found.start) is not None
        for other in segments
    )


def _closes_text(
    advert: AdvertText, found: Found, segment: Segment, prices: list[Found], segments: list[Segment]
) -> bool:
    """Say whether a price stands in running text whose first goods, since the last price, a segment names.

    A price in a column of prices closes its row, not the rows above; so does one whose row has other goods.
    """
    if is_cell(found, prices, advert.body_px) or any(
        segment.last.same_row(p.place) for p in prices if p.line != found.line
    ):
        return False
    last = max((p.end for p in prices if p.end <= segment.start), default=0)
    return not any(other.goods and last <= other.start < segment.start for other in segments)


def _is_heading(advert: AdvertText, segment: Segment) -> bool:
    """Say whether a segment is set larger than the two lines under it, or in capitals over lower case."""
    below = advert.lines[segment.last_line + 1 : segment.last_line + 3]
    if not below:
        return False
    own = min(advert.lines[n].type_px for n in range(segment.first_line, segment.last_line + 1))
    capitals = segment.text.isupper() and not any(advert.printed(n).isupper() for n in below)
    return own > 1.25 * max(n.type_px for n in below) or (capitals and len(segment.text) > 3)


def _steps_down(advert: AdvertText, first: int, last: int) -> int | None:
    """Return how many lines lie between two lines of one column without a gap, None where the column breaks.

    A new block of type counts as many lines: it may go on with the column or not.
    """
    steps = last - first
    for number in range(first, last):
        if _breaks(advert, number):
            return None
        if advert.lines[number].block != advert.lines[number + 1].block:
            steps += _BLOCK_STEPS
    return steps


def _breaks(advert: AdvertText, number: int) -> bool:
    """Say whether the column of type breaks after a line: another block, a wide gap, or a jump up or aside."""
    above, below = advert.lines[number], advert.lines[number + 1]
    if below.flat.bottom <= above.flat.y or (
        above.block != below.block and not _is_set_on(above, below, advert.body_px)
    ):
        return True
    if above.flat.same_row(below.flat):
        return False
    aside = not over_each_other(above.flat, below.flat)
    return aside or below.flat.y - above.flat.bottom > 2.2 * max(above.type_px, below.type_px, advert.body_px)


def _is_set_on(above: TextLine, below: TextLine, body: float) -> bool:
    """Say whether two lines of different blocks are set as one column: close, mostly over each other, no display."""
    across = above.flat.across(below.flat)
    return (
        across > 0.6 * min(above.flat.w, below.flat.w)
        and below.flat.y - above.flat.bottom < 1.5 * body
        and max(above.type_px, below.type_px) < DISPLAY * body
    )


def _starts_paragraph(advert: AdvertText, segment: Segment) -> bool:
    """Say whether a segment opens its column of type, or stands out from the line above by its size."""
    line = advert.lines[segment.first_line]
    if segment.start > line.start + 3:
        return False
    if line.number == 0 or _breaks(advert, line.number - 1):
        return True
    above = advert.lines[line.number - 1]
    return (
        line.type_px > 1.25 * above.type_px
        or advert.printed(above).rstrip()[-1:] in ".!?"
        or _ends_with_price(advert, above.end)
    )


def _ends_with_price(advert: AdvertText, end: int) -> bool:
    return bool(_FIGURE_END.search(advert.text, max(0, end - 12), end))


def after_colon(advert: AdvertText, texts: tuple[Segment, ...]) -> tuple[Segment, ...]:
    """Return the texts after the last head that a colon ends ("Soda bar: Banana boat 39c"), where they name goods."""
    heads = [i for i, s in enumerate(texts) if advert.text[s.end : s.end + 2].lstrip().startswith(":")]
    after = texts[heads[-1] + 1 :] if heads else ()
    return after if any(s.goods for s in after) else texts

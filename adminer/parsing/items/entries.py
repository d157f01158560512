"""Running text and headed paragraphs read as entries: the words since the last price that name what a price is for.

The first goods named since the price before are what the next price is for; a size alone ("2-quart 69c") goes with the
goods before it, and where nothing stands between two prices ("39c each, or three for $1.00") they are for the same. A
heading over a description with one price names what the price is for. Common practice, no source.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

from adminer.parsing.items.flow import after_colon
from adminer.parsing.items.panels import same_row
from adminer.parsing.prices.prices import Found
from adminer.parsing.segments.items import Segment, right_on_row
from adminer.parsing.segments.postage import POSTAGE, postage_of
from adminer.parsing.sets.composition import stated_pieces
from adminer.parsing.text.columns import Column, column_over, paragraph_start
from adminer.parsing.text.goods import find_nouns
from adminer.parsing.text.item_words import WORD
from adminer.parsing.text.naming import is_sentence, qualifies
from adminer.parsing.text.text import AdvertText, TextLine
from adminer.records import Box

FIRST: Final = "the first goods named since the price before"
SIZE: Final = "a size of the goods named before it"
SAME: Final = "shares the item with the price before it: nothing else is named between"
HEAD: Final = "the heading of the text that its only price closes"
_HEADLINE: Final = 2.5  # times the type under it: larger type heads the advert, not an entry
_PRICE_WORD: Final = re.compile(
    r"\W*(?:(?:(?:our|sale|special) )?prices?|reg(?:ular(?:ly)?)?|special|sale|values?|worth|usually|was|were|each|"
    r"complete|for|now|only|per (?:pair|set|doz(?:en)?|yard|yd)|the (?:pair|set|lot))\b"
    r"[\s,:.–—-]*(?:only|is|now|each|complete|per \w+)?\W*",
    re.IGNORECASE,
)
_WAYS_TO_PAY: Final = frozenset(
    {"time", "credit", "cash", "terms", "easy", "account", "open", "payments", "instalments", "complete", "otherwise"}
)
_BULLETS: Final = frozenset("•·●▪■*")
_ADJECTIVAL: Final = re.compile(r"\b(?:and|or|our|the|these|those|an?)\s*$", re.IGNORECASE)
_ONE_SIZE: Final = 1.15
_ROW_GAP: Final = 3.0  # type sizes of white or leaders before a price that stands in a column of its own
_LIST_ROWS: Final = 3
_LIST_SHARE: Final = 0.75
_FRONT: Final = 3
_RUN_ON: Final = 1.34  # type sizes apart within which a line goes on with the one over it


@dataclass(frozen=True, slots=True)
class Entry:
    """Hold the text that names what a price is for, the goods whose size it only tells, and why."""

    item: Segment
    heading: Segment | None
    why: str


@dataclass(frozen=True, slots=True)
class _Stretch:
    """Hold where a group of prices stands: its column, the texts since the price before, and whether they run on."""

    column: Column
    texts: tuple[Segment, ...]
    head: Segment | None
    follows: int | None  # the group before it in the same column of running text
    bulleted: bool  # lines of the column begin with bullets: what they say is told of what stands over them
    line: int  # that the first price stands in
    inline: bool  # the price stands in a line of text or begins one that goes on
    label: bool  # the one text of its line, the only price of which it is


def read_entries(
    advert: AdvertText, groups: Sequence[Sequence[Found]], segments: Sequence[Segment], rules: tuple[Box, ...]
) -> dict[int, Entry]:
    """Return the entries of an advert by the number of their group of prices; prices of tables and labels have none."""
    priced = frozenset(found.line for group in groups for found in group)
    segments = [s for s in segments if not _is_way_to_pay(s)]
    stretches = {g: _stretch_of(advert, g, groups, segments, rules, priced) for g in range(len(groups))}
    alone = _alone({g: s.head for g, s in stretches.items() if s.head is not None and _has_main(groups[g])})
    entries: dict[int, Entry] = {}
    for g, stretch in sorted(stretches.items(), key=lambda item: groups[item[0]][0].start):
        place = postage_of(advert, groups[g])
        words = [s for s in segments if place is not None and s.start <= place[0] and place[1] <= s.end]
        word = min(words, key=lambda s: s.end - s.start, default=None)
        if word is not None:
            entries[g] = Entry(word, None, POSTAGE)
            continue
        first = min(groups[g], key=lambda found: found.start)
        goes_before = any(s.goods and 0 <= s.start - first.end <= 1 for s in segments)
        if stretch.label or (goes_before and is_adjectival(advert, first)):
            continue  # the label of a row, as good as any place can tell
        entry = _entry(stretch, entries, alone=stretch.head is not None and stretch.head.start in alone)
        if entry is not None:
            entries[g] = entry
    return entries


def is_adjectival(advert: AdvertText, found: Found) -> bool:
    """Say whether a price stands like an adjective before what it is for ("our 5c toilet papers")."""
    return _ADJECTIVAL.search(advert.text, advert.lines[found.line].start, found.start) is not None


def _has_main(group: Sequence[Found]) -> bool:
    return any(found.role not in {"postage", "instalment", "down_payment", "saving"} for found in group)


def _alone(heads: dict[int, Segment]) -> frozenset[int]:
    """Return the headings with one price under them, as most of their size have: headings of one size do one job."""
    scope = Counter(head.start for head in heads.values())
    sizes = {head.start: head.type_px for head in heads.values()}
    found = []
    for start, size in sizes.items():
        alike = [other for other, px in sizes.items() if 1 / _ONE_SIZE < px / max(size, 1.0) < _ONE_SIZE]
        if scope[start] == 1 and 2 * sum(scope[other] == 1 for other in alike) > len(alike):
            found.append(start)
    return frozenset(found)


def _entry(stretch: _Stretch, entries: dict[int, Entry], *, alone: bool) -> Entry | None:
    named = [s for s in stretch.texts if s.goods and not s.bare and s.text[0] != "("]
    own = next((s for s in named if not is_sentence(s.text)), named[0] if named else None)
    own = next((s for s in named if stated_pieces(s.text)), own)  # a set is an article, its ware only a kind
    if own is None:
        own = next((s for s in stretch.texts if _opens_with_stuff(s)), None)
    head = stretch.head
    if head is not None and alone and _names_all(head, own, stretch):
        return Entry(head, None, HEAD)
    if not stretch.inline:
        return None
    foot = stretch.column.lines[-1]
    row = [s for s in stretch.texts if s.first_line == foot.number]
    if head is not None and head.goods and row and all(s.bare for s in row) and row[0].start < foot.start + 8:
        return Entry(row[-1], head, SIZE)  # a row of sizes under what they are sizes of
    if own is not None:
        last = stretch.texts[-1]
        sized = last is not own and _is_size(last) and last.last_line == stretch.line
        told = head if head is not None and alone and own is stretch.texts[0] and qualifies(head.text) else None
        return Entry(last, own, SIZE) if sized else Entry(own, told, FIRST)
    before = entries.get(stretch.follows) if stretch.follows is not None else None
    content = [s for s in stretch.texts if s.content > 0 or s.bare]
    if content and all(_is_size(s) for s in content):
        heading = (before.heading or before.item) if before is not None else head
        return Entry(content[-1], heading, SIZE) if heading is not None else None
    if (
        head is None
        and len(content) == 1
        and content[0].content > 1
        and content[0].start <= stretch.column.lines[0].start + 8
    ):
        return Entry(content[0], None, FIRST) if not content[0].talks else None
    if before is not None and not content:
        return Entry(before.item, before.heading, SAME)
    return None


def _is_way_to_pay(text: Segment) -> bool:
    """Say whether a text tells how a price is paid, not what it is for: "cash price $9.50; on time, $10.75"."""
    words = {w.lower() for w in WORD.findall(text.text)}
    return bool(words) and words <= _WAYS_TO_PAY


def _is_size(text: Segment) -> bool:
    """Say whether a text is only a size or a measure ("2-quart", "set")."""
    nouns = find_nouns(text.text)
    return text.bare or (len(nouns) == 1 and nouns[0].kind == "measures" and text.content == 1)


def _opens_with_stuff(text: Segment) -> bool:
    """Say whether a text begins with a stuff or ware the trade sold by the yard or the piece ("Unbleached Muslin")."""
    front = " ".join(text.text.split()[:_FRONT])
    return not is_sentence(text.text) and any(n.kind in {"materials", "generic"} for n in find_nouns(front))


def _names_all(head: Segment, own: Segment | None, stretch: _Stretch) -> bool:
    """Say whether a heading names the only offer under it, rather than the text of the offer itself."""
    body = max(line.type_px for line in stretch.column.lines[:1])
    if not stretch.texts or head.type_px > _HEADLINE * body or is_sentence(head.text):
        return False
    return head.goods or own is None or stretch.bulleted


def _stretch_of(
    advert: AdvertText,
    g: int,
    groups: Sequence[Sequence[Found]],
    segments: Sequence[Segment],
    rules: tuple[Box, ...],
    priced: frozenset[int],
) -> _Stretch:
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
    label = labelled and len(texts) == 1 and not texts[0].bare and texts[0].first_line == line.number and not shared
    label = label and not (texts[0].goods and line.number == first.line)
    follows = before is not None and before[0] > line.start
    row = [s for s in texts if s.first_line == line.number]
    if (line.number != first.line or _stands_apart(advert, line, first)) and any(s.goods for s in row):
        label = labelled or len(row) == len(texts)  # goods named on the row of a price that stands apart from them
    mine = tuple(s for s in texts if s.last_line == line.number)
    if any(s.goods and s.start < line.start + 8 for s in mine) and _is_list(advert, line, groups):
        texts = mine  # a row above whose price was not read names nothing here
    bulleted = any(advert.printed(n)[:1] in _BULLETS for n in column.lines)
    closes = _PRICE_WORD.fullmatch(advert.text, advert.lines[first.line].start, first.start) is not None
    told = WORD.search(advert.text, advert.lines[first.line].start, first.start) is not None and not own
    inline = labelled or follows or closes or told or _goes_on(advert, line, first)
    head, follows_on = _head_segment(column, segments), before[1] if before else None
    return _Stretch(column, texts, head, follows_on, bulleted, first.line, inline, label)


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
    tops = [f.place.y for f in group if same_row(line.flat, f.place)]
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

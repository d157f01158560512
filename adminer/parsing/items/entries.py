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

from adminer.parsing.items.stretches import Stretch, stretch_of
from adminer.parsing.prices.prices import Found
from adminer.parsing.segments.items import Segment
from adminer.parsing.segments.line_runs import rows_behind_prices
from adminer.parsing.segments.postage import POSTAGE, postage_of
from adminer.parsing.sets.composition import stated_pieces
from adminer.parsing.text.goods import find_nouns
from adminer.parsing.text.item_words import WORD
from adminer.parsing.text.naming import first_clause, is_sentence, qualifies
from adminer.parsing.text.notices import name_of_notice, notices
from adminer.parsing.text.text import AdvertText
from adminer.records import Box

FIRST: Final = "the first goods named since the price before"
NUMBERED: Final = "the article named right after its number in the catalogue"
SIZE: Final = "a size of the goods named before it"
SAME: Final = "shares the item with the price before it: nothing else is named between"
BEHIND: Final = "behind the price on its row, as the texts of its column of prices are"
HEAD: Final = "the heading of the text that its only price closes"
CAPTION: Final = "the article of the number that stands alone before the price"
NOTICE: Final = "the name in capitals that opens the notice of the price"
_HEADLINE: Final = 2.5  # times the type under it: larger type heads the advert, not an entry
_WAYS_TO_PAY: Final = frozenset(
    {"time", "credit", "cash", "terms", "easy", "account", "open", "payments", "instalments", "complete", "otherwise"}
)
_ADJECTIVAL: Final = re.compile(r"\b(?:and|or|our|the|these|those|an?)\s*$", re.IGNORECASE)
_ONE_SIZE: Final = 1.15  # between headings of one size
_LETTERED: Final = 4  # characters of a letter that refers to a picture: "D. Saucepans"
_NUMBER: Final = re.compile(r"\b\d{1,3}-\d{2,5}\b")  # of an article in a catalogue
_DEPARTMENT: Final = re.compile(r"[A-Z'’ -]{3,} (?:AND|&) [A-Z'’ -]{3,}[.:]?")  # "LACE AND RIBBONS" over both
_STOP: Final = re.compile(r"[.!?]\s")  # between what a price is for and the price before it
_FRONT: Final = 3  # words of a text among which its stuff is named


@dataclass(frozen=True, slots=True)
class Entry:
    """Hold the text that names what a price is for, the goods whose size it only tells, and why."""

    item: Segment
    heading: Segment | None
    why: str


def read_entries(
    advert: AdvertText, groups: Sequence[Sequence[Found]], segments: Sequence[Segment], rules: tuple[Box, ...]
) -> dict[int, Entry]:
    """Return the entries of an advert by the number of their group of prices; prices of tables and labels have none."""
    priced = frozenset(found.line for group in groups for found in group)
    rows = rows_behind_prices(advert, [found for group in groups for found in group])
    segments = [s for s in segments if not _is_way_to_pay(s)]
    stretches = {g: stretch_of(advert, g, groups, segments, rules, priced) for g in range(len(groups))}
    opens = notices(advert)
    by_number = _by_number(advert, segments)
    alone = _alone({g: s.head for g, s in stretches.items() if s.head is not None and _has_main(groups[g])})
    entries: dict[int, Entry] = {}
    for g, stretch in sorted(stretches.items(), key=lambda item: groups[item[0]][0].start):
        place = postage_of(advert, groups[g])
        words = [s for s in segments if place is not None and s.start <= place[0] and place[1] <= s.end]
        word = min(words, key=lambda s: s.end - s.start, default=None)
        if word is not None:
            entries[g] = Entry(word, None, POSTAGE)
            continue
        behind = next((s for s in segments if s.first_line == rows.get(groups[g][0].start) and not s.bare), None)
        if behind is not None:
            entries[g] = Entry(behind, None, BEHIND)
            continue
        told = by_number.get(_number_before(advert, groups[g]))
        if told is not None:
            entries[g] = Entry(told, None, CAPTION)
            continue
        notice = _notice(advert, stretch, opens, segments, groups, g)
        if notice is not None:
            entries[g] = notice
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


def _by_number(advert: AdvertText, segments: Sequence[Segment]) -> dict[str, Segment]:
    """Return the articles of an advert that stand right after their numbers at the head of a line, by these."""
    named: dict[str, Segment] = {}
    for s in segments:
        if s.numbered:
            numbers = _NUMBER.findall(advert.text, advert.lines[s.first_line].start, s.start)
            named.update((number, s) for number in numbers if number not in named)
    return named


def _number_before(advert: AdvertText, group: Sequence[Found]) -> str:
    """Return the number that is all there is of the line right before a price, as under a picture, else nothing."""
    first = min(group, key=lambda found: found.start)
    line = advert.lines[first.line]
    before = advert.text[line.start : first.start].strip(" .,:")
    if not before and line.number:
        over = advert.lines[line.number - 1]
        before = advert.printed(over).strip(" .,:") if over.flat.across(line.flat) > 0 else ""
    return before if _NUMBER.fullmatch(before) else ""


def _notice(
    advert: AdvertText,
    stretch: Stretch,
    opens: frozenset[int],
    segments: Sequence[Segment],
    groups: Sequence[Sequence[Found]],
    g: int,
) -> Entry | None:
    """Return the entry of a price in a notice: what its name in capitals says, or a sort or kind told after that.

    What a new sentence brings up, and goods named after a price of the notice, are told by their own words.
    """
    first = min(groups[g], key=lambda found: found.start)
    over = (*stretch.column.head, *stretch.column.lines)
    line = next((n for n in reversed(over) if n.number in opens and n.start <= first.start), None)
    name = next((s for s in segments if line is not None and line.start <= s.start < line.start + _LETTERED), None)
    if name is None or name.end > first.start:
        return None
    before = max((p.end for o in groups for p in o if name.end <= p.end <= first.start), default=None)
    told = [s for s in segments if (before or name.end) <= s.start and s.end <= first.start]
    if before is None:
        labels = [s for s in (name, *told) if s.last_line not in {name.first_line, first.line}]
        listed = any(s.goods and s.last.same_row(first.place) for s in labels)
        return None if listed else Entry(name, None, NOTICE)  # a price that stands apart has a label on its row
    if not told or any(s.goods for s in told) or _STOP.search(advert.text, before, told[-1].start):
        return None
    if told[-1].talks or told[-1].bare:
        return Entry(name, None, NOTICE)
    return Entry(told[-1], replace(name, text=name_of_notice(name.text)), NOTICE)


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


def _entry(stretch: Stretch, entries: dict[int, Entry], *, alone: bool) -> Entry | None:
    named = [s for s in stretch.texts if s.goods and not s.bare and s.text[0] != "("]
    own = next((s for s in named if not is_sentence(s.text)), named[0] if named else None)
    own = next((s for s in named if stated_pieces(s.text)), own)  # a set is an article, its ware only a kind
    if own is None:
        own = next((s for s in stretch.texts if _opens_with_stuff(s)), None)
    numbered = [s for s in stretch.texts if s.numbered and s.content > 0 and not is_sentence(first_clause(s.text))]
    head = stretch.head
    if head is not None and _DEPARTMENT.fullmatch(head.text) and (own is not None or stretch.follows in entries):
        head = None
    if head is not None and alone and _names_all(head, own, stretch):
        return Entry(head, None, HEAD)
    if head is not None and own is not None and _tells_of(head, own, stretch):
        return Entry(head, None, HEAD)
    if head is not None and head.numbered and not numbered and stretch.follows is None:
        return Entry(head, None, NUMBERED)
    if not stretch.inline:
        told = numbered[-1] if numbered else head
        return Entry(told, None, NUMBERED) if told is not None and told.numbered else None
    if numbered:
        return Entry(numbered[0], None, NUMBERED)
    foot = stretch.column.lines[-1]
    row = [s for s in stretch.texts if s.first_line == foot.number]
    alone_on_row = bool(row) and row[0].start < foot.start + 8 and all(s.bare for s in stretch.texts)
    if head is not None and head.goods and alone_on_row:
        return Entry(row[-1], head, SIZE)  # a row of sizes under what they are sizes of
    if own is not None:
        last = stretch.texts[-1]
        sized = last is not own and _is_size(last) and last.last_line == stretch.line
        own = next((s for s in reversed(named) if sized and _stands_over(s, last, stretch)), own)
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


def _tells_of(head: Segment, own: Segment, stretch: Stretch) -> bool:
    """Say whether the first goods named under a title stand in a sentence that only tells of the article it names."""
    return head.goods and _heads_entry(head, stretch) and stretch.follows is None and is_sentence(own.text)


def _stands_over(name: Segment, size: Segment, stretch: Stretch) -> bool:
    """Say whether a name has the line right over that of a size to itself, as the head of a list of sizes has."""
    line = next((n for n in stretch.column.lines if n.number == name.last_line), None)
    alone = line is not None and name.start < line.start + _LETTERED and name.end >= line.end - 1
    return alone and name.last_line == name.first_line == size.first_line - 1


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


def _names_all(head: Segment, own: Segment | None, stretch: Stretch) -> bool:
    """Say whether a heading names the only offer under it, rather than the text of the offer itself."""
    if not stretch.texts or not _heads_entry(head, stretch):
        return False
    return head.goods or own is None or stretch.bulleted


def _heads_entry(head: Segment, stretch: Stretch) -> bool:
    """Say whether a heading may head an entry: it is no sentence, nor so large that it heads the advert."""
    return head.type_px <= _HEADLINE * stretch.column.lines[0].type_px and not is_sentence(head.text)

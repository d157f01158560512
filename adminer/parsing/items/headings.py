"""The words around an item that belong to its name: the heading it is a size of, the one that runs on into it."""

from __future__ import annotations

import re
from typing import Final

from adminer.parsing.items.assign import Pairing
from adminer.parsing.items.entries import FIRST, NUMBERED
from adminer.parsing.items.panels import ends_line, opens_line
from adminer.parsing.segments.items import Segment
from adminer.parsing.sets.contents import is_next
from adminer.parsing.text.goods import find_nouns, has_goods
from adminer.parsing.text.item_words import clean_item
from adminer.parsing.text.naming import name_of, qualifies
from adminer.parsing.text.slips import mended
from adminer.parsing.text.text import AdvertText
from adminer.records import Box

_SAME: Final = re.compile(
    r"(?P<first>[^,;]+), (?:the )?same|(?:the )?same(?:,? (?:in|with|as above|but|size)\b|,|$)(?P<rest>.*)|"
    r"(?:ditto|do\.)(?:[,.]? (?P<more>.+))?|(?P<kind>[^,;]+),? (?:ditto|do)\.?",
    re.IGNORECASE,
)
# A word of what another size costs, between a name and a size on one row: "Coffee lb. 17c  3 lbs. 49c"
_OF_PRICE: Final = re.compile(r"\W*|\W*(?:lbs?|ozs?|pkgs?|doz|qts?|pts?|each)\W*|\W*\d[\d.½¼¾]*[¢c]?\W*", re.IGNORECASE)
_DESCRIBES: Final = 4.0  # body types further away: what is told of goods, where a heading over it names them


def headed(
    advert: AdvertText, item: str, pairing: Pairing, segment: Segment, segments: list[Segment], price: Box
) -> str:
    """Return an item's name with its heading before it: one given, of a bare size the nearest, or one that runs on."""
    heading = pairing.heading or (_heading_of(advert, segment, segments, price) if segment.bare else None)
    if heading is not None:
        return f"{_without_size(name_of(heading.text)) if segment.bare else name_of(heading.text)} {item}"
    if pairing.why in {FIRST, NUMBERED}:
        return item  # in running text a heading stands over all that follows
    heading = _qualified_by(advert, segment, segments)
    return f"{name_of(heading.text)} {item}" if heading is not None else item


def says_same(text: str) -> bool:
    """Say whether a text refers by "same" or "ditto" to the item before it."""
    return _SAME.fullmatch(text) is not None


def said_again(item: str, before: str) -> str:
    """Return an item that says "same" or "ditto" in full: "Same in 16-in." after "Rake, 14-in." is a rake, 16-in."""
    m = _SAME.fullmatch(item)
    if m is None or not before:
        return item
    rest = (m["first"] or m["rest"] or m["more"] or m["kind"] or "").strip(" ,")
    if not rest:
        return before
    name = before.split(",", maxsplit=1)[0]
    return f"{rest} {name}" if m["first"] else f"{name}, {rest}"


def _heading_of(advert: AdvertText, segment: Segment, segments: list[Segment], price: Box) -> Segment | None:
    """Return the name right before a segment that has only figures ("9 x 12 ft.") on its row, else what heads it."""
    before = next((other for other in segments if _is_right_before(advert, other, segment)), None)
    if before is not None:
        return before
    row = segment.flat.joined(price) if segment.flat.same_row(price) else segment.flat
    best: tuple[float, Segment] | None = None
    for other in segments:
        if other.bare or other.talks or other.content == 0 or other.flat.centre[1] >= segment.flat.y:
            continue
        across = advert.lines[other.last_line].flat.across(row)  # its number stands before a name
        gap = max(segment.flat.y - other.flat.bottom, 0) / advert.body_px
        if across <= 0 or (gap > 2 and other.type_px < 0.95 * segment.type_px):
            continue
        distance = gap - (2 * min(other.type_px / advert.body_px, 3) if gap > 2 else 8)
        distance += 0 if _stands_alone(advert, other) else _DESCRIBES
        if best is None or distance < best[0]:
            best = (distance, other)
    return best[1] if best else None


def _is_right_before(advert: AdvertText, name: Segment, size: Segment) -> bool:
    if name.end > size.start or name.bare or name.talks:
        return False
    between = advert.text[name.end : size.start].strip()
    if between == ",":
        return True
    return name.last.same_row(size.first) and all(map(_OF_PRICE.fullmatch, between.split()))


def _stands_alone(advert: AdvertText, text: Segment) -> bool:
    """Say whether nothing else stands on the lines of a text, which begins as a heading does and describes nothing."""
    return opens_line(advert, text) and ends_line(advert, text) and not text.text[:1].islower()


def _without_size(name: str) -> str:
    """Return the name of goods without what stands after its comma, to which another size goes."""
    first = name.split(",", maxsplit=1)[0]
    return first if has_goods(first) else name


def as_read(advert: AdvertText, segment: Segment) -> str:
    """Return what the reader made of an item whose words were mended, empty where none was."""
    read = clean_item(advert.text[segment.start : segment.end])
    words = list(zip(read.split(), segment.text.split(), strict=False))
    changed = [(was, now) for was, now in words if was != now]
    if not changed or not all(mended(was) == now for was, now in changed):
        return ""
    return f"; read as “{read}”, mended by the words of the trade"


def _qualified_by(advert: AdvertText, segment: Segment, segments: list[Segment]) -> Segment | None:
    """Return the heading that runs on into a text: "Solid Gold" over "Ring with a ruby"."""
    nouns = find_nouns(segment.text)
    if not nouns or nouns[0].start > 0:
        return None
    for other in segments:
        between = advert.text[other.end : segment.start]
        if other.last_line == segment.first_line - 1 and not between.strip() and not other.goods and not other.bare:
            tells = other.type_px > 1.15 * segment.type_px and qualifies(other.text)
            return other if tells and is_next(advert, other, segment, 1) else None
    return None

"""Sets: the title that states one ("53-piece service for 8") and the list of its pieces make one item.

What stands between title and list ("sprays of leaf and berry under a clear glaze") tells of the set and names nothing
else. The list is no item of its own, and a price under the list is the price of the set.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from adminer.parsing.prices.prices import Found
from adminer.parsing.segments.items import Segment
from adminer.parsing.sets.composition import service_for, set_of, stated_pieces
from adminer.parsing.sets.listings import Listing, NamedPiece, has_price_on_row
from adminer.parsing.text.item_words import clean_item
from adminer.parsing.text.text import AdvertText

SETTING: Final = re.compile(r"place[- ]?setting|table setting", re.IGNORECASE)
_SET_WORD: Final = re.compile(r"\b(?:set|service|starter|ensemble|outfit|chest|assortment)\b", re.IGNORECASE)
_NUMBER_ONLY: Final = re.compile(
    r"^\W*(?:the |complete |all )*\S+[ -](?:pcs?\.?|pieces)(?: set| complete| in all)?\W*$", re.IGNORECASE
)
_LINES_BETWEEN: Final = 4  # lines of description between the title of a set and its list
_ROW_PIECES: Final = 2  # "Sugar and creamer": a row of open stock names no more
_STEP: Final = 3.2  # sizes of the larger type from the middle of a line to the next of the same paragraph


def states_set(text: str) -> bool:
    """Say whether a text names a set or says how many pieces, persons or places it has."""
    return bool(stated_pieces(text) or service_for(text) or set_of(text) or SETTING.search(text))


def join_sets(
    advert: AdvertText, segments: Sequence[Segment], listings: Sequence[Listing], prices: Sequence[Found]
) -> list[Segment]:
    """Return the segments with each title of a set and the list of its pieces made one, named by the title."""
    joined = list(segments)
    for listing in listings:
        title = _title_of(advert, joined, listing, prices)
        if title is not None:
            joined = _with_list(advert, joined, title, listing)
    return joined


def tell_goods(segments: Sequence[Segment], named: Sequence[NamedPiece]) -> list[Segment]:
    """Return the segments with those that name a piece or state a set told as goods of the trade."""
    return [
        replace(s, goods=True, talks=False)
        if states_set(s.text) or any(s.start <= n.start and n.end <= s.end for n in named)
        else s
        for s in segments
    ]


def _title_of(
    advert: AdvertText, segments: Sequence[Segment], listing: Listing, prices: Sequence[Found]
) -> Segment | None:
    """Return the segment that is the title of a list, None where the list stands alone.

    A number of pieces makes a title before a number of persons ("service for six:") and that before the word "set".
    """
    ranked: list[tuple[int, Segment]] = []
    stock = _is_open_stock(advert, listing, prices)
    for segment in reversed([s for s in segments if s.start < listing.start]):
        if any(segment.end <= price.start and price.end <= listing.start for price in prices):
            break
        if stock and segment.end <= listing.start and has_price_on_row(advert.lines[segment.last_line], prices):
            break  # a row of open stock over others
        text = segment.text
        if segment.end > listing.start:
            text = clean_item(advert.text[segment.start : listing.start])
        elif not _is_over(advert, segment, listing):
            break
        if text and (rank := _rank(text, listing)):
            ranked.append((rank, replace(segment, text=text)))
    return max(ranked, key=lambda found: found[0])[1] if ranked else None


def _is_open_stock(advert: AdvertText, listing: Listing, prices: Sequence[Found]) -> bool:
    """Say whether a list of pieces is rows, a piece or two a line, each with its price."""
    first, last = advert.line_at(listing.start).number, advert.line_at(listing.end - 1).number
    lines = advert.lines[first : last + 1]
    return len(listing.parts) <= _ROW_PIECES * len(lines) and all(has_price_on_row(line, prices) for line in lines)


def _rank(text: str, listing: Listing) -> int:
    """Return how well a text does as the title of a list, 0 for not at all."""
    if stated_pieces(text) or set_of(text) or SETTING.search(text):
        return 3
    return 2 if service_for(text) else int(listing.enumerates and bool(_SET_WORD.search(text)))


def _is_over(advert: AdvertText, title: Segment, listing: Listing) -> bool:
    """Say whether a title stands over a list in one column, line under line, or before it on its line."""
    last = advert.line_at(listing.start).number
    if last - title.last_line > _LINES_BETWEEN:
        return False
    for number in range(title.last_line, last):
        above, below = advert.lines[number], advert.lines[number + 1]
        step = below.flat.centre[1] - above.flat.centre[1]
        across = above.flat.across(below.flat)
        if not 0 < step < _STEP * max(above.type_px, below.type_px) or across <= 0:
            return False
    return True


def _says_again(title: Segment, segment: Segment) -> bool:
    """Say whether a text only says the number of pieces of a title again ("32 pieces ... $3.98")."""
    stated, again = stated_pieces(title.text), stated_pieces(segment.text)
    return again is not None and stated is not None and again[0] == stated[0] and bool(_NUMBER_ONLY.match(segment.text))


def _with_list(advert: AdvertText, segments: list[Segment], title: Segment, listing: Listing) -> list[Segment]:
    """Return the segments with the title stretched to the end of its list, and what stood between left out."""
    within = [s for s in segments if title.start <= s.start < listing.end]
    again = next((s for s in segments if s.start >= listing.end and _says_again(title, s)), None)
    if again is not None and again.first_line <= advert.line_at(listing.end - 1).number + 1:
        within.append(again)
    end = max([listing.end, *(s.end for s in within)])
    last = advert.line_at(end - 1)
    box, flat = title.box, title.flat
    for number in range(advert.line_at(listing.start).number, last.number + 1):
        line = advert.lines[number]
        part = advert.box_of(max(line.start, listing.start), min(line.end, end))
        box, flat = box.joined(part), flat.joined(advert.flat(part))
    foot = advert.flat(advert.box_of(max(last.start, listing.start), min(last.end, end)))
    whole = replace(title, end=end, box=box, flat=flat, last=foot, last_line=last.number, title=title.last)
    return [whole if s.start == title.start else s for s in segments if s.start == title.start or s not in within]

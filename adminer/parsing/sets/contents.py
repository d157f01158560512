"""What an offer is: one piece or a set, how many pieces, and what the set consists of."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

from adminer.names.pieces import Vocabulary
from adminer.parsing.prices.prices import Found
from adminer.parsing.segments.items import Segment
from adminer.parsing.sets.composition import (
    as_listed,
    compose,
    fill_counts,
    list_pieces,
    service_for,
    set_of,
    stated_pieces,
)
from adminer.parsing.sets.listings import Listing, NamedPiece
from adminer.parsing.sets.sets import SETTING, states_set
from adminer.parsing.text.text import AdvertText
from adminer.records import Composition

_STACK: Final = 2  # texts above and below an item that may say more of it
_SERVES: Final = re.compile(r"\b(?:sets?|service|serves|settings?|dinnerware|china|tableware)\b", re.IGNORECASE)
_WORDS: Final = re.compile(r"[A-Za-z]{3}|\n")
_UNDER: Final = 2.5  # line heights under an offer within which a list tells of it
_FEWEST: Final = 3  # two are a pair
_GROUP: Final = "group"


@dataclass(frozen=True, slots=True)
class What:
    """Hold what an offer is: its composition, piece or set, number of pieces, and how many are in a "set of"."""

    composition: Composition | None = None
    piece_or_set: str | None = None
    pieces: int | None = None
    quantity: int | None = None


def stack_of(advert: AdvertText, segment: Segment, segments: list[Segment], taken: frozenset[int]) -> list[Segment]:
    """Return a segment with the texts right above and below it in its column that name no other offer."""
    stack = [segment]
    for step in (-1, 1):
        at = segment
        for _ in range(_STACK):
            near = [s for s in segments if s.start not in taken and s not in stack and is_next(advert, at, s, step)]
            if not near:
                break
            found = min(near, key=lambda s: abs(s.flat.centre[1] - at.flat.centre[1]))
            low, high = sorted((at.flat.centre[1], found.flat.centre[1]))
            if any(s.start in taken and s is not segment and low < s.flat.centre[1] < high for s in segments):
                break
            at = found
            stack.append(at)
    return sorted(stack, key=lambda s: (s.flat.y, s.flat.x))


def is_next(advert: AdvertText, one: Segment, other: Segment, step: int) -> bool:
    """Say whether another text stands right under (step 1) or over (step -1) a text in its column."""
    upper, lower = (one, other) if step > 0 else (other, one)
    # boxes of sloping or curved type are too high, so the gap is measured between middles
    step_px = lower.first.centre[1] - upper.last.centre[1]
    gap = step_px - 0.75 * (min(upper.type_px, upper.last.h) + min(lower.type_px, lower.first.h))
    across = one.flat.across(other.flat)
    size = max(min(one.type_px, other.type_px), advert.body_px)
    return step_px > 0.3 * size and gap < 1.5 * size and across > 0


def sets_under(
    advert: AdvertText, prices: Sequence[Found], segments: Sequence[Segment], taken: frozenset[int]
) -> list[Segment]:
    """Return the texts right under the prices of an offer that state a set ("$8.50", "20-pc. set for four")."""
    found = []
    for price in prices:
        for segment in segments:
            gap = segment.first.y - price.place.bottom
            across = segment.flat.across(price.place)
            near = across > 0 and -0.5 * segment.type_px < gap < 1.5 * advert.body_px
            if near and segment.start not in taken and segment not in found and states_set(segment.text):
                found.append(segment)
    return found


def set_in(stack: list[Segment]) -> Segment | None:
    """Return the text of a stack that states a set, where one does."""
    stating = [s for s in stack if stated_pieces(s.text) or SETTING.search(s.text)]
    return max(stating, key=lambda s: (s.type_px, -s.start)) if stating else None


def listing_for(
    advert: AdvertText, segment: Segment, stack: Sequence[Segment], listings: Sequence[Listing]
) -> Listing | None:
    """Return the list of pieces that tells what an item consists of: in its own words, or under it."""
    own = [x for x in listings if segment.start <= x.start and x.end <= segment.end + 1]
    below = [s for s in stack if s is not segment and s.flat.centre[1] > segment.flat.centre[1]]
    under = [x for x in listings if any(s.start <= x.start and x.end <= s.end + 1 for s in below)]
    lists = [x for x in own if len(x.parts) > 1] or [x for x in under if len(x.parts) > 1] or own or under
    return max(lists, key=lambda x: (x.enumerates, len(x.parts), -x.start), default=None)


def listing_under(
    advert: AdvertText, segment: Segment, prices: Sequence[Found], listings: Sequence[Listing]
) -> Listing | None:
    """Return the list right after or under the price of a set ("45-piece set, $9.95: 8 dinner plates, 8 cups ...")."""
    if not states_set(segment.text):
        return None
    after = max(price.end for price in prices)
    place = segment.flat
    for price in prices:
        place = place.joined(price.place)
    for listing in listings:
        line = advert.line_at(listing.start)
        across = line.flat.across(place)
        gap = line.flat.y - place.bottom
        if after <= listing.start and not _WORDS.search(advert.text[after : listing.start]):
            return listing
        if listing.enumerates and across > 0 and -line.type_px < gap < _UNDER * advert.body_px:
            return listing
    return None


def what_of(
    vocabulary: Vocabulary, advert: AdvertText, segment: Segment | None, stack: Sequence[Segment],
    named: Sequence[NamedPiece], listing: Listing | None,
) -> What:  # fmt: skip
    """Read what an offer is from its item, the texts right above and below it, and the list of its pieces."""
    if segment is None:
        return What()
    text = advert.text[segment.start : segment.end].replace("\n", " ")
    around = " ; ".join(s.text for s in stack)
    stated = stated_pieces(text) or stated_pieces(around)
    count, of = stated[0] if stated else None, set_of(advert.text[segment.start : segment.end + len(" of")])
    served = service_for(text) or service_for(around)
    if not (count or _SERVES.search(f"{text} {around}")):
        served = None  # "brown teapots for six" tells a size
    inside = [n for n in named if segment.start <= n.start and n.end <= segment.end + 1]
    own = list_pieces(text, [(n.start - segment.start, n.end - segment.start, n.piece) for n in inside])
    first = own[0].piece if own else None
    parts = as_listed(listing.parts, text, vocabulary) if listing else []
    if len(parts) == 1:
        alone = parts[0].count * vocabulary.pieces[parts[0].piece].trade[0]
        called = first == parts[0].piece and not own[0].counted
        count = alone if count is None and (of or called) else count
        parts = parts if count == alone else []  # "2 fruits" are two of a piece, no set
    if count is None and of is not None and of >= _FEWEST and not parts and _is_single(vocabulary, first):
        count = of  # "tumblers, set of 8": as many of one kind
    setting = bool(SETTING.search(text))
    composition = None
    if count or served or parts:
        listed, note = fill_counts(parts, count, served, vocabulary)
        composition = compose(count, served, listed, vocabulary, count if setting and served else None)
        composition = replace(composition, likely=note) if note else composition
    if setting or stated or len(parts) > 1:
        piece = "place_setting" if setting else f"set:{count}" if count else "set"
        return What(composition, piece, count or (composition.listed_sum if composition else None), of)
    if first is None:
        return What(composition, None, of, of)
    if vocabulary.kind_of(first) == _GROUP:
        return What(composition, first, None, of)
    each = vocabulary.pieces[first].trade[0]
    return What(composition, first, count or each * (of or own[0].count), of)


def _is_single(vocabulary: Vocabulary, piece: str | None) -> bool:
    """Say whether a piece counts as one: a cup and saucer are two, an unknown thing is one."""
    return piece is None or (vocabulary.kind_of(piece) != _GROUP and vocabulary.pieces[piece].trade[0] == 1)

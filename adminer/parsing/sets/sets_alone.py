"""Sets and gifts an advert offers for no money: for books of stamps, free, for labels, or built piece by piece.

The page of a stamp book prices in books, a furniture store gives a dinner set away, a programme names the service the
pieces will make. Each is an offer of the advert without a price; a set said again elsewhere in it is the same one.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from adminer.names.pieces import Vocabulary
from adminer.names.spotting import Spotted
from adminer.parsing.segments.items import Segment
from adminer.parsing.sets.contents import What, is_next, listing_for, what_of
from adminer.parsing.sets.listings import Listing, NamedPiece
from adminer.parsing.text.naming import name_of
from adminer.parsing.text.text import AdvertText
from adminer.records import Box, ConditionText, Offer

WHY: Final = "for this no price in money was read"
_GIVEN_FOR: Final = frozenset({"stamps", "coupon", "free", "with_purchase", "punch_card"})
_TRUST: Final = 0.7  # common practice, no source
_INSIDE: Final = 0.6
_NEAR: Final = 1.5  # body types between a set and what it is given for
_WORDS_MOST: Final = 24  # words of a segment: a longer one is no title


def sets_without_price(
    vocabulary: Vocabulary,
    advert: AdvertText,
    advert_id: str,
    segments: Sequence[Segment],
    named: Sequence[NamedPiece],
    listings: Sequence[Listing],
    conditions: Sequence[ConditionText],
    priced: Sequence[Offer],
    lines: Sequence[Spotted],
    taken: frozenset[int],
) -> list[Offer]:
    """Return sets, each once, and pieces given free that stand in no priced offer, with what they are given for.

    `taken` are the first characters of the segments that name priced offers.
    """
    known = {o.composition.stated for o in priced if o.composition} - {None}
    found: list[Offer] = []
    for segment in segments:
        if len(segment.text.split()) > _WORDS_MOST or segment.start in taken:
            continue
        stack = [segment, *(s for s in segments if is_next(advert, segment, s, 1))]
        what = what_of(vocabulary, advert, segment, [segment], named, listing_for(advert, segment, stack, listings))
        stated = what.composition.stated if what.composition else None
        if stated in known or (stated is None and not _is_gift(what, segment, lines, conditions)):
            continue
        known |= {stated} - {None}
        box = segment.box
        for condition in conditions:
            if condition.kind in _GIVEN_FOR and _stands_with(advert, segment, condition.box):
                box = box.joined(condition.box)
        found.append(
            Offer(
                offer_id=f"{advert_id}-o{len(priced) + len(found) + 1}",
                advert_id=advert_id,
                item=name_of(segment.text),
                box=box,
                confidence=round(_TRUST * advert.confidence_of(segment.start, segment.end), 3),
                prices=(),
                piece_or_set=what.piece_or_set,
                pieces=what.pieces,
                composition=what.composition,
                why=WHY,
            )
        )
    return found


def _is_gift(what: What, segment: Segment, lines: Sequence[Spotted], conditions: Sequence[ConditionText]) -> bool:
    """Say whether a text names a piece or a line in the words that give it away: "FREE — a sherbet with each order"."""
    named = any(segment.start <= n.start and n.end <= segment.end for n in lines)
    return (what.piece_or_set is not None or named) and any(
        c.kind == "free" and c.box.overlap(segment.box) > _INSIDE * segment.box.area for c in conditions
    )


def _stands_with(advert: AdvertText, segment: Segment, condition: Box) -> bool:
    """Say whether a condition stands on the lines of a set, right over it or right under it."""
    place = advert.flat(condition)
    across = place.across(segment.flat)
    gap = max(place.y - segment.last.bottom, segment.first.y - place.bottom)
    return across > 0 and gap < _NEAR * advert.body_px

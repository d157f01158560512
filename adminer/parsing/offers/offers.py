"""Make offers of price groups and their items: piece or set, composition, line, maker, terms, and why."""

from __future__ import annotations

import re
from dataclasses import replace
from decimal import Decimal
from typing import Final

from spacy.tokens import Doc

from adminer.parsing.items.assign import Pairing
from adminer.parsing.items.descriptions import size_under
from adminer.parsing.items.entries import BEHIND, NOTICE, NUMBERED
from adminer.parsing.items.flow import BEFORE, HEADS
from adminer.parsing.items.headings import as_read, headed, said_again
from adminer.parsing.items.panels import is_cell, stands_left
from adminer.parsing.items.told import clause_after, clause_at_price, size_at_price
from adminer.parsing.offers.linking import line_for, maker_for
from adminer.parsing.prices.prices import Found
from adminer.parsing.segments.items import Segment
from adminer.parsing.sets.composition import stated_pieces
from adminer.parsing.sets.contents import (
    What,
    listing_for,
    listing_under,
    set_in,
    sets_under,
    stack_of,
    what_of,
)
from adminer.parsing.sets.listings import Listing, NamedPiece
from adminer.parsing.sets.sets import states_set
from adminer.parsing.sets.sets_alone import sets_without_price
from adminer.parsing.tables.price_lists import ON_ROW as ON_TABLE_ROW
from adminer.parsing.terms.pipeline import LINES, MAKERS, PIECES, Grammar, names_of
from adminer.parsing.text.item_words import WORD
from adminer.parsing.text.naming import first_clause, name_of
from adminer.parsing.text.notices import name_of_notice
from adminer.parsing.text.text import AdvertText
from adminer.records import Box, ConditionText, Offer, Price

_LIST_SEPARATOR: Final = re.compile(r"[a-z)] ?[,.;] ", re.IGNORECASE)
_OPEN_SUM: Final = 0.85  # how far a fact is trusted whose listed pieces do not add up to the stated number


def known_bonus(grammar: Grammar, doc: Doc, segment: Segment) -> float:
    """Return how much a segment's wording speaks for it as an item: pieces and lines of the vocabularies."""
    bonus = 0.0
    pieces = [
        span
        for span in doc.spans[PIECES]
        if span.start_char < segment.end and segment.start < span.end_char and span.text.lower() not in grammar.loose
    ]
    commas = len(_LIST_SEPARATOR.findall(segment.text)) if stated_pieces(segment.text) is None else 0
    if commas >= 3 or (pieces and commas >= 2):
        bonus -= 0.3  # a list of pieces tells what a set holds, not what it is called
    elif pieces or segment.goods:
        bonus += 0.35
    named = sum(
        min(n.end, segment.end) - max(n.start, segment.start)
        for n in names_of(doc, LINES)
        if n.start < segment.end and segment.start < n.end
    )
    if named > 0.7 * (segment.end - segment.start) and not pieces:
        bonus -= 0.4
    return bonus


def make_offers(
    grammar: Grammar,
    doc: Doc,
    advert: AdvertText,
    advert_id: str,
    groups: list[list[Found]],
    pairings: list[Pairing],
    conditions: list[ConditionText],
    segments: list[Segment],
    named: list[NamedPiece],
    listings: list[Listing],
    years: tuple[int | None, int | None] = (None, None),
) -> tuple[tuple[Offer, ...], tuple[ConditionText, ...]]:
    """Return the offers of an advert and the conditions that belong to the whole advert."""
    lines = names_of(doc, LINES)
    makers = names_of(doc, MAKERS)
    taken = frozenset(p.segment.start for p in pairings if p.segment)
    made: list[Offer] = []
    said: list[int] = []
    prices = [found for group in groups for found in group]
    for number, (group, pairing) in enumerate(zip(groups, pairings, strict=True), 1):
        offer_id = f"{advert_id}-o{number}"
        stack = stack_of(advert, pairing.segment, segments, taken) if pairing.segment else []
        item = pairing.segment if _is_open_stock(advert, group, pairing, prices) else set_in(stack) or pairing.segment
        listing = None
        if item is not None:
            listing = listing_for(advert, item, stack, listings) or listing_under(advert, item, group, listings)
        under = sets_under(advert, group, segments, taken)
        said += [s.start for s in (item, *under) if s is not None]
        what = what_of(grammar.authorities.pieces, advert, item, [*stack, *under], named, listing)
        telling = [advert.box_of(listing.start, listing.end)] if listing and _lists(what) else []
        telling += [s.box for s in under]
        size = ""
        if item is not None and pairing.heading is None and not item.bare:
            size = size_under(advert, item, group[0], segments, prices)
            size = size or size_at_price(item, group[0], segments, prices)
            size = size or (clause_at_price(item, group[0], segments) if pairing.why == HEADS else "")
        offer = _offer(advert, offer_id, advert_id, group, pairing, item, telling, what, segments, size, prices)
        made.append(replace(offer, item=said_again(offer.item, made[-1].item if made else "")))
    made += sets_without_price(
        grammar.authorities.pieces,
        advert,
        advert_id,
        segments,
        named,
        listings,
        conditions,
        made,
        lines,
        taken | frozenset(said),
    )
    linked = [
        replace(
            offer,
            line=line_for(grammar.authorities, advert, offer, lines, years),
            maker=maker_for(advert, offer, makers, grammar.authorities, lines),
        )
        for offer in made
    ]
    return _share_conditions(linked, conditions)


def _is_open_stock(advert: AdvertText, group: list[Found], pairing: Pairing, prices: list[Found]) -> bool:
    """Say whether a piece is named on the row of its price in a list: a set told of around it is not what it is."""
    segment = pairing.segment
    if pairing.why == ON_TABLE_ROW:
        return True
    if segment is None or not segment.goods or states_set(segment.text):
        return False
    return stands_left(segment.last, group[0].place) and is_cell(group[0], prices, advert.body_px)


def _name_of(pairing: Pairing, segment: Segment) -> str:
    """Return the short name in an item's text; of one at a number or behind its price never a part told of it."""
    if segment.whole:
        return segment.text
    if pairing.why == NOTICE and pairing.heading is None:
        return name_of_notice(segment.text)
    item, first = name_of(segment.text, last=pairing.why.endswith(BEFORE)), first_clause(segment.text)
    part = pairing.why in {NUMBERED, BEHIND} and " " in first and item.split(", ")[0] not in first
    return name_of(first) if part else item


def _lists(what: What) -> bool:
    return what.composition is not None and bool(what.composition.listed)


def _offer(
    advert: AdvertText,
    offer_id: str,
    advert_id: str,
    group: list[Found],
    pairing: Pairing,
    segment: Segment | None,
    telling: list[Box],
    what: What,
    segments: list[Segment],
    size: str,
    prices: list[Found],
) -> Offer:
    item = _name_of(pairing, segment) if segment else ""
    box = group[0].box
    for found in group[1:]:
        box = box.joined(found.box)
    if segment:
        box = box.joined(segment.box)
        item = " ".join(filter(None, (headed(advert, item, pairing, segment, segments, group[0].place), size)))
        if WORD.fullmatch(item):
            item = f"{item} {clause_after(segment, group[0], segments, prices)}".strip()
    for other in telling:
        box = box.joined(other)
    main = group[0]
    trust = max(0.2, 1 - 0.22 * max(pairing.cost, 0)) if segment else 0.2
    if what.composition is not None and what.composition.closes == "neither":
        trust *= _OPEN_SUM
    return Offer(
        offer_id=offer_id,
        advert_id=advert_id,
        item=item,
        box=box,
        confidence=round(trust * main.confidence, 3),
        prices=tuple(_price(found) for found in group),
        piece_or_set=what.piece_or_set,
        pieces=what.pieces,
        composition=what.composition,
        quantity=_quantity(what.quantity, main),
        unit=main.amount.unit,
        why=pairing.why + (as_read(advert, segment) if segment else ""),
    )


def _quantity(set_of_pieces: int | None, main: Found) -> Decimal | None:
    if set_of_pieces is not None:
        return Decimal(set_of_pieces)
    return main.amount.quantity if main.amount.quantity != 1 else None


def _price(found: Found) -> Price:
    amount = found.amount
    return Price(
        amount=amount.amount,
        currency=amount.currency,
        box=found.box,
        confidence=found.confidence,
        text=found.text,
        form=amount.form,
        per_quantity=amount.quantity,
        per_unit=amount.unit,
        condition=found.condition,
        condition_text=found.condition_text,
        role=found.role,
    )


def _share_conditions(
    offers: list[Offer], conditions: list[ConditionText]
) -> tuple[tuple[Offer, ...], tuple[ConditionText, ...]]:
    """Give a condition that stands inside an offer's box to the offer; the others belong to the advert."""
    kept: list[ConditionText] = []
    own: dict[str, list[ConditionText]] = {}
    for condition in conditions:
        holders = [o for o in offers if o.box.overlap(condition.box) > 0.5 * condition.box.area]
        if len(holders) == 1:
            own.setdefault(holders[0].offer_id, []).append(condition)
        else:
            kept.append(condition)
    return tuple(replace(o, conditions=tuple(own.get(o.offer_id, ()))) for o in offers), tuple(kept)

"""Make offers of price groups and their items: piece or set, composition, line, maker, terms, and why."""

from __future__ import annotations

import re
from dataclasses import replace
from decimal import Decimal
from typing import Final

from spacy.tokens import Doc

from adminer.names.authority import Authorities
from adminer.names.matching import date_warning
from adminer.names.spotting import Spotted
from adminer.parsing.assign import Pairing
from adminer.parsing.composition import stated_pieces
from adminer.parsing.contents import (
    What,
    is_next,
    listing_for,
    listing_under,
    set_in,
    sets_under,
    stack_of,
    what_of,
)
from adminer.parsing.goods import find_nouns, praise, trade_words
from adminer.parsing.items import Segment, clean_item
from adminer.parsing.listings import TABLEWARE, Listing, NamedPiece
from adminer.parsing.naming import name_of
from adminer.parsing.pipeline import LINES, MAKERS, PIECES, Grammar, names_of
from adminer.parsing.prices import Found
from adminer.parsing.slips import mended
from adminer.parsing.text import AdvertText
from adminer.records import Box, ConditionText, Link, Offer, Price

_TABLE_KINDS: Final = frozenset({"dinnerware", "serving", "glass", "flatware", "group"})
_LIST_SEPARATOR: Final = re.compile(r"[a-z)] ?[,.;] ", re.IGNORECASE)
_OPEN_SUM: Final = 0.85  # how far a fact is trusted whose listed pieces do not add up to the stated number
_HEADING_WORDS: Final = 4


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
    for number, (group, pairing) in enumerate(zip(groups, pairings, strict=True), 1):
        offer_id = f"{advert_id}-o{number}"
        stack = stack_of(advert, pairing.segment, segments, taken) if pairing.segment else []
        item = set_in(stack) or pairing.segment
        listing = None
        if item is not None:
            listing = listing_for(advert, item, stack, listings) or listing_under(advert, item, group, listings)
        under = sets_under(advert, group, segments, taken)
        what = what_of(grammar.authorities.pieces, advert, item, [*stack, *under], named, listing)
        telling = [advert.box_of(listing.start, listing.end)] if listing and _lists(what) else []
        telling += [s.box for s in under]
        made.append(_offer(advert, offer_id, advert_id, group, pairing, item, telling, what, segments))
    linked = [
        replace(
            offer,
            line=_line_for(grammar.authorities, advert, offer, lines, years),
            maker=_maker_for(advert, offer, makers, grammar.authorities, lines),
        )
        for offer in made
    ]
    return _share_conditions(linked, conditions)


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
) -> Offer:
    item = name_of(segment.text, last="right before" in pairing.why) if segment else ""
    box = group[0].box
    for found in group[1:]:
        box = box.joined(found.box)
    if segment:
        box = box.joined(segment.box)
        if (segment.bare and (heading := _heading_of(advert, segment, segments)) is not None) or (
            heading := _qualified_by(advert, segment, segments)
        ) is not None:
            item = f"{name_of(heading.text)} {item}"
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
        why=pairing.why + (_as_read(advert, segment) if segment else ""),
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


def _heading_of(advert: AdvertText, segment: Segment, segments: list[Segment]) -> Segment | None:
    """Return the nearest larger text above a segment that has only figures ("9 x 12 ft.")."""
    best: tuple[float, Segment] | None = None
    for other in segments:
        if other.bare or other.content == 0 or other.flat.centre[1] >= segment.flat.y:
            continue
        across = min(other.flat.right, segment.flat.right) - max(other.flat.x, segment.flat.x)
        gap = max(segment.flat.y - other.flat.bottom, 0) / advert.body_px
        if across <= 0 or (gap > 2 and other.type_px < 0.95 * segment.type_px):
            continue
        distance = gap - (2 * min(other.type_px / advert.body_px, 3) if gap > 2 else 8)
        if best is None or distance < best[0]:
            best = (distance, other)
    return best[1] if best else None


def _as_read(advert: AdvertText, segment: Segment) -> str:
    """Return what the reader made of an item whose words were mended, empty where none was."""
    read = clean_item(advert.text[segment.start : segment.end])
    words = list(zip(read.split(), segment.text.split(), strict=False))
    if read == segment.text or not all(was == now or mended(was) == now for was, now in words):
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
            words = other.text.lower().split()
            larger = other.type_px > 1.15 * segment.type_px
            tells = (
                larger
                and len(words) <= _HEADING_WORDS
                and all(word in trade_words() or word in praise() for word in words)
            )
            return other if tells and is_next(advert, other, segment, 1) else None
    return None


def _line_for(
    authorities: Authorities,
    advert: AdvertText,
    offer: Offer,
    lines: list[Spotted],
    years: tuple[int | None, int | None],
) -> Link | None:
    """Return the line of an offer: named in its item, else the nearest name above, else the only one of the advert."""
    if not lines:
        return None
    inside = [n for n in lines if advert.box_of(n.start, n.end).overlap(offer.box) > 0 and n.text in offer.item]
    if inside:
        return _link(authorities, advert, inside[0], years, "named in the item")
    tableware = _is_tableware(authorities, offer)
    if not tableware:
        return None
    entries = {n.match.entry_id or n.match.candidates for n in lines}
    if len(entries) == 1:
        biggest = max(lines, key=lambda n: advert.type_px_of(n.start, n.end))
        return _link(authorities, advert, biggest, years, "the only line named in the advert")
    nearest = min(lines, key=lambda n: _above_distance(advert.box_of(n.start, n.end), offer.box, advert.body_px))
    if _above_distance(advert.box_of(nearest.start, nearest.end), offer.box, advert.body_px) < 40:
        return _link(authorities, advert, nearest, years, "the nearest line named")
    return None


def speaks_of_tableware(doc: Doc) -> bool:
    """Say whether an advert has tableware at all: a piece of it, or a word like "dinnerware"."""
    return any(len(span) > 1 or span.label_ == "saucer" for span in doc.spans[PIECES]) or bool(
        TABLEWARE.search(doc.text)
    )


def _is_tableware(authorities: Authorities, offer: Offer) -> bool:
    if offer.piece_or_set is None:
        return bool(TABLEWARE.search(offer.item))
    piece = authorities.pieces.pieces.get(offer.piece_or_set)
    return piece is None or piece.kind in _TABLE_KINDS


def _above_distance(name: Box, offer: Box, body: float) -> float:
    dy = offer.y - name.y
    dx = max(name.x - offer.right, offer.x - name.right, 0)
    return (dy if dy >= 0 else 3 * -dy) / body + dx / body


def _link(
    authorities: Authorities,
    advert: AdvertText,
    spotted: Spotted,
    years: tuple[int | None, int | None],
    where: str,
) -> Link:
    match = spotted.match
    entry = next((line for line in authorities.lines if line.id == match.entry_id), None)
    warning = date_warning(entry, match.spelling, *years) if entry else None
    return Link(
        entry_id=match.entry_id,
        name=match.name,
        text=spotted.text,
        box=advert.box_of(spotted.start, spotted.end),
        score=match.score,
        why=f"{where}; {match.why}",
        candidates=match.candidates,
        warning=warning,
    )


def _maker_for(
    advert: AdvertText, offer: Offer, makers: list[Spotted], authorities: Authorities, lines: list[Spotted]
) -> Link | None:
    """Return the maker printed in the advert; what the authority file says of the line is not printed here."""
    if offer.piece_or_set is None and not TABLEWARE.search(offer.item):
        return None
    known = [m for m in makers if m.match.entry_id]
    if not known:
        return None
    best = max(known, key=lambda m: m.match.score)
    return Link(
        best.match.entry_id,
        best.match.name,
        best.text,
        advert.box_of(best.start, best.end),
        best.match.score,
        best.match.why,
        best.match.candidates,
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

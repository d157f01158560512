"""Make offers of price groups and their items: piece or set, composition, line, maker, terms, and why."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from typing import Final

from spacy.tokens import Doc

from adminer.names.authority import Authorities
from adminer.names.matching import date_warning
from adminer.names.spotting import Spotted
from adminer.parsing.assign import Pairing
from adminer.parsing.composition import compose, list_pieces, service_for, set_of, stated_pieces
from adminer.parsing.house import House
from adminer.parsing.items import Segment, name_of
from adminer.parsing.pipeline import LINES, MAKERS, PIECES, Grammar, names_of
from adminer.parsing.prices import Found
from adminer.parsing.text import AdvertText
from adminer.records import Box, Composition, ConditionText, DateFact, Link, Offer, PieceCount, Price

_SETTING: Final = re.compile(r"place[- ]?setting|table setting", re.IGNORECASE)
_TABLEWARE: Final = re.compile(
    r"dinnerware|china|pottery|tableware|dishes|crockery|porcelain|earthenware|pattern|stoneware|glassware|silverplate|stainless|flatware|melamine|place setting|service for|pc\. ?set|piece set|open stock",
    re.IGNORECASE,
)
_TABLE_KINDS: Final = frozenset({"dinnerware", "serving", "glass", "flatware", "group"})
_HEADING_RATIO: Final = 1.15


def known_bonus(doc: Doc, advert: AdvertText, segment: Segment, house: House, dates: tuple[DateFact, ...]) -> float:
    """Return how much a segment's wording speaks for it: pieces and lines for, signature, address and date against."""
    bonus = 0.0
    if any(span.start_char < segment.end and segment.start < span.end_char for span in doc.spans[PIECES]):
        bonus += 0.35
    if any(n.start < segment.end and segment.start < n.end for n in names_of(doc, LINES)):
        bonus += 0.15
    if house.retailer is not None and house.retailer.box.overlap(segment.box) > 0.6 * segment.box.area:
        bonus -= 1.2
    if any(address in segment.text for address in house.addresses):
        bonus -= 1.5
    for fact in dates:
        if fact.box.overlap(segment.box) > 0.5 * segment.box.area:
            bonus -= 1.2
            break
    return bonus


@dataclass(frozen=True, slots=True)
class _Named:
    """Hold the pieces of a text that count: strict names, and loose ones only among tableware."""

    start: int
    end: int
    piece: str


def make_offers(
    grammar: Grammar,
    doc: Doc,
    advert: AdvertText,
    advert_id: str,
    groups: list[list[Found]],
    pairings: list[Pairing],
    conditions: list[ConditionText],
    segments: list[Segment],
    years: tuple[int | None, int | None] = (None, None),
) -> tuple[tuple[Offer, ...], tuple[ConditionText, ...]]:
    """Return the offers of an advert and the conditions that belong to the whole advert."""
    named = _pieces(doc, advert, grammar.authorities)
    lines = names_of(doc, LINES)
    makers = names_of(doc, MAKERS)
    made: list[Offer] = []
    for number, (group, pairing) in enumerate(zip(groups, pairings, strict=True), 1):
        offer_id = f"{advert_id}-o{number}"
        made.append(_offer(grammar.authorities, advert, offer_id, advert_id, group, pairing, named, segments))
    linked = [
        replace(
            offer,
            line=_line_for(grammar.authorities, advert, offer, lines, years),
            maker=_maker_for(advert, offer, makers, grammar.authorities, lines),
        )
        for offer in made
    ]
    return _share_conditions(linked, conditions)


def _pieces(doc: Doc, advert: AdvertText, authorities: Authorities) -> list[_Named]:
    """Return the piece names of the text, loose ones only where tableware is near."""
    spans = sorted(doc.spans[PIECES], key=lambda s: (-(s.end_char - s.start_char), s.start_char))
    kept: list[_Named] = []
    for span in spans:
        if any(span.start_char < k.end and k.start < span.end_char for k in kept):
            continue
        kept.append(_Named(span.start_char, span.end_char, span.label_))
    loose = {name for piece in authorities.pieces.pieces.values() for name in piece.loose}
    strict = [k for k in kept if doc.text[k.start : k.end].lower() not in loose]
    anchors = [(k.start, k.end) for k in strict] + [m.span() for m in _TABLEWARE.finditer(doc.text)]
    near = [k for k in kept if k in strict or any(a - 60 < k.end and k.start < b + 60 for a, b in anchors)]
    return sorted(near, key=lambda k: k.start)


def _offer(
    authorities: Authorities,
    advert: AdvertText,
    offer_id: str,
    advert_id: str,
    group: list[Found],
    pairing: Pairing,
    named: list[_Named],
    segments: list[Segment],
) -> Offer:
    segment = pairing.segment
    item = name_of(segment.text) if segment else ""
    box = group[0].box
    for found in group[1:]:
        box = box.joined(found.box)
    if segment:
        box = box.joined(segment.box)
        if segment.bare and (heading := _heading_of(advert, segment, segments)) is not None:
            item = f"{name_of(heading.text)} {item}"
    prices = tuple(_price(found, pairing) for found in group)
    inside = [n for n in named if segment and segment.start <= n.start and n.end <= segment.end + 1]
    composition, piece_or_set, pieces, quantity = _what(authorities, advert, segment, inside, named, group)
    main = group[0]
    trust = max(0.2, 1 - 0.22 * max(pairing.cost, 0)) if segment else 0.2
    return Offer(
        offer_id=offer_id,
        advert_id=advert_id,
        item=item,
        box=box,
        confidence=round(trust * main.confidence, 3),
        prices=prices,
        piece_or_set=piece_or_set,
        pieces=pieces,
        composition=composition,
        quantity=quantity if quantity is not None else (main.amount.quantity if main.amount.quantity != 1 else None),
        unit=main.amount.unit,
        why=pairing.why,
    )


def _price(found: Found, pairing: Pairing) -> Price:
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


def _what(
    authorities: Authorities,
    advert: AdvertText,
    segment: Segment | None,
    inside: list[_Named],
    named: list[_Named],
    group: list[Found],
) -> tuple[Composition | None, str | None, int | None, int | None]:
    """Return composition, piece or set, number of pieces and quantity of an offer."""
    if segment is None:
        return None, None, None, None
    text = advert.text[segment.start : segment.end].replace("\n", " ")
    stated = stated_pieces(text)
    served = service_for(text)
    of = set_of(text)
    listed = list_pieces(text, [(n.start - segment.start, n.end - segment.start, n.piece) for n in inside])
    kinds = {p.id: p.kind for p in authorities.pieces.pieces.values()}
    counted = [one for one in listed if kinds.get(one.piece) != "group"]
    is_list = len(counted) >= 2
    composition = None
    setting = stated[0] if stated and _SETTING.search(text) else None
    listing = tuple(PieceCount(one.piece, one.count, one.text) for one in counted) if is_list else ()
    if stated or served or listing:
        composition = compose(
            stated[0] if stated else None, served, listing, authorities.pieces, setting if served else None
        )
    piece: str | None = None
    if _SETTING.search(text):
        piece = "place_setting"
    elif stated and stated[0] >= 2:
        piece = f"set:{stated[0]}"
    elif listed:
        piece = listed[0].piece if not is_list else "set"
    pieces = stated[0] if stated else None
    quantity = of
    if pieces is None and listed and not is_list and kinds.get(listed[0].piece) != "group":
        unit = authorities.pieces.pieces[listed[0].piece].trade[0]
        pieces = unit * (of or listed[0].count)
    elif pieces is None and composition is not None and composition.listed_sum:
        pieces = composition.listed_sum
    return composition, piece, pieces, quantity


def _heading_of(advert: AdvertText, segment: Segment, segments: list[Segment]) -> Segment | None:
    """Return the nearest larger text above a segment that has only figures ("9 x 12 ft.")."""
    best: tuple[float, Segment] | None = None
    for other in segments:
        if other.bare or other.content == 0 or other.box.bottom > segment.box.y + segment.box.h:
            continue
        if other.type_px < 0.95 * segment.type_px:
            continue
        distance = segment.box.y - other.box.bottom - 6 * min(other.type_px, 3 * advert.body_px)
        if best is None or distance < best[0]:
            best = (distance, other)
    return best[1] if best else None


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


def _is_tableware(authorities: Authorities, offer: Offer) -> bool:
    if offer.piece_or_set is None:
        return bool(_TABLEWARE.search(offer.item))
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
    if offer.piece_or_set is None and not _TABLEWARE.search(offer.item):
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

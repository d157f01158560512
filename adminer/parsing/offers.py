"""Make offers of price groups and their items: piece or set, composition, line, maker, terms, and why."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from decimal import Decimal
from typing import Final

from spacy.tokens import Doc

from adminer.names.authority import Authorities
from adminer.names.matching import date_warning
from adminer.names.spotting import Spotted
from adminer.parsing.assign import Pairing
from adminer.parsing.composition import Listed, compose, list_pieces, service_for, set_of, stated_pieces
from adminer.parsing.items import Segment, name_of
from adminer.parsing.misread import misread_pieces
from adminer.parsing.pipeline import LINES, MAKERS, PIECES, Grammar, names_of
from adminer.parsing.prices import Found
from adminer.parsing.text import AdvertText
from adminer.records import Box, Composition, ConditionText, Link, Offer, PieceCount, Price

_SETTING: Final = re.compile(r"place[- ]?setting|table setting", re.IGNORECASE)
_TABLEWARE: Final = re.compile(
    r"dinnerware|china|pottery|tableware|dishes|crockery|porcelain|earthenware|pattern|stoneware|glassware|"
    r"silverplate|stainless|flatware|melamine|place setting|service for|pc\. ?set|piece set|open stock",
    re.IGNORECASE,
)
_TABLE_KINDS: Final = frozenset({"dinnerware", "serving", "glass", "flatware", "group"})
_LIST_SEPARATOR: Final = re.compile(r"[a-z)] ?[,.;] ", re.IGNORECASE)
_STACK: Final = 2  # texts above and below an item that may say more of it


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
    elif pieces:
        bonus += 0.35
    named = sum(
        min(n.end, segment.end) - max(n.start, segment.start)
        for n in names_of(doc, LINES)
        if n.start < segment.end and segment.start < n.end
    )
    if named > 0.7 * (segment.end - segment.start) and not pieces:
        bonus -= 0.4
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
    named = _pieces(doc, grammar)
    lines = names_of(doc, LINES)
    makers = names_of(doc, MAKERS)
    taken = frozenset(p.segment.start for p in pairings if p.segment)
    made: list[Offer] = []
    for number, (group, pairing) in enumerate(zip(groups, pairings, strict=True), 1):
        offer_id = f"{advert_id}-o{number}"
        made.append(_offer(grammar.authorities, advert, offer_id, advert_id, group, pairing, named, segments, taken))
    linked = [
        replace(
            offer,
            line=_line_for(grammar.authorities, advert, offer, lines, years),
            maker=_maker_for(advert, offer, makers, grammar.authorities, lines),
        )
        for offer in made
    ]
    return _share_conditions(linked, conditions)


def _pieces(doc: Doc, grammar: Grammar) -> list[_Named]:
    """Return the piece names of the text, loose ones only where tableware is near."""
    text = doc.text
    spans = sorted(doc.spans[PIECES], key=lambda s: (-(s.end_char - s.start_char), s.start_char))
    kept: list[_Named] = []
    for span in spans:
        if any(span.start_char < k.end and k.start < span.end_char for k in kept):
            continue
        kept.append(_Named(span.start_char, span.end_char, span.label_))
    strict = [k for k in kept if text[k.start : k.end].lower() not in grammar.loose]
    anchors = [(k.start, k.end) for k in strict] + [m.span() for m in _TABLEWARE.finditer(text)]
    near = [k for k in kept if k in strict or any(a - 60 < k.end and k.start < b + 60 for a, b in anchors)]
    for start, end, piece in misread_pieces(text, [(k.start, k.end) for k in near], grammar.piece_names):
        if any(a - 90 < end and start < b + 90 for a, b in anchors):
            near.append(_Named(start, end, piece))
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
    taken: frozenset[int],
) -> Offer:
    segment = pairing.segment
    stack = _stack_of(advert, segment, segments, taken) if segment else []
    segment = _set_in(stack) or segment
    item = name_of(segment.text) if segment else ""
    box = group[0].box
    for found in group[1:]:
        box = box.joined(found.box)
    if segment:
        box = box.joined(segment.box)
        if segment.bare and (heading := _heading_of(advert, segment, segments)) is not None:
            item = f"{name_of(heading.text)} {item}"
    what = _what(authorities, advert, segment, stack, named)
    if segment and what.composition is not None and what.composition.listed:
        for other in stack:
            if other.flat.centre[1] > segment.flat.centre[1]:
                box = box.joined(other.box)
    main = group[0]
    trust = max(0.2, 1 - 0.22 * max(pairing.cost, 0)) if segment else 0.2
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
        why=pairing.why,
    )


def _stack_of(advert: AdvertText, segment: Segment, segments: list[Segment], taken: frozenset[int]) -> list[Segment]:
    """Return a segment with the texts right above and below it in its column that name no other offer."""
    stack = [segment]
    for step in (-1, 1):
        at = segment
        for _ in range(_STACK):
            near = [s for s in segments if s.start not in taken and s not in stack and _is_next(advert, at, s, step)]
            if not near:
                break
            found = min(near, key=lambda s: abs(s.flat.centre[1] - at.flat.centre[1]))
            low, high = sorted((at.flat.centre[1], found.flat.centre[1]))
            if any(s.start in taken and s is not segment and low < s.flat.centre[1] < high for s in segments):
                break
            at = found
            stack.append(at)
    return sorted(stack, key=lambda s: (s.flat.y, s.flat.x))


def _is_next(advert: AdvertText, one: Segment, other: Segment, step: int) -> bool:
    upper, lower = (one, other) if step > 0 else (other, one)
    # boxes of sloping or curved type are too high, so the gap is measured between middles
    step_px = lower.first.centre[1] - upper.last.centre[1]
    gap = step_px - 0.75 * (min(upper.type_px, upper.last.h) + min(lower.type_px, lower.first.h))
    across = min(one.flat.right, other.flat.right) - max(one.flat.x, other.flat.x)
    size = max(min(one.type_px, other.type_px), advert.body_px)
    return step_px > 0.3 * size and gap < 1.5 * size and across > 0


def _set_in(stack: list[Segment]) -> Segment | None:
    """Return the text of a stack that states a set, where one does."""
    stating = [s for s in stack if stated_pieces(s.text) or _SETTING.search(s.text)]
    return max(stating, key=lambda s: (s.type_px, -s.start)) if stating else None


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


@dataclass(frozen=True, slots=True)
class _What:
    """Hold what an offer is: its composition, piece or set, number of pieces, and how many are in a "set of"."""

    composition: Composition | None = None
    piece_or_set: str | None = None
    pieces: int | None = None
    quantity: int | None = None


def _what(
    authorities: Authorities,
    advert: AdvertText,
    segment: Segment | None,
    stack: list[Segment],
    named: list[_Named],
) -> _What:
    """Read what an offer is from its item and the texts right above and below it."""
    if segment is None:
        return _What()
    text = advert.text[segment.start : segment.end].replace("\n", " ")
    around = " ; ".join(s.text for s in stack)
    stated, of = stated_pieces(text) or stated_pieces(around), set_of(text)
    served = service_for(text) or service_for(around)
    kinds = {p.id: p.kind for p in authorities.pieces.pieces.values()}
    own = _listed(advert, segment, named)
    below = [s for s in stack if s is segment or s.flat.centre[1] > segment.flat.centre[1]]  # a list follows its title
    parts = [x for s in below for x in _listed(advert, s, named) if kinds[x.piece] != "group"]
    listing = tuple(PieceCount(x.piece, x.count, x.text) for x in parts) if len(parts) > 1 else ()
    setting = bool(_SETTING.search(text))
    composition = None
    if stated or served or listing:
        composition = compose(
            stated[0] if stated else None,
            served,
            listing,
            authorities.pieces,
            stated[0] if stated and setting and served else None,
        )
    if setting or stated or listing:
        piece = "place_setting" if setting else f"set:{stated[0]}" if stated else "set"
        return _What(composition, piece, stated[0] if stated else composition.listed_sum if composition else None, of)
    if not own:
        return _What(composition, None, None, of)
    first = own[0]
    if kinds[first.piece] == "group":
        return _What(composition, first.piece, None, of)
    each = authorities.pieces.pieces[first.piece].trade[0]
    return _What(composition, first.piece, each * (of or first.count), of)


def _listed(advert: AdvertText, segment: Segment, named: list[_Named]) -> list[Listed]:
    text = advert.text[segment.start : segment.end].replace("\n", " ")
    inside = [n for n in named if segment.start <= n.start and n.end <= segment.end + 1]
    return list_pieces(text, [(n.start - segment.start, n.end - segment.start, n.piece) for n in inside])


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
        _TABLEWARE.search(doc.text)
    )


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

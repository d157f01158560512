"""Which line and which maker of the authority files an offer is linked to, and why."""

from __future__ import annotations

from typing import Final

from spacy.tokens import Doc

from adminer.names.authority import Authorities
from adminer.names.matching import date_warning
from adminer.names.spotting import Spotted
from adminer.parsing.sets.listings import TABLEWARE
from adminer.parsing.terms.pipeline import PIECES
from adminer.parsing.text.text import AdvertText
from adminer.records import Box, Link, Offer

_TABLE_KINDS: Final = frozenset({"dinnerware", "serving", "glass", "flatware", "group"})


def line_for(
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


def maker_for(
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

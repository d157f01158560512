"""A box a person drew: what can be read in it, as an offer to look over before it is added."""

from __future__ import annotations

from dataclasses import dataclass

from adminer.desk.desk import Desk
from adminer.records import Advert, Box, Offer


@dataclass(frozen=True, slots=True)
class Drawn:
    """Hold a drawn box with the words and the offer read in it."""

    box: Box
    words: str
    offer: Offer


def read_drawn(desk: Desk, clipping_id: str, box: Box) -> Drawn:
    """Read a region of a scan on the spot; the box in pixels of the scan. Raises ScanError."""
    read = desk.read_box(desk.pictures.pixels(clipping_id), box, clipping_id)
    offers = [offer for advert in read.adverts for offer in advert.offers]
    return Drawn(box, read.words, _merged(offers, read.adverts, box, read.words))


def rest_of(advert: Box, part: Box) -> Box:
    """Return the largest rectangle of an advert that is left beside a part split off."""
    left = Box(advert.x, advert.y, max(0, part.x - advert.x), advert.h)
    right = Box(part.right, advert.y, max(0, advert.right - part.right), advert.h)
    above = Box(advert.x, advert.y, advert.w, max(0, part.y - advert.y))
    below = Box(advert.x, part.bottom, advert.w, max(0, advert.bottom - part.bottom))
    return max((left, right, above, below), key=lambda box: box.area)


def _merged(offers: list[Offer], adverts: tuple[Advert, ...], box: Box, words: str) -> Offer:
    """Return the one offer a drawn box is about: the first read, with the prices of all; else its words alone."""
    prices = tuple(price for offer in offers for price in offer.prices)
    line = next((offer.line for offer in offers if offer.line), None)
    if not offers:
        return Offer("drawn", "drawn", words[:200], box, 1.0, prices, line=line)
    first = offers[0]
    item = ", ".join(dict.fromkeys(offer.item for offer in offers if offer.item))
    return Offer(
        "drawn", "drawn", item, box, 1.0, prices,
        piece_or_set=first.piece_or_set, pieces=first.pieces, line=line, maker=first.maker,
    )  # fmt: skip

"""What was found on one page, in the one shape that scoring compares, wherever it came from."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from adminer.records import Box, ConditionText, Offer, ParsedPage, Word
from adminer.store.transcript import transcript


@dataclass(frozen=True, slots=True)
class FoundPrice:
    """Hold one price as found; amount in the currency's main unit, box in pixels of the scan."""

    amount: Decimal
    currency: str
    box: Box
    confidence: float
    item: str
    text: str
    form: str
    condition: str = "everyone"
    role: str = "price"
    per_quantity: Decimal = Decimal(1)
    per_unit: str | None = None


@dataclass(frozen=True, slots=True)
class FoundText:
    """Hold a condition, a name or a date as found: its kind or identity, its printed words, its place."""

    kind: str
    text: str
    box: Box
    value: str | None = None
    earliest: date | None = None
    latest: date | None = None


@dataclass(frozen=True, slots=True)
class FoundSet:
    """Hold one set as found: the stated number of pieces and the listed pieces with their counts."""

    stated: int | None
    listed: tuple[tuple[str, int], ...]
    text: str
    box: Box


@dataclass(frozen=True, slots=True)
class FoundAdvert:
    """Hold one advert as found; dates are bounds of its validity."""

    box: Box
    retailer: str | None = None
    city: str | None = None
    valid_from: date | None = None
    valid_to: date | None = None


@dataclass(frozen=True, slots=True)
class FoundPage:
    """Hold everything found on one page of one scan."""

    file: str
    leaf: int
    text: str  # in reading order, text lines separated by newlines
    prices: tuple[FoundPrice, ...] = ()
    adverts: tuple[FoundAdvert, ...] = ()
    conditions: tuple[FoundText, ...] = ()
    lines: tuple[FoundText, ...] = ()
    sets: tuple[FoundSet, ...] = ()
    dates: tuple[FoundText, ...] = ()
    words: tuple[tuple[str, Box], ...] = ()


def page_text(words: tuple[Word, ...]) -> str:
    """Join words in reading order; a new text line of the page starts a new line."""
    parts: list[str] = []
    for before, word in zip((None, *words), words, strict=False):
        if before is not None:
            parts.append(" " if before.line == word.line else "\n")
        parts.append(word.text)
    return "".join(parts)


def _sets(offer: Offer) -> FoundSet | None:
    made = offer.composition
    stated = made.stated if made else None
    listed = tuple((piece.piece, piece.count) for piece in made.listed) if made else ()
    return FoundSet(stated, listed, offer.item, offer.box) if stated is not None or listed else None


def found_in_parsed(page: ParsedPage) -> FoundPage:
    """Turn a parsed page into what scoring compares."""
    town = next((note.city for note in page.clipping.notes if note.city), None)
    offers = [offer for advert in page.adverts for offer in advert.offers if offer.status != "rejected"]
    adverts = tuple(
        FoundAdvert(a.box, a.retailer.name if a.retailer else None, a.city or town, a.valid_from, a.valid_to)
        for a in page.adverts
    )
    prices = tuple(
        FoundPrice(
            amount=p.amount,
            currency=p.currency,
            box=p.box,
            confidence=p.confidence,
            item=o.item,
            text=p.text,
            form=p.form,
            condition=p.condition,
            role=p.role,
            per_quantity=p.per_quantity,
            per_unit=p.per_unit,
        )
        for o in offers
        for p in o.prices
    )
    conditions = tuple(
        FoundText(c.kind, c.text, c.box, c.value) for a in page.adverts for c in (*a.conditions, *_of_offers(a.offers))
    ) + tuple(FoundText(p.condition, p.condition_text, p.box) for o in offers for p in o.prices if p.condition_text)
    return FoundPage(
        file=page.clipping.file,
        leaf=page.clipping.leaf,
        text=page_text(tuple(word for _, word in transcript(page.reading.words))),
        prices=prices,
        adverts=adverts,
        conditions=conditions,
        lines=tuple(FoundText(o.line.entry_id or "", o.line.name, o.line.box) for o in offers if o.line),
        sets=tuple(found for offer in offers if (found := _sets(offer))),
        dates=tuple(
            FoundText(d.kind, d.text, d.box, d.edtf, d.earliest, d.latest) for a in page.adverts for d in a.dates
        ),
        words=tuple((word.text, word.box) for word in page.reading.words),
    )


def _of_offers(offers: tuple[Offer, ...]) -> tuple[ConditionText, ...]:
    return tuple(condition for offer in offers for condition in offer.conditions)

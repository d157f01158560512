"""One parsed page to rows of the promised tables; names of keys are the columns of schema.sql."""

from __future__ import annotations

import re
from collections.abc import Iterable
from datetime import date
from decimal import ROUND_HALF_UP, Decimal
from typing import Any, Final

from adminer.dating.edtf import bounds_of
from adminer.errors import FolderError
from adminer.records import Advert, Box, Clipping, ConditionText, Note, Offer, ParsedPage, Price
from adminer.store.transcript import transcript

Row = dict[str, Any]
Rows = dict[str, list[Row]]

_CENT: Final = Decimal("0.01")
_NOTE_FIELDS: Final = ("publication", "published", "city", "state", "page", "found_in", "rights", "remark", "continues")
_WORD_GAPS: Final = re.compile(r"\s+")


def page_rows(page: ParsedPage) -> Rows:
    """Turn one page into the rows of all tables that one page fills."""
    rows: Rows = {"clippings": [_clipping_row(page.clipping)], "notes": list(_note_rows(page.clipping))}
    rows["words"] = [
        {
            "clipping_id": page.clipping.clipping_id,
            "advert_id": page.word_adverts[number] if number < len(page.word_adverts) else None,
            "word_no": number + 1,
            "text": word.text,
            **_box(word.box),
            "type_px": word.type_px,
            "confidence": word.confidence,
            "reader": word.reader,
            "line_no": word.line,
            "block_no": word.block,
        }
        for number, word in transcript(page.reading.words)
    ]
    for advert in page.adverts:
        for table, found in _advert_rows(advert).items():
            rows.setdefault(table, []).extend(found)
    return rows


def first_note_values(notes: Iterable[Note]) -> dict[str, str]:
    """Return for each column the first value that any note of the picture gives."""
    values: dict[str, str] = {}
    for note in notes:
        for name in _NOTE_FIELDS:
            value = getattr(note, name)
            if value is not None:
                values.setdefault(name, value)
    return values


def published_bounds(published: str | None) -> tuple[date | None, date | None]:
    """Return first and last day of a published date in EDTF; nothing where it is none."""
    if not published:
        return None, None
    try:
        bounds = bounds_of(published)
    except FolderError:
        return None, None
    return bounds.earliest, bounds.latest


def _clipping_row(clipping: Clipping) -> Row:
    values = first_note_values(clipping.notes)
    earliest, latest = published_bounds(values.get("published"))
    return {
        "clipping_id": clipping.clipping_id,
        "file": clipping.file,
        "leaf": clipping.leaf,
        "sha256": clipping.sha256,
        "width": clipping.width,
        "height": clipping.height,
        "kind": clipping.kind,
        "published_from": earliest,
        "published_to": latest,
        **{name: values.get(name) for name in _NOTE_FIELDS},
    }


def _note_rows(clipping: Clipping) -> Iterable[Row]:
    for number, note in enumerate(clipping.notes, 1):
        values = {name: getattr(note, name) for name in _NOTE_FIELDS if name != "continues"}
        yield {"clipping_id": clipping.clipping_id, "note_no": number, "file": note.file, **values}


def _advert_rows(advert: Advert) -> Rows:
    retailer = advert.retailer
    rows: Rows = {
        "adverts": [
            {
                "advert_id": advert.advert_id,
                "clipping_id": advert.clipping_id,
                **_box(advert.box),
                "retailer_id": retailer.entry_id if retailer else None,
                "retailer": retailer.name if retailer else None,
                "city": advert.city,
                "valid_from": advert.valid_from,
                "valid_to": advert.valid_to,
                "dated_by": advert.dated_by,
                "confidence": advert.confidence,
            }
        ],
        "conditions": [_condition_row(advert.advert_id, None, found) for found in advert.conditions],
        "schedules": [{"advert_id": advert.advert_id, "week": week, "piece": piece} for week, piece in advert.schedule],
        "proposed_names": [
            {
                "advert_id": advert.advert_id,
                "text": name.text,
                "kind": name.kind,
                **_box(name.box),
                "score": name.score,
                "why": name.why,
            }
            for name in advert.unknown_names
        ],
        "dates_read": [
            {
                "advert_id": advert.advert_id,
                "kind": found.kind,
                "text": found.text,
                "edtf": found.edtf,
                "earliest": found.earliest,
                "latest": found.latest,
                **_box(found.box),
                "confidence": found.confidence,
            }
            for found in advert.dates
        ],
        "offers": [],
        "prices": [],
        "set_pieces": [],
    }
    for offer in advert.offers:
        rows["offers"].append(_offer_row(offer))
        rows["prices"] += [_price_row(offer.offer_id, number, price) for number, price in enumerate(offer.prices, 1)]
        rows["conditions"] += [_condition_row(advert.advert_id, offer.offer_id, found) for found in offer.conditions]
        if offer.composition:
            rows["set_pieces"] += [
                {"offer_id": offer.offer_id, "piece": part.piece, "count": part.count, "text": part.text}
                for part in offer.composition.listed
            ]
    return rows


def _offer_row(offer: Offer) -> Row:
    sets, line, maker = offer.composition, offer.line, offer.maker
    return {
        "offer_id": offer.offer_id,
        "advert_id": offer.advert_id,
        "line_id": line.entry_id if line else None,
        "line": line.name if line else None,
        "maker": maker.name if maker else None,
        "maker_id": maker.entry_id if maker else None,
        "item": offer.item,
        "piece_or_set": offer.piece_or_set,
        "pieces": offer.pieces,
        "composition": ", ".join(f"{part.count} {part.text}" for part in sets.listed) or None if sets else None,
        "quantity": offer.quantity,
        "unit": offer.unit,
        **_box(offer.box),
        "confidence": offer.confidence,
        "status": offer.status,
        "line_text": line.text if line else None,
        "line_score": line.score if line else None,
        "line_why": line.why if line else None,
        "line_warning": line.warning if line else None,
        "why": offer.why,
        "pieces_stated": sets.stated if sets else None,
        "pieces_listed": sets.listed_sum if sets else None,
        "pieces_implied": sets.implied if sets else None,
        "service_for": sets.service_for if sets else None,
        "composition_check": (sets.likely or sets.closes) if sets else None,
    }


def _price_row(offer_id: str, number: int, price: Price) -> Row:
    return {
        "price_id": f"{offer_id}-p{number}",
        "offer_id": offer_id,
        # half a cent was charged as a whole one (common practice, no source); exact_amount keeps it
        "amount": price.amount.quantize(_CENT, ROUND_HALF_UP),
        "currency": price.currency,
        "per_quantity": price.per_quantity,
        "per_unit": price.per_unit,
        "condition": price.condition,
        "condition_text": _one_line(price.condition_text),
        **_box(price.box),
        "confidence": price.confidence,
        "form": price.form,
        "role": price.role,
        "text": price.text,
        "exact_amount": price.amount,
    }


def _condition_row(advert_id: str, offer_id: str | None, found: ConditionText) -> Row:
    return {
        "advert_id": advert_id,
        "offer_id": offer_id,
        "kind": found.kind,
        "text": _one_line(found.text),
        "value": found.value,
        **_box(found.box),
        "confidence": found.confidence,
    }


def _one_line(text: str | None) -> str | None:
    return _WORD_GAPS.sub(" ", text).strip() if text else text


def _box(box: Box) -> Row:
    return {"x": box.x, "y": box.y, "w": box.w, "h": box.h}

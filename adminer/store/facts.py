"""Turn offers and adverts into plain JSON fields and back: what the journal keeps and the desk shows."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from datetime import date
from decimal import Decimal
from typing import Any, cast

from adminer.records import Advert, Box, Condition, ConditionText, Link, Offer, OfferStatus, Price, PriceForm, PriceRole

Fields = dict[str, Any]


def box_list(box: Box) -> list[int]:
    """Return a box as [x, y, w, h]."""
    return [box.x, box.y, box.w, box.h]


def box_of(value: Any) -> Box:
    """Return the box of [x, y, w, h]."""
    x, y, w, h = (int(v) for v in value)
    return Box(x, y, w, h)


def offer_fields(offer: Offer) -> Fields:
    """Return the fields of an offer that a person can confirm or correct, as JSON values."""
    return {
        "item": offer.item,
        "piece_or_set": offer.piece_or_set,
        "pieces": offer.pieces,
        "line": _link_fields(offer.line),
        "maker": _link_fields(offer.maker),
        "prices": [price_fields(price) for price in offer.prices],
        "conditions": [
            {"kind": c.kind, "text": c.text, "value": c.value, "box": box_list(c.box)} for c in offer.conditions
        ],
        "box": box_list(offer.box),
    }


def price_fields(price: Price) -> Fields:
    """Return a price as JSON values; amounts as strings, so that no float comes between."""
    return {
        "amount": str(price.amount),
        "currency": price.currency,
        "per_quantity": str(price.per_quantity),
        "per_unit": price.per_unit,
        "condition": price.condition,
        "condition_text": price.condition_text,
        "role": price.role,
        "form": price.form,
        "text": price.text,
        "box": box_list(price.box),
    }


def price_of(fields: Mapping[str, Any]) -> Price:
    """Return the price of its fields; a person's price is certain."""
    return Price(
        amount=Decimal(fields["amount"]),
        currency=fields["currency"],
        box=box_of(fields["box"]),
        confidence=1.0,
        text=fields["text"],
        form=cast(PriceForm, fields["form"]),
        per_quantity=Decimal(fields["per_quantity"]),
        per_unit=fields["per_unit"],
        condition=cast(Condition, fields["condition"]),
        condition_text=fields["condition_text"],
        role=cast(PriceRole, fields["role"]),
    )


def patch_offer(offer: Offer, new: Mapping[str, Any], status: OfferStatus) -> Offer:
    """Return the offer with a person's fields in place of the read ones; fields not named stay."""
    box = box_of(new["box"]) if "box" in new else offer.box
    changed = replace(offer, status=status, confidence=1.0 if status != "rejected" else offer.confidence, box=box)
    if "item" in new:
        changed = replace(changed, item=new["item"])
    if "piece_or_set" in new:
        changed = replace(changed, piece_or_set=new["piece_or_set"])
    if "pieces" in new:
        changed = replace(changed, pieces=new["pieces"])
    if "line" in new:
        changed = replace(changed, line=_link_of(new["line"], box))
    if "maker" in new:
        changed = replace(changed, maker=_link_of(new["maker"], box))
    if "prices" in new:
        changed = replace(changed, prices=tuple(price_of(p) for p in new["prices"]))
    if "conditions" in new:
        changed = replace(
            changed,
            conditions=tuple(
                ConditionText(c["kind"], c["text"], box_of(c["box"]), 1.0, c["value"]) for c in new["conditions"]
            ),
        )
    return changed


def offer_of(offer_id: str, advert_id: str, fields: Mapping[str, Any], status: OfferStatus) -> Offer:
    """Return an offer that only the journal knows: drawn by a person, or no longer found by the reading."""
    empty = Offer(offer_id, advert_id, fields.get("item", ""), box_of(fields["box"]), 1.0, (), why="a person's word")
    return patch_offer(empty, fields, status)


def advert_fields(advert: Advert) -> Fields:
    """Return the fields of an advert that a person can confirm or correct, as JSON values."""
    return {
        "retailer": _link_fields(advert.retailer),
        "city": advert.city,
        "valid_from": advert.valid_from.isoformat() if advert.valid_from else None,
        "valid_to": advert.valid_to.isoformat() if advert.valid_to else None,
        "box": box_list(advert.box),
    }


def patch_advert(advert: Advert, new: Mapping[str, Any]) -> Advert:
    """Return the advert with a person's fields in place of the read ones; fields not named stay."""
    changed = replace(advert, box=box_of(new["box"])) if "box" in new else advert
    if "retailer" in new:
        changed = replace(changed, retailer=_link_of(new["retailer"], changed.box))
    if "city" in new:
        changed = replace(changed, city=new["city"])
    if "valid_from" in new or "valid_to" in new:
        valid_from = _date_of(new["valid_from"]) if "valid_from" in new else changed.valid_from
        valid_to = _date_of(new["valid_to"]) if "valid_to" in new else changed.valid_to
        changed = replace(changed, valid_from=valid_from, valid_to=valid_to)
        if (valid_from, valid_to) != (advert.valid_from, advert.valid_to):
            changed = replace(changed, dated_by="person" if valid_from or valid_to else None)
    return changed


def changed_fields(before: Mapping[str, Any], after: Mapping[str, Any]) -> tuple[Fields, Fields]:
    """Return the old and the new values of the fields that differ."""
    names = [name for name in after if before.get(name) != after[name]]
    return {name: before.get(name) for name in names}, {name: after[name] for name in names}


def shown(value: Any) -> str | None:
    """Return a field's value as a reader of the corrections table wants to see it."""
    if value is None or isinstance(value, str):
        return value
    if isinstance(value, Mapping):
        return str(value.get("name") or value.get("text") or "")
    if isinstance(value, list):
        return "; ".join(_shown_entry(v) for v in value)
    return str(value)


def _shown_entry(value: Any) -> str:
    if not isinstance(value, Mapping):
        return str(value)
    if "amount" not in value:
        return str(value.get("text", ""))
    each = f" for {value['per_quantity']}" if value["per_quantity"] != "1" else ""
    unit = f" {value['per_unit']}" if value["per_unit"] else ""
    return f"{value['amount']} {value['currency']}{each}{unit} {value['condition']}"


def _link_fields(link: Link | None) -> Fields | None:
    return {"id": link.entry_id, "name": link.name, "text": link.text, "box": box_list(link.box)} if link else None


def _link_of(fields: Mapping[str, Any] | None, fallback: Box) -> Link | None:
    if not fields:
        return None
    box = box_of(fields["box"]) if fields.get("box") else fallback
    return Link(fields.get("id"), fields["name"], fields.get("text") or fields["name"], box, 1.0, "a person's word")


def _date_of(value: str | None) -> date | None:
    return date.fromisoformat(value) if value else None

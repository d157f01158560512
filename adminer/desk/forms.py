"""What people type into the forms of the desk, as fields of the journal; a mistake is said in a sentence."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from datetime import date
from decimal import Decimal, InvalidOperation
from typing import Any, Final, get_args

from adminer.desk.sterling import CURRENCIES as STERLING
from adminer.desk.sterling import pounds_of
from adminer.desk.typed_dates import edtf_of
from adminer.records import Box, Condition, PriceRole
from adminer.store.facts import Fields, box_list

CONDITIONS: Final[tuple[str, ...]] = get_args(Condition)
ROLES: Final[tuple[str, ...]] = get_args(PriceRole)
CURRENCIES: Final = ("USD", "GBP", "EGP-piastre", "AUP")
MOST_TEXT: Final = 400  # characters of one field
_CENTS: Final = re.compile(r"^(\d{1,3})\s*(½|¼|¾|⅓|⅔)?\s*(?:¢|c|cts?\.?|cents?)$", re.IGNORECASE)
_DOLLARS: Final = re.compile(r"^\$?\s*(\d{1,7}(?:,\d{3})*)?(?:\.(\d{1,4}))?$")
_PARTS: Final = {"½": "0.5", "¼": "0.25", "¾": "0.75", "⅓": "0.3333", "⅔": "0.6667"}


class FormError(Exception):
    """Something typed into a form cannot be taken; the message names the field and what it takes."""


def amount_of(text: str) -> Decimal:
    """Return the dollars of what a person typed: 1.39, $1.39, 69¢, 12½¢, .69.

    Raises FormError.
    """
    typed = text.strip()
    cents = _CENTS.match(typed)
    if cents:
        return (Decimal(cents[1]) + Decimal(_PARTS.get(cents[2] or "", "0"))) / 100
    dollars = _DOLLARS.match(typed)
    if dollars and (dollars[1] or dollars[2]):
        return Decimal(f"{(dollars[1] or '0').replace(',', '')}.{dollars[2] or '00'}")
    raise FormError(f"“{typed}” is no price; write it as 1.39, 69¢ or 1s. 6d.")


def box_from(form: Mapping[str, Any]) -> Box:
    """Return the box of the fields x, y, w, h, in pixels of the scan.

    Raises FormError.
    """
    try:
        x, y, w, h = (round(float(str(form[name]))) for name in ("x", "y", "w", "h"))
    except (KeyError, ValueError, OverflowError) as error:
        raise FormError("a box needs four numbers: left, top, width, height") from error
    if w < 2 or h < 2 or min(x, y) < 0 or max(x, y, w, h) > 1_000_000:
        raise FormError("a box needs a width and a height and lies on the scan")
    return Box(x, y, w, h)


IdOf = Callable[[str], str | None]  # the id of the entry that goes by a name, made where there is none


def offer_from(
    form: Mapping[str, Any], box: Box, line_id_of: IdOf, maker_id_of: IdOf, seen: Fields | None = None
) -> Fields:
    """Return all fields of an offer from its form; prices keep the box they were read from where they have one.

    Raises FormError.
    """
    item = text_of(form, "item")
    if not item:
        raise FormError("say what was offered: the item is empty")
    line = text_of(form, "line")
    seen_line: Fields | None = (seen or {}).get("line")
    maker = text_of(form, "maker")
    seen_maker: Fields | None = (seen or {}).get("maker")
    # all that can be refused is refused before a name is learned
    pieces, prices = _count(form, "pieces"), _prices(form, box, (seen or {}).get("prices", []))
    return {
        "item": item,
        "piece_or_set": text_of(form, "piece_or_set") or None,
        "pieces": pieces,
        "line": _name(line, line_id_of, seen_line),
        # a maker read from the print that was left as it is was not looked at
        "maker": seen_maker if seen_maker and seen_maker["name"] == maker else _name(maker, maker_id_of, None),
        "prices": prices,
        "box": box_list(box),
    }


def advert_from(form: Mapping[str, Any], retailer_id_of: IdOf, seen: Fields) -> Fields:
    """Return the fields of an advert from its form.

    Raises FormError.
    """
    retailer = text_of(form, "retailer")
    first, last = _day(form, "valid_from"), _day(form, "valid_to")
    if first and last and last < first:
        raise FormError("the last day comes before the first")
    return {
        "retailer": _name(retailer, retailer_id_of, seen["retailer"]),
        "city": text_of(form, "city") or None,
        "valid_from": first,
        "valid_to": last,
    }


def text_of(form: Mapping[str, Any], name: str) -> str:
    """Return what was typed in a field, in one line.

    Raises FormError where it is longer than any fact is.
    """
    value = form.get(name, "")
    typed = " ".join(str(value).split()) if isinstance(value, str) else ""
    if len(typed) > MOST_TEXT:
        raise FormError(f"{name} is too long: {MOST_TEXT} characters at most")
    return typed


def known_name(seen: Fields | None, entry_id_of: IdOf) -> Fields | None:
    """Return a name a person has confirmed, with the id of its entry; where and how it was read stays."""
    if not seen or seen.get("id"):
        return seen
    return {**seen, "id": entry_id_of(seen["name"])}


def _name(typed: str, entry_id_of: IdOf, seen: Fields | None) -> Fields | None:
    """Return the named entry; what was not touched keeps where and how it was read."""
    if seen and seen["name"] == typed:
        return known_name(seen, entry_id_of)
    return {"id": entry_id_of(typed), "name": typed, "text": typed} if typed else None


def _prices(form: Mapping[str, Any], box: Box, seen: list[Fields]) -> list[Fields]:
    prices: list[Fields] = []
    for number in range(40):
        typed = text_of(form, f"amount_{number}")
        if not typed or form.get(f"drop_{number}"):
            continue
        before = seen[number] if number < len(seen) else {}
        currency = _one_of(form, f"currency_{number}", CURRENCIES, before.get("currency", "USD"))
        pounds = pounds_of(typed)
        if pounds is not None and currency not in STERLING:
            currency = "GBP"  # whoever types shillings means them
        amount = amount_of(typed) if pounds is None else pounds
        per_quantity = text_of(form, f"per_quantity_{number}") or "1"
        same = before and Decimal(before["amount"]) == amount
        prices.append(
            {
                "amount": before["amount"] if same else str(amount),
                "currency": currency,
                "per_quantity": _quantity(per_quantity, before.get("per_quantity")),
                "per_unit": text_of(form, f"per_unit_{number}") or None,
                "condition": _one_of(form, f"condition_{number}", CONDITIONS, "everyone"),
                "condition_text": text_of(form, f"condition_text_{number}") or None,
                "role": _one_of(form, f"role_{number}", ROLES, "price"),
                "form": before.get("form", "dollars_point"),
                "text": before["text"] if same else typed,
                "box": before.get("box", box_list(box)),
            }
        )
    return prices


def _quantity(typed: str, before: str | None) -> str:
    try:
        quantity = Decimal(typed)
    except InvalidOperation as error:
        raise FormError(f"“{typed}” is no number of pieces") from error
    if not quantity.is_finite() or not 0 < quantity < 10_000:
        raise FormError(f"“{typed}” is no number of pieces")
    return before if before is not None and Decimal(before) == quantity else typed


def _one_of(form: Mapping[str, Any], name: str, known: tuple[str, ...], otherwise: str) -> str:
    value = text_of(form, name) or otherwise
    if value not in known:
        raise FormError(f"{name}: choose one of {', '.join(known)}")
    return value


def _count(form: Mapping[str, Any], name: str) -> int | None:
    typed = text_of(form, name)
    if not typed:
        return None
    if not typed.isdecimal() or int(typed) > 999:
        raise FormError(f"“{typed}” is no number of pieces")
    return int(typed)


def _day(form: Mapping[str, Any], name: str) -> str | None:
    typed = text_of(form, name)
    if not typed:
        return None
    try:
        return date.fromisoformat(edtf_of(typed)).isoformat()
    except ValueError as error:
        raise FormError(f"“{typed}” is no day; write it as 1954-01-07") from error

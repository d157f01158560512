"""Pieces of copy that several page styles share: heads, rows with leaders, price blocks, signatures, terms."""

from __future__ import annotations

from collections.abc import Sequence
from html import escape

from .. import copyfit
from ..facts import AdvertSpec, Item, Tag
from ..sheet import Sheet

LEADERS = {"dots": ". " * 90, "dashes": "- " * 90, "none": ""}


def head(sheet: Sheet, text: str, size: float, cls: str = "h") -> str:
    """Set a head of a size in em; capitals where the look wants them."""
    if not text:
        return ""
    words = text.upper() if sheet.look.caps and cls == "h" else text
    return f'<div class="{cls}" style="font-size:{size}em">{sheet.text(words)}</div>'


def row(sheet: Sheet, item: Item, size: float = 1.0) -> str:
    """Set an item, leaders and its prices on one line."""
    look = sheet.look
    cells = "".join(f'<span class="pc">{unit_price(sheet, item, tag)}</span>' for tag in item.tags)
    if item.tags[0].role == "range_low":
        cells = f"<span>{' to '.join(unit_price(sheet, item, tag) for tag in item.tags)}</span>"
    prices = cells if len(item.tags) > 1 else f"<span>{unit_price(sheet, item, item.tags[0])}</span>"
    size_text = f' <span class="sz">{escape(item.size)}</span>' if item.size else ""
    return (
        f'<div class="row {look.leader}" style="font-size:{size}em"><span class="it">{sheet.item_text(item)}{size_text}</span>'
        f'<span class="ld">{LEADERS[look.leader]}</span>{prices}</div>'
    )


def rows(sheet: Sheet, items: Sequence[Item], size: float = 1.0) -> str:
    """Set rows, under the words of their price columns where they have several."""
    if not items:
        return ""
    heads = ""
    if any(tag.label for tag in items[0].tags) and len(items[0].tags) > 1:
        cells = "".join(f'<span class="pc hd">{sheet.label(tag)}</span>' for tag in items[0].tags)
        heads = f'<div class="row none" style="align-items:flex-end;line-height:1"><span class="it"></span><span class="ld"></span>{cells}</div>'
    return heads + "".join(row(sheet, item, size) for item in items)


def unit_words(tag: Tag) -> str:
    """Return the printed unit after a price."""
    words = {
        "each": "ea.",
        "lb": "lb.",
        "doz": "doz.",
        "pair": "pr.",
        "set": "set",
        "week": "a week",
        "month": "a month",
    }
    return words.get(tag.unit or "", "")


def unit_price(sheet: Sheet, item: Item, tag: Tag) -> str:
    """Set a small price with its unit."""
    unit = unit_words(tag)
    return sheet.price(tag, item, small=True) + (f' <span class="u">{unit}</span>' if unit else "")


def block(sheet: Sheet, item: Item, tag: Tag, size: float, *, above: str = "") -> str:
    """Set a large price with the words of its condition."""
    unit = unit_words(tag)
    small = f'<div class="fine">{unit}</div>' if unit else ""
    label = f"<div>{sheet.label(tag)}</div>" if tag.label else ""
    return (
        f'<div class="cell">{above}<div class="num big" style="font-size:{size}em">{sheet.price(tag, item)}</div>'
        f"{small}{label}</div>"
    )


def name(sheet: Sheet, spec: AdvertSpec, size: float, cls: str = "scr") -> str:
    """Set the name of the line the advert is about."""
    if not spec.line_text:
        return ""
    return f'<div class="{cls}" style="font-size:{size}em">{sheet.line(spec.line_text, spec.line)}</div>'


def terms(sheet: Sheet, spec: AdvertSpec) -> str:
    """Set the conditions of the advert in fine type."""
    return "".join(f'<div class="fine ctr">{sheet.term(term)}</div>' for term in spec.terms)


def copy(sheet: Sheet, spec: AdvertSpec, size: float = 1.0) -> str:
    """Set the paragraphs of selling copy; a house that sent none gets the standing copy of its trade."""
    paragraphs = spec.copy or copyfit.selling(spec)
    return "".join(f'<p class="copy" style="font-size:{size}em">{escape(text)}</p>' for text in paragraphs)


def signature(sheet: Sheet, spec: AdvertSpec, size: float) -> str:
    """Set the shop's logotype and its addresses."""
    lines = "".join(f'<div class="addr">{sheet.text(text)}</div>' for text in spec.addresses)
    slogan = f'<div class="fine ctr"><em>{escape(spec.slogan)}</em></div>' if spec.slogan else ""
    return f'<div class="sig"><div style="font-size:{size}em">{sheet.retailer(spec.retailer_text)}</div>{slogan}{lines}</div>'


def when(sheet: Sheet, spec: AdvertSpec, size: float = 1.0, *, expiry: bool = True) -> str:
    """Set the printed dates of the advert."""
    parts = []
    if spec.when:
        parts.append(f'<div class="kick" style="font-size:{size}em">{sheet.date(spec.when)}</div>')
    if spec.expiry and expiry:
        parts.append(f'<div class="fine ctr">{sheet.date(spec.expiry, "expiry")}</div>')
    return "".join(parts)


def schedule(sheet: Sheet, spec: AdvertSpec) -> str:
    """Set the printed schedule of weeks as a ruled table."""
    if not spec.schedule:
        return ""
    rows = "".join(f"<tr><td>{escape(week)}</td><td>{sheet.text(text)}</td></tr>" for week, _, text in spec.schedule)
    return f'<div class="dept" style="font-size:1.1em">{escape(spec.schedule_title)}</div><table class="ruled fine">{rows}</table>'

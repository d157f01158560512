"""Mail-order pages: numbered articles in running copy, price, shipping weight, postage and terms."""

from __future__ import annotations

from html import escape

from .. import pictures
from ..facts import AdvertSpec, Item
from ..sheet import Sheet
from . import parts


def _article(sheet: Sheet, item: Item) -> str:
    prices = []
    for tag in item.tags:
        words = f"{sheet.label(tag)} " if tag.label else ""
        unit = parts.unit_words(tag)
        prices.append(f"{words}{sheet.price(tag, item, small=True)}{' ' + unit if unit else ''}")
    name = f"{sheet.line(item.line_text, item.line)}. " if item.line_text else ""
    made_of = f" {sheet.set_words(item.composition, item)}." if item.composition else ""
    size = f" {escape(item.shipping)}." if item.shipping else ""
    number = f"<b>{escape(item.number)}</b>&mdash;" if item.number else ""
    return (
        f'<p class="copy"><b>{sheet.item_text(item)}.</b> {name}{escape(item.blurb)}{made_of}{size}<br>'
        f"{number}{'. '.join(prices)}</p>"
    )


def page(sheet: Sheet, spec: AdvertSpec, seed: int) -> str:
    """Set articles in columns between pictures, letterpress catalogue fashion."""
    shapes = ("wide", "setting", "plate", "glass", "cup", "row")
    flow = []
    for k, item in enumerate(spec.items):
        if k < 2 or (seed + k) % 3 == 0:
            picture = pictures.table(spec.motif, seed + k, shape=shapes[(seed + k) % len(shapes)])
            flow.append(f'<div style="width:{60 + 13 * ((seed + k) % 4)}%;margin:.3em auto">{picture}</div>')
        flow.append(f"<div>{_article(sheet, item)}</div>")
    across = 2 if sheet.measure < 75 else 3
    return (
        parts.head(sheet, spec.headline, 2.7)
        + (f'<div class="kick">{sheet.text(spec.kicker)}</div>' if spec.kicker else "")
        + parts.copy(sheet, spec)
        + f'<div class="flow" style="column-count:{across}">{"".join(flow)}</div>'
        + '<div class="rule2"></div>'
        + parts.when(sheet, spec)
        + parts.terms(sheet, spec)
        + parts.signature(sheet, spec, 2.2)
    )

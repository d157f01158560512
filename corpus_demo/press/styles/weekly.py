"""Adverts of a dinnerware programme: a piece of the week at two prices, in four layouts."""

from __future__ import annotations

from html import escape
from random import Random

from .. import pictures
from ..facts import AdvertSpec, Item
from ..sheet import Sheet
from . import parts


def _feature(sheet: Sheet, item: Item, size: float) -> str:
    """Set the feature with its prices side by side, the card's price largest."""
    lead, *others = item.tags
    blocks = parts.block(sheet, item, lead, size)
    blocks += "".join(parts.block(sheet, item, tag, size * 0.5) for tag in others)
    composition = f'<div class="fine ctr">{sheet.set_words(item.composition, item)}</div>' if item.composition else ""
    blurb = f'<div class="ctr fine">{escape(item.blurb)}</div>' if item.blurb else ""
    head = f'<div class="h2" style="font-size:1.9em">{sheet.item_text(item)}</div>'
    return f'{head}{composition}{blurb}<div class="two">{blocks}</div>'


def _maker(sheet: Sheet, spec: AdvertSpec) -> str:
    return f'<div class="kick">{sheet.text(spec.maker_text)}</div>' if spec.maker_text else ""


def tower(sheet: Sheet, spec: AdvertSpec, seed: int) -> str:
    """Set a single column: head, picture, feature panel, open stock in rows."""
    rng = Random(f"tower {seed}")
    feature, *rest = spec.items
    rows = parts.rows(sheet, rest)
    picture = pictures.table(spec.motif, seed, shape=rng.choice(("tall", "setting", "wide")))
    return (
        (f'<div class="kick">{sheet.text(spec.kicker)}</div>' if spec.kicker else "")
        + parts.head(sheet, spec.headline, rng.choice((2.6, 3.0, 3.3)))
        + parts.name(sheet, spec, 3.2)
        + _maker(sheet, spec)
        + f'<div style="margin:.4em auto;width:{rng.choice((78, 90, 100))}%">{picture}</div>'
        + parts.when(sheet, spec)
        + f'<div class="{sheet.look.panel}">{_feature(sheet, feature, rng.choice((6.2, 7.5, 11, 18)))}</div>'
        + parts.copy(sheet, spec)
        + (f'<div class="rule"></div>{rows}<div class="rule"></div>' if rows else "")
        + parts.schedule(sheet, spec)
        + parts.terms(sheet, spec)
        + parts.signature(sheet, spec, 2.9)
    )


def spread(sheet: Sheet, spec: AdvertSpec, seed: int) -> str:
    """Set a wide advert: reversed head, picture and copy side by side, a strip of prices below."""
    feature, *rest = spec.items
    strip = "".join(
        parts.block(sheet, item, item.tags[0], 3.4, above=f'<div class="lab">{sheet.item_text(item)}</div>')
        for item in rest[:4]
    )
    rows = parts.rows(sheet, rest[4:])
    left = pictures.table(spec.motif, seed, shape="wide") + parts.copy(sheet, spec) + parts.schedule(sheet, spec)
    right = (
        parts.name(sheet, spec, 3.6) + _maker(sheet, spec) + _feature(sheet, feature, 7.0) + parts.terms(sheet, spec)
    )
    head = f'<div class="rev">{parts.head(sheet, spec.headline, 3.6)}</div>'
    if seed % 2:
        left, right = right, left
    return (
        head
        + parts.when(sheet, spec, 1.25)
        + f'<div class="cols" style="align-items:center">{_div(left)}{_div(right)}</div>'
        + (f'<div class="rule2"></div><div class="cols vr">{strip}</div>' if strip else "")
        + rows
        + '<div class="rule"></div>'
        + parts.signature(sheet, spec, 3.4)
    )


def burst(sheet: Sheet, spec: AdvertSpec, seed: int) -> str:
    """Set the picture large with the price in a starburst over its corner."""
    rng = Random(f"burst {seed}")
    feature, *rest = spec.items
    lead, *others = feature.tags
    side = "right:0" if rng.random() < 0.5 else "left:0"
    tone = "" if rng.random() < 0.7 else " light"
    star = (
        f'<div class="burst{tone}" style="position:absolute;{side};bottom:-2.2em">'
        f'<div class="lab" style="max-width:7em">{sheet.label(lead) or escape(spec.kicker)}</div>'
        f'<div class="num big" style="font-size:3.7em">{sheet.price(lead, feature)}</div>'
        f'<div class="fine">{parts.unit_words(lead)}</div></div>'
    )
    picture = pictures.table(spec.motif, seed, shape=rng.choice(("wide", "row")))
    half = (len(rest) + 1) // 2
    columns = "".join(_div(parts.rows(sheet, part)) for part in (rest[:half], rest[half:]) if part)
    other = "".join(parts.block(sheet, feature, tag, 2.4) for tag in others)
    composition = (
        f'<div class="ctr">{sheet.set_words(feature.composition, feature)}</div>' if feature.composition else ""
    )
    return (
        parts.head(sheet, spec.headline, 3.1)
        + parts.name(sheet, spec, 3.8)
        + _maker(sheet, spec)
        + f'<div style="position:relative;margin-bottom:2.6em">{picture}{star}</div>'
        + f'<div class="h2" style="font-size:2.1em">{sheet.text(feature.text)}</div>{composition}'
        + f'<div class="two">{other}</div>'
        + parts.when(sheet, spec)
        + parts.copy(sheet, spec)
        + (f'<div class="cols vr">{columns}</div>' if columns else "")
        + parts.schedule(sheet, spec)
        + parts.terms(sheet, spec)
        + f'<div class="rule2"></div>{parts.signature(sheet, spec, 3.0)}'
    )


def grid(sheet: Sheet, spec: AdvertSpec, seed: int) -> str:
    """Set every piece in a box of its own, card and no-card price in each."""
    rng = Random(f"grid {seed}")
    cells = []
    for item in spec.items:
        lead, *others = item.tags
        words = f'<div class="h2" style="font-size:1.25em">{sheet.item_text(item)}</div>'
        if item.composition:
            words += f'<div class="fine">{sheet.set_words(item.composition, item)}</div>'
        small = "".join(
            f'<div class="in fine">{sheet.label(t)} {parts.unit_price(sheet, item, t)}</div>' for t in others
        )
        label = f"<div>{sheet.label(lead)}</div>" if lead.label else ""
        cells.append(
            f'<div class="cell box">{words}<div class="num big" style="font-size:3.6em">{sheet.price(lead, item)}</div>'
            f'<div class="fine">{parts.unit_words(lead)}</div>{label}{small}</div>'
        )
    across = rng.choice((2, 3)) if len(cells) > 3 else 2
    picture = pictures.table(spec.motif, seed, shape="row" if across == 3 else "wide")
    return (
        f'<div class="rev">{parts.head(sheet, spec.headline, 2.7)}</div>'
        + parts.name(sheet, spec, 3.2)
        + _maker(sheet, spec)
        + picture
        + parts.when(sheet, spec)
        + f'<div class="grid" style="grid-template-columns:repeat({across},1fr)">{"".join(cells)}</div>'
        + parts.copy(sheet, spec)
        + parts.schedule(sheet, spec)
        + parts.terms(sheet, spec)
        + parts.signature(sheet, spec, 2.8)
    )


def _div(inner: str) -> str:
    return f"<div>{inner}</div>"

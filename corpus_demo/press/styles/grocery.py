"""Grocery adverts: the full page of forty foods with a box of dinnerware, and the small handbill."""

from __future__ import annotations

from html import escape
from random import Random

from .. import pictures
from ..facts import AdvertSpec, Item
from ..sheet import Sheet
from . import parts

TITLES = {"meats": "Quality Meats", "produce": "Garden Fresh", "dairy": "Dairy Case", "grocery": "Pantry Shelf"}


def _big(sheet: Sheet, item: Item, size: float, cls: str) -> str:
    tag = item.tags[0]
    unit = parts.unit_words(tag)
    detail = f'<div class="fine">{escape(item.size or item.blurb)}</div>' if item.size or item.blurb else ""
    return (
        f'<div class="cell {cls}"><div class="h2" style="font-size:1.35em">{sheet.item_text(item)}</div>{detail}'
        f'<div class="num big" style="font-size:{size}em">{sheet.price(tag, item)}'
        f'<span class="fine" style="font-size:.28em"> {unit}</span></div></div>'
    )


def _dinnerware(sheet: Sheet, spec: AdvertSpec, items: list[Item], seed: int) -> str:
    feature, *rest = items
    lead, *others = feature.tags
    blocks = parts.block(sheet, feature, lead, 4.2)
    blocks += "".join(parts.block(sheet, feature, tag, 2.2) for tag in others)
    made_of = (
        f'<div class="fine ctr">{sheet.set_words(feature.composition, feature)}</div>' if feature.composition else ""
    )
    return (
        f'<div class="panel-box2">{parts.name(sheet, spec, 2.4)}'
        f'<div class="kick">{escape(spec.kicker)}</div>{pictures.table(spec.motif, seed, shape="setting")}'
        f'<div class="h2" style="font-size:1.3em">{sheet.text(feature.text)}</div>{made_of}<div class="two">{blocks}</div>'
        + parts.rows(sheet, rest)
        + parts.terms(sheet, spec)
        + parts.schedule(sheet, spec)
        + "</div>"
    )


def broadside(sheet: Sheet, spec: AdvertSpec, seed: int) -> str:
    """Set a full page: masthead, departments flowing down ruled columns, one box of dinnerware among them."""
    rng = Random(f"broadside {seed}")
    wares = [item for item in spec.items if item.department == "housewares"]
    foods = [item for item in spec.items if item.department != "housewares"]
    stories: list[list[str]] = []
    for k, department in enumerate(d for d in TITLES if any(f.department == d for f in foods)):
        goods = [f for f in foods if f.department == department]
        style = rng.choice(("dept rev", "dept", "scr"))
        count = rng.choice((1, 2, 2, 3))
        story = [parts.head(sheet, TITLES[department], rng.choice((1.9, 2.3)), style)]
        for n, item in enumerate(goods):
            if n < count or rng.random() < 0.12:
                story.append(_big(sheet, item, rng.choice((3.0, 3.8, 4.8)), rng.choice(("box", "", "", "panel-rev"))))
            else:
                story.append(parts.row(sheet, item))
        if department == "grocery" or rng.random() < 0.3:
            picture = pictures.pantry(seed + k, rng.choice(("PEAS", "CORN", "SOUP", "TEA")))
            story.insert(rng.randint(1, len(story)), f'<div style="width:70%;margin:.3em auto">{picture}</div>')
        stories.append(story)
    if wares:
        stories.insert(rng.randint(0, len(stories)), [_dinnerware(sheet, spec, wares, seed)])
    across = max(2, min(5, round(sheet.measure / rng.uniform(18, 24))))
    flow = "".join(part for story in stories for part in story)
    general = "" if wares else parts.terms(sheet, spec)
    return (
        f'<div class="ctr" style="font-size:5.4em;line-height:1.05">{sheet.retailer(spec.retailer_text)}</div>'
        + parts.head(sheet, spec.headline, 2.9)
        + f'<div class="rev">{parts.when(sheet, spec, 1.4)}</div>'
        + f'<div class="flow" style="column-count:{across}">{flow}</div>'
        + parts.copy(sheet, spec)
        + general
        + '<div class="rule2"></div>'
        + "".join(f'<div class="addr">{sheet.text(text)}</div>' for text in spec.addresses)
    )


def handbill(sheet: Sheet, spec: AdvertSpec, seed: int) -> str:
    """Set a narrow bill of rows with leaders under a head, as small grocers placed them."""
    rng = Random(f"handbill {seed}")
    rows = []
    for k, item in enumerate(spec.items):
        rows.append(_big(sheet, item, 3.2, "") if k % 6 == 4 and rng.random() < 0.6 else parts.row(sheet, item, 1.1))
    return (
        parts.head(sheet, spec.kicker, 1.3, "h2")
        + parts.head(sheet, spec.headline, 2.8)
        + parts.when(sheet, spec)
        + '<div class="rule2"></div>'
        + "".join(rows)
        + parts.copy(sheet, spec)
        + parts.terms(sheet, spec)
        + f'<div class="rule2"></div>{parts.signature(sheet, spec, 2.6)}'
    )

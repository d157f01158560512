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
        f'<div class="cell {cls}"><div class="h2" style="font-size:1.35em">{sheet.text(item.text)}</div>{detail}'
        f'<div class="num big" style="font-size:{size}em">{sheet.price(tag, item)}'
        f'<span class="fine" style="font-size:.28em"> {unit}</span></div></div>'
    )


def _dinnerware(sheet: Sheet, spec: AdvertSpec, items: list[Item], seed: int) -> str:
    feature, *rest = items
    lead, *others = feature.tags
    blocks = parts.block(sheet, feature, lead, 4.2)
    blocks += "".join(parts.block(sheet, feature, tag, 2.2) for tag in others)
    made_of = f'<div class="fine ctr">{sheet.set_words(feature.composition, feature)}</div>' if feature.composition else ""
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
    """Set a full page: masthead, features, departments in columns of rows, one box of dinnerware."""
    rng = Random(f"broadside {seed}")
    wares = [item for item in spec.items if item.department == "housewares"]
    foods = [item for item in spec.items if item.department != "housewares"]
    per_column = rng.choice((3, 4))
    columns: list[list[str]] = [[] for _ in range(per_column)]
    departments = [d for d in TITLES if any(f.department == d for f in foods)]
    for k, department in enumerate(departments):
        goods = [f for f in foods if f.department == department]
        feature, rest = goods[: 2 if rng.random() < 0.5 else 1], goods[2:]
        rest = goods[len(feature) :]
        title = parts.head(sheet, TITLES[department], 1.9, rng.choice(("dept rev", "dept", "scr")))
        big = "".join(_big(sheet, item, rng.choice((3.0, 3.8, 4.6)), rng.choice(("box", "", "panel-rev"))) for item in feature)
        rows = parts.rows(sheet, rest)
        target = min(range(per_column), key=lambda c: sum(map(len, columns[c])))
        tins = pictures.pantry(seed + k, "PEAS") if department == "grocery" else ""
        columns[target].append(title + big + rows + tins)
    if wares:
        target = min(range(per_column), key=lambda c: sum(map(len, columns[c])))
        columns[target].insert(rng.choice((0, len(columns[target]))), _dinnerware(sheet, spec, wares, seed))
    body = "".join(f'<div>{"".join(column)}</div>' for column in columns)
    general = "" if wares else parts.terms(sheet, spec)
    return (
        f'<div class="ctr" style="font-size:4.6em;line-height:1.05">{sheet.retailer(spec.retailer_text)}</div>'
        + parts.head(sheet, spec.headline, 2.4)
        + f'<div class="rev">{parts.when(sheet, spec, 1.3)}</div>'
        + f'<div class="cols vr" style="margin-top:.5em">{body}</div>'
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

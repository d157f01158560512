"""Coupon offers and stamp premiums."""

from __future__ import annotations

from html import escape
from random import Random

from .. import pictures
from ..facts import AdvertSpec
from ..sheet import Sheet
from . import parts


def coupon(sheet: Sheet, spec: AdvertSpec, seed: int) -> str:
    """Set an offer with a coupon to cut out."""
    rng = Random(f"coupon {seed}")
    feature, *rest = spec.items
    large = rng.choice((5.2, 9))
    blocks = "".join(parts.block(sheet, feature, tag, large if k == 0 else 2.4) for k, tag in enumerate(feature.tags))
    made_of = (
        f'<div class="ctr fine">{sheet.set_words(feature.composition, feature)}</div>' if feature.composition else ""
    )
    terms = "".join(f"<div>{sheet.term(term)}</div>" for term in spec.terms)
    expiry = f"<div>{sheet.date(spec.expiry, 'expiry')}</div>" if spec.expiry else ""
    slip = (
        f'<div class="coupon"><div class="h2" style="font-size:1.6em">{escape(spec.slogan or "Valuable Coupon")}</div>'
        f'<div class="ctr">This coupon and the price below entitle bearer to one</div>'
        f'<div class="h2" style="font-size:1.5em">{sheet.text(feature.text)}</div>{made_of}'
        f'<div class="two">{blocks}</div><div class="fine ctr">{terms}{expiry}</div></div>'
    )
    top = (
        parts.head(sheet, spec.headline, 2.8)
        + parts.name(sheet, spec, 3.2)
        + f'<div style="width:{rng.choice((70, 85))}%;margin:auto">{pictures.table(spec.motif, seed, shape="setting")}</div>'
        + parts.when(sheet, spec, expiry=False)
        + parts.copy(sheet, spec)
    )
    rows = parts.rows(sheet, rest)
    return top + slip + rows + parts.signature(sheet, spec, 2.6)


def premium(sheet: Sheet, spec: AdvertSpec, seed: int) -> str:
    """Set a premium given for stamps or tapes, with its cash price."""
    feature, *rest = spec.items
    lead, *others = feature.tags
    rows = parts.rows(sheet, rest)
    big = f'<div class="burst"><div class="lab">{sheet.label(lead)}</div><div class="num big" style="font-size:3.4em">'
    big += f"{sheet.price(lead, feature)}</div></div>"
    other = "".join(
        f'<div class="in">{sheet.label(tag)} {parts.unit_price(sheet, feature, tag)}</div>' for tag in others
    )
    made_of = f'<div class="fine">{sheet.set_words(feature.composition, feature)}</div>' if feature.composition else ""
    return (
        parts.head(sheet, spec.headline, 3.2)
        + f'<div class="kick">{escape(spec.kicker)}</div>'
        + '<div class="cols" style="align-items:center">'
        + f"<div>{parts.name(sheet, spec, 2.8)}{pictures.table(spec.motif, seed, shape='wide')}</div>"
        + f'<div class="ctr"><div class="h2" style="font-size:1.7em">{sheet.text(feature.text)}</div>{made_of}{big}{other}</div></div>'
        + parts.when(sheet, spec)
        + parts.copy(sheet, spec)
        + rows
        + parts.terms(sheet, spec)
        + parts.signature(sheet, spec, 3.0)
    )

"""Department-store adverts: white space, a modern face, sets enumerated, former prices beside the sale's."""

from __future__ import annotations

from html import escape
from random import Random

from .. import pictures
from ..facts import AdvertSpec, Item
from ..sheet import Sheet
from . import parts


def _offer(sheet: Sheet, item: Item, size: float) -> str:
    lead, *others = item.tags
    name = f'<div class="scr" style="font-size:1.7em;text-align:left">{sheet.line(item.line_text, item.line)}</div>'
    made_of = f'<p class="copy fine">{sheet.set_words(item.composition, item)}</p>' if item.composition else ""
    blurb = f'<p class="copy">{escape(item.blurb)}</p>' if item.blurb else ""
    side = "".join(f'<div class="in">{sheet.label(tag)} {parts.unit_price(sheet, item, tag)}</div>' for tag in others)
    label = f" {sheet.label(lead)}" if lead.label else ""
    return (
        f'<div style="margin-bottom:.8em">{name if item.line_text else ""}'
        f'<div class="h2" style="text-align:left;font-size:1.35em">{sheet.item_text(item)}</div>{blurb}{made_of}'
        f'<div style="display:flex;align-items:flex-end;gap:.7em"><div class="num big" style="font-size:{size}em">'
        f'{sheet.price(lead, item)}</div><div class="fine">{side}{label} {parts.unit_words(lead)}</div></div></div>'
    )


def columns(sheet: Sheet, spec: AdvertSpec, seed: int) -> str:
    """Set offers in two or three columns of copy under a wide head."""
    rng = Random(f"columns {seed}")
    across = 3 if len(spec.items) > 4 and rng.random() < 0.6 else 2
    stacks: list[list[str]] = [[] for _ in range(across)]
    for k, item in enumerate(spec.items):
        stacks[k % across].append(_offer(sheet, item, 2.9))
    shapes = ("plate", "cup", "setting", "glass")
    for k, stack in enumerate(stacks):
        picture = pictures.table(spec.motif, seed + k, shape=shapes[(seed + k) % len(shapes)])
        stack.insert(rng.randint(0, len(stack)), f'<div style="width:80%;margin:auto">{picture}</div>')
    return (
        (f'<div class="kick">{sheet.text(spec.kicker)}</div>' if spec.kicker else "")
        + parts.head(sheet, spec.headline, 3.6)
        + parts.when(sheet, spec)
        + parts.copy(sheet, spec, 1.1)
        + f'<div class="cols" style="margin-top:.6em">{"".join("<div>" + "".join(s) + "</div>" for s in stacks)}</div>'
        + parts.terms(sheet, spec)
        + parts.signature(sheet, spec, 4.4)
    )


def clearance(sheet: Sheet, spec: AdvertSpec, seed: int) -> str:
    """Set a table of sale and former prices under a loud head."""
    heads: list[str] = []
    for item in spec.items:
        for tag in item.tags:
            if tag.label and tag.label not in heads:
                heads.append(tag.label)
    tags = {tag.label: tag for item in spec.items for tag in item.tags}
    top = "".join(f'<th class="n">{sheet.label(tags[words])}</th>' for words in heads)
    body = []
    for item in spec.items:
        by_label = {tag.label: tag for tag in item.tags}
        cells = "".join(
            f'<td class="n">{sheet.price(by_label[h], item, small=True) if h in by_label else ""}</td>' for h in heads
        )
        name = f" &mdash; {sheet.line(item.line_text, item.line)}" if item.line_text else ""
        made_of = f'<div class="fine">{sheet.set_words(item.composition, item)}</div>' if item.composition else ""
        body.append(f"<tr><td>{sheet.item_text(item)}{name}{made_of}</td>{cells}</tr>")
    ruled = " class=ruled" if seed % 2 else ""
    return (
        f'<div class="rev">{parts.head(sheet, spec.headline, 3.4)}</div>'
        + parts.when(sheet, spec, 1.2)
        + parts.copy(sheet, spec)
        + f'<div style="width:60%;margin:.4em auto">{pictures.table(spec.motif, seed, shape="wide")}</div>'
        + f"<table{ruled}><tr><th></th>{top}</tr>{''.join(body)}</table>"
        + parts.terms(sheet, spec)
        + parts.signature(sheet, spec, 3.8)
    )

"""Trade-catalogue pages of decal suppliers and potteries: number, name, sizes, price per dozen or hundred."""

from __future__ import annotations

from html import escape

from .. import pictures
from ..facts import AdvertSpec, Motif
from ..sheet import Sheet
from . import parts


def price_list(sheet: Sheet, spec: AdvertSpec, seed: int) -> str:
    """Set a ruled price list under pictures of the first designs."""
    labels: list[str] = []
    for item in spec.items:
        for tag in item.tags:
            if tag.label not in labels:
                labels.append(tag.label)
    heads = "".join(f'<th class="n">{escape(label)}</th>' for label in labels)
    body = []
    for item in spec.items:
        by_label = {tag.label: tag for tag in item.tags}
        cells = "".join(
            f'<td class="n">{sheet.price(by_label[h], item, "bare") if h in by_label else "&mdash;"}</td>'
            for h in labels
        )
        name = sheet.line(item.line_text, item.line) if item.line_text else sheet.item_text(item)
        tail = f" {escape(item.blurb)}" if item.blurb else ""
        body.append(f"<tr><td>{escape(item.number)}</td><td>{name}{tail}</td><td>{escape(item.size)}</td>{cells}</tr>")
    motifs: tuple[Motif, ...] = ("tansy", "wheat", "sorrel", "frost", "quince")
    shots = "".join(
        f"<div>{pictures.table(motifs[(seed + k) % 5], seed + k, shape='plate')}</div>"
        for k in range(4 if spec.motif != "plain" else 0)
    )
    return (
        f'<div class="ctr" style="font-size:2.3em">{sheet.retailer(spec.retailer_text)}</div>'
        + "".join(f'<div class="addr">{sheet.text(text)}</div>' for text in spec.addresses)
        + parts.head(sheet, spec.headline, 1.8, "h2")
        + parts.when(sheet, spec)
        + (f'<div class="cols" style="margin:.5em 2em">{shots}</div>' if shots else "")
        + parts.copy(sheet, spec)
        + f"<table class=ruled><tr><th>No.</th><th>{escape(spec.kicker or 'Name')}</th><th>Size</th>{heads}</tr>{''.join(body)}</table>"
        + parts.terms(sheet, spec)
    )

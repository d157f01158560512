"""Takes one sheet through the shop: set, proof, print, wear, scan; returns the picture and its truth."""

from __future__ import annotations

from dataclasses import dataclass
from html import escape
from random import Random

import numpy as np
from numpy.typing import NDArray
from playwright.sync_api import Browser

from . import copyfit
from .browser import document, proof
from .facts import ScanSpec
from .looks import draw_look
from .sheet import Row, Sheet
from .styles import STYLES
from .truth import truth_row
from .wear import scan


@dataclass(frozen=True, slots=True)
class Print:
    """Hold a finished scan and its truth."""

    spec: ScanSpec
    picture: NDArray[np.uint8]
    truth: Row


def compose(spec: ScanSpec) -> tuple[Sheet, str]:
    """Set the adverts of a sheet, with a newspaper around them where the sheet is a page."""
    sheet = Sheet(draw_look(spec.seed, spec.look), spec.width / spec.base)
    set_adverts = []
    for k, advert in enumerate(spec.adverts):
        if k:
            sheet.look = draw_look(spec.seed + 1000 * k)
        opening = sheet.open_advert(advert)
        inner = STYLES[advert.style](sheet, advert, spec.seed + k)
        look = sheet.look
        border = look.border if len(spec.adverts) == 1 and spec.sheet == "single" else ".2em solid #111"
        faces = {"head": look.head, "head2": look.head2, "body": look.body, "fine": look.fine, "price": look.price}
        faces |= {"script": look.script, "logo": look.logo}
        own = ";".join(f"--{key}:'{name}','Jost'" for key, name in faces.items())
        more = f'<div class="ctr"><b>{escape(advert.continued)}</b></div>' if advert.continued else ""
        set_adverts.append(
            f'<div class="ad" {opening} style="border:{border};{own};--shape:{look.price_shape}">{inner}{more}</div>'
        )
    return sheet, _sheet(spec, set_adverts)


def _sheet(spec: ScanSpec, adverts: list[str]) -> str:
    match spec.sheet:
        case "two_up":
            return f'<div class="cols" style="align-items:flex-start">{"".join(adverts)}</div>'
        case "page":
            return _folio(spec) + _page_beside(spec, adverts)
        case "page_foot":
            return _folio(spec) + _page_above(spec, adverts)
        case _:
            return "".join(adverts)


def _folio(spec: ScanSpec) -> str:
    return (
        f'<div class="mast">{escape(spec.publication or "The Journal")}</div>'
        f'<div class="dateline"><span>{escape(spec.city or "")}</span><span>{escape(copyfit.dateline(spec))}</span>'
        f"<span>Page {escape(spec.page or '3')}</span></div>"
    )


def _page_beside(spec: ScanSpec, adverts: list[str]) -> str:
    """Set news in two columns with the adverts stacked beside them."""
    rng = Random(f"sheet {spec.seed}")
    text = "".join(f'<div class="edit">{copyfit.column(rng, count)}</div>' for count in (34, 30))
    stack = "".join(f'<div style="margin-bottom:.8em">{advert}</div>' for advert in adverts)
    news, shops = f'<div style="flex:1.15"><div class="cols">{text}</div></div>', f'<div style="flex:1">{stack}</div>'
    return f'<div class="cols">{news + shops if spec.seed % 2 else shops + news}</div>'


def _page_above(spec: ScanSpec, adverts: list[str]) -> str:
    """Set news across the top with the adverts side by side at the foot."""
    rng = Random(f"sheet {spec.seed}")
    text = "".join(f'<div class="edit">{copyfit.column(rng, 16)}</div>' for _ in range(4))
    foot = "".join(f"<div>{advert}</div>" for advert in adverts)
    return f'<div class="cols">{text}</div><div class="cols" style="align-items:flex-end;margin-top:.8em">{foot}</div>'


def verso(browser: Browser) -> NDArray[np.uint8]:
    """Print the page of news that shows through from behind the adverts."""
    rng = Random("verso")
    columns = "".join(f'<div class="edit">{copyfit.column(rng, 60)}</div>' for _ in range(4))
    html = document(f'<div class="cols">{columns}</div>', draw_look(1), 1500, 20, 1)
    return proof(browser, html, 1500).tones


def take(browser: Browser, spec: ScanSpec, back: NDArray[np.uint8]) -> Print:
    """Print one sheet on paper with `back` on its other side.

    Raises ValueError where a fact runs out of its advert.
    """
    sheet, body = compose(spec)
    html = document(body, draw_look(spec.seed, spec.look), spec.width, spec.base, spec.seed)
    fresh = proof(browser, html, spec.width)
    if fresh.spills:
        raise ValueError(f"{spec.file}: set too wide: {', '.join(fresh.spills)}")
    colour = spec.wear.source in ("magazine", "catalogue", "phone")
    picture, boxes = scan(fresh, back, spec.wear, spec.seed, colour=colour)
    size = (picture.shape[1], picture.shape[0])
    return Print(spec, picture, truth_row(spec, sheet, boxes, fresh.lines, size))

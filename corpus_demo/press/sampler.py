"""Prints price numerals by the hundred, worn like the scans, as labelled crops to train a reader of numerals on."""

from __future__ import annotations

import json
from decimal import Decimal
from pathlib import Path
from random import Random

import numpy as np
from PIL import Image
from playwright.sync_api import Browser

from adminer.records import PriceForm

from .browser import document, proof
from .facts import Item, Source, Tag, Wear
from .looks import Look, draw_look
from .pressroom import verso
from .sheet import Sheet
from .wear import scan

PER_SHEET = 48
FORMS: tuple[tuple[PriceForm, int], ...] = (
    ("raised_cents", 6), ("raised_cents_bare", 2), ("raised_cent_sign", 3), ("cents_sign", 4), ("dollars_point", 4), ("multiple", 2), ("fraction", 1), ("dollars_whole", 1), ("bare", 1),
)  # fmt: skip
SOURCES: tuple[Source, ...] = ("newsprint", "microfilm", "photocopy", "magazine", "catalogue", "phone")


def _tag(form: PriceForm, rng: Random) -> Tag:
    cents = rng.randint(2, 98) if rng.random() < 0.7 else rng.choice((9, 19, 29, 39, 49, 59, 69, 79, 89, 98))
    match form:
        case "cents_sign" | "raised_cent_sign":
            return Tag(Decimal(cents) / 100)
        case "fraction":
            return Tag(Decimal(rng.randint(3, 60)) / 100 + Decimal("0.005"))
        case "multiple":
            return Tag(Decimal(rng.choice((cents, 100))) / 100, rng.choice((2, 3, 4, 6)))
        case "dollars_whole":
            return Tag(Decimal(rng.randint(1, 40)), form=form)
        case _:
            whole = rng.randint(1, 9) if rng.random() < 0.75 else rng.randint(10, 79)
            return Tag(Decimal(whole) + Decimal(cents) / 100)


def _cell(sheet: Sheet, look: Look, rng: Random) -> str:
    form = rng.choices([f for f, _ in FORMS], [weight for _, weight in FORMS])[0]
    sheet.look = look
    price = sheet.price(_tag(form, rng), Item("", ()), form)
    dark = "background:#111;color:#fff;" if rng.random() < 0.2 else ""
    faces = f"--price:'{look.price}','Jost';--shape:{look.price_shape}"
    size = rng.choice((1, 1.3, 1.8, 2.6, 3.6, 4.8))
    return f'<div class="big" style="{faces};{dark}font-size:{size}em;padding:.3em .45em;display:inline-block;margin:.15em">{price}</div>'


def print_numerals(browser: Browser, seed: int, count: int, folder: Path) -> None:
    """Write `count` crops as PNG files and labels.jsonl: file, text, amount, form, box of the numeral in the crop."""
    (folder / "crops").mkdir(parents=True, exist_ok=True)
    back = verso(browser)
    labels: list[str] = []
    for turn in range(-(-count // PER_SHEET)):
        rng = Random(f"numerals {seed} {turn}")
        sheet = Sheet(draw_look(turn), 60)
        cells = "".join(_cell(sheet, draw_look(rng.randint(0, 10**6)), rng) for _ in range(PER_SHEET))
        sheet.facts["a0"] = {}
        html = document(f'<div class="ad" data-f="a0">{cells}</div>', draw_look(turn), 1200, 20, turn)
        source = SOURCES[(seed + turn) % len(SOURCES)]
        wear = Wear(
            source,
            skew=rng.gauss(0, 1.2),
            spread=rng.uniform(0.15, 0.7),
            show_through=rng.uniform(0, 0.12),
            grain=rng.uniform(0.02, 0.08),
        )
        picture, boxes = scan(proof(browser, html, 1200), back, wear, seed * 1009 + turn, colour=False)
        for fact, row in sheet.facts.items():
            if fact[0] != "p" or fact not in boxes or len(labels) >= count:
                continue
            x, y, w, h = boxes[fact]
            pad = max(3, round(h * rng.uniform(0.1, 0.35)))
            top, left = max(0, y - pad), max(0, x - pad)
            crop = np.ascontiguousarray(picture[top : y + h + pad, left : x + w + pad])
            name = f"crops/{len(labels):06d}.png"
            Image.fromarray(crop).save(folder / name)
            label = {
                "file": name,
                "text": row["text_as_printed"],
                "amount": row["amount_exact"],
                "per_quantity": row["per_quantity"],
                "form": row["form"],
            }
            labels.append(json.dumps(label | {"box": [x - left, y - top, w, h], "source": source}, ensure_ascii=False))
    (folder / "labels.jsonl").write_text("\n".join(labels) + "\n", encoding="utf-8")

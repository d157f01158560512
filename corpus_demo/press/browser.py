"""Sets a sheet with a headless browser and finds, for every fact, exactly where its ink lies."""

from __future__ import annotations

import io
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from math import cos, pi, sin
from pathlib import Path
from random import Random
from typing import Any

import numpy as np
from numpy.typing import NDArray
from PIL import Image
from playwright.sync_api import Browser, sync_playwright

from . import fonts
from .looks import Look

SCALE = 2  # the press works at twice the resolution of the finished scan
ARGS = [
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--font-render-hinting=none",
    "--disable-lcd-text",
]
CHROMIUM = Path("/usr/bin/chromium")

_FIND = """() => {
  const box = r => [r.left, r.top, r.width, r.height];
  const out = {adverts: {}, lines: {}, tints: [...document.querySelectorAll('.panel-tint')].map(e => box(e.getBoundingClientRect())), pictures: [...document.querySelectorAll('.pic')].map(e => box(e.getBoundingClientRect()))};
  for (const el of document.querySelectorAll('[data-f]')) {
    if (el.dataset.f[0] === 'a') { out.adverts[el.dataset.f] = box(el.getBoundingClientRect()); continue; }
    const range = document.createRange();
    range.selectNodeContents(el);
    const tops = [...range.getClientRects()].filter(r => r.width > 0).map(r => [r.top, r.bottom]).sort((a, b) => a[0] - b[0]);
    let lines = 0, bottom = -1;
    for (const [top, low] of tops) { if ((top + low) / 2 > bottom) { lines += 1; bottom = low; } else bottom = Math.max(bottom, low); }
    out.lines[el.dataset.f] = lines;
  }
  out.spills = [];
  for (const el of document.querySelectorAll('[data-f]:not([data-f^=a])')) {
    const ad = el.closest('.ad').getBoundingClientRect(), own = el.getBoundingClientRect();
    if (own.left < ad.left - 1 || own.right > ad.right + 1) out.spills.push(el.dataset.f + ' ' + el.textContent);
  }
  out.height = Math.ceil(document.querySelector('.sheet').getBoundingClientRect().height);
  return out;
}"""
# A compositor does not let a word run out of its measure: too wide a logotype, head or figure is set smaller.
_FIT = """() => {
  const room = el => {
    const holder = el.closest('.cell.box,.two,.burst,.panel-box,.panel-box2,.panel-rev,.panel-tint,.cols>div,.ad,.flow>div');
    const style = getComputedStyle(holder);
    const box = holder.getBoundingClientRect();
    return [box.left + parseFloat(style.paddingLeft), box.right - parseFloat(style.paddingRight)];
  };
  for (const el of document.querySelectorAll('.logo,.ln,.big .pr,.h>span,.scr>span')) {
    for (let turn = 0; turn < 8; turn++) {
      const [left, right] = room(el), box = el.getBoundingClientRect();
      const size = parseFloat(getComputedStyle(el).fontSize), slack = 0.14 * size;
      if (box.left >= left - slack && box.right <= right + slack) break;
      el.style.fontSize = size * Math.min(0.94, (right - left) / box.width) + 'px';
    }
  }
}"""
# Each fact in a colour of its own on white: two channels carry its number, the third how much ink a pixel has.
_CODE = """() => {
  document.body.classList.add('code');
  const ids = [...document.querySelectorAll('[data-f]:not([data-f^=a])')].map((el, k) => {
    const colour = `rgb(${(k % 28) * 8},${Math.floor(k / 28) * 8},0)`;
    for (const part of [el, ...el.querySelectorAll('*')]) part.style.setProperty('color', colour, 'important');
    return el.dataset.f;
  });
  return ids;
}"""


@dataclass(frozen=True, slots=True)
class Proof:
    """Hold a sheet fresh from the press: its tones at twice size and where each fact was set."""

    tones: NDArray[np.uint8]
    labels: NDArray[np.uint16]  # 0 for no fact, else 1 + index into `facts`
    facts: tuple[str, ...]
    lines: dict[str, int]  # fact -> number of lines its words take
    adverts: dict[str, tuple[int, int, int, int]]  # in pixels of `tones`
    pictures: list[tuple[int, int, int, int]]
    tints: list[tuple[int, int, int, int]]  # panels printed in a grey screen under solid type
    spills: tuple[str, ...]  # facts that run out of their advert: a fault of the style


def _burst(seed: int, points: int = 17) -> str:
    rng = Random(f"burst {seed}")
    spikes = []
    for k in range(points * 2):
        r = 50 if k % 2 == 0 else 50 * rng.uniform(0.74, 0.82)
        spikes.append(f"{50 + r * cos(pi * k / points):.1f}% {50 + r * sin(pi * k / points):.1f}%")
    return f"polygon({','.join(spikes)})"


def document(body: str, look: Look, width: int, base: float, seed: int) -> str:
    """Wrap the body of a sheet into a whole document."""
    faces = {"head": look.head, "head2": look.head2, "body": look.body, "fine": look.fine, "price": look.price}
    faces |= {"script": look.script, "logo": look.logo}
    names = ";".join(f"--{key}:'{name}','Jost','Libre Franklin'" for key, name in faces.items())
    css = (Path(__file__).parent / "style.css").read_text()
    root = f":root{{{names};--shape:{look.price_shape};--burst:{_burst(seed)}}}"
    return (
        f"<!doctype html><meta charset=utf-8><style>{fonts.stylesheet()}{css}{root}"
        f"body{{width:{width}px;font-size:{base}px}}</style><body><div class=sheet>{body}</div></body>"
    )


@contextmanager
def press_browser() -> Iterator[Browser]:
    """Start the browser of the machine, or the one Playwright knows."""
    with sync_playwright() as play:
        path = str(CHROMIUM) if CHROMIUM.exists() else None
        browser = play.chromium.launch(executable_path=path, args=ARGS)
        try:
            yield browser
        finally:
            browser.close()


def proof(browser: Browser, html: str, width: int) -> Proof:
    """Set one document and take its proof."""
    page = browser.new_page(viewport={"width": width, "height": 900}, device_scale_factor=SCALE)
    try:
        with tempfile.TemporaryDirectory() as folder:
            path = Path(folder) / "sheet.html"
            path.write_text(html, encoding="utf-8")
            page.goto(path.as_uri())
            page.evaluate("() => document.fonts.ready")
            page.evaluate(_FIT)
            found: dict[str, Any] = page.evaluate(_FIND)
            page.set_viewport_size({"width": width, "height": found["height"]})
            tones = np.asarray(Image.open(io.BytesIO(page.screenshot())).convert("L"))
            ids: list[str] = page.evaluate(_CODE)
            coded = np.asarray(Image.open(io.BytesIO(page.screenshot())).convert("RGB"))
    finally:
        page.close()
    adverts = {fact: _scaled(box) for fact, box in found["adverts"].items()}
    tints = [_scaled(box) for box in found["tints"]]
    pictures = [_scaled(box) for box in found["pictures"]]
    return Proof(tones, _decode(coded), tuple(ids), found["lines"], adverts, pictures, tints, tuple(found["spills"]))


def _decode(coded: NDArray[np.uint8]) -> NDArray[np.uint16]:
    """Undo the blending of type edges with the white ground and return each pixel's fact."""
    share = (255.0 - coded[..., 2]) / 255.0
    inked = share > 0.45
    ground = 255.0 - coded[..., :2][inked].astype(np.float64)
    pair = np.rint((255.0 - ground / share[inked][:, None]) / 8).astype(np.int64)
    labels = np.zeros(coded.shape[:2], np.uint16)
    labels[inked] = np.clip(pair[:, 0], 0, 27) + 28 * np.clip(pair[:, 1], 0, 31) + 1
    return labels


def _scaled(box: list[float]) -> tuple[int, int, int, int]:
    x, y, w, h = box
    left, top = int(x * SCALE), int(y * SCALE)
    return left, top, int(np.ceil((x + w) * SCALE)) - left, int(np.ceil((y + h) * SCALE)) - top

"""Strikes single numerals straight from the faces and wears them: crops by the ten thousand, faster than whole sheets.

Nothing here knows a real advert: sizes, faces, neighbours and wear are drawn wide on purpose. Proportions of the wear
are common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from random import Random

import cv2
import numpy as np
from numpy.random import Generator, default_rng
from numpy.typing import NDArray
from PIL import Image, ImageDraw, ImageFont

from .fonts import cuts
from .strike_words import Struck, draw_struck

BODY = 44  # size in pixels that pieces are drawn at before they are shrunk to the size of the scan
SCRIPTS = ("Pacifico", "Yellowtail", "Playball", "UnifrakturCook", "Limelight")  # seldom or never set prices
Ink = NDArray[np.float32]


@dataclass(frozen=True, slots=True)
class Strike:
    """Hold one worn crop and what it says; `form` names the kind of numeral, "other" for none."""

    crop: NDArray[np.uint8]
    label: str
    form: str


def strikes(seed: int, count: int) -> Iterator[Strike]:
    """Strike `count` crops; the same seed gives the same crops."""
    for turn in range(count):
        yield strike(Random(f"strike {seed} {turn}"), default_rng([seed, turn]))


def strike(rng: Random, noise: Generator) -> Strike:
    """Strike one crop: the ink of one numeral or word, its neighbours at the edges, worn."""
    struck = draw_struck(rng)
    ink, box = _set(struck, rng)
    return Strike(_worn(ink, box, rng, noise), struck.label, struck.form)


@lru_cache(maxsize=256)
def _face(path: str, size: int) -> ImageFont.FreeTypeFont:
    return ImageFont.truetype(path, size)


@lru_cache(maxsize=1)
def _paths() -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Return the files of the faces that set prices, and of all."""
    all_cuts = [(family, str(path)) for family, _, _, path in cuts()]
    return tuple(path for family, path in all_cuts if family not in SCRIPTS), tuple(path for _, path in all_cuts)


def _set(struck: Struck, rng: Random) -> tuple[Ink, tuple[int, int, int, int]]:
    """Set the pieces side by side on a white ground; return the ink (1 black) and the box of the label's own ink."""
    plain, every = _paths()
    path = rng.choice(plain) if rng.random() < 0.94 else rng.choice(every)
    capital = -_face(path, BODY).getbbox("8", anchor="ls")[1]
    gap = rng.uniform(-0.01, 0.09) * BODY if rng.random() < 0.6 else 0.0
    spread = rng.uniform(-0.02, 0.06) * BODY
    small = rng.uniform(0.4, 0.72)
    lift = rng.uniform(0.85, 1.06)
    width = int(BODY * (4 + sum(len(p.text) for p in struck.pieces)))
    canvas = Image.new("L", (width, 3 * BODY), 0)
    pen = ImageDraw.Draw(canvas)
    x, base = 1.6 * BODY, 2 * BODY
    if rng.random() < 0.4:
        neighbour = rng.choice("aeghklmnorstuxdw.3590$—")
        pen.text((x - rng.uniform(0.16, 0.5) * BODY, base), neighbour, 255, _face(path, BODY), anchor="rs")
    own = Image.new("L", canvas.size, 0)
    ink_pen = ImageDraw.Draw(own)
    for piece in struck.pieces:
        size = BODY if piece.level == "full" else int(BODY * small) if piece.level == "raised" else int(BODY * 0.52)
        top = capital * (1 - size / BODY) * lift
        y = base - (top if piece.level in ("raised", "above") else 0.0)
        x += gap if piece.level == "raised" else 0.0
        x += piece.space * BODY
        face = _face(path, max(12, size))
        if piece.level in ("above", "below"):
            ink_pen.text((x, y), piece.text, 255, face, anchor="ls")
            x += face.getlength(piece.text) * (0.9 if piece.level == "above" else 1.0)
            continue
        for glyph in piece.text:
            ink_pen.text((x, y), glyph, 255, face, anchor="ls")
            x += face.getlength(glyph) + spread * size / BODY
        if piece.level == "raised" and struck.rule:
            left = x - sum(face.getlength(g) for g in piece.text)
            ink_pen.line([(left, y + 0.1 * BODY), (x, y + 0.1 * BODY)], 255, max(2, int(0.05 * BODY)))
    box = own.getbbox() or (0, 0, 4, 4)
    if rng.random() < 0.4:
        after = rng.choice("aebfoptwyx127E$")
        pen.text((box[2] + rng.uniform(0.16, 0.5) * BODY, base), after, 255, _face(path, BODY), anchor="ls")
    _surround(pen, box, rng, path)
    around = (max(0, box[0] - BODY), max(0, box[1] - BODY // 2), box[2] + BODY, min(canvas.height, box[3] + BODY // 2))
    both = np.maximum(np.asarray(canvas.crop(around)), np.asarray(own.crop(around))).astype(np.float32) / 255
    left, top = around[:2]
    return both, (box[0] - left, box[1] - top, box[2] - left, box[3] - top)


def _surround(pen: ImageDraw.ImageDraw, box: tuple[int, int, int, int], rng: Random, path: str) -> None:
    """Draw what stands around a numeral: leader dots, lines of type above and below, rules."""
    left, top, right, bottom = box
    high = bottom - top
    if rng.random() < 0.12:
        for k in range(1, 5):
            at = left - 0.25 * high * k - 0.1 * high
            r = 0.035 * high
            pen.ellipse([at - r, bottom - 3 * r, at + r, bottom - r], fill=255)
    if rng.random() < 0.25:
        pen.text(
            (left - rng.uniform(0, high), top - rng.uniform(0.06, 0.3) * high),
            "Housegarment",
            255,
            _face(path, BODY),
            anchor="ls",
        )
    if rng.random() < 0.25:
        pen.text(
            (left - rng.uniform(0, high), bottom + rng.uniform(0.06, 0.3) * high),
            "Shambled 25",
            255,
            _face(path, BODY),
            anchor="lt",
        )
    if rng.random() < 0.12:
        y = bottom + rng.uniform(0.08, 0.25) * high if rng.random() < 0.5 else top - rng.uniform(0.08, 0.25) * high
        pen.line([(0, y), (pen.im.size[0], y)], 255, rng.randint(1, 4))
    if rng.random() < 0.08:
        x = right + rng.uniform(0.12, 0.3) * high if rng.random() < 0.5 else left - rng.uniform(0.12, 0.3) * high
        pen.line([(x, 0), (x, pen.im.size[1])], 255, rng.randint(1, 4))


def _worn(ink: Ink, box: tuple[int, int, int, int], rng: Random, noise: Generator) -> NDArray[np.uint8]:
    """Shape, shrink, print and scan the ink, and cut it out with the margin that the reader gives it."""
    height = box[3] - box[1]
    target = 7.0 * (48 / 7.0) ** rng.random()  # pixels of the finished scan, small sizes as often as large
    scale = target / height
    wide = scale * rng.uniform(0.72, 1.2)
    lean, turn = rng.gauss(0, 0.07), rng.gauss(0, 0.015)
    shape = np.array([[wide, lean * wide, 0.0], [turn * scale, scale, 0.0]])
    corners = shape[:, :2] @ np.array([[box[0], box[2], box[0], box[2]], [box[1], box[1], box[3], box[3]]], float)
    pad = 0.6 * target
    shape[:, 2] = pad + noise.random(2) - corners.min(axis=1)
    size = np.ceil(corners.max(axis=1) - corners.min(axis=1) + 2 * pad + 1).astype(int)
    soft = cv2.GaussianBlur(ink, (0, 0), max(0.3, 0.45 / scale)) if scale < 0.9 else ink
    page = np.asarray(cv2.warpAffine(soft, shape, (int(size[0]), int(size[1])), flags=cv2.INTER_LINEAR), np.float32)
    page = _pressed(page, rng, noise)
    seen = _photographed(page, target, rng, noise)
    jitter = [rng.gauss(0, 0.04) * target for _ in range(4)]
    span = corners.max(axis=1) - corners.min(axis=1)
    side = rng.uniform(0.12, 0.36) * target
    rise = rng.uniform(0.05, 0.22) * target
    x0, x1 = pad - side + jitter[0], pad + span[0] + side + jitter[1]
    y0, y1 = pad - rise + jitter[2], pad + span[1] + rise + jitter[3]
    rows, cols = seen.shape
    return np.ascontiguousarray(
        seen[max(0, int(y0)) : min(rows, round(y1) + 1), max(0, int(x0)) : min(cols, round(x1) + 1)]
    )


def _pressed(page: Ink, rng: Random, noise: Generator) -> Ink:
    """Press the ink into the paper: more or less of it, with holes in worn type."""
    gain = rng.uniform(0.75, 1.7)
    page = np.clip((page - 0.5) * rng.uniform(1.0, 2.2) + 0.5 + rng.uniform(-0.16, 0.24), 0, 1) * min(1.0, gain)
    if rng.random() < 0.3:
        grain = cv2.GaussianBlur(noise.standard_normal(page.shape).astype(np.float32), (0, 0), rng.uniform(0.6, 2.0))
        page = page * np.clip(1.0 + rng.uniform(0.3, 1.6) * grain, 0.0, 1.0)
    return np.asarray(page, np.float32)


def _photographed(page: Ink, target: float, rng: Random, noise: Generator) -> NDArray[np.uint8]:
    """Scan the page: ground, halftone, blur, grain, threshold, compression, white on black."""
    paper, black = rng.uniform(0.55, 1.0), rng.uniform(0.0, 0.35)
    rows, cols = np.mgrid[0 : page.shape[0], 0 : page.shape[1]].astype(np.float32)
    ground = np.full(page.shape, paper, np.float32)
    if rng.random() < 0.12:
        pitch = rng.uniform(2.2, 4.5)
        ground -= rng.uniform(0.05, 0.3) * (
            np.cos((rows + cols) * 4.44 / pitch) * np.cos((rows - cols) * 4.44 / pitch) > 0.2
        )
    if rng.random() < 0.3:
        ground += rng.uniform(-0.25, 0.25) * (cols / page.shape[1] - 0.5) + rng.uniform(-0.2, 0.2) * (
            rows / page.shape[0] - 0.5
        )
    seen = ground * (1 - page) + black * page
    if rng.random() < 0.18:
        seen = 1 - seen
    seen = cv2.GaussianBlur(
        seen, (0, 0), rng.uniform(0.25, 0.7) + (0.4 if rng.random() < 0.2 else 0.0) * min(2.0, target / 12)
    )
    seen = seen + rng.uniform(0.0, 0.07) * noise.standard_normal(seen.shape)
    if rng.random() < 0.15:
        middle = (float(seen.max()) + float(seen.min())) / 2
        seen = (seen > middle + rng.uniform(-0.1, 0.1)).astype(np.float32)
        if rng.random() < 0.6:
            seen = cv2.GaussianBlur(seen, (0, 0), rng.uniform(0.4, 0.9))
    out = (np.clip(seen, 0, 1) * 255).astype(np.uint8)
    if rng.random() < 0.35:
        _, data = cv2.imencode(".jpg", out, [cv2.IMWRITE_JPEG_QUALITY, rng.randint(25, 85)])
        out = np.asarray(cv2.imdecode(data, cv2.IMREAD_GRAYSCALE), np.uint8)
    return out


def contact_sheet(struck: Sequence[Strike], columns: int = 10) -> NDArray[np.uint8]:
    """Lay crops out in rows, 32 pixels high, to be looked at."""
    cells = []
    for one in struck:
        cell = np.full((36, 160), 128, np.uint8)
        crop = cv2.resize(one.crop, (min(160, max(4, round(32 * one.crop.shape[1] / one.crop.shape[0]))), 32))
        cell[2:34, : crop.shape[1]] = crop
        cells.append(cell)
    lines = [np.hstack(cells[i : i + columns]) for i in range(0, len(cells) - columns + 1, columns)]
    return np.vstack(lines)

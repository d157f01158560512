"""Strikes the tails of single numerals straight from the faces and wears them: far faster than whole sheets.

What a reader of fractions is trained on. Nothing here knows a real advert: sizes, faces, neighbours and wear are drawn
wide on purpose. Proportions of the wear are common practice, no source.
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

BODY = 44  # size in pixels that type is drawn at before it is shrunk to the size of the scan
SCRIPTS = ("Pacifico", "Yellowtail", "Playball", "UnifrakturCook", "Limelight")  # never set prices
FRACTIONS = {"½": ("1", "2"), "¼": ("1", "4"), "¾": ("3", "4")}
AFTER = ("", "", "", "d", "d.", "d. lb.", "c", "¢", "c.", " pr.", " each", " P.T.", " yd.", "-in.", ",", ";")
TAILS = (
    "c", "¢", "d", "d.", "/-", "/6", "/11", " lb.", "-lb.", " P.T.", ".25", "%", "th", "s.", "x9", " for", ", 4", ",", ";", ".", ",000", " x 12", ")", "",
)  # fmt: skip
LOWEST, HIGHEST = 7.5, 30.0  # pixels of the figures on the finished scan
ROUGHEST = 0.25  # of the figures' height: how far the place of a tail may be mistaken
COPIES = 4  # of one setting: setting takes longer than wearing
Ink = NDArray[np.float32]


@dataclass(frozen=True, slots=True)
class Strike:
    """Hold a worn picture, the place of a tail in its pixels (left, top and foot of the figures), and what it says.

    `label` is a fraction, or "" where the tail begins with anything else.
    """

    picture: NDArray[np.uint8]
    left: float
    top: float
    foot: float
    label: str


def strikes(seed: int, count: int, families: Sequence[str] | None = None) -> Iterator[Strike]:
    """Strike `count` tails, of some families of faces only; the same seed gives the same."""
    for turn in range(-(-count // COPIES)):
        yield from strike(Random(f"tail {seed} {turn}"), default_rng([seed, turn]), families)


def strike(rng: Random, noise: Generator, families: Sequence[str] | None = None) -> Iterator[Strike]:
    """Set one tail: figures, then a fraction or not, then what may follow; strike it COPIES times, each worn anew."""
    path = rng.choice(faces(tuple(families) if families else None))
    label = rng.choice(tuple(FRACTIONS)) if rng.random() < 0.5 else ""
    figures = rng.choice(("", "", "1/", "2/", "6/", "$")) + str(rng.choice((rng.randint(1, 11), rng.randint(1, 99))))
    rest = rng.choice(AFTER) if label else str(rng.randint(0, 99) if rng.random() < 0.6 else "") + rng.choice(TAILS)
    ink, left, top, foot = _set(figures, label, rest, path, rng)
    for _ in range(COPIES):
        if label and rng.random() < 0.12:  # a tail cut in the middle of its fraction is none
            yield _worn(ink, left + rng.choice((-0.7, 0.5)) * (foot - top), top, foot, "", rng, noise)
        else:
            yield _worn(ink, left, top, foot, label, rng, noise)


@lru_cache(maxsize=8)
def faces(families: tuple[str, ...] | None) -> tuple[str, ...]:
    """Return the files of the faces that set prices, of some families or of all."""
    return tuple(
        str(path) for family, _, _, path in cuts() if family not in SCRIPTS and (families is None or family in families)
    )


@lru_cache(maxsize=256)
def _face(path: str, size: int) -> ImageFont.FreeTypeFont:
    return ImageFont.truetype(path, size)


def _set(figures: str, label: str, rest: str, path: str, rng: Random) -> tuple[Ink, float, float, float]:
    """Set the type side by side; return the ink (1 black), the left edge of the tail, top and foot of the figures."""
    face, spread = _face(path, BODY), rng.uniform(-0.02, 0.05) * BODY
    capital = -face.getbbox("8", anchor="ls")[1]
    canvas = Image.new("L", (5 * BODY, round(2.4 * BODY)), 0)
    pen = ImageDraw.Draw(canvas)
    left, base = 1.6 * BODY, 1.6 * BODY
    x = left
    for glyph in reversed(figures):
        pen.text((x - spread, base), glyph, 255, face, anchor="rs")
        x -= face.getlength(glyph) + spread
    x = left
    if label:
        x = _fraction(pen, label, x, base, capital, path, rng)
    elif rng.random() < 0.2:
        x = _raised(pen, x, base - capital, path, rng)
    for glyph in rest:
        if x < canvas.width:
            pen.text((x, base), glyph, 255, face, anchor="ls")
            x += face.getlength(glyph) + spread
    if rng.random() < 0.3:
        pen.text((0, base + rng.uniform(1.25, 1.6) * capital), "Sham 25 garm", 255, face, anchor="ls")
    if rng.random() < 0.3:
        pen.text((0, base - rng.uniform(1.25, 1.6) * capital), "Hous qu 16", 255, face, anchor="ls")
    return np.asarray(np.asarray(canvas) / 255, np.float32), left, base - capital, base


def _fraction(
    pen: ImageDraw.ImageDraw, label: str, x: float, base: float, capital: float, path: str, rng: Random
) -> float:
    """Draw a fraction, as the face has it or of small figures with a slanting or a level bar; return where it ends."""
    face = _face(path, BODY)
    if rng.random() < 0.45:
        pen.text((x, base), label, 255, face, anchor="ls")
        return x + face.getlength(label)
    above, below = FRACTIONS[label]
    size = rng.uniform(0.48, 0.62)
    small = _face(path, round(size * BODY))
    lift, bar = capital * (1 - size), rng.uniform(0.04, 0.09) * capital
    if rng.random() < 0.3:  # one figure over the other
        wide = max(small.getlength(above), small.getlength(below))
        small = _face(path, round(0.46 * BODY))
        pen.text((x + wide / 2, base - 0.56 * capital), above, 255, small, anchor="ms")
        pen.text((x + wide / 2, base), below, 255, small, anchor="ms")
        pen.line([(x, base - 0.5 * capital), (x + wide, base - 0.5 * capital)], 255, max(1, round(bar)))
        return x + wide + 0.06 * BODY
    pen.text((x, base - lift), above, 255, small, anchor="ls")
    x += small.getlength(above)
    slant = rng.uniform(0.25, 0.6) * capital
    foot = x - 0.35 * slant
    pen.line([(foot, base), (foot + slant, base - capital)], 255, max(1, round(bar)))
    x += rng.uniform(0.1, 0.5) * slant
    pen.text((x, base), below, 255, small, anchor="ls")
    return x + small.getlength(below) + 0.04 * BODY


def _raised(pen: ImageDraw.ImageDraw, x: float, top: float, path: str, rng: Random) -> float:
    """Draw raised cents or a raised cent sign, now and then with a rule under them; return where they end."""
    text = rng.choice((f"{rng.randint(0, 99):02d}", f"{rng.randint(0, 99):02d}", "¢", "c"))
    face = _face(path, round(rng.uniform(0.4, 0.7) * BODY))
    _, high, right, foot = face.getbbox(text, anchor="ls")
    pen.text((x, top - high), text, 255, face, anchor="ls")
    if rng.random() < 0.3:
        level = top - high + foot + 0.12 * BODY
        pen.line([(x, level), (x + right, level)], 255, max(1, round(0.05 * BODY)))
    return x + right + 0.06 * BODY


def _worn(ink: Ink, left: float, top: float, foot: float, label: str, rng: Random, noise: Generator) -> Strike:
    """Shape, shrink, print and scan the ink."""
    target = LOWEST * (HIGHEST / LOWEST) ** rng.random()
    scale = target / (foot - top)
    wide, lean = scale * rng.uniform(0.75, 1.2), rng.gauss(0, 0.05)
    shape = np.array([[wide, lean * wide, -lean * wide * foot], [0.0, scale, 0.0]])
    soft = cv2.GaussianBlur(ink, (0, 0), max(0.3, 0.45 / scale)) if scale < 0.9 else ink
    size = (int(ink.shape[1] * wide), int(ink.shape[0] * scale))
    page = np.asarray(cv2.warpAffine(soft, shape, size, flags=cv2.INTER_LINEAR), np.float32)
    page = np.clip((page - 0.5) * rng.uniform(1.0, 2.2) + 0.5 + rng.uniform(-0.2, 0.24), 0, 1)
    if rng.random() < 0.4:
        grain = cv2.GaussianBlur(noise.standard_normal(page.shape).astype(np.float32), (0, 0), rng.uniform(0.6, 2.0))
        page = page * np.clip(1.0 + rng.uniform(0.3, 1.6) * grain, 0.0, 1.0)
    seen = _scanned(np.asarray(page, np.float32), target, rng, noise)
    off = [rng.gauss(0, 0.4) * ROUGHEST * target for _ in range(3)]
    return Strike(seen, left * wide + off[0], top * scale + 0.4 * off[1], foot * scale + 0.4 * off[2], label)


def _scanned(page: Ink, target: float, rng: Random, noise: Generator) -> NDArray[np.uint8]:
    """Scan the page: paper, blur, grain, threshold, compression."""
    paper, black = rng.uniform(0.6, 1.0), rng.uniform(0.0, 0.35)
    seen = paper * (1 - page) + black * page
    seen = cv2.GaussianBlur(seen, (0, 0), rng.uniform(0.25, 0.75) * min(2.0, target / 10))
    seen = seen + rng.uniform(0.0, 0.07) * noise.standard_normal(seen.shape)
    if rng.random() < 0.15:
        middle = (float(seen.max()) + float(seen.min())) / 2
        seen = (seen > middle + rng.uniform(-0.1, 0.1)).astype(np.float32)
    out = np.asarray(np.clip(seen, 0, 1) * 255, np.uint8)
    if rng.random() < 0.35:
        _, data = cv2.imencode(".jpg", out, [cv2.IMWRITE_JPEG_QUALITY, rng.randint(30, 85)])
        out = np.asarray(cv2.imdecode(data, cv2.IMREAD_GRAYSCALE), np.uint8)
    return out

"""The wear of real sources: yellowed newsprint, microfilm, photocopy, magazine, catalogue, phone photo."""

from __future__ import annotations

import cv2
import numpy as np
from numpy.random import Generator, default_rng
from numpy.typing import NDArray

from .browser import Proof
from .facts import Source, Wear
from .geometry import Box, Lie, fact_boxes, lay
from .ink import Tones, behind, noise, pull

PITCH: dict[Source, float] = {
    "newsprint": 3.1,
    "microfilm": 3.1,
    "photocopy": 3.4,
    "magazine": 2.2,
    "catalogue": 2.4,
    "phone": 3.0,
}  # halftone dot pitch in pixels of the finished scan: about 65 to 90 lines an inch at 200 dpi
PAPER: dict[Source, tuple[float, tuple[float, float, float]]] = {
    "newsprint": (0.84, (1.0, 0.955, 0.86)),
    "microfilm": (0.9, (1.0, 1.0, 1.0)),
    "photocopy": (0.97, (1.0, 1.0, 1.0)),
    "magazine": (0.94, (1.0, 0.985, 0.94)),
    "catalogue": (0.88, (1.0, 0.96, 0.87)),
    "phone": (0.83, (1.0, 0.95, 0.85)),
}  # brightness and tint of the paper


def scan(
    proof: Proof, verso: NDArray[np.uint8], wear: Wear, seed: int, *, colour: bool
) -> tuple[NDArray[np.uint8], dict[str, Box]]:
    """Print, wear and scan a proof; return the picture (gray, or RGB with `colour`) and the box of every fact."""
    rng = default_rng(seed)
    ink = pull(proof, wear, rng, PITCH[wear.source])
    lie = lay((ink.shape[0], ink.shape[1]), wear, rng)
    boxes = fact_boxes(proof, lie)
    brightness, tint = PAPER[wear.source]
    sheet = _paper(ink, verso, wear, rng, brightness)
    torn = _tear(lie, boxes, ink.shape, rng) if wear.tear else None
    seen = lie.warp(sheet, 0.0) * (1 - lie.shade)
    inside = lie.inside((ink.shape[0], ink.shape[1]))
    if torn is not None:
        inside &= ~torn
    ground = _ground(wear, seen.shape, rng)
    edge = cv2.GaussianBlur(inside.astype(np.float32), (0, 0), 0.8)
    seen = seen * edge + ground * (1 - edge)
    seen = _light(seen, wear, rng)
    seen = _source(seen, wear, rng)
    gray = np.clip(seen, 0, 1)
    if not colour:
        return (gray * 255 + 0.5).astype(np.uint8), boxes
    stain = 1 - 0.04 * np.clip(noise(rng, gray.shape, 160), 0, 2)[..., None] * np.array([0.2, 0.6, 1.4])
    picture = gray[..., None] * np.array(tint) * stain
    return (np.clip(picture, 0, 1) * 255 + 0.5).astype(np.uint8), boxes


def _paper(ink: Tones, verso: NDArray[np.uint8], wear: Wear, rng: Generator, brightness: float) -> Tones:
    shape = (ink.shape[0], ink.shape[1])
    ground = brightness + 0.012 * noise(rng, shape, 60) + 0.010 * noise(rng, shape, 5) + 0.010 * noise(rng, shape, 1)
    ground -= behind(verso, shape, wear.show_through, rng)
    return np.asarray(ground * (1 - 0.9 * ink) + 0.03, np.float32)


def _tear(lie: Lie, boxes: dict[str, Box], shape: tuple[int, ...], rng: Generator) -> NDArray[np.bool_] | None:
    """Tear away a corner that holds no fact; the edge is ragged."""
    height, width = shape[0], shape[1]
    reach = 0.16 * width
    ragged = noise(rng, lie.x.shape, 9) * 3 + noise(rng, lie.x.shape, 40) * 6
    for left, top in ((True, True), (False, True), (False, False), (True, False)):
        u = lie.x if left else width - lie.x
        v = lie.y if top else height - lie.y
        torn = u + 0.7 * v + ragged < reach
        if not any(torn[y : y + h, x : x + w].any() for fact, (x, y, w, h) in boxes.items() if fact[0] != "a"):
            return np.asarray(torn)
    return None


def _ground(wear: Wear, shape: tuple[int, ...], rng: Generator) -> Tones:
    """Return what lies around the sheet: the scanner's lid, black film, or a table top."""
    size = (shape[0], shape[1])
    match wear.source:
        case "microfilm":
            return np.full(size, 0.06, np.float32)
        case "phone":
            grain = cv2.GaussianBlur(rng.standard_normal(size).astype(np.float32), (0, 0), sigmaX=40, sigmaY=1.2)
            return np.asarray(0.36 + 0.9 * grain + 0.02 * noise(rng, size, 80), np.float32)
        case _:
            return np.asarray(0.965 + 0.004 * noise(rng, size, 30), np.float32)


def _light(seen: Tones, wear: Wear, rng: Generator) -> Tones:
    height, width = seen.shape[:2]
    rows, cols = np.mgrid[0:height, 0:width].astype(np.float32)
    angle = rng.uniform(0, 2 * np.pi)
    slope = np.cos(angle) * (cols / width - 0.5) + np.sin(angle) * (rows / height - 0.5)
    field = 1 - wear.light * (0.55 + slope) * 0.9
    if wear.source == "phone":
        shadow = slope + 0.18 + 0.03 * noise(rng, (height, width), 120)
        field *= 1 - 0.34 / (1 + np.exp(-shadow * 22))
    return np.asarray(seen * field, np.float32)


def _source(seen: Tones, wear: Wear, rng: Generator) -> Tones:
    shape = (seen.shape[0], seen.shape[1])
    if wear.blackout:
        fog = cv2.GaussianBlur(seen, (0, 0), shape[1] / 28)
        return np.asarray(
            fog * 0.3 + 0.05 + 0.05 * noise(rng, shape, 70) + 0.04 * rng.standard_normal(shape), np.float32
        )
    match wear.source:
        case "microfilm":
            return _microfilm(seen, wear, rng)
        case "photocopy":
            return _photocopy(seen, wear, rng)
        case "phone":
            soft = cv2.GaussianBlur(seen, (0, 0), 0.85)
            return np.asarray(soft * 1.12 + wear.grain * 0.5 * noise(rng, shape, 1.3), np.float32)
        case _:
            soft = cv2.GaussianBlur(seen, (0, 0), 0.55)
            return np.asarray(soft + wear.grain * 0.35 * rng.standard_normal(shape), np.float32)


def _microfilm(seen: Tones, wear: Wear, rng: Generator) -> Tones:
    shape = (seen.shape[0], seen.shape[1])
    soft = cv2.GaussianBlur(seen, (0, 0), 0.8) + wear.grain * noise(rng, shape, 1.6)
    hard = 1 / (1 + np.exp(-(soft - 0.5) * 8))
    for _ in range(int(rng.integers(2, 7))):
        x = int(rng.integers(0, shape[1]))
        start, stop = sorted(int(v) for v in rng.integers(0, shape[0], 2))
        hard[start:stop, x : x + 1] = np.clip(hard[start:stop, x : x + 1] + rng.choice((-0.35, 0.35)), 0, 1)
    dust = rng.random(shape) > 0.99997
    hard = np.maximum(hard, cv2.dilate(dust.astype(np.float32), np.ones((3, 3), np.uint8)))
    return np.asarray(0.08 + 0.84 * hard, np.float32)


def _photocopy(seen: Tones, wear: Wear, rng: Generator) -> Tones:
    shape = (seen.shape[0], seen.shape[1])
    level = 0.7 + 0.03 * noise(rng, shape, 200)
    toner = cv2.GaussianBlur(seen + wear.grain * 0.9 * noise(rng, shape, 1.5), (0, 0), 0.5) > level
    out = toner.astype(np.float32)
    specks = rng.random(shape) > 1 - 0.0005 * (1 + 6 * wear.grain)
    out[cv2.dilate(specks.astype(np.uint8), np.ones((2, 2), np.uint8)) > 0] = 0
    bar = int(rng.integers(0, 12))
    if bar > 5:
        out[:, -bar:] = 0
    return out

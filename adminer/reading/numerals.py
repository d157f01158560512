"""Price numerals by the geometry of their type: raised or smaller last figures are cents, whatever the string says.

After trade.md E.3: a part of a numeral that is clearly smaller than its tallest figure and stands clear above the
baseline, right of the large figures, is raised; large and raised part are read each by itself.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace

import cv2
import numpy as np
from numpy.typing import NDArray

from adminer.reading.placed import PlacedWord
from adminer.reading.recognise import Gray, read_strips
from adminer.reading.words import ink_of
from adminer.records import PriceForm

WORK_HEIGHT = 64  # height in pixels that the large figures are brought to before their glyphs are measured
SMALLEST = 12.0  # capital height in pixels below which glyphs cannot be told apart by size
DISPLAY = 14.0  # capital height in pixels from which a lone speck beside figures can be told from a cent sign
SMALL = 0.8  # a raised figure is at most this part of the large ones; trade.md E.3 has 0.62, real type has up to 0.75
LIFT = 0.12  # and its foot stands above theirs by at least this part of their height
HEAD = re.compile(r"^[\"'“(*]*(?P<sign>[$Ss§]?)(?P<figures>\d[\d,]*)\.?(?P<tail>[^\d\s/\-–—.,:;]{0,3})$")
POINTLESS = re.compile(r"^\$?\d{3,4}$")
WORN_POINT = 0.22  # of the figure height: figures of one number stand closer; common practice, no source
LONE_SIGNS = ("$", "S", "s")
LONE_SURE = 0.8  # mean probability of figures that no detector found
SIGN_ALONE = re.compile(r"^[¢c©eé°oO0469tfg*®]$")


@dataclass(frozen=True, slots=True)
class Glyph:
    """Hold the ink of one character in pixels of the page."""

    left: float
    top: float
    right: float
    bottom: float

    @property
    def height(self) -> float:
        """Return the height of the ink."""
        return self.bottom - self.top


@dataclass(frozen=True, slots=True)
class _Raised:
    """Hold the raised part of a numeral: where it is and what it says."""

    box: Glyph
    text: str
    confidence: float


def settle_numerals(gray: Gray, words: Sequence[PlacedWord], threads: int = 1) -> list[PlacedWord]:
    """Return the words with every numeral that has a raised part put together as one word, its form set."""
    words = [
        _lone_dollar(gray, word, words, threads) if word.text in LONE_SIGNS and word.type_px >= SMALLEST else word
        for word in words
    ]
    used: set[int] = set()
    settled: dict[int, PlacedWord] = {}
    for i, word in enumerate(words):
        if i in used:
            continue
        if word.type_px < SMALLEST:
            if POINTLESS.match(word.text):
                settled[i] = _pointed(gray, word, _glyphs(gray, word)) or word
            continue
        if not HEAD.match(word.text):
            continue
        glyphs = _glyphs(gray, word)
        if not glyphs:
            continue
        tall = max(glyph.height for glyph in glyphs[_signs(word, glyphs) :])
        foot = float(np.median([glyph.bottom for glyph in glyphs if glyph.height > SMALL * tall]))
        small = _raised_end(glyphs, tall, foot)
        if small:
            whole = _inside(gray, word, glyphs, small, threads)
            if whole:
                settled[i] = whole
            continue
        body = word.type_px < DISPLAY
        found, eaten = (None, set()) if body else _beside(gray, words, i, glyphs[-1], tall, foot, threads)
        whole = _joined(word, sum(c.isdigit() for c in word.text), found) if found else _pointed(gray, word, glyphs)
        if whole:
            settled[i] = whole
            used |= eaten
    return [settled.get(i, word) for i, word in enumerate(words) if i not in used]


def _glyphs(gray: Gray, word: PlacedWord) -> list[Glyph]:
    """Return the blobs of ink of a word from left to right; blobs one above the other are one glyph, rules are none."""
    edge = 0.04 * (word.bottom - word.top)
    scale = WORK_HEIGHT / max(1.0, word.bottom - word.top)
    crop, x0, y0 = _crop(gray, word.left - edge, word.top - edge, word.right + edge, word.bottom + edge, scale)
    if crop.size == 0:
        return []
    blobs = _blobs_of(crop, x0, y0, scale)
    if not blobs:
        return []
    tallest = max(blob.height for blob in blobs)
    glyphs: list[Glyph] = []
    for blob in sorted(blobs, key=lambda g: (g.left + g.right) / 2):
        shared = min(glyphs[-1].right, blob.right) - max(glyphs[-1].left, blob.left) if glyphs else 0.0
        if glyphs and shared > 0.6 * min(glyphs[-1].right - glyphs[-1].left, blob.right - blob.left):
            glyphs[-1] = _around([glyphs[-1], blob])
        else:
            glyphs.append(blob)
    return [glyph for glyph in glyphs if glyph.height > 0.2 * tallest]


def _signs(word: PlacedWord, glyphs: list[Glyph]) -> int:
    """Return how many glyphs at the start are a dollar sign: its bars make it taller than the figures."""
    head = HEAD.match(word.text)
    return 1 if head and head["sign"] and len(glyphs) > 1 else 0


def _is_raised(glyph: Glyph, tall: float, foot: float) -> bool:
    return 0.2 * tall < glyph.height < SMALL * tall and glyph.bottom < foot - LIFT * tall


def _raised_end(glyphs: list[Glyph], tall: float, foot: float) -> list[Glyph]:
    """Return the glyphs of the raised end of a word, none without one."""
    end = len(glyphs)
    while end > 1 and _is_raised(glyphs[end - 1], tall, foot):
        end -= 1
    return glyphs[end:] if any(g.height > SMALL * tall for g in glyphs[:end]) else []


def _inside(gray: Gray, word: PlacedWord, glyphs: list[Glyph], small: list[Glyph], threads: int) -> PlacedWord | None:
    """Settle a numeral whose raised part was read as the end of the same word."""
    figures = sum(c.isdigit() for c in word.text)
    large = len(glyphs) - len(small) - _signs(word, glyphs)
    box = _around(small)
    if len(small) == 2 and large + 2 == figures and word.text[-2:].isdigit():
        return _joined(word, large, _Raised(box, word.text[-2:], word.confidence))
    raised = _read_raised(gray, box, threads)
    if raised is None:
        return None
    of_raised = len(raised.text) if raised.text.isdigit() else 1
    # The large figures are as many as large blobs, whether the raised part was read with them or left out; else one of
    # the blobs is a border or a smear, and nothing is settled.
    return _joined(word, large, raised) if large >= 1 and large in (figures - of_raised, figures) else None


def _beside(
    gray: Gray, words: Sequence[PlacedWord], i: int, last: Glyph, tall: float, foot: float, threads: int
) -> tuple[_Raised | None, set[int]]:
    """Look for a raised part right of the last large figure, read as another word or not at all."""
    top = foot - tall
    blobs = _blobs(gray, last.right + 0.02 * tall, top - 0.25 * tall, last.right + 1.6 * tall, foot, tall)
    raised = [g for g in blobs if _is_raised(g, tall, foot) and g.top < top + 0.35 * tall]
    chain: list[Glyph] = []
    reach = last.right + 0.55 * tall
    for glyph in sorted(raised, key=lambda g: g.left):
        if glyph.left > reach:
            break
        chain.append(glyph)
        reach = glyph.right + 0.35 * glyph.height
    if not chain or len(chain) > 3:
        return None, set()
    box = _around(chain)
    inside = {
        j
        for j, other in enumerate(words)
        if j != i
        and box.left - 0.2 * tall <= (other.left + other.right) / 2 <= box.right + 0.2 * tall
        and box.top - 0.2 * tall <= (other.top + other.bottom) / 2 <= box.bottom + 0.2 * tall
    }
    texts = [words[j] for j in inside]
    if len(texts) == 1 and re.fullmatch(r"\d\d", texts[0].text):
        return _Raised(box, texts[0].text, texts[0].confidence), inside
    if any(sum(c.isalpha() for c in t.text) > 2 for t in texts):
        return None, set()
    return _read_raised(gray, box, threads), inside


def _lone_dollar(gray: Gray, word: PlacedWord, words: Sequence[PlacedWord], threads: int) -> PlacedWord:
    """Read the large figures right of a dollar sign that stands alone: a numeral can be too large to be found."""
    tall = word.bottom - word.top
    own, _, _ = _crop(gray, word.left, word.top, word.right, word.bottom, WORK_HEIGHT / tall)
    scale = WORK_HEIGHT / (1.5 * tall)
    right, bottom = word.right + 1.8 * tall, word.bottom + 1.3 * tall
    crop, x0, y0 = _crop(gray, word.right - 0.1 * tall, word.top - 0.3 * tall, right, bottom, scale)
    if not own.size or not crop.size:
        return word
    edges = np.concatenate([own[0], own[-1], own[:, 0], own[:, -1]])
    blobs = _blobs_of(crop, x0, y0, scale, light=bool(np.median(edges) < 128))
    chain: list[Glyph] = []
    for glyph in sorted(blobs, key=lambda g: g.left):
        first = chain[0] if chain else None
        alike = 0.85 < glyph.height / first.height < 1.18 if first else 0.8 < glyph.height / tall < 2.5
        beside = glyph.left - (chain[-1].right if chain else word.right) < 0.4 * tall
        if alike and beside and glyph.top < word.bottom and len(chain) < 3:
            chain.append(glyph)
    box = _around(chain) if chain else None
    if not box or any(o is not word and box.left < (o.left + o.right) / 2 < box.right
                      and box.top < (o.top + o.bottom) / 2 < box.bottom for o in words):  # fmt: skip
        return word
    pad = 0.15 * box.height
    crop, _, _ = _crop(gray, box.left - pad, box.top - pad, box.right + pad, box.bottom + pad, 44 / box.height)
    read = read_strips([crop], threads)[0]
    if not re.fullmatch(r"\d{1,3}", read.text) or read.confidence < LONE_SURE:
        return word
    text = f"${read.text}"
    whole = _around([box, Glyph(word.left, word.top, word.right, word.bottom)])
    return replace(word, text=text, letters=text, centres=(), left=whole.left, top=whole.top, right=whole.right,
                   bottom=whole.bottom, type_px=box.height, confidence=read.confidence, reader="numeral")  # fmt: skip


def _pointed(gray: Gray, word: PlacedWord, glyphs: list[Glyph]) -> PlacedWord | None:
    """Give a numeral its point back where a dot stands on the foot in a wider gap before its last two figures.

    After a dollar sign a gap as wide as a point is enough: a worn point leaves its room behind.
    """
    if len(glyphs) != len(word.text) or not POINTLESS.match(word.text):
        return None
    before, after, last = glyphs[-3], glyphs[-2], glyphs[-1]
    tall = max(before.height, after.height)
    gap, usual = after.left - before.right, last.left - after.right
    if gap < 0.1 * tall or gap < 1.6 * max(usual, 0.03 * tall):
        return None
    text = f"{word.text[:-2]}.{word.text[-2:]}"
    pointed = replace(word, text=text, letters=text, centres=(), confidence=min(word.confidence, 0.85))
    if word.text[0] == "$" and gap > WORN_POINT * tall and gap > 1.8 * usual:
        return pointed
    scale = WORK_HEIGHT / tall
    crop, x0, y0 = _crop(gray, before.left, before.top, after.right, before.bottom + 0.1 * tall, scale)
    if crop.size == 0:
        return None
    _, _, stats, _ = cv2.connectedComponentsWithStats(ink_of(crop).astype(np.uint8), connectivity=8)
    for x, y, w, h, _area in stats[1:]:
        middle, foot = x0 + (x + w / 2) / scale, y0 + (y + h) / scale
        dot = 0.05 * WORK_HEIGHT <= max(w, h) <= 0.35 * WORK_HEIGHT
        if dot and before.right - 0.05 * tall < middle < after.left + 0.05 * tall and foot > before.bottom - 0.2 * tall:
            return pointed
    return None


def _read_raised(gray: Gray, box: Glyph, threads: int) -> _Raised | None:
    """Read a raised part by itself: two figures, or a cent sign."""
    pad = 0.3 * box.height
    crop, _, _ = _crop(gray, box.left - pad, box.top - pad, box.right + pad, box.bottom + pad, 40 / box.height)
    if crop.size == 0:
        return None
    read = read_strips([crop], threads, only="0123456789¢c")[0]
    text = read.text.replace(" ", "")
    narrow = (box.right - box.left) < 0.95 * box.height
    if re.fullmatch(r"\d\d", text):
        return _Raised(box, text, read.confidence)
    if narrow and text in ("¢", "c"):
        return _Raised(box, "¢", max(0.5, read.confidence))
    if narrow and box.height > DISPLAY / 2 and (SIGN_ALONE.match(text) or not text):
        return _Raised(box, "¢", 0.6)
    return None


def _joined(word: PlacedWord, large: int, raised: _Raised) -> PlacedWord | None:
    """Return one word from the large figures and the raised part, None where they make no price.

    Without a sign, small type must not become a price: a raised figure there is a footnote, a fraction or a speck.
    """
    head = HEAD.match(word.text)
    figures = re.sub(r"\D", "", head["figures"])[:large] if head else ""
    form: PriceForm
    sign = "$" if head and head["sign"] else ""
    if word.type_px < DISPLAY and not sign:
        return None
    if raised.text == "¢" and (len(figures) > 2 or sign or figures.startswith("0")):
        return None
    if raised.text == "¢":
        text, form = f"{figures}¢", "raised_cent_sign"
    elif sign:
        text, form = f"${figures}.{raised.text}", "raised_cents"
    else:
        text, form = f"{figures}.{raised.text}", "raised_cents_bare"
    return replace(
        word,
        text=text,
        letters=text,
        centres=(),
        left=min(word.left, raised.box.left),
        top=min(word.top, raised.box.top),
        right=max(word.right, raised.box.right),
        bottom=max(word.bottom, raised.box.bottom),
        confidence=min(word.confidence, raised.confidence),
        form=form,
        reader="numeral",
    )


def _blobs(gray: Gray, left: float, top: float, right: float, bottom: float, tall: float) -> list[Glyph]:
    scale = WORK_HEIGHT / tall
    crop, x0, y0 = _crop(gray, left, top, right, bottom, scale)
    if crop.size == 0 or crop.max() - crop.min() < 40:
        return []
    inner = x0 + (crop.shape[1] - 1) / scale
    return [blob for blob in _blobs_of(crop, x0, y0, scale) if blob.right < inner]


def _blobs_of(crop: Gray, x0: float, y0: float, scale: float, *, light: bool | None = None) -> list[Glyph]:
    """Return the blobs of a window that can be figures, in pixels of the page: neither specks nor rules."""
    _, _, stats, _ = cv2.connectedComponentsWithStats(ink_of(crop, light=light).astype(np.uint8), connectivity=8)
    return [
        Glyph(x0 + x / scale, y0 + y / scale, x0 + (x + w) / scale, y0 + (y + h) / scale)
        for x, y, w, h, area in stats[1:]
        if area >= 12 and h >= 0.15 * WORK_HEIGHT and w <= 2 * h
    ]


def _around(glyphs: Sequence[Glyph]) -> Glyph:
    return Glyph(
        min(g.left for g in glyphs),
        min(g.top for g in glyphs),
        max(g.right for g in glyphs),
        max(g.bottom for g in glyphs),
    )


def _crop(gray: Gray, left: float, top: float, right: float, bottom: float, scale: float) -> tuple[Gray, int, int]:
    """Cut a window out of the page and resize it; return it with its left and top in the page."""
    x0, y0 = max(0, int(left)), max(0, int(top))
    x1, y1 = min(gray.shape[1], int(np.ceil(right))), min(gray.shape[0], int(np.ceil(bottom)))
    if x1 - x0 < 2 or y1 - y0 < 2:
        return np.zeros((0, 0), np.uint8), x0, y0
    window: NDArray[np.uint8] = gray[y0:y1, x0:x1]
    kind = cv2.INTER_CUBIC if scale > 1 else cv2.INTER_AREA
    return np.asarray(cv2.resize(window, None, fx=scale, fy=scale, interpolation=kind), np.uint8), x0, y0

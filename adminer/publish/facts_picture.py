"""One advert with its facts drawn on the scan: numbered frames whose numbers a list beside it explains."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from io import BytesIO
from typing import Final, Literal

import numpy as np
from numpy.typing import NDArray
from PIL import Image, ImageDraw, ImageFont

from adminer.records import Box

FactKind = Literal["price", "item", "line", "retailer", "condition", "date"]
INKS: Final[dict[FactKind, str]] = {
    "price": "#a4472f",
    "item": "#5b5147",
    "line": "#1f5f6b",
    "retailer": "#6a3d7c",
    "condition": "#8a6d12",
    "date": "#2f6b3a",
}
LABEL_PX: Final = 15


@dataclass(frozen=True, slots=True)
class Fact:
    """Hold one fact to frame: what it is, what it says, where it stands on the scan."""

    kind: FactKind
    says: str
    box: Box


def draw_facts(pixels: NDArray[np.uint8], crop: Box, facts: Sequence[Fact], longest: int = 1100) -> bytes:
    """Return a PNG of the crop with each fact framed and numbered from 1.

    `pixels` is the scan, (H, W) or (H, W, 3); `crop` and the boxes of the facts are in its pixels. The
    longest side of the result has at most `longest` pixels, small crops are enlarged to that.
    """
    clipped = _within(crop, pixels.shape[1], pixels.shape[0])
    picture = Image.fromarray(pixels[clipped.y : clipped.bottom, clipped.x : clipped.right]).convert("RGB")
    scale = min(longest / max(picture.size), 3.0)
    picture = picture.resize((max(1, round(picture.width * scale)), max(1, round(picture.height * scale))))
    draw = ImageDraw.Draw(picture)
    font = ImageFont.load_default(LABEL_PX)
    for number, fact in enumerate(facts, start=1):
        left, top = (fact.box.x - clipped.x) * scale, (fact.box.y - clipped.y) * scale
        right, bottom = left + fact.box.w * scale, top + fact.box.h * scale
        draw.rectangle((left - 2, top - 2, right + 2, bottom + 2), outline=INKS[fact.kind], width=2)
        tag = str(number)
        width = draw.textlength(tag, font=font) + 6
        # left of the frame, so that in a column of prices no number hides the price above
        beside = max(left - 3 - width, 0)
        draw.rectangle((beside, top - 2, beside + width, top + LABEL_PX), fill=INKS[fact.kind])
        draw.text((beside + 3, top - 2), tag, fill="white", font=font)
    out = BytesIO()
    picture.save(out, format="PNG", optimize=True)
    return out.getvalue()


def _within(box: Box, width: int, height: int) -> Box:
    x, y = max(box.x, 0), max(box.y, 0)
    return Box(x, y, max(1, min(box.right, width) - x), max(1, min(box.bottom, height) - y))

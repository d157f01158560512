"""The raised part of a price: smaller figures or a cent sign that stand clear above the foot of the large figures.

After trade.md E.3: a part of a numeral that is clearly smaller than its tallest figure and stands clear above the
baseline, right of the large figures, is raised; it is read by itself.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import takewhile

from adminer.layout.clean import Gray
from adminer.reading.glyphs import WORK_HEIGHT, Glyph, alone, around, blobs_of, cut_out
from adminer.reading.placed import PlacedWord
from adminer.reading.recognise import read_strips

SMALL = 0.8  # a raised figure is at most this part of the large ones; trade.md E.3 has 0.62, real type has up to 0.75
LIFT = 0.12  # and its foot stands above theirs by at least this part of their height
HANG = 0.35  # of the height of the large figures: its head is no further below theirs
DOWN = 0.25  # of the height of the large figures: it reaches at least so far below their head, or is of the line above
TINY = 0.4  # of the height of the raised part: lower words in its box are grain
GAP = 0.55  # of the height of the large figures: it stands no further right of them
READ_AT = 27  # pixels: the height a raised part is brought to; with the paper around it fills what the network reads at
MOST_PIECES = 4  # blobs of a raised part: two figures whose hairlines broke
SIGN = 7.0  # pixels of a cent sign from which it can be told from a speck when no reading says so
WIDEST_C = 1.2  # width of a "c" with a ball by its height
SIGN_UNREAD = 0.25  # of the height of the large figures: lower, what was not read as a sign is a piece of a figure
SIGN_ALONE = re.compile(r"^[¢c©eé°oO0469tfg*®]$")


@dataclass(frozen=True, slots=True)
class Raised:
    """Hold the raised part of a numeral: where it is and what it says, two figures or "¢"."""

    box: Glyph
    text: str
    confidence: float

    @property
    def letters(self) -> int:
        """Return how many letters of a reading it can have been."""
        return len(self.text)


def is_raised(glyph: Glyph, tall: float, foot: float) -> bool:
    """Say whether a glyph is small and high against figures of a height that stand on a foot."""
    return 0.2 * tall < glyph.height < SMALL * tall and glyph.bottom < foot - LIFT * tall


def raised_beside(
    gray: Gray, words: Sequence[PlacedWord], i: int, last: Glyph, tall: float, foot: float, threads: int
) -> tuple[Raised | None, set[int]]:
    """Look for the raised part right of the last large figure of word `i`, read as another word or not at all.

    Returns it with the numbers of the words that are nothing but it.
    """
    chain = _chain(gray, last, tall, foot)
    if not 0 < len(chain) <= MOST_PIECES:
        return None, set()
    box = around(chain)
    inside = words_within(words, i, box, 0.2 * tall)
    texts = [words[j] for j in inside]
    if len(texts) == 1 and re.fullmatch(r"\d\d", texts[0].text):
        return Raised(box, texts[0].text, texts[0].confidence), inside
    if any(sum(c.isalpha() for c in t.text) > 2 for t in texts):
        return None, set()
    return read_raised(gray, box, threads, max(SIGN, SIGN_UNREAD * tall)), inside


def words_within(words: Sequence[PlacedWord], i: int, box: Glyph, slack: float) -> set[int]:
    """Return the numbers of the words other than `i` whose middle lies in a box, much smaller ones left out."""
    return {
        j
        for j, other in enumerate(words)
        if j != i
        and box.left - slack <= (other.left + other.right) / 2 <= box.right + slack
        and box.top - slack <= (other.top + other.bottom) / 2 <= box.bottom + slack
        and other.bottom - other.top > TINY * box.height
    }


def _chain(gray: Gray, last: Glyph, tall: float, foot: float) -> list[Glyph]:
    """Return the raised blobs right of the last large figure that follow each other closely, with nothing between."""
    top = foot - tall
    scale = WORK_HEIGHT / tall
    window = (last.left, top - 0.25 * tall, last.right + 1.6 * tall, foot)
    crop, x0, y0 = cut_out(gray, *window, scale)
    if crop.size == 0 or crop.max() - crop.min() < 40:
        return []
    edge = x0 + (crop.shape[1] - 1) / scale
    blobs = [b for b in blobs_of(crop, x0, y0, scale) if b.right < edge and b.left + b.right > 2 * last.right]
    chain: list[Glyph] = []
    reach = last.right + GAP * tall
    beside = sorted((b for b in blobs if b.bottom > top + DOWN * tall), key=lambda g: g.left)
    raised = takewhile(lambda g: g.height <= SMALL * tall, beside)
    for glyph in (g for g in raised if is_raised(g, tall, foot) and g.top < top + HANG * tall):
        if glyph.left > reach:
            break
        chain.append(glyph)
        reach = glyph.right + 0.35 * glyph.height
    return chain


def read_raised(gray: Gray, box: Glyph, threads: int, sign_from: float = SIGN) -> Raised | None:
    """Read a raised part by itself: two figures, or a cent sign, unread as one only above a height in pixels."""
    crop = alone(gray, box, READ_AT)
    if crop.size == 0:
        return None
    read = read_strips([crop], threads, only="0123456789¢c")[0]
    text = read.text.replace(" ", "")
    narrow = box.width < (WIDEST_C if text in ("¢", "c") else 0.95) * box.height
    if re.fullmatch(r"\d\d", text):
        return Raised(box, text, read.confidence)
    if narrow and text in ("¢", "c"):
        return Raised(box, "¢", max(0.5, read.confidence))
    if narrow and box.height > sign_from and (SIGN_ALONE.match(text) or not text):
        return Raised(box, "¢", 0.6)
    return None

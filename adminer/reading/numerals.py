"""Price numerals by the geometry of their type: raised or smaller last figures are cents, whatever the string says."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from adminer.layout.clean import Gray
from adminer.reading.fractions import settle_fraction
from adminer.reading.glyphs import Glyph, around, glyphs_of, letters_of
from adminer.reading.lost import (
    DISPLAY,
    LONE_SIGNS,
    with_cent,
    with_dollar,
    with_each_figure,
    with_figures,
    with_second_figure,
    with_sign_of_small_type,
)
from adminer.reading.placed import PlacedWord
from adminer.reading.points import POINTLESS, with_point, without_leader
from adminer.reading.raised import SMALL, Raised, is_raised, raised_beside, read_raised, words_within
from adminer.reading.signs import in_sterling
from adminer.reading.slashes import with_slash
from adminer.reading.tails import settle_tail
from adminer.reading.worn_fractions import settle_worn_fraction
from adminer.records import PriceForm

ROOM = 0.15  # of the height of a word: added at both ends where its glyphs make no price
SMALLEST = 7.0  # height in pixels of figures below which glyphs cannot be told apart by size
SURE = 0.95  # mean probability of a reading from which its raised figures are not read once more by themselves
HEAD = re.compile(r"^[\"'“‘(*°]*(?P<sign>[$Ss§]?)(?P<figures>\d[\d,]*)\.?(?P<tail>[^\d\s/\-–—.,:;]{0,3})$")
TRADE_SMALL = 0.62  # of the large figures: what is higher may be figures of the old style; trade.md E.3
WIDEST = 1.15  # of the height of figures, each with its white: a plate beside a cup is no 8¢
HUGE = 10.0  # times the usual type of a page
HANGING, LOW_FIGURES = frozenset("34579"), frozenset("012")  # of the old style: hang below the foot; are low
SIGN_AS_FIGURE = frozenset("3568")  # what a raised dollar sign is taken for
# Letters that display figures are taken for; trade.md E.3 lists "s", "g", "o" for 8, 9 and 0.
FIGURE_LIKE = str.maketrans("gqoOlI]|", "99001111")
QUOTE_AMONG_FIGURES = re.compile(r"(?<=\d)[\"'“”‘’°](?=\d)")  # what a small raised figure is taken for
EIGHT_LIKE = re.compile(r"(?<=\d)[sS]")


@dataclass(frozen=True, slots=True)
class _Numeral:
    """Hold the figures of a numeral with their glyphs; `large` of them are large, the rest is raised."""

    sign: str
    figures: str
    glyphs: tuple[Glyph, ...]  # of figures and what follows, the signs before them left out
    lead: tuple[Glyph, ...]
    large: int
    tall: float
    foot: float


def settle_numerals(gray: Gray, words: Sequence[PlacedWord], threads: int = 1) -> list[PlacedWord]:
    """Return the words with every numeral that has a raised part put together as one word, its form set."""
    sterling = in_sterling(words)
    words = [
        with_figures(gray, word, words, threads)
        if word.text in LONE_SIGNS and word.type_px >= SMALLEST
        else _settle_word(gray, word, threads, sterling=sterling)
        for word in words
    ]
    used: set[int] = set()
    settled: dict[int, PlacedWord] = {}
    for i, word in enumerate(words):
        if i in used or not _may_be_price(word):
            continue
        glyphs = glyphs_of(gray, word)
        whole, eaten = _put_together(gray, words, i, glyphs, threads)
        if not whole and word.type_px >= DISPLAY:  # what hangs into its box may have been taken for a figure
            whole, eaten = _put_together(gray, words, i, glyphs_of(gray, _with_room(word)), threads)
        whole = whole or with_point(gray, word, glyphs, words)
        if whole:
            settled[i] = whole
            used |= eaten
    usual = float(np.median([word.type_px for word in words])) if words else 0.0
    left = [(i, word) for i, word in enumerate(words) if i not in used and not _is_drawing(word, usual)]
    return [settled.get(i, word) for i, word in left]


def _is_drawing(word: PlacedWord, usual: float) -> bool:
    """Say whether a figure by itself, far larger than the `usual` type, is wider than a figure can be.

    In small type the box of a figure may hold the white beside it as well.
    """
    lone = len(word.text) == 1 and word.text.isdigit() and word.type_px > HUGE * usual
    return lone and word.right - word.left > WIDEST * (word.bottom - word.top)


def _with_room(word: PlacedWord) -> PlacedWord:
    room = ROOM * (word.bottom - word.top)
    return replace(word, left=word.left - room, right=word.right + room)


def _put_together(
    gray: Gray, words: Sequence[PlacedWord], i: int, glyphs: Sequence[Glyph], threads: int
) -> tuple[PlacedWord | None, set[int]]:
    numeral = _take_apart(words[i], glyphs)
    return _with_raised(gray, words, i, numeral, threads) if numeral else (None, set())


def _settle_word(gray: Gray, word: PlacedWord, threads: int, *, sterling: bool) -> PlacedWord:
    word = without_leader(word)
    for settle in (with_each_figure, with_second_figure, with_sign_of_small_type, with_dollar, settle_fraction):
        word = settle(gray, word, threads)
    word = with_slash(gray, settle_tail(gray, word, sterling=sterling))
    return with_cent(gray, settle_worn_fraction(gray, word, threads, sterling=sterling), threads)


def _may_be_price(word: PlacedWord) -> bool:
    return bool(not word.form and (HEAD.match(_figures_for_letters(word)) or POINTLESS.match(word.text)))


def _figures_for_letters(word: PlacedWord) -> str:
    """Return the text of a word of display type with the letters that are figures misread as such."""
    some = any(c.isdigit() for c in word.text) or word.text in "gq"
    if not some or word.type_px < DISPLAY:
        return word.text
    text = QUOTE_AMONG_FIGURES.sub("", word.text) if word.text.startswith("$") else word.text
    return EIGHT_LIKE.sub("8", text.translate(FIGURE_LIKE))


def _take_apart(word: PlacedWord, glyphs: Sequence[Glyph]) -> _Numeral | None:
    """Measure the figures of a word, None where its glyphs do not suit its letters.

    A small raised glyph before the figures is a dollar sign, whatever it was read as.
    """
    text = _figures_for_letters(word)
    head = HEAD.match(text)
    letters = letters_of(replace(word, text=text))
    if not head or not glyphs:
        return None
    sign, figures = "$" if head["sign"] else "", re.sub(r"\D", "", head["figures"])
    if len(glyphs) != len(letters):
        first = 1 if sign and len(glyphs) > 1 else 0
        rest = glyphs[first:]
        tall = max(glyph.height for glyph in rest)
        foot = float(np.median([glyph.bottom for glyph in rest if glyph.height > SMALL * tall]))
    else:
        first = next(k for k, c in enumerate(letters) if c.isdigit())
        after = glyphs[first + 1] if len(figures) > 1 else glyphs[first]
        if figures[0] in SIGN_AS_FIGURE and is_raised(glyphs[first], after.height, after.bottom):
            first, sign, figures = first + 1, "$", figures[1:]
        rest = glyphs[first:]
        tall, foot = rest[0].height, rest[0].bottom
        if first and is_raised(glyphs[first - 1], tall, foot) and glyphs[first - 1].height > 0.3 * tall:
            sign = "$"
    large = len(rest)
    while large and is_raised(rest[large - 1], tall, foot):
        large -= 1
    if not large or tall < SMALLEST:
        return None
    return _Numeral(sign, figures, tuple(rest), tuple(glyphs[:first]), large, tall, foot)


def _with_raised(
    gray: Gray, words: Sequence[PlacedWord], i: int, numeral: _Numeral, threads: int
) -> tuple[PlacedWord | None, set[int]]:
    """Return a word with its raised part, None without one, and which words beside it were nothing but that part."""
    word, small = words[i], numeral.glyphs[numeral.large :]
    if len(small) == 2 and numeral.large + 2 == len(numeral.figures):
        raised = Raised(around(small), numeral.figures[-2:], word.confidence)
        if word.confidence < SURE:
            last = numeral.glyphs[numeral.large - 1]
            again = read_raised(gray, raised.box, threads)
            beside, _ = raised_beside(gray, words, i, last, numeral.tall, numeral.foot, threads)
            others = [other for other in (again, beside) if other and other.letters == 2]
            raised = max([raised, *others], key=lambda other: other.confidence)
        whole = _joined(word, numeral, numeral.large, raised)
        return whole, words_within(words, i, raised.box, 0.2 * numeral.tall) if whole else set()
    if numeral.tall < DISPLAY and not small and not numeral.sign:
        return None, set()
    last = numeral.glyphs[numeral.large - 1]
    found, eaten = raised_beside(gray, words, i, last, numeral.tall, numeral.foot, threads)
    # The large figures are as many as large blobs, whether the raised part was read with them or left out; else one of
    # the blobs is a border or a smear, and nothing is settled.
    count = len(numeral.figures)
    number = numeral.large if small else count
    if not found or not count - found.letters <= number <= count:
        return None, set()
    if small and number + found.letters > count > found.letters and numeral.figures.endswith(found.text):
        number = count - found.letters  # its first figure hangs so low that it was counted with the large ones
    whole = _joined(word, numeral, number, found)
    return whole, eaten if whole else set()


def _joined(word: PlacedWord, numeral: _Numeral, large: int, raised: Raised) -> PlacedWord | None:
    """Return one word from the large figures and the raised part, None where they make no price.

    Without a sign, small type must not become a price: a raised figure there is a footnote, a fraction or a speck.
    """
    figures, sign = numeral.figures[:large], numeral.sign
    form: PriceForm
    if numeral.tall < DISPLAY and not sign:
        return None
    if sum(glyph.width for glyph in numeral.glyphs[: numeral.large]) > WIDEST * large * numeral.tall:
        return None
    high = raised.box.height > TRADE_SMALL * numeral.tall
    if high and set(figures) <= HANGING and set(raised.text) <= LOW_FIGURES:
        return None
    if raised.text == "¢" and (len(figures) > 2 or sign or figures.startswith("0")):
        return None
    if raised.text == "¢":
        text, form = f"{figures}¢", "raised_cent_sign"
    elif sign:
        text, form = f"${figures}.{raised.text}", "raised_cents"
    else:
        text, form = f"{figures}.{raised.text}", "raised_cents_bare"
    box = around([*numeral.lead, *numeral.glyphs[: numeral.large], raised.box])
    return replace(
        word,
        text=text,
        centres=(),
        left=box.left,
        top=box.top,
        right=box.right,
        bottom=box.bottom,
        type_px=numeral.tall,
        confidence=min(word.confidence, raised.confidence),
        form=form,
        reader="numeral",
    )

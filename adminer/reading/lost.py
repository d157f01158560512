"""What was lost of a numeral or misread in it: its signs and its figures, each looked at by itself."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from adminer.layout.clean import Gray
from adminer.reading.glyphs import EVEN, WORK_HEIGHT, Glyph, alone, around, blobs_of, cut_out, glyphs_of, letters_of
from adminer.reading.letters import ReadLine
from adminer.reading.placed import PlacedWord
from adminer.reading.recognise import read_strips

CENTLESS = re.compile(r"^\d{1,2}[½¼¾⅓⅔]?$")
SMALL_TYPE = 9.0  # height in pixels of figures: a sign beside lower ones cannot be told from grain
SMALLEST_TOUCHING = 12.0  # the same for a sign that touches them
SIGN_HIGH = 0.65  # of the height of the figures: lower ink is the foot of a fraction or grain
CENT_CHANCE = 0.01  # probability of a cent sign in such ink; figures of the demo give under 0.006
CENT_SURE = 0.1  # and of one that touches the last figure or follows a lone one
FIVE_OR_SIGN = re.compile(r"^[58]\d{1,4}(?:\.\d\d)?$")  # a dollar sign of display type is taken for these two
DOLLAR_CHANCE = 0.01  # probability of "$" alone or with its neighbour; true figures of the press give under 0.001
LOOKED_AT = 27  # pixels: the height such a glyph is brought to
DISPLAY = 14.0  # height in pixels of figures from which such a look is worth anything
ONE_FIGURE = re.compile(r"^[^\w$£]?(?P<figure>\d)[c¢][.,]?$")
TWO_FIGURES = re.compile(r"^[1-9]\d[c¢][.,]?$")
TWO_SURE = 0.9  # mean probability of both figures
AROUND = 0.15  # of the height of a word: paper kept around it
UNSIGNED = re.compile(r"^(?P<head>\d/)?\d{2,3}$")  # what cents of small type are read as in their line
LIKE_A_FIGURE = frozenset("gqoOlIsS")
LETTER_AMONG_FIGURES = re.compile(r"^\$?(?=.*\d)[gqoOlIsS\d]{2,4}$")
LONE_SIGNS = ("$", "S", "s")  # what a dollar sign by itself is read as
LONE_SURE = 0.8  # mean probability of figures that no detector found


def with_cent(gray: Gray, word: PlacedWord, threads: int) -> PlacedWord:
    """Return a number with the cent sign that was not read: ink of its own right of the last figure, or run into it.

    After a fraction such ink is enough; after figures it must look a little like a cent sign.
    """
    if word.form or word.type_px < SMALL_TYPE or not CENTLESS.match(word.text):
        return word
    letters = glyphs_of(gray, word)
    if len(letters) != len(word.text) or min(g.height for g in letters) < EVEN * max(g.height for g in letters):
        return word
    last = letters[-1]
    edge = 0.04 * (word.bottom - word.top)
    scale = WORK_HEIGHT / last.height
    crop, x0, y0 = cut_out(gray, last.right - edge, last.top - edge, word.right + edge, last.bottom + edge, scale)
    blobs = blobs_of(crop, x0, y0, scale) if crop.size else []
    high = [b for b in blobs if b.height > SIGN_HIGH * letters[0].height and b.left + b.right > 2 * last.right]
    beside = [b for b in high if b.left > x0]  # what the window cuts on the left is the foot of the fraction itself
    if beside and not word.text[-1].isdigit():
        return _with_sign(word, 0.7)
    looks = [alone(gray, around(beside), LOOKED_AT)] if beside else []
    if word.type_px >= SMALLEST_TOUCHING and len(letters) > 1:
        looks.append(alone(gray, last, LOOKED_AT))
    for read in read_strips([look for look in looks if look.size], threads):
        own = len(read.letters) == 1 if beside else read.text[:1] == word.text[-1] and len(read.letters) == 2
        least = CENT_CHANCE if beside and len(letters) > 1 else CENT_SURE
        if own and max(letter.cent for letter in read.letters) >= least:
            return _with_sign(word, 0.8)
    return word


def _with_sign(word: PlacedWord, sure: float) -> PlacedWord:
    text = f"{word.text}¢"
    return replace(word, text=text, centres=(), confidence=min(word.confidence, sure))


def with_dollar(gray: Gray, word: PlacedWord, threads: int) -> PlacedWord:
    """Return a number with a dollar sign in place of its first figure, where that looks like one seen by itself."""
    if word.form or word.type_px < DISPLAY or not FIVE_OR_SIGN.match(word.text):
        return word
    glyphs = glyphs_of(gray, word)
    if len(glyphs) != len(letters_of(word)):
        return word
    looks = [alone(gray, glyphs[0], LOOKED_AT), alone(gray, around(glyphs[:2]), LOOKED_AT)]
    reads = read_strips([look for look in looks if look.size], threads)
    if max((letter.dollar for read in reads for letter in read.letters), default=0.0) < DOLLAR_CHANCE:
        return word
    text = f"${word.text[1:]}"
    return replace(word, text=text, confidence=min(word.confidence, 0.9))


def with_each_figure(gray: Gray, word: PlacedWord, threads: int) -> PlacedWord:
    """Return a number of display type with each letter in it that was taken for a figure read alone, as a figure.

    A "1" with a flag comes as "q" beside a raised dollar sign, a "9" as "g": what the letter resembles does not tell.
    """
    if word.form or word.type_px < DISPLAY or not LETTER_AMONG_FIGURES.match(word.text):
        return word
    glyphs = glyphs_of(gray, word)
    if len(glyphs) != len(word.text):
        return word
    doubtful = [k for k, letter in enumerate(word.text) if letter in LIKE_A_FIGURE]
    looks = [alone(gray, glyphs[k], LOOKED_AT) for k in doubtful]
    if any(look.size == 0 for look in looks):
        return word
    letters = list(word.text)
    for k, read in zip(doubtful, read_strips(looks, threads, only="0123456789"), strict=True):
        if len(read.text) != 1:
            return word
        letters[k] = read.text
    text = "".join(letters)
    return replace(word, text=text, confidence=min(word.confidence, 0.85))


def with_second_figure(gray: Gray, word: PlacedWord, threads: int) -> PlacedWord:
    """Return a lone figure of cents with the one beside it that the line swallowed, where the word alone shows both."""
    lone = ONE_FIGURE.match(word.text)
    if word.form or not lone:
        return word
    read = _by_itself(gray, word, threads)
    if read is None:
        return word
    sure = float(np.mean([letter.confidence for letter in read.letters[:2]])) if read.letters else 0.0
    if not TWO_FIGURES.match(read.text) or lone["figure"] not in read.text or sure < TWO_SURE:
        return word
    return replace(word, text=read.text, centres=(), confidence=min(read.confidence, 0.85))


def with_sign_of_small_type(gray: Gray, word: PlacedWord, threads: int) -> PlacedWord:
    """Return a number of small type with the cent sign that the word alone shows, a little at least, after its figures.

    In its line such a sign is left out or read as the last figure, without a doubt.
    """
    seen = UNSIGNED.match(word.text)
    if word.form or not seen or word.type_px >= DISPLAY:
        return word
    read = _by_itself(gray, word, threads)
    if read is None:
        return word
    text = read.text.replace(" ", "")
    figures = text[:-1]
    if figures not in (word.text, word.text[:-1]) or not figures[-1:].isdigit():
        return word
    least = CENT_CHANCE if len(figures) - len(seen["head"] or "") > 1 else CENT_SURE
    return _with_sign(replace(word, text=figures), 0.8) if read.letters[-1].cent >= least else word


def _by_itself(gray: Gray, word: PlacedWord, threads: int) -> ReadLine | None:
    """Read a word cut out and enlarged, with a little paper around it; None where it lies off the page."""
    pad = AROUND * (word.bottom - word.top)
    scale = WORK_HEIGHT / max(1.0, word.bottom - word.top)
    crop, _, _ = cut_out(gray, word.left - pad, word.top - pad, word.right + pad, word.bottom + pad, scale)
    return read_strips([crop], threads)[0] if crop.size else None


def with_figures(gray: Gray, word: PlacedWord, words: Sequence[PlacedWord], threads: int) -> PlacedWord:
    """Read the large figures right of a dollar sign that stands alone: a numeral can be too large to be found."""
    tall = word.bottom - word.top
    own, _, _ = cut_out(gray, word.left, word.top, word.right, word.bottom, WORK_HEIGHT / tall)
    scale = WORK_HEIGHT / (1.5 * tall)
    right, bottom = word.right + 1.8 * tall, word.bottom + 1.3 * tall
    crop, x0, y0 = cut_out(gray, word.right - 0.1 * tall, word.top - 0.3 * tall, right, bottom, scale)
    if not own.size or not crop.size:
        return word
    edges = np.concatenate([own[0], own[-1], own[:, 0], own[:, -1]])
    blobs = blobs_of(crop, x0, y0, scale, light=bool(np.median(edges) < 128))
    chain: list[Glyph] = []
    for glyph in sorted(blobs, key=lambda g: g.left):
        first = chain[0] if chain else None
        alike = 0.85 < glyph.height / first.height < 1.18 if first else 0.8 < glyph.height / tall < 2.5
        beside = glyph.left - (chain[-1].right if chain else word.right) < 0.4 * tall
        if alike and beside and glyph.top < word.bottom and len(chain) < 3:
            chain.append(glyph)
    box = around(chain) if chain else None
    if not box or any(o is not word and box.left < (o.left + o.right) / 2 < box.right
                      and box.top < (o.top + o.bottom) / 2 < box.bottom for o in words):  # fmt: skip
        return word
    pad = 0.15 * box.height
    crop, _, _ = cut_out(gray, box.left - pad, box.top - pad, box.right + pad, box.bottom + pad, 44 / box.height)
    read = read_strips([crop], threads)[0]
    if not re.fullmatch(r"\d{1,3}", read.text) or read.confidence < LONE_SURE:
        return word
    text = f"${read.text}"
    whole = around([box, Glyph(word.left, word.top, word.right, word.bottom)])
    return replace(word, text=text, centres=(), left=whole.left, top=whole.top, right=whole.right,
                   bottom=whole.bottom, type_px=box.height, confidence=read.confidence, reader="numeral")  # fmt: skip

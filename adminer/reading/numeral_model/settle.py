"""A second look at words that are or should be prices: where the numeral reader knows better, its answer is taken."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray
from rapidfuzz.distance import Levenshtein

from adminer.reading.numeral_model.read import NumeralReading, read_numerals
from adminer.reading.placed import PlacedWord
from adminer.records import PriceForm

Gray = NDArray[np.uint8]

SIDE, RISE = 0.22, 0.12  # margins of a crop in parts of the height of the word's ink, as in the strikes it learned on
SMALLEST = 6.0  # capital height in pixels below which neither reader can be trusted to overrule the other
RAISED_FROM = 14.0  # capital height from which a raised part can be told from a speck without a dollar sign
SURE_OF_SIGN = 0.5  # confidence that a changed sign wants; measured in tests/benchmarks/numerals.py
SURE_OF_FIGURE = 0.7  # confidence that a changed, added or raised figure wants; measured there as well
LONGEST = 12  # letters: longer words are no price

MIGHT_BE = re.compile(r"^[\"'“(*]*(?=.*[\dIlJ])[\dIlJOoSsBbZ§$£¢c©eéëtfd°*.,:/\-–—½¼¾·|\[\])(!]+$")
PRICE = re.compile(
    r"^(?:\$\d{1,3}(?:,\d{3})*(?:\.\d\d)?|\$\.\d\d|\$\d{1,3}\^\d\d|\d{1,3}\^\d\d|\d{1,2}\^[¢c]|"
    r"\d{1,2}[½¼¾⅓]?[¢c]|\d{1,2}[½¼¾⅓]|(?!1/)\d{1,2}/\d{1,2}[¢c]|(?!1/)\d{1,2}/\$\d{1,2}(?:\.\d\d)?|\d{1,3}/-|\d{1,2}[½¼¾]?d|£\d{1,3})$"
)
ENDS = re.compile(r"^(?P<head>[\"'“(*]*)(?P<core>.*?)(?P<rest>[.,:;)!\"”*\]–—]*)$")
POINT = re.compile(r"[.,]\d\d$")
SIGNS = "$£¢cd/-^."


@dataclass(frozen=True, slots=True)
class SecondLook:
    """Hold a word that was looked at again and what the numeral reader says of it."""

    index: int
    reading: NumeralReading


def take_second_look(gray: Gray, words: Sequence[PlacedWord], threads: int = 1) -> list[PlacedWord]:
    """Return the words, those settled anew where the numeral reader is the surer of a price."""
    result = list(words)
    for look in look_again(gray, words, threads):
        result[look.index] = settle(words[look.index], look.reading)
    return result


def look_again(gray: Gray, words: Sequence[PlacedWord], threads: int = 1) -> list[SecondLook]:
    """Read every word that might be a price once more with the numeral reader."""
    chosen = [i for i, word in enumerate(words) if _worth_a_look(word)]
    if not chosen:
        return []
    readings = read_numerals([_crop(gray, words[i]) for i in chosen], threads)
    return [SecondLook(i, reading) for i, reading in zip(chosen, readings, strict=True)]


def settle(word: PlacedWord, reading: NumeralReading) -> PlacedWord:
    """Return the word as the numeral reader has it where that is a price and the evidence is enough, else unchanged."""
    said = reading.text.rstrip(".,-") if not reading.text.endswith("/-") else reading.text
    ends = ENDS.match(word.text)
    if ends is None or not PRICE.match(said) or word.form is not None:
        return word
    core, plain = ends["core"], said.replace("^", "" if said[-1] in "¢c" else ".")
    if core.replace("c", "¢") == plain.replace("c", "¢"):
        return word
    if "^" in said and "$" not in said and word.type_px < RAISED_FROM:
        return word
    if _loses(core, plain):
        return word
    if reading.confidence < _wanted(core, plain, raised="^" in said) or reading.confidence < _doubt(word):
        return word
    text = f"{ends['head']}{plain}{ends['rest']}"
    sure = min(reading.confidence, 0.95)
    return replace(word, text=text, letters=text, centres=(), confidence=sure, form=_form(said), reader="numeral")


def _worth_a_look(word: PlacedWord) -> bool:
    return (
        word.form is None
        and word.type_px >= SMALLEST
        and len(word.text) <= LONGEST
        and word.right - word.left < 8 * (word.bottom - word.top)
        and MIGHT_BE.match(word.text) is not None
    )


def _crop(gray: Gray, word: PlacedWord) -> Gray:
    high = max(4.0, word.bottom - word.top)
    rows, cols = gray.shape
    x0, x1 = max(0, int(word.left - SIDE * high)), min(cols, round(word.right + SIDE * high) + 1)
    y0, y1 = max(0, int(word.top - RISE * high)), min(rows, round(word.bottom + RISE * high) + 1)
    return gray[y0 : max(y1, y0 + 2), x0 : max(x1, x0 + 2)]


def _figures(text: str) -> str:
    return "".join(c for c in text if c.isdigit() or c in "½¼¾⅓")


def _wanted(core: str, plain: str, *, raised: bool) -> float:
    """Return the confidence that a change wants: less where it only gives a sign back."""
    apart = Levenshtein.distance(core, plain)
    if apart > 2 and Levenshtein.distance(_figures(core), _figures(plain)) > 1:
        return 2.0
    same_figures = _figures(core) == _figures(plain)
    lone = plain.startswith("$") and len(plain) == 2
    if (same_figures or _sign_for_glyph(core, plain)) and not lone:
        return SURE_OF_FIGURE if raised and apart > 1 else SURE_OF_SIGN
    return SURE_OF_FIGURE


def _loses(core: str, plain: str) -> bool:
    """Say whether the second look drops a point or a figure that the first has seen and puts no sign in its place."""
    point = POINT.search(core) is not None and "." not in plain
    return point or (len(_figures(plain)) < len(_figures(core)) and not _sign_for_glyph(core, plain))


def _sign_for_glyph(core: str, plain: str) -> bool:
    """Say whether the second differs only by a sign at its end or start: "554" and "55¢", "471-" and "47/-"."""
    if len(core) != len(plain):
        return False
    if plain.endswith("/-") and core[:-2] == plain[:-2] and core[-1] == "-":
        return True
    return (core[1:] == plain[1:] and plain[0] in SIGNS) or (core[:-1] == plain[:-1] and plain[-1] in SIGNS)


def _doubt(word: PlacedWord) -> float:
    """Return what has to be beaten: the display reader is sure of itself even where it is wrong."""
    return word.confidence - 0.4


def _form(said: str) -> PriceForm | None:
    if "^" not in said:
        return None
    if said[-1] in "¢c":
        return "raised_cent_sign"
    return "raised_cents" if said.startswith("$") else "raised_cents_bare"

"""Fractions too small or worn for their glyphs to be told apart, in numbers that can only be read with one.

Nobody prints "1/62" for shillings and pence, ".0844" for cents, or "1212c": what follows the last whole figure is a
fraction that the network took for figures. Which one is asked of its two halves.
"""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Final

from adminer.layout.clean import Gray
from adminer.reading.glyphs import Glyph, alone
from adminer.reading.placed import PlacedWord
from adminer.reading.recognise import read_strips

_BARS: Final = "½¼¾%/⁄"  # what is read where a fraction has its stroke
_MARKS: Final = f"{_BARS}zZ'’;"  # what no figure is read as, but parts of a fraction are
_PIECES: Final = rf"[\d{_MARKS}]"


def _form(head: str, part: str, rest: str) -> re.Pattern[str]:
    return re.compile(rf"^(?P<head>[^\w$£]*{head})(?P<part>{part})(?P<rest>{rest}[.,;:]?)$")


_CENTS: Final = (
    # Of a column: nothing smaller has a third figure. One figure more may be no fraction but a dollar behind leaders.
    _form(r"\.\d\d", rf"(?:{_PIECES}{{2,3}}|[{_MARKS}])", r""),
    _form(r"\$\d{1,3}\.\d\d", rf"\d?[{_BARS}][24zZ]?", r""),
    _form(r"[1-9]\d", rf"(?:[17I]?[{_BARS}][24zZ]?|[17I][24zZ])", r"[c¢]"),
)
_STERLING: Final = (
    _form(r"\d{1,2}/(?:1[01]|\d)", rf"(?:{_PIECES}|1e){{1,3}}", r"d?"),  # pence go to eleven
    _form(r"(?:1[01]|[1-9])", rf"(?:[½¼¾%/]|\d[½¼¾%/\de]|\d){_PIECES}?", r"d"),
)
_PENCE: Final = re.compile(r"^(?:\d{1,3}/)?(?:1[01]|\d)d?[.,;:]?$")
LEADERS: Final = ".…·-_"  # run up to a sum at the end of its row
FIGURE: Final = 0.28  # half the width of a figure by its height; common practice, no source
READ_AT: Final = 27  # pixels: the height a half of a fraction is brought to
CLEAR: Final = 0.5  # probability of that 4
LIKE_THREE: Final = ("3", "8")  # what the 3 of three quarters is read as
TRUST: Final = 0.7  # confidence of such a word at most


def settle_worn_fraction(gray: Gray, word: PlacedWord, threads: int = 1, *, sterling: bool = False) -> PlacedWord:
    """Return a number with its fraction in place of the figures it was taken for, else the word as it is.

    Only on a page in `sterling` are "2/17" shillings and pence; elsewhere they are two for seventeen.
    """
    plain = word.text.lstrip(LEADERS) if sterling else word.text
    found = next(
        (found for form in (_CENTS + _STERLING if sterling else _CENTS) if (found := form.match(word.text))), None
    )
    if not found or found["part"] in "½¼¾" or word.form or _PENCE.match(plain) or len(word.centres) != len(word.text):
        return word
    reach = FIGURE * word.type_px
    left = word.centres[found.end("head") - 1] + reach
    after = found.end("part")
    right = word.centres[after] - reach if after < len(word.text) else word.right
    sign = _which(gray, Glyph(left, word.top, right, word.bottom), threads, quarters=found["part"].endswith("4"))
    text = f"{found['head']}{sign}{found['rest']}"
    return replace(word, text=text, centres=(), confidence=min(word.confidence, TRUST))


def _which(gray: Gray, box: Glyph, threads: int, *, quarters: bool) -> str:
    """Return the fraction in a box: a half, by far the commonest, where its foot is no clear 4.

    Where the whole was read with a 4 at its end (`quarters`), a clear 2 is asked for to make it a half.
    """
    wide, tall = box.right - box.left, box.bottom - box.top
    foot = alone(gray, Glyph(box.left + 0.45 * wide, box.top + 0.4 * tall, box.right, box.bottom), READ_AT)
    head = alone(gray, Glyph(box.left, box.top, box.left + 0.55 * wide, box.top + 0.6 * tall), READ_AT)
    if not foot.size or not head.size:
        return "½"
    below, above = read_strips([foot, head], threads, only="0123456789")
    clear = below.confidence >= CLEAR
    if (clear and below.text == "2") if quarters else (not clear or below.text != "4"):
        return "½"
    return "¾" if above.text[:1] in LIKE_THREE else "¼"

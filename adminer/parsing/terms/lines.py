"""Terms that lines of an advert hold but no sentence does: broken over lines, or the label of a line alone."""

from __future__ import annotations

from itertools import pairwise
from typing import Final

from adminer.parsing.terms.terms import Term, find_labels, find_terms
from adminer.parsing.text.text import AdvertText

_LABEL_WORDS: Final = 5  # of a label over three lines
_ONE_SIZE: Final = 1.7  # between lines of very different type no term runs on
_WRAPPED_WORDS: Final = 4  # of a short line
_SAME_TYPE: Final = (0.75, 1.34)  # between the type of two lines of one text
_LEADING: Final = 3.0  # capital heights from line to line of one text


def all_terms(text: AdvertText, marked: list[Term]) -> list[Term]:
    """Return the terms of an advert in order: those `marked` in its sentences, those broken over lines, and labels."""
    terms = _with_wrapped(text, marked)
    return sorted(terms + find_labels(_short_lines(text), terms), key=lambda t: t.start)


def _with_wrapped(text: AdvertText, found: list[Term]) -> list[Term]:
    """Add terms broken over lines that no sentence seems to join ("FREIGHT / PAID", "on receipt of HALF / CASH").

    One that holds a term of its kind already found is the whole of it; any other must touch none.
    """
    kept = list(found)
    unbroken = _unbroken(text)
    if unbroken == text.joined:
        return kept
    for term in find_terms(unbroken):
        if "\n" not in text.joined[term.start : term.end]:
            continue
        touched = [f for f in kept if term.start < f.end and f.start < term.end]
        if all(f.kind == term.kind and term.start <= f.start and f.scope == "offer" for f in touched):
            kept = [f for f in kept if f not in touched] + [term]
    return sorted(kept, key=lambda t: t.start)


def _unbroken(text: AdvertText) -> str:
    """Return the text with a space for the newline between short lines and between lines of one column and type."""
    characters = list(text.joined)
    for above, below in pairwise(text.lines):
        ratio = above.type_px / max(below.type_px, 1.0)
        short = len(above.words) <= _WRAPPED_WORDS and len(below.words) <= _WRAPPED_WORDS
        short = short and 1 / _ONE_SIZE < ratio < _ONE_SIZE
        alike = _SAME_TYPE[0] < ratio < _SAME_TYPE[1]
        step = below.flat.centre[1] - above.flat.centre[1]
        if short or (alike and above.block == below.block and 0 < step < _LEADING * above.type_px):
            characters[above.end] = " "
    return "".join(characters)


def _short_lines(text: AdvertText) -> list[tuple[int, int, str]]:
    """Return short lines, and each two under each other in one narrow column, as they may hold a label."""
    found = [(line.start, line.end, text.printed(line)) for line in text.lines]
    for one, two in pairwise(text.lines):
        if two.flat.y >= one.flat.centre[1] and one.flat.across(two.flat) > 0:
            found.append((one.start, two.end, text.text[one.start : two.end].replace("\n", " ")))
    for one, two, three in zip(text.lines, text.lines[1:], text.lines[2:], strict=False):
        if (
            one.flat.y < two.flat.y < three.flat.y
            and len(one.words) + len(two.words) + len(three.words) <= _LABEL_WORDS
        ):
            found.append((one.start, three.end, text.text[one.start : three.end].replace("\n", " ")))
    return found

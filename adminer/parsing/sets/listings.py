"""The lists of pieces in an advert's text: which names stand in one list, over how many lines, with what counts.

A list runs on over the end of a line where a comma, an "and" or a count waits for more, where the next line opens with
a count, or where both lines are enumerations in small type close under each other. Rows of open stock, each with its
own price, make no list.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Final

from spacy.tokens import Doc

from adminer.parsing.prices.prices import Found
from adminer.parsing.sets.composition import WORD_NUMBER, Listed, list_pieces
from adminer.parsing.terms.pipeline import PIECES, Grammar
from adminer.parsing.text.larder import is_food
from adminer.parsing.text.misread import lengthened, misread_pieces
from adminer.parsing.text.stretches import is_taken
from adminer.parsing.text.text import AdvertText, TextLine

TABLEWARE: Final = re.compile(
    r"dinnerware|china|pottery|tableware|dishes|crockery|porcelain|earthenware|pattern|stoneware|glassware|"
    r"silverplate|stainless|flatware|melamine|place setting|service for|pc\. ?set|piece set|open stock",
    re.IGNORECASE,
)
_NEAR_STRICT: Final = 60  # characters from a sure name of a piece within which a common word is one too
_NEAR_MISREAD: Final = 90
_GLUE: Final = re.compile(
    r"\b(?:and|plus|with|of|the|a|an|each|only|also|one|large|small|medium|oval|round|deep|flat|footed|matching|"
    r"matched|includes?|including|inch|in|oz|pieces?|pcs?)\b",
    re.IGNORECASE,
)
_LEANS: Final = re.compile(
    rf"\s?(?:[,.&+]|,? ?(?:and|or)\b)\s?(?:(?:\d{{1,2}}|{WORD_NUMBER}) )?(?:\d{{1,2}}[½¼¾]?[- ]?(?:inch|in\.?)\s)?",
    re.IGNORECASE,
)
_EACH: Final = re.compile(r"^\S+ each\b", re.IGNORECASE)
_ENDS_EACH: Final = re.compile(r"[;.]\s|\bplus\b|\balso\b", re.IGNORECASE)
_CAPACITY: Final = re.compile(r"\d[ -]cup$", re.IGNORECASE)  # "teapot, 6-cup"
_TITLE: Final = re.compile(r"\bsets?$", re.IGNORECASE)
_OR: Final = re.compile(r"\bor\b", re.IGNORECASE)
_PRICED: Final = re.compile(r"[$¢]|\d\d\d|\d\d?[ ]?(?:c|cents?)\b|\bfor \d")
_PAYMENTS: Final = frozenset({"down_payment", "instalment", "postage", "saving"})
_BARE_NUMBER: Final = re.compile(r"\s*\d{1,3}\s*")  # between two pieces: a price that lost its sign
_FRESH: Final = re.compile(r"[.!?;:]\s+[\"“(]?[A-Z]")
_WAITS: Final = re.compile(r"(?:[,&]|\band|\bwith|\bplus|[,;] ?\d{1,2})\s*$", re.IGNORECASE)
_UNKNOWN_LETTERS: Final = 14  # as many letters of words that are no piece may stand between two pieces of a list
_NOISE: Final = 3  # fewer letters than these between two pieces are an ill-read sign
_SIZES: Final = 1.7  # lines of one list are set in one size; sloping words measure larger
_WORD_SPACE: Final = 0.8  # type sizes
_STEP: Final = 2.4  # type sizes from the middle of a line to the next of the same list


@dataclass(frozen=True, slots=True)
class NamedPiece:
    """Hold the name of a piece in the text of an advert: its characters and the piece's id."""

    start: int
    end: int
    piece: str


@dataclass(frozen=True, slots=True)
class Listing:
    """Hold one list of pieces, as printed: its characters, its pieces with counts, whether it is a list by its form."""

    start: int
    end: int
    parts: tuple[Listed, ...]
    enumerates: bool  # parted by commas or counts, not two pieces that happen to stand together


def named_pieces(doc: Doc, printed: str, grammar: Grammar) -> list[NamedPiece]:
    """Return the piece names of a text, left to right; common words ("fruit") only where tableware is near.

    `printed` is the same text with all its line ends.
    """
    text = doc.text
    spans = sorted(doc.spans[PIECES], key=lambda s: (-(s.end_char - s.start_char), s.start_char))
    kept: list[NamedPiece] = []
    for span in spans:
        if is_taken(span.start_char, span.end_char, kept):
            continue
        kept.append(NamedPiece(span.start_char, span.end_char, span.label_))
    strict = [k for k in kept if text[k.start : k.end].lower() not in grammar.loose]
    anchors = [(k.start, k.end) for k in strict] + [m.span() for m in TABLEWARE.finditer(text)]
    near = [
        k
        for k in kept
        if k in strict or (_is_near(k.start, k.end, anchors, _NEAR_STRICT) and not is_food(printed, k.start, k.end))
    ]
    for lines in (text, printed):  # a misread name may run over a line end, or stand beside one
        for start, end, piece in misread_pieces(lines, [(k.start, k.end) for k in near], grammar.piece_names):
            common = " " not in lines[start:end]  # "fuits"; a name of two words is no food
            if _is_near(start, end, anchors, _NEAR_MISREAD) and not (common and is_food(printed, start, end)):
                near.append(NamedPiece(start, end, piece))
    for i, one in enumerate(near):
        if text[one.start : one.end].lower() in grammar.loose and (
            longer := lengthened(text, one.start, one.end, grammar.piece_names)
        ):
            near[i] = NamedPiece(one.start, *longer)
    return _with_short_names(text, sorted(near, key=lambda k: k.start), grammar.short)


def _with_short_names(text: str, named: list[NamedPiece], short: dict[str, str]) -> list[NamedPiece]:
    """Add the names that lean on a neighbour in a list: "dinner" of "dinner, salad, cup, saucer"."""
    if not named or not short:
        return named
    pattern = re.compile(rf"\b(?:{'|'.join(map(re.escape, short))})\b(?! ?(?:set|service|ware))", re.IGNORECASE)
    for m in reversed(list(pattern.finditer(text))):
        start, end = m.span()
        if is_taken(start, end, named):
            continue
        if any(_LEANS.fullmatch(text[end : k.start]) or _LEANS.fullmatch(text[k.end : start]) for k in named):
            named = sorted([*named, NamedPiece(start, end, short[m[0].lower()])], key=lambda k: k.start)
    return named


def _is_near(start: int, end: int, anchors: Sequence[tuple[int, int]], reach: int) -> bool:
    return any(a - reach < end and start < b + reach for a, b in anchors)


def find_listings(advert: AdvertText, named: Sequence[NamedPiece], prices: Sequence[Found]) -> list[Listing]:
    """Return the lists of pieces of an advert, a single counted piece ("8 tumblers") among them."""
    bought = [p for p in prices if p.role not in _PAYMENTS]  # "$1 down" beside a list prices no row of it
    rows = {line.number for line in advert.lines if has_price_on_row(line, bought)} | {p.line for p in bought}
    found: list[Listing] = []
    run: list[Listed] = []
    names = [(n.start, n.end, n.piece) for n in named]
    for part in list_pieces(advert.text, names, [(p.start, p.end) for p in prices]):
        if _CAPACITY.search(advert.text, max(0, part.start - 3), part.end):
            continue
        gap = advert.text[run[-1].end : part.start] if run else ""
        if run and not _runs_on(advert, run, part, gap, rows):
            found += _listing(advert, run)
            run = []
        if run and _OR.search(gap) and not part.counted:
            run[-1] = _joined(advert, run[-1], part)  # "salad plate or soup dish": one of them
        else:
            run.append(_with_shared_count(advert, run[-1], part) if run else part)
    return found + _listing(advert, run)


def _with_shared_count(advert: AdvertText, before: Listed, part: Listed) -> Listed:
    """Give a piece the count of the one before it where that was said of each: "8 each dinner plates, cups"."""
    shared = _EACH.search(before.text) or before.each
    if part.counted or not shared or _ENDS_EACH.search(advert.text[before.end : part.start]):
        return part
    return replace(part, count=before.count, counted=True, each=True)


def _joined(advert: AdvertText, one: Listed, other: Listed) -> Listed:
    text = " ".join(advert.text[one.start : other.end].split())
    return replace(one, end=other.end, text=text)


def _listing(advert: AdvertText, run: list[Listed]) -> list[Listing]:
    if len(run) < 2 and not (run and run[0].counted and run[0].count > 1):
        return []
    start, end = run[0].start, run[-1].end
    commas = sum("," in advert.text[a.end : b.start] for a, b in pairwise(run))
    return [Listing(start, end, tuple(run), commas >= 1 or sum(p.counted for p in run) >= 2)]


def _runs_on(advert: AdvertText, run: list[Listed], part: Listed, gap: str, rows: set[int]) -> bool:
    """Say whether a piece stands in the same list as the pieces before it."""
    if (
        _PRICED.search(gap)
        or _BARE_NUMBER.fullmatch(gap)
        or gap.count("\n") > 1
        or (_TITLE.search(run[-1].text) and re.search(r"[.:\n]", gap))
    ):
        return False
    unknown = sum(c.isalpha() for c in _OR.sub("", _GLUE.sub("", gap)))
    if unknown > _UNKNOWN_LETTERS or (unknown >= _NOISE and not part.counted and "," not in gap):
        return False
    if not part.counted and _FRESH.search(advert.text[run[-1].end : part.start + 1]):
        return False
    if "\n" in gap:
        above, below = advert.line_at(run[-1].end - 1), advert.line_at(part.start)
        above, below = (above, advert.lines[above.number + 1]) if above is below else (above, below)
        return _is_next_line(above, below) and _continues(advert, run, part, gap, above, below, rows)
    return bool(gap.strip()) or part.counted or _close_by(advert, run[-1], part)


def _close_by(advert: AdvertText, one: Listed, other: Listed) -> bool:
    """Say whether two pieces stand a word space apart, as where a reader lost the comma between them."""
    left, right = advert.flat(advert.box_of(one.start, one.end)), advert.flat(advert.box_of(other.start, other.end))
    return right.x - left.right < _WORD_SPACE * advert.line_at(one.start).type_px


def _is_next_line(above: TextLine, below: TextLine) -> bool:
    small, large = sorted((max(above.type_px, 1.0), max(below.type_px, 1.0)))
    step = below.flat.centre[1] - above.flat.centre[1]
    across = above.flat.across(below.flat)
    return large < _SIZES * small and 0.3 * small < step < _STEP * large and across > 0


def _continues(
    advert: AdvertText, run: list[Listed], part: Listed, gap: str, above: TextLine, below: TextLine, rows: set[int]
) -> bool:
    """Say whether a list goes on over the end of a line."""
    if part.piece == run[-1].piece:
        return False  # a title with its piece, and the piece again under it
    if _WAITS.search(gap[: gap.index("\n")]):
        return True
    return above.number not in rows and (below.number not in rows or part.counted)


def has_price_on_row(line: TextLine, prices: Sequence[Found]) -> bool:
    """Say whether a price of about its size stands right of a line on its row: a row of open stock."""
    return any(
        price.line != line.number
        and line.flat.same_row(price.place)
        and price.place.x >= line.flat.right
        and price.type_px < _SIZES * line.type_px
        for price in prices
    )

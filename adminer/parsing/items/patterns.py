"""Patterns over their pieces: "Winterbourne" in large type over "place setting $21.95" and "teaspoon $5.50".

A list of patterns is set alike: names in one larger type, each over rows of pieces, with the maker in small type
between. A name that stands over rows of other goods heads a section and names none of them. Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from typing import Final

from adminer.parsing.items.assign import Pairing
from adminer.parsing.items.panels import ends_line, opens_line, over_each_other
from adminer.parsing.prices.prices import Found
from adminer.parsing.segments.items import Segment
from adminer.parsing.sets.listings import NamedPiece
from adminer.parsing.sets.sets import states_set
from adminer.parsing.text.item_words import WORD
from adminer.parsing.text.naming import has_slogan
from adminer.parsing.text.text import AdvertText

_LARGER: Final = 1.2  # times the type of the row of a piece
_LARGEST: Final = 3.0  # times that type: what is larger heads the advert
_ONE_STYLE: Final = 1.35  # between the type of two patterns: script without descenders is measured smaller
_FEWEST: Final = 3  # patterns set alike
_WORDS: Final = 3  # of a pattern
_SHORT: Final = 2  # words of a piece that the lists do not know ("any stem")
_REACH: Final = 7.0  # type sizes of a pattern from it down to its piece


def with_patterns(
    advert: AdvertText,
    groups: Sequence[Sequence[Found]],
    pairings: Sequence[Pairing],
    segments: Sequence[Segment],
    pieces: Sequence[NamedPiece],
) -> list[Pairing]:
    """Return the pairings, those of pieces under the name of a pattern headed by it."""
    names = [s for s in segments if _may_be_pattern(advert, s)]
    over = {
        g: name
        for g, pairing in enumerate(pairings)
        if pairing.segment is not None
        and pairing.heading is None
        and (pairing.segment.content <= _SHORT or _is_piece(pairing.segment, pieces))
        and pairing.segment.last.same_row(groups[g][0].place)
        and (name := _name_over(pairing.segment, names, segments)) is not None
    }
    heads = {name.start: name for g, name in over.items() if (text := pairings[g].segment) and _is_piece(text, pieces)}
    patterns = {start for start, name in heads.items() if _alike(name, heads.values()) >= _FEWEST}
    return [
        replace(pairing, heading=over[g]) if g in over and over[g].start in patterns else pairing
        for g, pairing in enumerate(pairings)
    ]


def _may_be_pattern(advert: AdvertText, text: Segment) -> bool:
    words = WORD.findall(text.text)
    named = 0 < len(words) <= _WORDS and not (text.goods or text.bare or text.talks)
    alone = opens_line(advert, text) and ends_line(advert, text)
    maker = advert.text[text.start].islower()  # "by Ellerdale"
    return named and alone and not maker and not has_slogan(text.text)


def _is_piece(text: Segment, pieces: Sequence[NamedPiece]) -> bool:
    return states_set(text.text) or any(text.start <= n.start and n.end <= text.end for n in pieces)


def _name_over(piece: Segment, names: Sequence[Segment], segments: Sequence[Segment]) -> Segment | None:
    """Return the nearest name over a piece, in its column and larger, None where other type of its size is between."""
    over = [
        s
        for s in segments
        if s.last.centre[1] < piece.first.y
        and piece.first.y - s.last.bottom < _REACH * s.type_px
        and over_each_other(s.flat, piece.flat)
    ]
    larger = [s for s in names if _LARGER <= s.type_px / max(piece.type_px, 1.0) <= _LARGEST and s in over]
    name = max(larger, key=lambda s: s.last.centre[1], default=None)
    if name is None or any(
        s.type_px >= name.type_px / _LARGER and s.last.centre[1] > name.last.centre[1] for s in over
    ):
        return None
    return name


def _alike(name: Segment, names: Iterable[Segment]) -> int:
    """Count the patterns set in the type of one, itself among them."""
    return sum(1 / _ONE_STYLE < other.type_px / max(name.type_px, 1.0) < _ONE_STYLE for other in names)

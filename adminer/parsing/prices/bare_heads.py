"""One-word heads over columns of prices ("Regular" beside "Sale"), which say nothing anywhere else.

"Were" or "List" is a word like any other in running text. Over a column of prices, each with another price on its row,
it tells what they all are. Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from adminer.parsing.prices.column_heads import column_heads, shares_row
from adminer.parsing.prices.prices import Found
from adminer.parsing.terms.terms import Term, head_words
from adminer.parsing.text.stretches import is_taken
from adminer.parsing.text.text import AdvertText, TextLine

_ROWS: Final = 3  # that a column has at least
_LONGEST: Final = 2  # words of a head
_ASKED: Final = "everyone"  # what heads the prices asked colours none of them


def find_bare_heads(advert: AdvertText, prices: list[Found], terms: list[Term]) -> list[Term]:
    """Return the heads of columns of former or comparison prices that no term of `terms` has found."""
    heads = [
        head
        for line in advert.lines
        if not is_taken(line.start, line.end, terms)
        for head in _heads_of(advert, line)
        if head.kind != _ASKED
    ]
    boxes = {i: advert.flat(advert.box_of(head.start, head.end)) for i, head in enumerate(heads)}
    return [
        heads[i]
        for i, members in column_heads(advert, prices, heads, boxes).items()
        if len(members) >= _ROWS and 2 * sum(_has_mate(prices, p, members) for p in members) > len(members)
    ]


def _heads_of(advert: AdvertText, line: TextLine) -> Iterator[Term]:
    """Yield the heads of a line that holds nothing else, side by side where there are several."""
    known, words = head_words(), advert.printed(line).split()
    made, at, start = [], 0, line.start
    while at < len(words):
        for count in range(min(_LONGEST, len(words) - at), 0, -1):
            run = " ".join(words[at : at + count])
            kind = known.get(run.lower().strip(" .,:"))
            if kind is not None:
                made.append(Term(start, start + len(run), kind, "price", run))
                at, start = at + count, start + len(run) + 1
                break
        else:
            return
    yield from made


def _has_mate(prices: list[Found], p: int, members: list[int]) -> bool:
    return any(o not in members and shares_row(prices[p].place, other.place) for o, other in enumerate(prices))

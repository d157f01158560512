"""What is told of a name between it and its price, and belongs to it: its size or pack, the kind or brand of the goods.

"LARD" is a kind of goods, "LARD, pure" an article. Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from adminer.parsing.items.descriptions import CLAUSE, NAME_WORDS
from adminer.parsing.items.leaning import leans
from adminer.parsing.items.panels import over_each_other
from adminer.parsing.prices.prices import Found
from adminer.parsing.segments.items import Segment
from adminer.parsing.text.goods import praise, stops
from adminer.parsing.text.item_words import FUNCTION_WORDS, PROSE, WORD
from adminer.parsing.text.naming import is_sentence

_KIND_WORDS: Final = 3  # of a clause that tells which goods a name of one word means
_FEW_TEXTS: Final = 3  # between a name and its price


def size_at_price(name: Segment, first: Found, segments: Sequence[Segment], prices: Sequence[Found]) -> str:
    """Return the size or pack set by itself between a name and its price ("3-lb. can"), empty where none is."""
    sizes = [s for s in segments if name.end <= s.start and s.end <= first.start]
    if len(sizes) > _FEW_TEXTS or any(name.end <= p.start and p.end <= first.start for p in prices):
        return ""
    size = sizes[-1] if sizes else None
    if size is None or not size.bare or size.content == 0 or not any(c.isdigit() for c in size.text):
        return ""
    under = over_each_other(name.flat, size.flat) and name.last.centre[1] < size.first.y
    near = size.flat.same_row(first.place) or over_each_other(size.flat, first.place)
    return size.text if near and (under or name.last.same_row(size.flat)) else ""


def clause_at_price(name: Segment, first: Found, segments: Sequence[Segment]) -> str:
    """Return the clause right before a price that tells which goods of the paragraph headed by a name it is for.

    "RUBBER STAMPS" heads "your name on a self-inking stamp, 25c": nothing is told by measures, or in a sentence. Of a
    name of one word the clause right after it tells more.
    """
    if WORD.fullmatch(name.text):
        return ""
    before = [s for s in segments if name.end <= s.start and s.end <= first.start and s.last_line == first.line]
    told = before[-1] if before else None
    if told is None or told.bare or told.content == 0 or leans(told.text) or is_sentence(told.text):
        return ""
    clause = CLAUSE.split(told.text)[0]
    return clause if len(clause.split()) <= NAME_WORDS else ""


def clause_after(name: Segment, first: Found, segments: Sequence[Segment], prices: Sequence[Found]) -> str:
    """Return the clause that tells which goods a name means, set between it and its price, empty where none does.

    "LARD", "Pure", "bring your pail": the one word of the name is a kind of goods, which its brand, grade or stuff
    makes an article. It stands in the line of the name, or close under it where the price does not stand beside it.
    """
    after = next((s for s in segments if name.end <= s.start and s.end <= first.start), None)
    if after is None or any(name.end <= p.start < first.start for p in prices):
        return ""
    under = after.first_line == name.last_line + 1 and over_each_other(name.flat, after.flat)
    row = any(after.first.same_row(p.place) and p.place.x < first.place.right for p in prices if p.line != first.line)
    if after.first_line != name.last_line and (not under or row):
        return ""
    words = CLAUSE.split(after.text)[0].split()
    told = [word.lower().strip(".,") for word in words]
    stop = next((i for i, word in enumerate(told) if word in FUNCTION_WORDS), len(words))
    said = {"-".join(told[:2]), *told[:stop]}  # "High grade" is "high-grade"
    speaks = not (PROSE | stops() | praise()).isdisjoint(said)
    return "" if speaks or stop > _KIND_WORDS else " ".join(words[:stop])

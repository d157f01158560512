"""Titles over descriptions: which chosen texts only tell more of an article that the line over them names.

"Reading Lamp" over "Brass base, three-way switch, with parchment shade" is the name, whatever goods the description
speaks of. Titles of one style do one job in an advert: where those that name goods each stand over one offer, one that
the lists of the trade do not know names its offer, too; a heading over several texts names none of them. Common
practice, no source.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Mapping, Sequence, Set
from dataclasses import replace
from typing import Final

from adminer.parsing.items.assign import Pairing
from adminer.parsing.items.costs import ABOVE, BELOW
from adminer.parsing.items.descriptions import outgrows
from adminer.parsing.items.entries import FIRST
from adminer.parsing.items.panels import ends_line, opens_line, over_each_other
from adminer.parsing.prices.prices import Found
from adminer.parsing.segments.items import Segment
from adminer.parsing.segments.postage import POSTAGE
from adminer.parsing.sets.composition import stated_pieces
from adminer.parsing.sets.sets import states_set
from adminer.parsing.tables.price_lists import ON_ROW as ON_TABLE_ROW
from adminer.parsing.text.goods import has_goods, heads_of
from adminer.parsing.text.naming import has_slogan, is_slogan
from adminer.parsing.text.text import AdvertText

TITLE: Final = "the title over the text at the price, which only describes it"
_CLOSE: Final = 1.5  # type sizes of white between a title and what is set under it
_PICTURE: Final = 14.0  # body sizes that a picture between them may take up
_ASIDE: Final = 0.25  # of the wider one, between the middles of a title and what stands under the picture
_LARGER: Final = 1.15  # times the type of the description
_CAPITALS: Final = 0.8  # the same in capitals: worn type is measured no better than that
_LARGEST: Final = 3.0  # times the type of the description; what is larger heads the advert
_ONE_STYLE: Final = 1.15  # between the type of two titles
_WORDS: Final = 6  # of a title
_VOTES: Final = 2  # titles of one style that name goods
_TELLS: Final = 4  # words of a description that names goods itself
_ROW: Final = 2.0  # type sizes from one row of a list to the next, at most
_STOP: Final = re.compile(r"[a-z]\. ?$")
_PARTS: Final = re.compile(r", |\bwith\b|\band\b")


def with_titles(
    advert: AdvertText, groups: Sequence[Sequence[Found]], pairings: Sequence[Pairing], segments: Sequence[Segment]
) -> list[Pairing]:
    """Return the pairings, those whose text only describes given the title over it."""
    prices = [found for group in groups for found in group]
    titles: dict[int, Segment] = {}
    telling: set[int] = set()
    for pairing in pairings:
        segment = pairing.segment
        if segment is None or segment.start in titles:
            continue
        if _is_told_next(advert, segment, prices):
            telling.add(segment.start)
        if segment.start in telling or opens_line(advert, segment) or segment.text[:1].islower():
            title = _title_of(advert, segment, segments, prices)
            if title is not None:
                titles[segment.start] = title
    chosen = [p.segment for p in pairings if p.segment is not None]
    lists = {title.start for start, title in titles.items() if _goes_on_below(start, chosen)}
    alone = tuple(title for title in _alone(titles) if title.start not in lists)
    names = [s for s in segments if s.goods and not s.bare and opens_line(advert, s) and len(s.text.split()) <= _WORDS]
    return [
        replace(pairing, segment=title, why=TITLE) if title is not None else pairing
        for pairing, title in ((p, _named(p, titles, alone, names, telling)) for p in pairings)
    ]


def with_title_heads(
    advert: AdvertText, groups: Sequence[Sequence[Found]], pairings: Sequence[Pairing], segments: Sequence[Segment]
) -> list[Pairing]:
    """Return the pairings, those whose text stands right under a title of goods headed by it.

    "Two matched rings" under "BRIDAL DUETTE" tells what the title means; a text longer than twice the title describes
    it, and the title is the name. A text on the row of its price is a label of its own.
    """
    prices = [found for group in groups for found in group]
    titles: dict[int, Segment] = {}
    for group, pairing in zip(groups, pairings, strict=True):
        text = pairing.segment
        if text is None or text.start in titles:
            continue
        title = _title_of(advert, text, segments, prices)
        close = title is not None and text.first.y - title.last.bottom < _CLOSE * max(text.type_px, title.type_px)
        if title is not None and close and title.goods and not text.last.same_row(group[0].place):
            titles[text.start] = title
    alone = _alone(titles)
    return [_with_head(pairing, titles, alone) for pairing in pairings]


def _with_head(pairing: Pairing, titles: Mapping[int, Segment], alone: Sequence[Segment]) -> Pairing:
    text = pairing.segment
    title = titles.get(text.start) if text is not None and pairing.heading is None else None
    if text is None or title is None or title not in alone or pairing.why in {TITLE, POSTAGE, ON_TABLE_ROW}:
        return pairing
    if states_set(text.text) or _heads_department(title) or heads_of(title.text) & heads_of(text.text):
        return pairing
    if outgrows(text.text, title.text):
        return replace(pairing, segment=title, why=TITLE)
    return replace(pairing, heading=title)


def _heads_department(title: Segment) -> bool:
    """Say whether a title names a part of the shop ("Shoe Department"), no article."""
    last = title.text.split()[-1]
    return is_slogan(title.text) or (is_slogan(last) and not has_goods(last))


def _goes_on_below(start: int, chosen: Sequence[Segment]) -> bool:
    """Say whether the text that begins at a character is the first of a list: another of its type close under it."""
    first = next(segment for segment in chosen if segment.start == start)
    return any(
        not other.bare
        and other.start > first.start
        and over_each_other(other.flat, first.flat)
        and first.first.y <= other.first.y < first.last.bottom + _ROW * first.type_px
        and 1 / _ONE_STYLE < other.type_px / max(first.type_px, 1.0) < _ONE_STYLE
        for other in chosen
    )


def _alone(titles: Mapping[int, Segment]) -> tuple[Segment, ...]:
    """Return the titles with one text under them."""
    scope = Counter(title.start for title in titles.values())
    return tuple({t.start: t for t in titles.values() if scope[t.start] == 1}.values())


def _named(
    pairing: Pairing,
    titles: Mapping[int, Segment],
    alone: tuple[Segment, ...],
    names: Sequence[Segment],
    telling: Set[int],
) -> Segment | None:
    """Return the title that names what a pairing's text describes, None where the text is the name.

    `telling` are the first characters of texts that are a later sentence of a description, whatever they name.
    """
    segment = pairing.segment
    if segment is None or pairing.heading is not None or pairing.why not in {ABOVE, BELOW, FIRST}:
        return None
    title = titles.get(segment.start)
    if title is None or title not in alone or states_set(segment.text):
        return None
    if stated_pieces(title.text) and pairing.why != BELOW:
        return title  # what is told under a set of so many pieces lists them
    votes = sum(_one_style(title, other) for other in names if other is not title)
    if not title.goods and has_slogan(title.text):
        return None
    if votes < _VOTES and (not title.goods or pairing.why == FIRST):
        return None
    if heads_of(title.text) & heads_of(segment.text):
        return None  # the fuller name of the same goods
    tells = _PARTS.search(segment.text) is not None
    if segment.start in telling:
        return title
    if segment.goods:
        return title if tells and (segment.content >= _TELLS or votes >= 3) else None
    return title if tells or not segment.text[:1].isupper() else None


def _one_style(one: Segment, other: Segment) -> bool:
    alike = 1 / _ONE_STYLE < one.type_px / max(other.type_px, 1.0) < _ONE_STYLE
    return alike and one.text.isupper() == other.text.isupper()


def _title_of(
    advert: AdvertText, segment: Segment, segments: Sequence[Segment], prices: Sequence[Found]
) -> Segment | None:
    """Return the larger text, or the one in capitals, over a text in its column with no price between."""
    over = sorted(
        (s for s in segments if s.last.centre[1] < segment.first.y and over_each_other(s.flat, segment.flat)),
        key=lambda s: -s.last.bottom,
    )
    top = segment
    for near in over:
        if any(near.first.y < p.place.centre[1] < segment.first.y and _is_under(advert, p, near) for p in prices):
            return None
        gap = top.first.y - near.last.bottom
        aside = abs(near.flat.centre[0] - top.flat.centre[0]) / max(near.flat.w, top.flat.w)
        if gap > _CLOSE * max(top.type_px, near.type_px) and not (gap < _PICTURE * advert.body_px and aside < _ASIDE):
            return None
        if _stands_out(near, segment):
            return near if opens_line(advert, near) and ends_line(advert, near) else None
        top = near
    return None


def _is_told_next(advert: AdvertText, segment: Segment, prices: Sequence[Found]) -> bool:
    """Say whether a text is a later sentence of a description: after a stop in its line, no price before it there."""
    start = advert.lines[segment.first_line].start
    return _STOP.search(advert.text[start : segment.start]) is not None and not any(
        start <= price.start < segment.start for price in prices
    )


def _is_under(advert: AdvertText, price: Found, text: Segment) -> bool:
    """Say whether a price, or the line it ends, stands in the column of a text."""
    return over_each_other(price.place, text.flat) or over_each_other(advert.lines[price.line].flat, text.flat)


def _stands_out(title: Segment, under: Segment) -> bool:
    ratio = title.type_px / max(under.type_px, 1.0)
    capitals = title.text.isupper() and not under.text.isupper() and ratio > _CAPITALS
    names = title.content > 0 and len(title.text.split()) <= _WORDS and not title.bare and not title.talks
    return names and (_LARGER <= ratio <= _LARGEST or capitals)

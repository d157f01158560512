"""What an advert of one article is about: the goods it names largest and most often.

A prose advert ("Don't keep food in a germ incubator ...") may print its only price far from the name of its article. A
reader then takes the price to be for what the whole advert sells. Common practice, no source.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from typing import Final

from adminer.parsing.items.assign import Pairing
from adminer.parsing.items.costs import ON_ROW
from adminer.parsing.items.entries import FIRST, HEAD, SIZE
from adminer.parsing.items.flow import BEFORE
from adminer.parsing.segments.items import Segment
from adminer.parsing.segments.postage import POSTAGE
from adminer.parsing.text.goods import heads_of
from adminer.parsing.text.text import AdvertText

TOPIC: Final = "what the advert is about: the goods it names largest or most often"
_FEW: Final = 3  # offers up to which an advert may speak of one article
_OFTEN: Final = 3  # times that body type must name an article to make it the topic
_DISPLAY: Final = 1.4  # body sizes from which one naming is enough
_COST: Final = 1.6  # of a topic as an item: named far from the price
_LARGEST: Final = 4.0  # body sizes; larger type says no more


def with_topic(advert: AdvertText, pairings: Sequence[Pairing], segments: Sequence[Segment]) -> list[Pairing]:
    """Return the pairings, those of an advert of one article that name no goods given its topic as item."""
    if len(pairings) > _FEW:
        return list(pairings)
    topic = find_topic(advert, segments)
    if topic is None:
        return list(pairings)
    return [Pairing(topic, _COST, TOPIC) if says_nothing(pairing) else pairing for pairing in pairings]


def says_nothing(pairing: Pairing) -> bool:
    """Say whether a chosen text names no goods, nor is a plain label of its price."""
    segment = pairing.segment
    if segment is None:
        return True
    if segment.goods or pairing.heading is not None or pairing.why == POSTAGE:
        return False
    labels = pairing.why in {ON_ROW, FIRST, SIZE, HEAD} or pairing.why.endswith(BEFORE)
    return segment.talks or segment.bare or not labels or not segment.text[:1].isupper()


def find_topic(advert: AdvertText, segments: Sequence[Segment]) -> Segment | None:
    """Return the text that best names what an advert sells; None where no goods stand out."""
    heads = [(segment, head) for segment in segments if segment.goods for head in heads_of(segment.text)]
    counts = Counter(head for _, head in heads)
    best: tuple[float, Segment] | None = None
    for segment, head in heads:
        size = segment.type_px / advert.body_px
        if size < _DISPLAY and counts[head] < _OFTEN:
            continue
        score = min(size, _LARGEST) + 0.5 * min(counts[head], 6)
        if best is None or score > best[0]:
            best = (score, segment)
    return best[1] if best else None

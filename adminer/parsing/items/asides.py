"""What an advert says beside its goods: weights for the freight, carriage, what to state in the order.

Such a text stands between a name and its price as often as a description does, and names nothing itself. Common
practice of mail order, no source.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final

from adminer.parsing.segments.items import Segment

_ASIDE: Final = re.compile(
    r"(?:net |gross |shipping |shpg\.? )*(?:weight|wt)[.,:]?(?: (?:[\dl]|per\b|about\b|packed\b|dozen\b).*)?|"
    r"(?:carriage|freight|express(?:age)?|delivery|packing|post|postage|p\. ?& ?p\.)(?: and packing)?"
    r" (?:paid|free|prepaid|extra|allowed|collect|forward).*|"
    r"(?:be sure to |please )?(?:state|mention|give|specify) (?:the )?"
    r"(?:length|size|colou?r|width|finish|style|bust|waist|kind)s?\b.*|"
    r"(?:the )?sizes? (?:and|&) (?:prices?|cost)\b.*|"
    r"(?:the )?(?:balance|remainder)\b.*|(?:your |for your |less your )?old one|"
    r"(?:reduced|marked down|cleared|to clear|was|were|our price|price|complete|additional|afterwards)",
    re.IGNORECASE | re.DOTALL,
)


def without_asides(segments: Sequence[Segment]) -> list[Segment]:
    """Return the texts that may name goods, those left out that only tell how they are weighed, sent or ordered."""
    return [segment for segment in segments if _ASIDE.fullmatch(segment.text.strip(" .,;:-")) is None]

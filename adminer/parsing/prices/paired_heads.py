"""Heads that tell both prices of every pair under them: "(with $5 in tapes / without)" over "Cup ... 19c / 49c"."""

from __future__ import annotations

import re
from collections.abc import Iterable
from itertools import pairwise
from typing import Final

from adminer.parsing.prices.prices import Found
from adminer.parsing.terms.terms import Term
from adminer.parsing.text.text import AdvertText

_STROKE: Final = re.compile(r"[\s,)]*[/|][\s(]*")
_PAIRS: Final = 2  # under one head, at least


def paired_heads(
    advert: AdvertText, prices: list[Found], terms: list[Term], chosen: Iterable[int]
) -> dict[int, list[int]]:
    """Return the prices of each of two terms that a stroke parts, where prices under them stand in such pairs."""
    heads = [
        (one, two)
        for one, two in pairwise(sorted(chosen, key=lambda t: terms[t].start))
        if terms[one].kind != terms[two].kind and _STROKE.fullmatch(advert.text, terms[one].end, terms[two].start)
    ]
    pairs = [
        (p, p + 1)
        for p, (first, second) in enumerate(pairwise(prices))
        if _STROKE.fullmatch(advert.text, first.end, second.start) and "\n" not in advert.text[first.end : second.start]
    ]
    found: dict[int, list[int]] = {}
    for number, (one, two) in enumerate(heads):
        stop = terms[heads[number + 1][0]].start if number + 1 < len(heads) else len(advert.text)
        under = [(a, b) for a, b in pairs if terms[two].end <= prices[a].start < stop]
        if len(under) >= _PAIRS:
            found |= {one: [a for a, _ in under], two: [b for _, b in under]}
    return found

"""Who placed the advert, and where: the retailer from the authority file or its signature, the town, the addresses."""

from __future__ import annotations

import re
from dataclasses import dataclass

from adminer.names.matching import Spelling
from adminer.names.spotting import spot_names
from adminer.parsing.house.house_lines import ADDRESS
from adminer.parsing.house.signatures import find_signature
from adminer.parsing.house.small_adverts import is_of_small_adverts
from adminer.parsing.house.sponsors import find_sponsor
from adminer.parsing.house.towns import find_town
from adminer.parsing.text.text import AdvertText
from adminer.records import Box, Link


@dataclass(frozen=True, slots=True)
class House:
    """Hold who advertises: the link, the town and the addresses as printed."""

    retailer: Link | None
    city: str | None
    addresses: tuple[str, ...]
    spans: tuple[tuple[int, int], ...] = ()  # characters of signature and addresses, which name no item


def find_house(
    advert: AdvertText,
    box: Box,
    retailers: list[Spelling],
    towns: frozenset[str] = frozenset(),
    of_page: frozenset[str] = frozenset(),
) -> House:
    """Find the retailer, town and addresses of an advert standing in `box`; `of_page` are towns its page tells of."""
    printed = list(ADDRESS.finditer(advert.text))
    addresses = tuple(dict.fromkeys(" ".join(m[0].split()) for m in printed))
    retailer = _from_authority(advert, retailers)
    if retailer is None and not is_of_small_adverts(advert):
        retailer = find_signature(advert, box) or find_sponsor(advert)
    spans = [m.span() for m in printed]
    if retailer is not None:
        spans += [(n.start, n.end) for n in advert.lines if retailer.box.overlap(n.box) > 0.8 * n.box.area]
        name = re.compile(r"\s+".join(map(re.escape, retailer.text.split())))
        spans += [m.span() for m in name.finditer(advert.text) if advert.box_of(*m.span()).overlap(retailer.box) > 0]
    town = find_town(advert.text, towns, retailer.text if retailer else "", of_page)
    return House(retailer, town, addresses, tuple(spans))


def _from_authority(advert: AdvertText, spellings: list[Spelling]) -> Link | None:
    """Return the best known name printed in the advert, larger type before smaller."""
    known = [spotted for spotted in spot_names(advert.text, spellings) if spotted.match.entry_id is not None]
    if not known:
        return None
    best = max(known, key=lambda n: n.match.score + 0.15 * min(advert.type_px_of(n.start, n.end) / advert.body_px, 6))
    match = best.match
    box = advert.line_at(best.start).box
    return Link(match.entry_id, match.name, best.text, box, match.score, match.why, match.candidates)

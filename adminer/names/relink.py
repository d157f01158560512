"""Link printed names anew after an edit of the authority files, without reading or parsing anything again.

What is needed is only what the database keeps of an offer: its item, the name as printed, and when the advert may
have appeared. Each different text is matched once.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from adminer.names.authority import Authorities
from adminer.names.matching import Match, best_match, date_warning, fold_name, line_spellings
from adminer.names.spotting import spot_names


@dataclass(frozen=True, slots=True)
class Unlinked:
    """Hold what is known of an offer before linking: its item, the printed name of its line, years of the advert."""

    offer_id: str
    item: str
    line_text: str | None = None
    earliest_year: int | None = None
    latest_year: int | None = None


@dataclass(frozen=True, slots=True)
class Relinked:
    """Hold the new link of an offer: the entry, how it fits, and a warning where the date speaks against it."""

    offer_id: str
    match: Match | None
    warning: str | None = None


def relink(offers: Iterable[Unlinked], authorities: Authorities) -> list[Relinked]:
    """Match every offer with the lines of the authority files; the same order comes back."""
    spellings = line_spellings(authorities.lines)
    entries = {line.id: line for line in authorities.lines}
    by_name: dict[str, Match | None] = {}
    by_item: dict[str, Match | None] = {}
    linked = []
    for offer in offers:
        match = None
        if offer.line_text:
            if offer.line_text not in by_name:
                by_name[offer.line_text] = best_match(fold_name(offer.line_text), spellings)
            match = by_name[offer.line_text]
        elif offer.item:
            if offer.item not in by_item:
                found = spot_names(offer.item, spellings)
                by_item[offer.item] = found[0].match if found else None
            match = by_item[offer.item]
        entry = entries.get(match.entry_id or "") if match else None
        warning = (
            date_warning(entry, match.spelling, offer.earliest_year, offer.latest_year) if entry and match else None
        )
        linked.append(Relinked(offer.offer_id, match, warning))
    return linked

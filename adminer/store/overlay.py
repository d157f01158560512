"""Lay the journal over what was read: a person's word beats the machine's, whatever a new reading says.

An act finds its fact by place and kind. Acts on one fact form a thread; a thread is matched with at most
one fact of the reading, by the overlap of their regions and the likeness of what stands there, all threads
of a clipping at once (an assignment), so that two corrections never fall on one offer. A thread that finds
nothing is kept all the same: its fact is set again as the person last saw it, and the correction is listed
as not found.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace

from adminer.records import Advert, Box, Offer, OfferStatus, ParsedPage
from adminer.store.correction_rows import CorrectionRow, correction_rows
from adminer.store.facts import (
    Fields,
    advert_fields,
    box_list,
    box_of,
    offer_fields,
    offer_of,
    patch_advert,
    patch_offer,
)
from adminer.store.journal import OF_NO_CLIPPING, Act, active
from adminer.store.threads import Thread, advert_text, gather_threads, match_threads, offer_text, region_of


@dataclass(frozen=True, slots=True)
class Overlaid:
    """Hold a page with the journal's word over the reading's."""

    page: ParsedPage
    rows: tuple[CorrectionRow, ...] = ()
    threads: Mapping[str, str] = field(default_factory=dict)  # offer or advert id -> thread id
    checked: frozenset[str] = frozenset()  # ids of adverts whose retailer, place and dates a person has confirmed


def overlay(
    pages: Iterable[ParsedPage], acts: Sequence[Act]
) -> tuple[tuple[ParsedPage, ...], tuple[CorrectionRow, ...]]:
    """Return the pages with the journal's word over the reading's, and every standing act by field.

    Acts on clippings that are not among the pages are listed as not found.
    """
    rows: list[CorrectionRow] = []
    laid = tuple(lay_over(pages, acts, rows))
    return laid, tuple(rows)


def lay_over(pages: Iterable[ParsedPage], acts: Sequence[Act], rows: list[CorrectionRow]) -> Iterator[ParsedPage]:
    """Yield the pages one by one as `overlay` does; when the last is out, `rows` holds every standing act by field."""
    waiting: dict[str, list[Act]] = {}
    for act in acts:
        waiting.setdefault(act.clipping_id, []).append(act)
    for page in pages:
        result = overlay_page(page, waiting.pop(page.clipping.clipping_id, ()))
        rows.extend(result.rows)
        yield result.page
    for lost in waiting.values():
        rows.extend(row for act in active(lost) for row in correction_rows(act, None, found=act.act in OF_NO_CLIPPING))
    rows.sort(key=lambda row: (row.act_no, row.field))


def overlay_page(page: ParsedPage, acts: Sequence[Act]) -> Overlaid:
    """Return one page with the acts of its clipping laid over it; acts on others are passed over."""
    own = [act for act in acts if act.clipping_id == page.clipping.clipping_id]
    standing = active(own)
    if not standing:
        return Overlaid(page)
    adverts, advert_threads = _overlay_adverts(page, gather_threads(own, standing, "advert"))
    adverts, offer_threads = _overlay_offers(page, adverts, gather_threads(own, standing, "offer"))
    every = (*advert_threads, *offer_threads)
    rows = [
        row
        for thread in every
        for act in thread.acts
        for row in correction_rows(act, thread.fact_id, found=thread.found)
    ]
    rows += [row for a in standing if a.kind in ("clipping", "name") for row in correction_rows(a, None, found=True)]
    threads = {t.fact_id: t.thread_id for t in every if t.fact_id}
    checked = frozenset(
        t.fact_id for t in advert_threads if t.fact_id and any(a.act in ("confirm", "correct") for a in t.acts)
    )
    regions_moved = any(a.act in ("split", "add") or "box" in a.new for t in advert_threads for a in t.acts)
    words = _assign_words(page, adverts) if regions_moved else page.word_adverts
    laid = replace(page, adverts=adverts, word_adverts=words)
    return Overlaid(laid, tuple(sorted(rows, key=lambda row: (row.act_no, row.field))), threads, checked)


def _overlay_adverts(page: ParsedPage, threads: list[Thread]) -> tuple[tuple[Advert, ...], list[Thread]]:
    matched = match_threads(threads, [(advert.box, advert_fields(advert)) for advert in page.adverts], advert_text)
    found = {index: thread for index, thread in zip(matched, threads, strict=True) if index is not None}
    laid: list[Advert] = []
    for index, advert in enumerate(page.adverts):
        if index in found:
            laid.extend(_fold_advert(advert, found[index], found=True))
        else:
            laid.append(advert)
    for thread in (t for place, t in zip(matched, threads, strict=True) if place is None):
        clipping_id = page.clipping.clipping_id
        bare = Advert(f"{clipping_id}-j{thread.thread_id}", clipping_id, region_of(thread), 1.0)
        seen = patch_advert(bare, thread.first.seen)
        laid.extend(_fold_advert(seen, thread, found=thread.acts[0].act == "add"))
    return _assign_offers(page.adverts, laid) if threads else tuple(laid), threads


def _fold_advert(advert: Advert, thread: Thread, *, found: bool) -> list[Advert]:
    thread.found, thread.fact_id = found, advert.advert_id
    parts: list[Advert] = []
    for act in thread.acts:
        if act.act == "split":
            parts = [
                replace(advert, advert_id=f"{advert.advert_id}-s{n}", box=box_of(box), offers=(), confidence=1.0)
                for n, box in enumerate(act.new["boxes"][1:], 2)
            ]
            advert = replace(advert, box=box_of(act.new["boxes"][0]), confidence=1.0)
        elif act.act == "reject":
            advert = replace(advert, offers=tuple(replace(o, status="rejected") for o in advert.offers))
        else:
            advert = patch_advert(advert, act.new)
    return [advert, *parts]


def _assign_offers(read: Sequence[Advert], laid: Sequence[Advert]) -> tuple[Advert, ...]:
    """Give each offer to its advert, or where regions moved to the smallest advert that holds its middle."""
    if [(a.advert_id, a.box) for a in read] == [(a.advert_id, a.box) for a in laid]:
        return tuple(laid)
    held: dict[str, list[Offer]] = {advert.advert_id: [] for advert in laid}
    for advert in laid:
        for offer in advert.offers:
            home = _home(laid, offer.box) or advert.advert_id
            held[home].append(replace(offer, advert_id=home))
    return tuple(replace(advert, offers=tuple(held[advert.advert_id])) for advert in laid)


def _assign_words(page: ParsedPage, adverts: Sequence[Advert]) -> tuple[str | None, ...]:
    return tuple(_home(adverts, word.box) for word in page.reading.words)


def _home(adverts: Sequence[Advert], box: Box) -> str | None:
    holding = [advert for advert in adverts if advert.box.holds(*box.centre)]
    return min(holding, key=lambda advert: advert.box.area).advert_id if holding else None


def _overlay_offers(
    page: ParsedPage, adverts: tuple[Advert, ...], threads: list[Thread]
) -> tuple[tuple[Advert, ...], list[Thread]]:
    read = [offer for advert in adverts for offer in advert.offers]
    matched = match_threads(threads, [(offer.box, offer_fields(offer)) for offer in read], offer_text)
    laid: dict[str, Offer] = {}
    added: list[Offer] = []
    for index, thread in zip(matched, threads, strict=True):
        if index is not None:
            thread.found = True
            base = replace(read[index], box=region_of(thread))
            laid[base.offer_id] = _fold_offer(base, thread)
            continue
        thread.found = thread.acts[0].act == "add"
        fields: Fields = {**thread.first.seen, "box": box_list(region_of(thread))}
        home = _home(adverts, box_of(fields["box"])) or _nearest(adverts, page, box_of(fields["box"]))
        base = offer_of(f"{page.clipping.clipping_id}-j{thread.thread_id}", home, fields, "read")
        added.append(_fold_offer(base, thread))
    return _set_offers(page, adverts, laid, added), threads


def _fold_offer(offer: Offer, thread: Thread) -> Offer:
    thread.fact_id = offer.offer_id
    for act in thread.acts:
        offer = patch_offer(offer, act.new, _status_after(offer.status, act))
    return offer


def _status_after(before: OfferStatus, act: Act) -> OfferStatus:
    if act.act == "confirm":
        return "corrected" if before == "corrected" else "confirmed"
    return "rejected" if act.act == "reject" else "corrected"


def _set_offers(
    page: ParsedPage, adverts: tuple[Advert, ...], laid: Mapping[str, Offer], added: Sequence[Offer]
) -> tuple[Advert, ...]:
    homeless = [o for o in added if all(o.advert_id != a.advert_id for a in adverts)]
    if homeless:
        whole = Box(0, 0, page.reading.width, page.reading.height)
        adverts = (*adverts, Advert(homeless[0].advert_id, page.clipping.clipping_id, whole, 1.0))
    return tuple(
        replace(
            advert,
            offers=(
                *(laid.get(o.offer_id, o) for o in advert.offers),
                *(o for o in added if o.advert_id == advert.advert_id),
            ),
        )
        for advert in adverts
    )


def _nearest(adverts: Sequence[Advert], page: ParsedPage, box: Box) -> str:
    if not adverts:
        return f"{page.clipping.clipping_id}-a1"
    x, y = box.centre
    return min(adverts, key=lambda a: abs(a.box.centre[0] - x) + abs(a.box.centre[1] - y)).advert_id

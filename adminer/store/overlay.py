"""Lay the journal over what was read: a person's word beats the machine's, whatever a new reading says.

An act finds its fact by place and kind. Acts on one fact form a thread; a thread is matched with at most
one fact of the reading, by the overlap of their regions and the likeness of what stands there, all threads
of a clipping at once (an assignment), so that two corrections never fall on one offer. A thread that finds
nothing is kept all the same: its fact is set again as the person last saw it, and the correction is listed
as not found.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import datetime
from typing import Any, Final

import numpy as np
from rapidfuzz import fuzz
from scipy.optimize import linear_sum_assignment

from adminer.records import Advert, Box, Offer, OfferStatus, ParsedPage
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
from adminer.store.facts import shown as shown_value
from adminer.store.journal import Act, active

LEAST_OVERLAP: Final = 0.2  # intersection over union under which two regions are not the same place
LEAST_HELD: Final = 0.7  # or this share of the smaller region lies in the larger
SAME_PLACE: Final = 0.5  # overlap from which a newly read offer is the one a person had drawn by hand
SAME_TEXT: Final = 0.5  # and the likeness of its item and amounts
APART: Final = 0.0  # likeness of a pair that may not be matched


@dataclass(frozen=True, slots=True)
class CorrectionRow:
    """Hold one row of the table `corrections`: one changed field of one act."""

    act_no: int
    acted_at: datetime
    who: str
    act: str
    clipping_id: str
    box: Box | None
    field: str
    old: str | None
    new: str | None
    offer_id: str | None
    found: bool


def correction_table_row(row: CorrectionRow) -> dict[str, Any]:
    """Return a row of the table `corrections` by column name."""
    box = row.box
    place = {"x": box.x, "y": box.y, "w": box.w, "h": box.h} if box else {}
    names = ("act_no", "acted_at", "who", "act", "clipping_id", "field", "old", "new", "offer_id", "found")
    return {**{name: getattr(row, name) for name in names}, **place}


def same_advert_rows(acts: Iterable[Act]) -> list[dict[str, Any]]:
    """Return the rows of the table `said_same`: pairs of clippings that persons say show one advert."""
    rows = []
    for act in active(acts):
        if act.act == "same_advert" and act.new.get("same_advert") not in (None, act.clipping_id):
            # one order for both ways of saying it, so that of a pair only one is counted
            first, second = sorted((act.clipping_id, str(act.new["same_advert"])))
            rows.append({"clipping_id": second, "other_id": first, "act_no": act.act_no})
    return rows


@dataclass(frozen=True, slots=True)
class Overlaid:
    """Hold a page with the journal's word over the reading's."""

    page: ParsedPage
    rows: tuple[CorrectionRow, ...] = ()
    threads: Mapping[str, str] = field(default_factory=dict)  # offer or advert id -> thread id
    checked: frozenset[str] = frozenset()  # ids of adverts whose retailer, place and dates a person has confirmed


@dataclass(slots=True)
class _Thread:
    """Hold the acts on one fact, and what they were matched with."""

    thread_id: str
    first: Act
    acts: list[Act]
    found: bool = False
    fact_id: str | None = None


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
        rows.extend(
            row for act in active(lost) for row in _rows(act, None, found=act.kind == "name" or act.act == "note")
        )
    rows.sort(key=lambda row: (row.act_no, row.field))


def overlay_page(page: ParsedPage, acts: Sequence[Act]) -> Overlaid:
    """Return one page with the acts of its clipping laid over it; acts on others are passed over."""
    own = [act for act in acts if act.clipping_id == page.clipping.clipping_id]
    standing = active(own)
    if not standing:
        return Overlaid(page)
    adverts, advert_threads = _overlay_adverts(page, _threads(own, standing, "advert"))
    adverts, offer_threads = _overlay_offers(page, adverts, _threads(own, standing, "offer"))
    every = (*advert_threads, *offer_threads)
    rows = [row for thread in every for act in thread.acts for row in _rows(act, thread.fact_id, found=thread.found)]
    rows += [row for a in standing if a.kind in ("clipping", "name") for row in _rows(a, None, found=True)]
    threads = {t.fact_id: t.thread_id for t in every if t.fact_id}
    checked = frozenset(
        t.fact_id for t in advert_threads if t.fact_id and any(a.act in ("confirm", "correct") for a in t.acts)
    )
    regions_moved = any(a.act in ("split", "add") or "box" in a.new for t in advert_threads for a in t.acts)
    words = _assign_words(page, adverts) if regions_moved else page.word_adverts
    laid = replace(page, adverts=adverts, word_adverts=words)
    return Overlaid(laid, tuple(sorted(rows, key=lambda row: (row.act_no, row.field))), threads, checked)


def _threads(own: Sequence[Act], standing: Sequence[Act], kind: str) -> list[_Thread]:
    """Gather the standing acts of one kind by thread; the region comes from the first act, even one taken back."""
    first: dict[str, Act] = {}
    for act in own:
        if act.kind == kind and act.act != "undo" and act.box is not None:
            first.setdefault(act.thread_id, act)
    gathered: dict[str, list[Act]] = {}
    for act in standing:
        if act.kind == kind and act.thread_id in first:
            gathered.setdefault(act.thread_id, []).append(act)
    return [_Thread(thread_id, first[thread_id], acts) for thread_id, acts in gathered.items()]


def _overlay_adverts(page: ParsedPage, threads: list[_Thread]) -> tuple[tuple[Advert, ...], list[_Thread]]:
    matched = _match(threads, [(advert.box, advert_fields(advert)) for advert in page.adverts], _advert_text)
    found = {index: thread for index, thread in zip(matched, threads, strict=True) if index is not None}
    laid: list[Advert] = []
    for index, advert in enumerate(page.adverts):
        if index in found:
            laid.extend(_fold_advert(advert, found[index], found=True))
        else:
            laid.append(advert)
    for thread in (t for place, t in zip(matched, threads, strict=True) if place is None):
        clipping_id = page.clipping.clipping_id
        bare = Advert(f"{clipping_id}-j{thread.thread_id}", clipping_id, _region(thread), 1.0)
        seen = patch_advert(bare, thread.first.seen)
        laid.extend(_fold_advert(seen, thread, found=thread.acts[0].act == "add"))
    return _assign_offers(page.adverts, laid) if threads else tuple(laid), threads


def _fold_advert(advert: Advert, thread: _Thread, *, found: bool) -> list[Advert]:
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
    page: ParsedPage, adverts: tuple[Advert, ...], threads: list[_Thread]
) -> tuple[tuple[Advert, ...], list[_Thread]]:
    read = [offer for advert in adverts for offer in advert.offers]
    matched = _match(threads, [(offer.box, offer_fields(offer)) for offer in read], _offer_text)
    laid: dict[str, Offer] = {}
    added: list[Offer] = []
    for index, thread in zip(matched, threads, strict=True):
        if index is not None:
            thread.found = True
            base = replace(read[index], box=_region(thread))
            laid[base.offer_id] = _fold_offer(base, thread)
            continue
        thread.found = thread.acts[0].act == "add"
        fields: Fields = {**thread.first.seen, "box": box_list(_region(thread))}
        home = _home(adverts, box_of(fields["box"])) or _nearest(adverts, page, box_of(fields["box"]))
        base = offer_of(f"{page.clipping.clipping_id}-j{thread.thread_id}", home, fields, "read")
        added.append(_fold_offer(base, thread))
    return _set_offers(page, adverts, laid, added), threads


def _fold_offer(offer: Offer, thread: _Thread) -> Offer:
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


def _region(thread: _Thread) -> Box:
    """Return where the person last saw the fact of a thread."""
    for act in reversed(thread.acts):
        if "box" in act.new:
            return box_of(act.new["box"])
    box = thread.first.box
    if box is None:
        raise ValueError(f"act {thread.first.id} has no region")
    return box


def _match(
    threads: Sequence[_Thread], facts: Sequence[tuple[Box, Fields]], text_of: Callable[[Mapping[str, Any]], str]
) -> list[int | None]:
    """Return for each thread the index of its fact, or None; no fact serves two threads."""
    if not threads or not facts:
        return [None] * len(threads)
    likeness = np.array([[_likeness(thread, box, fields, text_of) for box, fields in facts] for thread in threads])
    matched: list[int | None] = [None] * len(threads)
    for row, column in zip(*linear_sum_assignment(likeness, maximize=True), strict=True):
        if likeness[row, column] > APART:
            matched[row] = int(column)
    return matched


def _likeness(
    thread: _Thread, box: Box, fields: Mapping[str, Any], text_of: Callable[[Mapping[str, Any]], str]
) -> float:
    region = thread.first.box
    if region is None:
        return APART
    iou = region.iou(box)
    held = region.overlap(box) / max(1, min(region.area, box.area))
    if iou < LEAST_OVERLAP and held < LEAST_HELD:
        return APART
    alike = fuzz.ratio(text_of(thread.first.seen), text_of(fields)) / 100
    if thread.first.act == "add" and (iou < SAME_PLACE or alike < SAME_TEXT):
        return APART  # what was drawn beside a read offer stays its own, unless the reading has found it since
    return iou + alike


def _offer_text(fields: Mapping[str, Any]) -> str:
    prices = " ".join(str(price["amount"]) for price in fields.get("prices", ()))
    return f"{fields.get('item', '')} {prices}"


def _advert_text(fields: Mapping[str, Any]) -> str:
    return str((fields.get("retailer") or {}).get("name", ""))


def _rows(act: Act, fact_id: str | None, *, found: bool) -> list[CorrectionRow]:
    at = datetime.fromisoformat(act.at.replace("Z", "+00:00")).replace(tzinfo=None)
    names = sorted({*act.old, *act.new}) if act.act != "confirm" else ["status"]
    return [
        CorrectionRow(
            act_no=act.act_no,
            acted_at=at,
            who=act.who,
            act=act.act,
            clipping_id=act.clipping_id,
            box=act.box,
            field=name,
            old=shown_value(act.old.get(name)),
            new="confirmed" if act.act == "confirm" else shown_value(act.new.get(name)),
            offer_id=fact_id,
            found=found,
        )
        for name in names
    ]

"""Acts on one fact form a thread; a thread finds its fact in a new reading by place and likeness, never by number."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Final

import numpy as np
from rapidfuzz import fuzz
from scipy.optimize import linear_sum_assignment

from adminer.records import Box
from adminer.store.facts import Fields, box_of
from adminer.store.journal import Act

LEAST_OVERLAP: Final = 0.2  # intersection over union under which two regions are not the same place
LEAST_HELD: Final = 0.7  # or this share of the smaller region lies in the larger
SAME_PLACE: Final = 0.5  # overlap from which a newly read offer is the one a person had drawn by hand
SAME_TEXT: Final = 0.5  # and the likeness of its item and amounts
APART: Final = 0.0  # likeness of a pair that may not be matched


@dataclass(slots=True)
class Thread:
    """Hold the acts on one fact, and what they were matched with."""

    thread_id: str
    first: Act
    acts: list[Act]
    found: bool = False
    fact_id: str | None = None


def gather_threads(own: Sequence[Act], standing: Sequence[Act], kind: str) -> list[Thread]:
    """Gather the standing acts of one kind by thread; the region comes from the first act, even one taken back."""
    first: dict[str, Act] = {}
    for act in own:
        if act.kind == kind and act.act != "undo" and act.box is not None:
            first.setdefault(act.thread_id, act)
    gathered: dict[str, list[Act]] = {}
    for act in standing:
        if act.kind == kind and act.thread_id in first:
            gathered.setdefault(act.thread_id, []).append(act)
    return [Thread(thread_id, first[thread_id], acts) for thread_id, acts in gathered.items()]


def region_of(thread: Thread) -> Box:
    """Return where the person last saw the fact of a thread."""
    for act in reversed(thread.acts):
        if "box" in act.new:
            return box_of(act.new["box"])
    box = thread.first.box
    if box is None:
        raise ValueError(f"act {thread.first.id} has no region")
    return box


def match_threads(
    threads: Sequence[Thread], facts: Sequence[tuple[Box, Fields]], text_of: Callable[[Mapping[str, Any]], str]
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
    thread: Thread, box: Box, fields: Mapping[str, Any], text_of: Callable[[Mapping[str, Any]], str]
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


def offer_text(fields: Mapping[str, Any]) -> str:
    """Return what an offer is known by when places are near: its item and amounts."""
    prices = " ".join(str(price["amount"]) for price in fields.get("prices", ()))
    return f"{fields.get('item', '')} {prices}"


def advert_text(fields: Mapping[str, Any]) -> str:
    """Return what an advert is known by: its retailer."""
    return str((fields.get("retailer") or {}).get("name", ""))

"""Writes the truth of a scan: every fact with its box in pixels of the finished picture."""

from __future__ import annotations

import re
from typing import Any

from .facts import ScanSpec
from .geometry import Box
from .sheet import Row, Sheet

TRANSCRIPT_LINES = 15
YEAR = re.compile(r"\b19\d\d\b|\d/\d+/\d\d\b")


def truth_row(spec: ScanSpec, sheet: Sheet, boxes: dict[str, Box], lines: dict[str, int], size: tuple[int, int]) -> Row:
    """Return the row of truth.jsonl for one scan."""
    by_kind: dict[str, list[Row]] = {kind: [] for kind in "aplcdstr"}
    for fact, row in sheet.facts.items():
        if fact not in boxes:
            continue
        by_kind[fact[0]].append({**row, "box": list(boxes[fact]), "_fact": fact})
    prices = by_kind["p"]
    adverts = []
    for advert in by_kind["a"]:
        indices = [k for k, price in enumerate(prices) if price["_advert"] == advert["_advert"]]
        adverts.append({**_clean(advert), "prices": indices})
    first = spec.adverts[0]
    dated = spec.noted and spec.published is not None
    printed = [row for row in by_kind["d"] if row["kind"] != "expiry"]
    basis = "note" if dated else ("printed" if any(_has_year(row) for row in printed) else None)
    dates = [_clean(d) if basis or _has_year(d) else {**_clean(d), "edtf": None} for d in by_kind["d"]]
    expiries = [
        {"kind": "expiry", "text": d["text"], "value": d["edtf"], "box": d["box"]}
        for d in dates
        if d["kind"] == "expiry"
    ]
    row = {
        "file": spec.file,
        "image_size": list(size),
        "ad_type": spec.ad_type,
        "retailer": first.retailer_text,
        "retailer_id": first.retailer,
        "city": first.town,
        "printed_date": printed[0]["text"] if printed else None,
        "date_iso_or_null": str(spec.published) if basis else None,
        "date_edtf": next((d["edtf"] for d in printed if d["edtf"]), None) if basis else None,
        "date_basis": basis,
        "undated": basis is None,
        "true_date": str(spec.published) if spec.published else None,
        "readable": spec.readable,
        "prices": [_clean(price) for price in prices],
        "prices_complete": True,
        "offers_with_conditions": [c["text"] for c in by_kind["c"]] + [c["text"] for c in expiries],
        "conditions": [_clean(c) for c in by_kind["c"]] + expiries,
        "adverts": adverts,
        "sets": [_clean(s) for s in by_kind["s"]],
        "lines": [_named(row, spec) for row in by_kind["l"]],
        "dates": dates,
        "retailers": [_clean(r) for r in by_kind["r"]],
        "schedule": [[week, piece] for advert in spec.adverts for week, piece, _ in advert.schedule],
        "transcript_lines": _transcript(by_kind, lines),
        "form": spec.wear.source,
        "notes": "; ".join(spec.remarks),
        "source": "invented; printed by corpus_demo/press",
    }
    if not spec.readable:
        for key in (
            "prices",
            "conditions",
            "sets",
            "lines",
            "dates",
            "retailers",
            "transcript_lines",
            "offers_with_conditions",
        ):
            row[key] = []
        row |= {"schedule": [], "adverts": [], "printed_date": None}
    return row


def _clean(row: Row) -> Row:
    return {key: value for key, value in row.items() if not key.startswith("_")}


def _named(row: Row, spec: ScanSpec) -> Row:
    return {**_clean(row), "line": row["line_id"]}


def _has_year(row: Row) -> bool:
    return YEAR.search(row["text"]) is not None


def _transcript(by_kind: dict[str, list[Row]], lines: dict[str, int]) -> list[str]:
    """Choose lines of every size evenly down the page; only such as stand on one line."""
    usable = [r for kind in "tcd" for r in by_kind[kind] if lines.get(r["_fact"]) == 1 and len(r["text"]) > 3]
    usable.sort(key=_place)
    step = max(1.0, len(usable) / TRANSCRIPT_LINES)
    chosen = [usable[int(k * step)] for k in range(min(TRANSCRIPT_LINES, len(usable)))]
    return list(dict.fromkeys(str(r["text"]) for r in chosen))


def _place(row: dict[str, Any]) -> tuple[int, int]:
    return row["box"][1], row["box"][0]

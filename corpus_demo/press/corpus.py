"""Prints a whole clippings folder: scans, notes and truth, from the sheets of a story."""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Iterable, Sequence
from pathlib import Path

import numpy as np
from numpy.typing import NDArray
from playwright.sync_api import Browser

from .facts import ScanSpec
from .files import write
from .pressroom import Print, take, verso

NOTE_FIELDS = (
    "file",
    "publication",
    "published",
    "city",
    "state",
    "page",
    "found_in",
    "rights",
    "remark",
    "recipe",
    "continues",
)
BILEVEL = ("photocopy",)


def print_scans(browser: Browser, specs: Sequence[ScanSpec], folder: Path) -> list[Print]:
    """Print the sheets and write their files below scans/; leaves of one file follow their first leaf."""
    (folder / "scans").mkdir(parents=True, exist_ok=True)
    prints: list[Print] = []
    back = verso(browser)
    leaves: list[NDArray[np.uint8]] = []
    for k, spec in enumerate(specs):
        done = take(browser, spec, back)
        prints.append(done)
        leaves.append(done.picture)
        if k + 1 == len(specs) or specs[k + 1].leaf_of is None:
            name = spec.leaf_of or spec.file
            path = folder / "scans" / name
            bilevel = spec.wear.source in BILEVEL or path.suffix == ".tif"
            write(path, leaves, bilevel=bilevel)
            leaves = []
    return prints


def truth_lines(prints: Iterable[Print]) -> str:
    """Return truth.jsonl."""
    rows = []
    leaf = 1
    for done in prints:
        leaf = leaf + 1 if done.spec.leaf_of else 1
        row = done.truth | {"file": done.spec.leaf_of or done.spec.file, "leaf": leaf}
        rows.append(json.dumps(row, ensure_ascii=False))
    return "\n".join(rows) + "\n"


def notes_csv(specs: Iterable[ScanSpec]) -> str:
    """Return notes.csv as a spreadsheet writes it."""
    out = io.StringIO()
    writer = csv.DictWriter(out, NOTE_FIELDS, lineterminator="\r\n")
    writer.writeheader()
    for spec in specs:
        if spec.leaf_of:
            continue
        writer.writerow(
            {
                "file": spec.file,
                "publication": spec.publication or "",
                "published": str(spec.published) if spec.noted and spec.published else "",
                "city": spec.city or "",
                "page": spec.page,
                "found_in": spec.found_in,
                "rights": "invented; printed for the demo",
                "remark": spec.remark,
                "recipe": spec.recipe,
                "continues": spec.continues,
            }
        )
    return out.getvalue()


def write_folder(browser: Browser, specs: Sequence[ScanSpec], folder: Path) -> list[Print]:
    """Print a story into a folder: scans/, notes.csv, truth.jsonl."""
    prints = print_scans(browser, specs, folder)
    (folder / "notes.csv").write_bytes(notes_csv(specs).encode())
    (folder / "truth.jsonl").write_text(truth_lines(prints), encoding="utf-8")
    return prints

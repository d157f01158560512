"""The invented story of the demo corpus: who sold what to whom, when, and what became of the clippings."""

from __future__ import annotations

from ..facts import ScanSpec
from . import groceries, oddments, shops, silverthaw, tansy, wheat


def scans() -> tuple[ScanSpec, ...]:
    """Return every sheet of the demo corpus in the order of the file."""
    specs = (*tansy.scans(), *silverthaw.scans(), *wheat.scans(), *shops.scans(), *groceries.scans(), *oddments.scans())
    return tuple(sorted(specs, key=lambda spec: (spec.leaf_of or spec.file, spec.leaf_of is not None)))

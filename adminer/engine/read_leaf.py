"""The work of one worker: one page of one scan to a kept reading."""

from __future__ import annotations

import time
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Final

from adminer.errors import ScanError, machine_error
from adminer.intake.identity import clipping_id_of
from adminer.store.readings import LeafReading, save_reading

_LYING: Final = {1: "lies on its side", 2: "stands on its head", 3: "lies on its side"}
_TURN: Final = {1: "a quarter to the left", 2: "half around", 3: "a quarter to the right"}
WORDLESS: Final = "shows no type that could be read"
WORDLESS_REMEDY: Final = "scan it again, sharper and at 300 dpi, or add its facts by hand at the desk"


@dataclass(frozen=True, slots=True)
class CountTask:
    """Hold one new file whose pages are to be counted."""

    path: str
    file: str
    sha256: str


@dataclass(frozen=True, slots=True)
class ReadTask:
    """Hold one page that is to be read."""

    path: str
    file: str
    sha256: str
    leaf: int
    recipe: str | None  # None: measure the picture and guess
    key: str
    readings: str  # folder of the kept readings

    @property
    def name(self) -> str:
        """Return the file, with the page where it is not the first."""
        return self.file if self.leaf == 1 else f"{self.file} (page {self.leaf})"


@dataclass(frozen=True, slots=True)
class Receipt:
    """Hold what a worker reports; the reading itself is on the disk already."""

    clipping_id: str
    problem: str | None
    remedy: str | None
    recipe: str | None
    recipe_why: str
    seconds: float


def count_task(task: CountTask) -> int:
    """Count the pages of a file; raises ScanError."""
    from adminer.intake.scans import count_leaves  # noqa: PLC0415 - decoders load in the worker, not in the command

    return count_leaves(Path(task.path), task.file)


def load_models() -> None:
    """Load what every page needs, once a worker."""
    import adminer.layout.recipe  # noqa: PLC0415 - in the worker only, so that the command itself starts fast
    import adminer.reading  # noqa: F401, PLC0415


def read_leaf(task: ReadTask) -> Receipt:
    """Read one page and keep the reading, or the reason why there is none.

    Raises MachineError where the reading cannot be written.
    """
    began = time.monotonic()
    kept = _read(task, began)
    try:
        save_reading(Path(task.readings), kept)
    except OSError as fault:
        raise machine_error(fault, Path(task.readings)) from None
    return receipt_of(kept)


def receipt_of(kept: LeafReading) -> Receipt:
    """Return what the parent hears of a kept reading; a page without one word counts as not read."""
    wordless = kept.reading is not None and not kept.reading.words
    problem, remedy = (WORDLESS, WORDLESS_REMEDY) if wordless else (kept.problem, kept.remedy)
    recipe = kept.reading.recipe if kept.reading else None
    return Receipt(kept.clipping_id, problem, remedy, recipe, kept.recipe_why, kept.seconds)


def unread_leaf(task: ReadTask, fault: ScanError) -> LeafReading:
    """Return what is kept of a page that cannot be read: the reason and the remedy."""
    reason = fault.what + (f", because {fault.why}" if fault.why else "")
    clipping_id = clipping_id_of(task.sha256, task.leaf)
    return LeafReading(clipping_id, task.sha256, task.leaf, task.key, "", None, reason, fault.remedy)


def _read(task: ReadTask, began: float) -> LeafReading:
    from adminer.intake.scans import open_leaf  # noqa: PLC0415
    from adminer.layout.recipe import default_recipes, guess_recipe  # noqa: PLC0415
    from adminer.reading import quarter_turns, read_page  # noqa: PLC0415

    clipping_id = clipping_id_of(task.sha256, task.leaf)
    try:
        page = open_leaf(Path(task.path), task.file, task.leaf, task.sha256)
        name, why = (task.recipe, "as asked") if task.recipe else guess_recipe(page.pixels)
        reading = read_page(page.pixels, default_recipes()[name], clipping_id, page.dpi)
        if turns := quarter_turns(page.pixels, reading):
            remedy = f"turn it {_TURN[turns]} in any program that shows pictures, save it and bring it in again"
            raise ScanError(_LYING[turns], remedy=remedy)
    except ScanError as fault:
        return unread_leaf(task, fault)
    except MemoryError:
        remedy = "use fewer workers (--workers 1) or save the scan smaller"
        return unread_leaf(task, ScanError("needs more memory than there is", remedy=remedy))
    if page.remark:
        reading = replace(reading, remarks=(*reading.remarks, page.remark))
    return LeafReading(
        clipping_id, task.sha256, task.leaf, task.key, why, reading, seconds=round(time.monotonic() - began, 2)
    )

"""Stand-ins for the reader: they open the scan as the real one does, and misbehave as the file's name says."""

from __future__ import annotations

import os
import signal
import time
from pathlib import Path

from adminer.engine.read_leaf import ReadTask, Receipt, receipt_of, unread_leaf
from adminer.errors import ScanError
from adminer.intake.scans import open_leaf
from adminer.records import Block, Box, PageReading, Region, Word
from adminer.store.readings import LeafReading, save_reading

WORDS = ("Cup", "and", "Saucer", "$1.29")


def fake_reading(clipping_id: str, width: int = 360, height: int = 240, words: tuple[str, ...] = WORDS) -> PageReading:
    """Return a page with one line of words."""
    placed = tuple(
        Word(text, Box(20 + 80 * number, 80, 70, 24), 20.0, 0.9, "display", line=0) for number, text in enumerate(words)
    )
    whole = Box(0, 0, width, height)
    regions, blocks = (Region(whole, "advert", 0.9),), (Block(whole, "text", 20.0),)
    return PageReading(clipping_id, width, height, "magazine_page", regions, blocks, placed)


def read(task: ReadTask) -> Receipt:
    """Read nothing, but keep a reading, after doing what the file's name says."""
    name = Path(task.file).stem
    once = Path(task.readings).parent / f"{name}.tried"
    if "kill" in name and ("always" in name or not once.exists()):
        once.touch()
        os.kill(os.getpid(), signal.SIGKILL)
    if "raise" in name:
        raise RuntimeError("a fault of the program")
    if "hang" in name:
        time.sleep(60)
    if "slow" in name:
        time.sleep(0.4)
    try:
        page = open_leaf(Path(task.path), task.file, task.leaf, task.sha256)
    except ScanError as fault:
        kept = unread_leaf(task, fault)
    else:
        words = () if "fog" in name else WORDS
        reading = fake_reading(page.clipping_id, page.pixels.shape[1], page.pixels.shape[0], words)
        kept = LeafReading(page.clipping_id, task.sha256, task.leaf, task.key, "fake", reading)
    save_reading(Path(task.readings), kept)
    return receipt_of(kept)


def double(number: int) -> int:
    """Double a number, unless it is one of those that end their process."""
    if number == 13:
        os.kill(os.getpid(), signal.SIGKILL)
    if number == 17:
        raise ScanError("is unlucky", file="17")
    if number == 19:
        raise ValueError("not this one")
    if number == 23:
        time.sleep(60)
    return 2 * number


def environment(_task: int) -> str | None:
    """Return the limit of threads that this worker works under."""
    return os.environ.get("OMP_THREAD_LIMIT")


def own_process(_task: int) -> int:
    """Return the id of this worker."""
    return os.getpid()

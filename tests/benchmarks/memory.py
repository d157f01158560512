"""Peak memory of a worker on a 60-megapixel page, beside the same page given to the display reader alone.

    python -m tests.benchmarks.memory --megapixels 60

The page is the largest demo scan enlarged, as a broadsheet scanned at 600 dpi is; each contestant reads it in a
process of its own.
"""

from __future__ import annotations

import argparse
import math
import multiprocessing
import os
import resource
import time
from multiprocessing.connection import Connection

import cv2
import numpy as np
from numpy.typing import NDArray
from rich.console import Console
from rich.table import Table

from tests.benchmarks.corpus import ROOT, first_leaf, some_pictures

AIM = 1.5  # GB; issue 3, "How fast"


def large_page(megapixels: float) -> NDArray[np.uint8]:
    """Enlarge the largest demo scan to a size in megapixels."""
    works = some_pictures(ROOT / "corpus_demo" / "scans", 1000)
    images = [image for work in works if (image := first_leaf(work)) is not None]
    pixels = max((image.pixels for image in images), key=lambda one: one.shape[0] * one.shape[1])
    factor = math.sqrt(megapixels * 1e6 / (pixels.shape[0] * pixels.shape[1]))
    return np.asarray(cv2.resize(pixels, None, fx=factor, fy=factor, interpolation=cv2.INTER_CUBIC), dtype=np.uint8)


def measure(contestant: str, megapixels: float, answer: Connection) -> None:
    """Read the large page and send back peak memory in GB, seconds, and the peak before reading."""
    pixels = large_page(megapixels)
    before = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1e6
    begun = time.monotonic()
    if contestant == "adminer":
        from adminer.layout.recipe import guess_recipe, load_recipes
        from adminer.reading import read_page

        read_page(pixels, load_recipes()[guess_recipe(pixels)[0]])
    elif contestant == "display reader":
        from adminer.score.baselines import read_display

        read_display(pixels)
    answer.send((resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1e6, time.monotonic() - begun, before))


def main() -> None:
    """Print the table."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--megapixels", type=float, default=60)
    wishes = parser.parse_args()
    os.environ["OMP_THREAD_LIMIT"] = "1"
    table = Table(title=f"Peak memory of a worker on a page of {wishes.megapixels:.0f} megapixels (aim {AIM} GB)")
    for head in ("contestant", "peak GB", "of it before reading", "seconds"):
        table.add_column(head, justify="left" if head == "contestant" else "right")
    start = multiprocessing.get_context("spawn")
    for contestant in ("adminer", "display reader"):
        ours, theirs = start.Pipe()
        process = start.Process(target=measure, args=(contestant, wishes.megapixels, theirs))
        process.start()
        theirs.close()
        try:
            peak, seconds, before = ours.recv()
            table.add_row(contestant, f"{peak:.2f}", f"{before:.2f}", f"{seconds:.0f}")
        except EOFError:
            table.add_row(contestant, "died", "", "")
        process.join()
    Console(width=120).print(table)


if __name__ == "__main__":
    main()

"""Pages a minute and CPU seconds a page on both cores: adminer, plain Tesseract, the display reader, in one run.

    python -m tests.benchmarks.speed --pages 6

Every contestant reads the same pages in two processes with one thread each; a first page warms its models and its
names up, which a process loads once, and is not counted. Ratios are against plain Tesseract and against the display
reader alone.
"""

from __future__ import annotations

import os
import resource
import time
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass
from functools import cache, partial

from rich.console import Console
from rich.table import Table

from adminer.names.authority import Authorities
from adminer.score.straight import PageWork
from tests.benchmarks.corpus import asked, first_leaf, some_pictures

WORKERS = 2
CONTESTANTS = ("adminer, read and parse", "adminer, read", "display reader", "plain Tesseract")


@dataclass(frozen=True, slots=True)
class Cost:
    """Hold what a contestant took for all pages: wall seconds of the run, CPU seconds of its processes."""

    wall: float
    cpu: float
    pages: int


def cpu_seconds() -> float:
    """Return the CPU seconds of this process and its finished children."""
    used = [resource.getrusage(who) for who in (resource.RUSAGE_SELF, resource.RUSAGE_CHILDREN)]
    return sum(one.ru_utime + one.ru_stime for one in used)


@cache
def no_names() -> Authorities:
    """Return empty authority files, the same for all pages: a worker builds its pipeline for them once."""
    from adminer.names.authority import load_authorities

    return load_authorities(None)


def read_one(contestant: str, work: PageWork) -> float:
    """Read one page as a contestant does; returns CPU seconds, decoding of the picture left out."""
    image = first_leaf(work)
    if image is None:
        return 0.0
    begun = cpu_seconds()
    if contestant.startswith("adminer"):
        from adminer.layout.recipe import guess_recipe, load_recipes
        from adminer.parsing import parse_page
        from adminer.reading import read_page

        recipe = load_recipes()[guess_recipe(image.pixels)[0]]
        reading = read_page(image.pixels, recipe, image.clipping_id, image.dpi)
        if contestant.endswith("parse"):
            parse_page(reading, no_names())
    else:
        from adminer.score.baselines import read_baseline

        read_baseline("display" if contestant.startswith("display") else "tesseract", image.pixels)
    return cpu_seconds() - begun


def run(contestant: str, works: list[PageWork]) -> Cost:
    """Run one contestant over all pages in two fresh processes."""
    with ProcessPoolExecutor(WORKERS) as pool:
        list(pool.map(partial(read_one, contestant), works[:1] * WORKERS))
        begun = time.monotonic()
        cpu = sum(pool.map(partial(read_one, contestant), works))
        return Cost(time.monotonic() - begun, cpu, len(works))


def main() -> None:
    """Print the table."""
    wishes = asked(__doc__ or "").parse_args()
    os.environ["OMP_THREAD_LIMIT"] = "1"
    works = some_pictures(wishes.folder, wishes.pages)
    costs = {name: run(name, works) for name in CONTESTANTS}
    table = Table(title=f"{len(works)} pages, {WORKERS} processes, load {os.getloadavg()[0]:.1f} at the end")
    table.add_column("contestant")
    for head in ("pages a minute", "wall s a page", "CPU s a page", "CPU : Tesseract", "CPU : display reader"):
        table.add_column(head, justify="right")
    for name, cost in costs.items():
        table.add_row(
            name,
            f"{60 * cost.pages / cost.wall:.1f}",
            f"{cost.wall / cost.pages:.2f}",
            f"{cost.cpu / cost.pages:.2f}",
            f"{cost.cpu / costs['plain Tesseract'].cpu:.2f}",
            f"{cost.cpu / costs['display reader'].cpu:.2f}",
        )
    Console(width=120).print(table)


if __name__ == "__main__":
    main()

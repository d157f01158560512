"""Where the time of reading and parsing goes, by function of adminer: a table of shares.

    python -m tests.benchmarks.where_time_goes --pages 6

A thread looks every few milliseconds at what the main thread does and charges the time since its last look to the
innermost function of adminer on the stack; what a library does is charged to the function that called it.
"""

from __future__ import annotations

import os
import sys
import threading
import time
from collections import defaultdict
from types import FrameType

from rich.console import Console
from rich.table import Table

from tests.benchmarks.corpus import asked, first_leaf, some_pictures

STEP = 0.004
ROOM = f"{os.sep}adminer{os.sep}"


class Watch:
    """Charge the main thread's time to functions while it runs."""

    def __init__(self) -> None:
        self.charged: defaultdict[str, float] = defaultdict(float)
        self._ended = threading.Event()
        self._thread = threading.Thread(target=self._look, args=(threading.get_ident(),), daemon=True)

    def __enter__(self) -> Watch:
        self._thread.start()
        return self

    def __exit__(self, *_: object) -> None:
        self._ended.set()
        self._thread.join()

    def _look(self, main: int) -> None:
        before = time.perf_counter()
        while not self._ended.wait(STEP):
            name = owner(sys._current_frames().get(main))
            now = time.perf_counter()
            self.charged[name] += now - before
            before = now


def owner(frame: FrameType | None) -> str:
    """Return the innermost function of adminer on a stack as room/file:function."""
    while frame is not None:
        path = frame.f_code.co_filename
        if ROOM in path and "benchmarks" not in path:
            return f"{path.rsplit(ROOM, 1)[1]}:{frame.f_code.co_qualname}"
        frame = frame.f_back
    return "outside adminer"


def largest(shares: dict[str, float]) -> list[tuple[str, float]]:
    """Return names and seconds, the largest first."""
    return sorted(shares.items(), key=lambda one: -one[1])


def main() -> None:
    """Print the table."""
    wishes = asked(__doc__ or "").parse_args()
    os.environ["OMP_THREAD_LIMIT"] = "1"
    from adminer.layout.recipe import guess_recipe, load_recipes
    from adminer.names.authority import load_authorities
    from adminer.parsing import parse_page
    from adminer.reading import read_page

    recipes, authorities = load_recipes(), load_authorities(None)
    works = some_pictures(wishes.folder, wishes.pages)
    first = first_leaf(works[0])
    if first is not None:
        parse_page(read_page(first.pixels, recipes[guess_recipe(first.pixels)[0]]), authorities)
    with Watch() as watch:
        for work in works:
            if (image := first_leaf(work)) is not None:
                recipe = recipes[guess_recipe(image.pixels)[0]]
                parse_page(read_page(image.pixels, recipe, image.clipping_id, image.dpi), authorities)
    total = sum(watch.charged.values())
    table = Table(title=f"Where the time of {len(works)} pages goes ({total / len(works):.2f} s a page, one process)")
    table.add_column("function")
    table.add_column("share", justify="right")
    table.add_column("ms a page", justify="right")
    rooms: defaultdict[str, float] = defaultdict(float)
    for name, seconds in watch.charged.items():
        rooms[name.split("/")[0]] += seconds
    for name, seconds in largest(rooms):
        table.add_row(f"room {name}", f"{seconds / total:.1%}", f"{1000 * seconds / len(works):.0f}")
    table.add_section()
    for name, seconds in largest(watch.charged)[:20]:
        table.add_row(name, f"{seconds / total:.1%}", f"{1000 * seconds / len(works):.0f}")
    Console(width=120).print(table)


if __name__ == "__main__":
    main()

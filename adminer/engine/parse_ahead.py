"""Parse many pages in worker processes, so that the build that follows only collects what they kept."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path
from typing import Final

from adminer.engine.parse_pages import ReadPage, Unparsed, parsed_pages, parsed_path
from adminer.engine.pool import Pool, default_workers
from adminer.engine.progress import Watcher
from adminer.names.authority import Authorities, load_authorities

WORTH_WORKERS: Final = 40  # pages; fewer are parsed faster than workers start and load their vocabulary


@dataclass(frozen=True, slots=True)
class ParseTask:
    """Hold one page to parse, and the folders of names and kept work."""

    page: ReadPage
    version: str
    names: str
    readings: str


def parse_ahead(
    pages: Iterable[ReadPage], *, version: str, names: Path, readings: Path, workers: int | None, watch: Watcher
) -> None:
    """Parse those pages in workers whose adverts are not kept yet, where there are enough to be worth it."""
    tasks = [
        ParseTask(page, version, str(names), str(readings))
        for page in pages
        if not parsed_path(page, version, readings).is_file()
    ]
    if len(tasks) < WORTH_WORKERS:
        return
    pool: Pool[ParseTask, list[Unparsed]] = Pool(parse_one, workers=workers or default_workers())
    watch.begin(len(tasks), "Making offers of words")
    try:
        for outcome in pool.results(tasks):
            problem = outcome.crash or (outcome.result[0].reason if outcome.result else None)
            watch.step(outcome.task.page.file, problem)
    finally:
        watch.end()


def parse_one(task: ParseTask) -> list[Unparsed]:
    """Parse one page and keep its adverts; returns what went wrong."""
    from adminer.parsing import parse_page  # noqa: PLC0415 - in the worker only

    problems: list[Unparsed] = []
    folder = Path(task.readings)
    for _page in parsed_pages(
        [task.page], _authorities(task.names), parse_page, version=task.version, problems=problems, folder=folder
    ):
        pass
    return problems


@lru_cache(maxsize=1)
def _authorities(names: str) -> Authorities:
    return load_authorities(Path(names))

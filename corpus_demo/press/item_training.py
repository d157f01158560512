"""Learn the weights by which items are chosen again from adverts of many wares that the press prints."""

from __future__ import annotations

import tempfile
from concurrent.futures import ProcessPoolExecutor
from itertools import chain
from pathlib import Path

from PIL import Image

from adminer.score.straight import PageWork, parse_all, read_straight
from adminer.score.truth import TruePage
from adminer.score.weigh import Judged, Seen, fit, judge, recorder, write

from .browser import press_browser
from .facts import ScanSpec
from .pressroom import take, verso
from .story import make_story
from .wares.sheets import make_wares

CHUNK = 20  # sheets printed and read by one process at a time


def choices(seed: int, count: int, workers: int = 2) -> list[Judged]:
    """Print `count` sheets, read and parse them, and judge every text that might have named a price.

    One sheet in ten is a page of a story: there the rules are seldom wrong, and the weights must learn to leave them.
    """
    stories = count // 10
    specs = make_wares(seed, count - stories) + make_story(seed, stories)[1]
    chunks = [specs[k : k + CHUNK] for k in range(0, count, CHUNK)]
    with ProcessPoolExecutor(workers) as pool:
        return list(chain.from_iterable(pool.map(_judged, chunks)))


def train(seed: int, count: int, out: Path) -> list[Judged]:
    """Learn from `count` sheets and write the weights; return what was learned from."""
    judged = choices(seed, count)
    write(fit(judged), out, len(judged))
    return judged


def _judged(specs: tuple[ScanSpec, ...]) -> list[Judged]:
    with tempfile.TemporaryDirectory() as home, press_browser() as browser:
        truth, readings, back = [], [], verso(browser)
        for spec in specs:
            try:
                done = take(browser, spec, back)
            except ValueError:
                continue  # a word too wide for its column: no printer would let it pass
            path = Path(home) / spec.file
            Image.fromarray(done.picture).save(path)
            truth.append(TruePage.model_validate(done.truth))
            readings += read_straight(PageWork(path, spec.file), Path(home) / "kept")
        seen: list[Seen] = []
        with recorder(seen):
            return judge(parse_all(readings, None, {}), truth, seen)

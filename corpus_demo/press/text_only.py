"""A story without pictures: readings and truth as lines of JSON, and back."""

from __future__ import annotations

import json
from collections.abc import Iterator
from dataclasses import asdict
from pathlib import Path
from typing import Any

from adminer.records import Block, Box, PageReading, Region, Word

from .corpus import notes_csv
from .plain import read_plain
from .sheet import Row
from .story import make_story
from .world import names_files


def readings(
    seed: int, scans: int, *, hide_dates: bool = False, misread: float = 0.0
) -> Iterator[tuple[PageReading, Row]]:
    """Yield the reading and the truth of every sheet of a story."""
    _, specs = make_story(seed, scans, hide_dates=hide_dates)
    for spec in specs:
        yield read_plain(spec, misread)


def write_text_only(seed: int, scans: int, folder: Path, *, hide_dates: bool, misread: float) -> None:
    """Write readings.jsonl, truth.jsonl, notes.csv and names/ of a story."""
    world, specs = make_story(seed, scans, hide_dates=hide_dates)
    (folder / "names").mkdir(parents=True, exist_ok=True)
    for name, text in names_files(world).items():
        (folder / "names" / name).write_text(text, encoding="utf-8")
    (folder / "notes.csv").write_bytes(notes_csv(specs).encode())
    with (
        (folder / "readings.jsonl").open("w", encoding="utf-8") as pages,
        (folder / "truth.jsonl").open("w", encoding="utf-8") as truths,
    ):
        for spec in specs:
            reading, truth = read_plain(spec, misread)
            pages.write(json.dumps(asdict(reading), ensure_ascii=False) + "\n")
            truths.write(json.dumps(truth, ensure_ascii=False) + "\n")


def load_readings(path: Path) -> Iterator[PageReading]:
    """Read readings.jsonl back into records."""
    with path.open(encoding="utf-8") as lines:
        for line in lines:
            yield _reading(json.loads(line))


def _reading(row: dict[str, Any]) -> PageReading:
    regions = tuple(Region(**{**r, "box": Box(**r["box"])}) for r in row["regions"])
    blocks = tuple(Block(**{**b, "box": Box(**b["box"])}) for b in row["blocks"])
    words = tuple(Word(**{**w, "box": Box(**w["box"])}) for w in row["words"])
    rules = tuple(Box(**r) for r in row["rules"])
    rest = {key: row[key] for key in ("clipping_id", "width", "height", "recipe", "dpi")}
    return PageReading(**rest, regions=regions, blocks=blocks, words=words, rules=rules, remarks=tuple(row["remarks"]))

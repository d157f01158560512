"""The pages that benchmarks run on: some of a folder, spread over its sizes."""

from __future__ import annotations

import argparse
from pathlib import Path

from adminer.intake.scans import PageImage
from adminer.score.straight import PageWork, open_pages

ROOT = Path(__file__).resolve().parents[2]
SUFFIXES = {".png", ".jpg", ".jpeg", ".tif", ".tiff", ".webp"}


def asked(about: str) -> argparse.ArgumentParser:
    """Return a parser that knows --folder and --pages."""
    parser = argparse.ArgumentParser(description=about)
    parser.add_argument("--folder", type=Path, default=ROOT / "corpus_demo" / "scans", help="folder of pictures")
    parser.add_argument("--pages", type=int, default=6, help="how many pictures, spread over the folder by size")
    return parser


def some_pictures(folder: Path, count: int) -> list[PageWork]:
    """Choose pictures at even steps of file size, so that small and large ones take part."""
    every = sorted((p for p in folder.iterdir() if p.suffix.lower() in SUFFIXES), key=lambda p: p.stat().st_size)
    if not every:
        raise SystemExit(f"{folder} holds no pictures; give another folder with --folder")
    count = min(count, len(every))
    step = len(every) / count
    return [PageWork(path, path.name) for path in (every[int((i + 0.5) * step)] for i in range(count))]


def first_leaf(work: PageWork) -> PageImage | None:
    """Open the first page of a picture; None where it cannot be read."""
    return next(open_pages(work), None)

"""The two readers alone, each given the whole page as it is: what adminer must beat in the same run.

A baseline knows nothing of layout or geometry: it reads, and a naive pattern finds the prices.
"""

from __future__ import annotations

import json
import os
import re
from collections.abc import Iterable
from dataclasses import asdict, dataclass
from decimal import Decimal
from functools import lru_cache
from pathlib import Path
from typing import Any, Final, Literal

import cv2
import numpy as np
from numpy.typing import NDArray

from adminer.records import Box
from adminer.score.found import FoundPage, FoundPrice

Baseline = Literal["tesseract", "tesseract_psm11", "display"]
BASELINES: Final[tuple[Baseline, ...]] = ("tesseract", "tesseract_psm11", "display")
TITLES: Final[dict[Baseline, str]] = {
    "tesseract": "plain Tesseract",
    "tesseract_psm11": "Tesseract --psm 11",
    "display": "display reader alone",
}
# A dollar sign before, or a cent sign or word after, or a decimal point with two figures: what anyone would try first.
_MONEY: Final = re.compile(
    r"\$\s?(?P<dollars>\d{1,3}(?:,\d{3})+|\d+)(?:\s?[.,]\s?(?P<cents>\d\d)(?!\d))?"
    r"|(?<![\d.,/])(?P<small>\d{1,2})\s?(?:¢|c(?:ts?|ents?)?\b)"
    r"|(?<![\d.,$])(?P<bare>\d{1,3}[.]\d\d)(?![\d])",
    re.IGNORECASE,
)
_WORDLIKE: Final = re.compile(r"[A-Za-z]{3,}")


@dataclass(frozen=True, slots=True)
class TextLine:
    """Hold one line as a reader gave it, its box in pixels of the scan, and the reader's confidence (0 to 1)."""

    text: str
    box: Box
    confidence: float


@lru_cache(maxsize=1)
def _display() -> Any:
    os.environ.setdefault("OMP_NUM_THREADS", "1")
    import rapidocr  # noqa: PLC0415 -- takes a second; only needed when no cached reading serves

    models = Path(rapidocr.__file__).parent / "models"
    return rapidocr.RapidOCR(
        params={
            "Det.model_path": str(models / "PP-OCRv6_det_small.onnx"),
            "Rec.model_path": str(models / "PP-OCRv6_rec_small.onnx"),
            "Cls.model_path": str(models / "ch_ppocr_mobile_v2.0_cls_mobile.onnx"),
            "EngineConfig.onnxruntime.intra_op_num_threads": 1,
            "EngineConfig.onnxruntime.inter_op_num_threads": 1,
            "Global.log_level": "error",
        }
    )


def read_display(pixels: NDArray[np.uint8]) -> tuple[TextLine, ...]:
    """Read a whole page (H, W) or (H, W, 3 RGB) with the display reader and its settings as shipped."""
    colour = cv2.cvtColor(pixels, cv2.COLOR_GRAY2BGR if pixels.ndim == 2 else cv2.COLOR_RGB2BGR)
    result = _display()(colour)
    if result.txts is None:
        return ()
    lines = []
    for text, corners, score in zip(result.txts, result.boxes, result.scores, strict=True):
        x, y, w, h = cv2.boundingRect(np.asarray(corners, dtype=np.float32))
        lines.append(TextLine(str(text), Box(int(x), int(y), int(w), int(h)), float(score)))
    return tuple(lines)


def read_tesseract(pixels: NDArray[np.uint8], psm: int) -> tuple[TextLine, ...]:
    """Read a whole page with plain Tesseract in a page segmentation mode.

    Raises MachineError when Tesseract is missing or fails.
    """
    from adminer.reading.tesseract import tesseract_words  # noqa: PLC0415 -- the room is only needed for a reading

    grouped: dict[tuple[int, int, int], list[TextLine]] = {}
    for word in tesseract_words([pixels], psm):
        grouped.setdefault(word.line, []).append(TextLine(word.text, word.box, word.confidence))
    return tuple(line_of(words) for words in grouped.values())


def line_of(words: list[TextLine]) -> TextLine:
    """Join the words of one text line."""
    box = words[0].box
    for word in words[1:]:
        box = box.joined(word.box)
    return TextLine(" ".join(w.text for w in words), box, sum(w.confidence for w in words) / len(words))


def read_baseline(reader: Baseline, pixels: NDArray[np.uint8]) -> tuple[TextLine, ...]:
    """Read a whole page with one baseline."""
    if reader == "display":
        return read_display(pixels)
    return read_tesseract(pixels, 11 if reader == "tesseract_psm11" else 3)


def cached_baseline(
    reader: Baseline, pixels: NDArray[np.uint8], key: str, cache: Path | None, *, fresh: bool = False
) -> tuple[TextLine, ...]:
    """Read with a baseline, or take what it read before from folder `cache`, where `key` names the content."""
    path = cache / f"{key}.{reader}.json" if cache else None
    if path and path.exists() and not fresh:
        return tuple(
            TextLine(row["text"], Box(**row["box"]), row["confidence"])
            for row in json.loads(path.read_text(encoding="utf-8"))
        )
    lines = read_baseline(reader, pixels)
    if path:
        path.parent.mkdir(parents=True, exist_ok=True)
        draft = path.with_suffix(".part")
        draft.write_text(json.dumps([asdict(line) for line in lines], ensure_ascii=False), encoding="utf-8")
        draft.replace(path)
    return lines


def naive_prices(lines: Iterable[TextLine]) -> tuple[FoundPrice, ...]:
    """Find prices with one pattern; the item is the nearest text: the rest of the line, else the nearest other line."""
    every = tuple(lines)
    found = []
    for line in every:
        for match in _MONEY.finditer(line.text):
            if match["small"]:
                amount = Decimal(match["small"]) / 100
            elif match["bare"]:
                amount = Decimal(match["bare"])
            else:
                amount = Decimal(match["dollars"].replace(",", "")) + Decimal(match["cents"] or 0) / 100
            rest = " ".join((line.text[: match.start()] + " " + line.text[match.end() :]).split())
            item = rest if _WORDLIKE.search(rest) else _nearest(line, every)
            found.append(
                FoundPrice(amount, "USD", _slice_box(line, *match.span()), line.confidence, item, match[0], "bare")
            )
    return tuple(found)


def _slice_box(line: TextLine, start: int, end: int) -> Box:
    """Return the part of a line's box that its characters take, as if all were equally wide."""
    step = line.box.w / max(len(line.text), 1)
    return Box(round(line.box.x + start * step), line.box.y, max(round((end - start) * step), 1), line.box.h)


def _nearest(line: TextLine, every: tuple[TextLine, ...]) -> str:
    x, y = line.box.centre
    others = [other for other in every if other is not line and _WORDLIKE.search(other.text)]
    if not others:
        return ""
    return min(others, key=lambda o: (o.box.centre[0] - x) ** 2 + (o.box.centre[1] - y) ** 2).text


def found_by_baseline(file: str, leaf: int, lines: tuple[TextLine, ...]) -> FoundPage:
    """Turn a baseline's lines into what scoring compares: text and prices, nothing else."""
    text = "\n".join(line.text for line in lines)
    return FoundPage(file=file, leaf=leaf, text=text, prices=naive_prices(lines))

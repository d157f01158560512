"""Read crops that hold one numeral each with the small network of this folder."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path
from typing import Any

import numpy as np
from numpy.typing import NDArray

from adminer.reading.numeral_model.alphabet import STEP, decode
from adminer.reading.numeral_model.prepare import prepare, stack

MODEL = Path(__file__).with_name("numerals.onnx")
BATCH = 64  # crops to one call of the network


@dataclass(frozen=True, slots=True)
class NumeralReading:
    """Hold what a crop says: "^" stands before raised figures, "?" for letters that are no numeral, "f" for "for".

    `confidence` is the probability that the network gives to the whole text, 0 to 1.
    """

    text: str
    confidence: float


def read_numerals(crops: Sequence[NDArray[np.uint8]], threads: int = 1) -> list[NumeralReading]:
    """Read crops, gray (H, W), one numeral or word in each, in the order given."""
    planes = [prepare(crop) for crop in crops]
    order = sorted(range(len(planes)), key=lambda i: planes[i].shape[1])
    result = [NumeralReading("", 0.0)] * len(planes)
    for start in range(0, len(order), BATCH):
        batch = order[start : start + BATCH]
        answers = _session(threads).run(None, {"crops": stack([planes[i] for i in batch])})[0]
        for row, i in enumerate(batch):
            result[i] = _spoken(answers[row, : planes[i].shape[1] // STEP])
    return result


@lru_cache(maxsize=2)
def _session(threads: int) -> Any:
    import onnxruntime  # noqa: PLC0415 - a quarter of a second at start-up that commands without reading must not pay

    options = onnxruntime.SessionOptions()
    options.intra_op_num_threads = threads
    options.inter_op_num_threads = 1
    options.log_severity_level = 3
    options.enable_cpu_mem_arena = False
    return onnxruntime.InferenceSession(str(MODEL), options, providers=["CPUExecutionProvider"])


def _spoken(answers: NDArray[np.float32]) -> NumeralReading:
    """Follow the likeliest class of every step and weigh all ways that say the same (Graves et al., 2006, 4.1)."""
    best = answers.argmax(axis=1)
    classes = [int(c) for k, c in enumerate(best) if c and (k == 0 or c != best[k - 1])]
    return NumeralReading(decode(classes), float(np.exp(_log_likelihood(answers, classes))))


def _log_likelihood(answers: NDArray[np.float32], classes: Sequence[int]) -> float:
    """Return the log probability of a text: the sum over all its alignments with the steps."""
    spaced = np.zeros(2 * len(classes) + 1, np.int64)
    spaced[1::2] = classes
    skips = np.zeros(len(spaced), bool)
    skips[3::2] = spaced[3::2] != spaced[1:-2:2]
    never = -1e9
    ways = np.full(len(spaced), never)
    ways[: 2 if len(classes) else 1] = answers[0, spaced[:2]]
    for step in answers[1:]:
        one = np.concatenate(([never], ways[:-1]))
        two = np.where(skips, np.concatenate(([never, never], ways[:-2]))[: len(ways)], never)
        ways = np.logaddexp(np.logaddexp(ways, one), two) + step[spaced]
    return float(np.logaddexp.reduce(ways[-2:]))

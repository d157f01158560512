"""Floors under the measured quality: pinned in a file with the digest of the corpus, and not lowered in silence."""

from __future__ import annotations

import hashlib
import json
import math
import tomllib
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from pydantic import BaseModel, ConfigDict, ValidationError

from adminer.errors import FolderError, QualityError, UsageError
from adminer.score.measure import Score
from adminer.score.tally import Tally

# Processors differ in the last bits of a network's output, which may turn one letter in a thousand, and one price of a
# hundred: the calibration error then moves by the price's share.
_SLACK: Final = {"character error rate": 0.001, "calibration error of prices": 0.01}


class Floors(BaseModel):
    """Hold the floors of one corpus: F1 by field at least, error rates at most, and why any was ever lowered."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    digest: str
    at_least: dict[str, float] = {}
    at_most: dict[str, float] = {}
    lowered: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Breach:
    """Hold one field that is worse than its floor allows."""

    field: str
    floor: float
    reached: float | None

    def __str__(self) -> str:
        reached = "nothing" if self.reached is None else f"{self.reached:.4f}"
        return f"{self.field}: floor {self.floor:.3f}, reached {reached}"


def corpus_digest(truth: Path, pictures: Iterable[Path]) -> str:
    """Return a SHA-256 over the truth file and its pictures: the corpus that floors were pinned on."""
    digest = hashlib.sha256(truth.read_bytes())
    for path in sorted(pictures):
        digest.update(hashlib.sha256(path.read_bytes()).digest())
    return digest.hexdigest()


def read_floors(path: Path) -> dict[str, Floors]:
    """Read the floors of every corpus; none where the file does not exist yet.

    Raises FolderError where the file is broken.
    """
    if not path.is_file():
        return {}
    try:
        tables = tomllib.loads(path.read_text(encoding="utf-8"))
        return {name: Floors.model_validate(table) for name, table in tables.items()}
    except (tomllib.TOMLDecodeError, UnicodeDecodeError, ValidationError) as error:
        raise FolderError(
            "the floors cannot be understood", file=str(path), why=str(error).splitlines()[0], remedy="correct the file"
        ) from None


def reached(score: Score) -> Floors:
    """Return the floors that a score would justify: each F1 with one fact fewer right, each rate with a hair more."""
    at_most = {"character error rate": score.error_rate, "calibration error of prices": score.calibration}
    return Floors(
        digest="",
        at_least={name: _down(_one_worse(tally).f1 or 0.0) for name, tally in score.fields.items()},
        at_most={name: _up(rate + _SLACK[name]) for name, rate in at_most.items() if rate is not None},
    )


def _one_worse(tally: Tally) -> Tally:
    return Tally(max(tally.right - 1, 0), tally.found, max(tally.met - 1, 0), tally.true)


def _down(value: float) -> float:
    return math.floor(value * 1000) / 1000


def _up(value: float) -> float:
    return math.ceil(value * 1000) / 1000


def breaches(score: Score, floors: Floors) -> tuple[Breach, ...]:
    """List every field of a score below its floor (or above its ceiling)."""
    rates = {"character error rate": score.error_rate, "calibration error of prices": score.calibration}
    low = [
        Breach(name, floor, value)
        for name, floor in floors.at_least.items()
        if (value := score.fields.get(name, Tally()).f1) is None or value < floor
    ]
    high = [
        Breach(name, ceiling, value)
        for name, ceiling in floors.at_most.items()
        if (value := rates.get(name)) is None or value > ceiling
    ]
    return (*low, *high)


def check_floors(score: Score, floors: Floors, digest: str) -> None:
    """Compare a score with its floors.

    Raises QualityError where the corpus is another than that of the floors, or a field is worse than its floor.
    """
    if digest != floors.digest:
        raise QualityError(
            "the floors were pinned on another corpus",
            why=f"its digest was {floors.digest[:12]} and is now {digest[:12]}",
            remedy="pin them anew with --pin",
        )
    worse = breaches(score, floors)
    if worse:
        raise QualityError(
            "the reading is worse than its floors: " + "; ".join(map(str, worse)),
            remedy="mend the reading, or lower a floor with --pin and --lower-floor REASON",
        )


def pin_floors(score: Score, old: Floors | None, digest: str, reason: str | None) -> Floors:
    """Return the floors raised to what a score reached; lower ones only with a reason, which is kept.

    Raises UsageError where a floor would sink and no reason is given.
    """
    new = reached(score)
    sunk = [str(breach) for breach in breaches(score, old)] if old else []
    if sunk and not reason:
        raise UsageError(
            "these floors would sink: " + "; ".join(sunk), remedy="mend the reading, or add --lower-floor REASON"
        )
    if old and not sunk:
        at_least = {name: max(value, old.at_least.get(name, 0.0)) for name, value in new.at_least.items()}
        at_most = {name: min(value, old.at_most.get(name, value)) for name, value in new.at_most.items()}
    else:
        at_least, at_most = new.at_least, new.at_most
    lowered = (*(old.lowered if old else ()), *([f"{reason} ({'; '.join(sunk)})"] if sunk else []))
    return Floors(digest=digest, at_least=at_least, at_most=at_most, lowered=lowered)


def write_floors(path: Path, floors: dict[str, Floors]) -> None:
    """Write the floors of every corpus as TOML, in one step."""
    parts = ["# Written by `adminer score --pin`. Lowering a floor needs --lower-floor REASON, which is kept here.\n"]
    for name in sorted(floors):
        one = floors[name]
        parts.append(f"[{name}]\ndigest = {json.dumps(one.digest)}\n")
        if one.lowered:
            parts.append("lowered = [\n" + "".join(f"    {_quoted(text)},\n" for text in one.lowered) + "]\n")
        for table, values in (("at_least", one.at_least), ("at_most", one.at_most)):
            parts.append(f"[{name}.{table}]\n" + "".join(f"{_quoted(k)} = {v}\n" for k, v in values.items()))
    draft = path.with_name(f".{path.name}.part")
    draft.write_text("\n".join(parts), encoding="utf-8")
    draft.replace(path)


def _quoted(text: str) -> str:
    return json.dumps(text, ensure_ascii=False)

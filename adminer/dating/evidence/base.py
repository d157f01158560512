"""What every kind of evidence works on and returns."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date

import numpy as np
from numpy.typing import NDArray

from adminer.records import Box

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class ReadDate:
    """Hold one date read on an advert: its kind, the text printed, and its bounds where the year is known."""

    kind: str  # validity, dateline, expiry, printed
    text: str
    earliest: date | None
    latest: date | None
    box: Box | None
    confidence: float


@dataclass(frozen=True, slots=True)
class ReadPrice:
    """Hold one price of an advert with what it is for; the amount in dollars for the whole quantity."""

    item: str
    amount: float
    quantity: float
    unit: str | None
    condition: str
    role: str
    box: Box | None
    line_id: str | None = None
    piece: str | None = None
    pieces: int | None = None


@dataclass(frozen=True, slots=True)
class Case:
    """Hold one advert as the dating sees it: its words as text with their places, and what was read from them."""

    advert_id: str
    clipping_id: str
    text: str
    starts: Sequence[int] = ()  # where each word begins in the text
    boxes: Sequence[Box] = ()  # the box of each word
    city: str | None = None
    state: str | None = None
    published: str | None = None  # EDTF, as the owner noted
    valid_from: date | None = None
    valid_to: date | None = None
    dated_by: str | None = None
    retailer_id: str | None = None
    maker_ids: tuple[str, ...] = ()
    line_ids: tuple[str, ...] = ()
    dates: tuple[ReadDate, ...] = ()
    prices: tuple[ReadPrice, ...] = ()

    def box_of(self, start: int, end: int) -> Box | None:
        """Return the box around the words that hold these characters of the text."""
        if not len(self.starts):
            return None
        first = int(np.searchsorted(np.asarray(self.starts), start, side="right")) - 1
        last = int(np.searchsorted(np.asarray(self.starts), max(start, end - 1), side="right")) - 1
        found = self.boxes[max(first, 0)]
        for box in self.boxes[max(first, 0) + 1 : last + 1]:
            found = found.joined(box)
        return found


@dataclass(frozen=True, slots=True)
class YearSpan:
    """Hold the years an authority entry (line, maker, retailer) or a dated object gives; None where open."""

    first: int | None
    last: int | None
    name: str
    source: str = "the authority file"


@dataclass(frozen=True, slots=True)
class KnownRun:
    """Hold a run of a line at a retailer that a printed schedule or a search log bounds."""

    first: date
    last: date
    name: str
    method: str
    scheduled_start: date | None = None  # set where "week 7 of 15" fixed it


@dataclass(frozen=True, slots=True)
class Context:
    """Hold what the whole file knows that bears on one advert."""

    region: str | None = None
    lines: Mapping[str, YearSpan] = field(default_factory=dict)
    makers: Mapping[str, YearSpan] = field(default_factory=dict)
    retailers: Mapping[str, YearSpan] = field(default_factory=dict)
    objects: Mapping[str, tuple[YearSpan, ...]] = field(default_factory=dict)  # by line id
    dated: Mapping[str, tuple[DatedPrice, ...]] = field(default_factory=dict)  # by line id and piece
    seen: Mapping[str, tuple[tuple[int, str], ...]] = field(default_factory=dict)  # by line id: (month, advert id)
    levels: Mapping[str, tuple[DatedPrice, ...]] = field(default_factory=dict)  # by piece, any line
    runs: Mapping[tuple[str, str], KnownRun] = field(default_factory=dict)  # by line id and retailer id


@dataclass(frozen=True, slots=True)
class DatedPrice:
    """Hold a price seen in a dated advert of the file: its month's number and the logarithm of its dollars."""

    month: int
    log_amount: float
    advert_id: str
    clipping_id: str
    retailer_id: str | None
    condition: str


@dataclass(frozen=True, slots=True)
class Clue:
    """Hold one piece of evidence: what was found, where it is printed, its source and its likelihood by month."""

    kind: str
    text: str
    source: str
    log_likelihood: Floats  # 0 at its highest
    box: Box | None = None
    earliest: date | None = None
    latest: date | None = None


@dataclass(frozen=True, slots=True)
class Sign:
    """Hold one sign of an age: the words that show it, its likelihood, and the published source of its dates."""

    name: str
    pattern: re.Pattern[str]
    log_likelihood: Floats
    source: str
    earliest: date | None = None
    latest: date | None = None
    hint: str = ""  # a part of every match in lower case, so that most texts need no pattern


def find_signs(case: Case, kind: str, signs: Iterable[Sign]) -> Iterator[Clue]:
    """Yield one clue for each sign printed in an advert; repeating a sign adds nothing."""
    lower = case.text.lower()
    for sign in signs:
        if sign.hint and sign.hint not in lower:
            continue
        found = sign.pattern.search(case.text)
        if found:
            yield Clue(
                kind,
                f"'{' '.join(found[0].split())}': {sign.name}",
                sign.source,
                sign.log_likelihood,
                case.box_of(found.start(), found.end()),
                sign.earliest,
                sign.latest,
            )

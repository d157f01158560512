"""The records of runs: a sighting of a line, the run of it with its bounds, and the study of one run."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date, timedelta
from typing import Final

from adminer.dating.bayes_run import BayesRun, Comparison
from adminer.dating.edtf import one_of_days
from adminer.dating.next_searches import NextSearch

_ONE_WEEK: Final = timedelta(days=7)
_ONE_DAY: Final = timedelta(days=1)
_LONGEST_OFFER: Final = timedelta(
    days=42
)  # longer printed spans are seasons or the life of a list; judgement, no source


@dataclass(frozen=True, slots=True)
class RunSighting:
    """Hold one advert that shows a line: where, in which paper, and the first and last day it may have been."""

    line_id: str | None
    line: str
    retailer_id: str | None
    retailer: str | None
    city: str | None
    advert_id: str
    seen_from: date | None
    seen_to: date | None
    dated_by: str | None = None
    publication: str | None = None
    maker: str | None = None
    reliability: float = 1.0  # chance that line and date are right

    @property
    def exact(self) -> bool:
        """Say whether it is known on which days it was seen: within one advert week, or on printed days of an offer.

        A printed month is a time within which it was seen; printed days that are no whole month are the offer's own.
        """
        if self.dated_by == "estimate" or self.seen_from is None or self.seen_to is None:
            return False
        length = self.seen_to - self.seen_from
        month = self.seen_from.day == 1 and (self.seen_to + _ONE_DAY).day == 1
        return length < _ONE_WEEK or (self.dated_by == "printed" and length < _LONGEST_OFFER and not month)


@dataclass(frozen=True, slots=True)
class Run:
    """Hold the run of a line at one retailer (None: over all) in one town (None: all), with its bounds and method.

    first_seen and last_seen are the first and last day on which any of its dated adverts may have appeared.
    """

    run_id: str
    line_id: str | None
    line: str
    retailer_id: str | None
    retailer: str | None
    city: str | None
    sightings: int
    first_seen: date | None
    last_seen: date | None
    start_earliest: date | None
    end_latest: date | None
    method: str
    confidence: float | None
    note: str
    scheduled_start: date | None = None  # where a printed "week 7 of 15" gives it
    begun_by: date | None = (
        None  # it had certainly begun then: a sighting within a span may be later than its first day
    )
    still_on: date | None = None  # it certainly went on until then

    @property
    def start_edtf(self) -> str | None:
        """Return the start as one unknown day of a span, None where not bounded."""
        if self.start_earliest is None or self.begun_by is None:
            return None
        return one_of_days(self.start_earliest, self.begun_by)

    @property
    def end_edtf(self) -> str | None:
        """Return the end as one unknown day of a span, None where not bounded."""
        if self.end_latest is None or self.still_on is None:
            return None
        return one_of_days(self.still_on, self.end_latest)


@dataclass(frozen=True, slots=True)
class Gap:
    """Hold a stretch of weeks inside a run without a sighting: searched in vain, or never looked at."""

    first: date
    last: date
    weeks: int
    issues_searched: int


@dataclass(frozen=True, slots=True)
class RunStudy:
    """Hold everything about one run: bounds, the Bayesian posterior, gaps, one run or two, what to search next."""

    run: Run
    weeks: tuple[int, ...]
    searched: dict[int, int]
    posterior: BayesRun | None
    comparison: Comparison | None
    gaps: tuple[Gap, ...]
    next: tuple[NextSearch, ...]
    found: dict[int, int] = field(default_factory=dict)  # searched weeks that showed it, with the number of papers
    handovers: tuple[tuple[date, str, str], ...] = field(default=())  # first day, maker before, maker after

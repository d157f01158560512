"""Date every advert of a file: a posterior over months from all evidence, its 50 % and 90 % sets, and the reasons."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import date
from typing import Final

import numpy as np
from numpy.typing import NDArray

from adminer.dating.agree import settle
from adminer.dating.contradiction import held_to_trust
from adminer.dating.edtf import bounds_of
from adminer.dating.evidence import (
    addresses,
    calendar_days,
    controls,
    events,
    file_prices,
    known_names,
    laws,
    printed_years,
    staples,
    telephones,
)
from adminer.dating.evidence.base import Case, Clue, Context
from adminer.dating.evidence.shapes import faded
from adminer.dating.months import MONTHS, first_day, log_prior
from adminer.dating.personal import KIND as ADDED
from adminer.dating.personal import Added, PersonalEvidence, added_clues, is_struck
from adminer.dating.posterior import MonthSet, Weighed, median_month, month_set, weigh
from adminer.errors import FolderError

Floats = NDArray[np.float64]
Finder = Callable[[Case, Context], Iterator[Clue]]

FINDERS: Final[tuple[Finder, ...]] = (
    calendar_days.find,
    printed_years.find,
    addresses.find,
    telephones.find,
    controls.find,
    events.find,
    laws.find,
    staples.find,
    file_prices.find,
    known_names.find,
)
NEIGHBOUR: Final = "other adverts of the scan"
NO_APPRAISAL: Final = (
    "An estimate of date is no appraisal, and says nothing on whether old glazes, decals or gold trim are fit for food."
)
_OF_THE_SCAN: Final = (calendar_days.NOTE, calendar_days.PAGE, ADDED)
_PRINTED_YEAR: Final = re.compile(r"(?<!\d)1[89]\d\d(?!\d)|['’‘]\d\d(?!\d)|(?<=\d[/-])(?:1[89])?\d\d(?=\W|$)")
# that two adverts of one scan are of one issue; pages of albums hold several. Judgement, no source
_SAME_ISSUE: Final = 0.85


@dataclass(frozen=True, slots=True)
class DateEstimate:
    """Hold the answer for one advert: posterior by month, the sets that hold 50 and 90 %, the ranked evidence."""

    advert_id: str
    posterior: Floats
    half: MonthSet
    ninety: MonthSet
    median: date
    evidence: tuple[Weighed, ...]
    note: str

    @property
    def peak(self) -> float:
        """Return the probability of the likeliest month."""
        return float(self.posterior.max())


def estimate_adverts(
    cases: Sequence[Case],
    context: Context,
    *,
    years: tuple[int, int] | None = None,
    personal: PersonalEvidence | None = None,
) -> list[DateEstimate]:
    """Return the date estimate of every advert, in the order given; the same input gives the same numbers.

    `years` are those the owner of the file expects. Adverts of one clipping inform each other.
    """
    prior = log_prior(years)
    personal = personal or PersonalEvidence()
    own = [_own_clues(case, context, personal) for case in cases]
    clues_of = {case.advert_id: used for case, (used, _) in zip(cases, own, strict=True)}
    beside: dict[str, list[str]] = {}
    for case in cases:
        beside.setdefault(case.clipping_id, []).append(case.advert_id)
    result = []
    for case, (used, struck) in zip(cases, own, strict=True):
        clues, left_out = list(used), list(struck)
        others = {*beside[case.clipping_id], *personal.linked(case.advert_id, clues_of)} - {case.advert_id}
        clue = _from_neighbours([_second_witness(clues_of[a], used) for a in sorted(others)])
        if clue is not None:
            (left_out if is_struck(personal, case.advert_id, clue) else clues).append(clue)
        result.append(_estimate(case, prior, clues, left_out, years, personal.added_to(case.advert_id)))
    return result


def find_clues(case: Case, context: Context) -> Iterator[Clue]:
    """Yield every clue of an advert, without what a person added or struck and without its neighbours."""
    for finder in FINDERS:
        yield from finder(case, context)


def _own_clues(case: Case, context: Context, personal: PersonalEvidence) -> tuple[list[Clue], list[Clue]]:
    used: list[Clue] = []
    struck: list[Clue] = []
    for clue in (*find_clues(case, context), *added_clues(personal, case.advert_id)):
        (struck if is_struck(personal, case.advert_id, clue) else used).append(clue)
    return used, struck


def _second_witness(clues: Sequence[Clue], own: Sequence[Clue]) -> Floats:
    # what is said of a whole scan is held by each of its adverts, and counts once
    held = {(c.kind, c.text) for c in own if c.kind in _OF_THE_SCAN}
    return np.asarray(sum((c.log_likelihood for c in clues if (c.kind, c.text) not in held), np.zeros(MONTHS)))


def _from_neighbours(leaning: Sequence[Floats]) -> Clue | None:
    known = [k for k in leaning if float(np.ptp(k)) > 0.5]
    if not known:
        return None
    together = np.asarray(sum(known[1:], known[0]))
    best = int(np.argmax(together))
    return Clue(
        NEIGHBOUR,
        f"{len(known)} other advert{'s' if len(known) > 1 else ''} with it point to about {first_day(best):%Y-%m}",
        "adverts on one scan, and clippings a person linked, mostly come from one issue (judgement)",
        faded(together, _SAME_ISSUE),
    )


def _estimate(
    case: Case,
    prior: Floats,
    clues: Sequence[Clue],
    struck: Sequence[Clue],
    years: tuple[int, int] | None,
    added: Sequence[Added],
) -> DateEstimate:
    posterior, contradictions = held_to_trust(prior, clues, added)
    expected = f"the folder's years {years[0]}-{years[1]}" if years else "no year preferred"
    note = f"prior: {expected}; {len(clues)} clue{'' if len(clues) == 1 else 's'}" + (
        f", {len(struck)} struck out" if struck else ""
    )
    note += "".join(f"; {' '.join(text.split())}" for text in (*_compared(case), *contradictions))
    if not clues:
        note = f"prior: {expected}; nothing on the advert says when it appeared"
    return DateEstimate(
        case.advert_id,
        posterior,
        month_set(posterior, 0.5),
        month_set(posterior, 0.9),
        first_day(median_month(posterior)),
        weigh(prior, clues, struck),
        note,
    )


def _compared(case: Case) -> tuple[str, ...]:
    # who wins is the stated rule of `agree`; here the loser is shown, and that a page's date line bears the rest out
    known = [d for d in case.dates if d.earliest is not None or d.latest is not None]
    if not known:
        return ()
    try:
        note = bounds_of(case.published) if case.published else None
    except FolderError:
        note = None
    settled = settle(known, note)
    return settled.disagreements + settled.agreements


def without_dates(case: Case) -> Case:
    """Return the advert with its date hidden, for calibration: no note, no validity, no printed year.

    Days printed with their weekday stay, as they do on clippings whose year is lost.
    """
    text = _PRINTED_YEAR.sub(lambda found: "_" * len(found[0]), case.text)
    return replace(case, text=text, published=None, valid_from=None, valid_to=None, dated_by=None, dates=())

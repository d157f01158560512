"""A bound beyond the years in which a line or its shop existed, or any date is sought, says nothing: it is none."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import Final

from adminer.dating.evidence.base import YearSpan
from adminer.dating.months import FIRST_YEAR, LAST_YEAR
from adminer.dating.run_records import Run


@dataclass(frozen=True, slots=True)
class KnownYears:
    """Hold the years of lines and of retailers by their ids, as the authority files give them."""

    lines: Mapping[str, YearSpan] = field(default_factory=dict)
    retailers: Mapping[str, YearSpan] = field(default_factory=dict)


NOTHING_KNOWN: Final = KnownYears()


def within_years(run: Run, known: KnownYears) -> Run:
    """Return a run without those bounds that reach beyond the years known of its line and shop; the note says so.

    Years that the sightings themselves contradict are left out.
    """
    spans = [known.lines.get(run.line_id or ""), known.retailers.get(run.retailer_id or "")]
    begun = run.begun_by.year if run.begun_by else LAST_YEAR
    still = run.still_on.year if run.still_on else FIRST_YEAR
    begins = [(s.first, f"{s.name} began in {s.first}") for s in spans if s and s.first and s.first <= begun]
    ends = [(s.last, f"{s.name} ended in {s.last}") for s in spans if s and s.last and s.last >= still]
    floor, why_floor = max([*begins, (FIRST_YEAR, f"no date is sought before {FIRST_YEAR}")])
    ceiling, why_ceiling = min([*ends, (LAST_YEAR, f"no date is sought after {LAST_YEAR}")])
    start, end, notes = run.start_earliest, run.end_latest, [run.note]
    if start and start.year < floor <= begun:
        notes.append(f"the start is not bounded: {start} is too early, as {why_floor}")
        start = None
    if end and end.year > ceiling >= still:
        notes.append(f"the end is not bounded: {end} is too late, as {why_ceiling}")
        end = None
    confidence = run.confidence if start or end else None
    note = "; ".join(notes)
    return replace(run, start_earliest=start, end_latest=end, confidence=confidence, note=note)
